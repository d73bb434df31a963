# shellcheck shell=bash
# SPDX-License-Identifier: MIT
# What .ci/run and .ci/full share. Who reads it has made a folder scratch before.

jobs=$(nproc)
# Debian's own, whichever the README test line built for: it has NumPy's package.
python=/usr/bin/python3

# The log is shown when the command fails only.
quietly() {
  if ! "$@" >"$scratch/log" 2>&1; then
    tail -n 100 "$scratch/log"
    return 1
  fi
}

# git in a clone of another user's.
ours() {
  git -c safe.directory='*' "$@"
}

as_root() {
  if [ "$(id -u)" = 0 ]; then "$@"; else sudo "$@"; fi
}

install_packages() {
  local install=(env DEBIAN_FRONTEND=noninteractive apt-get -o DPkg::Lock::Timeout=120
    install -y --no-install-recommends "$@")
  echo "ci: installing: $*"
  quietly as_root "${install[@]}" && return
  quietly as_root apt-get update || true
  quietly as_root "${install[@]}"
}

# The runtime of clang's fuzzer is a package of its own.
can_fuzz() {
  echo 'int LLVMFuzzerTestOneInput(const char *d, unsigned long n) { return !d && n; }' |
    clang -x c -fsanitize=fuzzer,address,undefined -o "$scratch/fuzzer" - 2>/dev/null
}

# install_tools NAME...: commands by their names, and what lies beside them by its package.
install_tools() {
  local missing=() tool
  for tool in "$@"; do
    case $tool in
    libclang-rt-dev) can_fuzz ;;
    python3-numpy) "$python" -c 'import numpy' 2>/dev/null ;;
    mypy) "$python" -c 'import mypy' 2>/dev/null ;;
    python3-dev) "$python" -c 'import os, sysconfig
os.stat(os.path.join(sysconfig.get_path("include"), "Python.h"))' 2>/dev/null ;;
    *) command -v "$tool" >/dev/null ;;
    esac || missing+=("$tool")
  done
  [ ${#missing[@]} = 0 ] || install_packages "${missing[@]}"
}

# The first line of README.md that matches; what a stranger pastes, where the stranger
# finds it.
readme_line() {
  grep -m 1 -x "$1" README.md
}
