/* SPDX-License-Identifier: MIT */
#include "../fits.h"

#include <string.h>

START_TEST(a_fitted_sensor_comes_back_from_its_text_with_its_covariance)
{
  for (int model = OHM_FIT_BETA; model <= OHM_FIT_FOUR_TERM; model++)
    for (int known = 0; known < 2; known++) {
      ohm_fit_point points[MGH10];
      for (size_t i = 0; i < MGH10; i++) {
        points[i] = mgh10[i];
        points[i].u_t_k = known ? 0.02 : 0;
      }
      ohm_fit *fit = fit_or_fail(model, points, MGH10);
      ohm_sensor *sensor = ohm_fit_sensor_new(fit, "bench", NULL);
      char text[2048];
      char again[2048];
      ck_assert_uint_lt(ohm_sensor_print(sensor, text, sizeof text), sizeof text);
      ohm_sensor *read = ohm_sensor_parse(text, strlen(text), "other", NULL);
      ck_assert_ptr_nonnull(read);
      ck_assert_uint_eq(ohm_sensor_note_count(read), 0);
      ohm_sensor_print(read, again, sizeof again);
      ck_assert_str_eq(again, text);
      ck_assert_str_eq(ohm_sensor_name(read), "bench");
      for (double r_ohm = 3000; r_ohm < 34000; r_ohm *= 1.2) {
        ohm_estimate of_fit;
        ohm_estimate of_sensor;
        double fit_k;
        double sensor_k;
        ck_assert_int_eq(ohm_fit_temperature(fit, r_ohm, 0.99, &of_fit, &fit_k), OHM_OK);
        ck_assert_int_eq(ohm_sensor_temperature(read, r_ohm, 0.99, &of_sensor, &sensor_k), OHM_OK);
        CHECK_NEAR(of_sensor.value, of_fit.value, 1e-10);
        check_relative(of_sensor.u, of_fit.u, 1e-6);
        check_relative(sensor_k, fit_k, 1e-6);
      }
      ohm_sensor_free(read);
      ohm_sensor_free(sensor);
      ohm_fit_free(fit);
    }
}
END_TEST

START_TEST(a_sensor_without_interval_prints_no_covariance)
{
  ohm_fit *fit = fit_or_fail(OHM_FIT_STEINHART_HART, three_rows, 3);
  ohm_sensor *sensor = ohm_fit_sensor_new(fit, "three", NULL);
  char text[1024];
  ohm_sensor_print(sensor, text, sizeof text);
  ck_assert_ptr_null(strstr(text, "covariance"));
  ohm_estimate t_c;
  PROVOKES(ohm_sensor_temperature, OHM_NOT_FOUND,
           ohm_sensor_temperature(sensor, 10000, 0.95, &t_c, NULL));
  CHECK_NEAR(t_c.value, 25, 1e-10);
  ohm_sensor_free(sensor);
  ohm_fit_free(fit);
}
END_TEST

START_TEST(a_covariance_line_that_is_none_is_left_out_with_a_note)
{
  static const char *const lines[] = {
      "# covariance: 1 2\n",                                     /* too few */
      "# covariance: 1 0 1 0 0 1 0 0 0 1 0 0 0 0 1 0\n",         /* too many */
      "# covariance: 1 0 -1 0 0 1\n",                            /* a variance below 0 */
      "# covariance: 1 1.1 1 0 0 1\n",                           /* a correlation above 1 */
      "# covariance: 1 0 one 0 0 1\n",                           /* no number */
      "# covariance: 1 0 1 0 0 1\n# degrees_of_freedom: none\n", /* the line beside it */
  };
  for (size_t i = 0; i < sizeof lines / sizeof lines[0]; i++) {
    char text[400] = "# model: steinhart-hart\n# a: 1.129241e-3\n# b: 2.341077e-4\n"
                     "# c: 8.775468e-8\n# range: -40 to 125 C\n";
    strcat(text, lines[i]);
    ohm_sensor *sensor = ohm_sensor_parse(text, strlen(text), "s", NULL);
    ck_assert_ptr_nonnull(sensor);
    ck_assert_uint_eq(ohm_sensor_note_count(sensor), 1);
    ohm_estimate t_c;
    ck_assert_int_eq(ohm_sensor_temperature(sensor, 10000, 0.95, &t_c, NULL),
                     i < 5 ? OHM_NOT_FOUND : OHM_OK);
    ohm_sensor_free(sensor);
  }
}
END_TEST

int main(void) {
  return RUN_TESTS("covariance", a_fitted_sensor_comes_back_from_its_text_with_its_covariance,
                   a_sensor_without_interval_prints_no_covariance,
                   a_covariance_line_that_is_none_is_left_out_with_a_note);
}
