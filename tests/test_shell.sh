#!/bin/sh
# SPDX-License-Identifier: MIT
# The command, as a person and a script meet it. Prints TAP.
# shellcheck source=tests/tap.sh
. "${srcdir:-.}/tests/tap.sh"
sensor=ntc-2k45-20c
verbs='check expect identify explain soak degrees ohms parts table chart audit fit circuit signal substitute
  fanpoint help'

says() { grep -q -e "$1" "$work/out"; }
lacks() { ! says "$1"; }
refuses() { exits "$1" && one_complaint && complains "$2"; }
usage_error() { writes_nothing && refuses 64 "$1"; }
json() {
  [ -s "$work/out" ] || return 1
  while read -r line; do
    printf '%s\n' "$line" | python3 -m json.tool >"$work/json" || return 1
  done <"$work/out"
}

# ---- expect

run expect $sensor --at 21.5C
check "expect tells and exits 0" exits 0
check "expect says what passes" says '^Passes      a display of 2.134 k to 2.515 k'
run expect $sensor --at 21.5C --json
check "expect --json writes one line" json
run expect $sensor
check "expect without a temperature asks for it" refuses 64 'write --at, such as 21.5C'

# ---- asking what there is

run
check "without arguments the exit status is 64" exits 64
check "without arguments the usage goes to standard error" complains '^Usage: ohmcurve VERB'
run --help
check "--help succeeds" exits 0
for verb in $verbs; do
  check "--help lists $verb" says "^  $verb "
done
check "--help fits into 80 columns" narrow
for verb in $verbs; do
  run "$verb" --help
  cp "$work/out" "$work/first"
  check "$verb --help begins with its usage" says "^Usage: ohmcurve $verb"
  check "$verb --help fits into 80 columns" narrow
  run help "$verb"
  check "help $verb succeeds" exits 0
  check "help $verb says the same as $verb --help" cmp -s "$work/first" "$work/out"
done
run check --help
check "--help asks for nothing else" exits 0
for option in at place fan limit band tolerance meter leads current level budget json; do
  check "check --help explains --$option" says "^  --$option"
done
for notation in boil boil@1200m boil@870hPa infrared@80C ice OL OL@20k open 1 unknown; do
  check "check --help explains $notation" says "^  $notation "
done
for notation in '>20k' 2k31; do
  check "check --help has $notation" says "$notation"
done
check "check --help has the defaults of the settings" says '(default: 97C)'
check "and what is allowed" says 'above 0C'
check "and where the probes can be" says 'sensor (at its own pins'
check "and what ice water is taken to be good to" says 'take 0\.5'
check "an option that takes nothing has no default" lacks 'default: no)'
check "check --help says where the fan's verdict is" says 'key job'
run --version
check "--version names the library and the tables" says '^ohmcurve [0-9.]*, sensor tables [0-9]'

# ---- what cannot be understood

run chekc "$sensor" 2.31k --at 20C
check "a misspelt verb is met with the nearest" usage_error 'did you mean check'
run help degreess
check "a misspelt verb after help too" usage_error 'did you mean degrees'
run qqqqqqqq
check "a verb near none is refused" usage_error 'no verb "qqqqqqqq"'
run --hepl
check "a misspelt option of the program is met with the nearest" usage_error 'did you mean --help'
run --json parts
check "an option before the verb is refused" usage_error 'write the verb first'
run check "$sensor" 2.31k --at 20C --levle 0.9
check "a misspelt option is met with the nearest" usage_error 'did you mean --level'
run check "$sensor" 2.31k --at 20C --tol 5%
check "a cut option is not taken, but the whole one offered" usage_error 'did you mean --tolerance'
run parts --at 20C
check "an option of another verb is refused" usage_error 'parts has no option --at'
run check "$sensor" 2.31k
check "a temperature that is missing is asked for by its option" usage_error 'write --at'
run check "$sensor" --at 20C
check "an operand that is missing is named" usage_error 'OHMS is missing'
run check "$sensor" 2.31k --at
check "an option without its value is told what to write" usage_error 'write --at TEMP'
run check "$sensor" 2.31k --at --json
check "an option is no value of another" usage_error 'write --at TEMP'
run check "$sensor" 2.31k --at=20C --json=yes
check "a value for an option that takes none is refused" usage_error '--json takes no value'
run check "$sensor" 2.31 kohm --at 20C
check "an extra operand is named" usage_error '"kohm" is one word too many'
run help check degrees
check "a verb takes no more operands than it says" usage_error '"degrees" is one word too many'

# ---- which sensor

run degrees ntc-2k54-20c 2.31k
check "a misspelt sensor is met with the nearest" \
  refuses 66 'no sensor is called ntc-2k54-20c; did you mean ntc-2k45-20c? .ohmcurve parts. lists them'
run degrees qqqqqqqq 2.31k
check "a sensor near none is refused" refuses 66 'no sensor is called "qqqqqqqq"'
run degrees "$work/absent.csv" 2.31k
check "a sensor file that is absent is refused" refuses 66 'absent.csv'
run degrees "$work" 2.31k
check "a directory is no sensor file" refuses 66 'directory'
cat >"$work/good.csv" <<'END'
# name: bench
# source: invented for this test
temp_c,r_nom_ohm
0,3000
10,2000
junk,9
20,1000
END
run degrees "$work/good.csv" 2000
check "a sensor file is read" says '10\.00 C$'
check "what loading left out is noted" complains '^note: .*line 6'
check "a note is no failure" exits 0
printf 'temp_c,r_nom_ohm\n0,1000\n10,2000\n5,1\n' >"$work/bad.csv"
run degrees "$work/bad.csv" 1500
check "a sensor file that makes no curve is refused" refuses 65 'bad.csv'
(cd "$work" && cp good.csv plainname)
here=$(pwd)
case $ohmcurve in /*) ;; *) ohmcurve=$here/$ohmcurve ;; esac
cd "$work" || exit 1
run degrees plainname 2000
check "any file that exists is a sensor file" says '10\.00 C$'
printf 'no sensor\n' >"$sensor"
run degrees "$sensor" 2.45k
check "a name built in wins over a file" exits 0
run degrees "./$sensor" 2.45k
check "a name with a slash is a file" exits 65
cd "$here" || exit 1

# ---- check

set -- --meter exact --leads 0+-0 --at 20C+-0.1
run check "$sensor" 2.45k --tolerance 10% "$@"
check "within exits 0" exits 0
check "the report fits into 80 columns" narrow
check "the report speaks on standard output alone" silent
run check "$sensor" 5k --tolerance 10% "$@"
check "outside exits 1" exits 1
run check "$sensor" 2.45k --at 20C --tolerance 1% --level 0.999
check "undecided exits 2" exits 2
run check "$sensor" OL --at 20C
check "an over-ranged display can be checked" [ "$status" -le 2 ]
run check "$sensor" 2.45k --tolerance=10% "$@"
check "an option may take its value after =" exits 0
run check "$sensor" 2.45k --tolerance junk "$@" --tolerance 10%
check "of an option given twice the last counts" exits 0
run check --json --tolerance 10% "$@" "$sensor" -- 2.45k
check "options may stand first, and end at --" exits 0
check "check --json writes a line for the reading, and one of all" lines 2
check "the line of a reading says so" says '^{"record":"reading","json":1,'
check "the finding has its verdict" says '^{"record":"finding","json":1,"verdict":"within"'
check "the finding has the version that made it" says '"version":"'
run check "$sensor" junk --at 20C
check "a reading that is none is refused" refuses 65 'junk'
run check "$sensor" 2.31k --at 20
check "a temperature without its unit is refused" refuses 65 '20'
run check "$sensor" 2.31k --at 900C
check "beyond what the maker printed the verdict is undecided" exits 2
for spec in --meter=junk --leads=junk --tolerance=junk --level=junk --level=95% --level=0.5 --level=1; do
  run check "$sensor" 2.31k --at 20C "$spec"
  check "$spec is refused with what was written" refuses 65 "${spec#*=}"
done
run check "$sensor" 2.31k 0.97V --at 20C
check "a reading that check does not look at is refused" refuses 65 '"0.97V" is no reading of ohms'
run check "$sensor" 2.31k 21.5C
check "a temperature in a word of its own is no reading" refuses 65 '"21.5C" is no reading of ohms'

# ---- check: what the display showed

# shows READING SENTENCE STATUS: what the report says of a reading, and the exit status.
shows() {
  run check "$sensor" "$1" --at 20C
  check "$1 is met with its sentence" says "$2"
  check "$1 exits $3" exits "$3"
}
shows OL 'that is not yet open' 2
shows OL@20k 'over range on 20 k' 1
shows '>20k' 'over range on 20 k' 1
shows OL@200 'that is not yet open' 2
shows open 'no circuit' 1
shows 1 'a lone 1' 2
shows 2.45 'did you mean 2.45 k' 2
shows 0 'shorted' 1
shows 2k45 '2.45 k' 0
shows 1.2k 'is the plug off' 2
shows '2.45 kohm' '2.45 k' 0
run check "$sensor" OL@20k --at 20C --json
check "the range is the key range_ohm" says '"range_ohm":20000,'
run check "$sensor" 2.45 --at 20C --json
check "what was probably meant is the key suggested_ohm" says '"suggested_ohm":2450,'
run check "$sensor" 2,45k --at 20C
check "a comma is refused with the point that was meant" refuses 65 'write 2.45k'

# ---- check: how warm it is

# knows TEMP DEGREES LIMIT: of a reference, what is told.
knows() {
  run check "$sensor" 200 --at "$1" --json
  check "$1 is $2 C" says "\"at_c\":$2"
  check "$1 is known to $3" says "\"reference_limit_k\":$3,"
}
knows ice 0 0.5
knows boil 100 1
knows boil@1200m 96 0.4
knows boil@870hPa 95 0.2
knows infrared@80C 80 4
knows 20C 20 2
knows 20C+-0.5 20 0.5
run check "$sensor" 200 --at boil@1200m,870hPa
check "a pressure given with an altitude is refused" refuses 65 'both altitude and pressure'

# ---- check: options that say how to judge

printf '# dissipation_mw_per_k: 5\ntemp_c,r_nom_ohm\n0,3000\n20,1000\n' >"$work/warm.csv"
set -- --meter exact --leads 0+-0 --at 20C+-0.1 --json
for place in sensor plug-on module; do
  run check "$sensor" 2.45k --place $place "$@"
  check "--place $place is told" says "\"place\":\"$(echo $place | tr - _)\""
done
run check "$sensor" 2.45k "$@"
check "a place that was not told is not_told" says '"place":"not_told"'
check "the fan starts at 97 C unless told" says '"fan_c":97,'
check "it may be late by 5 C unless told" says '"limit_k":5,'
check "the fan's verdict is the key job" says '"job":"[a-z]*","job_reason":"[a-z_]*"'
run check "$sensor" 2.45k --place bench "$@"
check "a place that is none is told the places" refuses 65 'write sensor, plug_on, module'
run check "$sensor" 2.45k --fan 92C "$@"
check "--fan is told" says '"fan_c":92,'
for fan in 92 0C 130C junk; do
  run check "$sensor" 2.45k --fan $fan "$@"
  check "--fan $fan is refused" refuses 65 "$fan"
done
for limit in 3 3K 3C '3 K'; do
  run check "$sensor" 2.45k --limit "$limit" "$@"
  check "--limit $limit is 3 kelvin" says '"limit_k":3,'
done
run check "$sensor" 2.45k --limit 9F "$@"
check "--limit 9F is 5 kelvin" says '"limit_k":5,'
for limit in 0 -1 101 junk; do
  run check "$sensor" 2.45k --limit=$limit "$@"
  check "--limit $limit is refused" refuses 65 "\"$limit\" cannot be used: write above 0C up to 100C"
done
run check "$sensor" 2.6k --band toyota-yaris-2007 "$@"
check "--band is told" says '"band":"toyota-yaris-2007"'
check "a tighter band condemns what the widest allows" exits 1
check "the other bands are told" says '"other_bands":\["'
run check "$sensor" 2.6k "$@"
check "without it the widest is taken" exits 0
run check "$sensor" 2.6k --band toyota-yaris-2070 "$@"
check "a misspelt band is met with the nearest" refuses 65 'did you mean toyota-yaris-2007?'
run check "$work/warm.csv" 2k --band x --at 10C
check "a sensor without bands says so" refuses 65 'no other of any maker: leave it out'
run check "$sensor" 2.6k --band toyota-yaris-2007 --tolerance 5% --at 20C
check "two options that say what is allowed are refused" usage_error '--band and --tolerance'
for current in 1mA 1000uA '1 mA' 0.001A; do
  run check "$work/warm.csv" 2k --at 10C --leads 0+-0 --json --current "$current"
  check "--current $current warms the sensor" says '"heating_k":0\.\(4\|39999\)'
done
for current in 0mA 1 2A mA junk; do
  run check "$work/warm.csv" 2k --at 10C --current $current
  check "--current $current is refused" refuses 65 "\"$current\" cannot be used: write above 0mA up to 1000mA"
done
run check "$sensor" 2.45k --at 20C --budget
check "--budget adds the causes" says '^meter  *[0-9.]* ohm'
check "--budget comes after the report" says '^VERDICT'
run check "$sensor" 2.45k --at 20C
check "without --budget there are none" lacks '^meter '

# ---- check: several readings

run check "$sensor" 2.45k@20C --meter exact
check "a reading may carry its temperature" says '^It really is 20.0 C'
run check "$sensor" 2.45k@20C --at 80C
check "its own temperature wins over --at" says '^It really is 20.0 C'
run check "$sensor" 200@boil@1200m --json
check "a temperature may hold an @" says '"reference":"boil_altitude"'
run check "$sensor" OL@20k@21C --json
check "a range stays with the reading" says '"at_c":21,.*"read":"over range on 20 k"'
run check "$sensor" 300@infrared@80C+-3 --json
check "a temperature may hold an @ and a limit" says '"reference_limit_k":3,'
run check "$sensor" OL@20k
check "a range is no temperature" usage_error 'temperature of OL@20k is missing'
run check "$sensor" OL@20K
check "not even in capitals" usage_error 'temperature of OL@20K is missing'
run check "$sensor" 2.45k@20
check "a temperature behind @ needs its unit" refuses 65 '"20" has no unit'
run check "$sensor" junk@20C
check "a bad reading with a temperature is named" refuses 65 '"junk" is no reading'
run check "$sensor" 2.45k@20C 1.66k
check "every reading needs a temperature" usage_error 'temperature of 1.66k is missing'
run check "$sensor" 2.45 kohm --at 20C
check "a unit in a word of its own is one word too many" usage_error '"kohm" is one word too many'
set -- 2.45k@20C 330@80C
run check "$sensor" "$@"
check "several readings begin with their table" says '^read  *at  *means$'
check "the table has what was read, how warm it was, what it means" \
  says '^2.45 k  *20.0 C  *20.0 C$'
check "the report of all together follows" says '^VERDICT '
check "several readings fit into 80 columns" narrow
run check "$sensor" "$@" --json
check "several readings make a line each, and one of all together" lines 3
check "the last line has how many they were" \
  [ "$(sed 's/.*"readings":\([0-9]*\).*/\1/' "$work/out" | tr '\n' ' ')" = "1 1 2 " ]
run check "$sensor" "$@" --budget
check "each of several readings has its budget" [ "$(grep -c ', by itself$' "$work/out")" -eq 2 ]
run check "$sensor" 2.31k 2.36k --at 21.5C
check "a reading that still moves is not judged" says 'still moving'
check "still moving exits 2" exits 2
run check "$sensor" 2.31k,plug_on 2.31k,sensor --at 21.5C
check "readings of two places are not judged together" usage_error 'at different places'
run check "$sensor" 2.31k,sensor 2.37k,module --at 21.5C
check "those of both ends tell plug and wires" says '^Plug, wires .* give or take'
run check "$sensor" 2.31k,sensor --at 21.5C
check "a reading may carry its place" says 'plug off, at the sensor.s own pins'
run check "$sensor" 2.31k 2.36k --at 21.5C --json
check "what it moved by is the key moved_ohm" says '"reason":"moving".*"moved_ohm":50'
run check "$sensor" 2.36k 2.31k 2.31k --at 21.5C --place sensor
check "a reading that stands still is judged" exits 0
run check "$sensor" 1k 1k 1k 1k 1k 1k 1k 1k 1k 1k 1k 1k 1k 1k 1k 1k 1k --at 20C
check "too many readings are refused" refuses 65 'more than 16 readings'

# ---- a sensor by words, or unknown

run degrees 'mazda bt-50 2021' 2.45k
check "words that fit one sensor are taken" says '20\.00 C$'
check "what was taken is said" \
  complains "^taken: $sensor (.*); one reading near 20 C tells whether it is this family\$"
check "words that fit are no failure" exits 0
run check 'MAZDA BT-50' 2.45k --at 20C --json
check "words may be in capitals, and JSON stays alone" lines 2
run check mazda 2.45k --at 20C
check "words that fit several exit 66" exits 66
check "words that fit several choose none" writes_nothing
check "all that fit are listed" [ "$(grep -c '^  ntc-' "$work/err")" -gt 1 ]
check "and named as what they fit" complains 'sensors fit "mazda"'
run check 'mazda qqqq' 2.45k --at 20C
check "words that fit none are refused" refuses 66 'ohmcurve parts'
set -- unknown 2.45k --at 20C
run check "$@"
check "an unknown sensor exits 2" exits 2
check "an unknown sensor is identified" says '^none of these '
check "it says that what names it cannot check it" says 'readings that name it cannot check it'
check "an unknown sensor fits into 80 columns" narrow
run check "$@" --json
check "the JSON of an unknown sensor exits 2" exits 2
check "the last line of it is the finding" says '"record":"finding".*"about":"identify"'
run check unknown 2.45k@20C 330@80C
check "an unknown sensor may have several readings" says '^VERDICT '
run check unknown OL@20C 0.3@95C
check "a radiator fan switch is named" says '^VERDICT  *A RADIATOR FAN SWITCH'
check "a radiator fan switch exits 0" exits 0
for option in --budget --band=x; do
  run check "$@" $option
  check "${option%=*} is no question to an unknown sensor" usage_error "${option%=*} is about one"
done
run degrees unknown 2.45k
check "unknown is for check alone" refuses 66 'for check alone'

# ---- degrees and ohms

run degrees "$sensor" 2.45k
check "degrees writes resistance and temperature" says '^2\.450 k  *20\.00 C$'
run ohms "$sensor" 20C
check "ohms writes temperature and resistance" says '^20\.00 C  *2\.450 k$'
run ohms "$sensor" -10C
check "-10C is a value and no option" says '^-10\.00 C '
run degrees "$sensor" 2.45k junk 1k
check "a bad value among arguments exits 65" refuses 65 'junk'
check "the other arguments are converted" lines 2
run degrees "$sensor" OL
check "OL is refused with a sentence" refuses 65 '"OL" is no resistance'
run degrees "$sensor" open
check "open is refused with a sentence" refuses 65 '"open" is no resistance'
run degrees "$sensor" 1
check "a lone 1 is refused with a sentence" refuses 65 '1 alone is over range on many displays'
run degrees "$sensor" 1.0
check "a resistance beyond the curve is told its range" refuses 65 'reaches from'
run degrees "$sensor" 2.45
check "a k that was left out is asked for" refuses 65 'add a k$'
run ohms "$sensor" 900C
check "a temperature beyond the curve is told its range by ohms" refuses 65 'reaches from'
run ohms "$sensor" 20
check "ohms asks for the unit" refuses 65 '20'
feed '2.45k\n\n# noted\n  1k  \r\n' degrees "$sensor"
check "standard input skips blank lines and comments" lines 2
check "good input is no failure" exits 0
check "good input leaves standard error alone" silent
feed '2.45k\n# noted\njunk\n1k\n' degrees "$sensor"
check "a bad line is reported by its number" \
  refuses 65 '^ohmcurve: standard input, line 3: '
check "a bad line does not stop the rest" lines 2
feed '2.45k\n1k' degrees "$sensor"
check "a last line needs no end" lines 2
feed '\357\273\2772.45k\n' degrees "$sensor"
check "a byte order mark is skipped" exits 0
feed '2.45k\0junk\n1k\n' degrees "$sensor"
check "a NUL byte makes a bad line" refuses 65 'line 1: '
check "the line after a NUL byte is converted" lines 1
{ dd if=/dev/zero bs=1024 count=150 2>/dev/null | tr '\0' 1; printf '\n2.45k\n'; } >"$work/long"
"$ohmcurve" degrees "$sensor" <"$work/long" >"$work/out" 2>"$work/err"
status=$?
check "a line too long is one bad line" refuses 65 'line 1: '
check "the line after it is converted" lines 1
feed '-10C\n70F\n' ohms "$sensor"
check "ohms reads standard input" lines 2
feed '' degrees "$sensor"
check "empty input is no failure" exits 0
"$ohmcurve" degrees "$sensor" <"/" >"$work/out" 2>"$work/err"
status=$?
check "input that cannot be read exits 66" refuses 66 'standard input cannot be read'
run degrees "$sensor" 2.45k --json
check "degrees --json has r_ohm and t_c" says '^{"record":"conversion","json":1,"r_ohm":2450,"t_c":'
feed 'junk\n2.45k\n' degrees "$sensor" --json
check "JSON from standard input has the line" says '^{"record":"conversion","json":1,"line":2,"r_ohm":2450,"t_c":'

# ---- identify

run identify 330@80C
check "sensors not told apart exit 2" exits 2
check "identify fits into 80 columns" narrow
check "identify says what each would read" says '^ntc-3k5-20c  *[0-9]*  *module  *3\.[0-9]* k$'
check "identify says where to measure" says 'measure near 20 C, thermometer beside'
run identify 37.4k@20C+-0.5 3.7k@80C+-0.5
check "a sensor that is found exits 0" exits 0
check "identify names it" says 'it is ntc-37k-20c'
run identify 480 --at 35C
check "none of these exits 1" exits 1
check "none of these has no chances" says '^ntc-288r-45c  *-  *gauge  fits badly$'
run identify 210@50C
check "a gauge's sender is said to be one" says "gauge's sender"
run identify OL@20C
check "over range identifies nothing" exits 2
check "and no sensor is shown" lacks '^it may be'
run identify 330@80C --json
check "identify --json has a line for each and one for all" \
  [ "$(wc -l <"$work/out")" -gt 20 ]
check "identify --json ends with what they come to" \
  sh -c "tail -n 1 '$work/out' | grep -q '\"reason\":\"several\"'"
printf '# name: mine\n# kind: module\ntemp_c,r_nom_ohm\n0,90\n20,50\n80,20\n' >"$work/mine.csv"
run identify 50@20C 20@80C --sensor "$work/mine.csv"
check "a sensor given is compared too" says 'it is mine'
run identify 50@20C --sensor "$work/none.csv"
check "a file that is not there is refused" exits 66
run identify --pins --at 50C 1-3=810 1-2=OL 2-body=210.0
check "identify --pins names the module's element" exits 0
check "with a line for each pair" says "^1-3  *810 ohm: the module's element"
check "and what they come to" says 'element is on 1-3'
run identify --pins --at 50C 1-3=810 480
check "a reading that is no pair of pins is refused" refuses 65 'takes pairs of pins'
run identify --pins 1-3=810
check "pins ask for the temperature by its option" usage_error 'write --at'
run identify 330
check "identify asks for the temperature" refuses 64 'temperature of 330 is missing'
run identify
check "identify asks for a reading" exits 64

# ---- parts and table

run explain "$sensor" 2.35k@21.5C 313@88C --leads 0.4 --place module
check "explain writes what would explain the readings" says '^In series  *42 ohm'
check "what is not as it should be exits 1" exits 1
run explain "$sensor" 2.35k@900C
check "explain refuses what the curve does not reach" refuses 65 'lies outside the curve'

run parts
check "parts succeeds" exits 0
check "parts lists the sensor" says "^$sensor "
check "parts fits into 80 columns" narrow
run parts --json
check "parts --json has name and range" says "^{\"record\":\"sensor\",\"json\":1,\"sensor\":\"$sensor\".*\"low_c\":.*\"high_c\":"
check "parts --json has the bands and their sources" \
  says '"bands":\["[^]]*toyota-yaris-2007[^]]*\],"band_sources":\["'
run parts
check "parts names the bands" says 'toyota-yaris-2007'
run parts mazda bt-50
check "parts takes words to narrow" [ "$(grep -c '^ntc-' "$work/out")" -eq 1 ]
check "narrowed, the bands have their sources" says 'Toyota Yaris 2007'
check "narrowed, parts fits into 80 columns" narrow
run parts mazda qqqq
check "words that no sensor has are refused" refuses 66 '"mazda qqqq"'
run table "$sensor" --band kia-optima-2020 --from 20C --to 80C --step 20
check "table --band names the band and its source" says '^Allowed: kia-optima-2020$'
check "table --band has that maker's limits" says '^ *20 C  *2\.310 k  *2\.450 k  *2\.590 k$'
check "table --band has none where the maker printed none" says '^ *80 C  *-  *322\.2 ohm  *-$'
check "table --band fits into 80 columns" narrow
run table "$sensor" --band kia-optima
check "table meets a misspelt band with the nearest" refuses 65 'did you mean kia-optima-2020'
run table "$sensor"
check "table succeeds" exits 0
check "table fits into 80 columns" narrow
check "table has round temperatures" says '^ *20 C .* 2\.450 k '
run table "$work/good.csv" --from 1C --to 9.5C --step 3 --json
check "rows are counted from --from and end at --to" \
  [ "$(sed 's/.*,"t_c":\([0-9.]*\),.*/\1/' "$work/out" | tr '\n' ' ')" = "1 4 7 9.5 " ]
check "absent limits are absent keys" says '^{"record":"row","json":1,"t_c":1,"nominal_ohm":[0-9.]*}$'
run table "$work/good.csv"
check "absent limits are - on the screen" says '^ *10 C  *-  *2\.000 k  *-$'
run table "$work/good.csv" --from 0C --to 1C --step 0.1 --json
check "tenths stay tenths" says '"t_c":0.3,'
run table "$sensor" --from 20C --to 10C
check "ends in the wrong order are refused" refuses 65 '--from is above --to'
run table "$sensor" --to 900C
check "an end beyond the curve is told its range" refuses 65 '--to 900C .* reaches from'
for step in 0 -1 junk 1e-9; do
  run table "$sensor" "--step=$step"
  check "a step of $step is refused" refuses 65 "\"$step\" is no step"
done

# ---- JSON is JSON

if command -v python3 >/dev/null 2>&1; then
  run check "$sensor" 2.45k --at 20C --json
  check "the JSON of check is valid" json
  run check "$sensor" 2.45k@20C 330@80C --json
  check "the JSON of several readings is valid" json
  run check unknown 2.45k --at 20C --json
  check "the JSON of an unknown sensor is valid" json
  run degrees "$sensor" 2.45k 1k --json
  check "the JSON of degrees is valid" json
  run parts --json
  check "the JSON of parts is valid" json
  run table "$sensor" --json
  check "the JSON of table is valid" json
  printf '# name: a "quoted" \\ \377 name\ntemp_c,r_nom_ohm\n0,3000\n20,1000\n' >"$work/odd.csv"
  run check "$work/odd.csv" 2k --at 10C --json
  check "texts of a sensor file stay valid JSON" json
else
  for name in check degrees parts table "a sensor file"; do
    skip "the JSON of $name is valid" "no python3"
  done
fi

# ---- the manual pages

pages=bindings/shell
# escaped TEXT: as a regular expression for what a page has of it.
escaped() { printf '%s\n' "$1" | sed 's/-/\\\\-/g'; }
if [ -f "$pages/ohmcurve.1" ]; then
  for verb in $verbs; do
    cp "$pages/ohmcurve.1" "$work/out"
    check "the manual page has $verb" says "^\.SS ohmcurve $verb"
    page=$pages/ohmcurve-$verb.1
    "$ohmcurve" help "$verb" >"$work/help"
    cp "$page" "$work/out"
    check "the page of $verb names it" says "^ohmcurve.-$verb .- "
    for option in $(sed -n 's/^  \(--[a-z-]*\).*/\1/p' "$work/help"); do
      check "the page of $verb has $option" says "^.fB$(escaped "$option")"
    done
    for word in $(sed -n '/^What to write/,$s/^  \([^ ][^ ]*\)  .*/\1/p' "$work/help"); do
      check "the page of $verb has $word" says "^.f[BI]$(escaped "$word").fR"
    done
  done
  cp "$pages/ohmcurve-audit.1" "$work/out"
  for code in 0 1 65; do
    check "the page of audit has exit status $code" says "^.fB$code.fR$"
  done
  check "the page of audit has no exit status of a verdict" lacks "of a verdict"
  sed -n 's/\\-/-/g; s/^# \([a-z0-9_]*: .*\)/# \1/p' "$pages/ohmcurve.1" >"$work/door.csv"
  run table "$work/door.csv"
  check "the sensor file of the manual page can be used" exits 0
  check "nothing of it is left out" silent
else
  skip "the manual pages have every verb and option" "no manual page is built"
fi
cp "$pages/ohmcurve.3" "$work/out"
for name in $(cat lib/libohmcurve.sym); do
  check "the page of the library has $name" says "[ *]$name("
done
page_of() { grep -q -e "^$1 .- ." -e '^\.so man3/ohm_' "$pages/$1.3"; }
for name in $(cat lib/libohmcurve.sym); do
  check "$name has a page of its own" page_of "$name"
done
if command -v groff >/dev/null 2>&1; then
  for page in "$pages"/ohmcurve*.[13]; do
    groff -man -ww -z "$page" >"$work/out" 2>"$work/err"
    check "${page##*/} is formatted without a warning" silent
    groff -man -Tascii -P-cbou -rLL=80n "$page" >"$work/out" 2>"$work/err"
    check "${page##*/} fits into 80 columns" narrow
  done
  groff -man -ww -z "$pages"/ohm_*.3 >"$work/out" 2>"$work/err"
  check "the pages of the functions are formatted without a warning" silent
  groff -man -Tascii -P-cbou -rLL=80n "$pages"/ohm_*.3 >"$work/out" 2>"$work/err"
  check "the pages of the functions fit into 80 columns" narrow
else
  skip "the manual pages are formatted without a warning" "no groff"
fi

# ---- output that fails

if [ -w /dev/full ]; then
  for words in --help --version "parts" "table $sensor" "degrees $sensor 1k" \
    "check $sensor 2.45k --at 20C"; do
    # Unquoted: words are words.
    "$ohmcurve" $words >/dev/full 2>"$work/err" </dev/null
    status=$?
    check "a full disk is noticed by ${words%% *}" refuses 74 'could not be written'
  done
else
  skip "a full disk is noticed" "no /dev/full"
fi
: >"$work/err"
while :; do echo 1k; done 2>/dev/null | {
  "$ohmcurve" degrees "$sensor" 2>"$work/err"
  echo $? >"$work/status"
} | sed 1q >"$work/out"
status=$(cat "$work/status")
check "a reader that goes away ends an endless conversion" refuses 74 'could not be written'

finish
