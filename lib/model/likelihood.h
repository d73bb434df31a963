/* SPDX-License-Identifier: MIT */
/*
 * How well readings go with a sensor, sound or with a fault. A reading's logarithm is
 * that of the nominal resistance at its temperature, of where in its band this one
 * sensor lies (one number for all readings), and of errors: of the meter and the leads,
 * alike in all readings, of one thermometer likewise, and each reading's own.
 */
#ifndef OC_LIKELIHOOD_H
#define OC_LIKELIHOOD_H

#include "fault.h"
#include "../arithmetic/gaussian.h"
#include "../arithmetic/quadrature.h"
#include "measurement.h"

/** One more than can be given: the one that could be taken next. */
enum { OC_EVIDENCE_MAX = OC_GAUSSIAN_MAX, OC_EVIDENCE_NODES = 12 * OC_PANEL_NODES };

struct oc_evidence_reading {
  double log_ohm;
  double at_c;
  double log_nominal;   /**< there */
  double thermometer_k; /**< limit of what a common thermometer errs by */
  double u_own;         /**< of the element; all u are relative, standard */
  double u_display;     /**< of the reading alone beside the meter's percent */
  double u_meter;       /**< of the meter's percent, alike on one range */
  double u_leads;
  int range;   /**< alike for readings of one range of the meter */
  double up;   /**< logarithm of the greatest allowed over nominal */
  double down; /**< of the least, negative */
};

/** What two readings err by alike, by the meter and the leads: a covariance. */
double oc_evidence_shared(const struct oc_evidence_reading *a, const struct oc_evidence_reading *b);

/** Numbers read of one sensor. */
struct oc_evidence {
  const ohm_curve *curve;
  double level; /**< asked for */
  size_t count;
  struct oc_evidence_reading readings[OC_EVIDENCE_MAX];
  size_t hottest;
  struct oc_tolerance tolerance; /**< there, or what is assumed */
  bool covered;                  /**< the curve reaches every temperature */
  bool toleranced;               /**< something says how far off this sensor may be */
  size_t nodes;
  double thermometer[OC_EVIDENCE_NODES]; /**< its error, -1 to 1 of the limit */
  double weight[OC_EVIDENCE_NODES];
  double log_nominal[OC_EVIDENCE_NODES][OC_EVIDENCE_MAX];
};

/**
 * Gather the readings that show a number above 0; the others are left out.
 *
 * In      count   up to OC_EVIDENCE_MAX
 * Status  those of oc_bath_check()
 */
ohm_status oc_evidence_gather(struct oc_evidence *evidence, const ohm_sensor *sensor,
                              const oc_reading *readings, const oc_reference *references,
                              size_t count, const oc_meter *meter, const oc_check *check);

/** The same for oc_evidence_forecast() alone: nothing is prepared to be drawn over. */
ohm_status oc_evidence_take(struct oc_evidence *evidence, const ohm_sensor *sensor,
                            const oc_reading *readings, const oc_reference *references,
                            size_t count, const oc_meter *meter, const oc_check *check);

/** Logarithm of the probability density of the readings' logarithms, all that is not
 *  known drawn over; -INFINITY when the fault's size is impossible. */
double oc_evidence_log_likelihood(const struct oc_evidence *evidence, const struct oc_fault *fault);

/**
 * Probability that a sound sensor gives readings that go with it no better than these.
 * Each reading's place in its distribution, given those before it, is uniform; as
 * normal scores their squares add up to chi-square.
 *
 * Source  Rosenblatt, Ann. Math. Stat. 23 (1952) 470-472.
 */
double oc_evidence_fit(const struct oc_evidence *evidence);

/** Deviation of the readings from a fault, as chi-square: every cause counted as
 *  normal. INFINITY when the size is impossible. */
double oc_evidence_chi_square(const struct oc_evidence *evidence, const struct oc_fault *fault);

/** The change of a fault's size that makes chi-square least where it is nearly
 *  quadratic, and the standard uncertainty of the size.
 *  Return  false when the size is impossible, or the readings say nothing of it. */
bool oc_evidence_step(const struct oc_evidence *evidence, const struct oc_fault *fault,
                      double *change, double *u);

/** A logarithm of a resistance that is not yet read. */
struct oc_forecast {
  double log_ohm;
  double u;
};

/** The last reading as the others foretell it. The size of the fault is known to its
 *  u_size only; what is shared with the others is not counted twice. */
struct oc_forecast oc_evidence_forecast(const struct oc_evidence *evidence,
                                        const struct oc_fault *fault, double u_size);

#endif
