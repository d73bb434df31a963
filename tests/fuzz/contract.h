/* SPDX-License-Identifier: MIT */
/* What the header promises of every finding, whatever was asked. */
#ifndef OHM_TESTS_FUZZ_CONTRACT_H
#define OHM_TESTS_FUZZ_CONTRACT_H

#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../findings.h"

enum { REPORT_SIZE = 8192, COLUMNS_MAX = 80, LIST_MAX = 64 };

/* What it says names the promise that was broken. */
static inline void require(int truth, const char *what) {
  if (truth)
    return;
  fprintf(stderr, "broken: %s\n", what);
  abort();
}

static inline int within(double low, double x, double high) {
  return low <= x && x <= high;
}

/* Bytes of the character at text, 0 when it is not UTF-8 (RFC 3629). */
static inline size_t character(const char *text) {
  unsigned char c = (unsigned char)text[0];
  size_t more = c < 0x80                ? 0
                : within(0xC2, c, 0xDF) ? 1
                : within(0xE0, c, 0xEF) ? 2
                : within(0xF0, c, 0xF4) ? 3
                                        : SIZE_MAX;
  if (more == SIZE_MAX)
    return 0;
  unsigned char second = (unsigned char)text[more > 0];
  if ((c == 0xE0 && second < 0xA0) || (c == 0xED && second > 0x9F) ||
      (c == 0xF0 && second < 0x90) || (c == 0xF4 && second > 0x8F))
    return 0;
  for (size_t i = 1; i <= more; i++)
    if (((unsigned char)text[i] & 0xC0) != 0x80)
      return 0;
  return more + 1;
}

static inline void require_utf8(const char *text, const char *what) {
  for (size_t n; *text; text += n) {
    n = character(text);
    require(n > 0, what);
  }
}

/* A budget of 1e12 ohm may be wider than 80 columns; nothing else may. */
static inline void require_lines(const char *text, size_t columns_max) {
  size_t columns = 0;
  for (size_t n; *text; text += n) {
    n = character(text);
    require(n > 0, "a report is UTF-8");
    columns = *text == '\n' ? 0 : columns + 1;
    require(columns <= columns_max, "a line of a report keeps to its columns");
    require((unsigned char)*text >= ' ' || *text == '\n', "a report is plain text");
  }
  require(columns == 0, "a report ends in a newline");
}

/* Printed whole, and cut to fit. */
static inline void require_report(const ohm_finding *finding,
                                  size_t (*print)(const ohm_finding *, char *, size_t),
                                  size_t columns_max) {
  char text[REPORT_SIZE];
  char cut[32];
  size_t length = print(finding, text, sizeof text);
  require(length < sizeof text && strlen(text) == length, "a report has its length");
  require(print(finding, cut, sizeof cut) == length, "a report cut to fit has the same length");
  require(strncmp(cut, text, sizeof cut - 1) == 0 && strlen(cut) < sizeof cut,
          "a report cut to fit is its beginning");
  require_lines(text, columns_max);
}

static inline void require_field(const ohm_finding *finding, int field) {
  double number = ohm_finding_number(finding, field);
  require(isnan(number) || isfinite(number), ohm_field_name(field));
  size_t count = 0;
  for (const char *text; (text = ohm_finding_text(finding, field, count)) != NULL; count++) {
    require(count < LIST_MAX, "a list ends");
    require_utf8(text, "a text of a finding is UTF-8");
  }
  int kind = ohm_field_kind_of(field);
  require(kind == OHM_KIND_NUMBER || isnan(number), "a text has no number");
  require(kind != OHM_KIND_NUMBER || count == 0, "a number has no text");
  require(kind != OHM_KIND_TEXT || count <= 1, "a text is one");
}

static inline void require_nothing(const ohm_finding *finding) {
  for (int field = 1; field < OC_FIELDS; field++) {
    require_field(finding, field);
    require(isnan(ohm_finding_number(finding, field)), "without OHM_OK no number");
    if (field != OHM_FIELD_VERSION && field != OHM_FIELD_TABLES_VERSION)
      require(!ohm_finding_text(finding, field, 0), "without OHM_OK no text");
  }
  require(ohm_finding_verdict(finding) == OHM_UNDECIDED, "without OHM_OK nothing is decided");
  require(ohm_finding_job(finding) == OHM_UNDECIDED, "without OHM_OK nothing is decided");
}

static inline int has_word(const ohm_finding *finding, int field, const char *word) {
  const char *text = ohm_finding_text(finding, field, 0);
  return text && strcmp(text, word) == 0;
}

/* Probabilities of one reading add up to 1; those of several need not. What is over a
 * range has that of lying high alone. */
static inline void require_probabilities(const ohm_finding *finding, int several) {
  static const int fields[] = {OHM_FIELD_P_LOW, OHM_FIELD_P_WITHIN, OHM_FIELD_P_HIGH};
  double p[3];
  for (int i = 0; i < 3; i++) {
    p[i] = ohm_finding_number(finding, fields[i]);
    require(isnan(p[i]) || within(0, p[i], 1), "a probability lies between 0 and 1");
  }
  require(isnan(p[0]) == isnan(p[1]), "no low without within");
  if (!several && !isnan(p[1]))
    require(within(1 - 1e-9, p[0] + p[1] + p[2], 1 + 1e-9), "probabilities add up to 1");
  double level = ohm_finding_number(finding, OHM_FIELD_LEVEL);
  require(0.5 < level && level < 1, "a level is one");
  if (has_word(finding, OHM_FIELD_REASON, "conforms") &&
      !has_word(finding, OHM_FIELD_ABOUT, "explain"))
    require(p[1] >= level, "what conforms reaches the level");
  if (has_word(finding, OHM_FIELD_REASON, "low"))
    require(p[0] >= level, "what is low reaches the level");
  if (has_word(finding, OHM_FIELD_REASON, "high"))
    require(p[2] >= level, "what is high reaches the level");
}

/* Limits about what they are limits of. Fan: a job is told by what it rests on. */
static inline void require_sense(const ohm_finding *finding) {
  double low = ohm_finding_number(finding, OHM_FIELD_ACCEPT_LOW_OHM);
  double high = ohm_finding_number(finding, OHM_FIELD_ACCEPT_HIGH_OHM);
  require(isnan(low) ? isnan(high) : low <= high, "accepted readings are an interval");
  static const int never_negative[] = {
      OHM_FIELD_U_R_OHM,      OHM_FIELD_EXPANDED_R_OHM, OHM_FIELD_U_T_C,
      OHM_FIELD_EXPANDED_T_K, OHM_FIELD_U_AT_C,         OHM_FIELD_EXPANDED_AT_K,
      OHM_FIELD_R_OHM,        OHM_FIELD_SERIES_OHM,     OHM_FIELD_LEAKAGE_OHM,
      OHM_FIELD_LOW_OHM,      OHM_FIELD_U_COMBINED_OHM, OHM_FIELD_NEEDED_K};
  for (size_t i = 0; i < sizeof never_negative / sizeof never_negative[0]; i++) {
    double x = ohm_finding_number(finding, never_negative[i]);
    require(isnan(x) || x >= 0, ohm_field_name(never_negative[i]));
  }
  if (has_word(finding, OHM_FIELD_JOB, "within")) {
    double limit_k = ohm_finding_number(finding, OHM_FIELD_LIMIT_K);
    require(ohm_finding_number(finding, OHM_FIELD_LATE_K) <= limit_k, "good is not late");
    require(ohm_finding_number(finding, OHM_FIELD_EARLY_K) <= limit_k, "good is not early");
  }
}

static inline void require_finding(const ohm_finding *finding, int several) {
  for (int field = 1; field < OC_FIELDS; field++)
    require_field(finding, field);
  require(ohm_finding_text(finding, OHM_FIELD_VERDICT, 0) != NULL, "a finding has a verdict");
  require(ohm_finding_text(finding, OHM_FIELD_REASON, 0) != NULL, "a verdict has a reason");
  require(!ohm_finding_text(finding, OHM_FIELD_JOB, 0) ==
              !ohm_finding_text(finding, OHM_FIELD_JOB_REASON, 0),
          "a job has a reason");
  require_probabilities(finding, several);
  require_sense(finding);
  require_report(finding, ohm_finding_print_report, COLUMNS_MAX);
  require_report(finding, ohm_finding_print_budget, 2 * COLUMNS_MAX);
}

#endif
