#!/bin/sh
# SPDX-License-Identifier: MIT
# The header keeps its own promises, and compiles by itself as C99 and C++11.
# CC and CXX may carry flags and are therefore not quoted.
: "${srcdir:=.}" "${CC:=cc}" "${CXX:=c++}" "${AWK:=awk}"
failed=0
strict="-pedantic-errors -Wall -Wextra -Werror -fsyntax-only"
header=$srcdir/include/ohmcurve.h

echo '#include "ohmcurve.h"' |
  $CC -x c -std=c99 $strict -I"$srcdir/include" - || failed=1
echo '#include "ohmcurve.h"' |
  $CXX -x c++ -std=c++11 $strict -I"$srcdir/include" - || failed=1

LC_ALL=C $AWK -f "$srcdir/tests/header.awk" "$header" "$srcdir"/tests/*.c "$srcdir"/tests/*/*.c || failed=1
exit $failed
