#!/bin/sh
# SPDX-License-Identifier: MIT
# A program that was compiled when this soname began runs with a library that has one
# setting, one field, one explanation and one value more than today's, and says the same.
# tests/growth/program.o is never made again while the soname stays; a new soname begins
# with a new one: cc -O1 -c tests/growth/program.c beside a copy of the header.
# CC may carry flags and is therefore not quoted.
: "${srcdir:=.}" "${CC:=cc}"
object=$srcdir/tests/growth/program.o
case "$($CC -dumpmachine 2>/dev/null)" in
x86_64*linux*) ;;
*)
  echo "skipped: the kept object is of another kind of machine"
  exit 77
  ;;
esac
case " $CFLAGS $CC" in
*sanitize*)
  echo "skipped: the kept object knows no sanitizer"
  exit 77
  ;;
esac
scratch=tests/growth.tmp
rm -rf "$scratch"
mkdir -p "$scratch/include" "$scratch/lib" || exit 1
trap 'rm -rf "$scratch"' EXIT

# library NAME: a shared library of the tree's rooms and the header in scratch/include.
library() {
  for source in "$scratch"/lib/*/*.c; do
    echo "$source"
  done | xargs -n 12 -P 2 sh -c 'for source; do
      '"$CC"' -std=c11 -O0 -w -fPIC -I'"$scratch"' -c -o "${source%.c}.o" "$source" || exit 255
    done' library || return 1
  $CC -shared -Wl,-soname,libohmcurve.so.kept -o "$scratch/$1" "$scratch"/lib/*/*.o -lm
}

# says PROGRAM LIBRARY FILE
says() {
  cp "$scratch/$2" "$scratch/libohmcurve.so.kept"
  LD_LIBRARY_PATH=$scratch "$scratch/$1" >"$scratch/$3"
}

fail() {
  echo "$*" >&2
  exit 1
}

for floor in "$srcdir"/lib/*/; do
  floor=$(basename "$floor")
  mkdir -p "$scratch/lib/$floor"
  cp "$srcdir/lib/$floor"/*.[ch] "$scratch/lib/$floor/"
done
cp lib/ground/tables_data.c "$scratch/lib/ground/" || exit 1
cp "$srcdir/include/ohmcurve.h" "$scratch/include/"
library today.so || fail "today's library cannot be built"
$CC -o "$scratch/kept" "$object" "$scratch/today.so" -lm -Wl,-rpath,"$scratch" ||
  fail "the kept program does not link with today's library"
says kept today.so today || fail "the kept program fails with today's library: $(tail -n 3 "$scratch/today")"

# One more of each, at the head of its list, where a careless index would show.
awk '
  function more(list, entry) {
    if ($0 ~ "^#define " list "[(]X[)]") {
      print
      printf "  %s \\\n", entry
      added++
      return 1
    }
    return 0
  }
  more("OHM_SETTINGS", "X(9001, GROWN, grown_c, TEMPERATURE, \"none\", \"(0, 99)\", \"5C\", \"check\", \"grown\")") { next }
  more("OHM_FIELDS", "X(901, GROWN_C, grown_c, NUMBER, \"grown\")") { next }
  more("OHM_EXPLANATIONS", "X(40, GROWN, grown, \"grown\")") { next }
  more("OHM_REASONS", "X(90, GROWN, grown, \"grown\")") { next }
  { print }
  END { exit added != 4 }' "$srcdir/include/ohmcurve.h" >"$scratch/include/ohmcurve.h" ||
  fail "the lists of the header are not where this test looks for them"
library grown.so || fail "the grown library cannot be built"
says kept grown.so grown || fail "the kept program fails with the grown library: $(tail -n 3 "$scratch/grown")"
diff "$scratch/today" "$scratch/grown" >"$scratch/diff" ||
  fail "the kept program says something else with the grown library:
$(head -n 20 "$scratch/diff")"

# And the grown library has grown: a program of today uses what is new.
cat >"$scratch/new.c" <<'C'
#include <ohmcurve.h>
int main(void) {
  ohm_bench *bench = ohm_bench_new(0);
  int status = ohm_bench_set(bench, OHM_SETTING_GROWN, "5C", 0);
  int named = ohm_field_named("grown_c") == OHM_FIELD_GROWN_C;
  ohm_bench_free(bench);
  return status != OHM_OK || !named;
}
C
$CC -I"$scratch/include" -o "$scratch/new" "$scratch/new.c" "$scratch/grown.so" -lm ||
  fail "a program that uses what is new cannot be built"
says new grown.so used || fail "what is new cannot be used"
echo "$(wc -l <"$scratch/grown") lines said alike by today's library and a grown one"
