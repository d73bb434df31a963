/* SPDX-License-Identifier: MIT */
/* The models beside beta, Steinhart-Hart and points; test_curve asks them too. */
#include <float.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../../lib/sensors/sensor.h"
#include "../curves.h"

/* ---- sensor files ---- */

START_TEST(a_sensor_file_of_a_model_printed_reads_back_equal)
{
  ohm_sensor *sensor = sensor_without_notes(model_files[_i]);
  char text[1024];
  char again_text[1024];
  ck_assert_uint_lt(ohm_sensor_print(sensor, text, sizeof text), sizeof text);
  ohm_sensor *again = sensor_without_notes(text);
  ohm_sensor_print(again, again_text, sizeof again_text);
  ck_assert_str_eq(text, again_text);
  const ohm_curve *curve = ohm_sensor_curve(sensor);
  struct range range = range_of(curve);
  for (int i = 0; i <= 40; i++) {
    double t_c = fmin(range.low_c + (range.high_c - range.low_c) * i / 40, range.high_c);
    CHECK_NEAR(r_of(ohm_sensor_curve(again), t_c), r_of(curve, t_c), 0);
  }
  ck_assert_uint_eq(ohm_sensor_row_count(again), 0);
  ohm_sensor_free(again);
  ohm_sensor_free(sensor);
}
END_TEST

static void check_class(const char *name, double kelvin, double kelvin_per_c) {
  char text[128];
  snprintf(text, sizeof text, "# tolerance: class %s\n%s", name, model_files[4]);
  ohm_sensor *sensor = sensor_without_notes(text);
  for (double t_c = -150; t_c <= 800; t_c += 50) {
    double half_k = kelvin + kelvin_per_c * fabs(t_c);
    double low_ohm, r_ohm, high_ohm;
    ck_assert_int_eq(ohm_sensor_band(sensor, t_c, &low_ohm, &r_ohm, &high_ohm), OHM_OK);
    CHECK_NEAR(t_of(ohm_sensor_curve(sensor), low_ohm), t_c - half_k, 1e-9);
    CHECK_NEAR(t_of(ohm_sensor_curve(sensor), high_ohm), t_c + half_k, 1e-9);
  }
  ohm_sensor_free(sensor);
}

/* IEC 60751, as printed in the Siemens SITRANS manual, page 142 */
START_TEST(a_class_of_platinum_is_kelvin_that_grow_with_celsius)
{
  check_class("AA", 0.1, 0.0017);
  check_class("A", 0.15, 0.002);
  check_class("B", 0.3, 0.005);
  check_class("C", 0.6, 0.01);
}
END_TEST

/* Rows of an older scale, Engineering Toolbox, Pt100 table; those that differ from the
 * equation printed beside them by more than half of their last digit. */
START_TEST(an_older_platinum_table_is_not_that_of_the_standard)
{
  static const struct {
    double t_c, r_ohm;
  } old[] = {{-200, 18.53}, {-180, 27.05}, {-160, 35.48}, {-140, 43.80}, {-120, 52.04},
             {-100, 60.20}, {-80, 68.28},  {-60, 76.28},  {-40, 84.21},  {-30, 88.17},
             {-20, 92.13},  {-10, 96.07},  {80, 130.89},  {120, 146.06}, {140, 153.57},
             {160, 161.04}, {180, 168.47}, {200, 175.84}, {220, 183.17}, {240, 190.46},
             {260, 197.70}, {280, 204.88}, {300, 212.03}, {320, 219.13}, {340, 226.18},
             {360, 233.19}, {380, 240.15}, {400, 247.06}, {420, 253.93}, {440, 260.75},
             {460, 267.52}, {480, 274.25}, {500, 280.93}, {520, 287.57}, {540, 294.16},
             {560, 300.70}, {580, 307.20}, {600, 313.65}, {620, 320.05}, {640, 326.41},
             {660, 332.72}, {700, 345.21}, {750, 360.55}};
  ohm_curve *curve = ohm_curve_platinum_new(100, -200, 850, NULL);
  for (size_t i = 0; i < sizeof old / sizeof old[0]; i++)
    ck_assert(fabs(r_of(curve, old[i].t_c) - old[i].r_ohm) > 0.0055);
  ohm_curve_free(curve);
}
END_TEST

/* ---- refusals ---- */

static void check_turns(ohm_curve *curve, const ohm_error *error, double turn_c) {
  char text[64];
  ck_assert_ptr_null(curve);
  ck_assert_int_eq(error->status, OHM_BAD_DEFINITION);
  ohm_number_print_fixed(turn_c, 1, text, sizeof text);
  strcat(text, " C");
  ck_assert_msg(strstr(error->message, "turns at ") && strstr(error->message, text), "%s: %s", text,
                error->message);
}

/* b + 2 c y = 0, and b + 3 d y^2 = 0, at y = 1/T = 0.003. */
START_TEST(a_four_term_curve_of_temperature_that_turns_is_refused_and_told_where)
{
  ohm_error error;
  check_turns(ohm_curve_four_term_of_temperature_new(100, 0, 3000, -500000, 0, 0, 100, &error),
              &error, 1 / 0.003 - 273.15);
  check_turns(ohm_curve_four_term_of_temperature_new(100, 0, 27, 0, -1e6, 0, 100, &error), &error,
              1 / 0.003 - 273.15);
  PROVOKES(
      ohm_curve_four_term_of_temperature_new, OHM_BAD_DEFINITION,
      (ohm_curve_four_term_of_temperature_new(100, 0, -3000, 0, 0, 0, 100, &error), error.status));
  PROVOKES(
      ohm_curve_four_term_of_temperature_new, OHM_BAD_DEFINITION,
      (ohm_curve_four_term_of_temperature_new(100, 0, 1e9, 0, 0, 0, 100, &error), error.status));
  ohm_curve *curve =
      ohm_curve_four_term_of_temperature_new(100, 0, 3000, -500000, 0, 61, 100, &error);
  ck_assert_msg(curve != NULL, "%s", error.message);
  ohm_curve_free(curve);
}
END_TEST

/* 1/T = 0.003 + 2.5e-4 (L - L^2/2) turns at L = 1; with - L^3/3 in its place there too. */
START_TEST(a_four_term_curve_that_turns_is_refused_and_told_where)
{
  ohm_error error;
  check_turns(ohm_curve_four_term_new(100, 3e-3, 2.5e-4, -1.25e-4, 0, 0, 100, &error), &error,
              1 / 3.125e-3 - 273.15);
  check_turns(ohm_curve_four_term_new(100, 3e-3, 3e-4, 0, -1e-4, 0, 60, &error), &error,
              1 / 3.2e-3 - 273.15);
  PROVOKES(ohm_curve_four_term_new, OHM_BAD_DEFINITION,
           (ohm_curve_four_term_new(100, 3e-3, -2.5e-4, 0, 0, 0, 100, &error), error.status));
}
END_TEST

/* 1 + 0.004 D - 0.00002 D^2 turns at D = 100. */
START_TEST(a_silicon_curve_that_turns_is_refused_and_told_where)
{
  ohm_error error;
  check_turns(ohm_curve_silicon_new(1000, 0.004, -0.00002, -40, 150, &error), &error, 125);
  check_turns(ohm_curve_silicon_new(1000, 0.004, -0.00002, -40, 125, &error), &error, 125);
  check_turns(ohm_curve_silicon_new(1000, 0.004, 0.00004, -40, 150, &error), &error, -25);
  PROVOKES(ohm_curve_silicon_new, OHM_BAD_DEFINITION,
           (ohm_curve_silicon_new(1000, -0.004, 0, -40, 150, &error), error.status));
  PROVOKES(ohm_curve_silicon_new, OHM_BAD_DEFINITION,
           (ohm_curve_silicon_new(1000, 0, 0, -40, 150, &error), error.status));
  PROVOKES(ohm_curve_silicon_new, OHM_BAD_DEFINITION,
           (ohm_curve_silicon_new(1000, 0.02, 0, -40, 150, &error), error.status));
}
END_TEST

/* Both ranges begin where their curve turns, within the last digits; what there is left of
 * a slope may as well be none, or have the other sign. */
START_TEST(a_curve_that_turns_in_the_last_digits_of_an_end_is_refused)
{
  ohm_error error;
  check_turns(ohm_curve_steinhart_hart_new(25.593312241351839, 64629.1644790426,
                                           -61075014657.278671, -21.212051172977041,
                                           -21.212050569630861, &error),
              &error, -21.2);
  check_turns(ohm_curve_four_term_of_temperature_new(
                  0.002918064732139466, -142.46483218086334, 36932.909616049925, 15.389379815706056,
                  -340915326.77833557, -106.74129474659506, 792, &error),
              &error, -106.7);
}
END_TEST

/* 1/T = 0.003 + 2.5e-4 (L - 1) + k (L - 1)^3, multiplied out, and ln(R/Rref) alike in
 * 1/T / 0.003: the greater k, the fewer digits are left where they cancel. */
START_TEST(terms_that_cancel_to_nothing_are_refused)
{
  ohm_error error;
  for (double k = 1; k <= 1e6; k *= 1e6) {
    ohm_curve *curves[2] = {
        ohm_curve_four_term_new(100, 0.003 - 2.5e-4 - k, 2.5e-4 + 3 * k, -3 * k, k, 59, 61, &error),
        ohm_curve_four_term_of_temperature_new(100, -12 - k, (12 + 3 * k) / 3e-3, -3 * k / 9e-6,
                                               k / 27e-9, 59, 61, &error)};
    for (int i = 0; i < 2; i++) {
      ck_assert(!curves[i] == (k > 1));
      ohm_curve_free(curves[i]);
    }
  }
  ck_assert_int_eq(error.status, OHM_BAD_DEFINITION);
  ck_assert_ptr_nonnull(strstr(error.message, "cancel each other"));
}
END_TEST

START_TEST(a_range_or_resistance_that_is_none_is_refused)
{
  static const double ranges[][2] = {{20, 20}, {30, 20}, {-273.15, 20}, {20, 1000.1}, {NAN, 20}};
  ohm_error error;
  for (int i = 0; i < 5; i++) {
    double low_c = ranges[i][0];
    double high_c = ranges[i][1];
    PROVOKES(ohm_curve_four_term_new, OHM_BAD_ARGUMENT,
             (ohm_curve_four_term_new(1e4, 3e-3, 2e-4, 0, 0, low_c, high_c, &error), error.status));
    PROVOKES(ohm_curve_four_term_of_temperature_new, OHM_BAD_ARGUMENT,
             (ohm_curve_four_term_of_temperature_new(1e4, -13, 4000, 0, 0, low_c, high_c, &error),
              error.status));
    PROVOKES(ohm_curve_platinum_new, OHM_BAD_ARGUMENT,
             (ohm_curve_platinum_new(100, low_c, high_c, &error), error.status));
    PROVOKES(ohm_curve_silicon_new, OHM_BAD_ARGUMENT,
             (ohm_curve_silicon_new(1e3, 8e-3, 0, low_c, high_c, &error), error.status));
  }
  PROVOKES(ohm_curve_platinum_new, OHM_BAD_ARGUMENT,
           (ohm_curve_platinum_new(100, -200.1, 100, &error), error.status));
  PROVOKES(ohm_curve_platinum_new, OHM_BAD_ARGUMENT,
           (ohm_curve_platinum_new(100, 0, 850.1, &error), error.status));
  PROVOKES(ohm_curve_platinum_new, OHM_BAD_ARGUMENT,
           (ohm_curve_platinum_new(DBL_MAX, 0, 100, &error), error.status));
}
END_TEST

static void check_built_or_told(ohm_curve *curve, const ohm_error *error) {
  if (curve) {
    struct range range = range_of(curve);
    ck_assert(isfinite(range.at_low_ohm) && isfinite(range.at_high_ohm) &&
              fmin(range.at_low_ohm, range.at_high_ohm) > 0);
    double middle_c = range.low_c + (range.high_c - range.low_c) / 2;
    ck_assert(isfinite(alpha_of(curve, middle_c)) && isfinite(t_of(curve, r_of(curve, middle_c))));
    ck_assert_int_eq(error->status, OHM_OK);
  } else {
    ck_assert(error->status == OHM_BAD_ARGUMENT || error->status == OHM_BAD_DEFINITION);
    ck_assert_uint_gt(strlen(error->message), 20);
  }
  ohm_curve_free(curve);
}

/* Every mixture of likely and special numbers, the range likely. */
START_TEST(every_special_number_makes_a_finite_curve_or_a_sentence)
{
  static const double four[] = {10000, 3.354016e-3, 2.56985e-4, 2.620131e-6, 6.383091e-8};
  static const double of_temperature[] = {10000, -14.6337, 4791.842, -115334, -3730535};
  static const double silicon[] = {1000, 0.0079, 0.000019};
  enum { WAYS = SPECIALS + 1 };
  ohm_error error;
  for (int i = 0; i < WAYS * WAYS * WAYS * WAYS * WAYS; i++) {
    double x[5], y[5], z[5];
    for (int j = 0, rest = i; j < 5; j++, rest /= WAYS) {
      bool likely = rest % WAYS == SPECIALS;
      x[j] = likely ? four[j] : special[rest % WAYS];
      y[j] = likely ? of_temperature[j] : special[rest % WAYS];
      z[j] = likely ? silicon[j % 3] : special[rest % WAYS];
    }
    check_built_or_told(ohm_curve_four_term_new(x[0], x[1], x[2], x[3], x[4], -40, 125, &error),
                        &error);
    check_built_or_told(
        ohm_curve_four_term_of_temperature_new(y[0], y[1], y[2], y[3], y[4], -40, 125, &error),
        &error);
    if (i < WAYS * WAYS * WAYS) {
      check_built_or_told(ohm_curve_silicon_new(z[0], z[1], z[2], -40, 125, &error), &error);
      check_built_or_told(ohm_curve_platinum_new(z[0], z[1], z[2], &error), &error);
    }
  }
}
END_TEST

int main(void) {
  int printed = RUN_TESTS_FOR_EACH("model files", MODEL_FILES,
                                   a_sensor_file_of_a_model_printed_reads_back_equal);
  int one = RUN_TESTS("models", a_class_of_platinum_is_kelvin_that_grow_with_celsius,
                      an_older_platinum_table_is_not_that_of_the_standard,
                      a_four_term_curve_of_temperature_that_turns_is_refused_and_told_where,
                      a_four_term_curve_that_turns_is_refused_and_told_where,
                      a_silicon_curve_that_turns_is_refused_and_told_where,
                      a_curve_that_turns_in_the_last_digits_of_an_end_is_refused,
                      terms_that_cancel_to_nothing_are_refused,
                      a_range_or_resistance_that_is_none_is_refused,
                      every_special_number_makes_a_finite_curve_or_a_sentence);
  return printed | one;
}
