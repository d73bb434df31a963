#!/bin/sh
# SPDX-License-Identifier: MIT
# Every verb has an example, and every example prints what its closing comment says. Prints
# TAP.
# shellcheck source=tests/tap.sh
. "${srcdir:=.}/tests/tap.sh"

has_example() { [ -f "$srcdir/tests/examples/$1.c" ]; }
prints_what_is_said() {
  exits 0 && silent && [ -s "$work/said" ] && diff "$work/said" "$work/out"
}

verbs=$(sed -n 's/^OHM_API ohm_answer \*\([a-z_]*\)(.*/\1/p' "$srcdir/include/ohmcurve.h")
[ -n "$verbs" ] || exit 1
for call in $verbs; do
  check "$call has an example" has_example "$call"
done

for source in "$srcdir"/tests/examples/*.c; do
  call=$(basename "$source" .c)
  sed -n '/^ \* It prints:$/,$s/^ \*     //p' "$source" >"$work/said"
  "tests/examples/$call" >"$work/out" 2>"$work/err" </dev/null
  status=$?
  check "$call prints what its file says" prints_what_is_said
done
finish
