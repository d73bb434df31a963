/* SPDX-License-Identifier: MIT */
#include "../scene.h"

#include <stdio.h>

static const char flat[] = "# tolerance: 5 %\n# range: -40 to 150 C\n# model: beta\n"
                           "# r0_ohm: 2450\n# t0_c: 20\n# beta_k: 3500\n";

static const double FAN_C = OC_ASSUMED_FAN_C;
static const double NEVER_C = 130; /* of the header: up to here "never" is meant */

static ohm_finding exact(const ohm_sensor *sensor, double r_ohm, double t_c) {
  struct scene scene = scene_exact(r_ohm, t_c);
  return scene_judged(sensor, &scene);
}

/* Sums ask millions of times, and libcheck notes each assertion. */
static double nominal(const ohm_sensor *sensor, double t_c) {
  double r_ohm;
  if (ohm_curve_resistance(ohm_sensor_curve(sensor), t_c, &r_ohm) != OHM_OK)
    ck_abort_msg("no resistance at %g C", t_c);
  return r_ohm;
}

/* ---- the largest fault that could hide ---- */

START_TEST(an_exact_reading_hides_its_distance_from_the_limits)
{
  ohm_sensor *sensor = sensor_of(flat);
  for (double t_c = -30; t_c <= 120; t_c += 10)
    for (double part = 0.97; part <= 1.031; part += 0.01) {
      double r_ohm = nominal(sensor, t_c) * part;
      ohm_finding finding = exact(sensor, r_ohm, t_c);
      double low_ohm = 0.95 * nominal(sensor, t_c);
      double high_ohm = 1.05 * nominal(sensor, t_c);
      CHECK_NEAR(number_in(&finding, OHM_FIELD_SERIES_OHM), r_ohm - low_ohm, 1e-6 * r_ohm);
      double leakage_s = 1 / number_in(&finding, OHM_FIELD_LEAKAGE_OHM);
      CHECK_NEAR(leakage_s, 1 / r_ohm - 1 / high_ohm, 1e-6 / r_ohm);
    }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(an_exact_reading_beyond_a_limit_hides_nothing_on_that_side)
{
  ohm_sensor *sensor = sensor_of(flat);
  ohm_finding low = exact(sensor, 0.94 * nominal(sensor, 20), 20);
  ohm_finding high = exact(sensor, 1.06 * nominal(sensor, 20), 20);
  CHECK_NEAR(number_in(&low, OHM_FIELD_SERIES_OHM), 0, 1e-9);
  ck_assert(number_in(&low, OHM_FIELD_LEAKAGE_OHM) < 1e5);
  ck_assert(isnan(number_in(&high, OHM_FIELD_LEAKAGE_OHM)));
  ck_assert(number_in(&high, OHM_FIELD_SERIES_OHM) > 200);
  ohm_sensor_free(sensor);
}
END_TEST

/* A reading with every kind of error: meter and leads rectangular, thermometer
 * rectangular and normal. */
static struct scene rough(double r_ohm, double t_c) {
  struct scene scene = scene_exact(r_ohm, t_c);
  scene.meter.accuracy = OC_STATED;
  scene.meter.percent = 1;
  scene.meter.resolution_ohm = 0.1;
  scene.reference.accuracy = OC_STATED;
  scene.reference.limit_k = 2;
  scene.reference.u_k = 0.7;
  return scene;
}

/* Probability that R - low(T) <= series_ohm, and that 1/R - 1/high(T) <= leakage_s, by
 * adding up over a fine grid of both errors of the temperature. */
static void chances(const ohm_sensor *sensor, const struct scene *scene, double series_ohm,
                    double leakage_s, double *p_series, double *p_leakage) {
  enum { STEPS = 500 };
  double half_ohm;
  ck_assert_int_eq(oc_meter_limit(&scene->meter, &scene->reading, &half_ohm), OHM_OK);
  double lowest_ohm = scene->reading.r_ohm - half_ohm;
  double weights = 0;
  *p_series = *p_leakage = 0;
  for (int i = 0; i < STEPS; i++)
    for (int j = 0; j < STEPS; j++) {
      double z = 12 * (j + 0.5) / STEPS - 6;
      double weight = exp(-z * z / 2);
      double t_c = scene->reference.t_c + scene->reference.limit_k * (2 * (i + 0.5) / STEPS - 1) +
                   scene->reference.u_k * z;
      double r_ohm = nominal(sensor, t_c);
      double below = (0.95 * r_ohm + series_ohm - lowest_ohm) / (2 * half_ohm);
      double above = 1 - (1 / (leakage_s + 1 / (1.05 * r_ohm)) - lowest_ohm) / (2 * half_ohm);
      weights += weight;
      *p_series += weight * fmin(fmax(below, 0), 1);
      *p_leakage += weight * fmin(fmax(above, 0), 1);
    }
  *p_series /= weights;
  *p_leakage /= weights;
}

START_TEST(what_could_hide_is_the_quantile_of_its_distribution)
{
  static const double levels[] = {0.8, 0.95, 0.99};
  ohm_sensor *sensor = sensor_of(flat);
  for (size_t i = 0; i < sizeof levels / sizeof levels[0]; i++)
    for (double t_c = 0; t_c <= 100; t_c += 25) {
      struct scene scene = rough(1.01 * nominal(sensor, t_c), t_c);
      scene.check.level = levels[i];
      ohm_finding finding = scene_judged(sensor, &scene);
      double p_series;
      double p_leakage;
      chances(sensor, &scene, number_in(&finding, OHM_FIELD_SERIES_OHM),
              1 / number_in(&finding, OHM_FIELD_LEAKAGE_OHM), &p_series, &p_leakage);
      /* 192 temperatures stand for all: measured, 4.4e-4 at most. */
      CHECK_NEAR(p_series, levels[i], 6e-4);
      CHECK_NEAR(p_leakage, levels[i], 6e-4);
    }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(what_could_hide_is_in_proportion_to_the_sensor)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct scene scene = rough(2480, 20);
  ohm_finding want = scene_judged(sensor, &scene);
  for (double scale = 0.1; scale < 101; scale *= 10) {
    char text[200];
    snprintf(text, sizeof text,
             "# tolerance: 5 %%\n# range: -40 to 150 C\n# model: beta\n# r0_ohm: %.17g\n"
             "# t0_c: 20\n# beta_k: 3500\n",
             2450 * scale);
    ohm_sensor *scaled = sensor_of(text);
    scene = rough(2480 * scale, 20);
    scene.meter.resolution_ohm = 0.1 * scale;
    ohm_finding finding = scene_judged(scaled, &scene);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_SERIES_OHM) / scale,
               number_in(&want, OHM_FIELD_SERIES_OHM), 1e-4);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_LEAKAGE_OHM) / scale,
               number_in(&want, OHM_FIELD_LEAKAGE_OHM), 1e-2);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_EARLY_K), number_in(&want, OHM_FIELD_EARLY_K), 1e-4);
    ck_assert_int_eq(ohm_finding_job(&finding), ohm_finding_job(&want));
    ohm_sensor_free(scaled);
  }
  ohm_sensor_free(sensor);
}
END_TEST

static void check_hides_no_less(const ohm_finding *finding, double *series_ohm,
                                double *leakage_ohm) {
  ck_assert(number_in(finding, OHM_FIELD_SERIES_OHM) >= *series_ohm * (1 - 1e-9));
  ck_assert(number_in(finding, OHM_FIELD_LEAKAGE_OHM) <= *leakage_ohm * (1 + 1e-9));
  *series_ohm = number_in(finding, OHM_FIELD_SERIES_OHM);
  *leakage_ohm = number_in(finding, OHM_FIELD_LEAKAGE_OHM);
}

START_TEST(a_larger_uncertainty_never_hides_less)
{
  ohm_sensor *sensor = sensor_of(flat);
  for (double t_c = 0; t_c <= 100; t_c += 20) {
    double series_ohm = 0;
    double leakage_ohm = INFINITY;
    for (double limit_k = 0; limit_k < 10; limit_k += 0.5) {
      struct scene scene = rough(nominal(sensor, t_c), t_c);
      scene.reference.limit_k = limit_k;
      ohm_finding finding = scene_judged(sensor, &scene);
      check_hides_no_less(&finding, &series_ohm, &leakage_ohm);
    }
    series_ohm = 0;
    leakage_ohm = INFINITY;
    for (double percent = 0; percent < 20; percent += 1) {
      struct scene scene = rough(nominal(sensor, t_c), t_c);
      scene.meter.percent = percent;
      ohm_finding finding = scene_judged(sensor, &scene);
      check_hides_no_less(&finding, &series_ohm, &leakage_ohm);
    }
  }
  ohm_sensor_free(sensor);
}
END_TEST

/* Cold the sensor's own ohms dwarf a bad contact; hot they dwarf a bad insulation. */
START_TEST(hot_readings_hide_far_less_in_series_than_cold_ones)
{
  static const char *const names[] = {"ntc-2k45-20c", "ntc-3k5-20c", "ntc-37k-20c"};
  for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
    ohm_sensor *sensor = sensor_built_in(names[i]);
    struct scene cold = rough(nominal(sensor, 20), 20);
    struct scene hot = rough(nominal(sensor, 97), 97);
    cold.check.tolerance_percent = hot.check.tolerance_percent = 10;
    ohm_finding of_cold = scene_judged(sensor, &cold);
    ohm_finding of_hot = scene_judged(sensor, &hot);
    ck_assert(number_in(&of_hot, OHM_FIELD_SERIES_OHM) <
              number_in(&of_cold, OHM_FIELD_SERIES_OHM) / 10);
    ck_assert(number_in(&of_hot, OHM_FIELD_LEAKAGE_OHM) <
              number_in(&of_cold, OHM_FIELD_LEAKAGE_OHM) / 10);
    ohm_sensor_free(sensor);
  }
}
END_TEST

/* ---- what it does to the fan ---- */

START_TEST(a_fan_starts_where_the_faulty_sensor_reads_as_a_good_one_does_at_the_setting)
{
  ohm_sensor *sensor = sensor_of(flat);
  double start_ohm = nominal(sensor, FAN_C);
  for (double t_c = 40; t_c <= 120; t_c += 10)
    for (double part = 0.97; part <= 1.031; part += 0.02) {
      ohm_finding finding = exact(sensor, part * nominal(sensor, t_c), t_c);
      double series_ohm = number_in(&finding, OHM_FIELD_SERIES_OHM);
      double leakage_s = 1 / number_in(&finding, OHM_FIELD_LEAKAGE_OHM);
      double late_c = FAN_C + number_in(&finding, OHM_FIELD_SERIES_LATE_K);
      double sound_c = FAN_C + number_in(&finding, OHM_FIELD_SERIES_SOUND_LATE_K);
      double early_c = FAN_C - number_in(&finding, OHM_FIELD_LEAKAGE_EARLY_K);
      double sound_early_c = FAN_C - number_in(&finding, OHM_FIELD_LEAKAGE_SOUND_EARLY_K);
      if (!isnan(late_c))
        CHECK_NEAR(0.95 * nominal(sensor, late_c) + series_ohm, start_ohm, 1e-5 * start_ohm);
      if (!isnan(sound_c))
        CHECK_NEAR(nominal(sensor, sound_c) + series_ohm, start_ohm, 1e-5 * start_ohm);
      CHECK_NEAR(1 / (1 / (1.05 * nominal(sensor, early_c)) + leakage_s), start_ohm,
                 1e-5 * start_ohm);
      CHECK_NEAR(1 / (1 / nominal(sensor, sound_early_c) + leakage_s), start_ohm, 1e-5 * start_ohm);
    }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_fan_never_starts_only_when_130_degrees_do_not_start_it)
{
  ohm_sensor *sensor = sensor_of(flat);
  double start_ohm = nominal(sensor, FAN_C);
  int never = 0;
  int late = 0;
  for (double t_c = -20; t_c <= 120; t_c += 1) {
    ohm_finding finding = exact(sensor, nominal(sensor, t_c), t_c);
    double series_ohm = number_in(&finding, OHM_FIELD_SERIES_OHM);
    bool at_low = 0.95 * nominal(sensor, NEVER_C) + series_ohm > start_ohm;
    bool at_nominal = nominal(sensor, NEVER_C) + series_ohm > start_ohm;
    ck_assert_int_eq(isnan(number_in(&finding, OHM_FIELD_SERIES_LATE_K)), at_low);
    ck_assert_int_eq(isnan(number_in(&finding, OHM_FIELD_SERIES_SOUND_LATE_K)), at_nominal);
    ck_assert_int_eq(isnan(number_in(&finding, OHM_FIELD_LATE_K)), at_low);
    never += at_low;
    late += !at_low;
  }
  ck_assert(never > 20 && late > 20);
  ohm_sensor_free(sensor);
}
END_TEST

/* A fan set for 97 C with a 2.45 kohm sensor: 50 ohm in series start it at a true
 * 108 C, 100 ohm at 125 C. Worked out apart from this library, to whole degrees. */
START_TEST(fifty_ohm_make_a_fan_start_at_108_and_hundred_at_125)
{
  ohm_sensor *sensor = sensor_built_in("ntc-2k45-20c");
  struct scene scene = scene_exact(0.95 * 2450 + 100, 20);
  scene.check.tolerance_percent = 5;
  ohm_finding finding = scene_judged(sensor, &scene);
  CHECK_NEAR(FAN_C + number_in(&finding, OHM_FIELD_FIFTY_LATE_K), 108, 0.5);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_SERIES_OHM), 100, 1e-4);
  CHECK_NEAR(FAN_C + number_in(&finding, OHM_FIELD_SERIES_SOUND_LATE_K), 125, 0.5);
  ohm_sensor_free(sensor);
}
END_TEST

/* ---- the verdict for the fan ---- */

START_TEST(a_hot_exact_nominal_reading_is_good_for_the_fan)
{
  ohm_sensor *sensor = sensor_of(flat);
  for (double t_c = FAN_C - 5; t_c <= FAN_C + 5; t_c += 1) {
    ohm_finding finding = exact(sensor, nominal(sensor, t_c), t_c);
    check_job(&finding, OHM_WITHIN, "conforms");
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_cold_exact_nominal_reading_leaves_the_fan_unanswered)
{
  ohm_sensor *sensor = sensor_of(flat);
  for (double t_c = 0; t_c <= 30; t_c += 5) {
    ohm_finding finding = exact(sensor, nominal(sensor, t_c), t_c);
    check_verdict(&finding, OHM_WITHIN, "conforms");
    check_job(&finding, OHM_UNDECIDED, "hidden");
  }
  ohm_sensor_free(sensor);
}
END_TEST

/* Nothing hides behind too few ohms, but the part is another one, or its beta is. */
START_TEST(a_cold_reading_below_the_band_does_not_make_the_fan_good)
{
  ohm_sensor *sensor = sensor_of(flat);
  static const double below_k[] = {10, 16.6, 16.8, 20, 40, 70};
  for (size_t i = 0; i < sizeof below_k / sizeof below_k[0]; i++) {
    double away_k = below_k[i];
    double t_c = FAN_C - away_k;
    ohm_finding finding = exact(sensor, 0.92 * nominal(sensor, t_c), t_c);
    check_verdict(&finding, OHM_OUTSIDE, "low");
    bool near = away_k < 5 / 0.3;
    check_job(&finding, near ? OHM_WITHIN : OHM_UNDECIDED, near ? "conforms" : "cold");
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_gross_error_near_the_fans_temperature_is_bad_for_it)
{
  ohm_sensor *sensor = sensor_of(flat);
  for (double t_c = FAN_C - 9; t_c <= FAN_C + 11; t_c += 5) {
    ohm_finding high = exact(sensor, 1.6 * nominal(sensor, t_c), t_c);
    check_job(&high, OHM_OUTSIDE, "late");
    ohm_finding low = exact(sensor, 0.6 * nominal(sensor, t_c), t_c);
    check_job(&low, OHM_OUTSIDE, "early");
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_coarse_measurement_leaves_the_fan_uncertain)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct scene scene = rough(nominal(sensor, FAN_C), FAN_C);
  scene.reference.limit_k = 15;
  ohm_finding finding = scene_judged(sensor, &scene);
  check_job(&finding, OHM_UNDECIDED, "uncertain");
  ohm_sensor_free(sensor);
}
END_TEST

/* At the fan's own temperature a sensor at the limit with what could hide is the
 * reading, whatever the limit. */
START_TEST(at_the_fans_temperature_the_band_of_the_part_does_not_matter)
{
  ohm_sensor *sensor = sensor_of(flat);
  for (double part = 0.95; part <= 1.051; part += 0.02) {
    double late_k = NAN;
    for (double percent = 12; percent < 30; percent += 4) {
      struct scene scene = scene_exact(part * nominal(sensor, FAN_C), FAN_C);
      scene.check.tolerance_percent = percent;
      ohm_finding finding = scene_judged(sensor, &scene);
      check_job(&finding, OHM_WITHIN, "conforms");
      if (!isnan(late_k)) /* what remains is the slope of the series resistance */
        CHECK_NEAR(number_in(&finding, OHM_FIELD_LATE_K), late_k, 0.2);
      late_k = number_in(&finding, OHM_FIELD_LATE_K);
    }
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_tighter_limit_never_makes_a_bad_job_good)
{
  ohm_sensor *sensor = sensor_of(flat);
  for (double part = 0.6; part < 1.7; part += 0.05) {
    bool good = false;
    bool bad = true;
    for (double limit_k = 0.5; limit_k < 40; limit_k += 1.5) {
      struct scene scene = rough(part * nominal(sensor, 90), 90);
      scene.check.limit_k = limit_k;
      ohm_finding finding = scene_judged(sensor, &scene);
      ck_assert(!good || ohm_finding_job(&finding) == OHM_WITHIN);
      ck_assert(bad || ohm_finding_job(&finding) != OHM_OUTSIDE);
      good = ohm_finding_job(&finding) == OHM_WITHIN;
      bad = ohm_finding_job(&finding) == OHM_OUTSIDE;
    }
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(without_a_number_that_can_be_trusted_nothing_is_said_of_the_fan)
{
  static const char *const shown[] = {"open", "OL", "OL@2k", "1", "0", "2.45", "1.5k"};
  for (size_t i = 0; i < sizeof shown / sizeof shown[0]; i++) {
    ohm_finding finding = typed("ntc-2k45-20c", shown[i], "20C", OHM_PLACE_NOT_TOLD);
    for (int field = OHM_FIELD_JOB; field <= OHM_FIELD_JOB_REASON; field++)
      ck_assert_ptr_null(ohm_finding_text(&finding, field, 0));
    for (int field = OHM_FIELD_LATE_K; field <= OHM_FIELD_FIFTY_LATE_K; field++)
      ck_assert(isnan(ohm_finding_number(&finding, field)));
    ck_assert_int_eq(ohm_finding_job(&finding), OHM_UNDECIDED);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_FAN_C), OC_ASSUMED_FAN_C, 0);
  }
}
END_TEST

START_TEST(without_a_tolerance_five_percent_are_taken_for_the_fan_and_said)
{
  ohm_sensor *sensor = sensor_of("temp_c,r_nom_ohm\n-40,48140\n20,2450\n90,244.6\n150,60\n");
  struct scene scene = scene_exact(244.6, 90);
  ohm_finding finding = scene_judged(sensor, &scene);
  check_verdict(&finding, OHM_UNDECIDED, "no_tolerance");
  CHECK_NEAR(number_in(&finding, OHM_FIELD_SERIES_OHM), 0.05 * 244.6, 1e-4);
  ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_ASSUMED, 0),
                   "sensor within 5 % (for the fan)");
  ohm_sensor_free(sensor);
}
END_TEST

int main(void) {
  int hiding = RUN_TESTS("hidden", an_exact_reading_hides_its_distance_from_the_limits,
                         an_exact_reading_beyond_a_limit_hides_nothing_on_that_side,
                         what_could_hide_is_the_quantile_of_its_distribution,
                         what_could_hide_is_in_proportion_to_the_sensor,
                         a_larger_uncertainty_never_hides_less,
                         hot_readings_hide_far_less_in_series_than_cold_ones);
  int fan = RUN_TESTS("the fan",
                      a_fan_starts_where_the_faulty_sensor_reads_as_a_good_one_does_at_the_setting,
                      a_fan_never_starts_only_when_130_degrees_do_not_start_it,
                      fifty_ohm_make_a_fan_start_at_108_and_hundred_at_125,
                      a_hot_exact_nominal_reading_is_good_for_the_fan,
                      a_cold_exact_nominal_reading_leaves_the_fan_unanswered,
                      a_cold_reading_below_the_band_does_not_make_the_fan_good,
                      a_gross_error_near_the_fans_temperature_is_bad_for_it,
                      a_coarse_measurement_leaves_the_fan_uncertain,
                      at_the_fans_temperature_the_band_of_the_part_does_not_matter,
                      a_tighter_limit_never_makes_a_bad_job_good,
                      without_a_number_that_can_be_trusted_nothing_is_said_of_the_fan,
                      without_a_tolerance_five_percent_are_taken_for_the_fan_and_said);
  return hiding | fan;
}
