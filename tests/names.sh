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
covered="bigint:number case:isolation circuit_draft:circuit_file draft:sensor_file field:finding further:identify platinum:models printed:audit report_bath:report report_explain:explain report_identify:identify report_isolation:isolation report_pins:pins report_pin:pin report_soak:soak report_substitute:substitute sentence:report silicon:models start:pin station:pin suspect:audit text:status"

# Names of headers of ISO C, POSIX and common systems.
taken="assert complex ctype errno fenv float inttypes iso646 limits locale math setjmp
signal stdalign stdarg stdatomic stdbool stddef stdint stdio stdlib stdnoreturn string
tgmath threads time uchar wchar wctype aio cpio dirent dlfcn fcntl fmtmsg fnmatch ftw
glob grp iconv langinfo libgen monetary mqueue ndbm netdb nl_types poll pthread pwd
regex sched search semaphore spawn strings stropts syslog tar termios trace ulimit
unistd utime utmpx wordexp alloca argp byteswap elf endian err error execinfo features
link malloc memory obstack printf resolv values version crypt curses term"

rooms=$(sed -n '/^ROOMS = /,/[^\\]$/p' Makefile.am | tr -s ' \t\\' '\n' | sed -n 's|^lib/\(.*\)\.c$|\1|p')
[ -n "$rooms" ] || fail "Makefile.am has no ROOMS"
for room in $rooms; do
  [ -f "lib/$room.c" ] || fail "lib/$room.c is in ROOMS and does not exist"
  test=$room
  for pair in $covered; do
    [ "${pair%%:*}" != "$room" ] || test=${pair#*:}
  done
  [ -f "tests/test_$test.c" ] || fail "lib/$room.c has no tests/test_$test.c"
  for name in $taken; do
    [ "$room" != "$name" ] || fail "lib/$room.c bears the name of a system header, $name.h"
  done
done
for source in lib/*.c; do
  room=${source#lib/}
  case " $(echo $rooms) tables_data " in
  *" ${room%.c} "*) ;;
  *) fail "$source is not in ROOMS" ;;
  esac
done
for pair in $covered; do
  [ -f "lib/${pair%%:*}.c" ] || fail "tests/names.sh covers lib/${pair%%:*}.c, which does not exist"
  [ ! -f "tests/test_${pair%%:*}.c" ] || fail "tests/names.sh need not cover lib/${pair%%:*}.c any more"
done

# calls NAMES FILE...: lines that call one of them, comments aside
calls() {
  names=$1
  shift
  grep -nE "(^|[^a-zA-Z0-9_])($names) *\(" "$@" /dev/null | grep -vE '^[^:]*:[0-9]*: *(/\*|\*)'
}
others=
for source in lib/*.[ch]; do
  [ "$source" = lib/file.c ] || others="$others $source"
done
calls 'f?open|freopen|fdopen|openat|opendir|creat|popen|mmap' $others &&
  fail "only lib/file.c may open anything"
calls 'v?f?printf|v?s?n?printf|f?puts|putchar|fputc|fwrite|perror|exit|_Exit|abort|assert|raise' lib/*.[ch] &&
  fail "no room prints or ends the program"
calls 'setlocale|localeconv|strto[dfl]|strtold|ato[fil]|v?f?s?scanf|strcoll|strftime|is(alpha|alnum|space|upper|lower|punct|print)|to(upper|lower)|strcasecmp' lib/*.[ch] &&
  fail "no room depends on the locale"
exit $failed
