/* SPDX-License-Identifier: MIT */
/* Plug and wires, by readings at the sensor's own pins and at the module's end. */
#ifndef OC_BOTH_ENDS_H
#define OC_BOTH_ENDS_H

#include "request.h"

/**
 * What lies between the two ends: a reading at the module's end less what the sensor has at
 * that temperature, by a reading at its own pins. The curve and the band cancel at one
 * temperature, and nearly at two near each other; the meter's percent on one range does too,
 * and the error of one thermometer or bath. Of all pairs the surest tells.
 *
 * In      moved_k  how far the sensor may have moved between two readings, kelvin
 * Out     finding  OHM_FIELD_BETWEEN_OHM and what follows from it; WIRES "within" when the most
 *                  it could be makes the fan no later than the limit, "outside" when the least
 * does; "undecided" also when the module's end reads less for certain: something conducts across
 * the wires, or the module's plug is on
 */
void oc_both_ends_tell(ohm_finding *finding, const struct oc_request *ask, const ohm_sensor *sensor,
                       double moved_k);

#endif
