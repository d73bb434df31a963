/* SPDX-License-Identifier: MIT */
/* What a reading says of itself, for every room that judges one. */
#ifndef OHM_BATH_H
#define OHM_BATH_H

#include "finding.h"
#include "question.h"

/** Tell the sensor, the reading, its place, the resistance and the temperature it means,
 *  and what was taken for granted of meter, reference and fan. */
void ohm_bath_tell_reading(ohm_finding *finding, const struct ohm_question *question);

/** The reading with the digits the display showed, as far as they are known. */
void ohm_bath_tell_display(ohm_finding *finding, const ohm_reading *reading);

/** Whether a thousand times as much was probably read: "2.31" on a dial at 20k is 2.31 k. */
bool ohm_bath_misses_k(const struct ohm_question *question);

#endif
