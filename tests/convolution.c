/* SPDX-License-Identifier: MIT */
#include "convolution.h"

#include <math.h>

enum { NODES = 8 };

static long double node[NODES];
static long double weight[NODES];

/* Nodes are roots of the Legendre polynomial by Newton's method. */
void convolution_begin(void) {
  for (int i = 0; i < NODES; i++) {
    long double x = cosl(3.14159265358979323846264338327950288L * (i + 0.75L) / (NODES + 0.5L));
    long double slope = 1;
    for (int step = 0; step < 50; step++) {
      long double p0 = 1;
      long double p1 = x;
      for (int k = 2; k <= NODES; k++) {
        long double p2 = ((2 * k - 1) * x * p1 - (k - 1) * p0) / k;
        p0 = p1;
        p1 = p2;
      }
      slope = NODES * (x * p1 - p0) / (x * x - 1);
      x -= p1 / slope;
    }
    node[i] = x;
    weight[i] = 2 / ((1 - x * x) * slope * slope);
  }
}

int convolution_kinks(const struct parts *parts, int count, long double *at) {
  at[0] = 0;
  int n = 1;
  for (int i = 0; i < count; i++, n *= 2)
    for (int j = 0; j < n; j++) {
      at[n + j] = at[j] + (long double)parts->half[i];
      at[j] -= (long double)parts->half[i];
    }
  for (int i = 1; i < n; i++)
    for (int j = i; j > 0 && at[j - 1] > at[j]; j--) {
      long double swap = at[j];
      at[j] = at[j - 1];
      at[j - 1] = swap;
    }
  return n;
}

static long double below_rectangles(const struct parts *parts, int count, long double z) {
  if (count == 0)
    return z > 0 ? 1 : z < 0 ? 0 : 0.5L;
  long double half = (long double)parts->half[count - 1];
  if (count == 1)
    return fminl(fmaxl((z + half) / (2 * half), 0), 1);
  long double at[CONVOLUTION_KINKS];
  int n = convolution_kinks(parts, count - 1, at);
  long double sum = 0;
  long double from = -half;
  for (int i = 0; i <= n; i++) {
    long double to = i == n ? half : fminl(at[i] - z, half);
    if (to <= from)
      continue;
    for (int k = 0; k < NODES; k++)
      sum += weight[k] * (to - from) / 2 *
             below_rectangles(parts, count - 1, z + (from + to + node[k] * (to - from)) / 2);
    from = to;
  }
  return sum / (2 * half);
}

double convolution_below(const struct parts *parts, double z) {
  if (parts->sigma == 0)
    return (double)below_rectangles(parts, parts->count, (long double)z);
  long double sigma = (long double)parts->sigma;
  long double at[CONVOLUTION_KINKS];
  int n = convolution_kinks(parts, parts->count, at);
  long double sum = 0;
  long double x = -9;
  /* Panels of half a sigma, ended at every kink. */
  while (x < 9) {
    long double end = fminl(x + 0.5L, 9);
    for (int i = n - 1; i >= 0; i--) {
      long double kink = ((long double)z - at[i]) / sigma;
      if (x < kink && kink < end)
        end = kink;
    }
    for (int k = 0; k < NODES; k++) {
      long double s = (x + end + node[k] * (end - x)) / 2;
      sum += weight[k] * (end - x) / 2 * 0.39894228040143267793994605993438187L * expl(-s * s / 2) *
             below_rectangles(parts, parts->count, (long double)z - sigma * s);
    }
    x = end;
  }
  return (double)sum;
}
