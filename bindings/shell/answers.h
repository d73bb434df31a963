/* SPDX-License-Identifier: MIT */
/* Answers of the library on standard output. */
#ifndef SHELL_ANSWERS_H
#define SHELL_ANSWERS_H

#include <ohmcurve.h>

#include "arguments.h"

typedef ohm_answer *shell_ask(const ohm_bench *bench, ohm_error *error);

/** Write an answer, for a person or with --json. Returns the exit status: the verdict, or
 *  that of a failure after saying what it was. */
int shell_answers_give(const struct shell_arguments *arguments, const ohm_answer *answer);

/** Ask a bench and write the answer. Returns the exit status likewise. */
int shell_answers_ask(const struct shell_arguments *arguments, const ohm_bench *bench,
                      shell_ask *ask);

/** One line of JSON: what the line is, and every field that is not absent. */
void shell_answers_write_finding(const char *record, const ohm_finding *finding);

/** Ask of a sensor, the first operand, what needs no reading. Returns the exit status likewise,
 *  done when nothing was measured. */
int shell_answers_tell(const struct shell_arguments *arguments, shell_ask *ask);

typedef size_t shell_print_answer(const ohm_answer *answer, char *buffer, size_t size);

/** A text of the library, whole. Returns the exit status, 0 when written. */
int shell_answers_write(shell_print_answer *print, const ohm_answer *answer);

#endif
