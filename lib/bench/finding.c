/* SPDX-License-Identifier: MIT */
/*
 * The storage of a finding: one double for each field, and entries for the texts. A field
 * of words keeps the number of its word, a list of what was assumed or left untested the
 * bits of its entries.
 */
#include "finding.h"

#include <stdint.h>
#include <string.h>

/* Here figures are only written. */
#undef OC_FIGURE
#define OC_FIGURE(figure) #figure

struct oc_entry {
  const struct oc_entry *before;
  int field;
  char text[];
};

static const unsigned char kinds[OC_FIELDS] = {
#define FIELD(number, constant, name, kind, meaning) [number] = OHM_KIND_##kind,
    OHM_FIELDS(FIELD)
#undef FIELD
};

/* ---- words ---- */

#define WORD(number, constant, word, meaning) [number] = #word,
static const char *const verdict_words[] = {OHM_VERDICTS(WORD)};
static const char *const reason_words[] = {OHM_REASONS(WORD)};
static const char *const job_words[] = {OHM_JOB_REASONS(WORD)};
static const char *const role_words[] = {OHM_ROLES(WORD)};
static const char *const explanation_words[] = {OHM_EXPLANATIONS(WORD)};
static const char *const place_words[] = {OHM_PLACES(WORD)};
static const char *const negative_words[] = {OHM_NEGATIVES(WORD)};
static const char *const joined_words[] = {OHM_JOINTS(WORD)};
static const char *const reference_words[] = {OHM_REFERENCES(WORD)};
static const char *const agreement_words[] = {OHM_AGREEMENTS(WORD)};
static const char *const outcome_words[] = {OHM_OUTCOMES(WORD)};
static const char *const soaked_words[] = {OHM_SOAKED_SENSORS(WORD)};
static const char *const verb_words[] = {OHM_VERBS(WORD)};
#undef WORD

#define WORDS(field, words)                                                                        \
  { OHM_FIELD_##field, sizeof words / sizeof words[0], words }
static const struct {
  int field;
  size_t count;
  const char *const *words;
} lists[] = {
    WORDS(VERDICT, verdict_words),     WORDS(JOB, verdict_words),
    WORDS(REASON, reason_words),       WORDS(JOB_REASON, job_words),
    WORDS(ROLE, role_words),           WORDS(EXPLANATION, explanation_words),
    WORDS(PLACE, place_words),         WORDS(NEGATIVE, negative_words),
    WORDS(JOINED, joined_words),       WORDS(REFERENCE, reference_words),
    WORDS(AGREEMENT, agreement_words), WORDS(ODD, soaked_words),
    WORDS(ABOUT, verb_words),          WORDS(OUTCOME, outcome_words),
    WORDS(WIRES, verdict_words),
};
#undef WORDS

static const char *const assumption_texts[OC_ASSUMPTIONS] = {
    [OC_ASSUME_ACCURACY] = "meter " OC_ASSUMED_METER_PERCENT "%+" OC_ASSUMED_METER_COUNTS,
    [OC_ASSUME_RESOLUTION] = "a display of " OC_ASSUMED_DISPLAY_COUNT " counts",
    [OC_ASSUME_ZEROS] = "end zeros are rounding (190ohm, 10.00k if shown)",
    [OC_ASSUME_LEADS] = "leads " OC_ASSUMED_LEAD_OHM "+-" OC_ASSUMED_LEAD_LIMIT_OHM,
    [OC_ASSUME_THERMOMETER] = "thermometer +-" OC_ASSUMED_THERMOMETER_LIMIT_K "C",
    [OC_ASSUME_ICE] = "ice bath +-" OC_ASSUMED_ICE_LIMIT_K "C",
    [OC_ASSUME_BOIL] = "sea level +-" OC_ASSUMED_BOIL_LIMIT_K "C",
    [OC_ASSUME_BOIL_ALTITUDE] = "boiling at this altitude +-" OC_ASSUMED_BOIL_ALTITUDE_LIMIT_K "C",
    [OC_ASSUME_BOIL_PRESSURE] = "boiling at this pressure +-" OC_ASSUMED_BOIL_PRESSURE_LIMIT_K "C",
    [OC_ASSUME_INFRARED] = "infrared +-" OC_ASSUMED_INFRARED_LIMIT_K "C",
    [OC_ASSUME_CURRENT] = "test current " OC_ASSUMED_CURRENT_MA " mA at most",
    [OC_ASSUME_FAN] = "fan " OC_ASSUMED_FAN_C "C",
    [OC_ASSUME_LIMIT] = "fan within " OC_ASSUMED_FAN_LIMIT_K "C",
    [OC_ASSUME_TOLERANCE] = "sensor within " OC_ASSUMED_TOLERANCE_PERCENT " % (for the fan)",
    [OC_ASSUME_BEYOND] = "limits continued to the fan",
    [OC_ASSUME_AIR] = "air +-" OC_ASSUMED_THERMOMETER_LIMIT_K "C",
    [OC_ASSUME_AIR_STAYS] = "air as in its last row",
    [OC_ASSUME_STOP] = "stopped at " OC_ASSUMED_STOP_C "C+-" OC_ASSUMED_STOP_LIMIT_K "C",
    [OC_ASSUME_STOP_LIMIT] = "stop temperature +-" OC_ASSUMED_STOP_TOLD_LIMIT_K "C",
    [OC_ASSUME_START] = "before the first row anything down to the air",
    [OC_ASSUME_TAU] =
        "cools by 63 % in " OC_ASSUMED_COOLANT_TAU_LOW_H " to " OC_ASSUMED_COOLANT_TAU_HIGH_H " h",
    [OC_ASSUME_ALLOW] = OC_ASSUMED_SOAK_ALLOW_K "C off allowed",
    [OC_ASSUME_STILL] = "no sun, block heater, garage or move",
    [OC_ASSUME_COMPANIONS] = "other sensors +-" OC_ASSUMED_THERMOMETER_LIMIT_K "C",
    [OC_ASSUME_SUPPLY] = "supply +-" OC_ASSUMED_SUPPLY_PERCENT "%",
    [OC_ASSUME_PULL_UP] = "pull-up +-" OC_ASSUMED_PULL_UP_PERCENT "%",
    [OC_ASSUME_VOLTS] = "voltmeter " OC_ASSUMED_VOLTS_PERCENT "%+" OC_ASSUMED_VOLTS_COUNTS,
    [OC_ASSUME_REPORTED] = "module +-" OC_ASSUMED_REPORTED_LIMIT_K "C",
    [OC_ASSUME_ROUNDING] = "degrees cut or rounded",
    [OC_ASSUME_MOVED] = "within " OC_ASSUMED_MOVED_LIMIT_K "C meanwhile",
    [OC_ASSUME_RESISTORS] = "resistors +-" OC_ASSUMED_RESISTOR_PERCENT "%",
    [OC_ASSUME_RESISTORS_E96] = "resistors +-" OC_ASSUMED_RESISTOR_E96_PERCENT "%",
    [OC_ASSUME_NO_MODULE] = "pull-up from " OC_LEAST_PULL_UP_OHM " ohm, short from " OC_SHORTED_C
                            "C, open to " OC_OPEN_C "C",
};

static const char *const untested_texts[OC_UNTESTED] = {
    [OC_UNTESTED_AT_SENSOR] = "plug, wires, module: you measured the sensor alone",
    [OC_UNTESTED_AT_PLUG] = "the sensor alone: the module is in parallel with it",
    [OC_UNTESTED_AT_MODULE] = "the module and its own pins",
    [OC_UNTESTED_IF_SENSOR] = "if at the sensor: plug, wires, module",
    [OC_UNTESTED_IF_MODULE] = "if at the module: module",
    [OC_UNTESTED_IDENTIFIED] = "whether it is good: readings that name it cannot check it",
    [OC_UNTESTED_SENSOR_ITSELF] = "the sensor itself: nothing said how warm it is",
    [OC_UNTESTED_BEFORE_PIN] = "sensor, plug and wires: no ohms at the sensor",
    [OC_UNTESTED_PULL_UP_ITSELF] = "the module's pull-up: one that drifted looks alike",
};

_Static_assert(OC_ASSUMPTIONS <= 53 && OC_UNTESTED <= 53, "a double holds the bits of a list");

static bool is_field(int field) {
  return 0 < field && field < OC_FIELDS && kinds[field];
}

int ohm_field_kind_of(int field) {
  return is_field(field) ? kinds[field] : 0;
}

/* ---- filling in ---- */

ohm_finding oc_finding_in(struct oc_arena *arena) {
  ohm_finding finding = {.arena = arena};
  oc_finding_clear(&finding);
  return finding;
}

void oc_finding_clear(ohm_finding *finding) {
  finding->entries = NULL;
  for (int i = 0; i < OC_FIELDS; i++)
    finding->numbers[i] = NAN;
}

void oc_finding_set_number(ohm_finding *finding, ohm_field field, double value) {
  finding->numbers[field] = isfinite(value) ? value : NAN;
}

static void add_entry(ohm_finding *finding, ohm_field field, const char *text) {
  size_t length = strlen(text);
  struct oc_entry *entry = oc_arena_allocate(finding->arena, sizeof *entry + length + 1);
  if (!entry)
    return;
  entry->before = finding->entries;
  entry->field = (int)field;
  memcpy(entry->text, text, length + 1);
  finding->entries = entry;
}

/* The last entry of a text is what it is. */
void oc_finding_set_text(ohm_finding *finding, ohm_field field, const char *text) {
  add_entry(finding, field, text);
}

void oc_finding_add_entry(ohm_finding *finding, ohm_field field, const char *text) {
  if (*text)
    add_entry(finding, field, text);
}

void oc_finding_set_verdict(ohm_finding *finding, ohm_verdict verdict, ohm_reason reason) {
  finding->numbers[OHM_FIELD_VERDICT] = (double)verdict;
  finding->numbers[OHM_FIELD_REASON] = (double)reason;
}

void oc_finding_set_about(ohm_finding *finding, ohm_verb about) {
  finding->numbers[OHM_FIELD_ABOUT] = (double)about;
}

void oc_finding_set_reference(ohm_finding *finding, ohm_reference_kind kind) {
  finding->numbers[OHM_FIELD_REFERENCE] = (double)kind;
}

void oc_finding_set_job(ohm_finding *finding, ohm_verdict job, ohm_job_reason reason) {
  finding->numbers[OHM_FIELD_JOB] = (double)job;
  finding->numbers[OHM_FIELD_JOB_REASON] = (double)reason;
}

void oc_finding_set_role(ohm_finding *finding, ohm_role role) {
  finding->numbers[OHM_FIELD_ROLE] = (double)role;
}

void oc_finding_set_explanation(ohm_finding *finding, ohm_explanation explanation) {
  finding->numbers[OHM_FIELD_EXPLANATION] = (double)explanation;
}

void oc_finding_set_agreement(ohm_finding *finding, ohm_agreement agreement) {
  finding->numbers[OHM_FIELD_AGREEMENT] = (double)agreement;
}

void oc_finding_set_odd(ohm_finding *finding, ohm_soaked odd) {
  finding->numbers[OHM_FIELD_ODD] = (double)odd;
}

void oc_finding_set_place(ohm_finding *finding, ohm_place place) {
  finding->numbers[OHM_FIELD_PLACE] = (double)place;
}

void oc_finding_set_negative(ohm_finding *finding, ohm_negative negative) {
  finding->numbers[OHM_FIELD_NEGATIVE] = (double)negative;
}

void oc_finding_set_joined(ohm_finding *finding, ohm_joined joined) {
  finding->numbers[OHM_FIELD_JOINED] = (double)joined;
}

/* The bits of a list; none when absent. */
static uint64_t bits_of(const ohm_finding *finding, int field) {
  double bits = finding->numbers[field];
  return oc_inside(0, bits, 9007199254740991.0) ? (uint64_t)bits : 0;
}

static void set_bit(ohm_finding *finding, int field, unsigned bit) {
  finding->numbers[field] = (double)(bits_of(finding, field) | (uint64_t)1 << bit);
}

void oc_finding_assume(ohm_finding *finding, enum oc_assumption assumption) {
  set_bit(finding, OHM_FIELD_ASSUMED, (unsigned)assumption);
}

void oc_finding_leave_untested(ohm_finding *finding, enum oc_untested untested) {
  set_bit(finding, OHM_FIELD_NOT_TESTED, (unsigned)untested);
}

void oc_finding_set_untested(ohm_finding *finding, enum oc_untested untested) {
  oc_finding_set_number(finding, OHM_FIELD_NOT_TESTED, NAN);
  oc_finding_leave_untested(finding, untested);
}

/* ---- reading ---- */

double ohm_finding_number(const ohm_finding *finding, int field) {
  if (!finding || !is_field(field) || kinds[field] != OHM_KIND_NUMBER)
    return NAN;
  return finding->numbers[field];
}

int ohm_finding_word(const ohm_finding *finding, int field) {
  if (!finding || !is_field(field) || kinds[field] != OHM_KIND_WORD ||
      isnan(finding->numbers[field]))
    return -1;
  return (int)finding->numbers[field];
}

const char *oc_field_word(ohm_field field, int number) {
  for (size_t i = 0; number >= 0 && i < sizeof lists / sizeof lists[0]; i++)
    if (lists[i].field == (int)field && (size_t)number < lists[i].count)
      return lists[i].words[number];
  return NULL;
}

static const char *bit_text(const ohm_finding *finding, int field, const char *const *texts,
                            unsigned count, size_t index) {
  uint64_t bits = bits_of(finding, field);
  for (unsigned i = 0; i < count; i++)
    if (bits >> i & 1 && index-- == 0)
      return texts[i];
  return NULL;
}

static const char *last_text(const ohm_finding *finding, int field) {
  const struct oc_entry *entry = finding->entries;
  while (entry && entry->field != field)
    entry = entry->before;
  return entry && entry->text[0] ? entry->text : NULL;
}

/* Entries are met the last first. */
static const char *entry_of(const ohm_finding *finding, int field, size_t index) {
  size_t count = 0;
  for (const struct oc_entry *entry = finding->entries; entry; entry = entry->before)
    count += entry->field == field;
  if (index >= count)
    return NULL;
  size_t behind = count - 1 - index;
  for (const struct oc_entry *entry = finding->entries; entry; entry = entry->before)
    if (entry->field == field && behind-- == 0)
      return entry->text;
  return NULL;
}

static const char *only_text(const ohm_finding *finding, int field) {
  bool filled = !isnan(finding->numbers[OHM_FIELD_ABOUT]);
  if (field == OHM_FIELD_VERSION)
    return filled ? ohm_version() : NULL;
  if (field == OHM_FIELD_TABLES_VERSION)
    return filled ? ohm_tables_version() : NULL;
  return kinds[field] == OHM_KIND_WORD
             ? oc_field_word((ohm_field)field, ohm_finding_word(finding, field))
             : last_text(finding, field);
}

const char *ohm_finding_text(const ohm_finding *finding, int field, size_t index) {
  if (!finding || !is_field(field) || kinds[field] == OHM_KIND_NUMBER)
    return NULL;
  if (field == OHM_FIELD_ASSUMED)
    return bit_text(finding, field, assumption_texts, OC_ASSUMPTIONS, index);
  if (field == OHM_FIELD_NOT_TESTED)
    return bit_text(finding, field, untested_texts, OC_UNTESTED, index);
  if (kinds[field] == OHM_KIND_LIST)
    return entry_of(finding, field, index);
  return index == 0 ? only_text(finding, field) : NULL;
}

static int word_or(const ohm_finding *finding, ohm_field field, int otherwise) {
  int number = ohm_finding_word(finding, (int)field);
  return number >= 0 ? number : otherwise;
}

int oc_finding_about(const ohm_finding *finding) {
  return word_or(finding, OHM_FIELD_ABOUT, OC_VERBS);
}

ohm_role oc_finding_role(const ohm_finding *finding) {
  return (ohm_role)word_or(finding, OHM_FIELD_ROLE, OHM_ROLE_ASK);
}

int oc_finding_explanation(const ohm_finding *finding) {
  return word_or(finding, OHM_FIELD_EXPLANATION, OC_EXPLANATIONS);
}

ohm_verdict ohm_finding_verdict(const ohm_finding *finding) {
  return (ohm_verdict)word_or(finding, OHM_FIELD_VERDICT, OHM_UNDECIDED);
}

ohm_reason oc_finding_reason(const ohm_finding *finding) {
  return (ohm_reason)word_or(finding, OHM_FIELD_REASON, OHM_REASON_UNCERTAIN);
}

ohm_verdict ohm_finding_job(const ohm_finding *finding) {
  return (ohm_verdict)word_or(finding, OHM_FIELD_JOB, OHM_UNDECIDED);
}

ohm_job_reason oc_finding_job_reason(const ohm_finding *finding) {
  return (ohm_job_reason)word_or(finding, OHM_FIELD_JOB_REASON, OHM_JOB_UNCERTAIN);
}
