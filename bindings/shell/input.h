/* SPDX-License-Identifier: MIT */
/* The module's input and what it reports, as the command line tells them. */
#ifndef OHM_INPUT_H
#define OHM_INPUT_H

#include <ohmcurve.h>

#include "arguments.h"

/** Read --pullup, --ref, --range, --open and --short, as far as they are there. Returns
 *  the exit status, after saying what is wrong. */
int ohm_input_read_module(const struct ohm_arguments *arguments, ohm_module *module);

/** Read degrees that the module reported, with --whole and --moves. */
int ohm_input_read_reported(const struct ohm_arguments *arguments, const char *text,
                            ohm_reported *reported);

/** Read --fan, --limit, --level and --within. */
int ohm_input_read_pin(const struct ohm_arguments *arguments, ohm_pin *pin);

/** One of some words, which end at NULL, by its index. The sentence says what it was to be
 *  and lists them. */
int ohm_input_read_word(const char *text, const char *const *words, const char *what, int *index);

/** Say why a call failed that all of these went into. Returns OHM_EXIT_DATA. */
int ohm_input_refuse(const ohm_sensor *sensor, ohm_status status, const char *what, double t_c);

#endif
