/* SPDX-License-Identifier: MIT */
#include "distribution.h"

#include <float.h>

enum { TERMS_MAX = 20000 };

/* Where a continued fraction would divide by 0. */
static const double TINY = 1e-300;
static const double PI = 3.14159265358979324;

static double away_from_zero(double x) {
  return fabs(x) < TINY ? TINY : x;
}

/* One turn of Lentz's method as modified by Thompson and Barnett, J. Comput. Phys. 64
 * (1986) 490-509: the fraction so far times what the term a/(b + ...) changes. */
struct fraction {
  double value;
  double numerator;
  double denominator;
};

static struct fraction fraction_begin(double b) {
  b = away_from_zero(b);
  return (struct fraction){b, b, 0};
}

/* Whether the term still changed anything. */
static bool fraction_add(struct fraction *f, double a, double b) {
  f->denominator = 1 / away_from_zero(b + a * f->denominator);
  f->numerator = away_from_zero(b + a / f->numerator);
  double change = f->numerator * f->denominator;
  f->value *= change;
  return fabs(change - 1) > DBL_EPSILON;
}

/* ln gamma(a) less Stirling's (a - 1/2) ln a - a + ln(2 pi)/2, DLMF 5.11.1. The C
 * library's lgamma() writes a global. */
static double stirling_rest(double a) {
  double rest = 0;
  for (; a < 16; a++)
    rest += (a + 0.5) * log1p(1 / a) - 1;
  double s = 1 / (a * a);
  return rest + (1.0 / 12 - s * (1.0 / 360 - s * (1.0 / 1260 - s * (1.0 / 1680)))) / a;
}

/* ---- incomplete gamma ---- */

/* x^a e^-x / gamma(a), by what x is off a: the terms of ln gamma cancel there. */
static double gamma_front(double a, double x) {
  double off = (x - a) / a;
  return sqrt(a / (2 * PI)) * exp(-a * (off - log1p(off)) - stirling_rest(a));
}

/* P(a, x) by its series, for x below a + 1. */
static double gamma_below(double a, double x) {
  double term = 1 / a;
  double sum = term;
  for (int n = 1; n < TERMS_MAX && term > DBL_EPSILON / 4 * sum; n++) {
    term *= x / (a + n);
    sum += term;
  }
  return sum * gamma_front(a, x);
}

/* Q(a, x) by its fraction, for x from a + 1 on. */
static double gamma_above(double a, double x) {
  struct fraction f = fraction_begin(x + 1 - a);
  for (int n = 1; n < TERMS_MAX; n++)
    if (!fraction_add(&f, -n * (n - a), x + 2 * n + 1 - a))
      break;
  return gamma_front(a, x) / f.value;
}

double oc_chi_square_above(double chi_square, double degrees) {
  double a = degrees / 2;
  double x = chi_square / 2;
  if (!(0 <= x && 0 < a && a <= DBL_MAX))
    return NAN;
  if (x == 0)
    return 1;
  if (isinf(x))
    return 0;
  return x < a + 1 ? 1 - gamma_below(a, x) : gamma_above(a, x);
}

/* ---- incomplete beta ---- */

/* 1 / B(a, 1/2) */
static double inverse_beta(double a) {
  double ln = a * log1p(1 / (2 * a)) - 0.5 + stirling_rest(a + 0.5) - stirling_rest(a);
  return exp(ln) * sqrt(a / PI);
}

/* I_x(a, b) by its fraction, for x below (a + 1)/(a + b + 2); y is 1 - x. One of a and b is
 * 1/2, whole is 1/B(a, b). */
static double beta_below(double x, double y, double a, double b, double whole) {
  double front = whole * exp(a * log(x) + b * log(y)) / a;
  struct fraction f = fraction_begin(1);
  for (int m = 0; m < TERMS_MAX; m++) {
    double odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
    double even = (m + 1) * (b - m - 1) * x / ((a + 2 * m + 1) * (a + 2 * m + 2));
    bool changed = fraction_add(&f, odd, 1);
    if (!(fraction_add(&f, even, 1) || changed))
      break;
  }
  return front / f.value;
}

double oc_student_outside(double t, double degrees) {
  if (!(0 <= t && 0 < degrees))
    return NAN;
  if (isinf(degrees))
    return erfc(t / sqrt(2));
  if (t == 0)
    return 1;
  if (isinf(t))
    return 0;
  double a = degrees / 2;
  double ratio = t * t / degrees;
  double x = 1 / (1 + ratio);
  double y = ratio / (1 + ratio);
  return x < (a + 1) / (a + 2.5) ? beta_below(x, y, a, 0.5, inverse_beta(a))
                                 : 1 - beta_below(y, x, 0.5, a, inverse_beta(a));
}

double oc_student_factor(double level, double degrees) {
  if (!(0 < level && level < 1 && 0 < degrees))
    return NAN;
  double outside = 1 - level;
  double low = 0;
  double high = 1;
  while (oc_student_outside(high, degrees) > outside && high <= DBL_MAX / 2)
    high *= 2;
  for (;;) {
    double middle = low + (high - low) / 2;
    if (!(low < middle && middle < high))
      return middle;
    if (oc_student_outside(middle, degrees) > outside)
      low = middle;
    else
      high = middle;
  }
}
