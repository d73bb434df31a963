/* SPDX-License-Identifier: MIT */
/*
 * The storage of a finding: one double for each field, then the texts. A field of
 * words keeps the number of its word, a list the bits of its entries. Nothing but
 * doubles and characters is kept, so that reading a caller's storage breaks no rule
 * of aliasing.
 */
#include "finding.h"

#include <stdint.h>
#include <string.h>

#include "../ground/text.h"

static const unsigned char kinds[] = {
#define FIELD(constant, name, kind, meaning) OHM_KIND_##kind,
    OHM_FIELDS(FIELD)
#undef FIELD
};

static const char *const about_words[OC_ABOUTS] = {[OC_ABOUT_BATH] = "bath",
                                                   [OC_ABOUT_IDENTIFY] = "identify",
                                                   [OC_ABOUT_PINS] = "pins",
                                                   [OC_ABOUT_EXPLAIN] = "explain",
                                                   [OC_ABOUT_SOAK] = "soak",
                                                   [OC_ABOUT_PIN] = "pin",
                                                   [OC_ABOUT_SUBSTITUTE] = "substitute",
                                                   [OC_ABOUT_LOOM] = "loom",
                                                   [OC_ABOUT_FANPOINT] = "fanpoint",
                                                   [OC_ABOUT_ISOLATION] = "isolation"};

static const char *const verdict_words[] = {"within", "outside", "undecided"};

static const char *const reason_words[] = {
    "conforms",     "low",       "high",    "open",      "over_range", "no_tolerance",
    "outside_band", "uncertain", "plug_on", "missing_k", "lone_one",   "moving",
    "shorted",      "one",       "alike",   "several",   "none",       "warm",
    "series",       "leakage",   "ground",  "pull_up",   "curve",      "between",
    "stuck",        "stand_in",  "range",   "alone",     "cold"};

static const char *const job_words[] = {"conforms", "late", "early", "hidden", "uncertain"};

static const char *const role_words[] = {"none", "module", "gauge",  "either", "unknown",
                                         "both", "joined", "ground", "ask"};

static const char *const explanation_words[OHM_EXPLANATION_COUNT] = {
    "healthy",    "series", "leakage", "drift",   "beta",
    "other_part", "open",   "short",   "plug_on", "wrong_range"};

static const char *const place_words[] = {"not_told", "sensor", "plug_on", "module"};

static const char *const negative_words[] = {"not_told", "pin", "sensor", "body"};

static const char *const joined_words[] = {"single", "series", "parallel"};

static const char *const reference_words[] = {"thermometer",   "ice",           "boil",
                                              "boil_altitude", "boil_pressure", "infrared"};

static const char *const agreement_words[] = {"consistent", "odd", "disagree"};

static const char *const soaked_words[] = {"coolant", "intake", "oil", "ambient"};

static const char *const assumption_texts[OC_ASSUMPTIONS] = {
    [OC_ASSUME_ACCURACY] = "meter 1%+3",
    [OC_ASSUME_RESOLUTION] = "a display of 2000 counts",
    [OC_ASSUME_ZEROS] = "end zeros are rounding (190ohm, 10.00k if shown)",
    [OC_ASSUME_LEADS] = "leads 0.3+-0.2",
    [OC_ASSUME_THERMOMETER] = "thermometer +-2C",
    [OC_ASSUME_ICE] = "ice bath +-0.5C",
    [OC_ASSUME_BOIL] = "sea level +-1C",
    [OC_ASSUME_BOIL_ALTITUDE] = "boiling at this altitude +-0.4C",
    [OC_ASSUME_BOIL_PRESSURE] = "boiling at this pressure +-0.2C",
    [OC_ASSUME_INFRARED] = "infrared +-4C",
    [OC_ASSUME_CURRENT] = "test current 1 mA at most",
    [OC_ASSUME_FAN] = "fan 97C",
    [OC_ASSUME_LIMIT] = "fan within 5C",
    [OC_ASSUME_TOLERANCE] = "sensor within 5 % (for the fan)",
    [OC_ASSUME_BEYOND] = "limits continued to the fan",
    [OC_ASSUME_AIR] = "air +-2C",
    [OC_ASSUME_AIR_STAYS] = "air as in its last row",
    [OC_ASSUME_STOP] = "stopped at 90C+-15C",
    [OC_ASSUME_STOP_LIMIT] = "stop temperature +-5C",
    [OC_ASSUME_START] = "before the first row anything down to the air",
    [OC_ASSUME_TAU] = "cools by 63 % in 1 to 4 h",
    [OC_ASSUME_ALLOW] = "6C off allowed",
    [OC_ASSUME_STILL] = "no sun, block heater, garage or move",
    [OC_ASSUME_COMPANIONS] = "other sensors +-2C",
    [OC_ASSUME_SUPPLY] = "supply +-2%",
    [OC_ASSUME_PULL_UP] = "pull-up +-2%",
    [OC_ASSUME_VOLTS] = "voltmeter 1%+2",
    [OC_ASSUME_REPORTED] = "module +-1C",
    [OC_ASSUME_ROUNDING] = "degrees cut or rounded",
    [OC_ASSUME_MOVED] = "within 1C meanwhile",
    [OC_ASSUME_RESISTORS] = "resistors +-5%",
    [OC_ASSUME_RESISTORS_E96] = "resistors +-1%",
    [OC_ASSUME_NO_MODULE] = "pull-up from 348 ohm, short from 128C, open to -30C",
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

enum {
  SENSOR_SIZE = 96,
  SOURCE_SIZE = 512,
  READ_SIZE = 32,
  BAND_SIZE = 64,
  BAND_SOURCE_SIZE = 256,
  ENTRIES_SIZE = 4096
};

enum {
  MARK = OHM_FIELD_COUNT, /* the double that tells a finding from any other storage */
  SENSOR_AT = (MARK + 1) * sizeof(double),
  SOURCE_AT = SENSOR_AT + SENSOR_SIZE,
  READ_AT = SOURCE_AT + SOURCE_SIZE,
  BAND_AT = READ_AT + READ_SIZE,
  BAND_SOURCE_AT = BAND_AT + BAND_SIZE,
  ENTRIES_AT = BAND_SOURCE_AT + BAND_SOURCE_SIZE,
  TEXT_END = ENTRIES_AT + ENTRIES_SIZE
};

static const double FINDING = 2026.0625;

_Static_assert(OC_ASSUMPTIONS <= 53 && OC_UNTESTED <= 53, "a double holds the bits of a list");
_Static_assert((int)OHM_FIELD_COUNT < 255, "the place of a field is a byte before its entry");
_Static_assert(TEXT_END <= sizeof(ohm_finding), "a finding has room for its fields");

static bool is_field(int field) {
  return 0 <= field && field < OHM_FIELD_COUNT;
}

int ohm_field_kind_of(int field) {
  return is_field(field) ? kinds[field] : -1;
}

/* Where a text of its own is kept, and how much of it; 0 for other fields. */
static size_t text_place(int field, size_t *offset) {
  static const struct {
    int field;
    size_t offset;
    size_t size;
  } places[] = {
      {OHM_FIELD_SENSOR, SENSOR_AT, SENSOR_SIZE},
      {OHM_FIELD_SOURCE, SOURCE_AT, SOURCE_SIZE},
      {OHM_FIELD_READ, READ_AT, READ_SIZE},
      {OHM_FIELD_BAND, BAND_AT, BAND_SIZE},
      {OHM_FIELD_BAND_SOURCE, BAND_SOURCE_AT, BAND_SOURCE_SIZE},
  };
  *offset = 0;
  for (size_t i = 0; i < sizeof places / sizeof places[0]; i++)
    if (places[i].field == field) {
      *offset = places[i].offset;
      return places[i].size;
    }
  return 0;
}

/* ---- filling in ---- */

void oc_finding_clear(ohm_finding *finding) {
  memset(finding, 0, sizeof *finding);
  for (int i = 0; i < OHM_FIELD_COUNT; i++)
    finding->private_storage[i] = NAN;
  finding->private_storage[MARK] = FINDING;
}

void oc_finding_set_number(ohm_finding *finding, ohm_field field, double value) {
  finding->private_storage[field] = value;
}

void oc_finding_set_text(ohm_finding *finding, ohm_field field, const char *text) {
  size_t offset;
  size_t size = text_place((int)field, &offset);
  char *place = (char *)finding + offset;
  size_t length = strlen(text);
  if (length < size) {
    memcpy(place, text, length + 1);
    return;
  }
  size_t kept = size - 4;
  while (kept > 0 && oc_utf8_continues(text[kept]))
    kept--;
  memcpy(place, text, kept);
  memcpy(place + kept, "...", 4);
}

void oc_finding_set_verdict(ohm_finding *finding, ohm_verdict verdict, ohm_reason reason) {
  finding->private_storage[OHM_FIELD_VERDICT] = (double)verdict;
  finding->private_storage[OHM_FIELD_REASON] = (double)reason;
}

void oc_finding_set_about(ohm_finding *finding, enum oc_about about) {
  finding->private_storage[OHM_FIELD_ABOUT] = (double)about;
}

void oc_finding_set_reference(ohm_finding *finding, ohm_reference_kind kind) {
  finding->private_storage[OHM_FIELD_REFERENCE] = (double)kind;
}

void oc_finding_set_job(ohm_finding *finding, ohm_verdict job, ohm_job_reason reason) {
  finding->private_storage[OHM_FIELD_JOB] = (double)job;
  finding->private_storage[OHM_FIELD_JOB_REASON] = (double)reason;
}

void oc_finding_set_role(ohm_finding *finding, ohm_role role) {
  finding->private_storage[OHM_FIELD_ROLE] = (double)role;
}

void oc_finding_set_explanation(ohm_finding *finding, ohm_explanation explanation) {
  finding->private_storage[OHM_FIELD_EXPLANATION] = (double)explanation;
}

void oc_finding_set_agreement(ohm_finding *finding, enum oc_agreement agreement) {
  finding->private_storage[OHM_FIELD_AGREEMENT] = (double)agreement;
}

void oc_finding_set_odd(ohm_finding *finding, ohm_soaked odd) {
  finding->private_storage[OHM_FIELD_ODD] = (double)odd;
}

void oc_finding_set_place(ohm_finding *finding, ohm_place place) {
  finding->private_storage[OHM_FIELD_PLACE] = (double)place;
}

void oc_finding_set_negative(ohm_finding *finding, ohm_negative negative) {
  finding->private_storage[OHM_FIELD_NEGATIVE] = (double)negative;
}

void oc_finding_set_joined(ohm_finding *finding, ohm_joined joined) {
  finding->private_storage[OHM_FIELD_JOINED] = (double)joined;
}

/* Entries of lists stand one behind the other: the place of the field and 1 as a
 * byte, the text, NUL; a NUL ends them. Storage that never was a finding may lack it. */
static const char *entry_after(const ohm_finding *finding, size_t *at) {
  const char *start = (const char *)finding + ENTRIES_AT;
  const char *end =
      *at < ENTRIES_SIZE && start[*at] ? memchr(start + *at, '\0', ENTRIES_SIZE - *at) : NULL;
  if (!end)
    return NULL;
  const char *entry = start + *at;
  *at = (size_t)(end - start) + 1;
  return entry;
}

void oc_finding_add_entry(ohm_finding *finding, ohm_field field, const char *text) {
  size_t at = 0;
  size_t length = strlen(text);
  while (entry_after(finding, &at))
    continue;
  char *start = (char *)finding + ENTRIES_AT;
  if (length == 0 || at + length + 3 > ENTRIES_SIZE)
    return;
  start[at] = (char)((int)field + 1);
  memcpy(start + at + 1, text, length + 1);
}

static const char *entry_of(const ohm_finding *finding, int field, size_t index) {
  const char *entry;
  size_t at = 0;
  while ((entry = entry_after(finding, &at)))
    if (*entry == (char)(field + 1) && index-- == 0)
      return entry + 1;
  return NULL;
}

/* The bits of a list; none when absent. */
static uint64_t bits_of(const ohm_finding *finding, int field) {
  double bits = finding->private_storage[field];
  return oc_inside(0, bits, 9007199254740991.0) ? (uint64_t)bits : 0;
}

static void set_bit(ohm_finding *finding, int field, unsigned bit) {
  finding->private_storage[field] = (double)(bits_of(finding, field) | (uint64_t)1 << bit);
}

void oc_finding_assume(ohm_finding *finding, enum oc_assumption assumption) {
  set_bit(finding, OHM_FIELD_ASSUMED, (unsigned)assumption);
}

void oc_finding_leave_untested(ohm_finding *finding, enum oc_untested untested) {
  set_bit(finding, OHM_FIELD_NOT_TESTED, (unsigned)untested);
}

/* ---- reading ---- */

static bool is_finding(const ohm_finding *finding) {
  return finding && finding->private_storage[MARK] == FINDING;
}

double ohm_finding_number(const ohm_finding *finding, int field) {
  if (!is_finding(finding) || !is_field(field) || kinds[field] != OHM_KIND_NUMBER)
    return NAN;
  return finding->private_storage[field];
}

static const char *word(const ohm_finding *finding, int field, const char *const *words,
                        size_t count) {
  double code = finding->private_storage[field];
  return oc_inside(0, code, (double)count - 1) ? words[(size_t)code] : NULL;
}

static const char *bit_text(const ohm_finding *finding, int field, const char *const *texts,
                            unsigned count, size_t index) {
  uint64_t bits = bits_of(finding, field);
  for (unsigned i = 0; i < count; i++)
    if (bits >> i & 1 && index-- == 0)
      return texts[i];
  return NULL;
}

static bool is_filled(const ohm_finding *finding) {
  return !isnan(finding->private_storage[OHM_FIELD_ABOUT]);
}

#define WORD(field, words) word(finding, field, words, sizeof words / sizeof words[0])

static const char *only_text(const ohm_finding *finding, int field) {
  switch (field) {
  case OHM_FIELD_ABOUT:
    return WORD(field, about_words);
  case OHM_FIELD_VERDICT:
  case OHM_FIELD_JOB:
    return WORD(field, verdict_words);
  case OHM_FIELD_JOB_REASON:
    return WORD(field, job_words);
  case OHM_FIELD_ROLE:
    return WORD(field, role_words);
  case OHM_FIELD_EXPLANATION:
    return WORD(field, explanation_words);
  case OHM_FIELD_AGREEMENT:
    return WORD(field, agreement_words);
  case OHM_FIELD_ODD:
    return WORD(field, soaked_words);
  case OHM_FIELD_PLACE:
    return WORD(field, place_words);
  case OHM_FIELD_REASON:
    return WORD(field, reason_words);
  case OHM_FIELD_NEGATIVE:
    return WORD(field, negative_words);
  case OHM_FIELD_JOINED:
    return WORD(field, joined_words);
  case OHM_FIELD_REFERENCE:
    return WORD(field, reference_words);
  case OHM_FIELD_VERSION:
    return is_filled(finding) ? ohm_version() : NULL;
  case OHM_FIELD_TABLES_VERSION:
    return is_filled(finding) ? ohm_tables_version() : NULL;
  default:
    break;
  }
  size_t offset;
  size_t size = text_place(field, &offset);
  if (size == 0)
    return NULL;
  const char *text = (const char *)finding + offset;
  return text[0] && memchr(text, '\0', size) ? text : NULL;
}

const char *ohm_finding_text(const ohm_finding *finding, int field, size_t index) {
  if (!is_finding(finding) || !is_field(field))
    return NULL;
  if (field == OHM_FIELD_ASSUMED)
    return bit_text(finding, field, assumption_texts, OC_ASSUMPTIONS, index);
  if (field == OHM_FIELD_NOT_TESTED)
    return bit_text(finding, field, untested_texts, OC_UNTESTED, index);
  const char *text = index == 0 ? only_text(finding, field) : NULL;
  return text ? text : entry_of(finding, field, index);
}

static int code_or(const ohm_finding *finding, int field, int last, int otherwise) {
  double code = is_finding(finding) ? finding->private_storage[field] : NAN;
  return oc_inside(0, code, last) ? (int)code : otherwise;
}

enum oc_about oc_finding_about(const ohm_finding *finding) {
  return (enum oc_about)code_or(finding, OHM_FIELD_ABOUT, OC_ABOUTS - 1, OC_ABOUTS);
}

ohm_role oc_finding_role(const ohm_finding *finding) {
  return (ohm_role)code_or(finding, OHM_FIELD_ROLE, OHM_ROLE_ASK, OHM_ROLE_ASK);
}

ohm_explanation oc_finding_explanation(const ohm_finding *finding) {
  return (ohm_explanation)code_or(finding, OHM_FIELD_EXPLANATION, OHM_EXPLANATION_COUNT - 1,
                                  OHM_EXPLANATION_COUNT);
}

ohm_verdict ohm_finding_verdict(const ohm_finding *finding) {
  return (ohm_verdict)code_or(finding, OHM_FIELD_VERDICT, OHM_UNDECIDED, OHM_UNDECIDED);
}

ohm_reason oc_finding_reason(const ohm_finding *finding) {
  return (ohm_reason)code_or(finding, OHM_FIELD_REASON, OHM_REASON_COLD, OHM_REASON_UNCERTAIN);
}

ohm_verdict ohm_finding_job(const ohm_finding *finding) {
  return (ohm_verdict)code_or(finding, OHM_FIELD_JOB, OHM_UNDECIDED, OHM_UNDECIDED);
}

ohm_job_reason oc_finding_job_reason(const ohm_finding *finding) {
  return (ohm_job_reason)code_or(finding, OHM_FIELD_JOB_REASON, OHM_JOB_UNCERTAIN,
                                 OHM_JOB_UNCERTAIN);
}
