/* SPDX-License-Identifier: MIT */
/*
 * The storage of a finding: one double for each field, then the texts. A field of
 * words keeps the number of its word, a list the bits of its entries. Nothing but
 * doubles and characters is kept, so that reading a caller's storage breaks no rule
 * of aliasing.
 */
#include "finding.h"

#include <string.h>

#include "status.h"

static const struct {
  const char *name;
  const char *meaning;
  ohm_field_kind kind;
} fields[] = {
#define FIELD(constant, name, kind, meaning) {#name, meaning, OHM_KIND_##kind},
    OHM_FIELDS(FIELD)
#undef FIELD
};

static const char *const verdict_words[] = {"within", "outside", "undecided"};

static const char *const reason_words[] = {
    "conforms", "low", "high", "open", "over_range", "no_tolerance", "outside_band", "uncertain"};

static const char *const reference_words[] = {"thermometer", "ice"};

static const char *const assumption_texts[OHM_ASSUMPTIONS] = {
    [OHM_ASSUME_ACCURACY] = "meter 1 % + 3 counts",
    [OHM_ASSUME_RESOLUTION] = "a display of 2000 counts",
    [OHM_ASSUME_LEADS] = "leads 0.3 ohm, give or take 0.2",
    [OHM_ASSUME_THERMOMETER] = "thermometer right to 2 C",
    [OHM_ASSUME_ICE] = "ice bath right to 0.5 C",
};

enum { SENSOR_SIZE = 96, SOURCE_SIZE = 512, READ_SIZE = 32 };

#define TEXT_START (OHM_FIELD_COUNT * sizeof(double))

_Static_assert(TEXT_START + SENSOR_SIZE + SOURCE_SIZE + READ_SIZE <= sizeof(ohm_finding),
               "a finding has room for its fields");

static bool is_field(int field) {
  return 0 <= field && field < OHM_FIELD_COUNT;
}

const char *ohm_field_name(int field) {
  return is_field(field) ? fields[field].name : NULL;
}

const char *ohm_field_meaning(int field) {
  return is_field(field) ? fields[field].meaning : NULL;
}

int ohm_field_kind_of(int field) {
  return is_field(field) ? (int)fields[field].kind : -1;
}

/* Where a text of its own is kept, and how much of it; 0 for other fields. */
static size_t text_place(int field, size_t *offset) {
  switch (field) {
  case OHM_FIELD_SENSOR:
    *offset = TEXT_START;
    return SENSOR_SIZE;
  case OHM_FIELD_SOURCE:
    *offset = TEXT_START + SENSOR_SIZE;
    return SOURCE_SIZE;
  case OHM_FIELD_READ:
    *offset = TEXT_START + SENSOR_SIZE + SOURCE_SIZE;
    return READ_SIZE;
  default:
    *offset = 0;
    return 0;
  }
}

/* ---- filling in ---- */

void ohm_finding_clear(ohm_finding *finding) {
  memset(finding, 0, sizeof *finding);
  for (int i = 0; i < OHM_FIELD_COUNT; i++)
    finding->private_storage[i] = NAN;
}

void ohm_finding_set_number(ohm_finding *finding, ohm_field field, double value) {
  finding->private_storage[field] = value;
}

void ohm_finding_set_text(ohm_finding *finding, ohm_field field, const char *text) {
  size_t offset;
  size_t size = text_place((int)field, &offset);
  char *place = (char *)finding + offset;
  size_t length = strlen(text);
  if (length < size) {
    memcpy(place, text, length + 1);
    return;
  }
  size_t kept = size - 4;
  while (kept > 0 && ((unsigned char)text[kept] & 0xC0) == 0x80)
    kept--;
  memcpy(place, text, kept);
  memcpy(place + kept, "...", 4);
}

void ohm_finding_set_verdict(ohm_finding *finding, ohm_verdict verdict, ohm_reason reason) {
  finding->private_storage[OHM_FIELD_VERDICT] = (double)verdict;
  finding->private_storage[OHM_FIELD_REASON] = (double)reason;
}

void ohm_finding_set_reference(ohm_finding *finding, ohm_reference_kind kind) {
  finding->private_storage[OHM_FIELD_REFERENCE] = (double)kind;
}

/* The bits of a list; none when absent. */
static unsigned bits_of(const ohm_finding *finding, int field) {
  double bits = finding->private_storage[field];
  return ohm_inside(0, bits, 65535) ? (unsigned)bits : 0;
}

void ohm_finding_assume(ohm_finding *finding, enum ohm_assumption assumption) {
  unsigned bits = bits_of(finding, OHM_FIELD_ASSUMED) | 1u << assumption;
  finding->private_storage[OHM_FIELD_ASSUMED] = bits;
}

/* ---- reading ---- */

double ohm_finding_number(const ohm_finding *finding, int field) {
  if (!finding || !is_field(field) || fields[field].kind != OHM_KIND_NUMBER)
    return NAN;
  return finding->private_storage[field];
}

static const char *word(const ohm_finding *finding, int field, const char *const *words,
                        size_t count) {
  double code = finding->private_storage[field];
  return ohm_inside(0, code, (double)count - 1) ? words[(size_t)code] : NULL;
}

static const char *assumption(const ohm_finding *finding, size_t index) {
  unsigned bits = bits_of(finding, OHM_FIELD_ASSUMED);
  for (unsigned i = 0; i < OHM_ASSUMPTIONS; i++)
    if (bits >> i & 1 && index-- == 0)
      return assumption_texts[i];
  return NULL;
}

static bool is_filled(const ohm_finding *finding) {
  return !isnan(finding->private_storage[OHM_FIELD_VERDICT]);
}

#define WORD(field, words) word(finding, field, words, sizeof words / sizeof words[0])

static const char *only_text(const ohm_finding *finding, int field) {
  switch (field) {
  case OHM_FIELD_VERDICT:
    return WORD(field, verdict_words);
  case OHM_FIELD_REASON:
    return WORD(field, reason_words);
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
  if (text_place(field, &offset) == 0)
    return NULL;
  const char *text = (const char *)finding + offset;
  return text[0] ? text : NULL;
}

const char *ohm_finding_text(const ohm_finding *finding, int field, size_t index) {
  if (!finding || !is_field(field))
    return NULL;
  if (field == OHM_FIELD_ASSUMED)
    return assumption(finding, index);
  return index == 0 ? only_text(finding, field) : NULL;
}

static int code_or(const ohm_finding *finding, int field, int last, int otherwise) {
  double code = finding ? finding->private_storage[field] : NAN;
  return ohm_inside(0, code, last) ? (int)code : otherwise;
}

ohm_verdict ohm_finding_verdict(const ohm_finding *finding) {
  return (ohm_verdict)code_or(finding, OHM_FIELD_VERDICT, OHM_UNDECIDED, OHM_UNDECIDED);
}

ohm_reason ohm_finding_reason(const ohm_finding *finding) {
  return (ohm_reason)code_or(finding, OHM_FIELD_REASON, OHM_REASON_UNCERTAIN, OHM_REASON_UNCERTAIN);
}
