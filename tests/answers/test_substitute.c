/* SPDX-License-Identifier: MIT */
#include "../scene.h"

#include <string.h>

#include "../../lib/ground/internal.h"
#include "../../lib/answers/substitute.h"

static ohm_sensor *sensor;

static double nominal(double t_c) {
  double r_ohm;
  ck_assert_int_eq(ohm_curve_resistance(ohm_sensor_curve(sensor), t_c, &r_ohm), OHM_OK);
  return r_ohm;
}

static oc_module through(const char *pull_up) {
  oc_module module = OC_MODULE_INIT;
  ck_assert_int_eq(oc_pull_up_read(pull_up, &module, NULL), OHM_OK);
  return module;
}

static ohm_finding single_for(const oc_substitute *substitute, const oc_module *module) {
  ohm_finding single = finding_new();
  PROVOKES(oc_substitute_find, OHM_OK,
           oc_substitute_find(sensor, module, substitute, &single, NULL));
  return single;
}

static ohm_finding pair_for(const oc_substitute *substitute, const oc_module *module) {
  ohm_finding pair = finding_new();
  ck_assert_int_eq(oc_substitute_find(sensor, module, substitute, NULL, &pair), OHM_OK);
  return pair;
}

static double value_of(const ohm_finding *finding) {
  double first = number_in(finding, OHM_FIELD_FIRST_OHM);
  double second = number_in(finding, OHM_FIELD_SECOND_OHM);
  const char *joined = ohm_finding_text(finding, OHM_FIELD_JOINED, 0);
  if (strcmp(joined, "series") == 0)
    return first + second;
  if (strcmp(joined, "parallel") == 0)
    return first * second / (first + second);
  ck_assert(isnan(second));
  return first;
}

/* ---- what is found ---- */

START_TEST(a_single_one_is_the_nearest_of_its_series)
{
  for (int series = OHM_SERIES_E12; series <= OHM_SERIES_E96; series++)
    for (double aim_c = -20; aim_c <= 120; aim_c += 7) {
      oc_substitute substitute = OC_SUBSTITUTE_INIT;
      substitute.aim_c = aim_c == 0 ? 1 : aim_c;
      substitute.series = series;
      ohm_finding single = single_for(&substitute, NULL);
      double nearest_ohm;
      ck_assert_int_eq(ohm_preferred_nearest(nominal(substitute.aim_c), series, &nearest_ohm),
                       OHM_OK);
      ck_assert(number_in(&single, OHM_FIELD_R_OHM) == nearest_ohm);
      ck_assert(value_of(&single) == nearest_ohm);
    }
}
END_TEST

START_TEST(a_pair_comes_nearer_than_the_single_one)
{
  for (int series = OHM_SERIES_E12; series <= OHM_SERIES_E96; series++)
    for (double aim_c = 61; aim_c <= 120; aim_c += 19) {
      oc_substitute substitute = OC_SUBSTITUTE_INIT;
      substitute.aim_c = aim_c;
      substitute.series = series;
      ohm_finding single = single_for(&substitute, NULL);
      ohm_finding pair = pair_for(&substitute, NULL);
      CHECK_NEAR(value_of(&pair), number_in(&pair, OHM_FIELD_R_OHM), 1e-9 * value_of(&pair));
      ck_assert(fabs(log(value_of(&pair) / nominal(aim_c))) <=
                fabs(log(value_of(&single) / nominal(aim_c))));
      ck_assert(fabs(number_in(&pair, OHM_FIELD_T_C) - aim_c) < 0.5);
    }
}
END_TEST

START_TEST(a_drawer_is_searched_and_no_value_is_used_twice)
{
  static const double drawer_ohm[] = {1000, 100, 330, 220};
  oc_substitute substitute = OC_SUBSTITUTE_INIT;
  substitute.drawer_ohm = drawer_ohm;
  substitute.drawer_count = 4;
  for (double aim_c = 20; aim_c <= 120; aim_c += 3) {
    substitute.aim_c = aim_c;
    ohm_finding single = single_for(&substitute, NULL);
    ohm_finding pair = pair_for(&substitute, NULL);
    double best = INFINITY;
    double best_single = INFINITY;
    for (size_t i = 0; i < 4; i++) {
      best_single = fmin(best_single, fabs(log(drawer_ohm[i] / nominal(aim_c))));
      for (size_t j = 0; j < i; j++) {
        double sum_ohm = drawer_ohm[i] + drawer_ohm[j];
        best = fmin(best, fabs(log(sum_ohm / nominal(aim_c))));
        best = fmin(best, fabs(log(drawer_ohm[i] * drawer_ohm[j] / sum_ohm / nominal(aim_c))));
      }
    }
    CHECK_NEAR(fabs(log(value_of(&single) / nominal(aim_c))), best_single, 1e-9);
    CHECK_NEAR(fabs(log(value_of(&pair) / nominal(aim_c))), best, 1e-9);
    ck_assert(number_in(&pair, OHM_FIELD_FIRST_OHM) != number_in(&pair, OHM_FIELD_SECOND_OHM));
  }
  substitute.drawer_count = 1;
  ohm_finding pair = pair_for(&substitute, NULL);
  ck_assert(!ohm_finding_text(&pair, OHM_FIELD_ABOUT, 0));
}
END_TEST

START_TEST(without_an_aim_it_is_above_the_fan)
{
  oc_substitute substitute = OC_SUBSTITUTE_INIT;
  ohm_finding single = single_for(NULL, NULL);
  CHECK_NEAR(number_in(&single, OHM_FIELD_AIM_C), 105, 1e-12);
  substitute.fan_c = 90;
  single = single_for(&substitute, NULL);
  CHECK_NEAR(number_in(&single, OHM_FIELD_AIM_C), 98, 1e-12);
}
END_TEST

/* ---- what the module makes of it ---- */

START_TEST(the_tolerance_is_carried_to_both_sides)
{
  oc_substitute substitute = OC_SUBSTITUTE_INIT;
  substitute.tolerance_percent = 5;
  ohm_finding single = single_for(&substitute, NULL);
  double r_ohm = number_in(&single, OHM_FIELD_R_OHM);
  CHECK_NEAR(nominal(number_in(&single, OHM_FIELD_SEEN_LOW_C)), 1.05 * r_ohm, 1e-6);
  CHECK_NEAR(nominal(number_in(&single, OHM_FIELD_SEEN_HIGH_C)), 0.95 * r_ohm, 1e-6);
  CHECK_NEAR(nominal(number_in(&single, OHM_FIELD_T_C)), r_ohm, 1e-6);
}
END_TEST

START_TEST(volts_and_power_follow_from_the_pull_up)
{
  oc_module module = through("1k");
  oc_substitute substitute = OC_SUBSTITUTE_INIT;
  ohm_finding single = single_for(&substitute, &module);
  double r_ohm = number_in(&single, OHM_FIELD_R_OHM);
  double v_volt = number_in(&single, OHM_FIELD_V_VOLT);
  CHECK_NEAR(v_volt, 5 * r_ohm / (1000 + r_ohm), 1e-9);
  CHECK_NEAR(number_in(&single, OHM_FIELD_POWER_MW), 1e3 * v_volt * v_volt / r_ohm, 1e-9);
  ohm_finding pair = pair_for(&substitute, &module);
  double pair_volt = number_in(&pair, OHM_FIELD_V_VOLT);
  ck_assert_str_eq(ohm_finding_text(&pair, OHM_FIELD_JOINED, 0), "parallel");
  CHECK_NEAR(number_in(&pair, OHM_FIELD_POWER_MW),
             1e3 * pair_volt * pair_volt / number_in(&pair, OHM_FIELD_SECOND_OHM), 1e-9);
  ck_assert(number_in(&pair, OHM_FIELD_SECOND_OHM) < number_in(&pair, OHM_FIELD_FIRST_OHM));
  /* Nothing known: no less than through any pull-up printed. */
  ohm_finding unknown = single_for(&substitute, NULL);
  ck_assert(isnan(number_in(&unknown, OHM_FIELD_V_VOLT)));
  ck_assert(number_in(&unknown, OHM_FIELD_POWER_MW) > number_in(&single, OHM_FIELD_POWER_MW));
}
END_TEST

START_TEST(a_pair_in_a_row_shares_its_power)
{
  static const double drawer_ohm[] = {100, 68};
  oc_module module = through("1k");
  oc_substitute substitute = OC_SUBSTITUTE_INIT;
  substitute.drawer_ohm = drawer_ohm;
  substitute.drawer_count = 2;
  ohm_finding pair = pair_for(&substitute, &module);
  ck_assert_str_eq(ohm_finding_text(&pair, OHM_FIELD_JOINED, 0), "series");
  double current_a = 5.0 / 1168;
  CHECK_NEAR(number_in(&pair, OHM_FIELD_POWER_MW), 1e3 * current_a * current_a * 100, 1e-9);
}
END_TEST

START_TEST(two_pull_ups_are_met_by_the_resistance)
{
  oc_module module = through("4k,348@40C");
  oc_substitute substitute = OC_SUBSTITUTE_INIT;
  ohm_finding hot = single_for(&substitute, &module);
  CHECK_NEAR(number_in(&hot, OHM_FIELD_PULL_UP_OHM), 348, 1e-9);
  substitute.aim_c = 20;
  ohm_finding cold = single_for(&substitute, &module);
  CHECK_NEAR(number_in(&cold, OHM_FIELD_PULL_UP_OHM), 4000, 1e-9);
}
END_TEST

START_TEST(what_asks_for_no_fan_or_is_no_sensor_is_told)
{
  static const struct {
    const char *pull_up;
    double aim_c, percent;
    ohm_verdict verdict;
    const char *reason, *says;
  } all[] = {{NULL, 105, 0, OHM_WITHIN, "conforms", "ASKS FOR THE FAN"},
             {"1k", 105, 0, OHM_WITHIN, "conforms", "ASKS FOR THE FAN"},
             {NULL, 60, 0, OHM_OUTSIDE, "cold", "NO FAN: it asks for none"},
             {NULL, 102, 20, OHM_UNDECIDED, "cold", "it may not ask"},
             {NULL, -36, 1, OHM_OUTSIDE, "open", "takes it for an open sensor"},
             {NULL, -31, 20, OHM_UNDECIDED, "open", "may take it for an open sensor"},
             {"20k", 105, 0, OHM_OUTSIDE, "shorted", "takes it for a short"},
             {"8k2", 105, 10, OHM_UNDECIDED, "shorted", "may take it for a short"}};
  for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
    oc_module module = through(all[i].pull_up ? all[i].pull_up : "1k");
    oc_substitute substitute = OC_SUBSTITUTE_INIT;
    substitute.aim_c = all[i].aim_c;
    substitute.tolerance_percent = all[i].percent;
    substitute.series = OHM_SERIES_E24;
    ohm_finding single = single_for(&substitute, all[i].pull_up ? &module : NULL);
    check_verdict(&single, all[i].verdict, all[i].reason);
    check_has(report_of(&single), all[i].says);
    check_has_not(report_of(&single), "nan");
  }
}
END_TEST

/* "220 ohm instead of the sensor should read as a hot engine", Rover 820 sensor sheet; a
 * thermostat holds 82 to 90 C, Saturn S 2000, and the lamp is lit at 118 C, Toyota. */
START_TEST(the_printed_220_ohm_read_as_a_hot_engine)
{
  static const double printed_ohm = 220;
  oc_substitute substitute = OC_SUBSTITUTE_INIT;
  substitute.drawer_ohm = &printed_ohm;
  substitute.drawer_count = 1;
  ohm_finding single = single_for(&substitute, NULL);
  ck_assert(oc_inside(82, number_in(&single, OHM_FIELD_SEEN_LOW_C), 118));
  ck_assert(oc_inside(82, number_in(&single, OHM_FIELD_SEEN_HIGH_C), 118));
}
END_TEST

START_TEST(cautions_come_first_and_lines_keep_to_their_columns)
{
  oc_module module = through("1k");
  for (int known = 0; known < 2; known++) {
    ohm_finding all[] = {single_for(NULL, known ? &module : NULL),
                         pair_for(NULL, known ? &module : NULL)};
    for (size_t i = 0; i < 2; i++) {
      const char *text = report_of(&all[i]);
      ck_assert(strncmp(text, "CAUTION ", 8) == 0);
      check_has(text, "Key off to fit it");
      check_has(text, "Blades clear");
      check_has(text, "one minute at most");
      check_has(text, "matching terminal");
      ck_assert(strstr(text, "pushed in") < strstr(text, "Fit  "));
      size_t lines = 0;
      for (const char *line = text; *line; line = strchr(line, '\n') + 1, lines++)
        ck_assert_msg(strcspn(line, "\n") <= 80, "%s", line);
      ck_assert_msg(lines <= 12, "%s", text);
    }
  }
}
END_TEST

/* ---- what was asked ---- */

START_TEST(nothing_of_the_wrong_kind_is_looked_for)
{
  static const double bad[] = {NAN, INFINITY, -INFINITY, -1, 1e300};
  ohm_finding single = finding_new();
  ohm_finding pair = finding_new();
  for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++)
    for (size_t k = 0; k < 3; k++) {
      oc_substitute substitute = OC_SUBSTITUTE_INIT;
      double *const members[] = {&substitute.aim_c, &substitute.fan_c,
                                 &substitute.tolerance_percent};
      *members[k] = k == 0 && bad[i] == -1 ? -100 : bad[i];
      ohm_status status = oc_substitute_find(sensor, NULL, &substitute, &single, &pair);
      ck_assert(status == (isfinite(bad[i]) ? OHM_OUT_OF_RANGE : OHM_BAD_ARGUMENT));
      ck_assert(!ohm_finding_text(&single, OHM_FIELD_ABOUT, 0));
      ck_assert(!ohm_finding_text(&pair, OHM_FIELD_ABOUT, 0));
    }
  oc_substitute substitute = OC_SUBSTITUTE_INIT;
  substitute.series = 3;
  PROVOKES(oc_substitute_find, OHM_BAD_ARGUMENT,
           oc_substitute_find(sensor, NULL, &substitute, &single, NULL));
  substitute = (oc_substitute)OC_SUBSTITUTE_INIT;
  substitute.aim_c = 900;
  PROVOKES(oc_substitute_find, OHM_OUT_OF_RANGE,
           oc_substitute_find(sensor, NULL, &substitute, &single, NULL));
  double drawer_ohm[65];
  for (size_t i = 0; i < 65; i++)
    drawer_ohm[i] = 100;
  substitute = (oc_substitute)OC_SUBSTITUTE_INIT;
  substitute.drawer_ohm = drawer_ohm;
  substitute.drawer_count = 65;
  PROVOKES(oc_substitute_find, OHM_TOO_LARGE,
           oc_substitute_find(sensor, NULL, &substitute, &single, NULL));
  substitute.drawer_count = 64;
  ck_assert_int_eq(oc_substitute_find(sensor, NULL, &substitute, &single, &pair), OHM_OK);
  drawer_ohm[63] = 0;
  ck_assert_int_eq(oc_substitute_find(sensor, NULL, &substitute, &single, NULL), OHM_BAD_ARGUMENT);
  substitute.drawer_ohm = NULL;
  PROVOKES(oc_substitute_find, OHM_NULL_ARGUMENT,
           oc_substitute_find(sensor, NULL, &substitute, &single, NULL));
  ck_assert_int_eq(oc_substitute_find(NULL, NULL, NULL, &single, NULL), OHM_NULL_ARGUMENT);
  ck_assert_int_eq(oc_substitute_find(sensor, NULL, NULL, NULL, NULL), OHM_NULL_ARGUMENT);
}
END_TEST

int main(void) {
  sensor = sensor_built_in("ntc-2k45-20c");
  int result = RUN_TESTS(
      "substitute", a_single_one_is_the_nearest_of_its_series,
      a_pair_comes_nearer_than_the_single_one, a_drawer_is_searched_and_no_value_is_used_twice,
      without_an_aim_it_is_above_the_fan, the_tolerance_is_carried_to_both_sides,
      volts_and_power_follow_from_the_pull_up, a_pair_in_a_row_shares_its_power,
      two_pull_ups_are_met_by_the_resistance, what_asks_for_no_fan_or_is_no_sensor_is_told,
      the_printed_220_ohm_read_as_a_hot_engine, cautions_come_first_and_lines_keep_to_their_columns,
      nothing_of_the_wrong_kind_is_looked_for);
  ohm_sensor_free(sensor);
  return result;
}
