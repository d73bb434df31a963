#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Runs a command on a terminal of its own and types lines into it.

    converse.py COMMAND ARGUMENT... <LINES

Each line is typed once a prompt stands there, control D after the last; what the command
writes goes to standard output, its exit status is the exit status.
"""

import os
import pty
import select
import sys

PROMPT = b"> "
SECONDS = 20


def read_until_prompt(terminal):
    """What is written up to a prompt; whether the command still runs."""
    seen = b""
    while not seen.endswith(PROMPT):
        if not select.select([terminal], [], [], SECONDS)[0]:
            sys.exit("converse.py: no prompt came")
        try:
            piece = os.read(terminal, 4096)
        except OSError:
            piece = b""
        if not piece:
            return seen, False
        seen += piece
    return seen, True


def main():
    lines = sys.stdin.read().splitlines()
    child, terminal = pty.fork()
    if child == 0:
        os.execv(sys.argv[1], sys.argv[1:])
    runs = True
    while runs:
        seen, runs = read_until_prompt(terminal)
        sys.stdout.write(seen.decode().replace("\r\n", "\n"))
        if runs:
            os.write(terminal, lines.pop(0).encode() + b"\n" if lines else b"\x04")
    _, status = os.waitpid(child, 0)
    sys.exit(os.waitstatus_to_exitcode(status))


main()
