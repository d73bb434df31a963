/* SPDX-License-Identifier: MIT */
/* A control module: how its input is made, and what it says. */
#ifndef OC_MODULE_H
#define OC_MODULE_H

#include "../arithmetic/divider.h"
#include "../arithmetic/estimate.h"

/** An input with all that was not told filled in. */
struct oc_input {
  struct oc_divider divider; /**< pull_up_ohm 0 when it was not told; no changeover yet */
  double changeover_c;
  ohm_range range;
  double pull_up_share; /**< limit of either, as a share */
  double supply_limit_v;
  double open_v;
  double short_v;
  bool pull_up_assumed; /**< its limit */
  bool supply_assumed;  /**< its limit */
};

/** Status  OHM_OK; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE. module may be NULL. */
ohm_status oc_input_of(const ohm_module *module, struct oc_input *input);

/**
 * Volts by cause.
 *
 * Out     budget   changed only when OHM_OK
 *         assumed  whether the limit was taken for granted
 * Status  OHM_OK; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE.
 */
ohm_status oc_volts_budget(const ohm_volts *volts, struct oc_budget *budget, bool *assumed);

/** The temperature a module has found, by cause. A degree that may be rounded or
 *  truncated is as wide as both. Out and Status as oc_volts_budget(). */
ohm_status oc_reported_budget(const ohm_reported *reported, struct oc_budget *budget,
                              bool *assumed);

/** Whether a value is one that modules are known to put in the place of a reading they
 *  do not believe. */
bool oc_reported_stands_in(double t_c);

#endif
