/* SPDX-License-Identifier: MIT */
#include "../scene.h"
#include "../../lib/answers/bath.h"

#include <string.h>

enum { MOST = 16 };

static const char flat[] = "# tolerance: 5 %\n# range: -40 to 150 C\n# model: beta\n"
                           "# r0_ohm: 2450\n# t0_c: 20\n# beta_k: 3500\n";

/* Readings of one meter, judged together. */
struct bench {
  oc_reading readings[MOST + 1];
  oc_reference references[MOST + 1];
  size_t count;
  oc_meter meter;
  oc_check check;
  ohm_finding findings[MOST + 1];
};

static struct bench bench_of(const struct scene *scenes, size_t count) {
  struct bench bench = {.count = count, .meter = scenes[0].meter, .check = scenes[0].check};
  findings_begin(bench.findings, MOST + 1);
  for (size_t i = 0; i < count; i++) {
    bench.readings[i] = scenes[i].reading;
    bench.references[i] = scenes[i].reference;
  }
  return bench;
}

static ohm_status run(const ohm_sensor *sensor, struct bench *bench, ohm_finding *finding) {
  return oc_bath_check_several(sensor, bench->readings, bench->references, bench->count,
                               &bench->meter, &bench->check, bench->findings, finding);
}

static ohm_finding together(const ohm_sensor *sensor, struct bench *bench) {
  ohm_finding finding = finding_new();
  PROVOKES(oc_bath_check_several, OHM_OK, run(sensor, bench, &finding));
  return finding;
}

/* ---- bad values ---- */

static void check_absent(const ohm_finding *finding) {
  for (int i = 0; i < OC_FIELDS; i++) {
    ck_assert(isnan(ohm_finding_number(finding, i)));
    ck_assert_ptr_null(ohm_finding_text(finding, i, 0));
  }
}

START_TEST(every_pointer_but_meter_and_check_is_required)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct scene scene = scene_exact(2450, 20);
  struct bench bench = bench_of(&scene, 1);
  ohm_finding finding;
  findings_stale(&finding, 1);
  PROVOKES(oc_bath_check_several, OHM_NULL_ARGUMENT, run(NULL, &bench, &finding));
  check_absent(&finding);
  PROVOKES(oc_bath_check_several, OHM_NULL_ARGUMENT,
           oc_bath_check_several(sensor, NULL, bench.references, 1, NULL, NULL, bench.findings,
                                 &finding));
  PROVOKES(
      oc_bath_check_several, OHM_NULL_ARGUMENT,
      oc_bath_check_several(sensor, bench.readings, NULL, 1, NULL, NULL, bench.findings, &finding));
  PROVOKES(oc_bath_check_several, OHM_NULL_ARGUMENT,
           oc_bath_check_several(sensor, bench.readings, bench.references, 1, NULL, NULL, NULL,
                                 &finding));
  PROVOKES(oc_bath_check_several, OHM_NULL_ARGUMENT, run(sensor, &bench, NULL));
  PROVOKES(oc_bath_check_several, OHM_OK,
           oc_bath_check_several(sensor, bench.readings, bench.references, 1, NULL, NULL,
                                 bench.findings, &finding));
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(one_to_16_readings_are_judged_together)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct scene scenes[MOST + 1];
  for (size_t i = 0; i <= MOST; i++)
    scenes[i] = scene_exact(2450, 20);
  struct bench bench = bench_of(scenes, MOST + 1);
  ohm_finding finding = finding_new();
  PROVOKES(oc_bath_check_several, OHM_TOO_LARGE, run(sensor, &bench, &finding));
  check_absent(&finding);
  bench.count = 0;
  PROVOKES(oc_bath_check_several, OHM_BAD_ARGUMENT, run(sensor, &bench, &finding));
  check_absent(&finding);
  for (bench.count = 1; bench.count <= MOST; bench.count++) {
    finding = together(sensor, &bench);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_READINGS), (double)bench.count, 0);
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(one_reading_that_fails_fails_them_all)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct scene scenes[] = {scene_exact(2450, 20), scene_exact(2450, 20), scene_exact(2450, 20)};
  for (size_t i = 0; i < 3; i++) {
    struct bench bench = bench_of(scenes, 3);
    findings_stale(bench.findings, 3);
    ohm_finding finding = finding_new();
    bench.readings[i].r_ohm = NAN;
    PROVOKES(oc_bath_check_several, OHM_BAD_ARGUMENT, run(sensor, &bench, &finding));
    check_absent(&finding);
    for (size_t j = 0; j < 3; j++)
      check_absent(&bench.findings[j]);
    bench.readings[i].r_ohm = 2450;
    bench.references[i].t_c = 1001;
    PROVOKES(oc_bath_check_several, OHM_OUT_OF_RANGE, run(sensor, &bench, &finding));
    check_absent(&finding);
    bench.references[i].t_c = 20;
    bench.check.band = "nobody";
    PROVOKES(oc_bath_check_several, OHM_NOT_FOUND, run(sensor, &bench, &finding));
    check_absent(&finding);
  }
  ohm_sensor_free(sensor);
}
END_TEST

/* ---- repeats ---- */

static struct scene repeat(double r_ohm, double resolution_ohm) {
  struct scene scene = scene_exact(r_ohm, 20);
  scene.reading.resolution_ohm = resolution_ohm;
  return scene;
}

START_TEST(repeats_that_still_differ_by_more_than_a_count_are_moving)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct scene scenes[] = {repeat(2700, 10), repeat(2500, 10), repeat(2450, 10)};
  struct bench bench = bench_of(scenes, 3);
  ohm_finding finding = together(sensor, &bench);
  check_verdict(&finding, OHM_UNDECIDED, "moving");
  CHECK_NEAR(number_in(&finding, OHM_FIELD_MOVED_OHM), 50, 1e-9);
  const char *text = report_of(&finding);
  check_has(text, "CANNOT TELL YET: still moving, by 50.0 ohm between the last two");
  check_has(text, "wait until it stands still, then once more");
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(settled_repeats_are_as_the_last_alone)
{
  ohm_sensor *sensor = sensor_of(flat);
  for (double r_ohm = 2440; r_ohm <= 2460; r_ohm += 10) {
    struct scene scenes[] = {repeat(3000, 10), repeat(2450, 10), repeat(r_ohm, 10)};
    struct bench bench = bench_of(scenes, 3);
    ohm_finding finding = together(sensor, &bench);
    ohm_finding last = scene_judged(sensor, &scenes[2]);
    ck_assert(isnan(number_in(&finding, OHM_FIELD_MOVED_OHM)));
    CHECK_NEAR(number_in(&finding, OHM_FIELD_READINGS), 3, 0);
    for (int field = 0; field < OC_FIELDS; field++) {
      double want = ohm_finding_number(&last, field);
      const char *text = ohm_finding_text(&last, field, 0);
      if (field != OHM_FIELD_READINGS && !isnan(want))
        CHECK_NEAR(ohm_finding_number(&finding, field), want, 0);
      if (text)
        ck_assert_str_eq(ohm_finding_text(&finding, field, 0), text);
    }
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(the_reading_of_another_bath_is_no_repeat)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct scene scenes[] = {scene_exact(2450, 20), scene_exact(1658, 30)};
  struct bench bench = bench_of(scenes, 2);
  ohm_finding finding = together(sensor, &bench);
  ck_assert(isnan(number_in(&finding, OHM_FIELD_MOVED_OHM)));
  ohm_sensor_free(sensor);
}
END_TEST

/* ---- several temperatures ---- */

/* Sums ask millions of times, and libcheck notes each assertion. */
static double nominal(const ohm_sensor *sensor, double t_c) {
  double r_ohm;
  if (ohm_curve_resistance(ohm_sensor_curve(sensor), t_c, &r_ohm) != OHM_OK)
    ck_abort_msg("no resistance at %g C", t_c);
  return r_ohm;
}

/* One meter and one thermometer, both with a limit that all readings share. */
static struct scene shared(const ohm_sensor *sensor, double part, double t_c) {
  struct scene scene = scene_exact(part * nominal(sensor, t_c), t_c);
  scene.meter.accuracy = OC_STATED;
  scene.meter.percent = 1;
  scene.meter.counts = 3;
  scene.meter.resolution_ohm = 1;
  scene.reference.accuracy = OC_STATED;
  scene.reference.limit_k = 1;
  return scene;
}

/* The steps of the library's sum over the common causes show by up to this. */
static const double STEPS_P = 0.004;

START_TEST(all_within_is_no_likelier_than_either_is_not_beyond)
{
  ohm_sensor *sensor = sensor_of(flat);
  for (double first = 0.94; first <= 1.06; first += 0.015)
    for (double second = 0.94; second <= 1.06; second += 0.015) {
      struct scene scenes[] = {shared(sensor, first, 20), shared(sensor, second, 80)};
      struct bench bench = bench_of(scenes, 2);
      ohm_finding finding = together(sensor, &bench);
      double p = number_in(&finding, OHM_FIELD_P_WITHIN);
      double low = number_in(&finding, OHM_FIELD_P_LOW);
      double high = number_in(&finding, OHM_FIELD_P_HIGH);
      ck_assert(p <= 1 - fmax(low, high) + STEPS_P);
      ck_assert(p >= 1 - 2 * (low + high) - STEPS_P);
    }
  ohm_sensor_free(sensor);
}
END_TEST

/* The same readings by the errors as declared, drawn anew: of places on a fine grid, each
 * case of the common errors weighs by how well all that is left goes with it. */
static double within_by_grid(const ohm_sensor *sensor, const struct scene *scenes) {
  enum { STEPS = 41, PLACES = 201 };
  const double half = log(1.05 / 0.95) / 2;
  const double scatter = 0.005;
  double all = 0;
  double within = 0;
  for (int g = 0; g < STEPS; g++)
    for (int t = 0; t < STEPS; t++)
      for (int z = 0; z < PLACES; z++) {
        double gain = 0.01 * (2 * (g + 0.5) / STEPS - 1);
        double off_k = scenes[0].reference.limit_k * (2 * (t + 0.5) / STEPS - 1);
        double place = 4 * (2 * (z + 0.5) / PLACES - 1);
        double density = 1;
        double inside = 1;
        for (int i = 0; i < 2; i++) {
          double r_ohm = scenes[i].reading.r_ohm;
          double middle =
              log(nominal(sensor, scenes[i].reference.t_c + off_k)) + log(1.05 * 0.95) / 2;
          double counts = sqrt(3 * (3 + 2 * 0.01 * r_ohm) / 3) / r_ohm;
          double off = log(r_ohm) - gain - middle;
          double variance = scatter * scatter + counts * counts;
          double beside = off - place * half;
          /* What the part itself is beside its place, and what of that stays open. */
          double own = place * half + beside * scatter * scatter / variance;
          double open = scatter * counts / sqrt(variance);
          density *= exp(-beside * beside / variance / 2);
          inside *=
              0.5 * (erf((half - own) / open / sqrt(2)) - erf((-half - own) / open / sqrt(2)));
        }
        all += density;
        within += density * inside;
      }
  return within / all;
}

START_TEST(causes_in_common_are_counted_once)
{
  ohm_sensor *sensor = sensor_of(flat);
  for (double first = 0.96; first <= 1.05; first += 0.03)
    for (double second = first - 0.02; second <= first + 0.03; second += 0.02) {
      struct scene scenes[] = {shared(sensor, first, 20), shared(sensor, second, 80)};
      struct bench bench = bench_of(scenes, 2);
      ohm_finding finding = together(sensor, &bench);
      CHECK_NEAR(number_in(&finding, OHM_FIELD_P_WITHIN), within_by_grid(sensor, scenes), 0.01);
    }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(readings_that_agree_make_a_part_surer_and_none_makes_it_worse)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct scene scenes[] = {shared(sensor, 1.06, 20), shared(sensor, 1.06, 50),
                           shared(sensor, 1.06, 80)};
  double before = 0;
  for (size_t count = 2; count <= 3; count++) {
    struct bench bench = bench_of(scenes, count);
    ohm_finding finding = together(sensor, &bench);
    double high = number_in(&finding, OHM_FIELD_P_HIGH);
    ck_assert_double_ge(high, before - 0.02);
    before = high;
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_fault_at_one_temperature_alone_is_found)
{
  ohm_sensor *sensor = sensor_of(flat);
  for (int bad = 0; bad < 3; bad++)
    for (int high = 0; high < 2; high++) {
      double parts[] = {1, 1, 1};
      parts[bad] = high ? 1.15 : 0.85;
      struct scene scenes[] = {shared(sensor, parts[0], 0), shared(sensor, parts[1], 40),
                               shared(sensor, parts[2], 90)};
      struct bench bench = bench_of(scenes, 3);
      ohm_finding finding = together(sensor, &bench);
      check_verdict(&finding, OHM_OUTSIDE, high ? "high" : "low");
    }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(good_readings_everywhere_are_good)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct scene scenes[] = {shared(sensor, 1, 0), shared(sensor, 1, 40), shared(sensor, 1, 90)};
  for (int i = 0; i < 3; i++)
    scenes[i].reference.limit_k = 0.5;
  scenes[0].meter.resolution_ohm = 0.1;
  struct bench bench = bench_of(scenes, 3);
  ohm_finding finding = together(sensor, &bench);
  check_verdict(&finding, OHM_WITHIN, "conforms");
  check_has(report_of(&finding), "GOOD at these temperatures");
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(the_order_of_the_readings_does_not_matter)
{
  static const int orders[][3] = {{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}};
  ohm_sensor *sensor = sensor_of(flat);
  const struct scene scenes[] = {shared(sensor, 1.03, 0), shared(sensor, 0.99, 40),
                                 shared(sensor, 0.97, 90)};
  double p[3] = {NAN, NAN, NAN};
  int verdict = -1;
  int job = -1;
  for (size_t i = 0; i < sizeof orders / sizeof orders[0]; i++) {
    struct scene turned[3];
    for (int j = 0; j < 3; j++)
      turned[j] = scenes[orders[i][j]];
    struct bench bench = bench_of(turned, 3);
    ohm_finding finding = together(sensor, &bench);
    for (int j = 0; j < 3; j++) {
      double now = ohm_finding_number(&finding, OHM_FIELD_P_LOW + j);
      if (i > 0)
        CHECK_NEAR(now, p[j], 1e-12);
      p[j] = now;
    }
    if (i > 0) {
      ck_assert_int_eq(ohm_finding_verdict(&finding), verdict);
      ck_assert_int_eq(ohm_finding_job(&finding), job);
    }
    verdict = (int)ohm_finding_verdict(&finding);
    job = (int)ohm_finding_job(&finding);
  }
  ohm_sensor_free(sensor);
}
END_TEST

/* ---- displays without a number ---- */

START_TEST(a_display_without_a_number_speaks_for_all)
{
  static const struct {
    const char *shown;
    ohm_verdict verdict;
    const char *reason;
  } displays[] = {{"open", OHM_OUTSIDE, "open"},
                  {"OL", OHM_UNDECIDED, "over_range"},
                  {"1", OHM_UNDECIDED, "lone_one"},
                  {"0", OHM_OUTSIDE, "shorted"}};
  ohm_sensor *sensor = sensor_of(flat);
  for (size_t i = 0; i < sizeof displays / sizeof displays[0]; i++)
    for (int at = 0; at < 3; at++) {
      struct scene scenes[] = {shared(sensor, 1, 0), shared(sensor, 1, 40), shared(sensor, 1, 90)};
      ck_assert_int_eq(oc_reading_read(displays[i].shown, &scenes[at].reading, NULL), OHM_OK);
      struct bench bench = bench_of(scenes, 3);
      ohm_finding finding = together(sensor, &bench);
      check_verdict(&finding, displays[i].verdict, displays[i].reason);
    }
  ohm_sensor_free(sensor);
}
END_TEST

/* ---- the fan ---- */

START_TEST(the_hot_reading_answers_for_the_fan)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct scene cold = shared(sensor, 1, 20);
  struct scene hot = shared(sensor, 1, 97);
  hot.meter.resolution_ohm = cold.meter.resolution_ohm = 0.1;
  ohm_finding of_cold = scene_judged(sensor, &cold);
  ohm_finding of_hot = scene_judged(sensor, &hot);
  check_job(&of_cold, OHM_UNDECIDED, "hidden");
  check_job(&of_hot, OHM_WITHIN, "conforms");
  for (int turned = 0; turned < 2; turned++) {
    struct scene scenes[] = {turned ? hot : cold, turned ? cold : hot};
    struct bench bench = bench_of(scenes, 2);
    ohm_finding finding = together(sensor, &bench);
    check_job(&finding, OHM_WITHIN, "conforms");
    CHECK_NEAR(number_in(&finding, OHM_FIELD_AT_C), 97, 0);
    ck_assert(number_in(&finding, OHM_FIELD_SERIES_OHM) <
              number_in(&of_cold, OHM_FIELD_SERIES_OHM) / 10);
    /* Two were asked, and either might have missed. */
    ck_assert(number_in(&finding, OHM_FIELD_SERIES_OHM) >=
              number_in(&of_hot, OHM_FIELD_SERIES_OHM));
  }
  ohm_sensor_free(sensor);
}
END_TEST

/* Of the 2.74 k sensor limits are printed at 20 C and above. */
START_TEST(readings_for_which_no_limits_are_printed_do_not_keep_the_others_from_judging)
{
  ohm_sensor *sensor = sensor_built_in("ntc-2k74-20c");
  for (int bad = 0; bad < 2; bad++) {
    struct scene scenes[] = {scene_exact(7.5e3, 0), scene_exact(bad ? 1.9e3 : 2.74e3, 20),
                             scene_exact(bad ? 450 : 280, 80)};
    struct bench bench = bench_of(scenes, 3);
    ohm_finding finding = together(sensor, &bench);
    ck_assert_int_eq(ohm_finding_verdict(&finding), bad ? OHM_OUTSIDE : OHM_WITHIN);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_UNLIMITED), 1, 0);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_READINGS), 3, 0);
    check_has(report_of(&finding), bad ? "BAD at" : "GOOD where limits are printed");
  }
  struct scene shorted[] = {scene_exact(0.1, 10), scene_exact(2.74e3, 20)};
  struct bench open = bench_of(shorted, 2);
  ohm_finding one = together(sensor, &open);
  check_verdict(&one, OHM_OUTSIDE, "shorted");
  struct scene outside[] = {scene_exact(9e3, 0), scene_exact(7e3, 5)};
  struct bench none = bench_of(outside, 2);
  ohm_finding finding = together(sensor, &none);
  check_verdict(&finding, OHM_UNDECIDED, "outside_band");
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(of_two_readings_at_one_temperature_the_one_that_tells_is_shown)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct scene scenes[] = {scene_exact(nominal(sensor, 90), 90), scene_exact(2450, 20),
                           scene_exact(0.9 * nominal(sensor, 90), 90)};
  struct bench bench = bench_of(scenes, 3);
  ohm_finding finding = together(sensor, &bench);
  check_verdict(&finding, OHM_OUTSIDE, "low");
  CHECK_NEAR(number_in(&finding, OHM_FIELD_BEYOND_AT_C), 90, 0);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_R_OHM), 0.9 * nominal(sensor, 90), 1e-9);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_READINGS), 3, 0);
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(of_two_readings_as_near_the_fan_the_one_that_promises_less_answers)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct scene good = scene_exact(nominal(sensor, 97), 97);
  struct scene late = scene_exact(1.6 * nominal(sensor, 97), 97);
  struct scene between = scene_exact(2450, 20);
  for (int turned = 0; turned < 2; turned++) {
    struct scene scenes[] = {turned ? late : good, between, turned ? good : late};
    struct bench bench = bench_of(scenes, 3);
    ohm_finding finding = together(sensor, &bench);
    check_job(&finding, OHM_OUTSIDE, "late");
  }
  ohm_sensor_free(sensor);
}
END_TEST

int main(void) {
  int bad =
      RUN_TESTS("bad values of several", every_pointer_but_meter_and_check_is_required,
                one_to_16_readings_are_judged_together, one_reading_that_fails_fails_them_all);
  int good = RUN_TESTS(
      "several", repeats_that_still_differ_by_more_than_a_count_are_moving,
      settled_repeats_are_as_the_last_alone, the_reading_of_another_bath_is_no_repeat,
      all_within_is_no_likelier_than_either_is_not_beyond, causes_in_common_are_counted_once,
      readings_that_agree_make_a_part_surer_and_none_makes_it_worse,
      a_fault_at_one_temperature_alone_is_found, good_readings_everywhere_are_good,
      the_order_of_the_readings_does_not_matter, a_display_without_a_number_speaks_for_all,
      the_hot_reading_answers_for_the_fan,
      readings_for_which_no_limits_are_printed_do_not_keep_the_others_from_judging,
      of_two_readings_at_one_temperature_the_one_that_tells_is_shown,
      of_two_readings_as_near_the_fan_the_one_that_promises_less_answers);
  return bad | good;
}
