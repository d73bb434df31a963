/* SPDX-License-Identifier: MIT */
/* A control module: how its input is made, and what it says. */
#ifndef OC_MODULE_H
#define OC_MODULE_H

#include "../arithmetic/divider.h"
#include "../arithmetic/estimate.h"

/** Which pull-up was in use, of an input with two. */
typedef enum oc_range {
  OC_RANGE_NOT_TOLD = 0,
  OC_RANGE_COLD, /**< the larger one */
  OC_RANGE_HOT   /**< the smaller one */
} oc_range;

/** The input of a control module: a supply, a pull-up to it, or two that change. */
typedef struct oc_module {
  double pull_up_ohm;       /**< 1 to 1e7; of the cold range when there are two; 0: not told */
  double hot_pull_up_ohm;   /**< of the hot range, smaller; 0: one range */
  double changeover_c;      /**< where they change; looked at when there are two */
  int range;                /**< an oc_range */
  int pull_up_accuracy;     /**< an oc_standing, of the next */
  double pull_up_percent;   /**< either is within this of what was told, up to 50 */
  double supply_volt;       /**< 0.5 to 30; 0: OC_ASSUMED_SUPPLY_VOLT */
  int supply_accuracy;      /**< an oc_standing, of the next */
  double supply_limit_volt; /**< it is within this, under half of it */
  double open_volt;         /**< from here up the module sees no circuit; 0: assumed */
  double short_volt;        /**< from here down it sees a short; 0: assumed */
} oc_module;

#define OC_MODULE_INIT                                                                             \
  { 0.0, 0.0, 0.0, OC_RANGE_NOT_TOLD, OC_ASSUMED, 0.0, 0.0, OC_ASSUMED, 0.0, 0.0, 0.0 }

/** Volts at the module's pin, plug on, key on. */
typedef struct oc_volts {
  double v_volt;          /**< as displayed, 0 to 30 */
  double resolution_volt; /**< of the digits given; 0: not known */
  int accuracy;           /**< an oc_standing, of the next; assumed: percent and counts above */
  double limit_volt;      /**< the display is within this of the truth */
  int negative;           /**< an ohm_negative */
} oc_volts;

#define OC_VOLTS_INIT                                                                              \
  { 0.0, 0.0, OC_ASSUMED, 0.0, OHM_NEGATIVE_NOT_TOLD }

/** How a module makes whole degrees. */
typedef enum oc_rounding {
  OC_ROUNDING_NOT_TOLD = 0,
  OC_ROUNDED,  /**< to the nearest */
  OC_TRUNCATED /**< to the next below */
} oc_rounding;

/** Whether a reported value follows the engine. */
typedef enum oc_moves {
  OC_MOVES_NOT_TOLD = 0,
  OC_MOVES,
  OC_NEVER_MOVES /**< the same cold and hot */
} oc_moves;

/** Degrees that the module reports: a scan tool, or a gauge with figures. */
typedef struct oc_reported {
  double t_c;          /**< as displayed, -60 to 300 */
  double resolution_k; /**< of the display when coarser than a degree, up to 20; 0: a degree */
  int rounding;        /**< an oc_rounding */
  int accuracy;        /**< an oc_standing, of the next */
  double limit_k;      /**< what the module makes of a resistance is within this, up to 20 */
  int moves;           /**< an oc_moves */
} oc_reported;

#define OC_REPORTED_INIT                                                                           \
  { 0.0, 0.0, OC_ROUNDING_NOT_TOLD, OC_ASSUMED, 0.0, OC_MOVES_NOT_TOLD }

/**
 * Read a pull-up, or two with the temperature where they change: 1k, 1k+-1%,
 * 10k,1k@50C, 4k,348@40C+-1%.
 *
 * Out     module  must have come from OC_MODULE_INIT; other members stay
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE.
 */
ohm_status oc_pull_up_read(const char *text, oc_module *module, ohm_error *error);

/**
 * Read the supply of the pull-up: 5V, 5, 5.02V+-0.01.
 *
 * Out     module  must have come from OC_MODULE_INIT; other members stay
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE.
 */
ohm_status oc_supply_read(const char *text, oc_module *module, ohm_error *error);

/**
 * Read what a voltmeter showed: 0.97, 0.97V, 970mV, 0.97+-0.02. The resolution is that
 * of the digits as typed.
 *
 * Out     volts   every member set
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE below 0 or above 30.
 */
ohm_status oc_volts_read(const char *text, oc_volts *volts, ohm_error *error);

/**
 * Read degrees that a module reported: 91C, 196F, 91C+-2.
 *
 * Out     reported  every member set
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE below -60 or above
 *         300 degrees C.
 */
ohm_status oc_reported_read(const char *text, oc_reported *reported, ohm_error *error);

/** An input with all that was not told filled in. */
struct oc_input {
  struct oc_divider divider; /**< pull_up_ohm 0 when it was not told; no changeover yet */
  double changeover_c;
  oc_range range;
  double pull_up_share; /**< limit of either, as a share */
  double supply_limit_v;
  double open_v;
  double short_v;
  bool pull_up_assumed; /**< its limit */
  bool supply_assumed;  /**< its limit */
};

/** Status  OHM_OK; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE. module may be NULL. */
ohm_status oc_input_of(const oc_module *module, struct oc_input *input);

/**
 * Volts by cause.
 *
 * Out     budget   changed only when OHM_OK
 *         assumed  whether the limit was taken for granted
 * Status  OHM_OK; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE.
 */
ohm_status oc_volts_budget(const oc_volts *volts, struct oc_budget *budget, bool *assumed);

/** The temperature a module has found, by cause. A degree that may be rounded or
 *  truncated is as wide as both. Out and Status as oc_volts_budget(). */
ohm_status oc_reported_budget(const oc_reported *reported, struct oc_budget *budget, bool *assumed);

/** Whether a value is one that modules are known to put in the place of a reading they
 *  do not believe. */
bool oc_reported_stands_in(double t_c);

#endif
