/* SPDX-License-Identifier: MIT */
/* Values of the command line or of standard input, converted by a sensor's curve. */
#ifndef SHELL_CONVERT_H
#define SHELL_CONVERT_H

#include "arguments.h"

/** Resistances to temperatures, or the other way. Returns the exit status. */
int shell_convert(const struct shell_arguments *arguments, bool to_degrees);

#endif
