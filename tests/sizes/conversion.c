/* SPDX-License-Identifier: MIT */
/* Conversions alone, by the public header: no room of the bench or above may be linked. */
#include <ohmcurve.h>

int main(void) {
  static const double ohms[] = {5790, 2450, 322};
  double degrees[3];
  size_t failed;
  ohm_curve *curve = ohm_curve_beta_new(2450, 20, 3500, -40, 140, NULL);
  ohm_curve_temperatures(curve, ohms, sizeof ohms[0], degrees, sizeof degrees[0], 3, &failed);
  ohm_curve_free(curve);
  return failed != 0;
}
