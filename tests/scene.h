/* SPDX-License-Identifier: MIT */
/* A check at the bench, for the tests of everything that takes one. */
#ifndef OHM_TESTS_SCENE_H
#define OHM_TESTS_SCENE_H

#include "support.h"
#include "findings.h"
#include "../lib/model/measurement.h"

/** Everything one check is made of but the sensor. */
struct scene {
  oc_reading reading;
  oc_meter meter;
  oc_reference reference;
  oc_check check;
};

/** Without any error, at the sensor's own pins, for a fan that starts at 97 C. */
struct scene scene_exact(double r_ohm, double t_c);

/** As a person types it, all else assumed. */
struct scene scene_typed(const char *reading, const char *reference);

/** A sensor from the text of a sensor file, and a built-in one; never NULL. */
ohm_sensor *sensor_of(const char *text);
ohm_sensor *sensor_built_in(const char *name);

/** The finding of a scene; the test fails when there is none. */
ohm_finding scene_judged(const ohm_sensor *sensor, const struct scene *scene);

/** The finding of a built-in sensor by what a person types. */
ohm_finding typed(const char *sensor, const char *reading, const char *reference, ohm_place place);

double number_in(const ohm_finding *finding, ohm_field field);

void check_verdict(const ohm_finding *finding, ohm_verdict verdict, const char *reason);
void check_job(const ohm_finding *finding, ohm_verdict job, const char *reason);

/** The report, and the budget; good until the next call. */
const char *report_of(const ohm_finding *finding);
const char *budget_of(const ohm_finding *finding);

void check_has(const char *text, const char *part);
void check_has_not(const char *text, const char *part);

#endif
