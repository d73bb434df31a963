/* SPDX-License-Identifier: MIT */
#include "sentence.h"

#include <string.h>

#include "number.h"

enum { LABEL_WIDTH = 12, LINE_WIDTH = 80 };

/* ---- laying out ---- */

static size_t columns_of(const char *text, size_t length) {
  size_t columns = 0;
  for (size_t i = 0; i < length; i++)
    columns += !ohm_utf8_continues(text[i]);
  return columns;
}

static void add_spaces(struct ohm_text *out, size_t count) {
  for (size_t i = 0; i < count; i++)
    ohm_text_add(out, " ");
}

/* A label and its sentence, wrapped between words under the sentence's start. */
void ohm_sentence_line(struct ohm_text *out, const char *label, const char *sentence) {
  size_t column = columns_of(label, strlen(label));
  ohm_text_add(out, label);
  add_spaces(out, column < LABEL_WIDTH ? LABEL_WIDTH - column : 1);
  column = column < LABEL_WIDTH ? LABEL_WIDTH : column + 1;
  bool first = true;
  while (*sentence) {
    size_t length = strcspn(sentence, " ");
    size_t wide = columns_of(sentence, length);
    if (!first && column + 1 + wide > LINE_WIDTH) {
      ohm_text_add(out, "\n");
      add_spaces(out, LABEL_WIDTH);
      column = LABEL_WIDTH;
    } else if (!first) {
      ohm_text_add(out, " ");
      column++;
    }
    ohm_text_add_bytes(out, sentence, length);
    column += wide;
    first = false;
    sentence += length;
    sentence += strspn(sentence, " ");
  }
  ohm_text_add(out, "\n");
}

/* ---- numbers as said ---- */

/* Never less than what was found: rounded up to 1, 1.5, 2, 3, ... 9 of a decade. */
static double rounded_up(double x) {
  if (!(x > 0))
    return 0;
  double decade = pow(10, floor(log10(x)));
  double lead = x / decade;
  double kept = lead <= 1.0000001 ? 1 : lead <= 1.5 ? 1.5 : ceil(lead - 1e-7);
  return kept * decade;
}

void ohm_say_give_or_take(struct ohm_text *out, double half) {
  ohm_text_add(out, ", give or take ");
  double said = rounded_up(half);
  double place = said > 0 ? floor(log10(said) + 1e-9) : 0;
  bool half_step = said > 0 && said / pow(10, place) > 1.4 && said / pow(10, place) < 1.6;
  int decimals = (int)fmax(0, (half_step ? 1 : 0) - place);
  char digits[OHM_NUMBER_SIZE];
  ohm_number_print_fixed(said, decimals, digits, sizeof digits);
  ohm_text_add(out, digits);
}

void ohm_say_temperature(struct ohm_text *out, double t_c) {
  char digits[OHM_NUMBER_SIZE];
  ohm_number_print_fixed(t_c, 1, digits, sizeof digits);
  ohm_text_add(out, digits);
  ohm_text_add(out, " C");
}

void ohm_say_digits(struct ohm_text *out, double r_ohm, int count) {
  char digits[OHM_NUMBER_SIZE];
  ohm_resistance_print(r_ohm, count, digits, sizeof digits);
  ohm_text_add(out, digits);
}

void ohm_say_resistance(struct ohm_text *out, double r_ohm) {
  ohm_say_digits(out, r_ohm, 3);
}

/* A printed limit has up to four digits. */
void ohm_say_limits(struct ohm_text *out, double low_ohm, double high_ohm) {
  ohm_say_digits(out, low_ohm, 4);
  ohm_text_add(out, " to ");
  ohm_say_digits(out, high_ohm, 4);
}

/* "98 in 100"; of what is nearly certain, no more than is known. */
void ohm_say_in_100(struct ohm_text *out, double p) {
  double in_100 = floor(100 * p + 1e-9);
  ohm_text_add(out, in_100 >= 99 ? "more than " : "");
  ohm_text_add_number(out, fmin(in_100, 99));
  ohm_text_add(out, " in 100");
}

void ohm_say_kelvins(struct ohm_text *out, double dt_k) {
  char digits[OHM_NUMBER_SIZE];
  ohm_number_print_fixed(dt_k, fabs(dt_k) < 2 ? 1 : 0, digits, sizeof digits);
  ohm_text_add(out, digits);
  ohm_text_add(out, " C");
}
