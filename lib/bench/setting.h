/* SPDX-License-Identifier: MIT */
/* What can be asked: names, notations, what is allowed. */
#ifndef OC_SETTING_H
#define OC_SETTING_H

#include "../ground/internal.h"

/** One more than the greatest number of a setting. */
#define OC_NUMBER(number, ...) char of_##number[(number) + 1];
enum { OC_SETTINGS = sizeof(union {OHM_SETTINGS(OC_NUMBER)}) };
#undef OC_NUMBER

/** Room for the text of any number in its notation. */
enum { OC_SETTING_TEXT_SIZE = OHM_NUMBER_SIZE + 4 };

/**
 * Read the text of a setting in the notation of its kind.
 *
 * Out     number  in the unit of its name, or of a word its place in the list of what is
 *                 allowed, from 1; of a flag 1 or 0; NaN of a kind that takes text alone
 * Status  OHM_OK; OHM_NOT_FOUND no such setting; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE.
 */
ohm_status oc_setting_read(int setting, const char *text, double *number, ohm_error *error);

/**
 * Write a number in the notation of a setting.
 *
 * Status  OHM_OK; OHM_NOT_FOUND no such setting; OHM_BAD_ARGUMENT not finite, or the
 *         setting takes text alone; OHM_OUT_OF_RANGE.
 */
ohm_status oc_setting_print(int setting, double number, char text[OC_SETTING_TEXT_SIZE],
                            ohm_error *error);

#endif
