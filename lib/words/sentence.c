/* SPDX-License-Identifier: MIT */
#include "sentence.h"

#include <string.h>

#include "../ground/number.h"

enum { LABEL_WIDTH = 12, LINE_WIDTH = 80 };

/* ---- laying out ---- */

static size_t columns_of(const char *text, size_t length) {
  size_t columns = 0;
  for (size_t i = 0; i < length; i++)
    columns += !oc_utf8_continues(text[i]);
  return columns;
}

static void add_spaces(struct oc_text *out, size_t count) {
  for (size_t i = 0; i < count; i++)
    oc_text_add(out, " ");
}

/* A label and its sentence, wrapped between words under the sentence's start. */
void oc_sentence_line(struct oc_text *out, const char *label, const char *sentence) {
  size_t column = columns_of(label, strlen(label));
  oc_text_add(out, label);
  add_spaces(out, column < LABEL_WIDTH ? LABEL_WIDTH - column : 1);
  column = column < LABEL_WIDTH ? LABEL_WIDTH : column + 1;
  bool first = true;
  while (*sentence) {
    size_t length = strcspn(sentence, " ");
    size_t wide = columns_of(sentence, length);
    if (!first && column + 1 + wide > LINE_WIDTH) {
      oc_text_add(out, "\n");
      add_spaces(out, LABEL_WIDTH);
      column = LABEL_WIDTH;
    } else if (!first) {
      oc_text_add(out, " ");
      column++;
    }
    oc_text_add_bytes(out, sentence, length);
    column += wide;
    first = false;
    sentence += length;
    sentence += strspn(sentence, " ");
  }
  oc_text_add(out, "\n");
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

void oc_say_give_or_take(struct oc_text *out, double half) {
  oc_text_add(out, ", give or take ");
  double said = rounded_up(half);
  double place = said > 0 ? floor(log10(said) + 1e-9) : 0;
  bool half_step = said > 0 && said / pow(10, place) > 1.4 && said / pow(10, place) < 1.6;
  int decimals = (int)fmax(0, (half_step ? 1 : 0) - place);
  char digits[OHM_NUMBER_SIZE];
  ohm_number_print_fixed(said, decimals, digits, sizeof digits);
  oc_text_add(out, digits);
}

void oc_say_temperature(struct oc_text *out, double t_c) {
  char digits[OHM_NUMBER_SIZE];
  ohm_number_print_fixed(t_c, 1, digits, sizeof digits);
  oc_text_add(out, digits);
  oc_text_add(out, " C");
}

void oc_say_digits(struct oc_text *out, double r_ohm, int count) {
  char digits[OHM_NUMBER_SIZE];
  ohm_resistance_print(r_ohm, count, digits, sizeof digits);
  oc_text_add(out, digits);
}

void oc_say_resistance(struct oc_text *out, double r_ohm) {
  oc_say_digits(out, r_ohm, 3);
}

/* A printed limit has up to four digits. */
void oc_say_limits(struct oc_text *out, double low_ohm, double high_ohm) {
  oc_say_digits(out, low_ohm, 4);
  oc_text_add(out, " to ");
  oc_say_digits(out, high_ohm, 4);
}

/* "98 in 100"; of what is nearly certain, no more than is known. */
void oc_say_in_100(struct oc_text *out, double p) {
  double in_100 = floor(100 * p + 1e-9);
  oc_text_add(out, in_100 >= 99 ? "more than " : "");
  oc_text_add_number(out, fmin(in_100, 99));
  oc_text_add(out, " in 100");
}

void oc_say_never(struct oc_text *out) {
  oc_text_add_number(out, OC_NEVER_C);
  oc_text_add(out, " C");
}

void oc_say_hot(struct oc_text *out) {
  oc_text_add(out, "hot: boiling water, or ");
  oc_text_add_number(out, OC_HOT_ENOUGH_C);
  oc_text_add(out, " C and up, thermometer beside it");
}

void oc_say_kelvins(struct oc_text *out, double dt_k) {
  char digits[OHM_NUMBER_SIZE];
  ohm_number_print_fixed(dt_k, fabs(dt_k) < 2 ? 1 : 0, digits, sizeof digits);
  oc_text_add(out, digits);
  oc_text_add(out, " C");
}
