/* SPDX-License-Identifier: MIT */
#include "../scene.h"
#include "../../lib/answers/soak.h"

#include <string.h>

/* A car that stood; every part may be changed. */
struct car {
  oc_reading reading;
  oc_meter meter;
  oc_reference air;
  oc_soak_told soak;
  oc_check check;
};

static ohm_sensor *sensor;

static void load_sensor(void) {
  sensor = sensor_built_in("ntc-2k45-20c");
}

static void free_sensor(void) {
  ohm_sensor_free(sensor);
}

static double resistance_at(double t_c) {
  double r_ohm = NAN;
  ck_assert_int_eq(ohm_curve_resistance(ohm_sensor_curve(sensor), t_c, &r_ohm), OHM_OK);
  return r_ohm;
}

/* Exact but for the air, within 2 K, and the time constant, 1 to 4 h. */
static struct car car_of(double shown_c, double air_c, double after_h) {
  struct car car = {OC_READING_INIT, OC_METER_INIT, OC_REFERENCE_INIT, OC_SOAK_TOLD_INIT,
                    OC_CHECK_INIT};
  car.reading.r_ohm = resistance_at(shown_c);
  car.meter.accuracy = car.meter.leads = OC_EXACT;
  car.air.t_c = air_c;
  car.air.accuracy = OC_STATED;
  car.air.limit_k = 2;
  car.soak.after_h = after_h;
  car.soak.start = OC_STATED;
  car.soak.stop_c = 92;
  car.check.place = OHM_PLACE_SENSOR;
  return car;
}

static ohm_status asked(const struct car *car, ohm_finding *finding) {
  return oc_soak_check(sensor, &car->reading, &car->meter, &car->air, &car->soak, &car->check,
                       finding);
}

static ohm_finding judged(const struct car *car) {
  ohm_finding finding = finding_new();
  PROVOKES(oc_soak_check, OHM_OK, asked(car, &finding));
  return finding;
}

static void check_text(const ohm_finding *finding, ohm_field field, const char *text) {
  const char *got = ohm_finding_text(finding, (int)field, 0);
  ck_assert_ptr_nonnull(got);
  ck_assert_str_eq(got, text);
}

/* ---- where the coolant has come to ---- */

enum { TAUS = 40000 };

/* Mean over the time constant of the share of a rectangle below x, by many equal steps:
 * the coolant comes to c, and the air moves it by no more than limit. */
static double coolant_below(double stop_c, double air_c, double after_h, double limit_k,
                            double x_c) {
  double sum = 0;
  for (int i = 0; i < TAUS; i++) {
    double tau_h = 1 + 3 * (i + 0.5) / TAUS;
    double share = exp(-after_h / tau_h);
    double c = air_c + (stop_c - air_c) * share;
    double half = limit_k * (1 - share);
    sum += fmin(fmax((x_c - c + half) / (2 * half), 0), 1);
  }
  return sum / TAUS;
}

START_TEST(the_ends_of_the_coolant_hold_the_level_between_them)
{
  static const double hours[] = {2, 5, 8, 14, 30};
  for (size_t i = 0; i < sizeof hours / sizeof hours[0]; i++) {
    struct car car = car_of(10, 9, hours[i]);
    ohm_finding finding = judged(&car);
    double low_c = number_in(&finding, OHM_FIELD_COOLANT_LOW_C);
    double high_c = number_in(&finding, OHM_FIELD_COOLANT_HIGH_C);
    CHECK_NEAR(coolant_below(92, 9, hours[i], 2, low_c), 0.025, 1e-5);
    CHECK_NEAR(coolant_below(92, 9, hours[i], 2, high_c), 0.975, 1e-5);
  }
}
END_TEST

START_TEST(probabilities_are_means_over_the_time_constant)
{
  for (double shown_c = 0; shown_c < 32; shown_c += 4) {
    struct car car = car_of(shown_c, 9, 7);
    ohm_finding finding = judged(&car);
    double p_cold = 1 - coolant_below(92, 9, 7, 2, shown_c + 6);
    double p_warm = coolant_below(92, 9, 7, 2, shown_c - 6);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_P_COLD), p_cold, 1e-5);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_P_WARM), p_warm, 1e-5);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_P_WITHIN), 1 - p_cold - p_warm, 1e-5);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_P_HIGH), p_cold, 1e-5);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_P_LOW), p_warm, 1e-5);
  }
}
END_TEST

START_TEST(what_could_be_missed_is_a_quantile_of_how_much_warmer_the_coolant_is)
{
  for (double after_h = 3; after_h < 20; after_h += 4) {
    struct car car = car_of(10, 9, after_h);
    ohm_finding finding = judged(&car);
    double missed_k = number_in(&finding, OHM_FIELD_MISSED_COLD_K);
    CHECK_NEAR(coolant_below(92, 9, after_h, 2, 10 + missed_k), 0.95, 1e-5);
  }
}
END_TEST

START_TEST(one_time_constant_and_nothing_unknown_is_the_law_of_cooling)
{
  struct car car = car_of(10, 9, 6);
  double t_c;
  car.air.accuracy = OC_EXACT;
  car.soak.tau_low_h = car.soak.tau_high_h = 2.5;
  ohm_cooling_temperature(92, 9, 2.5, 6, &t_c);
  ohm_finding finding = judged(&car);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_AT_C), t_c, 1e-9);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_U_AT_C), 0, 1e-6);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_COOLANT_LOW_C), t_c, 1e-5);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_COOLANT_HIGH_C), t_c, 1e-5);
}
END_TEST

START_TEST(only_differences_count)
{
  struct car one = car_of(3, 5, 6);
  ohm_finding first = judged(&one);
  for (double moved_k = -15; moved_k <= 15; moved_k += 5) {
    struct car car = car_of(3 + moved_k, 5 + moved_k, 6);
    car.soak.stop_c += moved_k;
    ohm_finding finding = judged(&car);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_P_COLD), number_in(&first, OHM_FIELD_P_COLD), 1e-6);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_MISSED_COLD_K),
               number_in(&first, OHM_FIELD_MISSED_COLD_K), 1e-5);
  }
}
END_TEST

START_TEST(a_colder_reading_is_never_less_likely_cold)
{
  double before = -1;
  for (double shown_c = 30; shown_c > -20; shown_c--) {
    struct car car = car_of(shown_c, 9, 7);
    car.meter.accuracy = car.meter.leads = OC_ASSUMED;
    ohm_finding finding = judged(&car);
    double p_cold = number_in(&finding, OHM_FIELD_P_COLD);
    ck_assert(p_cold >= before - 1e-6);
    before = p_cold;
  }
}
END_TEST

/* ---- the verdict has one side ---- */

START_TEST(colder_than_the_coldest_air_is_bad_whatever_stood_in_the_sun)
{
  struct car car = car_of(0, 9, 7);
  ohm_finding finding = judged(&car);
  check_verdict(&finding, OHM_OUTSIDE, "high");
  car.soak.undisturbed = 1;
  finding = judged(&car);
  check_verdict(&finding, OHM_OUTSIDE, "high");
}
END_TEST

START_TEST(warmer_is_undecided_until_nothing_warmed_it)
{
  struct car car = car_of(35, 9, 12);
  ohm_finding finding = judged(&car);
  check_verdict(&finding, OHM_UNDECIDED, "warm");
  car.soak.undisturbed = 1;
  finding = judged(&car);
  check_verdict(&finding, OHM_OUTSIDE, "low");
  car.check.place = OHM_PLACE_NOT_TOLD;
  finding = judged(&car);
  check_verdict(&finding, OHM_UNDECIDED, "plug_on");
}
END_TEST

START_TEST(after_a_night_a_sound_sensor_is_good)
{
  struct car car = car_of(10, 9, 14);
  ohm_finding finding = judged(&car);
  check_verdict(&finding, OHM_WITHIN, "conforms");
  check_job(&finding, OHM_UNDECIDED, "hidden");
}
END_TEST

START_TEST(after_too_few_hours_a_sound_sensor_is_undecided_and_told_how_many)
{
  struct car car = car_of(12, 9, 7);
  ohm_finding finding = judged(&car);
  check_verdict(&finding, OHM_UNDECIDED, "uncertain");
  double enough_h = number_in(&finding, OHM_FIELD_DECIDABLE_H);
  ck_assert(enough_h > 7);
  /* Then a reading in the middle passes; an hour before, none does. */
  for (int early = 0; early < 2; early++) {
    bool passes = false;
    for (double shown_c = 5; shown_c < 25 && !passes; shown_c += 0.2) {
      struct car later = car_of(shown_c, 9, enough_h - early);
      ohm_finding found = judged(&later);
      passes = ohm_finding_verdict(&found) == OHM_WITHIN;
    }
    ck_assert_int_eq(passes, !early);
  }
}
END_TEST

/* Nine hours leave a slow engine 8 K above the air: only waiting tells that it was not slow. */
START_TEST(a_reading_at_the_air_is_told_when_it_would_pass)
{
  struct car car = car_of(9, 9, 9);
  ohm_finding finding = judged(&car);
  check_verdict(&finding, OHM_UNDECIDED, "uncertain");
  double passes_h = number_in(&finding, OHM_FIELD_PASSES_H);
  ck_assert(passes_h > 9);
  check_has(report_of(&finding), "passes then");
  for (int early = 0; early < 2; early++) {
    car.soak.after_h = passes_h - 0.1 * early;
    ohm_finding later = judged(&car);
    ck_assert_int_eq(ohm_finding_verdict(&later) == OHM_WITHIN, !early);
  }
}
END_TEST

START_TEST(a_reading_far_below_the_air_is_never_told_to_pass)
{
  struct car car = car_of(-4, 9, 9);
  ohm_finding finding = judged(&car);
  check_verdict(&finding, OHM_OUTSIDE, "high");
  check_has_not(report_of(&finding), "would not show");
  ck_assert(isnan(number_in(&finding, OHM_FIELD_PASSES_H)));
}
END_TEST

START_TEST(air_known_to_seven_degrees_never_decides_on_six)
{
  struct car car = car_of(12, 9, 7);
  car.air.limit_k = 7;
  ohm_finding finding = judged(&car);
  ck_assert(isnan(number_in(&finding, OHM_FIELD_DECIDABLE_H)));
  check_has(report_of(&finding), "know the air better");
}
END_TEST

START_TEST(fifty_ohm_in_the_plug_pass_cold_and_are_named)
{
  struct car car = car_of(10, 9, 14);
  car.reading.r_ohm += 50;
  ohm_finding finding = judged(&car);
  check_verdict(&finding, OHM_WITHIN, "conforms");
  ck_assert(number_in(&finding, OHM_FIELD_SERIES_OHM) >= 50);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_FIFTY_LATE_K), 11, 1);
  check_has(report_of(&finding), "50 ohm before a sound one: fan\n            11 C late");
}
END_TEST

START_TEST(what_hides_is_what_a_sound_sensor_would_need_in_series)
{
  struct car car = car_of(10, 9, 14);
  ohm_finding finding = judged(&car);
  double missed_k = number_in(&finding, OHM_FIELD_MISSED_COLD_K);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_SERIES_OHM),
             resistance_at(10) - resistance_at(10 + missed_k), 1e-6);
}
END_TEST

START_TEST(a_sensor_that_rises_is_cold_when_it_is_low)
{
  ohm_sensor *ptc = sensor_built_in("pt1000-b");
  struct car car = car_of(10, 9, 12);
  ohm_finding finding = finding_new();
  ohm_curve_resistance(ohm_sensor_curve(ptc), -5, &car.reading.r_ohm);
  ck_assert_int_eq(
      oc_soak_check(ptc, &car.reading, &car.meter, &car.air, &car.soak, &car.check, &finding),
      OHM_OK);
  check_verdict(&finding, OHM_OUTSIDE, "low");
  check_has(report_of(&finding), "BAD: colder than the coolant can be");
  ck_assert(isnan(number_in(&finding, OHM_FIELD_SERIES_OHM)));
  car.soak.undisturbed = 1;
  ohm_curve_resistance(ohm_sensor_curve(ptc), 40, &car.reading.r_ohm);
  oc_soak_check(ptc, &car.reading, &car.meter, &car.air, &car.soak, &car.check, &finding);
  check_verdict(&finding, OHM_OUTSIDE, "high");
  check_has(report_of(&finding), "BAD: warmer than the coolant can be");
  ohm_sensor_free(ptc);
}
END_TEST

START_TEST(a_reading_past_the_curve_is_as_cold_as_its_end_at_the_least)
{
  struct car car = car_of(10, 9, 12);
  car.reading.r_ohm = 1e6;
  ohm_finding finding = judged(&car);
  check_verdict(&finding, OHM_OUTSIDE, "high");
  ck_assert(isnan(number_in(&finding, OHM_FIELD_T_C)));
  car.air.t_c = -38;
  finding = judged(&car);
  check_verdict(&finding, OHM_UNDECIDED, "outside_band");
}
END_TEST

START_TEST(what_the_display_alone_decides_is_told_as_at_the_bench)
{
  static const struct {
    const char *reading;
    ohm_verdict verdict;
    const char *reason;
  } all[] = {{"open", OHM_OUTSIDE, "open"},
             {"OL", OHM_UNDECIDED, "over_range"},
             {"1", OHM_UNDECIDED, "lone_one"},
             {"3.9", OHM_UNDECIDED, "missing_k"},
             {"0.5ohm", OHM_OUTSIDE, "shorted"}};
  for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
    struct car car = car_of(10, 9, 12);
    ck_assert_int_eq(oc_reading_read(all[i].reading, &car.reading, NULL), OHM_OK);
    ohm_finding finding = judged(&car);
    check_verdict(&finding, all[i].verdict, all[i].reason);
    check_has(report_of(&finding), "\nVERDICT");
    check_has(report_of(&finding), "\nNext");
    ck_assert(isnan(number_in(&finding, OHM_FIELD_P_COLD)));
  }
}
END_TEST

START_TEST(with_the_plug_on_nothing_is_decided)
{
  struct car car = car_of(0, 9, 12);
  car.check.place = OHM_PLACE_PLUG_ON;
  ohm_finding finding = judged(&car);
  check_verdict(&finding, OHM_UNDECIDED, "plug_on");
  check_has_not(report_of(&finding), "For the fan");
}
END_TEST

/* ---- the air ---- */

static ohm_history *history_of(const char *text) {
  ohm_error error;
  ohm_history *history = ohm_history_parse(text, strlen(text), "log", &error);
  ck_assert_msg(history != NULL, "%s", error.message);
  return history;
}

START_TEST(a_history_that_never_changes_is_that_air)
{
  ohm_history *history = history_of("hours,temp_c\n0,9\n3,9\n7,9\n");
  struct car car = car_of(10, 9, 7);
  ohm_finding still = judged(&car);
  car.soak.history = history;
  car.soak.after_h = 0;
  car.air.t_c = 500; /* not looked at */
  ohm_finding finding = judged(&car);
  static const ohm_field same[] = {OHM_FIELD_AT_C,          OHM_FIELD_P_COLD,
                                   OHM_FIELD_COOLANT_LOW_C, OHM_FIELD_COOLANT_HIGH_C,
                                   OHM_FIELD_AFTER_H,       OHM_FIELD_COLDEST_C};
  for (size_t i = 0; i < sizeof same / sizeof same[0]; i++)
    CHECK_NEAR(number_in(&finding, same[i]), number_in(&still, same[i]), 1e-6);
  ohm_history_free(history);
}
END_TEST

START_TEST(air_past_the_last_row_is_not_made_up_unasked)
{
  ohm_history *history = history_of("hours,temp_c\n0,15\n6,7\n");
  struct car car = car_of(10, 9, 7);
  ohm_finding finding = finding_new();
  car.soak.history = history;
  PROVOKES(oc_soak_check, OHM_OUT_OF_RANGE, asked(&car, &finding));
  car.soak.extend = 1;
  finding = judged(&car);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_AIR_C), 7, 0);
  check_has(report_of(&finding), "air as in its last row");
  ohm_history_free(history);
}
END_TEST

START_TEST(a_history_that_begins_late_leaves_the_start_open)
{
  ohm_history *late = history_of("hours,temp_c\n3,12\n8,9\n");
  struct car car = car_of(10, 9, 8);
  car.air.accuracy = OC_EXACT;
  car.soak.history = late;
  car.soak.tau_low_h = car.soak.tau_high_h = 2;
  ohm_finding finding = judged(&car);
  /* Anything from 12 to 92 at 3 h, alike, 5 h before: by hand. */
  double share = exp(-2.5);
  double air_c = 9 + 0.6 * 2 - (12 + 0.6 * 2) * share;
  CHECK_NEAR(number_in(&finding, OHM_FIELD_COOLANT_LOW_C), air_c + (12 + 0.025 * 80) * share, 1e-5);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_COOLANT_HIGH_C), air_c + (12 + 0.975 * 80) * share,
             1e-5);
  check_has(report_of(&finding), "before the first row anything");
  ohm_history_free(late);
}
END_TEST

START_TEST(noise_of_a_history_counts_less_than_an_error_common_to_it)
{
  ohm_history *history = history_of("hours,temp_c\n0,9\n1,9\n2,9\n3,9\n4,9\n5,9\n6,9\n7,9\n8,9\n");
  struct car car = car_of(10, 9, 8);
  car.soak.history = history;
  car.soak.tau_low_h = car.soak.tau_high_h = 2;
  car.air.limit_k = 0;
  car.air.u_k = 1;
  ohm_finding noise = judged(&car);
  car.air.limit_k = sqrt(3);
  car.air.u_k = 0;
  ohm_finding common = judged(&car);
  CHECK_NEAR(number_in(&common, OHM_FIELD_U_AT_C), 1 - exp(-4), 1e-6);
  ck_assert(number_in(&noise, OHM_FIELD_U_AT_C) < 0.6 * number_in(&common, OHM_FIELD_U_AT_C));
  ck_assert(number_in(&noise, OHM_FIELD_U_AT_C) > 0.2);
  ohm_history_free(history);
}
END_TEST

START_TEST(the_coldest_air_is_that_of_the_soak_less_its_limit)
{
  ohm_history *history = history_of("hours,temp_c\n-4,-9\n0,11\n3,2\n8,6\n12,-20\n");
  struct car car = car_of(10, 9, 8);
  car.soak.history = history;
  ohm_finding finding = judged(&car);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_COLDEST_C), 0, 1e-12);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_AIR_C), 6, 1e-12);
  ohm_history_free(history);
}
END_TEST

START_TEST(what_was_not_told_is_assumed_and_said)
{
  struct car car = car_of(10, 9, 12);
  car.air.accuracy = OC_ASSUMED;
  car.soak.start = OC_ASSUMED;
  car.soak.stop_c = NAN;
  ohm_finding finding = judged(&car);
  const char *report = report_of(&finding);
  check_has(report, "air +-2C");
  check_has(report, "stopped at 90C+-15C");
  check_has(report, "cools by 63 %");
  check_has(report, "6C off allowed");
  check_has(report, "no sun, block");
  CHECK_NEAR(number_in(&finding, OHM_FIELD_AIR_LIMIT_K), 2, 0);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_STOP_C), 90, 0);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_STOP_LIMIT_K), 15, 0);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_TAU_LOW_H), 1, 0);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_TAU_HIGH_H), 4, 0);
  car.soak.stop_c = 92;
  finding = judged(&car);
  check_has(report_of(&finding), "stop temperature +-5C");
  CHECK_NEAR(number_in(&finding, OHM_FIELD_STOP_C), 92, 0);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_STOP_LIMIT_K), 5, 0);
  car = car_of(10, 9, 12);
  car.soak.tau_low_h = 1;
  car.soak.tau_high_h = 3;
  car.soak.allow_k = 9;
  car.soak.undisturbed = 1;
  car.check.fan_c = 95;
  car.check.limit_k = 4;
  finding = judged(&car);
  ck_assert_ptr_null(ohm_finding_text(&finding, OHM_FIELD_ASSUMED, 0));
}
END_TEST

/* ---- several sensors ---- */

static oc_companion companion(ohm_soaked kind, double t_c) {
  oc_companion shown = OC_COMPANION_INIT;
  shown.kind = (int)kind;
  shown.t_c = t_c;
  return shown;
}

static ohm_finding with(double coolant_c, const oc_companion *others, size_t count,
                        int undisturbed) {
  struct car car = car_of(coolant_c, 9, 12);
  car.soak.companions = others;
  car.soak.companion_count = count;
  car.soak.undisturbed = undisturbed;
  return judged(&car);
}

START_TEST(sensors_of_a_cold_car_are_consistent)
{
  oc_companion others[] = {companion(OHM_SOAKED_INTAKE, 10), companion(OHM_SOAKED_AMBIENT, 9)};
  ohm_finding finding = with(10.5, others, 2, 0);
  check_text(&finding, OHM_FIELD_AGREEMENT, "consistent");
  ck_assert_ptr_null(ohm_finding_text(&finding, OHM_FIELD_ODD, 0));
  ck_assert(number_in(&finding, OHM_FIELD_P_AGREE) > 0.05);
  check_has(report_of(&finding), "the sensors agree with each other");
}
END_TEST

START_TEST(an_error_of_the_air_makes_none_odd)
{
  oc_companion others[] = {companion(OHM_SOAKED_INTAKE, 2), companion(OHM_SOAKED_AMBIENT, 1)};
  ohm_finding finding = with(2.5, others, 2, 0);
  check_text(&finding, OHM_FIELD_AGREEMENT, "consistent");
}
END_TEST

START_TEST(the_odd_one_of_three_is_named)
{
  oc_companion cold_intake[] = {companion(OHM_SOAKED_INTAKE, -12),
                                companion(OHM_SOAKED_AMBIENT, 9)};
  ohm_finding finding = with(10.5, cold_intake, 2, 0);
  check_text(&finding, OHM_FIELD_AGREEMENT, "odd");
  check_text(&finding, OHM_FIELD_ODD, "intake");
  ck_assert(number_in(&finding, OHM_FIELD_ODD_OFF_K) < -15);
  check_has(report_of(&finding), "the intake sensor is the odd one out, 2");
  check_has(report_of(&finding), "too cold by the others");
  oc_companion sound[] = {companion(OHM_SOAKED_OIL, 10), companion(OHM_SOAKED_AMBIENT, 9)};
  finding = with(-15, sound, 2, 0);
  check_text(&finding, OHM_FIELD_ODD, "coolant");
}
END_TEST

START_TEST(the_warm_one_is_named_only_when_nothing_warmed_it)
{
  oc_companion others[] = {companion(OHM_SOAKED_INTAKE, 10), companion(OHM_SOAKED_AMBIENT, 35)};
  ohm_finding finding = with(10.5, others, 2, 0);
  check_text(&finding, OHM_FIELD_AGREEMENT, "disagree");
  ck_assert_ptr_null(ohm_finding_text(&finding, OHM_FIELD_ODD, 0));
  check_has(report_of(&finding), "nothing says which one is off");
  finding = with(10.5, others, 2, 1);
  check_text(&finding, OHM_FIELD_ODD, "ambient");
  check_has(report_of(&finding), "too warm by the others");
}
END_TEST

START_TEST(of_two_none_is_named)
{
  oc_companion others[] = {companion(OHM_SOAKED_INTAKE, -30)};
  ohm_finding finding = with(10, others, 1, 1);
  check_text(&finding, OHM_FIELD_AGREEMENT, "disagree");
  ck_assert_ptr_null(ohm_finding_text(&finding, OHM_FIELD_ODD, 0));
}
END_TEST

START_TEST(alone_there_is_nothing_to_agree_with)
{
  ohm_finding finding = with(10, NULL, 0, 0);
  ck_assert_ptr_null(ohm_finding_text(&finding, OHM_FIELD_AGREEMENT, 0));
  ck_assert(isnan(number_in(&finding, OHM_FIELD_P_AGREE)));
  check_has_not(report_of(&finding), "The others");
}
END_TEST

/* ---- the screen ---- */

START_TEST(the_report_has_its_lines_in_order)
{
  struct car car = car_of(10, 9, 14);
  ck_assert_int_eq(oc_reading_read("3.9k", &car.reading, NULL), OHM_OK);
  ohm_finding finding = judged(&car);
  const char *report = report_of(&finding);
  static const char *const labels[] = {"CAUTION",   "\nYou read", "\nThat means",  "\nShould be",
                                       "\nAllowed", "\nVERDICT",  "\nFor the fan", "\nNot tested",
                                       "\nNext",    "\nAssumed"};
  for (size_t i = 0; i < sizeof labels / sizeof labels[0]; i++) {
    const char *at = strstr(report, labels[i]);
    ck_assert_msg(at != NULL, "no %s in order in:\n%s", labels[i], report_of(&finding));
    report = at;
  }
  check_has(report_of(&finding), "after 14 h, air now 9.0 C, coldest 7.0 C");
  check_has(report_of(&finding), "GOOD cold: it agrees with the air (");
  check_has(report_of(&finding), "hot: boiling water");
}
END_TEST

START_TEST(a_warm_engine_is_cautioned_about)
{
  struct car car = car_of(60, 9, 2);
  ohm_finding finding = judged(&car);
  check_has(report_of(&finding), "may still be hot and scald");
  car = car_of(10, 9, 20);
  finding = judged(&car);
  check_has_not(report_of(&finding), "scald");
}
END_TEST

START_TEST(what_to_do_next_is_what_would_decide)
{
  struct car car = car_of(12, 9, 7);
  ohm_finding finding = judged(&car);
  check_has(report_of(&finding), "once more when it has stood ");
  car = car_of(3.5, 9, 14);
  finding = judged(&car);
  check_verdict(&finding, OHM_UNDECIDED, "uncertain");
  check_has(report_of(&finding), "a thermometer beside the sensor: it is near the limit");
  car = car_of(35, 9, 14);
  finding = judged(&car);
  check_has(report_of(&finding), "then --undisturbed");
  check_has(report_of(&finding), "nothing too cold hides here");
}
END_TEST

/* ---- what it refuses ---- */

START_TEST(every_special_double_is_refused_at_every_member)
{
  static const double special[] = {NAN, INFINITY, -INFINITY, -1};
  for (size_t i = 0; i < sizeof special / sizeof special[0]; i++)
    for (int at = 0; at < 12; at++) {
      struct car car = car_of(10, 9, 12);
      oc_companion other = companion(OHM_SOAKED_INTAKE, 10);
      car.soak.companions = &other;
      car.soak.companion_count = 1;
      double *const members[] = {
          &car.soak.after_h,      &car.soak.tau_low_h, &car.soak.tau_high_h, &car.soak.allow_k,
          &car.soak.stop_limit_k, &other.limit_k,      &other.tau_low_h,     &other.tau_high_h,
          &car.air.limit_k,       &car.soak.stop_c,    &other.t_c,           &car.air.t_c};
      if (special[i] == -1 && at >= 9)
        continue; /* a temperature */
      if (isnan(special[i]) && members[at] == &other.limit_k)
        continue; /* assumed */
      *members[at] = special[i];
      ohm_finding finding = finding_new();
      PROVOKES(oc_soak_check, OHM_BAD_ARGUMENT, asked(&car, &finding));
      ck_assert_ptr_null(ohm_finding_text(&finding, OHM_FIELD_VERDICT, 0));
    }
}
END_TEST

START_TEST(no_such_constant_is_refused)
{
  ohm_finding finding = finding_new();
  for (int bad = -1; bad < 8; bad += 8) {
    struct car car = car_of(10, 9, 12);
    car.soak.start = bad;
    ck_assert_int_eq(asked(&car, &finding), OHM_BAD_ARGUMENT);
    car = car_of(10, 9, 12);
    car.air.kind = bad == -1 ? -1 : OHM_REFERENCE_ICE;
    ck_assert_int_eq(asked(&car, &finding), OHM_BAD_ARGUMENT);
    car = car_of(10, 9, 12);
    oc_companion other = companion((ohm_soaked)0, 10);
    other.kind = bad;
    car.soak.companions = &other;
    car.soak.companion_count = 1;
    ck_assert_int_eq(asked(&car, &finding), OHM_BAD_ARGUMENT);
  }
}
END_TEST

START_TEST(what_lies_outside_its_range_is_refused)
{
  ohm_finding finding = finding_new();
  struct car cars[10];
  for (int i = 0; i < 10; i++)
    cars[i] = car_of(10, 9, 12);
  cars[0].soak.after_h = 1001;
  cars[1].soak.after_h = 0;
  cars[2].soak.tau_low_h = 3;
  cars[2].soak.tau_high_h = 2;
  cars[3].soak.tau_high_h = 2;
  cars[4].soak.tau_low_h = 1;
  cars[4].soak.tau_high_h = 1001;
  cars[5].soak.allow_k = 101;
  cars[6].soak.stop_c = 1001;
  cars[7].air.t_c = -274;
  cars[8].check.level = 0.4;
  oc_companion other = companion(OHM_SOAKED_OIL, 1001);
  cars[9].soak.companions = &other;
  cars[9].soak.companion_count = 1;
  for (int i = 0; i < 10; i++)
    ck_assert_int_eq(asked(&cars[i], &finding), OHM_OUT_OF_RANGE);
}
END_TEST

START_TEST(what_is_missing_is_refused)
{
  struct car car = car_of(10, 9, 12);
  ohm_finding finding = finding_new();
  PROVOKES(oc_soak_check, OHM_NULL_ARGUMENT,
           oc_soak_check(NULL, &car.reading, NULL, &car.air, &car.soak, NULL, &finding));
  ck_assert_int_eq(oc_soak_check(sensor, NULL, NULL, &car.air, &car.soak, NULL, &finding),
                   OHM_NULL_ARGUMENT);
  ck_assert_int_eq(oc_soak_check(sensor, &car.reading, NULL, NULL, &car.soak, NULL, &finding),
                   OHM_NULL_ARGUMENT);
  ck_assert_int_eq(oc_soak_check(sensor, &car.reading, NULL, &car.air, NULL, NULL, &finding),
                   OHM_NULL_ARGUMENT);
  ck_assert_int_eq(oc_soak_check(sensor, &car.reading, NULL, &car.air, &car.soak, NULL, NULL),
                   OHM_NULL_ARGUMENT);
  car.soak.companion_count = 1;
  ck_assert_int_eq(asked(&car, &finding), OHM_NULL_ARGUMENT);
  oc_companion many[9];
  for (int i = 0; i < 9; i++)
    many[i] = companion(OHM_SOAKED_OIL, 10);
  car.soak.companions = many;
  car.soak.companion_count = 9;
  PROVOKES(oc_soak_check, OHM_TOO_LARGE, asked(&car, &finding));
  car.soak.companion_count = 8;
  ck_assert_int_eq(asked(&car, &finding), OHM_OK);
  car.check.band = "no-such-band";
  PROVOKES(oc_soak_check, OHM_NOT_FOUND, asked(&car, &finding));
}
END_TEST

int main(void) {
  load_sensor();
  int status = RUN_TESTS(
      "soak", the_ends_of_the_coolant_hold_the_level_between_them,
      probabilities_are_means_over_the_time_constant,
      what_could_be_missed_is_a_quantile_of_how_much_warmer_the_coolant_is,
      one_time_constant_and_nothing_unknown_is_the_law_of_cooling, only_differences_count,
      a_colder_reading_is_never_less_likely_cold,
      colder_than_the_coldest_air_is_bad_whatever_stood_in_the_sun,
      warmer_is_undecided_until_nothing_warmed_it, after_a_night_a_sound_sensor_is_good,
      after_too_few_hours_a_sound_sensor_is_undecided_and_told_how_many,
      a_reading_at_the_air_is_told_when_it_would_pass,
      a_reading_far_below_the_air_is_never_told_to_pass,
      air_known_to_seven_degrees_never_decides_on_six,
      fifty_ohm_in_the_plug_pass_cold_and_are_named,
      what_hides_is_what_a_sound_sensor_would_need_in_series,
      a_sensor_that_rises_is_cold_when_it_is_low,
      a_reading_past_the_curve_is_as_cold_as_its_end_at_the_least,
      what_the_display_alone_decides_is_told_as_at_the_bench, with_the_plug_on_nothing_is_decided,
      a_history_that_never_changes_is_that_air, air_past_the_last_row_is_not_made_up_unasked,
      a_history_that_begins_late_leaves_the_start_open,
      noise_of_a_history_counts_less_than_an_error_common_to_it,
      the_coldest_air_is_that_of_the_soak_less_its_limit, what_was_not_told_is_assumed_and_said,
      sensors_of_a_cold_car_are_consistent, an_error_of_the_air_makes_none_odd,
      the_odd_one_of_three_is_named, the_warm_one_is_named_only_when_nothing_warmed_it,
      of_two_none_is_named, alone_there_is_nothing_to_agree_with, the_report_has_its_lines_in_order,
      a_warm_engine_is_cautioned_about, what_to_do_next_is_what_would_decide,
      every_special_double_is_refused_at_every_member, no_such_constant_is_refused,
      what_lies_outside_its_range_is_refused, what_is_missing_is_refused);
  free_sensor();
  return status;
}
