/* SPDX-License-Identifier: MIT */
/* Filling in a finding. */
#ifndef OC_FINDING_H
#define OC_FINDING_H

#include "../ground/internal.h"

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

/** The room that answered; its sentences are its own. */
enum oc_about {
  OC_ABOUT_BATH,
  OC_ABOUT_IDENTIFY,
  OC_ABOUT_PINS,
  OC_ABOUT_EXPLAIN,
  OC_ABOUT_SOAK,
  OC_ABOUT_PIN,
  OC_ABOUT_SUBSTITUTE,
  OC_ABOUT_LOOM,
  OC_ABOUT_FANPOINT,
  OC_ABOUT_ISOLATION,
  OC_ABOUTS
};

/** Every field absent. */
void oc_finding_clear(ohm_finding *finding);

void oc_finding_set_number(ohm_finding *finding, ohm_field field, double value);

/** One of sensor, source, band, band_source, read. What does not fit is cut, with
 * "..." at the end.
 */
void oc_finding_set_text(ohm_finding *finding, ohm_field field, const char *text);

void oc_finding_set_verdict(ohm_finding *finding, ohm_verdict verdict, ohm_reason reason);

void oc_finding_set_about(ohm_finding *finding, enum oc_about about);

/** OC_ABOUTS when it answers nothing. */
enum oc_about oc_finding_about(const ohm_finding *finding);

void oc_finding_set_reference(ohm_finding *finding, ohm_reference_kind kind);

void oc_finding_set_job(ohm_finding *finding, ohm_verdict job, ohm_job_reason reason);

void oc_finding_set_role(ohm_finding *finding, ohm_role role);

/** OHM_ROLE_ASK when absent. */
ohm_role oc_finding_role(const ohm_finding *finding);

void oc_finding_set_explanation(ohm_finding *finding, ohm_explanation explanation);

/** OHM_EXPLANATION_COUNT when absent. */
ohm_explanation oc_finding_explanation(const ohm_finding *finding);

/** What several sensors of one car say of each other. */
enum oc_agreement { OC_CONSISTENT, OC_ODD_ONE, OC_DISAGREE };

void oc_finding_set_agreement(ohm_finding *finding, enum oc_agreement agreement);

/** Which one is odd. */
void oc_finding_set_odd(ohm_finding *finding, ohm_soaked odd);

void oc_finding_set_place(ohm_finding *finding, ohm_place place);

/** Add an entry to a list, or the text of a field that has no room of its own. An empty
 *  one is left out, and one for which there is no room. */
void oc_finding_add_entry(ohm_finding *finding, ohm_field field, const char *text);

void oc_finding_set_negative(ohm_finding *finding, ohm_negative negative);

void oc_finding_set_joined(ohm_finding *finding, ohm_joined joined);

void oc_finding_leave_untested(ohm_finding *finding, enum oc_untested untested);

void oc_finding_assume(ohm_finding *finding, enum oc_assumption assumption);

ohm_reason oc_finding_reason(const ohm_finding *finding);

ohm_job_reason oc_finding_job_reason(const ohm_finding *finding);

#endif
