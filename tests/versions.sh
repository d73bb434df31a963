#!/bin/sh
# SPDX-License-Identifier: MIT
# The version is written once, in the header; whatever else says it agrees.
: "${srcdir:=.}"
failed=0
header=$srcdir/include/ohmcurve.h
version=$(sed -n 's/^#define OHM_VERSION  *"\([^"]*\)"$/\1/p' "$header")
[ -n "$version" ] || {
  echo "include/ohmcurve.h has no OHM_VERSION" >&2
  exit 1
}

# agrees WHERE WHAT
agrees() {
  [ "$2" = "$version" ] && return
  echo "$1 says \"$2\", include/ohmcurve.h says \"$version\"" >&2
  failed=1
}

part() {
  sed -n "s/^#define OHM_VERSION_$1  *\([0-9]*\)\$/\1/p" "$header"
}
agrees "OHM_VERSION_MAJOR, MINOR and PATCH" "$(part MAJOR).$(part MINOR).$(part PATCH)"
agrees NEWS "$(sed -n 's/^[^0-9]*\([0-9][0-9]*\.[0-9][0-9]*\.[0-9][0-9]*\).*/\1/p' "$srcdir/NEWS" | head -n 1)"
agrees lib/ohmcurve.pc "$(sed -n 's/^Version: *//p' lib/ohmcurve.pc)"
agrees "./ohmcurve --version" "$(./ohmcurve --version | sed -n 's/^ohmcurve \([0-9.]*\).*/\1/p')"

tree=bindings/python/tree
if [ -f "$tree/interpreter" ]; then
  agrees "ohmcurve.__version__ of Python" "$(
    PYTHONPATH=$tree ./libtool --mode=execute -dlopen libohmcurve.la \
      "$(cat "$tree/interpreter")" -B -c 'import ohmcurve; print(ohmcurve.__version__)'
  )"
else
  echo "the Python package is not built, its version was not compared"
fi
exit $failed
