/* SPDX-License-Identifier: MIT */
/* What is held against here, the command prints. */
#include "../scene.h"

#include <string.h>

#include "../../lib/answers/bath.h"
#include "../../lib/answers/explain.h"
#include "../../lib/answers/identify.h"
#include "../../lib/answers/substitute.h"
#include "../../lib/answers/terminals.h"
#include "../../lib/words/screen.h"

enum { MOST = 64 };

static char screen[16000];
static ohm_finding each[MOST];
static ohm_finding whole;
static const ohm_sensor *shelf[MOST];
static size_t shelved;

static struct oc_text begin(void) {
  whole = finding_new();
  for (size_t i = 0; i < MOST; i++)
    each[i] = finding_new();
  return oc_text_begin(screen, sizeof screen);
}

/* The whole screen: lines of its own, then the report of what all of them come to. */
static void check_screen(const char *lines) {
  char expected[sizeof screen];
  strcpy(expected, lines);
  strcat(expected, report_of(&whole));
  ck_assert_str_eq(screen, expected);
}

static void load_shelf(void) {
  shelved = ohm_sensor_built_in_count();
  ck_assert_uint_le(shelved, MOST);
  for (size_t i = 0; i < shelved; i++)
    shelf[i] = sensor_built_in(ohm_sensor_built_in_name(i));
}

static void free_shelf(void) {
  for (size_t i = 0; i < shelved; i++)
    ohm_sensor_free((ohm_sensor *)shelf[i]);
}

/* ---- check ---- */

static void check_two(const char *first, const char *second) {
  const struct scene cold = scene_typed(first, "20C");
  const struct scene hot = scene_typed(second, "80C");
  const oc_reading readings[] = {cold.reading, hot.reading};
  const oc_reference references[] = {cold.reference, hot.reference};
  ohm_sensor *sensor = sensor_built_in("ntc-2k45-20c");
  ck_assert_int_eq(oc_bath_check_several(sensor, readings, references, 2, NULL, NULL, each, &whole),
                   OHM_OK);
  ohm_sensor_free(sensor);
}

START_TEST(several_readings_have_a_table_above_what_they_come_to)
{
  struct oc_text out = begin();
  check_two("2.45k", "330 ohm");
  oc_screen_readings(&out, &whole, &(struct oc_group){2, each});
  check_screen("read                at                  means\n"
               "2.45 k              20.0 C              20.0 C\n"
               "330 ohm             80.0 C              79.2 C\n"
               "\n");
}
END_TEST

START_TEST(a_reading_without_degrees_has_a_dash_in_the_table)
{
  struct oc_text out = begin();
  check_two("2.45k", "OL");
  oc_screen_readings(&out, &whole, &(struct oc_group){2, each});
  check_has(screen, "\nover range          80.0 C              -\n\nCAUTION ");
}
END_TEST

START_TEST(one_reading_has_no_table)
{
  struct oc_text out = begin();
  whole = typed("ntc-2k45-20c", "2.45k", "20C", OHM_PLACE_SENSOR);
  oc_screen_readings(&out, &whole, &(struct oc_group){1, each});
  check_screen("");
}
END_TEST

START_TEST(each_of_several_readings_has_its_budget_below_its_name)
{
  struct oc_text out = begin();
  char expected[sizeof screen] = "2.45 k at 20.0 C, by itself\n";
  check_two("2.45k", "OL");
  oc_screen_budgets(&out, &(struct oc_group){2, each});
  strcat(expected, budget_of(&each[0]));
  strcat(expected, "\nover range at 80.0 C, by itself\n");
  strcat(expected, budget_of(&each[1]));
  ck_assert_str_eq(screen, expected);
}
END_TEST

START_TEST(the_budget_of_one_reading_needs_no_name)
{
  struct oc_text out = begin();
  each[0] = typed("ntc-2k45-20c", "2.45k", "20C", OHM_PLACE_SENSOR);
  oc_screen_budgets(&out, &(struct oc_group){1, each});
  ck_assert_str_eq(screen, budget_of(&each[0]));
}
END_TEST

/* ---- identify ---- */

static void identify(const char *reading, const char *at, const oc_meter *meter) {
  const struct scene scene = scene_typed(reading, at);
  struct oc_text out = begin();
  load_shelf();
  ck_assert_int_eq(
      oc_identify(shelf, shelved, &scene.reading, &scene.reference, 1, meter, NULL, each, &whole),
      OHM_OK);
  oc_screen_candidates(&out, &whole, &(struct oc_group){shelved, each});
  free_shelf();
}

START_TEST(candidates_that_lead_and_three_more_stand_in_a_table)
{
  oc_meter meter = OC_METER_INIT;
  ck_assert_int_eq(oc_meter_read("0.8%+3@2000", &meter, NULL), OHM_OK);
  ck_assert_int_eq(oc_leads_read("0.4", &meter, NULL), OHM_OK);
  identify("330", "80C+-1", &meter);
  check_screen("it may be               in 100    feeds     near 20 C it would read\n"
               "ntc-2k58-20c            22        module    2.53 k\n"
               "ntc-3k5-20c             20        module    3.46 k\n"
               "ntc-3k12-20c            16        module    3.19 k\n"
               "ntc-2k46-20c            15        module    2.56 k\n"
               "ntc-2k51-20c            15        module    2.58 k\n"
               "ntc-2k45-20c            8         module    2.58 k\n"
               "ntc-2k49-20c            3         module    2.77 k  fits badly\n"
               "ntc-2k74-20c            under 1   module    3.08 k  fits badly\n"
               "ntc-2k45-20c-290r-80c   under 1   module    2.78 k  fits badly\n"
               "none of these           2\n"
               "\n");
}
END_TEST

START_TEST(where_none_leads_no_chances_are_told)
{
  identify("480", "35C", NULL);
  check_screen("it may be               in 100    feeds\n"
               "ntc-288r-45c            -         gauge  fits badly\n"
               "ntc-2k45-20c            -         module  fits badly\n"
               "pt1000-b                -         probe  fits badly\n"
               "\n");
}
END_TEST

START_TEST(a_display_that_names_no_sensor_has_no_table)
{
  identify("OL", "20C", NULL);
  check_screen("");
}
END_TEST

START_TEST(each_pair_of_pins_has_its_line)
{
  static const char *const typed_pairs[] = {"1-3=810", "1-2=OL", "2-body=210.0"};
  const struct scene scene = scene_typed("1k", "50C");
  oc_pair pairs[3];
  ohm_finding candidates[MOST];
  struct oc_text out = begin();
  findings_begin(candidates, MOST);
  for (size_t i = 0; i < 3; i++)
    ck_assert_int_eq(oc_pair_read(typed_pairs[i], &pairs[i], NULL), OHM_OK);
  load_shelf();
  ck_assert_int_eq(oc_pins_identify(shelf, shelved, pairs, 3, &scene.reference, NULL, NULL, each,
                                    candidates, &whole),
                   OHM_OK);
  free_shelf();
  oc_screen_pairs(&out, &whole, &(struct oc_group){3, each});
  check_screen("1-3         810 ohm: the module's element; it goes with ntc-2k46-20c and others\n"
               "1-2         over range: no circuit between them, on the highest range\n"
               "2-body      210.0 ohm: the gauge's: it asks for no fan, and looks bad beside a\n"
               "            module's; it goes with ntc-210r-50c\n"
               "\n");
}
END_TEST

/* ---- explain ---- */

static void explain(const char *reading, const char *at) {
  const struct scene scene = scene_typed(reading, at);
  ohm_sensor *sensor = sensor_built_in("ntc-2k45-20c");
  struct oc_text out = begin();
  ck_assert_int_eq(
      oc_explain(sensor, NULL, 0, &scene.reading, &scene.reference, 1, NULL, NULL, each, &whole),
      OHM_OK);
  ohm_sensor_free(sensor);
  oc_screen_explanations(&out, &whole, &(struct oc_group){OC_EXPLANATIONS, each});
}

START_TEST(explanations_that_lead_have_a_line_each)
{
  char expected[sizeof screen] = "";
  size_t leading = 0;
  explain("3.5k", "20C");
  for (size_t i = 0; i < OC_EXPLANATIONS; i++)
    if (number_in(&each[i], OHM_FIELD_LEADING) == 1) {
      strcat(expected, report_of(&each[i]));
      leading++;
    }
  ck_assert_uint_ge(leading, 2);
  strcat(expected, "\n");
  check_screen(expected);
}
END_TEST

START_TEST(where_nothing_leads_an_explanation_is_what_it_comes_to_alone)
{
  explain("OL", "20C");
  check_screen("");
}
END_TEST

/* ---- substitute ---- */

static void substitute(const double *drawer_ohm, size_t count) {
  oc_substitute wanted = OC_SUBSTITUTE_INIT;
  ohm_sensor *sensor = sensor_built_in("ntc-2k45-20c");
  struct oc_text out = begin();
  wanted.drawer_ohm = drawer_ohm;
  wanted.drawer_count = count;
  ck_assert_int_eq(oc_substitute_find(sensor, NULL, &wanted, &each[0], &each[1]), OHM_OK);
  ohm_sensor_free(sensor);
  bool is_pair = oc_finding_about(&each[1]) != OC_VERBS;
  oc_screen_substitutes(&out, &(struct oc_group){is_pair ? 2 : 1, each});
}

/* What follows the cautions. */
static const char *fit_of(const ohm_finding *finding) {
  return strstr(report_of(finding), "Fit ");
}

START_TEST(two_resistors_stand_below_one_without_the_cautions_again)
{
  static const double drawer_ohm[] = {100, 220, 330, 1000};
  char expected[sizeof screen];
  substitute(drawer_ohm, 4);
  strcpy(expected, report_of(&each[0]));
  strcat(expected, "\nOr two of them:\n\n");
  strcat(expected, fit_of(&each[1]));
  ck_assert_str_eq(screen, expected);
  check_has(screen, "\n\nFit         1.00 k across 220 ohm: 180.3 ohm, at the plug in the "
                    "sensor's place\n");
}
END_TEST

START_TEST(a_drawer_of_one_has_no_two_of_them)
{
  static const double drawer_ohm[] = {160};
  substitute(drawer_ohm, 1);
  ck_assert_str_eq(screen, report_of(&each[0]));
}
END_TEST

int main(void) {
  int of_check =
      RUN_TESTS("screens of a check", several_readings_have_a_table_above_what_they_come_to,
                a_reading_without_degrees_has_a_dash_in_the_table, one_reading_has_no_table,
                each_of_several_readings_has_its_budget_below_its_name,
                the_budget_of_one_reading_needs_no_name);
  int others = RUN_TESTS(
      "other screens", candidates_that_lead_and_three_more_stand_in_a_table,
      where_none_leads_no_chances_are_told, a_display_that_names_no_sensor_has_no_table,
      each_pair_of_pins_has_its_line, explanations_that_lead_have_a_line_each,
      where_nothing_leads_an_explanation_is_what_it_comes_to_alone,
      two_resistors_stand_below_one_without_the_cautions_again, a_drawer_of_one_has_no_two_of_them);
  return of_check | others;
}
