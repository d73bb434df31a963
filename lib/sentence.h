/* SPDX-License-Identifier: MIT */
/* Labelled lines of a screen, and numbers as a bench would say them. */
#ifndef OHM_SENTENCE_H
#define OHM_SENTENCE_H

#include "text.h"

enum { OHM_SENTENCE_SIZE = 900 };

/** A sentence being made up. */
#define OHM_SENTENCE(text)                                                                         \
  char text##_buffer[OHM_SENTENCE_SIZE];                                                           \
  struct ohm_text text = ohm_text_begin(text##_buffer, sizeof text##_buffer)

/** A label and its sentence, wrapped between words under the sentence's start. */
void ohm_sentence_line(struct ohm_text *out, const char *label, const char *sentence);

/** ", give or take 0.6": never less than half, rounded up. */
void ohm_say_give_or_take(struct ohm_text *out, double half);

/** "21.5 C" */
void ohm_say_temperature(struct ohm_text *out, double t_c);

/** "5 C", "0.6 C": a difference. */
void ohm_say_kelvins(struct ohm_text *out, double dt_k);

/** A resistance of so many significant digits. */
void ohm_say_digits(struct ohm_text *out, double r_ohm, int count);

/** Of three digits, as it was measured. */
void ohm_say_resistance(struct ohm_text *out, double r_ohm);

/** "2.19 k to 2.42 k", as it was printed. */
void ohm_say_limits(struct ohm_text *out, double low_ohm, double high_ohm);

/** "98 in 100"; of what is nearly certain, no more than is known. */
void ohm_say_in_100(struct ohm_text *out, double p);

#endif
