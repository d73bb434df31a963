#!/bin/sh
# SPDX-License-Identifier: MIT
# The verb soak, as a person and a script meet it. Prints TAP.
# shellcheck source=tests/tap.sh
. "${srcdir:-.}/tests/tap.sh"

says() { tr -s ' \n' ' ' <"$work/out" | grep -q -e "$1"; }
lacks() { ! says "$1"; }
refuses() { writes_nothing && exits "$1" && one_complaint && complains "$2"; }
json() { lines 1 && python3 -m json.tool <"$work/out" >"$work/json"; }

soak() {
  reading=$1
  shift
  run soak ntc-2k45-20c "$reading" "$@"
}

# ---- verdicts

soak 3.8k --air 9C+-1 --after 14
check "a sound sensor is good after a night" exits 0
check "it is silent about it" silent
check "it fits into 80 columns" narrow
check "the caution comes first" sh -c "head -n 1 '$work/out' | grep -q '^CAUTION'"
check "it is good cold alone" says 'VERDICT GOOD cold'
check "the fan is not answered" says 'For the fan NOT ANSWERED'
check "what could be missed is told" says 'too cold would not show here'
check "what was assumed is told" says 'stopped at 90C+-15C'
soak 9k --air 9C+-1 --after 14
check "colder is bad" exits 1
check "and it says so" says 'BAD: colder than the coolant can be'
soak 1.2k --air 9C+-1 --after 14 --place sensor
check "warmer is undecided" exits 2
check "and it says what else does that" says 'sun, a heater, a garage or a move'
soak 1.2k --air 9C+-1 --after 14 --place sensor --undisturbed
check "warmer is bad when nothing warmed it" exits 1
soak 3.9k --air 9C+-2 --after 7h --stop 92C
check "after too few hours it is undecided" exits 2
check "and it says after how many it would not be" says 'once more when it has stood [0-9.]* h'
soak 3.8k --air 9C+-1 --after 14 --stop 92C+-3 --tau 1h-3h --allow 9C --undisturbed --fan 97C
check "what was told is not assumed" lacks 'stopped at\|cools by\|off allowed\|no sun'

# ---- other sensors

soak 3.8k --air 9C --after 14 intake=10.5C ambient=9C+-1
check "sensors that agree are said to" says 'the sensors agree with each other'
soak 3.8k --air 9C --after 14 intake=-15C ambient=9C
check "the odd one is named" says 'the intake sensor is the odd one out'
soak 3.8k --air 9C --after 14 intake=-15C
check "of two none is" says 'nothing says which one is off'
for bad in intake gearbox=3C intake=cold intake=10 ambient=ice; do
  soak 3.8k --air 9C --after 14 $bad
  check "$bad is refused" refuses 65 "${bad%=*}"
done

# ---- a history

cat >"$work/air.csv" <<'EOF'
# stopped: 21:40
time,temp_c
21:40,13.5
00:00,9.5
03:00,6.0
06:00,4.5
09:40,7.0
EOF
soak 4.2k --history "$work/air.csv"
check "a history is air enough" exits 0
check "its hours are counted" says 'after 12 h, air now 7.0 C, coldest 2.5 C'
soak 4.2k --history "$work/air.csv" --air 7C+-1 --after 14
check "past its end it is not made up" refuses 65 'ends 12.00 h after the stop'
soak 4.2k --history "$work/air.csv" --after 14 --extend
check "unless asked" says 'air as in its last row'
soak 4.2k --history "$work/none.csv"
check "a history that is not there is refused" refuses 66 'no such file'
echo 'hours,temp_c' >"$work/empty.csv"
soak 4.2k --history "$work/empty.csv"
check "a history without a row is refused" refuses 65 'no row'

# ---- json

soak 3.8k --air 9C+-1 --after 14 --json
check "its json is one object" json
for key in after_h coolant_low_c coolant_high_c missed_cold_k decidable_h p_cold verdict; do
  check "json has $key" grep -q "\"$key\"" "$work/json"
done

# ---- what it refuses

soak 3.8k --after 14
check "no air is refused" refuses 64 'write --air'
soak 3.8k --air 9C
check "no hours are refused" refuses 64 'write --after'
soak 3.8k --air ice --after 14
check "ice is no air" refuses 65 '--air'
soak 3.8k --air 9 --after 14
check "air without a unit is refused" refuses 65 'has no unit'
for bad in 0 -1 1001 soon; do
  soak 3.8k --air 9C --after $bad
  check "--after $bad is refused" refuses 65 '--after'
done
for bad in 2 4-1 1-2000 a-b; do
  soak 3.8k --air 9C --after 7 --tau $bad
  check "--tau $bad is refused" refuses 65 '--tau'
done
for bad in 0 101 much; do
  soak 3.8k --air 9C --after 7 --allow $bad
  check "--allow $bad is refused" refuses 65 '--allow'
done
soak 3.8k --air 9C --after 7 --stop boil
check "--stop boil is refused" refuses 65 '--stop'
soak 3.8x --air 9C --after 7
check "a reading that is none is refused" refuses 65 '3.8x'
run soak no-such-sensor 3.8k --air 9C --after 7
check "a sensor that is none is refused" exits 66

finish
