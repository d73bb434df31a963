/* SPDX-License-Identifier: MIT */
/* One check, asked: every part looked at, taken for granted where not told. */
#ifndef OHM_QUESTION_H
#define OHM_QUESTION_H

#include "decision.h"
#include "hidden.h"
#include "meter.h"
#include "sensor.h"

struct ohm_question {
  const ohm_sensor *sensor;
  const ohm_curve *curve;
  const ohm_reading *reading;
  const ohm_meter *meter; /**< may be NULL */
  const ohm_reference *reference;
  double level;
  double fan_c;
  double limit_k;
  ohm_place place;
  struct ohm_tolerance tolerance; /**< to judge the part by */
  const struct ohm_maker_band *band;
  ohm_status covered;        /**< whether that says anything here, as ohm_sensor_band() */
  struct ohm_budget bath;    /**< temperature of the bath */
  struct ohm_budget element; /**< the same, warmed by the test current */
  bool has_number;
  struct ohm_budget read; /**< resistance; when has_number */
  struct ohm_meter_assumed meter_assumed;
  bool bath_assumed;
  bool current_assumed;
  bool fan_assumed;
  bool limit_assumed;
};

/** Status  those of ohm_bath_check(). */
ohm_status ohm_question_ask(struct ohm_question *question, const ohm_sensor *sensor,
                            const ohm_reading *reading, const ohm_meter *meter,
                            const ohm_reference *reference, const ohm_check *check);

/** What was taken for granted. */
void ohm_question_tell_assumed(const struct ohm_question *question, ohm_finding *finding);

/** The tolerance to look for hidden faults with, and the fan. */
void ohm_question_expose(const struct ohm_question *question, struct ohm_tolerance *tolerance,
                         struct ohm_exposure *exposure);

/** Readings that would pass in this bath. */
struct ohm_acceptance {
  double low_ohm; /**< NaN when none would */
  double high_ohm;
  double needed_k; /**< when none would, the limit of a thermometer with which some
                        would; NaN when even an exact one does not help */
};

struct ohm_acceptance ohm_question_acceptance(const struct ohm_question *question);

#endif
