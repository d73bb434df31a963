/* SPDX-License-Identifier: MIT */
/* A reading with everything that makes it uncertain. */
#ifndef OC_METER_H
#define OC_METER_H

#include "../arithmetic/estimate.h"
#include "../ground/words.h"

/** What the display showed. */
typedef enum oc_display {
  OC_DISPLAY_VALUE = 0, /**< a number */
  OC_DISPLAY_OVER,      /**< over-range: OL */
  OC_DISPLAY_OPEN,      /**< no circuit, said of the highest range */
  OC_DISPLAY_ONE        /**< a lone 1: over-range on many displays, or 1 ohm */
} oc_display;

/** One reading of an ohmmeter. */
typedef struct oc_reading {
  int display;           /**< an oc_display */
  double r_ohm;          /**< as displayed, leads included, 0 to 1e12 */
  double resolution_ohm; /**< of the digits given; 0: not known */
  double range_ohm;      /**< of OC_DISPLAY_OVER, the range it was on; 0: not told */
  double zeros_ohm;      /**< what a whole number leaves open: 100 of a bare 2300, 1000 of
                              10k; 0: every digit was displayed */
  int bare;              /**< not 0: a bare number, the dial's k may be missing */
} oc_reading;

#define OC_READING_INIT                                                                            \
  { OC_DISPLAY_VALUE, 0.0, 0.0, 0.0, 0.0, 0 }

/** What is known of the ohmmeter. */
typedef struct oc_meter {
  int accuracy;          /**< an oc_standing, of percent and counts */
  double percent;        /**< of reading, under 100 */
  double counts;         /**< of the last digit, up to 1e6 */
  double resolution_ohm; /**< of one count; 0: from display_count or the reading;
                              when neither tells and accuracy is assumed, a display of
                              OC_ASSUMED_DISPLAY_COUNT is */
  double display_count;  /**< 2000 for a display up to 1999; 0: not known */
  int leads;             /**< an oc_standing, of the next two */
  double lead_ohm;       /**< resistance of the leads, taken off the reading, up to 1000 */
  double lead_limit_ohm; /**< the leads are within this of lead_ohm, up to 1000 */
  double current_ma;     /**< test current, milliampere, up to 1000; 0: not known */
  double ranges_alike;   /**< whether percent errs alike on all ranges, 1 or 0; NaN: not known */
} oc_meter;

#define OC_METER_INIT                                                                              \
  { OC_ASSUMED, 0.0, 0.0, 0.0, 0.0, OC_ASSUMED, 0.0, 0.0, 0.0, NAN }

/**
 * Read what a display showed: 2310, 2.31k, 2k31 (IEC 60062), 2.31 kohm, 0R47; OL,
 * OL@20k or >20k (over-range on the 20 k range); 1 alone; open. The resolution is
 * that of the digits as typed.
 *
 * Out     reading  every member set
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE below 0 or
 *         above 1e12 ohm.
 */
ohm_status oc_reading_read(const char *text, oc_reading *reading, ohm_error *error);

/**
 * Read an accuracy as meter makers print it: 0.8%+3 (percent of reading plus
 * counts), 0.8%+3x10 (one count is 10 ohm), 0.8%+3@2000 (a display of 2000
 * counts), @2000 alone, or "exact". The members for the leads stay as they are.
 *
 * Out     meter   must have come from OC_METER_INIT
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE a negative
 *         part, 100 % or more, a display of under 100 counts.
 */
ohm_status oc_meter_read(const char *text, oc_meter *meter, ohm_error *error);

/**
 * Read the resistance of the leads: 0.4, 0.4+-0.1 (ohm), or "exact" when there is none
 * to take off. Without a limit they are taken to repeat within 0.1 ohm (common
 * practice). Other members stay.
 *
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE.
 */
ohm_status oc_leads_read(const char *text, oc_meter *meter, ohm_error *error);

/**
 * The limit of error of a reading by the meter's own specification:
 * percent of reading plus counts, never less than half a count. A count is the stated
 * resolution, else that of the stated display, else the last digit as typed; of a
 * whole number that leaves digits open, a count of an assumed display and half of what
 * is left open.
 *
 * In      meter   NULL for all assumed
 * Out     limit_ohm  ohm; NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT a member is NaN, infinite or
 *         negative; OHM_OUT_OF_RANGE the display did not show a number.
 */
ohm_status oc_meter_limit(const oc_meter *meter, const oc_reading *reading, double *limit_ohm);

/**
 * What a reading says of the resistance at the probes' tips: leads taken off,
 * every cause counted.
 *
 * In      meter   NULL for all assumed
 * Out     r_ohm   ohm; both NaN unless OHM_OK. The value is never below 0.
 * Status  those of oc_meter_limit().
 */
ohm_status oc_meter_estimate(const oc_meter *meter, const oc_reading *reading, ohm_estimate *r_ohm);

/** Take a resistance, 2310, 2.31k, 2k31 or 2.31 kohm, and what one in its last digit is
 *  worth. Takes nothing whole unless it answers true. */
bool oc_words_resistance(struct oc_words *words, double *r_ohm, double *quantum_ohm);

/** What was taken for granted about a meter. */
struct oc_meter_assumed {
  bool accuracy;
  bool resolution;
  bool zeros; /**< zeros at the end of a bare number may be rounding */
  bool leads;
};

/**
 * Resistance at the probes' tips by cause. meter may be NULL.
 *
 * Out     budget   changed only when OHM_OK
 *         assumed  may be NULL
 * Status  those of oc_meter_estimate().
 */
ohm_status oc_meter_budget(const oc_meter *meter, const oc_reading *reading,
                           struct oc_budget *budget, struct oc_meter_assumed *assumed);

/** The limit of error of a reading in its parts, ohm. */
struct oc_meter_parts {
  double percent_ohm; /**< by the percent of reading: of the range's own resistor */
  double counts_ohm;  /**< by counts, and what the digits leave open */
  double count_ohm;   /**< one count; alike on one range */
};

/** Standard uncertainty, ohm, of what errs in one reading alone beside the percent, so that both
 *  together have that of a limit of their sum: makers state the sum. */
double oc_meter_own_u(const struct oc_meter_parts *parts);

/** Those of a meter and a reading that oc_meter_budget() takes. meter may be NULL. */
struct oc_meter_parts oc_meter_parts(const oc_meter *meter, const oc_reading *reading);

#endif
