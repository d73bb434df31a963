/* SPDX-License-Identifier: MIT */
/* Filling in a finding. */
#ifndef OHM_FINDING_H
#define OHM_FINDING_H

#include "internal.h"

/** What can be taken for granted; each has its sentence in finding.c. */
enum ohm_assumption {
  OHM_ASSUME_ACCURACY,
  OHM_ASSUME_RESOLUTION,
  OHM_ASSUME_ZEROS,
  OHM_ASSUME_LEADS,
  OHM_ASSUME_THERMOMETER,
  OHM_ASSUME_ICE,
  OHM_ASSUME_BOIL,
  OHM_ASSUME_BOIL_ALTITUDE,
  OHM_ASSUME_BOIL_PRESSURE,
  OHM_ASSUME_INFRARED,
  OHM_ASSUME_CURRENT,
  OHM_ASSUME_FAN,
  OHM_ASSUME_LIMIT,
  OHM_ASSUME_TOLERANCE, /**< for what could hide only, never for the part */
  OHM_ASSUME_BEYOND,    /**< likewise: the curve, or its band, continued to the fan */
  OHM_ASSUME_AIR,       /**< of a soak, from here */
  OHM_ASSUME_AIR_STAYS,
  OHM_ASSUME_STOP,
  OHM_ASSUME_STOP_LIMIT,
  OHM_ASSUME_START,
  OHM_ASSUME_TAU,
  OHM_ASSUME_ALLOW,
  OHM_ASSUME_STILL,
  OHM_ASSUME_COMPANIONS,
  OHM_ASSUME_SUPPLY,
  OHM_ASSUME_PULL_UP,
  OHM_ASSUME_VOLTS,
  OHM_ASSUME_REPORTED,
  OHM_ASSUME_ROUNDING,
  OHM_ASSUME_MOVED,
  OHM_ASSUME_RESISTORS,
  OHM_ASSUME_RESISTORS_E96,
  OHM_ASSUME_NO_MODULE, /**< limits in degrees, and the smallest pull-up printed */
  OHM_ASSUMPTIONS
};

/** What a reading at its place leaves untested. */
enum ohm_untested {
  OHM_UNTESTED_AT_SENSOR,
  OHM_UNTESTED_AT_PLUG,
  OHM_UNTESTED_AT_MODULE,
  OHM_UNTESTED_IF_SENSOR,
  OHM_UNTESTED_IF_MODULE,
  OHM_UNTESTED_IDENTIFIED,
  OHM_UNTESTED_SENSOR_ITSELF,
  OHM_UNTESTED_BEFORE_PIN,
  OHM_UNTESTED_PULL_UP_ITSELF,
  OHM_UNTESTED
};

/** The room that answered; its sentences are its own. */
enum ohm_about {
  OHM_ABOUT_BATH,
  OHM_ABOUT_IDENTIFY,
  OHM_ABOUT_PINS,
  OHM_ABOUT_EXPLAIN,
  OHM_ABOUT_SOAK,
  OHM_ABOUT_PIN,
  OHM_ABOUT_SUBSTITUTE,
  OHM_ABOUT_LOOM,
  OHM_ABOUT_FANPOINT,
  OHM_ABOUT_ISOLATION,
  OHM_ABOUTS
};

/** Every field absent. */
void ohm_finding_clear(ohm_finding *finding);

void ohm_finding_set_number(ohm_finding *finding, ohm_field field, double value);

/** One of sensor, source, band, band_source, read. What does not fit is cut, with
 * "..." at the end.
 */
void ohm_finding_set_text(ohm_finding *finding, ohm_field field, const char *text);

void ohm_finding_set_verdict(ohm_finding *finding, ohm_verdict verdict, ohm_reason reason);

void ohm_finding_set_about(ohm_finding *finding, enum ohm_about about);

/** OHM_ABOUTS when it answers nothing. */
enum ohm_about ohm_finding_about(const ohm_finding *finding);

void ohm_finding_set_reference(ohm_finding *finding, ohm_reference_kind kind);

void ohm_finding_set_job(ohm_finding *finding, ohm_verdict job, ohm_job_reason reason);

void ohm_finding_set_role(ohm_finding *finding, ohm_role role);

/** OHM_ROLE_ASK when absent. */
ohm_role ohm_finding_role(const ohm_finding *finding);

void ohm_finding_set_explanation(ohm_finding *finding, ohm_explanation explanation);

/** OHM_EXPLANATION_COUNT when absent. */
ohm_explanation ohm_finding_explanation(const ohm_finding *finding);

/** What several sensors of one car say of each other. */
enum ohm_agreement { OHM_CONSISTENT, OHM_ODD_ONE, OHM_DISAGREE };

void ohm_finding_set_agreement(ohm_finding *finding, enum ohm_agreement agreement);

/** Which one is odd. */
void ohm_finding_set_odd(ohm_finding *finding, ohm_soaked odd);

void ohm_finding_set_place(ohm_finding *finding, ohm_place place);

/** Add an entry to a list, or the text of a field that has no room of its own. An empty
 *  one is left out, and one for which there is no room. */
void ohm_finding_add_entry(ohm_finding *finding, ohm_field field, const char *text);

void ohm_finding_set_negative(ohm_finding *finding, ohm_negative negative);

void ohm_finding_set_joined(ohm_finding *finding, ohm_joined joined);

void ohm_finding_leave_untested(ohm_finding *finding, enum ohm_untested untested);

void ohm_finding_assume(ohm_finding *finding, enum ohm_assumption assumption);

ohm_reason ohm_finding_reason(const ohm_finding *finding);

ohm_job_reason ohm_finding_job_reason(const ohm_finding *finding);

#endif
