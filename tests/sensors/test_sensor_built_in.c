/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include <stdlib.h>
#include <string.h>

START_TEST(names_stand_in_order_and_end_with_null)
{
  size_t count = ohm_sensor_built_in_count();
  ck_assert_uint_gt(count, 0);
  for (size_t i = 1; i < count; i++)
    ck_assert_int_lt(strcmp(ohm_sensor_built_in_name(i - 1), ohm_sensor_built_in_name(i)), 0);
  ck_assert_ptr_null(ohm_sensor_built_in_name(count));
  ck_assert_ptr_null(ohm_sensor_built_in_name((size_t)-1));
}
END_TEST

START_TEST(every_built_in_sensor_loads_under_its_name_without_a_note)
{
  for (size_t i = 0; i < ohm_sensor_built_in_count(); i++) {
    ohm_error error;
    ohm_sensor *sensor = ohm_sensor_built_in_load(ohm_sensor_built_in_name(i), &error);
    ck_assert_msg(sensor != NULL, "%s", error.message);
    ck_assert_int_eq(error.status, OHM_OK);
    ck_assert_str_eq(ohm_sensor_name(sensor), ohm_sensor_built_in_name(i));
    ck_assert_msg(ohm_sensor_note_count(sensor) == 0, "%s", ohm_sensor_note(sensor, 0));
    ohm_sensor_free(sensor);
  }
}
END_TEST

START_TEST(there_are_at_least_thirty)
{ ck_assert_uint_ge(ohm_sensor_built_in_count(), 30); }
END_TEST

/* A document and, after a comma, where in it; never an address of a copy. */
static void check_source(const char *name, const char *source) {
  ck_assert_msg(strstr(source, ", ") != NULL, "%s: no place in \"%s\"", name, source);
  ck_assert_msg(!strstr(source, "://") && !strstr(source, "www."), "%s: %s", name, source);
}

START_TEST(every_built_in_sensor_says_what_it_is_and_where_it_was_printed)
{
  for (size_t i = 0; i < ohm_sensor_built_in_count(); i++) {
    ohm_sensor *sensor = ohm_sensor_built_in_load(ohm_sensor_built_in_name(i), NULL);
    ck_assert_str_ne(ohm_sensor_description(sensor), "");
    check_source(ohm_sensor_name(sensor), ohm_sensor_source(sensor));
    for (size_t j = 0; j < ohm_sensor_band_count(sensor); j++)
      check_source(ohm_sensor_band_name(sensor, j), ohm_sensor_band_source(sensor, j));
    ohm_sensor_free(sensor);
  }
}
END_TEST

START_TEST(every_built_in_sensor_is_of_a_module_a_gauge_or_a_probe)
{
  for (size_t i = 0; i < ohm_sensor_built_in_count(); i++) {
    ohm_sensor *sensor = ohm_sensor_built_in_load(ohm_sensor_built_in_name(i), NULL);
    const char *kind = ohm_sensor_kind(sensor);
    bool gauge = strcmp(kind, "gauge") == 0;
    ck_assert_msg(gauge || strcmp(kind, "module") == 0 || strcmp(kind, "probe") == 0, "%s: %s",
                  ohm_sensor_name(sensor), kind);
    ck_assert_msg(gauge == (strstr(ohm_sensor_description(sensor), "gauge sender") != NULL),
                  "%s: %s", ohm_sensor_name(sensor), ohm_sensor_description(sensor));
    ohm_sensor_free(sensor);
  }
}
END_TEST

START_TEST(a_name_says_the_kind_of_element)
{
  for (size_t i = 0; i < ohm_sensor_built_in_count(); i++) {
    const char *name = ohm_sensor_built_in_name(i);
    ck_assert_msg(strncmp(name, "ntc-", 4) == 0 || strncmp(name, "pt1", 3) == 0, "%s", name);
  }
}
END_TEST

/* ---- printed rows ---- */

/* Rows of five tables drawn by lot; NAN where nothing is printed. */
static const struct {
  const char *sensor;
  double t_c, low_ohm, nominal_ohm, high_ohm;
} quoted[] = {
    /* Kawasaki Z750 service manual, Electrical System, page 16-76, gauge element */
    {"ntc-210r-50c", 50, 170, 210, 250},
    {"ntc-210r-50c", 120, 19.7, 21.2, 22.7},
    /* Mazda BT-50 (from 11/2021) workshop manual, ECT sensor inspection, resistance table */
    {"ntc-2k45-20c", -40, NAN, 48140, NAN},
    {"ntc-2k45-20c", 0, NAN, 5790, NAN},
    {"ntc-2k45-20c", 90, NAN, 244.6, NAN},
    {"ntc-2k45-20c", 130, NAN, 93, NAN},
    /* Bosch Motorsport data sheet 53670795119070475, fluid/air sensor M8 */
    {"ntc-10k-25c-947r-100c", -55, NAN, 519910, NAN},
    {"ntc-10k-25c-947r-100c", 25, 9900, 10000, 10100},
    {"ntc-10k-25c-947r-100c", 100, NAN, 946.6, NAN},
    {"ntc-10k-25c-947r-100c", 280, NAN, 37.86, NAN},
    /* ILX LDT-5525 manual, appendix A, table A.1 */
    {"ntc-9k81-25c", 0, NAN, 32128, NAN},
    {"ntc-9k81-25c", 25, NAN, 9814, NAN},
    {"ntc-9k81-25c", 50, NAN, 3542, NAN},
    /* Hyundai Accent 2004 service manual, ECTS, sensor inspection */
    {"ntc-2k49-20c", -30, 22220, NAN, 31780},
    {"ntc-2k49-20c", 20, 2270, NAN, 2730},
    {"ntc-2k49-20c", 90, 219, NAN, 243},
};

START_TEST(a_printed_row_converts_to_itself)
{
  double t_c = quoted[_i].t_c;
  double low_ohm = quoted[_i].low_ohm;
  double high_ohm = quoted[_i].high_ohm;
  bool has_limits = low_ohm <= high_ohm;
  double want_ohm = quoted[_i].nominal_ohm;
  if (isnan(want_ohm))
    want_ohm = sqrt(low_ohm * high_ohm);
  ohm_sensor *sensor = ohm_sensor_built_in_load(quoted[_i].sensor, NULL);
  double band[3];
  double back_c;
  ohm_sensor_band(sensor, t_c, &band[0], &band[1], &band[2]);
  ohm_curve_temperature(ohm_sensor_curve(sensor), band[1], &back_c);
  ohm_sensor_free(sensor);
  CHECK_NEAR(band[1], want_ohm, 1e-12 * want_ohm);
  CHECK_NEAR(back_c, t_c, 1e-9);
  if (has_limits) {
    CHECK_NEAR(band[0], low_ohm, 0);
    CHECK_NEAR(band[2], high_ohm, 0);
  }
}
END_TEST

/* Rows of IEC 60751 (1995) as printed for class B, and the ice point; ohm. */
START_TEST(platinum_is_that_of_the_standard)
{
  static const struct {
    double t_c, r_ohm, class_b_ohm;
  } rows[] = {{-100, 60.26, 0.32}, {0, 100, 0.12},      {100, 138.51, 0.30},
              {200, 175.86, 0.48}, {400, 247.09, 0.79}, {600, 313.71, 1.06}};
  ohm_sensor *hundred = ohm_sensor_built_in_load("pt100-b", NULL);
  ohm_sensor *thousand = ohm_sensor_built_in_load("pt1000-b", NULL);
  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
    double low_ohm, r_ohm, high_ohm;
    if (rows[i].t_c < 600) {
      ohm_sensor_band(hundred, rows[i].t_c, &low_ohm, &r_ohm, &high_ohm);
      CHECK_NEAR((high_ohm - low_ohm) / 2, rows[i].class_b_ohm, 0.0051);
    }
    ohm_curve_resistance(ohm_sensor_curve(hundred), rows[i].t_c, &r_ohm);
    CHECK_NEAR(r_ohm, rows[i].r_ohm, 0.0051);
    ohm_curve_resistance(ohm_sensor_curve(thousand), rows[i].t_c, &r_ohm);
    CHECK_NEAR(r_ohm / 10, rows[i].r_ohm, 0.0051);
  }
  ohm_sensor_free(hundred);
  ohm_sensor_free(thousand);
}
END_TEST

/* ---- looking by words ---- */

static const struct {
  const char *words;
  const char *sensor;
  bool found;
} asked[] = {
    {"Kawasaki Z750", "ntc-2k46-20c", true},    {"kawasaki gauge", "ntc-210r-50c", true},
    {"kawasaki", "ntc-2k45-20c", false},        {"mitsubishi galant", "ntc-2k45-20c", true},
    {"AUDI g62", "ntc-2k45-20c", true},         {"toyota yaris", "ntc-2k45-20c", true},
    {"volvo lh", "ntc-2k45-20c", false},        {"volvo v70", "ntc-3k5-25c", true},
    {"hyundai accent", "ntc-2k49-20c", true},   {"hyundai accent", "ntc-2k45-20c", false},
    {"bmw e46", "ntc-2k74-20c", true},          {"mercedes slk55", "ntc-3k12-20c", true},
    {"jeep comanche", "ntc-3k5-20c", false},    {"mazda tribute", "ntc-37k-20c", true},
    {"fronius", "ntc-10k-25c-680r-100c", true}, {"epcos 8018", "ntc-10k-25c-691r-100c", true},
    {"keithley 44007", "ntc-5k-25c", true},     {"vdo gauge", "ntc-1k95-50c", true},
    {"iec 60751 class a", "pt100-a", true},
};

START_TEST(words_of_a_source_find_the_sensor)
{
  size_t indices[8];
  size_t count = ohm_sensor_built_in_matches(asked[_i].words, indices, 8);
  bool found = false;
  for (size_t i = 0; i < count && i < 8; i++)
    found |= strcmp(ohm_sensor_built_in_name(indices[i]), asked[_i].sensor) == 0;
  ck_assert_msg(found == asked[_i].found, "%s, %s", asked[_i].words, asked[_i].sensor);
}
END_TEST

static char *printed(const ohm_sensor *sensor) {
  size_t size = ohm_sensor_print(sensor, NULL, 0) + 1;
  char *text = malloc(size);
  ck_assert_ptr_nonnull(text);
  ck_assert_uint_eq(ohm_sensor_print(sensor, text, size), size - 1);
  return text;
}

static void check_same(double a, double b) {
  ck_assert((isnan(a) && isnan(b)) || (a <= b && b <= a));
}

static void check_equal(const ohm_sensor *sensor, const ohm_sensor *again) {
  double low_c;
  double high_c;
  ohm_curve_range(ohm_sensor_curve(sensor), &low_c, &high_c, NULL, NULL);
  for (int i = -10; i <= 1010; i++) {
    double t_c = low_c + (high_c - low_c) * i / 1000;
    double a[3];
    double b[3];
    ck_assert_int_eq(ohm_sensor_band(sensor, t_c, &a[0], &a[1], &a[2]),
                     ohm_sensor_band(again, t_c, &b[0], &b[1], &b[2]));
    for (int j = 0; j < 3; j++)
      check_same(a[j], b[j]);
  }
}

START_TEST(every_built_in_sensor_printed_reads_back_equal)
{
  for (size_t i = 0; i < ohm_sensor_built_in_count(); i++) {
    ohm_sensor *sensor = ohm_sensor_built_in_load(ohm_sensor_built_in_name(i), NULL);
    char *text = printed(sensor);
    ohm_sensor *again = ohm_sensor_parse(text, strlen(text), "again", NULL);
    ck_assert_ptr_nonnull(again);
    char *text_again = printed(again);
    ck_assert_str_eq(text, text_again);
    check_equal(sensor, again);
    free(text_again);
    free(text);
    ohm_sensor_free(again);
    ohm_sensor_free(sensor);
  }
}
END_TEST

START_TEST(a_slip_of_the_pen_is_near_its_name)
{
  ck_assert_str_eq(ohm_sensor_built_in_nearest("NTC-2K45-20C"), "ntc-2k45-20c");
  ck_assert_str_eq(ohm_sensor_built_in_nearest("ntc-2k54-20c"), "ntc-2k45-20c");
  for (size_t i = 0; i < ohm_sensor_built_in_count(); i++)
    ck_assert_str_eq(ohm_sensor_built_in_nearest(ohm_sensor_built_in_name(i)),
                     ohm_sensor_built_in_name(i));
}
END_TEST

START_TEST(what_is_like_no_name_has_none_near)
{
  ck_assert_ptr_null(ohm_sensor_built_in_nearest(NULL));
  ck_assert_ptr_null(ohm_sensor_built_in_nearest(""));
  ck_assert_ptr_null(ohm_sensor_built_in_nearest("thermostat housing"));
}
END_TEST

START_TEST(an_unknown_name_is_offered_the_nearest)
{
  ohm_error error;
  ck_assert_ptr_null(ohm_sensor_built_in_load("ntc-2k45-20", &error));
  PROVOKES(ohm_sensor_built_in_load, OHM_NOT_FOUND, error.status);
  ck_assert_str_eq(error.message, "no sensor is called ntc-2k45-20; did you mean ntc-2k45-20c?");
}
END_TEST

START_TEST(a_name_like_none_is_sent_to_the_list)
{
  ohm_error error;
  ck_assert_ptr_null(ohm_sensor_built_in_load("thermostat\nhousing", &error));
  ck_assert_int_eq(error.status, OHM_NOT_FOUND);
  ck_assert_str_eq(error.message,
                   "no sensor is called thermostat?housing; look in the list of sensors");
  ck_assert_ptr_null(ohm_sensor_built_in_load("thermostat", NULL));
}
END_TEST

START_TEST(a_very_long_name_is_quoted_in_part)
{
  static char name[100000];
  memset(name, 'n', sizeof name - 1);
  ohm_error error;
  ck_assert_ptr_null(ohm_sensor_built_in_load(name, &error));
  ck_assert_int_eq(error.status, OHM_NOT_FOUND);
  ck_assert_uint_lt(strlen(error.message), 150);
}
END_TEST

START_TEST(no_name_is_no_sensor)
{
  ohm_error error;
  ck_assert_ptr_null(ohm_sensor_built_in_load(NULL, &error));
  PROVOKES(ohm_sensor_built_in_load, OHM_NULL_ARGUMENT, error.status);
}
END_TEST

START_TEST(the_tables_have_a_version)
{ ck_assert_str_ne(ohm_tables_version(), ""); }
END_TEST

int main(void) {
  int all = RUN_TESTS(
      "sensor_built_in", names_stand_in_order_and_end_with_null, there_are_at_least_thirty,
      every_built_in_sensor_loads_under_its_name_without_a_note,
      every_built_in_sensor_says_what_it_is_and_where_it_was_printed,
      every_built_in_sensor_is_of_a_module_a_gauge_or_a_probe, a_name_says_the_kind_of_element,
      every_built_in_sensor_printed_reads_back_equal, platinum_is_that_of_the_standard,
      a_slip_of_the_pen_is_near_its_name, what_is_like_no_name_has_none_near,
      an_unknown_name_is_offered_the_nearest, a_name_like_none_is_sent_to_the_list,
      a_very_long_name_is_quoted_in_part, no_name_is_no_sensor, the_tables_have_a_version);
  int rows = RUN_TESTS_FOR_EACH("printed rows", sizeof quoted / sizeof quoted[0],
                                a_printed_row_converts_to_itself);
  int words = RUN_TESTS_FOR_EACH("words", sizeof asked / sizeof asked[0],
                                 words_of_a_source_find_the_sensor);
  return all | rows | words;
}
