/* SPDX-License-Identifier: MIT */
#include "record.h"

#include <stdlib.h>
#include <string.h>

#include "../arithmetic/fuse.h"
#include "../ground/number.h"
#include "../ground/status.h"

/* ---- judging ---- */

double oc_record_error(const struct oc_test *test, double number) {
  return test->error_percent / 100 * fabs(number) + test->error;
}

static enum oc_seen between(double least, double most, double low, double high) {
  low = isnan(low) ? -INFINITY : low;
  high = isnan(high) ? INFINITY : high;
  if (low <= least && most <= high)
    return OC_SEEN_GOOD;
  return most < low || high < least ? OC_SEEN_BAD : OC_SEEN_UNSURE;
}

struct range {
  double least;
  double most;
};

/* The volts lost, per ampere. Without the current they condemn only what would be too
 * much at the most the fan draws. */
static struct range range_of_drop(const struct ohm_circuit *circuit, const struct oc_test *test,
                                  double v_volt, double amperes, double u_amperes) {
  double error = oc_record_error(test, v_volt);
  double least_a = amperes - u_amperes;
  double most_a = isnan(amperes) ? circuit->most_a : amperes + u_amperes;
  return (struct range){fmax(0, v_volt - error) / most_a,
                        least_a > 0 ? (v_volt + error) / least_a : INFINITY};
}

static struct range range_of(const struct ohm_circuit *circuit, const struct oc_test *test,
                             double number, double amperes, double u_amperes) {
  if (test->unit == OC_UNIT_DROP)
    return range_of_drop(circuit, test, number, amperes, u_amperes);
  double error = isinf(number) ? 0 : oc_record_error(test, number);
  return (struct range){number - error, number + error};
}

enum oc_seen oc_record_judge(const struct ohm_circuit *circuit, const struct oc_test *test,
                             double number, double fan_c, double amperes, double u_amperes) {
  if (test->unit == OC_UNIT_FUSE)
    return number >= OC_DRAWS_MV      ? OC_SEEN_GOOD
           : number < OC_DRAWS_NOT_MV ? OC_SEEN_BAD
                                      : OC_SEEN_UNSURE;
  struct range range = range_of(circuit, test, number, amperes, u_amperes);
  struct oc_limits limits = oc_test_limits(test, fan_c);
  return between(range.least, range.most, limits.low, limits.high);
}

oc_outcomes oc_record_shown(const struct ohm_circuit *circuit, const struct oc_test *test,
                            double number, double fan_c, double amperes, double u_amperes) {
  struct range range = range_of(circuit, test, number, amperes, u_amperes);
  return oc_outcome_range(oc_test_limits(test, fan_c), range.least, range.most);
}

/* ---- reading ---- */

struct line {
  const struct ohm_circuit *circuit;
  ohm_error *error;
  int number;
  const char *name;
  size_t name_length;
  const char *outcome;
  size_t outcome_length;
};

static ohm_status fail(const struct line *line, ohm_status status, const char *what,
                       const char *given, size_t length, const char *advice) {
  char quoted[64];
  struct oc_text text = oc_text_begin(quoted, sizeof quoted);
  oc_text_add_quoted(&text, given, length);
  return oc_fail_at(line->error, status, "record", line->number, 0, what, "\"", quoted, "\"",
                    advice, (const char *)NULL);
}

static bool outcome_is(const struct line *line, const char *word) {
  return oc_circuit_is(line->outcome, line->outcome_length, word);
}

static ohm_status fail_outcome(const struct line *line, const char *advice) {
  return fail(line, OHM_BAD_SYNTAX, "the outcome is ", line->outcome, line->outcome_length, advice);
}

static const char *outcomes_of(enum oc_test_unit unit) {
  switch (unit) {
  case OC_UNIT_WORD:
    return "; write good, bad or skip";
  case OC_UNIT_VOLT:
    return "; write volts as in 12.4, good, bad or skip";
  case OC_UNIT_AMPERE:
    return "; write amperes as in 8.2, good, bad or skip";
  case OC_UNIT_OHM:
    return "; write ohms as in 85, open, good, bad or skip";
  case OC_UNIT_CELSIUS:
    return "; write degrees Celsius as in 101, good, bad or skip";
  case OC_UNIT_DROP:
    return "; write volts as in 0.21, or skip: only the current makes them good or bad";
  case OC_UNIT_FUSE:
    return "; write millivolts as in 4.2mV or 4.2mV@ATO30, or skip";
  default:
    return "; write within, outside, undecided or skip";
  }
}

/* A number and, behind it, its unit or nothing. */
static bool read_number(const struct line *line, const char *unit, double *number) {
  size_t length = line->outcome_length;
  size_t behind = strlen(unit);
  if (length > behind && memcmp(line->outcome + length - behind, unit, behind) == 0)
    length -= behind;
  while (length > 0 && line->outcome[length - 1] == ' ')
    length--;
  return ohm_number_read(line->outcome, length, number) == OHM_OK;
}

/* "4.2mV", "4.2mV@ATO30" */
static bool read_fuse(const struct line *line, struct oc_record_entry *entry) {
  const char *at = memchr(line->outcome, '@', line->outcome_length);
  struct line first = *line;
  if (at)
    first.outcome_length = (size_t)(at - line->outcome);
  if (!read_number(&first, "mV", &entry->number) || !(entry->number >= 0))
    return false;
  if (at)
    entry->amperes =
        oc_fuse_amperes(at + 1, line->outcome_length - first.outcome_length - 1, entry->number);
  return true;
}

/* What is seen, heard or felt: one word for it, or good and bad. */
static const struct {
  const char *word;
  enum oc_seen seen;
  oc_outcomes shown;
} plain_words[] = {
    {"good", OC_SEEN_GOOD, OC_OUTCOME_GOOD},    {"bad", OC_SEEN_BAD, OC_OUTCOME_BAD},
    {"runs", OC_SEEN_GOOD, OC_OUTCOME_GOOD},    {"slow", OC_SEEN_BAD, OC_OUTCOME_PARTLY},
    {"still", OC_SEEN_BAD, OC_OUTCOME_NOTHING}, {"fast", OC_SEEN_BAD, OC_OUTCOME_MUCH},
    {"bright", OC_SEEN_GOOD, OC_OUTCOME_GOOD},  {"dim", OC_SEEN_BAD, OC_OUTCOME_PARTLY},
    {"dark", OC_SEEN_BAD, OC_OUTCOME_NOTHING},  {"holds", OC_SEEN_GOOD, OC_OUTCOME_GOOD},
    {"blows", OC_SEEN_BAD, OC_OUTCOME_NOTHING},
};

static bool read_plain_word(const struct line *line, struct oc_record_entry *entry) {
  for (size_t i = 0; i < sizeof plain_words / sizeof plain_words[0]; i++)
    if (outcome_is(line, plain_words[i].word)) {
      entry->seen = plain_words[i].seen;
      entry->shown = plain_words[i].shown;
      return true;
    }
  return false;
}

static bool read_word(const struct line *line, enum oc_test_unit unit,
                      struct oc_record_entry *entry) {
  bool of_finding = unit >= OC_UNIT_FINDING_SENSOR;
  bool by_word = unit != OC_UNIT_DROP && unit != OC_UNIT_FUSE;
  if (unit == OC_UNIT_WORD && read_plain_word(line, entry))
    return true;
  if (outcome_is(line, "skip"))
    entry->seen = OC_SEEN_SKIPPED;
  else if (of_finding && outcome_is(line, "undecided"))
    entry->seen = OC_SEEN_UNSURE;
  else if (by_word && outcome_is(line, of_finding ? "within" : "good"))
    entry->seen = OC_SEEN_GOOD;
  else if (by_word && outcome_is(line, of_finding ? "outside" : "bad"))
    entry->seen = OC_SEEN_BAD;
  else
    return false;
  return true;
}

/* What is judged by a number stays without a verdict until all of the record is known. */
static ohm_status take_test(const struct line *line, size_t index, struct oc_record_entry *entry) {
  static const char *const units[] = {"", "V", "A", "ohm", "C", "V"};
  enum oc_test_unit unit = line->circuit->tests[index].unit;
  *entry = (struct oc_record_entry){
      .of = OC_RECORD_TEST, .index = index, .shown = 0, .number = NAN, .amperes = NAN};
  if (read_word(line, unit, entry))
    return OHM_OK;
  if (unit == OC_UNIT_OHM && (outcome_is(line, "open") || outcome_is(line, "OL"))) {
    entry->number = INFINITY;
    return OHM_OK;
  }
  bool is_number = unit == OC_UNIT_FUSE ? read_fuse(line, entry)
                   : OC_UNIT_VOLT <= unit && unit <= OC_UNIT_DROP
                       ? read_number(line, units[unit], &entry->number)
                       : false;
  return is_number ? OHM_OK : fail_outcome(line, outcomes_of(unit));
}

static ohm_status fail_name(const struct line *line) {
  enum { NAMES_MAX = OC_CIRCUIT_TESTS + OC_DIAGNOSIS_PARTS };
  const struct ohm_circuit *circuit = line->circuit;
  const char *names[NAMES_MAX];
  size_t count = 0;
  for (size_t i = 0; i < circuit->test_count; i++)
    names[count++] = circuit->tests[i].cells[OHM_TEST_TEST];
  for (size_t i = 0; i < circuit->link_count; i++)
    names[count++] = circuit->links[i].cells[OHM_LINK_LINK];
  char name[64];
  struct oc_text text = oc_text_begin(name, sizeof name);
  oc_text_add_bytes(&text, line->name, line->name_length);
  const char *nearest = ohm_nearest(name, names, count);
  char advice[96];
  struct oc_text sentence = oc_text_begin(advice, sizeof advice);
  oc_text_add(&sentence, nearest ? "; did you mean " : "; look in the list of its tests");
  oc_text_add(&sentence, nearest ? nearest : "");
  oc_text_add(&sentence, nearest ? "?" : "");
  return fail(line, OHM_NOT_FOUND, "no test, link, fact or tool of this circuit is called ",
              line->name, line->name_length, advice);
}

static ohm_status take_named(const struct line *line, struct oc_record_entry *entry) {
  const struct ohm_circuit *circuit = line->circuit;
  size_t test = oc_circuit_test(circuit, line->name, line->name_length);
  size_t link = oc_circuit_link(circuit, line->name, line->name_length);
  size_t fact = oc_circuit_fact(circuit, line->name, line->name_length);
  bool is_tool = oc_circuit_has_tool(circuit, line->name, line->name_length);
  if (test != OC_NO_PLACE)
    return take_test(line, test, entry);
  *entry = (struct oc_record_entry){.number = NAN, .amperes = NAN};
  if (link != OC_NO_PLACE && outcome_is(line, "renewed")) {
    entry->of = OC_RECORD_LINK;
    entry->index = link;
    entry->seen = OC_SEEN_RENEWED;
  } else if (fact != OC_NO_PLACE && (outcome_is(line, "yes") || outcome_is(line, "no"))) {
    entry->of = OC_RECORD_FACT;
    entry->index = fact;
    entry->seen = outcome_is(line, "yes") ? OC_SEEN_YES : OC_SEEN_NOTHING;
  } else if (is_tool && (outcome_is(line, "none") || outcome_is(line, "yes"))) {
    entry->of = OC_RECORD_TOOL;
    entry->tool = line->name;
    entry->tool_length = line->name_length;
    entry->seen = outcome_is(line, "none") ? OC_SEEN_NONE : OC_SEEN_YES;
  } else if (link != OC_NO_PLACE) {
    return fail_outcome(line, "; of a link write renewed");
  } else if (fact != OC_NO_PLACE) {
    return fail_outcome(line, "; of a fact write yes or no");
  } else {
    return is_tool ? fail_outcome(line, "; of a tool write none or yes") : fail_name(line);
  }
  return OHM_OK;
}

static ohm_status take_fan(const struct line *line, struct oc_record *record) {
  double fan_c;
  if (!read_number(line, "C", &fan_c) || !(0 < fan_c && fan_c < OC_NEVER_C))
    return fail_outcome(line, "; write where the fan is to start, above 0C and below 130C");
  record->fan_c = fan_c;
  return OHM_OK;
}

static ohm_status take_line(const struct line *line, struct oc_record *record) {
  if (oc_circuit_is(line->name, line->name_length, "fan") && !outcome_is(line, "renewed"))
    return take_fan(line, record);
  if (oc_circuit_is(line->name, line->name_length, "circuit"))
    return outcome_is(line, line->circuit->name)
               ? OHM_OK
               : fail(line, OHM_BAD_DEFINITION, "the record is of the circuit ", line->outcome,
                      line->outcome_length, ", not of this one: name that");
  if (record->count == OC_RECORD_MAX)
    return fail(line, OHM_TOO_LARGE, "there are 512 lines before ", line->name, line->name_length,
                ": leave out what was measured again");
  struct oc_record_entry entry;
  ohm_status status = take_named(line, &entry);
  if (status == OHM_OK)
    record->entries[record->count++] = entry;
  return status;
}

static bool is_blank(char c) {
  return c == ' ' || c == '\t' || c == '\r';
}

static void trim(const char **text, size_t *length) {
  for (; *length > 0 && is_blank(**text); (*text)++)
    (*length)--;
  while (*length > 0 && is_blank((*text)[*length - 1]))
    (*length)--;
}

static ohm_status split(struct line *line, const char *text, size_t length) {
  const char *sign = memchr(text, '=', length);
  line->name = text;
  if (!sign)
    return fail(line, OHM_BAD_SYNTAX, "the line is ", text, length,
                "; write NAME=OUTCOME, such as fuse=good");
  line->name_length = (size_t)(sign - text);
  line->outcome = sign + 1;
  line->outcome_length = length - line->name_length - 1;
  trim(&line->name, &line->name_length);
  trim(&line->outcome, &line->outcome_length);
  return OHM_OK;
}

ohm_status oc_record_read(const struct ohm_circuit *circuit, const char *text, size_t length,
                          struct oc_record *record, ohm_error *error) {
  struct line line = {.circuit = circuit, .error = error};
  ohm_status status = OHM_OK;
  record->fan_c = circuit->fan_c;
  record->count = 0;
  while (length > 0 && status == OHM_OK) {
    const char *end = memchr(text, '\n', length);
    size_t whole = end ? (size_t)(end - text) : length;
    const char *start = text;
    size_t used = whole;
    line.number++;
    trim(&start, &used);
    if (used > 0 && *start != '#') {
      status = split(&line, start, used);
      if (status == OHM_OK)
        status = take_line(&line, record);
    }
    text += end ? whole + 1 : whole;
    length -= end ? whole + 1 : whole;
  }
  return status;
}

ohm_status oc_record_check(const struct ohm_circuit *circuit, const char *line, ohm_error *error) {
  struct oc_record *record = malloc(sizeof *record);
  ohm_status status =
      record ? oc_record_read(circuit, line, strlen(line), record, error) : oc_fail_memory(error);
  free(record);
  return status;
}
