/* SPDX-License-Identifier: MIT */
/* The bench of the library, as the command line sets it. */
#ifndef SHELL_BENCH_H
#define SHELL_BENCH_H

#include <ohmcurve.h>

#include "arguments.h"

/**
 * A bench with every option that is a setting.
 *
 * Return  the bench, for ohm_bench_free(); NULL with the exit status after saying what is
 *         wrong.
 */
ohm_bench *shell_bench_new(const struct shell_arguments *arguments, int *status);

/** Set every option that is a setting. Returns the exit status, after saying what is wrong. */
int shell_bench_set(ohm_bench *bench, const struct shell_arguments *arguments);

/** Put an operand down as a reading. Returns the exit status, after saying what is wrong. */
int shell_bench_read(ohm_bench *bench, const char *operand);

/** Put the operands from first on down, all of them ohms. Returns the exit status likewise. */
int shell_bench_read_ohms(ohm_bench *bench, const struct shell_arguments *arguments, size_t first);

/** Say why a verb of the library did not answer, its settings called by their options.
 *  Returns the exit status. */
int shell_bench_refuse(const ohm_bench *bench, const ohm_error *error);

#endif
