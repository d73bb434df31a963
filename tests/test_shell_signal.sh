#!/bin/sh
# SPDX-License-Identifier: MIT
# The module's side of the wire, as a person and a script meet it. Prints TAP.
# shellcheck source=tests/tap.sh
. "${srcdir:-.}/tests/tap.sh"

sensor=ntc-2k45-20c
# However its lines were broken.
says() { tr -s ' \n' ' ' <"$work/out" | grep -q -e "$1"; }
lacks() { ! says "$1"; }
refuses() { exits "$1" && one_complaint && writes_nothing && complains "$2"; }
# key NAME LOW HIGH: a number of the one JSON line lies between.
key() {
  sed -n "s/.*\"$1\":\\([-+0-9.e]*\\).*/\\1/p" "$work/out" |
    awk -v low="$2" -v high="$3" '{ found = 1; ok = $1 >= low && $1 <= high } END { exit !(found && ok) }'
}

# ---- signal

set -- 187 0.97V 91C --pull-up 1k --supply 5V --fan 97C
run signal $sensor "$@"
check "ohms in the plug part sensor and module" exits 1
check "the way is told in words" says 'VERDICT BAD: 54 ohm, give or take [0-9]*, in plug or wire'
check "the fan is told with what the gauge shows" says 'a true 109 C (1[0-9]* to 1[0-9]*) while the gauge shows 97'
check "cautions come first" says '^CAUTION Hands, hair, sleeves clear'
check "the screen fits into 80 columns" narrow
check "the screen speaks on standard output alone" silent
run signal $sensor "$@" --json
check "signal --json writes one line" lines 1
check "r_ohm is as seen from the volts" key r_ohm 240.69 240.70
check "t_c is as seen from the volts" key t_c 90.5 90.7
check "between_ohm is what parts them" key between_ohm 53 55
check "the reason is the key reason" says '"reason":"series"'
run signal $sensor 187 0.79V 100C --pull-up 1k
check "what agrees exits 0" exits 0
run signal $sensor 187 0.97V --pull-up 1k
check "a ground that was not told is asked for" says 'where was the negative lead?'
check "and exits 2" exits 2
for place in pin sensor; do
  run signal $sensor 187 0.97V --pull-up 1k --negative $place
  check "with the negative lead at the $place it is the wire" says 'in plug or wire'
done
run signal $sensor 187 0.97V 100C --pull-up 1k --negative body
check "with the negative lead on the body it is the ground" says 'YOUR GROUND'
run signal $sensor 2V --pull-up 4k,348@40C
check "of two pull-ups the one in use is asked for" says '17.9 C through 4.00 k, or 92.0 C through 348 ohm'
run signal $sensor 2V --pull-up 4k,348@40C --range hot --json
check "--range says which it is" key t_c 91.5 92.5
run signal $sensor 187 0.79V 80C --pull-up 1k
check "a known substitute is questioned" says '80 C is what some modules use'
run signal $sensor 187 0.79V 80C --pull-up 1k --moves yes
check "unless it moves" lacks 'what some modules use'
run signal $sensor 187 0.79V 100C --pull-up 1k --moves no
check "a value that never moves is questioned first" says 'never moves is no reading'
run signal $sensor 4.85V --pull-up 1k --open 4.8V
check "--open is where the module sees no circuit" says 'sees no circuit'
run signal $sensor 0.3V --pull-up 1k --short 0.35
check "--short is where it sees a short" says 'sees a short'
run signal $sensor 240.0 0.97V 91C --at 100C+-1 --pull-up 1k --negative pin
check "a thermometer names the sensor" says 'the sensor itself has too many ohms'
run signal $sensor "$@" --moved 0 --rounding rounded
check "what was told is not assumed" lacks 'within 1C meanwhile\|cut or rounded'

run signal $sensor 0.97V
check "volts need the pull-up" refuses 64 'volts need --pull-up'
run signal $sensor
check "nothing taken is a misuse" refuses 64 'READING is missing'
for bad in junk 0.97VV 91CC intake=9C; do
  run signal $sensor "$bad" --pull-up 1k
  check "$bad is refused with what was written" refuses 65 "$bad"
done
run signal $sensor 187 190
check "of each one is enough" refuses 64 'one reading of ohms'
for bad in --pull-up=junk --supply=junk --range=warm \
  --negative=engine --moves=maybe --rounding=up --open=junk --short=0 --moved=30 --fan=200C --at=20; do
  run signal $sensor 187 0.97V 91C --pull-up 1k "$bad"
  check "$bad is refused with what was written" refuses 65 "${bad#*=}"
done
run signal $sensor 187 91C --at 900C
check "a thermometer beyond the curve is refused" refuses 65 'lies outside the curve'

# ---- substitute

run substitute $sensor 105C --series E24
check "a substitute that asks for the fan exits 0" exits 0
check "its cautions come first" says '^CAUTION Key off to fit it. Blades clear'
check "one resistor, then two" says 'Fit 160 ohm, .*Or two of them: .*Fit '
check "substitutes fit into 80 columns" narrow
run substitute $sensor 105C --series E24 --json
check "substitute --json writes a line each, and the finding" lines 3
run substitute $sensor
check "without TEMP it aims above the fan" says 'wanted 105.0 C'
run substitute $sensor --fan 90C
check "of the fan that was told" says 'wanted 98.0 C'
run substitute $sensor 105C --drawer 100,220,330,1k
check "a drawer may hold no single one" exits 1
check "and a pair that does" says '1.00 k across 220 ohm'
run substitute $sensor 105C --drawer 160
check "a drawer of one has no pair" lacks 'Or two of them'
run substitute $sensor 105C --pull-up 1k --supply 5V
check "with the pull-up it tells the volts" says 'V through 1.00 k'
run substitute $sensor 179.4@93C 998@42C
check "two that were fitted tell the loom" says 'The loom 4[01].* ohm, give or take'
check "a bad loom exits 1" exits 1
run substitute $sensor 180.0@101.8C 1000.0@43.9C --limit 20 --rounding rounded --json
check "a good one exits 0" exits 0
check "with the ohms in it" key between_ohm -3 3
run substitute $sensor 180@93C
check "one that was fitted tells nothing" refuses 64 'put down two readings'
run substitute $sensor 180@93C 1k
check "each needs what was reported" refuses 64 'put down two readings'
run substitute $sensor 180@93C 200@90C
check "two that are alike tell nothing" refuses 65 'too near to each other'
run substitute $sensor 180@230C 1k@90C
check "reports beyond the curve are refused" refuses 65 'lies outside the curve'
run substitute $sensor 105C --series E24 --drawer 100
check "series and drawer together are a misuse" refuses 64 'set one of them'
for bad in --series=E6 --drawer=100,x --drawer=0 --resistor=60% --resistor=5; do
  run substitute $sensor 105C "$bad"
  check "substitute $bad is refused" refuses 65 'write '
done
run substitute $sensor 200C
check "a TEMP beyond the curve is refused" refuses 65 'lies outside the curve'
run substitute $sensor 0C
check "0C asks for no fan" refuses 65 'write above 0C'

# ---- fanpoint

run fanpoint $sensor --fan 98C --off 93C --pull-up 1k
check "fanpoint tells and exits 0" exits 0
check "ohms and volts where it starts" says 'Starts at 98.0 C: 198.3 ohm, 0.827 V'
check "ohms and volts where it stops" says 'Stops at 93.0 C: 225.8 ohm, 0.921 V'
check "what a degree is worth" says 'One degree is worth 5.[0-9]* ohm, 17.[0-9] mV'
check "what 50 ohm do" says '50 ohm in plug or wire: starts at a true 109.7 C, stops at 102.7 C'
run fanpoint $sensor --fan 98C --hidden 100 --json
check "--hidden is asked about" key start_c 120 130
check "fanpoint --json writes one line" lines 1
run fanpoint $sensor --hidden 500
check "too much never starts it" says 'off up to a true 130 C'
for bad in '--fan=junk' '--off=junk' '--hidden=open' '--pull-up=junk'; do
  run fanpoint $sensor --fan 98C "$bad"
  check "fanpoint $bad is refused" refuses 65 'write '
done
run fanpoint $sensor --fan 98C --off 99C
check "a fan that stops above its start is refused by option" refuses 64 'write --off lower than --fan'
finish
