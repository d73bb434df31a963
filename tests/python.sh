#!/bin/sh
# SPDX-License-Identifier: MIT
# Runs tests/python with the package in the build tree.

tests=${srcdir:-.}/tests/python
tree=bindings/python/tree
if [ ! -f "$tree/interpreter" ]; then
  echo "skipped: the Python binding is not built, configure says why"
  exit 77
fi
PYTHONPATH=$tree
export PYTHONPATH
# The mode execute puts the library that was not installed on the loader's path.
exec ./libtool --mode=execute -dlopen libohmcurve.la \
  "$(cat "$tree/interpreter")" -B -m unittest discover -s "$tests"
