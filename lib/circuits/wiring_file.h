/* SPDX-License-Identifier: MIT */
/*
 * A wiring as it is typed off a diagram: a row a thing, with the columns
 *
 *     link    its name
 *     kind    battery wire splice strap rail ground fuse relay output switch resistor motor
 *     from    a point: what is written alike is joined; + and - are the posts of the battery
 *     to      another; a relay has none, its points are NAME.30 .87 .87a .85 .86
 *     value   volts of the battery, amperes of a fuse or motor, ohms of a coil or resistor
 *     by      of a wire where it can rub through to; of a fuse key, if it is live with the key on
 *             alone; of an output or switch what closes it: hot high ac unplugged commanded
 */
#ifndef OC_WIRING_FILE_H
#define OC_WIRING_FILE_H

#include "../ground/table_file.h"
#include "wiring.h"

/**
 * Return  the wiring, to be freed; NULL with the error filled in: whatever cannot be used ends it,
 *         for what is left out of a wiring makes the rest another one.
 * Status  OHM_BAD_SYNTAX; OHM_BAD_DEFINITION two things of one name, no battery; OHM_TOO_LARGE;
 *         OHM_NO_MEMORY.
 */
struct oc_wiring *oc_wiring_file_parse(const char *text, size_t length, const char *name,
                                       ohm_error *error);

#endif
