/* SPDX-License-Identifier: MIT */
/* Filling in a finding. */
#ifndef OC_FINDING_H
#define OC_FINDING_H

#include "../ground/arena.h"

/** What can be taken for granted; each has its sentence in finding.c. */
enum oc_assumption {
  OC_ASSUME_ACCURACY,
  OC_ASSUME_RESOLUTION,
  OC_ASSUME_ZEROS,
  OC_ASSUME_LEADS,
  OC_ASSUME_THERMOMETER,
  OC_ASSUME_ICE,
  OC_ASSUME_BOIL,
  OC_ASSUME_BOIL_ALTITUDE,
  OC_ASSUME_BOIL_PRESSURE,
  OC_ASSUME_INFRARED,
  OC_ASSUME_CURRENT,
  OC_ASSUME_FAN,
  OC_ASSUME_LIMIT,
  OC_ASSUME_TOLERANCE, /**< for what could hide only, never for the part */
  OC_ASSUME_BEYOND,    /**< likewise: the curve, or its band, continued to the fan */
  OC_ASSUME_AIR,       /**< of a soak, from here */
  OC_ASSUME_AIR_STAYS,
  OC_ASSUME_STOP,
  OC_ASSUME_STOP_LIMIT,
  OC_ASSUME_START,
  OC_ASSUME_TAU,
  OC_ASSUME_ALLOW,
  OC_ASSUME_STILL,
  OC_ASSUME_COMPANIONS,
  OC_ASSUME_SUPPLY,
  OC_ASSUME_PULL_UP,
  OC_ASSUME_VOLTS,
  OC_ASSUME_REPORTED,
  OC_ASSUME_ROUNDING,
  OC_ASSUME_MOVED,
  OC_ASSUME_RESISTORS,
  OC_ASSUME_RESISTORS_E96,
  OC_ASSUME_NO_MODULE, /**< limits in degrees, and the smallest pull-up printed */
  OC_ASSUMPTIONS
};

/** What a reading at its place leaves untested. */
enum oc_untested {
  OC_UNTESTED_AT_SENSOR,
  OC_UNTESTED_AT_PLUG,
  OC_UNTESTED_AT_MODULE,
  OC_UNTESTED_IF_SENSOR,
  OC_UNTESTED_IF_MODULE,
  OC_UNTESTED_IDENTIFIED,
  OC_UNTESTED_SENSOR_ITSELF,
  OC_UNTESTED_BEFORE_PIN,
  OC_UNTESTED_PULL_UP_ITSELF,
  OC_UNTESTED
};

/** One more than the greatest number of a list. */
#define OC_NUMBER(number, ...) char of_##number[(number) + 1];
enum {
  OC_FIELDS = sizeof(union {OHM_FIELDS(OC_NUMBER)}),
  OC_EXPLANATIONS = sizeof(union {OHM_EXPLANATIONS(OC_NUMBER)}),
  OC_VERBS = sizeof(union {OHM_VERBS(OC_NUMBER)})
};
#undef OC_NUMBER

struct oc_entry;

/** Numbers and words are one double each, by the number of the field; texts are entries
 *  in the arena of its answer, the last first. A copy shares them. */
struct ohm_finding {
  struct oc_arena *arena;
  const struct oc_entry *entries;
  double numbers[OC_FIELDS];
};

/** A finding whose texts go into an arena, every field absent. */
ohm_finding oc_finding_in(struct oc_arena *arena);

/** The word of that number in the list of a field; NULL when there is none. */
const char *oc_field_word(ohm_field field, int number);

/** Every field absent. */
void oc_finding_clear(ohm_finding *finding);

/** The number of a field; one that is not finite leaves it absent. */
void oc_finding_set_number(ohm_finding *finding, ohm_field field, double value);

/** The text of a field; an empty one leaves it absent. */
void oc_finding_set_text(ohm_finding *finding, ohm_field field, const char *text);

void oc_finding_set_verdict(ohm_finding *finding, ohm_verdict verdict, ohm_reason reason);

void oc_finding_set_about(ohm_finding *finding, ohm_verb about);

/** OC_VERBS when it answers nothing. */
int oc_finding_about(const ohm_finding *finding);

void oc_finding_set_reference(ohm_finding *finding, ohm_reference_kind kind);

void oc_finding_set_job(ohm_finding *finding, ohm_verdict job, ohm_job_reason reason);

void oc_finding_set_role(ohm_finding *finding, ohm_role role);

/** OHM_ROLE_ASK when absent. */
ohm_role oc_finding_role(const ohm_finding *finding);

void oc_finding_set_explanation(ohm_finding *finding, ohm_explanation explanation);

/** OC_EXPLANATIONS when absent. */
int oc_finding_explanation(const ohm_finding *finding);

void oc_finding_set_agreement(ohm_finding *finding, ohm_agreement agreement);

/** Which one is odd. */
void oc_finding_set_odd(ohm_finding *finding, ohm_soaked odd);

void oc_finding_set_place(ohm_finding *finding, ohm_place place);

/** Add an entry to a list; an empty one is left out. */
void oc_finding_add_entry(ohm_finding *finding, ohm_field field, const char *text);

void oc_finding_set_negative(ohm_finding *finding, ohm_negative negative);

void oc_finding_set_joined(ohm_finding *finding, ohm_joined joined);

void oc_finding_leave_untested(ohm_finding *finding, enum oc_untested untested);

/** That alone lies outside the probes. */
void oc_finding_set_untested(ohm_finding *finding, enum oc_untested untested);

void oc_finding_assume(ohm_finding *finding, enum oc_assumption assumption);

ohm_reason oc_finding_reason(const ohm_finding *finding);

ohm_job_reason oc_finding_job_reason(const ohm_finding *finding);

#endif
