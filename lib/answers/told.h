/* SPDX-License-Identifier: MIT */
/* What was read and taken for granted, told in a finding, for every room that judges it. */
#ifndef OC_TOLD_H
#define OC_TOLD_H

#include "../bench/finding.h"
#include "../circuits/circuit.h"
#include "../model/measurement.h"

/** Tell the sensor, the reading, its place, the resistance and the temperature it means,
 *  and what was taken for granted of meter, reference and fan. */
void oc_told_reading(ohm_finding *finding, const struct oc_measurement *measurement);

/** The reading with the digits the display showed, as far as they are known. */
void oc_told_display(ohm_finding *finding, const oc_reading *reading);

/** What was taken for granted. */
void oc_told_assumed(const struct oc_measurement *measurement, ohm_finding *finding);

/** Where the probes were, and what that leaves untested. */
void oc_told_place(const struct oc_measurement *measurement, ohm_finding *finding);

/** What was taken for granted of the meter. */
void oc_told_meter(ohm_finding *finding, const struct oc_meter_assumed *assumed);

/** A resistance with its uncertainty and causes. */
void oc_told_resistance(ohm_finding *finding, const oc_reading *reading,
                        const struct oc_budget *r_ohm, double level);

/** Links of a circuit by their names. */
void oc_told_links(ohm_finding *finding, ohm_field field, const struct ohm_circuit *circuit,
                   oc_set links);

#endif
