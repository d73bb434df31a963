/* SPDX-License-Identifier: MIT */
/*
 * An NTC element as 1/T, piecewise cubic in ln R: the form that beta,
 * Steinhart-Hart, the four-term form and interpolated points share; or, for a data
 * sheet that is canonical the other way, as ln R, piecewise cubic in 1/T. Pieces lie in
 * rising resistance, that is in falling temperature.
 */
#ifndef OC_NTC_H
#define OC_NTC_H

#include "../ground/internal.h"

/** 1/T = c0 + c1 d + c2 d^2 + c3 d^3 with d = ln R - origin; T in kelvin. Of a form that
 *  is canonical the other way, ln R with d = 1/T - origin; the functions of a piece below
 *  serve it with the two exchanged. */
struct oc_ntc_piece {
  double origin;
  double c[4];
};

/** An end of a piece, by which values on it convert exactly. */
struct oc_ntc_knot {
  double r_ohm;
  double t_c;
  double ln_r;
  double y; /**< 1/T, per kelvin */
};

/** count pieces between count + 1 knots. */
struct oc_ntc {
  size_t count;
  struct oc_ntc_knot *knots;
  struct oc_ntc_piece *pieces;
  bool of_temperature; /**< its pieces are ln R in 1/T */
};

struct oc_ntc_knot oc_ntc_knot_at(double t_c, double r_ohm);

/** 1/T at ln R, and its slope. */
double oc_ntc_piece_y(const struct oc_ntc_piece *piece, double ln_r);
double oc_ntc_piece_slope(const struct oc_ntc_piece *piece, double ln_r);

/** The ln R between two ends of a rising piece where 1/T is y; to round-off. */
double oc_ntc_piece_solve(const struct oc_ntc_piece *piece, double from, double to, double y);

/** Whether 1/T rises steadily from one ln R to another; if not, the first place
 *  where it turns is given in turn_ln_r. */
bool oc_ntc_piece_rises(const struct oc_ntc_piece *piece, double from, double to,
                        double *turn_ln_r);

/** Pieces through knots: cubics with limited three-point slopes. */
void oc_ntc_join(struct oc_ntc *ntc);

/** Temperature of a resistance between the first knot and the last. */
double oc_ntc_temperature_c(const struct oc_ntc *ntc, double r_ohm);

/** Resistance at a temperature between the last knot and the first. */
double oc_ntc_resistance_ohm(const struct oc_ntc *ntc, double t_c);

/** (1/R) dR/dT at a temperature between the last knot and the first, per kelvin. */
double oc_ntc_alpha_per_k(const struct oc_ntc *ntc, double t_c);

/** Slope d(1/T)/d(ln R) at the first knot (hot) or the last. */
double oc_ntc_end_slope(const struct oc_ntc *ntc, bool hot);

#endif
