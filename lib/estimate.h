/* SPDX-License-Identifier: MIT */
/* A quantity and what makes it uncertain, cause by cause. */
#ifndef OHM_ESTIMATE_H
#define OHM_ESTIMATE_H

#include "internal.h"

enum ohm_shape { OHM_NORMAL, OHM_RECTANGULAR };

enum ohm_cause_name {
  OHM_CAUSE_METER, /**< the meter's limit of error */
  OHM_CAUSE_LEADS, /**< what the leads may differ by */
  OHM_CAUSE_REFERENCE_LIMIT,
  OHM_CAUSE_REFERENCE_NOISE,
  OHM_CAUSE_START,      /**< temperature a soak began with */
  OHM_CAUSE_HEATING,    /**< what the test current may warm the element by */
  OHM_CAUSE_VOLTS,      /**< the voltmeter's limit of error */
  OHM_CAUSE_SUPPLY,     /**< what the supply of a pull-up may differ by */
  OHM_CAUSE_PULL_UP,    /**< what the pull-up may */
  OHM_CAUSE_DEGREE,     /**< what a whole degree leaves open */
  OHM_CAUSE_DISPLAY,    /**< what the digits of a display leave open beside it */
  OHM_CAUSE_CONVERSION, /**< what a module makes of a resistance */
  OHM_CAUSE_MOVED,      /**< what the element moved between two readings */
  OHM_CAUSE_BAND        /**< what the maker allows */
};

/** One cause of uncertainty, in the unit of the quantity. */
struct ohm_cause {
  enum ohm_cause_name name;
  enum ohm_shape shape;
  double u; /**< standard uncertainty, k = 1 */
};

enum { OHM_CAUSES_MAX = 8 };

/** A value and its causes; the causes are independent of each other. */
struct ohm_budget {
  double value;
  size_t count;
  struct ohm_cause causes[OHM_CAUSES_MAX];
};

struct ohm_budget ohm_budget_of(double value);

/** Add a cause known by its standard uncertainty. One of 0 is left out. */
void ohm_budget_add_normal(struct ohm_budget *budget, enum ohm_cause_name name, double u);

/** Add a cause known by its limit: rectangular, u = limit / sqrt(3), GUM 4.3.7. */
void ohm_budget_add_limit(struct ohm_budget *budget, enum ohm_cause_name name, double limit);

/** Half-width of a rectangular cause. */
double ohm_cause_limit(const struct ohm_cause *cause);

/** Combined standard uncertainty, GUM 5.1.2 with unit sensitivity. */
double ohm_budget_u(const struct ohm_budget *budget);

#endif
