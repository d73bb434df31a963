/* SPDX-License-Identifier: MIT */
/* What a verb takes from a bench, and the sentences when it is not there. */
#ifndef OC_REQUEST_H
#define OC_REQUEST_H

#include "../bench/answer.h"
#include "../bench/bench.h"
#include "../bench/notation.h"
#include "../ground/status.h"
#include "../model/measurement.h"

enum { OC_REQUEST_READINGS_MAX = 16 };

/** A bench as one verb looks at it; error may be NULL. */
struct oc_request {
  const ohm_bench *bench;
  const char *verb;
  ohm_error *error;
  oc_meter meter;
  oc_check check;
  size_t count;
  oc_reading readings[OC_REQUEST_READINGS_MAX];
  oc_reference references[OC_REQUEST_READINGS_MAX];
  ohm_place places[OC_REQUEST_READINGS_MAX];
  bool both_ends; /**< those at the sensor's pins and at the module's end may stand together */
};

/** Begin, with meter, leads, current, level, tolerance and fan as they are set.
 *  Status  OHM_OK; OHM_NULL_ARGUMENT no bench. Every function below has its sentence. */
ohm_status oc_request_begin(struct oc_request *ask, const ohm_bench *bench, const char *verb,
                            ohm_error *error);

/** What was set of a setting by its number; otherwise when it is unset. */
double oc_request_number(const struct oc_request *ask, ohm_setting setting, double otherwise);

/** The place in the list of allowed words, from 1; 0 when it is unset. */
int oc_request_word(const struct oc_request *ask, ohm_setting setting);

/** Status  OHM_OK; OHM_NOT_FOUND there is no sensor. */
ohm_status oc_request_sensor(const struct oc_request *ask);

/** The readings of ohms, in their order, without temperatures.
 *  Status  OHM_OK; OHM_NOT_FOUND none; OHM_TOO_LARGE. */
ohm_status oc_request_ohms(struct oc_request *ask);

/** The band of the sensor to judge by, as it was set.
 *  Status  OHM_OK; OHM_BAD_ARGUMENT band and tolerance; OHM_NOT_FOUND no such band. */
ohm_status oc_request_band(struct oc_request *ask);

/** All that judges one part takes: the beginning, a sensor, the band to judge by, and the
 *  readings.  Status  those of oc_request_begin(), _sensor() and _readings(); OHM_BAD_ARGUMENT
 *  band and tolerance; OHM_NOT_FOUND the sensor has no such band. */
ohm_status oc_request_part(struct oc_request *ask, const ohm_bench *bench, const char *verb,
                           ohm_error *error);

/** The readings of ohms with their temperatures, all at one place, which goes into check; with
 *  both_ends the sensor's does, and each reading has its own in places.
 *  Status  OHM_OK; OHM_NOT_FOUND none, or one without a temperature; OHM_BAD_ARGUMENT at
 *  different places; OHM_TOO_LARGE. */
ohm_status oc_request_readings(struct oc_request *ask);

/** The temperature of all, from the setting at; NULL when it is unset. */
const oc_reference *oc_request_at(const struct oc_request *ask, oc_reference *reference);

/** How the input of the module is made. */
oc_module oc_request_module(const struct oc_request *ask);

/** How many readings of a kind there are, and the first of them. */
size_t oc_request_kind(const struct oc_request *ask, enum oc_reading_kind kind,
                       const struct oc_bench_reading **first);

/** Status  OHM_OK; OHM_NOT_FOUND there is no sensor to compare with. */
ohm_status oc_request_compared(const struct oc_request *ask);

/** As oc_request_at(), with a sentence when it is unset. Status  OHM_OK; OHM_NOT_FOUND. */
ohm_status oc_request_need_at(const struct oc_request *ask, oc_reference *reference);

/** The only reading of ohms, its place in check. Status  OHM_OK; OHM_NOT_FOUND;
 *  OHM_BAD_ARGUMENT several. */
ohm_status oc_request_alone(struct oc_request *ask);

/** Whether the curve reaches every temperature of the readings.
 *  Status  OHM_OK; OHM_OUT_OF_RANGE. */
ohm_status oc_request_reach(const struct oc_request *ask);

/** Volts with the place of the negative lead, degrees reported with how they were made. */
oc_volts oc_request_volts(const struct oc_request *ask, const struct oc_bench_reading *reading);
oc_reported oc_request_reported(const struct oc_request *ask, const oc_reported *reported);

/** A temperature that the curve does not reach: what is asked for, and its value. */
ohm_status oc_request_refuse_reach(const struct oc_request *ask, const char *what, double t_c);

/** Pass over OHM_OK; say the sentence of any other status that has none yet. */
ohm_status oc_request_told(const struct oc_request *ask, ohm_status status);

#endif
