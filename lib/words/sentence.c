/* SPDX-License-Identifier: MIT */
#include "sentence.h"

#include <string.h>

#include "../ground/number.h"

/* From here on a figure of the trade is its text. */
#undef OC_FIGURE
#define OC_FIGURE(figure) #figure

const char oc_never_figure[] = OC_NEVER_C;
const char oc_never[] = OC_NEVER_C " C";
const char oc_hidden[] = OC_ASSUMED_HIDDEN_OHM " ohm";
const char oc_read_hot[] =
    "hot: boiling water, or " OC_HOT_ENOUGH_C " C and up, thermometer beside it";

/* ---- numbers as said ---- */

void oc_say_digits(struct oc_text *out, double r_ohm, int count) {
  char digits[OHM_NUMBER_SIZE];
  ohm_resistance_print(r_ohm, count, digits, sizeof digits);
  oc_text_add(out, digits);
}

/* What rounds to zero is said without a minus. */
void oc_say_decimals(struct oc_text *out, double value, int count) {
  char digits[OHM_NUMBER_SIZE];
  ohm_number_print_fixed(value, count, digits, sizeof digits);
  bool minus_zero = digits[0] == '-' && digits[1 + strspn(digits + 1, "0.")] == '\0';
  oc_text_add(out, digits + minus_zero);
}

void oc_say_hours(struct oc_text *out, double hours) {
  oc_text_add_number(out, round(10 * hours) / 10);
  oc_text_add(out, " h");
}

static void say_resistance(struct oc_text *out, double r_ohm) {
  oc_say_digits(out, r_ohm, 3);
}

static void say_temperature(struct oc_text *out, double t_c) {
  oc_say_decimals(out, t_c, 1);
  oc_text_add(out, " C");
}

static void say_kelvins(struct oc_text *out, double dt_k) {
  oc_say_decimals(out, fabs(dt_k), fabs(dt_k) < 2 ? 1 : 0);
  oc_text_add(out, " C");
}

static void say_excess(struct oc_text *out, double dt_k) {
  say_kelvins(out, fmax(0, dt_k));
}

static void say_late(struct oc_text *out, double late_k) {
  if (isnan(late_k)) {
    oc_text_add(out, "off up to ");
    oc_text_add(out, oc_never);
    return;
  }
  say_kelvins(out, late_k);
  oc_text_add(out, late_k >= 0 ? " late" : " early");
}

static void say_early(struct oc_text *out, double early_k) {
  say_late(out, -early_k);
}

/* Never less than what was found: rounded up to 1, 1.5, 2, 3, ... 9 of a decade. */
static double rounded_up(double x) {
  if (!(x > 0))
    return 0;
  double decade = pow(10, floor(log10(x)));
  double lead = x / decade;
  double kept = lead <= 1.0000001 ? 1 : lead <= 1.5 ? 1.5 : ceil(lead - 1e-7);
  return kept * decade;
}

static void say_give_or_take(struct oc_text *out, double half) {
  double said = rounded_up(half);
  double place = said > 0 ? floor(log10(said) + 1e-9) : 0;
  bool half_step = said > 0 && said / pow(10, place) > 1.4 && said / pow(10, place) < 1.6;
  oc_text_add(out, ", give or take ");
  oc_say_decimals(out, said, (int)fmax(0, (half_step ? 1 : 0) - place));
}

static void say_in_100(struct oc_text *out, double p) {
  double in_100 = floor(100 * p + 1e-9);
  oc_text_add(out, in_100 >= 99 ? "more than " : "");
  oc_text_add_number(out, fmin(in_100, 99));
  oc_text_add(out, " in 100");
}

static void say_of_100(struct oc_text *out, double level) {
  oc_text_add_number(out, round(1000 * level) / 10);
}

/* ---- sentences ---- */

static const struct {
  const char *form;
  void (*say)(struct oc_text *out, double value);
} forms[] = {{"ohm", say_resistance},  {"C", say_temperature},  {"K", say_kelvins},
             {"+K", say_excess},       {"late", say_late},      {"early", say_early},
             {"+-", say_give_or_take}, {"in 100", say_in_100},  {"of 100", say_of_100},
             {"h", oc_say_hours},      {"", oc_text_add_number}};

static void say_as(struct oc_text *out, const char *form, size_t length, double value) {
  for (size_t i = 0; i < sizeof forms / sizeof forms[0]; i++)
    if (strlen(forms[i].form) == length && memcmp(form, forms[i].form, length) == 0)
      forms[i].say(out, value);
}

static void fill(struct oc_text *out, const char *form, size_t length, const ohm_finding *finding,
                 int field) {
  double value = ohm_finding_number(finding, field);
  const char *text = ohm_finding_text(finding, field, 0);
  size_t named = strcspn(form, "|}");
  if (named < length && isnan(value) && !text)
    oc_text_add_bytes(out, form + named + 1, length - named - 1);
  else if (text)
    oc_text_add(out, text);
  else if (form[0] == '.')
    oc_say_decimals(out, value, form[1] - '0');
  else if ('0' <= form[0] && form[0] <= '9')
    oc_say_digits(out, value, form[0] - '0');
  else
    say_as(out, form, named, value);
}

void oc_sentence_add(struct oc_text *out, const ohm_finding *finding, const char *sentence,
                     const ohm_field *of) {
  const char *form;
  while ((form = strchr(sentence, '{'))) {
    size_t length = strcspn(++form, "}");
    oc_text_add_bytes(out, sentence, (size_t)(form - 1 - sentence));
    fill(out, form, length, finding, (int)*of++);
    sentence = form + length + 1;
  }
  oc_text_add(out, sentence);
}
