/* SPDX-License-Identifier: MIT */
#include "../scene.h"
#include "../../lib/answers/loom.h"

#include <string.h>

static ohm_sensor *sensor;

/* Two resistors and what a module shows that multiplies by factor, behind series_ohm. */
struct pair {
  oc_reading readings[2];
  oc_reported reported[2];
  oc_meter meter;
  oc_pin pin;
};

static struct pair exact_pair(double first_ohm, double second_ohm, double series_ohm,
                              double factor) {
  struct pair pair = {{OC_READING_INIT, OC_READING_INIT},
                      {OC_REPORTED_INIT, OC_REPORTED_INIT},
                      OC_METER_INIT,
                      OC_PIN_INIT};
  const double fitted_ohm[] = {first_ohm, second_ohm};
  pair.meter.accuracy = pair.meter.leads = OC_EXACT;
  for (size_t i = 0; i < 2; i++) {
    pair.readings[i].r_ohm = fitted_ohm[i];
    ck_assert_int_eq(ohm_curve_temperature(ohm_sensor_curve(sensor),
                                           factor * (fitted_ohm[i] + series_ohm),
                                           &pair.reported[i].t_c),
                     OHM_OK);
    pair.reported[i].t_c -= 0.25; /* a degree cut or rounded is taken in its middle */
    pair.reported[i].accuracy = OC_EXACT;
  }
  return pair;
}

static ohm_status ask(const struct pair *pair, ohm_finding *finding) {
  return oc_loom_check(sensor, pair->readings, &pair->meter, pair->reported, &pair->pin, finding);
}

static ohm_finding found(const struct pair *pair) {
  ohm_finding finding = finding_new();
  PROVOKES(oc_loom_check, OHM_OK, ask(pair, &finding));
  return finding;
}

START_TEST(what_is_in_series_and_what_multiplies_are_told_apart)
{
  for (double series_ohm = 0; series_ohm <= 150; series_ohm += 25)
    for (double factor = 0.9; factor <= 1.11; factor += 0.05)
      for (int turned = 0; turned < 2; turned++) {
        struct pair pair = exact_pair(turned ? 1000 : 180, turned ? 180 : 1000, series_ohm, factor);
        ohm_finding finding = found(&pair);
        CHECK_NEAR(number_in(&finding, OHM_FIELD_BETWEEN_OHM), series_ohm, 1e-6);
        CHECK_NEAR(number_in(&finding, OHM_FIELD_FACTOR), factor, 1e-9);
      }
}
END_TEST

/* The derivatives, by doing it: each cause alone, moved by its limit. */
START_TEST(limits_are_carried_to_the_loom)
{
  struct pair pair = exact_pair(180, 1000, 50, 1);
  ohm_finding middle = found(&pair);
  struct pair moved = pair;
  moved.meter.accuracy = OC_STATED;
  moved.meter.resolution_ohm = 0.02; /* half a count, of each */
  ohm_finding finding = found(&moved);
  double degrees_u = number_in(&middle, OHM_FIELD_U_BETWEEN_OHM);
  double sum = 0;
  for (size_t i = 0; i < 2; i++) {
    struct pair one = pair;
    one.readings[i].r_ohm += 0.01;
    ohm_finding off = found(&one);
    double by_ohm =
        number_in(&off, OHM_FIELD_BETWEEN_OHM) - number_in(&middle, OHM_FIELD_BETWEEN_OHM);
    sum += by_ohm * by_ohm / 3;
  }
  CHECK_NEAR(number_in(&finding, OHM_FIELD_U_BETWEEN_OHM), sqrt(degrees_u * degrees_u + sum),
             1e-4 * degrees_u);
  sum = 0;
  for (size_t i = 0; i < 2; i++) {
    struct pair one = pair;
    one.reported[i].t_c += 0.0075; /* a hundredth of what a degree leaves open */
    ohm_finding off = found(&one);
    double by_ohm =
        100 * (number_in(&off, OHM_FIELD_BETWEEN_OHM) - number_in(&middle, OHM_FIELD_BETWEEN_OHM));
    sum += by_ohm * by_ohm / 3;
  }
  CHECK_NEAR(degrees_u, sqrt(sum), 2e-3 * degrees_u);
}
END_TEST

START_TEST(the_leads_move_the_loom_as_a_whole)
{
  struct pair pair = exact_pair(180, 1000, 50, 1);
  double without_u = 0;
  ohm_finding finding = found(&pair);
  without_u = number_in(&finding, OHM_FIELD_U_BETWEEN_OHM);
  pair.meter.leads = OC_STATED;
  pair.meter.lead_limit_ohm = 20;
  finding = found(&pair);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_U_BETWEEN_OHM), sqrt(without_u * without_u + 400.0 / 3),
             1e-6);
}
END_TEST

START_TEST(the_verdict_is_what_it_does_to_the_fan)
{
  static const struct {
    double series_ohm;
    ohm_verdict verdict;
    const char *reason, *says;
  } all[] = {{0, OHM_WITHIN, "conforms", "GOOD: plug and wires"},
             {60, OHM_OUTSIDE, "series", "BAD: ohms in plug or wires"},
             {22, OHM_UNDECIDED, "uncertain", "CANNOT TELL YET: too coarse"},
             {-40, OHM_UNDECIDED, "between", "fewer ohms than were fitted"}};
  for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
    struct pair pair = exact_pair(180, 1000, all[i].series_ohm, 1);
    ohm_finding finding = found(&pair);
    check_verdict(&finding, all[i].verdict, all[i].reason);
    check_has(report_of(&finding), all[i].says);
    check_has_not(report_of(&finding), "nan");
    ck_assert(strncmp(report_of(&finding), "CAUTION ", 8) == 0);
  }
}
END_TEST

START_TEST(reports_that_do_not_move_are_questioned)
{
  struct pair pair = exact_pair(180, 1000, 0, 1);
  pair.reported[1] = pair.reported[0];
  ohm_finding finding = found(&pair);
  check_verdict(&finding, OHM_UNDECIDED, "stuck");
  ck_assert(isnan(number_in(&finding, OHM_FIELD_BETWEEN_OHM)));
  check_has(report_of(&finding), "do not move the way");
}
END_TEST

START_TEST(resistors_too_near_to_each_other_are_refused)
{
  ohm_finding finding = finding_new();
  struct pair pair = exact_pair(180, 300, 0, 1);
  PROVOKES(oc_loom_check, OHM_BAD_DEFINITION, ask(&pair, &finding));
  ck_assert(!ohm_finding_text(&finding, OHM_FIELD_ABOUT, 0));
}
END_TEST

START_TEST(nothing_of_the_wrong_kind_is_solved)
{
  static const double bad[] = {NAN, INFINITY, -INFINITY, -1, 1e300};
  ohm_finding finding = finding_new();
  for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
    struct pair pair = exact_pair(180, 1000, 0, 1);
    pair.readings[i % 2].r_ohm = bad[i];
    ck_assert_int_eq(ask(&pair, &finding), OHM_BAD_ARGUMENT);
    pair = exact_pair(180, 1000, 0, 1);
    pair.reported[i % 2].limit_k = bad[i];
    ck_assert_int_eq(ask(&pair, &finding), isfinite(bad[i]) ? OHM_OUT_OF_RANGE : OHM_BAD_ARGUMENT);
    pair = exact_pair(180, 1000, 0, 1);
    pair.pin.level = bad[i];
    ck_assert_int_eq(ask(&pair, &finding), isfinite(bad[i]) ? OHM_OUT_OF_RANGE : OHM_BAD_ARGUMENT);
  }
  struct pair pair = exact_pair(180, 1000, 0, 1);
  pair.readings[0].display = OC_DISPLAY_OVER;
  PROVOKES(oc_loom_check, OHM_OUT_OF_RANGE, ask(&pair, &finding));
  pair = exact_pair(180, 1000, 0, 1);
  pair.pin.level = NAN;
  PROVOKES(oc_loom_check, OHM_BAD_ARGUMENT, ask(&pair, &finding));
  PROVOKES(oc_loom_check, OHM_NULL_ARGUMENT,
           oc_loom_check(sensor, NULL, NULL, pair.reported, NULL, &finding));
  ck_assert_int_eq(oc_loom_check(sensor, pair.readings, NULL, pair.reported, NULL, NULL),
                   OHM_NULL_ARGUMENT);
  ohm_sensor *platinum = sensor_built_in("pt1000-b");
  pair = exact_pair(180, 1000, 0, 1);
  ck_assert_int_eq(oc_loom_check(platinum, pair.readings, NULL, pair.reported, NULL, &finding),
                   OHM_OUT_OF_RANGE);
  ohm_sensor_free(platinum);
}
END_TEST

/* The status of what a bench with these readings is told. */
static ohm_status told(const char *one, const char *other) {
  ohm_error error;
  ohm_bench *bench = ohm_bench_new(NULL);
  ohm_bench_use_sensor(bench, sensor);
  ck_assert_int_eq(ohm_bench_read(bench, one, NULL, NULL), OHM_OK);
  ck_assert_int_eq(ohm_bench_read(bench, other, NULL, NULL), OHM_OK);
  ohm_answer *answer = ohm_bench_loom(bench, &error);
  ck_assert(!answer == (error.message[0] != 0));
  ohm_answer_free(answer);
  ohm_bench_free(bench);
  return (ohm_status)error.status;
}

START_TEST(a_bench_with_two_resistors_is_asked_or_told_what_is_wrong)
{
  PROVOKES(ohm_bench_loom, OHM_OK, told("187@97C", "1k@45C"));
  PROVOKES(ohm_bench_loom, OHM_BAD_DEFINITION, told("187@97C", "190@96C"));
}
END_TEST

int main(void) {
  sensor = sensor_built_in("ntc-2k45-20c");
  int result =
      RUN_TESTS("loom", what_is_in_series_and_what_multiplies_are_told_apart,
                limits_are_carried_to_the_loom, the_leads_move_the_loom_as_a_whole,
                the_verdict_is_what_it_does_to_the_fan, reports_that_do_not_move_are_questioned,
                resistors_too_near_to_each_other_are_refused, nothing_of_the_wrong_kind_is_solved,
                a_bench_with_two_resistors_is_asked_or_told_what_is_wrong);
  ohm_sensor_free(sensor);
  return result;
}
