#!/bin/sh
# SPDX-License-Identifier: MIT
# The command, as a person and a script meet it. Prints TAP.
LC_ALL=C
export LC_ALL
ohmcurve=${OHMCURVE:-./ohmcurve}
work=$(mktemp -d "${TMPDIR:-/tmp}/ohmcurve.XXXXXX") || exit 1
trap 'rm -rf "$work"' EXIT
trap 'exit 1' HUP INT TERM
sensor=ntc-2k45-20c
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
says() { grep -q -e "$1" "$work/out"; }
complains() { grep -q -e "$1" "$work/err"; }
silent() { [ ! -s "$work/err" ]; }
writes_nothing() { [ ! -s "$work/out" ]; }
lines() { [ "$(wc -l <"$work/out")" -eq "$1" ]; }
one_complaint() { [ "$(wc -l <"$work/err")" -eq 1 ] && complains '^ohmcurve: '; }
# Bytes that continue a character take no column.
narrow() { [ -s "$work/out" ] && tr -d '\200-\277' <"$work/out" | awk 'length > 80 { wide = 1 } END { exit wide }'; }
refuses() { exits "$1" && one_complaint && complains "$2"; }
usage_error() { writes_nothing && refuses 64 "$1"; }
json() {
  [ -s "$work/out" ] || return 1
  while read -r line; do
    printf '%s\n' "$line" | python3 -m json.tool >"$work/json" || return 1
  done <"$work/out"
}

# ---- asking what there is

run
check "without arguments the exit status is 64" exits 64
check "without arguments the usage goes to standard error" complains '^Usage: ohmcurve VERB'
run --help
check "--help succeeds" exits 0
for verb in check degrees ohms parts table help; do
  check "--help lists $verb" says "^  $verb "
done
check "--help fits into 80 columns" narrow
for verb in check degrees ohms parts table help; do
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
for option in at meter leads tolerance level json; do
  check "check --help explains --$option" says "^  --$option"
done
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
check "a required option that is missing is named" usage_error '--at is missing'
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
check "a name of the catalogue wins over a file" exits 0
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
check "check --json writes one line" lines 1
check "the finding has its verdict" says '^{"verdict":"within"'
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
check "OL is refused with a sentence" refuses 65 'OL is no resistance'
run degrees "$sensor" open
check "open is refused with a sentence" refuses 65 'open is no resistance'
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
check "degrees --json has r_ohm and t_c" says '^{"r_ohm":2450,"t_c":'
feed 'junk\n2.45k\n' degrees "$sensor" --json
check "JSON from standard input has the line" says '^{"line":2,"r_ohm":2450,"t_c":'

# ---- parts and table

run parts
check "parts succeeds" exits 0
check "parts lists the sensor" says "^$sensor "
check "parts fits into 80 columns" narrow
run parts --json
check "parts --json has name and range" says "^{\"sensor\":\"$sensor\".*\"low_c\":.*\"high_c\":"
run table "$sensor"
check "table succeeds" exits 0
check "table fits into 80 columns" narrow
check "table has round temperatures" says '^ *20 C .* 2\.450 k '
run table "$work/good.csv" --from 1C --to 9.5C --step 3 --json
check "rows are counted from --from and end at --to" \
  [ "$(sed 's/^{"t_c":\([0-9.]*\),.*/\1/' "$work/out" | tr '\n' ' ')" = "1 4 7 9.5 " ]
check "absent limits are absent keys" says '^{"t_c":1,"nominal_ohm":[0-9.]*}$'
run table "$work/good.csv"
check "absent limits are - on the screen" says '^ *10 C  *-  *2\.000 k  *-$'
run table "$work/good.csv" --from 0C --to 1C --step 0.1 --json
check "tenths stay tenths" says '^{"t_c":0.3,'
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

# ---- the manual page

page=bindings/shell/ohmcurve.1
if [ -f "$page" ]; then
  cp "$page" "$work/out"
  for verb in check degrees ohms parts table help; do
    check "the manual page has $verb" says "^\.SS ohmcurve $verb"
  done
  sed -n 's/\\-/-/g; s/^# \([a-z0-9_]*: .*\)/# \1/p' "$page" >"$work/door.csv"
  run table "$work/door.csv"
  check "the sensor file of the manual page can be used" exits 0
  check "nothing of it is left out" silent
else
  skip "the manual page has every verb" "no manual page is built"
fi
if [ -f "$page" ] && command -v groff >/dev/null 2>&1; then
  groff -man -ww -z "$page" >"$work/out" 2>"$work/err"
  check "the manual page is formatted without a warning" silent
else
  skip "the manual page is formatted without a warning" "no groff or no manual page"
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

echo "1..$count"
[ "$failures" -eq 0 ]
