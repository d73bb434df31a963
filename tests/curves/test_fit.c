/* SPDX-License-Identifier: MIT */
#include "../fits.h"

#include <stdlib.h>
#include <string.h>

/* ---- printed points ---- */

/* Points and, computed from them in 50 digits, the coefficients. */
static const struct {
  const char *source;
  ohm_fit_point points[3];
  double abc[3];
} three_points[] = {
    /* Electronic Design, "Software linearization techniques for thermistors": the points of
     * its 44001 example; the coefficients it prints do not return them. */
    {"44001",
     {{-50, 2045, 0, 0}, {25, 100, 0, 0}, {100, 15, 0, 0}},
     {1.74017983187e-3, 3.45189611835e-4, 2.47578966254e-7}},
    /* Campbell Scientific 109SS manual, table C-1 */
    {"10K3MCD1",
     {{-40, 336103.2, 0, 0}, {-20, 97006.9, 0, 0}, {0, 32650.9, 0, 0}},
     {1.12915472735e-3, 2.34123707066e-4, 8.76763151262e-8}},
    /* EPCOS B57861S data sheet, page 6, characteristic 8016, times 10 kohm */
    {"8016",
     {{0, 32650, 0, 0}, {25, 10000, 0, 0}, {100, 680, 0, 0}},
     {1.12529357111e-3, 2.34714773097e-4, 8.56501894006e-8}},
    {"8016 wide",
     {{-40, 336500, 0, 0}, {25, 10000, 0, 0}, {125, 341.7, 0, 0}},
     {1.12554389831e-3, 2.34663026558e-4, 8.5939798043e-8}},
    /* ILX Lightwave LDT-5525 manual, table A.1 */
    {"LDT-5525",
     {{0, 32128, 0, 0}, {25, 9814, 0, 0}, {50, 3542, 0, 0}},
     {1.10415912481e-3, 2.38917946715e-4, 6.93162652599e-8}},
};

enum { THREE_POINTS = sizeof three_points / sizeof three_points[0] };

START_TEST(three_points_give_the_exact_coefficients)
{
  for (size_t i = 0; i < THREE_POINTS; i++) {
    ohm_fit *fit = fit_or_fail(OHM_FIT_STEINHART_HART, three_points[i].points, 3);
    for (size_t j = 0; j < 3; j++)
      check_relative(parameter(fit, j), three_points[i].abc[j], 6e-12);
    ohm_fit_free(fit);
  }
}
END_TEST

/* Campbell Scientific 109SS manual, table C-1, -40 to 1 C by 1 C. */
START_TEST(three_rows_of_a_printed_table_give_the_other_rows)
{
  static const double r_ohm[] = {
      336103.2, 314558,   294529.1, 275900.8, 258567,   242430.2, 227400.9, 213396.6, 200341.4,
      188165.5, 176804.8, 166199.8, 156296.1, 147043.2, 138394.7, 130307.6, 122742.3, 115662.2,
      109033.4, 102824.6, 97006.9,  91553.3,  86439.2,  81641.4,  77138.6,  72911.1,  68940.4,
      65209.7,  61702.9,  58405.5,  55303.9,  52385.2,  49637.8,  47050.6,  44613.4,  42316.7,
      40151.6,  38110,    36184,    34366.6,  32650.9,  31030.8};
  ohm_fit_request request = OHM_FIT_REQUEST_INIT;
  request.model = OHM_FIT_STEINHART_HART;
  request.low_c = -41;
  request.high_c = 2;
  ohm_fit *fit = ohm_curve_fit(three_points[1].points, 3, &request, NULL);
  double worst = 0;
  for (int i = 0; i < 42; i++)
    worst = fmax(worst, fabs(temperature(fit, r_ohm[i]) - (i - 40)));
  CHECK_NEAR(worst, 2.7e-5, 0.05e-5);
  ohm_fit_free(fit);
}
END_TEST

/* ILX Lightwave LDT-5525 manual, table A.1: at 40 C it prints 5331; the fit through 0, 25
 * and 50 C gives 5230.7, so that 5231 is meant. */
START_TEST(a_misprinted_row_stands_out_of_the_fit_through_the_others)
{
  ohm_fit *fit = fit_or_fail(OHM_FIT_STEINHART_HART, three_points[4].points, 3);
  double r_ohm;
  ck_assert_int_eq(ohm_curve_resistance(ohm_fit_curve(fit), 40, &r_ohm), OHM_OK);
  CHECK_NEAR(r_ohm, 5230.7, 0.05);
  CHECK_NEAR(fabs(temperature(fit, 5331) - 40), 0.47, 0.005);
  CHECK_NEAR(temperature(fit, 19549), 10, 0.003);
  CHECK_NEAR(temperature(fit, 12262), 20, 0.003);
  CHECK_NEAR(temperature(fit, 7908), 30, 0.003);
  CHECK_NEAR(temperature(fit, 5231), 40, 0.003);
  ohm_fit_free(fit);
}
END_TEST

/* Points of the forward curve of Vishay BCcomponents document 29049, 3977 K (coefficients
 * from memory); the worst errors computed in 50 digits. */
START_TEST(three_terms_miss_four_by_what_was_computed)
{
  static const struct {
    double t_c[3];
    double worst_k;
    double at_c;
    double half;
  } rows[] = {
      {{0, 25, 50}, -0.0011, 40, 5e-5},    {{-40, 10, 60}, -0.0074, 40, 5e-5},
      {{0, 50, 100}, -0.0098, 79, 5e-5},   {{-40, 25, 85}, -0.0156, 60, 5e-5},
      {{-40, 40, 120}, -0.037, 86, 5e-4},  {{-40, 25, 125}, -0.056, 85, 5e-4},
      {{-40, 55, 150}, -0.063, 109, 5e-4},
  };
  ohm_curve *truth = ohm_curve_four_term_of_temperature_new(10000, -14.6337, 4791.842, -115334,
                                                            -3.730535e6, -40, 150, NULL);
  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
    ohm_fit_point points[3] = {{0}};
    for (int j = 0; j < 3; j++) {
      points[j].t_c = rows[i].t_c[j];
      ohm_curve_resistance(truth, points[j].t_c, &points[j].r_ohm);
    }
    ohm_fit *fit = fit_or_fail(OHM_FIT_STEINHART_HART, points, 3);
    double worst_k = 0;
    double at_c = NAN;
    for (double t_c = rows[i].t_c[0] + 1; t_c < rows[i].t_c[2]; t_c += 1) {
      double r_ohm;
      ohm_curve_resistance(truth, t_c, &r_ohm);
      double miss = temperature(fit, r_ohm) - t_c;
      if (fabs(miss) > fabs(worst_k)) {
        worst_k = miss;
        at_c = t_c;
      }
    }
    CHECK_NEAR(worst_k, rows[i].worst_k, rows[i].half);
    CHECK_NEAR(at_c, rows[i].at_c, 1);
    ohm_fit_free(fit);
  }
  ohm_curve_free(truth);
}
END_TEST

/* EPCOS B57861S data sheet, page 6: B25/100 is 3988 K for characteristic 8016 and 3964 K
 * for 8018 by its title; the other figures computed from its rows. */
START_TEST(two_points_give_beta)
{
  static const struct {
    double t_c;
    double at_25_ohm;
    double r_ohm;
    double beta_k;
  } rows[] = {
      {50, 10000, 3603, 3934.1}, {85, 10000, 1072, 3974.2}, {100, 10000, 680, 3987.7},
      {50, 10000, 3650, 3884.2}, {85, 10000, 1091, 3942.9}, {100, 10000, 691, 3963.9},
  };
  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
    const ohm_fit_point points[] = {{25, rows[i].at_25_ohm, 0, 0},
                                    {rows[i].t_c, rows[i].r_ohm, 0, 0}};
    ohm_fit *fit = fit_or_fail(OHM_FIT_BETA, points, 2);
    ck_assert_str_eq(ohm_fit_parameter_name(fit, 2), "beta_k");
    CHECK_NEAR(parameter(fit, 2), rows[i].beta_k, 0.05);
    CHECK_NEAR(parameter(fit, 1), 25, 0);
    check_relative(parameter(fit, 0), 10000, 1e-14);
    ohm_fit_free(fit);
  }
}
END_TEST

/* ---- MGH10 ---- */

/* The figures below: normal equations in 60 digits (mpmath) for the least sum of
 * (T^2 (1/T fitted - 1/T))^2, by u^2 where u is known. */
START_TEST(steinhart_hart_through_mgh10_agrees_with_high_precision)
{
  ohm_fit *fit = fit_or_fail(OHM_FIT_STEINHART_HART, mgh10, MGH10);
  check_relative(parameter(fit, 0), 0.000830164907244990273, 1e-12);
  check_relative(parameter(fit, 1), 0.000203735881027897038, 1e-12);
  check_relative(parameter(fit, 2), 1.17159064408271721e-7, 1e-11);
  check_relative(ohm_fit_scatter_k(fit), 0.00424018589568416481, 1e-8);
  check_relative(u_of_parameter(fit, 0), 8.76509161935709998e-7, 1e-8);
  check_relative(u_of_parameter(fit, 1), 1.44984214656994585e-7, 1e-8);
  check_relative(u_of_parameter(fit, 2), 5.77891579623191274e-10, 1e-8);
  CHECK_NEAR(correlation(fit, 0, 1), -0.9993022032025077, 1e-10);
  CHECK_NEAR(correlation(fit, 0, 2), 0.993770719869859291, 1e-10);
  CHECK_NEAR(correlation(fit, 1, 2), -0.997182391829007653, 1e-10);
  CHECK_NEAR(ohm_fit_residual_k(fit, 4), 0.0102973848676013708, 1e-11);
  ck_assert_uint_eq(ohm_fit_degrees(fit), 13);
  ohm_estimate t_c;
  ck_assert_int_eq(ohm_fit_temperature(fit, 10000, 0.95, &t_c, NULL), OHM_OK);
  CHECK_NEAR(t_c.value, 84.2251462718187053, 1e-11);
  check_relative(t_c.u, 0.0015862990816674727, 1e-8);
  ohm_fit_free(fit);
}
END_TEST

START_TEST(known_uncertainties_of_mgh10_agree_with_high_precision)
{
  ohm_fit_point points[MGH10];
  for (size_t i = 0; i < MGH10; i++) {
    points[i] = mgh10[i];
    points[i].u_t_k = 0.02;
    points[i].u_r_ohm = 0.0005 * points[i].r_ohm;
  }
  ohm_fit *fit = fit_or_fail(OHM_FIT_STEINHART_HART, points, MGH10);
  check_relative(parameter(fit, 0), 0.000830126813515061575, 1e-11);
  check_relative(parameter(fit, 1), 0.000203742168487031201, 1e-11);
  check_relative(parameter(fit, 2), 1.1713421504530643e-7, 1e-10);
  check_relative(u_of_parameter(fit, 0), 5.21457266424659322e-6, 1e-8);
  check_relative(u_of_parameter(fit, 2), 3.41164873576219268e-9, 1e-8);
  double chi_square;
  double probability;
  ck_assert_int_eq(ohm_fit_chi_square(fit, &chi_square, &probability), OHM_OK);
  check_relative(chi_square, 0.391401722024243723, 1e-8);
  CHECK_NEAR(probability, 0.999999988788218675, 1e-12);
  ohm_fit_free(fit);
}
END_TEST

START_TEST(four_terms_and_beta_through_mgh10_agree_with_high_precision)
{
  ohm_fit_request request = OHM_FIT_REQUEST_INIT;
  request.model = OHM_FIT_FOUR_TERM;
  request.r_ref_ohm = 10000;
  ohm_fit *four = ohm_curve_fit(mgh10, MGH10, &request, NULL);
  CHECK_NEAR(parameter(four, 0), 10000, 0);
  check_relative(parameter(four, 1), 0.00279818164425868923, 1e-13);
  check_relative(parameter(four, 2), 0.000233568388139215282, 1e-11);
  check_relative(parameter(four, 3), 3.23471035316003535e-6, 1e-9);
  check_relative(parameter(four, 4), 1.01253584471826008e-7, 1e-8);
  check_relative(ohm_fit_scatter_k(four), 0.00433760950809164768, 1e-8);
  check_relative(u_of_parameter(four, 4), 2.44744293387297043e-8, 1e-8);
  CHECK_NEAR(u_of_parameter(four, 0), 0, 0);
  ohm_fit_free(four);
  ohm_fit *beta = fit_or_fail(OHM_FIT_BETA, mgh10, MGH10);
  check_relative(parameter(beta, 2), 4290.98931108223018, 1e-12);
  check_relative(parameter(beta, 0), 107750.789519434922, 1e-12);
  check_relative(u_of_parameter(beta, 2), 10.8522285157446982, 1e-10);
  ohm_fit_free(beta);
}
END_TEST

START_TEST(many_points_are_fitted)
{
  enum { COUNT = 4096 };
  ohm_fit_point *points = malloc((COUNT + 1) * sizeof *points);
  spread(abc[2], -40, 125, points, COUNT);
  ohm_fit *fit = fit_or_fail(OHM_FIT_STEINHART_HART, points, COUNT);
  check_relative(parameter(fit, 2), abc[2], 1e-11);
  ohm_fit_free(fit);
  ohm_fit_request request = OHM_FIT_REQUEST_INIT;
  ohm_error error;
  points[COUNT] = points[0];
  ck_assert_ptr_null(ohm_curve_fit(points, COUNT + 1, &request, &error));
  PROVOKES(ohm_curve_fit, OHM_TOO_LARGE, error.status);
  free(points);
}
END_TEST

/* ---- what cannot be fitted ---- */

static void check_refused(int model, const ohm_fit_point *points, size_t count, ohm_status status,
                          const char *says) {
  ohm_fit_request request = OHM_FIT_REQUEST_INIT;
  ohm_error error;
  request.model = model;
  ck_assert_ptr_null(ohm_curve_fit(points, count, &request, &error));
  ck_assert_int_eq(error.status, status);
  if (!strstr(error.message, says))
    ck_abort_msg("\"%s\" does not say \"%s\"", error.message, says);
}

START_TEST(too_few_points_are_refused)
{
  check_refused(OHM_FIT_BETA, NULL, 0, OHM_BAD_DEFINITION, "two temperatures or more; 0 were");
  check_refused(OHM_FIT_BETA, mgh10, 1, OHM_BAD_DEFINITION, "1 was given");
  check_refused(OHM_FIT_STEINHART_HART, mgh10, 2, OHM_BAD_DEFINITION, "three temperatures");
  check_refused(OHM_FIT_FOUR_TERM, mgh10, 3, OHM_BAD_DEFINITION, "four temperatures");
  static const ohm_fit_point repeated[] = {
      {20, 2450, 0, 0}, {20, 2440, 0, 0}, {80, 320, 0, 0}, {80, 322, 0, 0}};
  check_refused(OHM_FIT_STEINHART_HART, repeated, 4, OHM_BAD_DEFINITION, "2 were given");
}
END_TEST

START_TEST(repeated_points_are_fitted)
{
  static const ohm_fit_point repeated[] = {
      {20, 2450, 0, 0}, {20, 2440, 0, 0}, {80, 320, 0, 0}, {80, 322, 0, 0}};
  ohm_fit *fit = fit_or_fail(OHM_FIT_BETA, repeated, 4);
  ck_assert_int_eq(ohm_fit_basis_of(fit), OHM_FIT_SCATTER);
  ck_assert(ohm_fit_scatter_k(fit) > 0);
  ohm_fit_free(fit);
}
END_TEST

START_TEST(points_too_close_are_refused)
{
  static const ohm_fit_point same[] = {{20, 2450, 0, 0}, {20.0000001, 2449.99999, 0, 0}};
  check_refused(OHM_FIT_BETA, same, 2, OHM_BAD_DEFINITION, "too close");
  static const ohm_fit_point pair[] = {
      {0, 5790, 0, 0}, {0.0000001, 5789.99997, 0, 0}, {80, 322, 0, 0}};
  check_refused(OHM_FIT_STEINHART_HART, pair, 3, OHM_BAD_DEFINITION, "too close");
  /* ln R and its cube are one at -1, 0 and 1. */
  const ohm_fit_point about_one[] = {{0, exp(1), 0, 0}, {25, 1, 0, 0}, {60, exp(-1), 0, 0}};
  check_refused(OHM_FIT_STEINHART_HART, about_one, 3, OHM_BAD_DEFINITION, "too close");
}
END_TEST

START_TEST(contradictory_points_are_refused_by_name)
{
  static const ohm_fit_point rising[] = {
      {0, 5790, 0, 0}, {40, 1500, 0, 0}, {20, 1400, 0, 0}, {80, 322, 0, 0}};
  check_refused(OHM_FIT_BETA, rising, 4, OHM_BAD_DEFINITION,
                "point 3 (20 C, 1400 ohm) and point 2 (40 C, 1500 ohm) contradict");
  static const ohm_fit_point alike[] = {{0, 5790, 0, 0}, {40, 5790, 0, 0}};
  check_refused(OHM_FIT_BETA, alike, 2, OHM_BAD_DEFINITION, "contradict");
}
END_TEST

START_TEST(points_that_chance_explains_do_not_contradict)
{
  static const ohm_fit_point near[] = {
      {20.00, 2450, 0.05, 0}, {20.01, 2451, 0.05, 0}, {80, 322, 0.05, 0}};
  ohm_fit *fit = fit_or_fail(OHM_FIT_BETA, near, 3);
  ohm_fit_free(fit);
  static const ohm_fit_point sure[] = {
      {20.00, 2450, 0.0001, 0.1}, {20.01, 2451, 0.0001, 0.1}, {80, 322, 0.05, 0}};
  check_refused(OHM_FIT_BETA, sure, 3, OHM_BAD_DEFINITION, "contradict");
}
END_TEST

START_TEST(a_fit_that_turns_is_refused)
{
  static const ohm_fit_point bent[] = {
      {0, 10000, 0, 0}, {1, 5000, 0, 0}, {60, 4900, 0, 0}, {61, 2400, 0, 0}};
  check_refused(OHM_FIT_FOUR_TERM, bent, 4, OHM_BAD_DEFINITION, "the fit to these points");
}
END_TEST

START_TEST(an_unusable_point_is_named)
{
  static const ohm_fit_point bad[][2] = {
      {{0, 5790, 0, 0}, {NAN, 2450, 0, 0}},      {{0, 5790, 0, 0}, {20, NAN, 0, 0}},
      {{0, 5790, 0, 0}, {20, 0, 0, 0}},          {{0, 5790, 0, 0}, {20, INFINITY, 0, 0}},
      {{0, 5790, 0, 0}, {-274, 2450, 0, 0}},     {{0, 5790, 0, 0}, {2000, 2450, 0, 0}},
      {{0, 5790, 1, 0}, {20, 2450, NAN, 0}},     {{0, 5790, 1, 0}, {20, 2450, 0, -1}},
      {{0, 5790, 1, 0}, {20, 2450, INFINITY, 0}}};
  for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++)
    check_refused(OHM_FIT_BETA, bad[i], 2, OHM_BAD_ARGUMENT, "point 2 (");
  static const ohm_fit_point mixed[] = {{0, 5790, 0.1, 0}, {20, 2450, 0, 0}};
  check_refused(OHM_FIT_BETA, mixed, 2, OHM_BAD_DEFINITION, "point 2 (20 C, 2450 ohm) has no unc");
}
END_TEST

/* Whatever the points are: a curve that falls, or a sentence. */
START_TEST(any_points_give_a_falling_curve_or_a_sentence)
{
  seed(7);
  int fitted = 0;
  for (int trial = 0; trial < 3000; trial++) {
    ohm_fit_point points[8];
    size_t count = 2 + (size_t)(6 * uniform());
    double r_ohm = exp(20 * uniform() - 5);
    for (size_t i = 0; i < count; i++) {
      points[i] = (ohm_fit_point){-50 + 25 * (double)i + 20 * uniform(), r_ohm, 0, 0};
      r_ohm *= exp(-3 * uniform() * uniform());
    }
    ohm_fit_request request = OHM_FIT_REQUEST_INIT;
    ohm_error error;
    request.model = trial % 3;
    ohm_fit *fit = ohm_curve_fit(points, count, &request, &error);
    ck_assert(fit || (error.status == OHM_BAD_DEFINITION || error.status == OHM_BAD_ARGUMENT));
    ck_assert(fit || strlen(error.message) > 20);
    double before = INFINITY;
    for (double t_c = points[0].t_c; fit && t_c <= points[count - 1].t_c; t_c += 2) {
      double now;
      ck_assert_int_eq(ohm_curve_resistance(ohm_fit_curve(fit), t_c, &now), OHM_OK);
      ck_assert(now < before);
      before = now;
    }
    fitted += fit != NULL;
    ohm_fit_free(fit);
  }
  ck_assert_int_gt(fitted, 300);
}
END_TEST

START_TEST(a_request_that_is_none_is_refused)
{
  ohm_fit_request request = OHM_FIT_REQUEST_INIT;
  ohm_error error;
  request.model = 3;
  ck_assert_ptr_null(ohm_curve_fit(mgh10, MGH10, &request, &error));
  ck_assert_int_eq(error.status, OHM_BAD_ARGUMENT);
  request = (ohm_fit_request)OHM_FIT_REQUEST_INIT;
  request.r_ref_ohm = NAN;
  ck_assert_ptr_null(ohm_curve_fit(mgh10, MGH10, &request, &error));
  ck_assert_int_eq(error.status, OHM_BAD_ARGUMENT);
}
END_TEST

int main(void) {
  return RUN_TESTS("fit", three_points_give_the_exact_coefficients,
                   three_rows_of_a_printed_table_give_the_other_rows,
                   a_misprinted_row_stands_out_of_the_fit_through_the_others,
                   three_terms_miss_four_by_what_was_computed, two_points_give_beta,
                   steinhart_hart_through_mgh10_agrees_with_high_precision,
                   known_uncertainties_of_mgh10_agree_with_high_precision,
                   four_terms_and_beta_through_mgh10_agree_with_high_precision,
                   many_points_are_fitted, too_few_points_are_refused, repeated_points_are_fitted,
                   points_too_close_are_refused, contradictory_points_are_refused_by_name,
                   points_that_chance_explains_do_not_contradict, a_fit_that_turns_is_refused,
                   an_unusable_point_is_named, any_points_give_a_falling_curve_or_a_sentence,
                   a_request_that_is_none_is_refused);
}
