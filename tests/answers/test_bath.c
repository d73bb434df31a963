/* SPDX-License-Identifier: MIT */
#include "../scene.h"
#include "../../lib/answers/bath.h"

#include <float.h>
#include <stdlib.h>
#include <string.h>

#define HEADER "temp_c,r_min_ohm,r_nom_ohm,r_max_ohm\n"

/* Limits at 0 to 80 C, a nominal from -40 to 120 C. */
static const char table[] = "# source: invented\n" HEADER "-40,,48140,\n0,5400,5790,6180\n"
                            "20,2310,2450,2590\n80,309,322,331\n120,,116,\n";
static const char flat[] = "# tolerance: 5 %\n" HEADER "-40,,48140,\n20,,2450,\n120,,116,\n";
static const char kelvin[] = "# tolerance: 1 K\n" HEADER "-40,,48140,\n20,,2450,\n120,,116,\n";
static const char beta[] =
    "# tolerance: 5 % at 20 C, beta 1 %\n" HEADER "-40,,48140,\n20,,2450,\n120,,116,\n";
static const char none[] = HEADER "-40,,48140,\n20,,2450,\n120,,116,\n";
static const char *const with_limits[] = {table, flat, kelvin, beta};
enum { WITH_LIMITS = 4 };

static ohm_status run(const ohm_sensor *sensor, const struct scene *bath, ohm_finding *finding) {
  return oc_bath_check(sensor, &bath->reading, &bath->meter, &bath->reference, &bath->check,
                       finding);
}

/* ---- without any error ---- */

START_TEST(without_error_the_middle_is_within_the_limits_undecided_and_beyond_outside)
{
  for (size_t i = 0; i < WITH_LIMITS; i++) {
    ohm_sensor *sensor = sensor_of(with_limits[i]);
    for (double t_c = 0; t_c <= 80; t_c += 2.5) {
      double low;
      double nominal;
      double high;
      ck_assert_int_eq(ohm_sensor_band(sensor, t_c, &low, &nominal, &high), OHM_OK);
      struct scene bath = scene_exact(nominal, t_c);
      ohm_finding finding = scene_judged(sensor, &bath);
      check_verdict(&finding, OHM_WITHIN, "conforms");
      CHECK_NEAR(number_in(&finding, OHM_FIELD_P_WITHIN), 1, 1e-12);
      bath = scene_exact(low, t_c);
      finding = scene_judged(sensor, &bath);
      check_verdict(&finding, OHM_UNDECIDED, "uncertain");
      bath = scene_exact(high, t_c);
      finding = scene_judged(sensor, &bath);
      check_verdict(&finding, OHM_UNDECIDED, "uncertain");
      bath = scene_exact(low * 0.98, t_c);
      finding = scene_judged(sensor, &bath);
      check_verdict(&finding, OHM_OUTSIDE, "low");
      bath = scene_exact(high * 1.02, t_c);
      finding = scene_judged(sensor, &bath);
      check_verdict(&finding, OHM_OUTSIDE, "high");
    }
    ohm_sensor_free(sensor);
  }
}
END_TEST

START_TEST(a_tiny_error_decides_as_none_does)
{
  static const double parts[] = {0.9, 0.96, 1, 1.04, 1.1};
  ohm_sensor *sensor = sensor_of(flat);
  for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++)
    for (double tiny = 1e-12; tiny < 1e-3; tiny *= 10) {
      struct scene exact = scene_exact(2450 * parts[i], 20);
      struct scene bath = exact;
      bath.meter.accuracy = OC_STATED;
      bath.meter.percent = 100 * tiny;
      bath.meter.leads = OC_STATED;
      bath.meter.lead_limit_ohm = 2450 * tiny;
      bath.reference.accuracy = OC_STATED;
      bath.reference.limit_k = bath.reference.u_k = tiny;
      ohm_finding finding = scene_judged(sensor, &bath);
      ohm_finding want = scene_judged(sensor, &exact);
      ck_assert_int_eq(ohm_finding_verdict(&finding), ohm_finding_verdict(&want));
      CHECK_NEAR(number_in(&finding, OHM_FIELD_P_LOW), number_in(&want, OHM_FIELD_P_LOW), 1e-9);
      CHECK_NEAR(number_in(&finding, OHM_FIELD_P_HIGH), number_in(&want, OHM_FIELD_P_HIGH), 1e-9);
    }
  ohm_sensor_free(sensor);
}
END_TEST

/* ---- with error ---- */

START_TEST(a_perfect_reading_is_never_outside_however_hopeless_the_bath)
{
  for (size_t i = 0; i < WITH_LIMITS; i++) {
    ohm_sensor *sensor = sensor_of(with_limits[i]);
    for (double t_c = 1; t_c <= 79; t_c += 13)
      for (double limit_k = 0.1; limit_k <= 1000; limit_k *= 1.7) {
        double nominal;
        ck_assert_int_eq(ohm_sensor_band(sensor, t_c, NULL, &nominal, NULL), OHM_OK);
        struct scene bath = scene_exact(nominal, t_c);
        bath.reference.accuracy = OC_STATED;
        bath.reference.limit_k = limit_k;
        bath.check.level = 0.51;
        ohm_finding finding = scene_judged(sensor, &bath);
        ck_assert_int_ne(ohm_finding_verdict(&finding), OHM_OUTSIDE);
        if (limit_k > 20)
          check_verdict(&finding, OHM_UNDECIDED, "uncertain");
        ck_assert(number_in(&finding, OHM_FIELD_P_WITHIN) >= 0);
      }
    ohm_sensor_free(sensor);
  }
}
END_TEST

/* The thermometer may even be said to reach below absolute zero. */
START_TEST(a_hopeless_bath_leaves_probabilities_that_are_numbers)
{
  for (size_t i = 0; i < WITH_LIMITS; i++) {
    ohm_sensor *sensor = sensor_of(with_limits[i]);
    for (double limit_k = 100; limit_k <= 1000; limit_k += 100) {
      struct scene bath = scene_exact(2450, 20);
      bath.meter.accuracy = OC_ASSUMED;
      bath.reference.accuracy = OC_STATED;
      bath.reference.limit_k = bath.reference.u_k = limit_k;
      ohm_finding finding = scene_judged(sensor, &bath);
      check_verdict(&finding, OHM_UNDECIDED, "uncertain");
      CHECK_NEAR(number_in(&finding, OHM_FIELD_P_LOW) + number_in(&finding, OHM_FIELD_P_WITHIN) +
                     number_in(&finding, OHM_FIELD_P_HIGH),
                 1, 1e-9);
    }
    ohm_sensor_free(sensor);
  }
}
END_TEST

START_TEST(a_nominal_reading_is_never_outside_however_poor_the_meter)
{
  ohm_sensor *sensor = sensor_of(flat);
  for (double percent = 0.01; percent < 100; percent *= 1.5) {
    struct scene bath = scene_exact(2450, 20);
    bath.meter.accuracy = OC_STATED;
    bath.meter.percent = percent;
    ohm_finding finding = scene_judged(sensor, &bath);
    ck_assert_int_eq(ohm_finding_verdict(&finding), percent < 5 ? OHM_WITHIN : OHM_UNDECIDED);
  }
  ohm_sensor_free(sensor);
}
END_TEST

/* A bath, a meter and leads with every kind of error. */
static struct scene rough_bath(double r_ohm, double t_c) {
  struct scene bath = scene_exact(r_ohm, t_c);
  bath.meter.accuracy = OC_STATED;
  bath.meter.percent = 0.8;
  bath.meter.counts = 3;
  bath.meter.resolution_ohm = 1;
  bath.meter.leads = OC_STATED;
  bath.meter.lead_ohm = 0.3;
  bath.meter.lead_limit_ohm = 0.2;
  bath.reference.accuracy = OC_STATED;
  bath.reference.limit_k = 1;
  bath.reference.u_k = 0.5;
  return bath;
}

START_TEST(probabilities_lie_in_0_to_1_and_sum_to_1)
{
  for (size_t i = 0; i < WITH_LIMITS; i++) {
    ohm_sensor *sensor = sensor_of(with_limits[i]);
    for (double t_c = 0; t_c <= 80; t_c += 8)
      for (double r_ohm = 1; r_ohm < 1e6; r_ohm *= 1.6) {
        struct scene bath = rough_bath(r_ohm, t_c);
        ohm_finding finding = scene_judged(sensor, &bath);
        double sum = 0;
        for (int field = OHM_FIELD_P_LOW; field <= OHM_FIELD_P_HIGH; field++) {
          double p = ohm_finding_number(&finding, field);
          ck_assert(0 <= p && p <= 1);
          sum += p;
        }
        CHECK_NEAR(sum, 1, 1e-9);
      }
    ohm_sensor_free(sensor);
  }
}
END_TEST

START_TEST(raising_the_reading_never_lowers_p_high_nor_raises_p_low)
{
  for (size_t i = 0; i < WITH_LIMITS; i++) {
    ohm_sensor *sensor = sensor_of(with_limits[i]);
    double p_low = 1;
    double p_high = 0;
    for (double r_ohm = 2000; r_ohm <= 3000; r_ohm += 7) {
      struct scene bath = rough_bath(r_ohm, 20);
      bath.meter.percent = 0;
      ohm_finding finding = scene_judged(sensor, &bath);
      ck_assert(number_in(&finding, OHM_FIELD_P_HIGH) >= p_high - 1e-10);
      ck_assert(number_in(&finding, OHM_FIELD_P_LOW) <= p_low + 1e-10);
      p_high = number_in(&finding, OHM_FIELD_P_HIGH);
      p_low = number_in(&finding, OHM_FIELD_P_LOW);
    }
    CHECK_NEAR(p_high, 1, 1e-6);
    CHECK_NEAR(p_low, 0, 1e-6);
    ohm_sensor_free(sensor);
  }
}
END_TEST

START_TEST(equal_misses_either_way_are_as_likely)
{
  ohm_sensor *sensor = sensor_of(flat);
  for (double miss_ohm = 0; miss_ohm < 300; miss_ohm += 11) {
    struct scene low = rough_bath(2450.3 - miss_ohm, 20);
    struct scene high = rough_bath(2450.3 + miss_ohm, 20);
    low.meter.percent = high.meter.percent = 0;
    low.reference.accuracy = high.reference.accuracy = OC_EXACT;
    ohm_finding below = scene_judged(sensor, &low);
    ohm_finding above = scene_judged(sensor, &high);
    CHECK_NEAR(number_in(&below, OHM_FIELD_P_LOW), number_in(&above, OHM_FIELD_P_HIGH), 1e-12);
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_verdict_is_that_of_the_probabilities_and_the_level)
{
  static const double levels[] = {0.501, 0.8, 0.95, 0.999999};
  ohm_sensor *sensor = sensor_of(table);
  for (size_t i = 0; i < sizeof levels / sizeof levels[0]; i++)
    for (double r_ohm = 2000; r_ohm <= 2900; r_ohm += 13) {
      struct scene bath = rough_bath(r_ohm, 20);
      bath.check.level = levels[i];
      ohm_finding finding = scene_judged(sensor, &bath);
      CHECK_NEAR(number_in(&finding, OHM_FIELD_LEVEL), levels[i], 0);
      if (number_in(&finding, OHM_FIELD_P_WITHIN) >= levels[i])
        check_verdict(&finding, OHM_WITHIN, "conforms");
      else if (number_in(&finding, OHM_FIELD_P_LOW) >= levels[i])
        check_verdict(&finding, OHM_OUTSIDE, "low");
      else if (number_in(&finding, OHM_FIELD_P_HIGH) >= levels[i])
        check_verdict(&finding, OHM_OUTSIDE, "high");
      else
        check_verdict(&finding, OHM_UNDECIDED, "uncertain");
    }
  ohm_sensor_free(sensor);
}
END_TEST

/* ---- what is allowed ---- */

START_TEST(a_tolerance_that_is_given_counts_instead_of_the_sensors_own)
{
  static const char *const texts[] = {table, flat, kelvin, beta, none};
  for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
    ohm_sensor *sensor = sensor_of(texts[i]);
    struct scene bath = scene_exact(2450 * 1.19, 20);
    bath.check.tolerance_percent = 20;
    ohm_finding finding = scene_judged(sensor, &bath);
    check_verdict(&finding, OHM_WITHIN, "conforms");
    CHECK_NEAR(number_in(&finding, OHM_FIELD_LOW_OHM), 2450 * 0.8, 1e-9);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_HIGH_OHM), 2450 * 1.2, 1e-9);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_TOLERANCE_PERCENT), 20, 1e-12);
    bath.check.tolerance_percent = 18;
    finding = scene_judged(sensor, &bath);
    check_verdict(&finding, OHM_OUTSIDE, "high");
    ohm_sensor_free(sensor);
  }
}
END_TEST

START_TEST(without_a_tolerance_nothing_is_decided)
{
  ohm_sensor *sensor = sensor_of(none);
  struct scene bath = scene_exact(9999, 20);
  ohm_finding finding = scene_judged(sensor, &bath);
  check_verdict(&finding, OHM_UNDECIDED, "no_tolerance");
  CHECK_NEAR(number_in(&finding, OHM_FIELD_EXPECTED_OHM), 2450, 0);
  ck_assert(isnan(number_in(&finding, OHM_FIELD_LOW_OHM)));
  ck_assert(isnan(number_in(&finding, OHM_FIELD_P_HIGH)));
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(beyond_the_printed_limits_nothing_is_decided)
{
  static const double outside_c[] = {-40, -0.01, 80.01, 120, 121, -41, 1000};
  ohm_sensor *sensor = sensor_of(table);
  for (size_t i = 0; i < sizeof outside_c / sizeof outside_c[0]; i++) {
    struct scene bath = scene_exact(40, outside_c[i]);
    ohm_finding finding = scene_judged(sensor, &bath);
    check_verdict(&finding, OHM_UNDECIDED, "outside_band");
    bool reached = -40 <= outside_c[i] && outside_c[i] <= 120;
    ck_assert_int_eq(!isnan(number_in(&finding, OHM_FIELD_EXPECTED_OHM)), reached);
    ck_assert(isnan(number_in(&finding, OHM_FIELD_P_LOW)));
  }
  ohm_sensor_free(sensor);
}
END_TEST

/* ---- a display without a number ---- */

START_TEST(no_circuit_is_outside_whatever_is_allowed)
{
  static const char *const texts[] = {table, none};
  for (size_t i = 0; i < 2; i++) {
    ohm_sensor *sensor = sensor_of(texts[i]);
    struct scene bath = rough_bath(0, 20);
    ck_assert_int_eq(oc_reading_read("open", &bath.reading, NULL), OHM_OK);
    ohm_finding finding = scene_judged(sensor, &bath);
    check_verdict(&finding, OHM_OUTSIDE, "open");
    ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_READ, 0), "open");
    ck_assert(isnan(number_in(&finding, OHM_FIELD_R_OHM)));
    ck_assert(isnan(number_in(&finding, OHM_FIELD_P_HIGH)));
    ohm_sensor_free(sensor);
  }
}
END_TEST

START_TEST(over_range_decides_nothing)
{
  ohm_sensor *sensor = sensor_of(table);
  struct scene bath = rough_bath(0, 20);
  ck_assert_int_eq(oc_reading_read("OL", &bath.reading, NULL), OHM_OK);
  ohm_finding finding = scene_judged(sensor, &bath);
  check_verdict(&finding, OHM_UNDECIDED, "over_range");
  ck_assert(isnan(number_in(&finding, OHM_FIELD_R_OHM)));
  CHECK_NEAR(number_in(&finding, OHM_FIELD_LOW_OHM), 2310, 0);
  ohm_sensor_free(sensor);
}
END_TEST

/* ---- what is told ---- */

START_TEST(a_finding_tells_what_it_was_made_of)
{
  ohm_sensor *sensor = sensor_of(table);
  struct scene bath = rough_bath(2310.3, 20);
  bath.reading.resolution_ohm = 10;
  bath.check.fan_c = 60; /* where limits are printed */
  ohm_finding finding = scene_judged(sensor, &bath);
  ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_SENSOR, 0), "ntc");
  ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_SOURCE, 0), "invented");
  ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_READ, 0), "2.31 k");
  ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_REFERENCE, 0), "thermometer");
  ck_assert_ptr_null(ohm_finding_text(&finding, OHM_FIELD_ASSUMED, 0));
  CHECK_NEAR(number_in(&finding, OHM_FIELD_R_OHM), 2310, 1e-9);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_AT_C), 20, 0);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_U_AT_C), sqrt(1.0 / 3 + 0.25), 1e-12);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_LEVEL), 0.95, 0);
  ck_assert(number_in(&finding, OHM_FIELD_T_C) > 20);
  ck_assert(number_in(&finding, OHM_FIELD_EXPANDED_R_OHM) > number_in(&finding, OHM_FIELD_U_R_OHM));
  ck_assert(number_in(&finding, OHM_FIELD_EXPANDED_T_K) > number_in(&finding, OHM_FIELD_U_T_C));
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(what_was_not_told_is_named_as_assumed)
{
  ohm_sensor *sensor = sensor_of(table);
  oc_reading reading = OC_READING_INIT;
  reading.r_ohm = 2450;
  oc_reference reference = OC_REFERENCE_INIT;
  reference.t_c = 20;
  ohm_finding finding = finding_new();
  ck_assert_int_eq(oc_bath_check(sensor, &reading, NULL, &reference, NULL, &finding), OHM_OK);
  size_t count = 0;
  while (ohm_finding_text(&finding, OHM_FIELD_ASSUMED, count))
    count++;
  static const char *const assumed[] = {"meter 1%+3",
                                        "a display of 2000 counts",
                                        "leads 0.3+-0.2",
                                        "thermometer +-2C",
                                        "fan 97C",
                                        "fan within 5C",
                                        "limits continued to the fan"};
  ck_assert_uint_eq(count, sizeof assumed / sizeof assumed[0]);
  for (size_t i = 0; i < count; i++)
    ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_ASSUMED, i), assumed[i]);
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(ice_is_0_degrees_whatever_the_temperature_member_holds)
{
  ohm_sensor *sensor = sensor_of(table);
  struct scene bath = scene_exact(5790, 50);
  bath.reference.kind = OHM_REFERENCE_ICE;
  ohm_finding finding = scene_judged(sensor, &bath);
  check_verdict(&finding, OHM_WITHIN, "conforms");
  CHECK_NEAR(number_in(&finding, OHM_FIELD_AT_C), 0, 0);
  ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_REFERENCE, 0), "ice");
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_reading_beyond_the_curve_has_no_temperature_and_a_verdict)
{
  ohm_sensor *sensor = sensor_of(table);
  struct scene bath = scene_exact(0, 20);
  ohm_finding finding = scene_judged(sensor, &bath);
  check_verdict(&finding, OHM_OUTSIDE, "shorted");
  ck_assert(isnan(number_in(&finding, OHM_FIELD_T_C)));
  bath = scene_exact(5, 20);
  finding = scene_judged(sensor, &bath);
  check_verdict(&finding, OHM_OUTSIDE, "low");
  ck_assert(isnan(number_in(&finding, OHM_FIELD_T_C)));
  bath = scene_exact(1e12, 20);
  finding = scene_judged(sensor, &bath);
  check_verdict(&finding, OHM_OUTSIDE, "high");
  ohm_sensor_free(sensor);
}
END_TEST

/* ---- bad values ---- */

static void check_refused(const ohm_sensor *sensor, const struct scene *bath, ohm_status status) {
  ohm_finding finding;
  findings_stale(&finding, 1);
  ohm_status got = run(sensor, bath, &finding);
  ck_assert_str_eq(ohm_status_name((int)got), ohm_status_name((int)status));
  for (int i = 0; i < OC_FIELDS; i++) {
    ck_assert(isnan(ohm_finding_number(&finding, i)));
    ck_assert_ptr_null(ohm_finding_text(&finding, i, 0));
  }
  ck_assert_int_eq(ohm_finding_verdict(&finding), OHM_UNDECIDED);
}

/* Every number of a bath, one after the other; NULL past the last. */
static double *amount_of(struct scene *bath, size_t index) {
  double *const amounts[] = {&bath->reading.r_ohm,        &bath->reading.resolution_ohm,
                             &bath->meter.percent,        &bath->meter.counts,
                             &bath->meter.resolution_ohm, &bath->meter.display_count,
                             &bath->meter.lead_ohm,       &bath->meter.lead_limit_ohm,
                             &bath->reference.limit_k,    &bath->reference.u_k};
  return index < sizeof amounts / sizeof amounts[0] ? amounts[index] : NULL;
}

START_TEST(an_amount_that_is_nan_infinite_or_negative_is_a_bad_argument)
{
  static const double bad[] = {NAN, INFINITY, -INFINITY, -1, -DBL_MIN};
  ohm_sensor *sensor = sensor_of(table);
  for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++)
    for (size_t index = 0;; index++) {
      struct scene bath = rough_bath(2450, 20);
      double *amount = amount_of(&bath, index);
      if (!amount)
        break;
      *amount = bad[i];
      check_refused(sensor, &bath, OHM_BAD_ARGUMENT);
    }
  struct scene bath = rough_bath(-1, 20);
  ohm_finding finding = finding_new();
  PROVOKES(oc_bath_check, OHM_BAD_ARGUMENT, run(sensor, &bath, &finding));
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_temperature_level_or_tolerance_that_is_nan_is_a_bad_argument)
{
  ohm_sensor *sensor = sensor_of(table);
  struct scene bath = rough_bath(2450, NAN);
  check_refused(sensor, &bath, OHM_BAD_ARGUMENT);
  bath = rough_bath(2450, INFINITY);
  check_refused(sensor, &bath, OHM_BAD_ARGUMENT);
  bath = rough_bath(2450, 20);
  bath.check.level = NAN;
  check_refused(sensor, &bath, OHM_BAD_ARGUMENT);
  bath = rough_bath(2450, 20);
  bath.check.tolerance_percent = NAN;
  check_refused(sensor, &bath, OHM_BAD_ARGUMENT);
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_constant_that_is_none_or_a_size_too_small_is_a_bad_argument)
{
  static const int last[] = {OC_DISPLAY_ONE,         OC_EXACT, OC_EXACT,
                             OHM_REFERENCE_INFRARED, OC_EXACT, OHM_PLACE_MODULE};
  ohm_sensor *sensor = sensor_of(table);
  for (size_t member = 0; member < sizeof last / sizeof last[0]; member++) {
    const int no_constant[] = {-1, last[member] + 1, 1000};
    for (size_t i = 0; i < sizeof no_constant / sizeof no_constant[0]; i++) {
      struct scene bath = rough_bath(2450, 20);
      int *const members[] = {&bath.reading.display, &bath.meter.accuracy,     &bath.meter.leads,
                              &bath.reference.kind,  &bath.reference.accuracy, &bath.check.place};
      *members[member] = no_constant[i];
      check_refused(sensor, &bath, OHM_BAD_ARGUMENT);
    }
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_level_tolerance_or_temperature_out_of_its_range_is_told)
{
  static const double levels[] = {0.5, 0.1, 1, 2};
  static const double percents[] = {100, 1e300};
  static const double temperatures_c[] = {-273.15, -300, 1000.1, 1e300};
  ohm_sensor *sensor = sensor_of(table);
  for (size_t i = 0; i < sizeof levels / sizeof levels[0]; i++) {
    struct scene bath = rough_bath(2450, 20);
    bath.check.level = levels[i];
    check_refused(sensor, &bath, OHM_OUT_OF_RANGE);
  }
  for (size_t i = 0; i < sizeof percents / sizeof percents[0]; i++) {
    struct scene bath = rough_bath(2450, 20);
    bath.check.tolerance_percent = percents[i];
    check_refused(sensor, &bath, OHM_OUT_OF_RANGE);
  }
  for (size_t i = 0; i < sizeof temperatures_c / sizeof temperatures_c[0]; i++) {
    struct scene bath = rough_bath(2450, temperatures_c[i]);
    check_refused(sensor, &bath, OHM_OUT_OF_RANGE);
  }
  struct scene bath = rough_bath(2450, 1001);
  ohm_finding finding = finding_new();
  PROVOKES(oc_bath_check, OHM_OUT_OF_RANGE, run(sensor, &bath, &finding));
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_band_that_no_maker_has_is_not_found)
{
  ohm_sensor *sensor = sensor_of(table);
  struct scene bath = rough_bath(2450, 20);
  bath.check.band = "nobody";
  check_refused(sensor, &bath, OHM_NOT_FOUND);
  ohm_finding finding = finding_new();
  PROVOKES(oc_bath_check, OHM_NOT_FOUND, run(sensor, &bath, &finding));
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_sensor_a_reading_a_reference_and_a_finding_are_required)
{
  ohm_sensor *sensor = sensor_of(table);
  struct scene bath = rough_bath(2450, 20);
  ohm_finding finding;
  findings_stale(&finding, 1);
  PROVOKES(oc_bath_check, OHM_NULL_ARGUMENT,
           oc_bath_check(NULL, &bath.reading, NULL, &bath.reference, NULL, &finding));
  ck_assert_int_eq(ohm_finding_verdict(&finding), OHM_UNDECIDED);
  PROVOKES(oc_bath_check, OHM_NULL_ARGUMENT,
           oc_bath_check(sensor, NULL, NULL, &bath.reference, NULL, &finding));
  PROVOKES(oc_bath_check, OHM_NULL_ARGUMENT,
           oc_bath_check(sensor, &bath.reading, NULL, NULL, NULL, &finding));
  PROVOKES(oc_bath_check, OHM_NULL_ARGUMENT,
           oc_bath_check(sensor, &bath.reading, NULL, &bath.reference, NULL, NULL));
  ohm_sensor_free(sensor);
}
END_TEST

int main(void) {
  int verdicts = RUN_TESTS(
      "bath", without_error_the_middle_is_within_the_limits_undecided_and_beyond_outside,
      a_tiny_error_decides_as_none_does,
      a_perfect_reading_is_never_outside_however_hopeless_the_bath,
      a_hopeless_bath_leaves_probabilities_that_are_numbers,
      a_nominal_reading_is_never_outside_however_poor_the_meter,
      probabilities_lie_in_0_to_1_and_sum_to_1,
      raising_the_reading_never_lowers_p_high_nor_raises_p_low,
      equal_misses_either_way_are_as_likely, a_verdict_is_that_of_the_probabilities_and_the_level,

      a_tolerance_that_is_given_counts_instead_of_the_sensors_own,
      without_a_tolerance_nothing_is_decided, beyond_the_printed_limits_nothing_is_decided,
      no_circuit_is_outside_whatever_is_allowed, over_range_decides_nothing);
  int findings = RUN_TESTS("finding of a bath", a_finding_tells_what_it_was_made_of,
                           what_was_not_told_is_named_as_assumed,
                           ice_is_0_degrees_whatever_the_temperature_member_holds,
                           a_reading_beyond_the_curve_has_no_temperature_and_a_verdict,
                           an_amount_that_is_nan_infinite_or_negative_is_a_bad_argument,
                           a_temperature_level_or_tolerance_that_is_nan_is_a_bad_argument,
                           a_constant_that_is_none_or_a_size_too_small_is_a_bad_argument,
                           a_level_tolerance_or_temperature_out_of_its_range_is_told,
                           a_band_that_no_maker_has_is_not_found,
                           a_sensor_a_reading_a_reference_and_a_finding_are_required);
  return verdicts | findings;
}
