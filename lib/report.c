/* SPDX-License-Identifier: MIT */
/* A finding in the words of the bench. */
#include <string.h>

#include "finding.h"
#include "status.h"

enum { LABEL_WIDTH = 12, LINE_WIDTH = 79, SENTENCE_SIZE = 600 };

/* ---- laying out ---- */

static size_t columns_of(const char *text, size_t length) {
  size_t columns = 0;
  for (size_t i = 0; i < length; i++)
    columns += ((unsigned char)text[i] & 0xC0) != 0x80;
  return columns;
}

static void add_spaces(struct ohm_text *out, size_t count) {
  for (size_t i = 0; i < count; i++)
    ohm_text_add(out, " ");
}

/* A label and its sentence, wrapped between words under the sentence's start. */
static void add_line(struct ohm_text *out, const char *label, const char *sentence) {
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

static void add_give_or_take(struct ohm_text *out, double half) {
  ohm_text_add(out, ", give or take ");
  double said = rounded_up(half);
  char digits[OHM_NUMBER_SIZE];
  int decimals = fabs(said - round(said)) < 1e-6 ? 0 : said > 0.15 ? 1 : 2;
  ohm_number_print_fixed(said, decimals, digits, sizeof digits);
  ohm_text_add(out, digits);
}

static void add_temperature(struct ohm_text *out, double t_c) {
  char digits[OHM_NUMBER_SIZE];
  ohm_number_print_fixed(t_c, 1, digits, sizeof digits);
  ohm_text_add(out, digits);
  ohm_text_add(out, " C");
}

static void add_resistance(struct ohm_text *out, double r_ohm) {
  char digits[OHM_NUMBER_SIZE];
  ohm_resistance_print(r_ohm, 3, digits, sizeof digits);
  ohm_text_add(out, digits);
}

static void add_chance(struct ohm_text *out, double p) {
  double in_100 = floor(100 * p);
  ohm_text_add(out, " (");
  if (in_100 >= 99) {
    ohm_text_add(out, "more than 99 in 100)");
    return;
  }
  ohm_text_add_number(out, in_100);
  ohm_text_add(out, " in 100)");
}

/* ---- the lines, in the order of the screen ---- */

struct page {
  const ohm_finding *finding;
  struct ohm_text *out;
};

static double number(const struct page *page, ohm_field field) {
  return ohm_finding_number(page->finding, (int)field);
}

static void caution_lines(const struct page *page) {
  add_line(page->out, "CAUTION", "Key off, blades clear: unplugging this sensor starts many fans.");
  if (number(page, OHM_FIELD_AT_C) > 45)
    add_line(page->out, "",
             "Hot coolant scalds: never open a hot system. The vehicle maker's procedure and "
             "local rules come first.");
}

static void reading_lines(const struct page *page) {
  char sentence[SENTENCE_SIZE];
  const char *read = ohm_finding_text(page->finding, OHM_FIELD_READ, 0);
  add_line(page->out, "You read", read ? read : "nothing");
  double r_ohm = number(page, OHM_FIELD_R_OHM);
  double t_c = number(page, OHM_FIELD_T_C);
  if (isnan(r_ohm))
    return;
  struct ohm_text text = ohm_text_begin(sentence, sizeof sentence);
  if (isnan(t_c)) {
    ohm_text_add(&text, "no temperature within this sensor's range");
  } else {
    add_temperature(&text, t_c);
    add_give_or_take(&text, number(page, OHM_FIELD_EXPANDED_T_K));
  }
  add_line(page->out, "That means", sentence);
}

static void temperature_line(const struct page *page) {
  char sentence[SENTENCE_SIZE];
  struct ohm_text text = ohm_text_begin(sentence, sizeof sentence);
  add_temperature(&text, number(page, OHM_FIELD_AT_C));
  double half = number(page, OHM_FIELD_EXPANDED_AT_K);
  if (half > 0)
    add_give_or_take(&text, half);
  const char *kind = ohm_finding_text(page->finding, OHM_FIELD_REFERENCE, 0);
  bool ice = kind && strcmp(kind, "ice") == 0;
  ohm_text_add(&text, ice ? " (your ice bath)" : " (your thermometer)");
  add_line(page->out, "It really is", sentence);
}

static void allowed_line(const struct page *page) {
  char sentence[SENTENCE_SIZE];
  struct ohm_text text = ohm_text_begin(sentence, sizeof sentence);
  double low = number(page, OHM_FIELD_LOW_OHM);
  double expected = number(page, OHM_FIELD_EXPECTED_OHM);
  if (!isnan(low)) {
    add_resistance(&text, low);
    ohm_text_add(&text, " to ");
    add_resistance(&text, number(page, OHM_FIELD_HIGH_OHM));
    ohm_text_add(&text, " at this temperature (");
    char percent[OHM_NUMBER_SIZE];
    ohm_number_print_fixed(number(page, OHM_FIELD_TOLERANCE_PERCENT), 1, percent, sizeof percent);
    ohm_text_add(&text, percent);
    ohm_text_add(&text, " % either way)");
  } else if (!isnan(expected)) {
    ohm_text_add(&text, "not known; about ");
    add_resistance(&text, expected);
    ohm_text_add(&text, " is usual at this temperature");
  } else {
    ohm_text_add(&text, "not known at this temperature");
  }
  add_line(page->out, "Allowed", sentence);
}

static void verdict_line(const struct page *page) {
  char sentence[SENTENCE_SIZE];
  struct ohm_text text = ohm_text_begin(sentence, sizeof sentence);
  switch (ohm_finding_reason(page->finding)) {
  case OHM_REASON_CONFORMS:
    ohm_text_add(&text, "GOOD at this temperature");
    add_chance(&text, number(page, OHM_FIELD_P_WITHIN));
    break;
  case OHM_REASON_LOW:
    ohm_text_add(&text, "BAD: too few ohms, it reads hotter than it is");
    add_chance(&text, number(page, OHM_FIELD_P_LOW));
    break;
  case OHM_REASON_HIGH:
    ohm_text_add(&text, "BAD: too many ohms, it reads colder than it is");
    add_chance(&text, number(page, OHM_FIELD_P_HIGH));
    break;
  case OHM_REASON_OPEN:
    ohm_text_add(&text, "BAD: open, no circuit between your probes");
    break;
  case OHM_REASON_OVER_RANGE:
    ohm_text_add(&text, "CANNOT TELL YET: the meter showed over range, not a number");
    break;
  case OHM_REASON_NO_TOLERANCE:
    ohm_text_add(&text, "CANNOT TELL YET: nothing says how far off this sensor may be");
    break;
  case OHM_REASON_OUTSIDE_BAND:
    ohm_text_add(&text, "CANNOT TELL YET: nothing says what is allowed at this temperature");
    break;
  case OHM_REASON_UNCERTAIN:
    ohm_text_add(&text, "CANNOT TELL YET: good");
    add_chance(&text, number(page, OHM_FIELD_P_WITHIN));
    break;
  }
  add_line(page->out, "VERDICT", sentence);
}

/* What the coarser half of an undecided measurement is. */
static const char *finer(const struct page *page) {
  double reading_k = number(page, OHM_FIELD_U_T_C);
  double bath_k = number(page, OHM_FIELD_U_AT_C);
  if (reading_k > bath_k)
    return "a finer range of the meter, or one known better; take the leads' own ohms off";
  return "know the temperature better: ice water, or a good thermometer beside the sensor";
}

static void next_line(const struct page *page) {
  const char *next = "hot: boiling water, or 85 C and up, thermometer beside it";
  switch (ohm_finding_reason(page->finding)) {
  case OHM_REASON_CONFORMS:
    if (number(page, OHM_FIELD_AT_C) >= 80)
      next = "plug and wires, then the module: this sensor has shown what it can";
    break;
  case OHM_REASON_LOW:
  case OHM_REASON_HIGH:
    next = "once more, pins cleaned, plug off, at the sensor's own pins, before you buy";
    break;
  case OHM_REASON_OPEN:
    next = "once more on the highest range, pins cleaned. A radiator fan switch reads open cold "
           "and 0 ohm hot, and is good";
    break;
  case OHM_REASON_OVER_RANGE:
    next = "one range up; only the highest range can say open";
    break;
  case OHM_REASON_NO_TOLERANCE:
    next = "find the maker's limits, or say how far off it may be, such as 5 %";
    break;
  case OHM_REASON_OUTSIDE_BAND:
    next = "at a temperature for which the maker printed limits";
    break;
  case OHM_REASON_UNCERTAIN:
    next = finer(page);
    break;
  }
  add_line(page->out, "Next", next);
}

static void fan_line(const struct page *page) {
  ohm_verdict verdict = ohm_finding_verdict(page->finding);
  if (verdict == OHM_WITHIN && number(page, OHM_FIELD_AT_C) < 80)
    add_line(page->out, "For the fan",
             "NOT ANSWERED: a cold reading cannot see what keeps a fan off hot.");
}

static void assumed_line(const struct page *page) {
  char sentence[SENTENCE_SIZE];
  struct ohm_text text = ohm_text_begin(sentence, sizeof sentence);
  const char *assumed;
  for (size_t i = 0; (assumed = ohm_finding_text(page->finding, OHM_FIELD_ASSUMED, i)); i++) {
    ohm_text_add(&text, i > 0 ? "; " : "");
    ohm_text_add(&text, assumed);
  }
  if (text.length > 0)
    add_line(page->out, "Assumed", sentence);
}

size_t ohm_report_print(const ohm_finding *finding, char *buffer, size_t size) {
  struct ohm_text out = ohm_text_begin(buffer, size);
  if (!finding || !ohm_finding_text(finding, OHM_FIELD_VERDICT, 0))
    return 0;
  const struct page page = {finding, &out};
  caution_lines(&page);
  reading_lines(&page);
  temperature_line(&page);
  allowed_line(&page);
  verdict_line(&page);
  fan_line(&page);
  next_line(&page);
  assumed_line(&page);
  return out.length;
}
