/* SPDX-License-Identifier: MIT */
/* Numbers as a bench would say them, and sentences that hold some. */
#ifndef OC_SENTENCE_H
#define OC_SENTENCE_H

#include "../ground/text.h"

/**
 * Append a sentence, its braces filled from a finding by one field each:
 *
 *   {ohm}            a resistance, of three digits; {2 ohm}, {4 ohm} of so many
 *   {C}  {K}         "21.5 C"; "5 C", a difference: the words say which way
 *   {+K}             a difference, none when it is less
 *   {late}  {early}  when a fan starts: "11 C late", "2 C early", "off up to 130 C"
 *   {+-}             ", give or take 0.6": never less than half, rounded up
 *   {in 100}         "98 in 100"; of what is nearly certain, no more than is known
 *   {of 100}         what is asked for of 100
 *   {h}  {.2}  {}    hours; so many decimals, no unit; a number as it is
 *   {text}           a text, or the first of a list
 *   {ohm|none}       what to say instead when the field is absent
 */
void oc_sentence_add(struct oc_text *out, const ohm_finding *finding, const char *sentence,
                     const ohm_field *of);

/** Smaller differences are said to be none, kelvin. */
#define OC_LEAST_SAID_K 0.05

/** Figures of the trade in words: "130", "130 C", up to where a fan is followed; "50 ohm"; what
 *  to do where a reading does not speak for the fan. */
extern const char oc_never_figure[];
extern const char oc_never[];
extern const char oc_hidden[];
extern const char oc_read_hot[];

/** What braces say, of a number that no field holds. */
void oc_say_digits(struct oc_text *out, double r_ohm, int count);
void oc_say_decimals(struct oc_text *out, double value, int count);
void oc_say_hours(struct oc_text *out, double hours);

#endif
