/* SPDX-License-Identifier: MIT */
/* Printed signal volts of a sensor against a pull-up resistor to a supply. */
#ifndef OC_PULL_UP_H
#define OC_PULL_UP_H

#include "../ground/internal.h"

/** A row of a volt column, colder rows first, and what was found of it. */
struct oc_signal {
  double r_ohm;
  double r_half; /**< relative */
  double v;
  double v_half; /**< volt */
  double low;    /**< ohm: the least pull-up that gives these volts */
  double high;   /**< ohm */
  double fits_v; /**< volt, of the pull-up that was found */
  bool off;
};

enum oc_pull_up_kind {
  OC_PULL_UP_ONE,     /**< one fits, rows marked off aside */
  OC_PULL_UP_TWO,     /**< one fits the colder rows and another the rest */
  OC_PULL_UP_LOADED,  /**< one fits together with a load to ground */
  OC_PULL_UP_CURRENT, /**< the volts are those of a constant current */
  OC_PULL_UP_NONE,    /**< nothing of the kind fits */
  OC_PULL_UP_UNKNOWN  /**< fewer than three rows */
};

struct oc_pull_up {
  enum oc_pull_up_kind kind;
  double p_ohm;     /**< the pull-up, NaN when there is none */
  double hot_ohm;   /**< OC_PULL_UP_TWO: that of the hotter rows */
  double load_ohm;  /**< OC_PULL_UP_LOADED */
  double current_a; /**< OC_PULL_UP_CURRENT */
  double least_ohm; /**< of the pull-ups that the rows alone would want */
  double most_ohm;
};

/** Find it, and mark the rows that are off when one fits most. */
struct oc_pull_up oc_pull_up_find(struct oc_signal *rows, size_t count, double supply_v);

#endif
