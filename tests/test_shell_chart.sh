#!/bin/sh
# SPDX-License-Identifier: MIT
# Pictures, audits and the narrowed list, as a person and a script meet them. Prints TAP.
# shellcheck source=tests/tap.sh
. "${srcdir:-.}/tests/tap.sh"

tables=${srcdir:-.}/tests/sensors
holds() { grep -q -e "$1" "$work/out"; }
# However its lines were broken.
says() { tr -s ' \n' ' ' <"$work/out" | grep -q -e "$1"; }
counts() { [ "$(grep -c -e "$2" "$work/out")" -eq "$1" ]; }
well_formed() { python3 -c 'import sys, xml.dom.minidom; xml.dom.minidom.parse(sys.argv[1])' "$1"; }
refuses() { exits "$1" && one_complaint && complains "$2"; }

# ---- chart

run chart ntc-2k45-20c 2.31k@21.5C 187@boil --fan 97C
check "a chart goes to standard output" exits 0
check "a chart is an SVG picture" holds '^<svg xmlns='
check "a chart says in words what it shows" holds '^20 C: 2.450 k, allowed'
check "the words tell the readings" holds '^Reading at 21.5 C: 2.31 k'
check "every reading is marked by its number" counts 2 'class="label".*>[12]</text>'
check "every printed row has its point" counts 19 'circle class="point"'
check "the fan is marked with its resistance" holds '>fan 97 C, 203 ohm<'
check "a chart has colours for the dark" holds 'prefers-color-scheme: dark'
if python3 -c '' 2>/dev/null; then
  check "a chart is well-formed" well_formed "$work/out"
else
  skip "a chart is well-formed" "no python3"
fi
run chart ntc-10k-25c
check "without limits no band is drawn" [ "$(grep -c 'class="band"' "$work/out")" -eq 0 ]
check "without --fan no fan is marked" [ "$(grep -c '>fan ' "$work/out")" -eq 0 ]
run chart pt100-b -o "$work/pt.svg"
check "a chart of platinum goes to the file named by -o" [ -s "$work/pt.svg" ]
check "a chart in a file leaves standard output empty" writes_nothing
printf '# name: a <b> & "c"\ntemp_c,r_nom_ohm\n0,6000\n20,2450\n' >"$work/odd.csv"
run chart "$work/odd.csv"
check "marks of XML in a name are escaped" holds '>a &lt;b&gt; &amp; &quot;c&quot;<'
run chart ntc-2k45-20c -o "$work/none/chart.svg"
check "a file that cannot be written is said" refuses 74 'cannot be written'
run chart ntc-2k45-20c 2.31k
check "a reading without a temperature is refused" refuses 64 '--at'
run chart ntc-2k54-20c
check "a sensor nobody knows is refused" refuses 66 'ntc-2k45-20c'

# ---- audit

run audit "$tables/ntc-2k45-at-20c-mazda-bt50-2021.csv"
check "a clean table exits with 0" exits 0
check "a clean table is said to be clean" says '18 rows, nothing is suspect'
cp "$tables/ntc-37k-at-20c-ford-probe-1990-ect.csv" "$work/t.csv"
run audit "$work/t.csv"
check "a table with a misprint exits with 1" exits 1
check "a misprint is told with its place" says 'line 14, column 5'
check "an audit fits into 80 columns" narrow
run audit "$tables/ntc-37k-at-20c-ford-probe-1990-ect.csv" --json
check "an audit in JSON tells the kind and the figure" holds '"kind":"digits","line":14,.*"printed":"7700"'
run audit "$work/none.csv" "$tables/ntc-2k45-at-20c-mazda-bt50-2021.csv"
check "a file that cannot be opened is said" complains 'none.csv'
check "a file that cannot be opened does not cost the others" says 'nothing is suspect'
check "a file that cannot be opened exits with 66" exits 66

# ---- parts --near

run parts --near 2.3k@20C
check "the list is narrowed by a reading" exits 0
check "a sensor that reads so is listed" holds '^ntc-2k45-20c '
check "a sensor that reads otherwise is not" [ "$(grep -c '^ntc-3k5-20c ' "$work/out")" -eq 0 ]
run parts --near 5@20C
check "a reading of no sensor exits with 66" refuses 66 'no sensor built in'
run parts --near OL@20C
check "over range is near to nothing" refuses 65 '"OL" is no resistance'

finish
