/* SPDX-License-Identifier: MIT */
/* Labelled lines of a screen, and numbers as a bench would say them. */
#ifndef OC_SENTENCE_H
#define OC_SENTENCE_H

#include "../ground/text.h"

enum { OC_SENTENCE_SIZE = 900 };

/** Smaller differences are said to be none, kelvin. */
#define OC_LEAST_SAID_K 0.05

/** A sentence being made up. */
#define OC_SENTENCE(text)                                                                          \
  char text##_buffer[OC_SENTENCE_SIZE];                                                            \
  struct oc_text text = oc_text_begin(text##_buffer, sizeof text##_buffer)

/** A label and its sentence, wrapped between words under the sentence's start. */
void oc_sentence_line(struct oc_text *out, const char *label, const char *sentence);

/** ", give or take 0.6": never less than half, rounded up. */
void oc_say_give_or_take(struct oc_text *out, double half);

/** "21.5 C" */
void oc_say_temperature(struct oc_text *out, double t_c);

/** "5 C", "0.6 C": a difference. */
void oc_say_kelvins(struct oc_text *out, double dt_k);

/** A resistance of so many significant digits. */
void oc_say_digits(struct oc_text *out, double r_ohm, int count);

/** Of three digits, as it was measured. */
void oc_say_resistance(struct oc_text *out, double r_ohm);

/** "2.19 k to 2.42 k", as it was printed. */
void oc_say_limits(struct oc_text *out, double low_ohm, double high_ohm);

/** "130 C": up to there a fan is followed. */
void oc_say_never(struct oc_text *out);

/** What to do where a reading does not speak for the fan. */
void oc_say_hot(struct oc_text *out);

/** "98 in 100"; of what is nearly certain, no more than is known. */
void oc_say_in_100(struct oc_text *out, double p);

#endif
