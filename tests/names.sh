#!/bin/sh
# SPDX-License-Identifier: MIT
# One noun, one name; one room that opens files; no room that prints or ends the
# program, or asks the locale.
: "${srcdir:=.}"
cd "$srcdir" || exit 1
failed=0
fail() {
  echo "$*" >&2
  failed=1
}

# Rooms without a test program of their own, and the one that covers them.
covered="next_test:isolation wired_link:wiring_file wired_test:wired_circuit wired_fan:wired_circuit wired_relay:wired_circuit wired_fuse:wired_circuit wired_point:wired_circuit wired_heat:wired_circuit bigint:number built_in:sensor_built_in circuit_built_in:circuit circuit_cells:circuit_file companions:soak contributions:likelihood complaints:table_file deduction:isolation field:finding fitted:fit_answer next_reading:identify notation:reading path_point:signal_path platinum:models printed:audit reading_lines:report report_expect:expect report_explain:explain report_identify:identify report_isolation:isolation report_signal_path:signal_path report_soak:soak report_substitute:substitute report_terminals:terminals sensor_build:sensor_file silicon:models suspect:audit text:status told:bath trial:explain"

# Names of headers of ISO C, POSIX and common systems.
taken="assert complex ctype errno fenv float inttypes iso646 limits locale math setjmp
signal stdalign stdarg stdatomic stdbool stddef stdint stdio stdlib stdnoreturn string
tgmath threads time uchar wchar wctype aio cpio dirent dlfcn fcntl fmtmsg fnmatch ftw
glob grp iconv langinfo libgen monetary mqueue ndbm netdb nl_types poll pthread pwd
regex sched search semaphore spawn strings stropts syslog tar termios trace ulimit
unistd utime utmpx wordexp alloca argp byteswap elf endian err error execinfo features
link malloc memory obstack printf resolv values version crypt curses term"

rooms=
for source in lib/*/*.c; do
  room=${source##*/}
  room=${room%.c}
  [ "$room" = tables_data ] || rooms="$rooms $room"
done
[ -n "$rooms" ] || fail "lib/ has no rooms"
for room in $rooms; do
  test=$room
  for pair in $covered; do
    [ "${pair%%:*}" != "$room" ] || test=${pair#*:}
  done
  ls tests/*/test_"$test".c >/dev/null 2>&1 || fail "lib/*/$room.c has no tests/*/test_$test.c"
  for name in $taken; do
    [ "$room" != "$name" ] || fail "lib/*/$room.c bears the name of a system header, $name.h"
  done
done
for pair in $covered; do
  ls lib/*/"${pair%%:*}".c >/dev/null 2>&1 ||
    fail "tests/names.sh covers a room ${pair%%:*}, which does not exist"
  ! ls tests/*/test_"${pair%%:*}".c >/dev/null 2>&1 ||
    fail "tests/names.sh need not cover ${pair%%:*} any more"
done

# calls NAMES FILE...: lines that call one of them, comments aside
calls() {
  names=$1
  shift
  grep -nE "(^|[^a-zA-Z0-9_])($names) *\(" "$@" /dev/null | grep -vE '^[^:]*:[0-9]*: *(/\*|\*)'
}
others=
for source in lib/*/*.[ch]; do
  [ "$source" = lib/ground/file.c ] || others="$others $source"
done
calls 'f?open|freopen|fdopen|openat|opendir|creat|popen|mmap' $others &&
  fail "only lib/ground/file.c may open anything"
calls 'v?f?printf|v?s?n?printf|f?puts|putchar|fputc|fwrite|perror|exit|_Exit|abort|assert|raise' lib/*/*.[ch] &&
  fail "no room prints or ends the program"
calls 'setlocale|localeconv|strto[dfl]|strtold|ato[fil]|v?f?s?scanf|strcoll|strftime|is(alpha|alnum|space|upper|lower|punct|print)|to(upper|lower)|strcasecmp' lib/*/*.[ch] &&
  fail "no room depends on the locale"
exit $failed
