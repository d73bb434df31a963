/* SPDX-License-Identifier: MIT */
/* Resistors in place of a sensor. */
#ifndef OC_SUBSTITUTE_H
#define OC_SUBSTITUTE_H

#include "../bench/finding.h"
#include "../evidence/module.h"

/** What is to stand in for the sensor. */
typedef struct oc_substitute {
  double aim_c;             /**< the module is to see this; 0: OC_ASSUMED_AIM_K above fan_c */
  double fan_c;             /**< the fan is to start here; 0: OC_ASSUMED_FAN_C */
  int series;               /**< an ohm_series; looked at when there is no drawer */
  double tolerance_percent; /**< of each resistor, under 50; 0: by the series */
  const double *drawer_ohm; /**< values at hand, each as often as it is there; or NULL */
  size_t drawer_count;      /**< 0 to 64 */
  bool cuts;                /**< the module cuts degrees off, and does not round them */
} oc_substitute;

#define OC_SUBSTITUTE_INIT                                                                         \
  { 0.0, 0.0, OHM_SERIES_E12, 0.0, NULL, 0, false }

/**
 * Ordinary resistors across the plug in place of the sensor, for a module to see a wanted
 * temperature: the single one nearest to it, and the pair, in series or across each other,
 * that comes nearest.
 *
 * Verdict  "within": with every tolerance it asks for the fan and looks like a sensor;
 *          "outside": it would look open or short, or never ask for the fan;
 *          "undecided": it depends on the tolerance.
 *
 * In      module  NULL when nothing is known of it: then limits are those of degrees that
 *         makers print, and the power that of the smallest pull-up printed
 *         substitute  NULL for all defaults
 * Out     single, pair   either may be NULL, not both; every field absent unless OHM_OK. Of
 *         a drawer of one value pair stays absent.
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE the sensor's curve
 *         does not reach what is asked for; OHM_TOO_LARGE the drawer.
 * Source  preferred values: IEC 60063.
 */
ohm_status oc_substitute_find(const ohm_sensor *sensor, const oc_module *module,
                              const oc_substitute *substitute, ohm_finding *single,
                              ohm_finding *pair);

#endif
