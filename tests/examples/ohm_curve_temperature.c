/* SPDX-License-Identifier: MIT */
/*
 * The data sheet of a greenhouse sensor gives 10 k at 25 C and a beta of
 * 3435 K, from -40 C to 125 C. Beyond that there is no temperature.
 */
#include <stdio.h>

#include <ohmcurve.h>

int main(void) {
  const double r_ohm[] = {32650, 10000, 973, 100};
  ohm_error error = {0};
  ohm_curve *curve =
      ohm_curve_beta_new(10000, 25, 3435, -40, 125, &error);
  if (!curve)
    fprintf(stderr, "%s\n", error.message);
  for (size_t i = 0; curve && i < sizeof r_ohm / sizeof r_ohm[0]; i++) {
    double t_c;
    ohm_status status = ohm_curve_temperature(curve, r_ohm[i], &t_c);
    if (status == OHM_OK)
      printf("%.0f ohm: %.2f C\n", r_ohm[i], t_c);
    else
      printf("%.0f ohm: %s\n", r_ohm[i], ohm_status_name((int)status));
  }
  ohm_curve_free(curve);
  return error.status;
}

/*
 * It prints:
 *
 *     32650 ohm: -2.77 C
 *     10000 ohm: 25.00 C
 *     973 ohm: 100.58 C
 *     100 ohm: out_of_range
 */
