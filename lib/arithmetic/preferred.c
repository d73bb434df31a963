/* SPDX-License-Identifier: MIT */
#include "preferred.h"

/* IEC 60063, one decade, three digits. */
static const short e12[] = {100, 120, 150, 180, 220, 270, 330, 390, 470, 560, 680, 820};
static const short e24[] = {100, 110, 120, 130, 150, 160, 180, 200, 220, 240, 270, 300,
                            330, 360, 390, 430, 470, 510, 560, 620, 680, 750, 820, 910};
static const short e96[] = {100, 102, 105, 107, 110, 113, 115, 118, 121, 124, 127, 130, 133, 137,
                            140, 143, 147, 150, 154, 158, 162, 165, 169, 174, 178, 182, 187, 191,
                            196, 200, 205, 210, 215, 221, 226, 232, 237, 243, 249, 255, 261, 267,
                            274, 280, 287, 294, 301, 309, 316, 324, 332, 340, 348, 357, 365, 374,
                            383, 392, 402, 412, 422, 432, 442, 453, 464, 475, 487, 499, 511, 523,
                            536, 549, 562, 576, 590, 604, 619, 634, 649, 665, 681, 698, 715, 732,
                            750, 768, 787, 806, 825, 845, 866, 887, 909, 931, 953, 976};

static const struct {
  const short *decade;
  size_t count;
} all[] = {
    [OHM_SERIES_E12] = {e12, sizeof e12 / sizeof e12[0]},
    [OHM_SERIES_E24] = {e24, sizeof e24 / sizeof e24[0]},
    [OHM_SERIES_E96] = {e96, sizeof e96 / sizeof e96[0]},
};

size_t oc_preferred_all(ohm_series series, double values_ohm[OC_PREFERRED_MAX]) {
  size_t count = 0;
  for (double decade = 1; decade < OC_GREATEST_PREFERRED_OHM; decade *= 10)
    for (size_t i = 0; i < all[series].count; i++)
      values_ohm[count++] = all[series].decade[i] * decade / 100;
  values_ohm[count++] = OC_GREATEST_PREFERRED_OHM;
  return count;
}

double oc_preferred_of(const double *values_ohm, size_t count, double r_ohm) {
  size_t low = 0;
  size_t high = count - 1;
  while (high - low > 1) {
    size_t middle = low + (high - low) / 2;
    if (values_ohm[middle] <= r_ohm)
      low = middle;
    else
      high = middle;
  }
  bool lower = r_ohm / values_ohm[low] <= values_ohm[high] / r_ohm;
  return values_ohm[lower ? low : high];
}

ohm_status ohm_preferred_nearest(double r_ohm, int series, double *nearest_ohm) {
  if (!nearest_ohm)
    return OHM_NULL_ARGUMENT;
  *nearest_ohm = NAN;
  if (isnan(r_ohm) || !oc_inside(OHM_SERIES_E12, series, OHM_SERIES_E96))
    return OHM_BAD_ARGUMENT;
  if (!oc_inside(OC_LEAST_PREFERRED_OHM, r_ohm, OC_GREATEST_PREFERRED_OHM))
    return OHM_OUT_OF_RANGE;
  double values_ohm[OC_PREFERRED_MAX];
  size_t count = oc_preferred_all((ohm_series)series, values_ohm);
  *nearest_ohm = oc_preferred_of(values_ohm, count, r_ohm);
  return OHM_OK;
}
