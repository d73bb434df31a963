#!/bin/sh
# SPDX-License-Identifier: MIT
# The verb fit, as a person and a script meet it. Prints TAP.
# shellcheck source=tests/tap.sh
. "${srcdir:-.}/tests/tap.sh"

says() { tr -s ' \n' ' ' <"$work/out" | grep -q -e "$1"; }
has_line() { grep -q -e "$1" "$work/out"; }
lacks() { ! says "$1"; }
refuses() { writes_nothing && exits "$1" && one_complaint && complains "$2"; }
json() { lines 1 && python3 -m json.tool <"$work/out" >"$work/json"; }

# ---- as many points as coefficients

run fit 5.79k@0C 2.45k@20C 322@80C
check "three points are fitted" exits 0
check "three points make Steinhart-Hart" has_line '^steinhart-hart, 3 points$'
check "the fit is without a complaint" silent
check "the fit fits into 80 columns" narrow
"$ohmcurve" fit 5.79k@0C 2.45k@20C 322@80C --json >"$work/json"
for name in a b c; do
  on_screen=$(sed -n "s/^$name  *\([0-9.e-]*\) .*/\1/p" "$work/out")
  exact=$(sed "s/.*\"$name\":\([^,]*\),.*/\1/" "$work/json")
  check "$name is printed to the last digit of a double" \
    [ "$(awk "BEGIN { print ($on_screen == $exact) }")" = 1 ]
done
check "the curve goes through the points" has_line '^ *2 *2\.4500 k *20\.00 C *0\.0000 K$'
check "no uncertainty is made up" says 'a [0-9.]* not known'
check "it says why there is no interval" says 'no interval: there are only as many points as coeff'
check "it says that agreement is not known" says 'agreement not known'
check "it says that misfit is not known" says 'misfit not known'
check "there is no correlation then" lacks 'correlation'
cp "$work/out" "$work/first"
run fit 322@80C 5.79k@0C 2.45k@20C
sed -n '/^coeff/,/^$/p' "$work/out" >"$work/second"
sed -n '/^coeff/,/^$/p' "$work/first" >"$work/third"
check "the order of the points does not matter" cmp -s "$work/second" "$work/third"
run fit 5.79k@0C 2.45k@20C
check "two points make a beta" has_line '^beta, 2 points$'
check "what was chosen is told from what was fitted" says 't0_c 25 chosen'
run fit 5.79k@0C 5.8k@0C 2.45k@20C
check "three points at two temperatures make a beta" has_line '^beta, 3 points$'
run fit 5.79k@ice 2.45k@20C
check "ice water is 0 C" has_line '^ *1 *5\.7900 k *0\.00 C '

# ---- more points, limits

limits='5.79k+-30@0C+-0.1 2.45k+-12@20C+-0.1 1.157k+-6@40C+-0.1 322+-2@80C+-0.1'
# Unquoted: words are words.
run fit $limits
check "points with limits are fitted" exits 0
check "uncertainties rest on the limits" says 'intervals rest on the uncertainties given'
check "correlations are told" has_line '^correlation a, b  *-0\.99'
check "every pair of them" says 'b, c  *-0\.99'
check "agreement is told in words" says 'agreement the points'
run fit 5k+-2%@0C 2.45k+-2%@20C 1.4k+-2%@40C 322+-2%@80C
check "points that disagree are told so" says 'the points disagree by more than they claim'
check "and how seldom chance does that" says 'in less than 0\.01 % of such fits'
check "and how large the misfit is" says 'misfit [0-9.]* K more at every point'
run fit 5.79k+-0.1%@0C 2.45k+-0.1%@20C 1.157k+-0.1%@40C 322+-0.1%@80C --json
u=$(sed 's/.*"u_a":\([^,]*\).*/\1/' "$work/out")
run fit 5.79k+-0.2%@0C 2.45k+-0.2%@20C 1.157k+-0.2%@40C 322+-0.2%@80C --json
twice=$(sed 's/.*"u_a":\([^,]*\).*/\1/' "$work/out")
check "limits twice as large make twice the uncertainty, never scaled by agreement" \
  [ "$(awk "BEGIN { print ($twice / $u > 1.999 && $twice / $u < 2.001) }")" = 1 ]
run fit 2.45k+-12@20C+-0.1 322+-2@80C+-0.1 --json
cp "$work/out" "$work/first"
run fit '2.45k±12@20C±0.1' '322±2@80C±0.1' --json
check "the sign for a limit is +- or one character" cmp -s "$work/first" "$work/out"
run fit 2.45k+-12@68F+-0.18 322+-2@80C+-0.1 --json
check "a limit has the unit of its temperature" \
  [ "$(sed 's/.*"u_r0_ohm":\([0-9]*\.[0-9][0-9][0-9]\).*/\1/' "$work/first")" = \
  "$(sed 's/.*"u_r0_ohm":\([0-9]*\.[0-9][0-9][0-9]\).*/\1/' "$work/out")" ]
run fit 2.45k+-1@20C+-0.1 322+-1.0@80C+-0.1 --json
cp "$work/out" "$work/first"
run fit 2.45k+-1.0@20C+-0.1 322+-1@80C+-0.1 --json
check "a limit of 1 is 1 ohm" cmp -s "$work/first" "$work/out"
check "and is a success" exits 0
run fit 2.45k+--1@20C 322+-1@80C
check "a limit below 0 is refused" complains '"-1" is no resistance'
run fit 5.79k@0C 2.45k@20C 1.157k@40C 322@80C
check "without limits the scatter tells" says 'intervals rest on the scatter of the points'
check "the scatter is told in kelvin" says 'the points lie about the fit by [0-9.]* K'

# ---- model, range, answers

run fit 5.79k@0C 2.45k@20C 1.157k@40C 322@80C --model four-term
check "--model four-term has Rref chosen" says 'r_ref_ohm 2450 chosen'
run fit 5.79k@0C 2.45k@20C 1.157k@40C 322@80C --model beta
check "--model beta takes more points" has_line '^beta, 4 points$'
run fit 5.79k@0C 2.45k@20C --model steinhart
check "a misspelt model is met with those there are" refuses 65 'beta, steinhart-hart or four-term'
run fit 5.79k@0C 2.45k@20C 322@80C --from -20C --to 110C
check "--from and --to set the range" says 'range -20 C (.*) to 110 C ('
check "beyond the points a word of doubt" says 'beyond the points nothing shows'
run fit 5.79k@0C 2.45k@20C 322@80C --to 110C
check "one end alone leaves the other at its point" says 'range 0 C (.*) to 110 C ('
run fit 5.79k@0C 2.45k@20C 322@80C --from 50C --to 50C
check "a range without extent is refused" refuses 65 '--from TEMP and a higher --to TEMP'
run fit $limits --at 2.31k,330
check "--at tells the temperature and its interval" says 'means 2\.3100 k 21\.[0-9]* C, give or take'
check "--at takes several" says '330\.00 ohm 79\.[0-9]* C, give or take'
run fit 5.79k@0C 2.45k@20C 322@80C --at 2.45k
check "--at without an interval makes none up" has_line '^means *2\.4500 k *20\.0000 C$'
run fit 5.79k@0C 2.45k@20C 322@80C --at 100k
check "--at beyond the fit is told its reach" refuses 65 'reaches from 5\.790 k to 322\.0 ohm'

# ---- the sensor file

run fit $limits -o "$work/mine.csv"
check "-o writes a sensor file" exits 0
check "-o is told on the screen" says "Written to $work/mine.csv"
cp "$work/mine.csv" "$work/out"
check "the file holds the covariance" has_line '^# covariance: '
check "the file is named after itself" has_line '^# name: mine$'
check "the file keeps the points" has_line '^# fitted to 2450 ohm at 20 C, standard uncertainties 6\.9'
run degrees "$work/mine.csv" 2.31k
check "the file can be used" says '2\.310 k 21\.[0-9]* C'
check "nothing of it is left out" silent
run degrees "$work/mine.csv" 2.31k --json
through_file=$(sed 's/.*"t_c":\([^,}]*\).*/\1/' "$work/out")
run fit $limits --at 2.31k --json
check "it means the same through the file" \
  [ "$(sed 's/.*"t_c":\[\([^]]*\)\].*/\1/' "$work/out")" = "$through_file" ]
run fit $limits -o "$work/named.csv" --name 'stable door'
cp "$work/named.csv" "$work/out"
check "--name names the sensor" has_line '^# name: stable door$'
for model in beta steinhart-hart four-term; do
  run fit 5.79k@0C 2.45k@20C 1.157k@40C 590@60C 322@80C --model $model -o "$work/$model.csv"
  run degrees "$work/$model.csv" 1k
  check "a file of $model can be used" says '1\.000 k 4[0-9]\.[0-9]* C'
  check "a file of $model has no note" silent
done
run fit 5.79k@0C 2.45k@20C 322@80C -o -
check "-o - writes the file in place of the screen" has_line '^# model: steinhart-hart$'
check "and nothing else" lacks 'sureness'
run fit 5.79k@0C 2.45k@20C 322@80C -o - --json
check "-o - and --json are one too many" refuses 64 'in place of all else'
run fit 5.79k@0C 2.45k@20C 322@80C --name mine
check "--name without -o is refused" refuses 64 'write -o FILE too'
run fit 5.79k@0C 2.45k@20C 322@80C -o "$work/x.csv" --name '
# tolerance: 1 %'
check "a name of two lines is refused" refuses 65 'is no name of a sensor'
run fit 5.79k@0C 2.45k@20C 322@80C -o "$work/none/mine.csv"
check "a file that cannot be written is told" refuses 74 'cannot be written'

# ---- what cannot be fitted

run fit 2.45k@20C
check "too few points are refused" refuses 65 'points at two temperatures or more; 1 was given'
run fit 5.79k@0C 2.45k@20C 2.6k@40C
check "contradictory points are named" refuses 65 'contradict each other'
run fit 5.79k+-30@0C 2.45k@20C 322@80C
check "limits are for all or for none" refuses 65 'give one to every point, or to none'
run fit 2.45k@20C 2.45k
check "a point without a temperature is told the notation" complains '"2.45k" is no point'
run fit 2.45k@20C OL@80C
check "over range is no point" complains '"OL" is no resistance'
run fit 2.45k@20C 212@boil
check "boiling water needs its temperature" complains '"boil" is no temperature'
run fit 2.45k@20C 322@80
check "a temperature needs its unit" complains '80'
check "a point that is bad exits 65" exits 65
run fit 5.79k@0C 2.45k@20C junk 322@80C -o "$work/partly.csv"
check "the other points are still fitted" has_line '^steinhart-hart, 3 points$'
check "but the exit status is 65" exits 65
check "and no file is written" [ ! -e "$work/partly.csv" ]
check "and that is said" complains 'no file is written'

# ---- standard input

feed '5.79k@0C\n\n# noted\n 2.45k@20C \r\n322@80C' fit
check "without points standard input is read" has_line '^steinhart-hart, 3 points$'
check "good input is no failure" exits 0
feed '5.79k@0C\njunk\n2.45k@20C\n322@80C\n' fit
check "a bad line is reported by its number" complains '^ohmcurve: standard input, line 2: "junk"'
check "a bad line does not stop the rest" has_line '^steinhart-hart, 3 points$'
check "a bad line exits 65" exits 65
feed '' fit
check "no points at all are refused" refuses 65 '0 were given'
"$ohmcurve" fit <"/" >"$work/out" 2>"$work/err"
status=$?
check "input that cannot be read exits 66" refuses 66 'standard input cannot be read'
awk 'BEGIN { for (i = 0; i < 4100; i++) printf "%.17gk@%.17gC\n", 10 - i / 1000, i / 100 }' |
  "$ohmcurve" fit >"$work/out" 2>"$work/err"
status=$?
check "too many points are refused" refuses 65 'at most 4096 points'

# ---- JSON

run fit 5.79k@0C 2.45k@20C 322@80C --json
check "--json is one line" lines 1
check "it has the model and its parameters" has_line '^{"record":"fit","json":1,"model":"steinhart-hart","a":0\.00[0-9]*,"b":'
check "without an interval it has no uncertainty" lacks '"u_a"'
check "it says what intervals rest on" says '"basis":"no_interval"'
run fit $limits --json --at 2.31k
check "it has covariances" says '"covariance_a_b":-'
check "it has chi-square and its probability" says '"chi_square":[^,]*,"probability":'
check "it has a residual of each point" says '"residual_k":\[[^],]*,[^],]*,[^],]*,[^],]*\]'
check "it has what --at asked for" says '"r_ohm":\[2310\],"t_c":\[[^]]*\],"u_t_c":\['
if command -v python3 >/dev/null 2>&1; then
  check "the JSON of a fit is valid" json
else
  skip "the JSON of a fit is valid" "no python3"
fi
if [ -w /dev/full ]; then
  "$ohmcurve" fit $limits >/dev/full 2>"$work/err" </dev/null
  status=$?
  : >"$work/out"
  check "a full disk is noticed by the screen" refuses 74 'could not be written'
  run fit $limits -o /dev/full
  check "a full disk is noticed by the file" refuses 74 'could not be written'
else
  skip "a full disk is noticed" "no /dev/full"
fi

finish
