#!/bin/sh
# SPDX-License-Identifier: MIT
# Every verb has an example, and every example prints what its closing comment says, on a
# page of the manual. Prints TAP.
# shellcheck source=tests/tap.sh
. "${srcdir:=.}/tests/tap.sh"

# What the page can show without its lines leaving 80 columns.
page_width=71

has_example() { [ -f "$srcdir/tests/examples/$1.c" ]; }
is_on_its_page() { grep -q '^\.SH EXAMPLE' "bindings/shell/$1.3"; }
fits() { awk -v width="$page_width" 'length > width { wide = 1 } END { exit wide }' "$work/said"; }
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
  check "$call fits on its page" fits
  check "$call is on its page" is_on_its_page "$call"
done
finish
