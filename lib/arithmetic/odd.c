/* SPDX-License-Identifier: MIT */
/*
 * Each member is off by  air_share a + start_k z + noise u_k:  a is the error of the air,
 * of which nothing is taken for known, z a standard normal error of the common start.
 * The least of  sum (off - share a - start z)^2/u^2 + z^2  over both is chi-square.
 */
#include "odd.h"

#include "distribution.h"

/* What is said to be exact is known to this. */
static const double LEAST_U_K = 1e-6;
/* Shares so alike, or so small, tell nothing of the air. */
static const double NO_SHARE = 1e-12;

struct common {
  double air_k;
  double start;
  double chi_square;
};

static struct common common_errors(const struct oc_member *members, size_t count, int without) {
  double hh = 0, hs = 0, ss = 1, hd = 0, sd = 0, dd = 0;
  for (size_t i = 0; i < count; i++) {
    const struct oc_member *m = &members[i];
    if ((int)i == without)
      continue;
    double u = fmax(m->u_k, LEAST_U_K);
    double h = m->air_share / u, s = m->start_k / u, d = m->off_k / u;
    hh += h * h;
    hs += h * s;
    ss += s * s;
    hd += h * d;
    sd += s * d;
    dd += d * d;
  }
  struct common best = {0, 0, dd};
  double determinant = hh * ss - hs * hs;
  if (determinant > NO_SHARE * hh * ss) {
    best.air_k = (hd * ss - sd * hs) / determinant;
    best.start = (sd * hh - hd * hs) / determinant;
  } else {
    best.start = sd / ss;
  }
  best.chi_square = fmax(0, dd - best.air_k * hd - best.start * sd);
  return best;
}

static double chance(double chi_square, size_t degrees) {
  return degrees == 0 ? 1 : oc_chi_square_above(chi_square, (double)degrees);
}

struct oc_odd oc_odd_of(const struct oc_member *members, size_t count, double level) {
  struct common all = common_errors(members, count, -1);
  struct oc_odd result = {all.chi_square, chance(all.chi_square, count - 1), true, -1, NAN};
  result.agree = result.probability >= 1 - level;
  if (result.agree || count < 3)
    return result;
  size_t restoring = 0;
  for (size_t i = 0; i < count; i++) {
    struct common rest = common_errors(members, count, (int)i);
    if (!(chance(rest.chi_square, count - 2) >= 1 - level))
      continue;
    restoring++;
    result.odd = (int)i;
    result.off_k =
        members[i].off_k - members[i].air_share * rest.air_k - members[i].start_k * rest.start;
  }
  if (restoring != 1) {
    result.odd = -1;
    result.off_k = NAN;
  }
  return result;
}
