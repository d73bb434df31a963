/* SPDX-License-Identifier: MIT */
/* A quantity and what makes it uncertain, cause by cause. */
#ifndef OC_ESTIMATE_H
#define OC_ESTIMATE_H

#include "../ground/internal.h"

/** Whether a group of members was stated or is to be assumed. */
typedef enum oc_standing {
  OC_ASSUMED = 0, /**< use the library's assumption and say so in the finding */
  OC_STATED,      /**< use the members as they are, zeros too */
  OC_EXACT        /**< no error at all: the members of the group are not looked at */
} oc_standing;

enum oc_shape { OC_NORMAL, OC_RECTANGULAR };

enum oc_cause_name {
  OC_CAUSE_METER, /**< the meter's limit of error */
  OC_CAUSE_LEADS, /**< what the leads may differ by */
  OC_CAUSE_REFERENCE_LIMIT,
  OC_CAUSE_REFERENCE_NOISE,
  OC_CAUSE_START,      /**< temperature a soak began with */
  OC_CAUSE_HEATING,    /**< what the test current may warm the element by */
  OC_CAUSE_VOLTS,      /**< the voltmeter's limit of error */
  OC_CAUSE_SUPPLY,     /**< what the supply of a pull-up may differ by */
  OC_CAUSE_PULL_UP,    /**< what the pull-up may */
  OC_CAUSE_DEGREE,     /**< what a whole degree leaves open */
  OC_CAUSE_DISPLAY,    /**< what the digits of a display leave open beside it */
  OC_CAUSE_CONVERSION, /**< what a module makes of a resistance */
  OC_CAUSE_MOVED,      /**< what the element moved between two readings */
  OC_CAUSE_BAND        /**< what the maker allows */
};

/** One cause of uncertainty, in the unit of the quantity. */
struct oc_cause {
  enum oc_cause_name name;
  enum oc_shape shape;
  double u; /**< standard uncertainty, k = 1 */
};

enum { OC_CAUSES_MAX = 10 };

/** A value and its causes; the causes are independent of each other. */
struct oc_budget {
  double value;
  size_t count;
  struct oc_cause causes[OC_CAUSES_MAX];
};

struct oc_budget oc_budget_of(double value);

/** Add a cause known by its standard uncertainty. One of 0 is left out. */
void oc_budget_add_normal(struct oc_budget *budget, enum oc_cause_name name, double u);

/** Add a cause known by its limit: rectangular, u = limit / sqrt(3), GUM 4.3.7. */
void oc_budget_add_limit(struct oc_budget *budget, enum oc_cause_name name, double limit);

/** Half-width of a rectangular cause. */
double oc_cause_limit(const struct oc_cause *cause);

/** Half-width of the rectangular cause of that name; 0 when there is none. */
double oc_budget_limit(const struct oc_budget *budget, enum oc_cause_name name);

/** Standard uncertainty of the normal cause of that name; 0 when there is none. */
double oc_budget_normal(const struct oc_budget *budget, enum oc_cause_name name);

/** Combined standard uncertainty, GUM 5.1.2 with unit sensitivity. */
double oc_budget_u(const struct oc_budget *budget);

#endif
