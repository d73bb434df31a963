# shellcheck shell=sh
# SPDX-License-Identifier: MIT
# What the tests of the command share: running it, and saying in TAP what held.
LC_ALL=C
export LC_ALL
ohmcurve=${OHMCURVE:-./ohmcurve}
work=$(mktemp -d "${TMPDIR:-/tmp}/ohmcurve.XXXXXX") || exit 1
trap 'rm -rf "$work"' EXIT
trap 'exit 1' HUP INT TERM
count=0
failures=0

# run ARGUMENT...: the command; leaves $status, $work/out and $work/err.
run() {
  "$ohmcurve" "$@" >"$work/out" 2>"$work/err" </dev/null
  status=$?
}

# feed TEXT ARGUMENT...: run with TEXT, in the escapes of printf, as standard input.
feed() {
  printf -- "$1" >"$work/in"
  shift
  "$ohmcurve" "$@" >"$work/out" 2>"$work/err" <"$work/in"
  status=$?
}

# check NAME COMMAND...: the behaviour NAME holds when COMMAND succeeds.
check() {
  count=$((count + 1))
  name=$1
  shift
  if "$@"; then
    echo "ok $count - $name"
  else
    failures=$((failures + 1))
    echo "not ok $count - $name"
    sed 's/^/# out: /' "$work/out"
    sed 's/^/# err: /' "$work/err"
    echo "# exit status: $status"
  fi
}

skip() {
  count=$((count + 1))
  echo "ok $count - $1 # SKIP $2"
}

exits() { [ "$status" -eq "$1" ]; }
complains() { grep -q -e "$1" "$work/err"; }
silent() { [ ! -s "$work/err" ]; }
writes_nothing() { [ ! -s "$work/out" ]; }
lines() { [ "$(wc -l <"$work/out")" -eq "$1" ]; }
one_complaint() { [ "$(wc -l <"$work/err")" -eq 1 ] && complains '^ohmcurve: '; }

# Bytes that continue a character take no column.
narrow() { [ -s "$work/out" ] && tr -d '\200-\277' <"$work/out" | awk 'length > 80 { wide = 1 } END { exit wide }'; }

# The plan, last; fails when a check did.
finish() {
  echo "1..$count"
  [ "$failures" -eq 0 ]
}
