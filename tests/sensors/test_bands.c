/* SPDX-License-Identifier: MIT */
/* Makers' bands, from the lines of a sensor file to the verdict. */
#include "../scene.h"
#include "../../lib/answers/bath.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Limits of its own at 0 to 40 C; "wide" and "tight" at 20 C, "hot" elsewhere. */
#define HEADER "temp_c,r_min_ohm,r_nom_ohm,r_max_ohm,band\n"
static const char banded[] = "# band wide: Wide Works, page 3\n"
                             "# band tight: Tight Tools, page 4\n" HEADER
                             "-20,,15480,,\n0,5500,5790,6100,\n20,2300,2450,2600,\n"
                             "40,1090,1148,1206,\n100,,188.4,,\n"
                             "20,2100,,2900,wide\n40,1000,,1300,wide\n"
                             "20,2400,,2500,tight\n80,310,,335,hot\n";

static ohm_finding judged_by(const ohm_sensor *sensor, double r_ohm, double t_c, const char *band) {
  struct scene scene = scene_exact(r_ohm, t_c);
  scene.check.band = band;
  return scene_judged(sensor, &scene);
}

/* ---- in a file ---- */

START_TEST(bands_have_names_and_sources_in_the_order_of_the_file)
{
  ohm_sensor *sensor = sensor_of(banded);
  ck_assert_uint_eq(ohm_sensor_band_count(sensor), 3);
  ck_assert_str_eq(ohm_sensor_band_name(sensor, 0), "wide");
  ck_assert_str_eq(ohm_sensor_band_source(sensor, 0), "Wide Works, page 3");
  ck_assert_str_eq(ohm_sensor_band_name(sensor, 1), "tight");
  ck_assert_str_eq(ohm_sensor_band_name(sensor, 2), "hot");
  ck_assert_str_eq(ohm_sensor_band_source(sensor, 2), "");
  ck_assert_ptr_null(ohm_sensor_band_name(sensor, 3));
  ck_assert_ptr_null(ohm_sensor_band_source(sensor, 3));
  ck_assert_uint_eq(ohm_sensor_note_count(sensor), 0);
  ck_assert_uint_eq(ohm_sensor_band_count(NULL), 0);
  ck_assert_ptr_null(ohm_sensor_band_name(NULL, 0));
  ck_assert_ptr_null(ohm_sensor_band_source(NULL, 0));
  ohm_sensor_free(sensor);
}
END_TEST

/* The rows of a band say what is allowed and never bend the curve. */
START_TEST(bands_leave_the_curve_as_it_is)
{
  ohm_sensor *with = sensor_of(banded);
  ohm_sensor *without = sensor_of(HEADER "-20,,15480,,\n0,5500,5790,6100,\n20,2300,2450,2600,\n"
                                         "40,1090,1148,1206,\n100,,188.4,,\n");
  for (double t_c = -20; t_c <= 100; t_c += 1) {
    double a;
    double b;
    ck_assert_int_eq(ohm_curve_resistance(ohm_sensor_curve(with), t_c, &a), OHM_OK);
    ck_assert_int_eq(ohm_curve_resistance(ohm_sensor_curve(without), t_c, &b), OHM_OK);
    CHECK_NEAR(a, b, 0);
  }
  ohm_sensor_free(with);
  ohm_sensor_free(without);
}
END_TEST

static void check_note(const char *text, const char *part, size_t bands) {
  ohm_sensor *sensor = sensor_of(text);
  ck_assert_uint_eq(ohm_sensor_note_count(sensor), 1);
  ck_assert_uint_eq(ohm_sensor_band_count(sensor), bands);
  check_has(ohm_sensor_note(sensor, 0), part);
  ohm_sensor_free(sensor);
}

START_TEST(what_is_wrong_with_a_band_is_noted_and_left_out)
{
  check_note(HEADER "0,,5790,,\n20,,2450,,\n20,,2450,,wide\n", "it names a band and has no limits",
             0);
  check_note("# band wide: nowhere\n" HEADER "0,,5790,,\n20,,2450,,\n",
             "band \"wide\" has no row and is left out", 0);
  check_note(HEADER "0,,5790,,\n20,,2450,,\n20,2300,,2600,wide\n20,2200,,2700,wide\n",
             "line 5: row left out: its temperature stands in an earlier row", 1);
}
END_TEST

/* Each would be another name, or another cell, when the sensor is printed and read. */
START_TEST(a_name_that_cannot_stand_in_a_line_and_a_cell_is_left_out)
{
  static const char *const names[] = {"a:b", "\"a,b\"", "\"a\"\"b\"", "\" a\"", "\"a \""};
  for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
    char text[200];
    snprintf(text, sizeof text, HEADER "0,,5790,,\n20,,2450,,\n20,2300,,2600,%s\n", names[i]);
    check_note(text, "line 4: row left out: the name of its band has a comma", 0);
  }
}
END_TEST

/* A tangent of the curve carried on to the band's rows leaves what a double holds. */
START_TEST(a_band_whose_rows_lie_far_beyond_the_curve_has_limits)
{
  ohm_sensor *sensor = sensor_of(HEADER "25,,1e-179,,\n25.000001,,1e-188,,\n"
                                        "-272,1e-168,,1e-134,far\n90,1e-185,,1e-16,far\n");
  for (int i = 0; i <= 10; i++) {
    double low;
    double high;
    ck_assert_int_eq(ohm_sensor_band(sensor, 25 + i * 1e-7, &low, NULL, &high), OHM_OK);
    ck_assert(0 <= low && low <= high);
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(bands_after_the_64th_are_left_out_and_noted)
{
  char text[4000] = HEADER "0,,6000,,\n20,,2450,,\n";
  size_t length = strlen(text);
  for (int i = 0; i < 70; i++)
    length += (size_t)snprintf(text + length, sizeof text - length, "20,2000,,3000,b%d\n", i);
  ohm_sensor *sensor = sensor_of(text);
  ck_assert_uint_eq(ohm_sensor_band_count(sensor), 64);
  ck_assert_uint_eq(ohm_sensor_row_count(sensor), 2);
  ck_assert_uint_eq(ohm_sensor_note_count(sensor), 6);
  ck_assert_ptr_nonnull(strstr(ohm_sensor_note(sensor, 0), "at most 64 bands"));
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(two_bands_may_have_the_same_temperature)
{
  ohm_sensor *sensor =
      sensor_of(HEADER "0,,5790,,\n20,,2450,,\n20,2300,,2600,a\n20,2200,,2700,b\n");
  ck_assert_uint_eq(ohm_sensor_note_count(sensor), 0);
  ck_assert_uint_eq(ohm_sensor_band_count(sensor), 2);
  ohm_sensor_free(sensor);
}
END_TEST

static char *printed(const ohm_sensor *sensor) {
  size_t size = ohm_sensor_print(sensor, NULL, 0) + 1;
  char *text = malloc(size);
  if (!text)
    abort();
  ck_assert_uint_eq(ohm_sensor_print(sensor, text, size), size - 1);
  return text;
}

static void check_reads_back(ohm_sensor *sensor) {
  char *first = printed(sensor);
  ohm_sensor *again = sensor_of(first);
  char *second = printed(again);
  ck_assert_str_eq(first, second);
  ck_assert_uint_eq(ohm_sensor_band_count(again), ohm_sensor_band_count(sensor));
  for (size_t i = 0; i < ohm_sensor_band_count(sensor); i++) {
    ck_assert_str_eq(ohm_sensor_band_name(again, i), ohm_sensor_band_name(sensor, i));
    ck_assert_str_eq(ohm_sensor_band_source(again, i), ohm_sensor_band_source(sensor, i));
    for (double t_c = -40; t_c <= 120; t_c += 2.5) {
      struct scene scene = scene_exact(1000, t_c);
      scene.check.band = ohm_sensor_band_name(sensor, i);
      ohm_finding a = scene_judged(sensor, &scene);
      ohm_finding b = scene_judged(again, &scene);
      for (int field = OHM_FIELD_LOW_OHM; field <= OHM_FIELD_HIGH_OHM; field++) {
        double want = ohm_finding_number(&a, field);
        ck_assert_int_eq(isnan(want), isnan(ohm_finding_number(&b, field)));
        if (!isnan(want))
          CHECK_NEAR(ohm_finding_number(&b, field), want, 0);
      }
    }
  }
  free(first);
  free(second);
  ohm_sensor_free(again);
  ohm_sensor_free(sensor);
}

START_TEST(a_sensor_with_bands_printed_reads_back_equal)
{
  check_reads_back(sensor_of(banded));
  check_reads_back(sensor_of("# band a b: c: d, \"e\"\n" HEADER
                             "0,,5790,,\n20,,2450,,\n20,2300,,2600,a b\n10,,,,\n"));
  for (size_t i = 0; i < ohm_sensor_built_in_count(); i++)
    check_reads_back(sensor_built_in(ohm_sensor_built_in_name(i)));
}
END_TEST

/* ---- in a verdict ---- */

START_TEST(the_widest_of_all_that_say_something_there_is_judged_by)
{
  ohm_sensor *sensor = sensor_of(banded);
  ohm_finding finding = judged_by(sensor, 2450, 20, NULL);
  ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_BAND, 0), "wide");
  ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_BAND_SOURCE, 0), "Wide Works, page 3");
  CHECK_NEAR(number_in(&finding, OHM_FIELD_LOW_OHM), 2100, 0);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_HIGH_OHM), 2900, 0);
  double low;
  double high;
  ck_assert_int_eq(ohm_sensor_band(sensor, 20, &low, NULL, &high), OHM_OK);
  CHECK_NEAR(low, 2100, 0);
  CHECK_NEAR(high, 2900, 0);
  ohm_finding cold = judged_by(sensor, 5790, 0, NULL);
  ck_assert_ptr_null(ohm_finding_text(&cold, OHM_FIELD_BAND, 0));
  CHECK_NEAR(number_in(&cold, OHM_FIELD_LOW_OHM), 5500, 0);
  ohm_finding hot = judged_by(sensor, 322, 80, NULL);
  ck_assert_str_eq(ohm_finding_text(&hot, OHM_FIELD_BAND, 0), "hot");
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(the_other_bands_are_told_the_tightest_first)
{
  ohm_sensor *sensor = sensor_of(banded);
  ohm_finding finding = judged_by(sensor, 2450, 20, NULL);
  ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_OTHER_BANDS, 0),
                   "2.400 k to 2.500 k (tight)");
  ck_assert_str_eq(ohm_finding_text(&finding, OHM_FIELD_OTHER_BANDS, 1),
                   "2.300 k to 2.600 k (the table's own)");
  ck_assert_ptr_null(ohm_finding_text(&finding, OHM_FIELD_OTHER_BANDS, 2));
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_named_band_is_judged_by_alone)
{
  ohm_sensor *sensor = sensor_of(banded);
  ohm_finding wide = judged_by(sensor, 2550, 20, "wide");
  check_verdict(&wide, OHM_WITHIN, "conforms");
  ohm_finding tight = judged_by(sensor, 2550, 20, "tight");
  check_verdict(&tight, OHM_OUTSIDE, "high");
  ck_assert_str_eq(ohm_finding_text(&tight, OHM_FIELD_BAND, 0), "tight");
  ohm_finding elsewhere = judged_by(sensor, 5790, 0, "tight");
  check_verdict(&elsewhere, OHM_UNDECIDED, "outside_band");
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_band_that_is_not_there_is_not_found)
{
  static const char *const names[] = {"", "Wide", "wid", "wide ", "own limits"};
  ohm_sensor *sensor = sensor_of(banded);
  for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
    struct scene scene = scene_exact(2450, 20);
    scene.check.band = names[i];
    ohm_finding finding = finding_new();
    PROVOKES(oc_bath_check, OHM_NOT_FOUND,
             oc_bath_check(sensor, &scene.reading, &scene.meter, &scene.reference, &scene.check,
                           &finding));
  }
  ohm_sensor_free(sensor);
}
END_TEST

/* Between its rows the relative half-widths of a band run on the sensor's own curve. */
START_TEST(a_band_follows_the_curve_between_its_rows)
{
  ohm_sensor *sensor = sensor_of(banded);
  double r_ohm;
  ck_assert_int_eq(ohm_curve_resistance(ohm_sensor_curve(sensor), 30, &r_ohm), OHM_OK);
  ohm_finding finding = judged_by(sensor, r_ohm, 30, "wide");
  double part = (1 / 303.15 - 1 / 293.15) / (1 / 313.15 - 1 / 293.15);
  double down = (1 - part) * log(2450 / 2100.0) + part * log(1148 / 1000.0);
  double up = (1 - part) * log(2900 / 2450.0) + part * log(1300 / 1148.0);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_LOW_OHM), r_ohm * exp(-down), 1e-9);
  CHECK_NEAR(number_in(&finding, OHM_FIELD_HIGH_OHM), r_ohm * exp(up), 1e-9);
  ohm_sensor_free(sensor);
}
END_TEST

static ohm_finding judged_nominal(const ohm_sensor *sensor, double t_c, const char *band) {
  double r_ohm;
  ck_assert_int_eq(ohm_curve_resistance(ohm_sensor_curve(sensor), t_c, &r_ohm), OHM_OK);
  return judged_by(sensor, r_ohm, t_c, band);
}

/* Some are printed from 30 C up only. */
START_TEST(every_built_in_sensor_can_be_judged_by_each_of_its_bands)
{
  size_t bands = 0;
  for (size_t i = 0; i < ohm_sensor_built_in_count(); i++) {
    ohm_sensor *sensor = sensor_built_in(ohm_sensor_built_in_name(i));
    for (size_t j = 0; j < ohm_sensor_band_count(sensor); j++, bands++) {
      ohm_finding finding = judged_nominal(sensor, 20, ohm_sensor_band_name(sensor, j));
      if (strcmp(ohm_finding_text(&finding, OHM_FIELD_REASON, 0), "outside_band") == 0)
        finding = judged_nominal(sensor, 30, ohm_sensor_band_name(sensor, j));
      check_verdict(&finding, OHM_WITHIN, "conforms");
      ck_assert_str_ne(ohm_finding_text(&finding, OHM_FIELD_BAND_SOURCE, 0), "");
    }
    ohm_sensor_free(sensor);
  }
  ck_assert_uint_gt(bands, 4);
}
END_TEST

int main(void) {
  int files = RUN_TESTS(
      "bands in a file", bands_have_names_and_sources_in_the_order_of_the_file,
      bands_leave_the_curve_as_it_is, what_is_wrong_with_a_band_is_noted_and_left_out,
      a_name_that_cannot_stand_in_a_line_and_a_cell_is_left_out,
      a_band_whose_rows_lie_far_beyond_the_curve_has_limits,
      bands_after_the_64th_are_left_out_and_noted, two_bands_may_have_the_same_temperature,
      a_sensor_with_bands_printed_reads_back_equal);
  int verdicts =
      RUN_TESTS("bands in a verdict", the_widest_of_all_that_say_something_there_is_judged_by,
                the_other_bands_are_told_the_tightest_first, a_named_band_is_judged_by_alone,
                a_band_that_is_not_there_is_not_found, a_band_follows_the_curve_between_its_rows,
                every_built_in_sensor_can_be_judged_by_each_of_its_bands);
  return files | verdicts;
}
