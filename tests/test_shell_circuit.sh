#!/bin/sh
# SPDX-License-Identifier: MIT
# The verb circuit, in a script and in conversation. Prints TAP.
# shellcheck source=tests/tap.sh
. "${srcdir:-.}/tests/tap.sh"

says() { grep -q -e "$1" "$work/out"; }
lacks() { ! says "$1"; }
dead='--saw starts=bad --saw coolant-level=good --saw standing=good --saw battery-volts=12.4
  --saw hoses=good --saw engine-heat=103'

# ---- in a script

run circuit
check "without a name the circuits are listed" exits 0
for name in dropping-resistor module-relays pulse-width radiator-switch series-parallel; do
  check "the list has $name" says "^$name "
done
check "the list fits into 80 columns" narrow
run circuit --json
check "the list is JSON with --json" says '"name":"radiator-switch"'
run circuit radiator-swich
check "an unknown circuit is refused" exits 66
check "with the nearest" complains 'did you mean radiator-switch'

run circuit radiator-switch starts=bad
check "one outcome is undecided" exits 2
check "and asks whether the fan was asked for" says '^Next  *coolant-level: '
check "the caution comes first" sh -c "head -n 1 '$work/out' | grep -q '^CAUTION'"
check "it fits into 80 columns" narrow
# shellcheck disable=SC2086
run circuit radiator-switch $dead --saw fuse-look=bad
check "a bad fuse is status 1" exits 1
check "and says what to buy" says 'BUY fan fuse'
check "and what to measure again" says '^Then again .*starts: good'
# shellcheck disable=SC2086
run circuit radiator-switch $dead fuse-look=bad --json
check "--json has the link at fault" says '"faulty":\["fuse"\]'
run circuit radiator-switch starts=good
check "a fan that starts is status 0" exits 0
check "and nothing is to buy" says 'NOTHING TO BUY'
run circuit radiator-switch --saw fuse-lok=good
check "an unknown test is refused" exits 65
check "with the nearest test" complains 'did you mean fuse-look'
run circuit radiator-switch --saw starts=bad --fan 300C
check "a fan temperature that cannot be is refused" complains 'below 130C'

run circuit radiator-switch --print
check "--print succeeds" exits 0
cp "$work/out" "$work/mine.csv"
run circuit "$work/mine.csv" --print
check "what it writes is a circuit file that prints the same" cmp -s "$work/out" "$work/mine.csv"
sed '/^lit,/s/,bulb,/,none,/' "$work/mine.csv" >"$work/wrong.csv"
run circuit "$work/wrong.csv" --saw starts=bad
check "a test that the trade does not allow is noted" complains 'note: .*without load'
run circuit "$work/none.csv"
check "a circuit file that is not there is refused" exits 66

# ---- a record

rm -f "$work/case"
# shellcheck disable=SC2086
run circuit radiator-switch --record "$work/case" $dead
check "a record is begun" grep -q '^circuit=radiator-switch$' "$work/case"
check "and holds what was seen" grep -q '^engine-heat=103$' "$work/case"
run circuit radiator-switch --record "$work/case"
check "it is read again" says '6 tests'
run circuit radiator-switch --record "$work/case" --saw fuse-look=bad
check "and gone on from" exits 1
run circuit pulse-width --record "$work/case"
check "the record of another circuit is refused" complains 'of the circuit "radiator-switch"'
run circuit radiator-switch --record "$work"
check "a folder is no record" exits 65
printf 'starts=bad\0' >"$work/binary"
run circuit radiator-switch --record "$work/binary"
check "what is no text is no record" exits 65
run circuit radiator-switch --record "$work/no/such" --saw starts=bad
check "a record that cannot be written is told" exits 74

# ---- a conversation

python=$(command -v python3)
converse="${srcdir:-.}/tests/converse.py"

# type LINES ARGUMENT...: LINES, in the escapes of printf, typed on a terminal
type_lines() {
  printf -- "$1" >"$work/in"
  shift
  "$python" "$converse" "$ohmcurve" "$@" >"$work/out" 2>"$work/err" <"$work/in"
  status=$?
}

if [ -n "$python" ] && "$python" -c 'import pty, os; os.waitstatus_to_exitcode' 2>/dev/null; then
  type_lines '' circuit radiator-switch
  check "a conversation that ends at once is undecided" exits 2
  check "and asked the first test" says '^Next  *starts: '
  check "and says how to go on" says '^To go on: ohmcurve circuit radiator-switch'

  rm -f "$work/talk"
  type_lines 'bad\ngood\ngood\n12.4\ngood\n103\n' circuit radiator-switch --record "$work/talk"
  check "answers are kept as they come" grep -q '^battery-volts=12.4$' "$work/talk"
  check "the end of the input loses nothing" grep -q '^engine-heat=103$' "$work/talk"
  check "and it says where they are" says "Kept in $work/talk"
  check "it fits into 80 columns" narrow

  type_lines 'why\nnonsense\nback\n' circuit radiator-switch --record "$work/talk"
  check "it resumes" says '6 tests'
  check "why tells what the test is for" says '^Why  *of [0-9]* suspects'
  check "nonsense is answered by what to write" says 'write good, bad or skip'
  check "back takes the last answer out" sh -c "! grep -q engine-heat '$work/talk'"
  check "and leaves those before" grep -q '^hoses=good$' "$work/talk"

  type_lines '103\nfuse-look=bad\nrenewed\ngood\n' circuit radiator-switch --record "$work/talk"
  check "a case is closed" exits 0
  check "after the part was named" says 'BUY fan fuse'
  check "and the fan had started by itself" says 'CLOSED: the fan has started by itself'

  type_lines 'bad\nnone bulb\nskip\nhelp\nstop\n' circuit radiator-switch
  check "a tool may be missing" says '^  bulb=none'
  check "a test may be skipped" says '^  coolant-level=skip'
  check "help lists what can be answered" says '^  back '
  check "stop leaves" exits 2
  type_lines 'back\n' circuit radiator-switch
  check "there is nothing to go back to at first" says 'Nothing was answered yet'
else
  skip "a conversation on a terminal" "needs Python 3.9 with pty"
fi
finish
