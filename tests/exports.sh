#!/bin/sh
# SPDX-License-Identifier: MIT
# The header, the export list and the library's dynamic symbols are one set of
# names, and the command needs nothing beside them. The header's names come from
# the compiler here, not from lib/exports.awk.
# CC and NM may carry flags and are therefore not quoted.
set -e
: "${srcdir:=.}" "${CC:=cc}" "${NM:=nm}"
LC_ALL=C
export LC_ALL
scratch=tests/exports.tmp
rm -rf "$scratch"
mkdir -p "$scratch"
trap 'rm -rf "$scratch"' EXIT

fail() {
  echo "$*" >&2
  exit 1
}

same() {
  diff "$scratch/$1" "$scratch/$2" >&2 || fail "$3"
}

$CC -E "$srcdir/include/ohmcurve.h" >"$scratch/preprocessed"
tr '\n' ' ' <"$scratch/preprocessed" | tr ';' '\n' |
  sed -n 's/.*visibility("default")[) ]*\([^(]*\)(.*/\1/p' | sed 's/ *$//; s/.*[ *]//' |
  sort >"$scratch/header"
[ -s "$scratch/header" ] || fail "no declaration was found in the header"
sort lib/libohmcurve.sym >"$scratch/list"
same header list "include/ohmcurve.h and lib/libohmcurve.sym differ"

if ./libtool --config | grep -q '^build_libtool_libs=no'; then
  echo "this build has no shared library, its symbols were not compared"
else
  $NM -D .libs/libohmcurve.so >"$scratch/nm" || fail "$NM cannot read .libs/libohmcurve.so"
  sed -n 's/^[0-9a-fA-F]* *[^UwvN ] \([^ @]*\).*$/\1/p' "$scratch/nm" | sort >"$scratch/library"
  same header library "include/ohmcurve.h and the symbols of .libs/libohmcurve.so differ"
fi

# In a static program a private name of ours is in sight of everybody's. Two underscores
# begin those of the compiler.
$NM .libs/librooms.a >"$scratch/nm" || fail "$NM cannot read .libs/librooms.a"
sed -n 's/^[0-9a-fA-F]* [A-TV-Z] \([^ ]*\)$/\1/p' "$scratch/nm" | grep -v -e '^oc_' -e '^__' | sort >"$scratch/archive"
same header archive "what the archive defines is public, of the header, or begins with oc_: here they differ"

set -- bindings/shell/*.o
[ -f "$1" ] || fail "no objects of the command in bindings/shell"
$NM "$@" >"$scratch/nm" || fail "$NM cannot read the objects of the command"
sed -n 's/^ *U \(ohm_[^ ]*\)$/\1/p' "$scratch/nm" | sort -u >"$scratch/wanted"
comm -23 "$scratch/wanted" "$scratch/header" >"$scratch/missing"
[ ! -s "$scratch/missing" ] ||
  fail "the command calls what the library does not export: $(tr '\n' ' ' <"$scratch/missing")"
# Those of the command look like no name of the library.
sed -n 's/^[0-9a-fA-F]* [A-TV-Z] \([^ ]*\)$/\1/p' "$scratch/nm" |
  grep -v -e '^shell_' -e '^main$' -e '^__' >"$scratch/given" || true
[ ! -s "$scratch/given" ] ||
  fail "names of the command begin with shell_: $(tr '\n' ' ' <"$scratch/given")"
echo "$(wc -l <"$scratch/header") functions in the header, the list and the library"
