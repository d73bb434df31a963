/* SPDX-License-Identifier: MIT */
/* The beginnings of numbers, for the notations built on them. */
#ifndef OC_NUMBER_H
#define OC_NUMBER_H

#include "text.h"

/**
 * Read the longest decimal number at the beginning of text.
 *
 * Out     used     its length in bytes; 0 unless OHM_OK or OHM_OUT_OF_RANGE
 *         value    as ohm_number_read(); NaN unless OHM_OK
 *         quantum  what one in its last typed digit is worth: 0.01 for 2.31 and
 *                  for 0.02, 1 for 2310, 10 for 2.31e3. May be NULL.
 * Status  OHM_OK; OHM_BAD_SYNTAX no number begins here; OHM_OUT_OF_RANGE.
 */
ohm_status oc_number_scan(const char *text, size_t length, size_t *used, double *value,
                          double *quantum);

/**
 * Read a resistance in the letter code of IEC 60062 (RKM) at the beginning of
 * text, the letter in the place of the decimal point: 2k31, 4K7, 0R47, R47, 1M,
 * 22R. Letters L (milli), R, k or K, M, G.
 *
 * Out     used, value (ohm), quantum (ohm), as above
 * Status  OHM_OK; OHM_BAD_SYNTAX no such code begins here; OHM_OUT_OF_RANGE.
 */
ohm_status oc_rkm_scan(const char *text, size_t length, size_t *used, double *value,
                       double *quantum);

/** Append a number as ohm_number_print() writes it. */
void oc_text_add_number(struct oc_text *text, double value);

#endif
