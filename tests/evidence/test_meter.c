/* SPDX-License-Identifier: MIT */
#include "../support.h"
#include "../../lib/evidence/meter.h"

#include <float.h>
#include <string.h>

/* ---- what a display showed ---- */

static oc_reading read(const char *text) {
  oc_reading reading;
  ohm_error error;
  ck_assert_msg(oc_reading_read(text, &reading, &error) == OHM_OK, "%s", error.message);
  ck_assert_int_eq(error.status, OHM_OK);
  return reading;
}

START_TEST(every_notation_of_a_resistance_is_read_with_its_resolution)
{
  static const struct {
    const char *text;
    double r_ohm;
    double resolution_ohm;
  } notations[] = {{"2310", 2310, 1},
                   {"2.31k", 2310, 10},
                   {"2.310k", 2310, 1},
                   {"2k31", 2310, 10},
                   {"2.31 kohm", 2310, 10},
                   {"2.31k\xCE\xA9", 2310, 10},
                   {"2.31 k\xE2\x84\xA6", 2310, 10},
                   {"187 ohm", 187, 1},
                   {"0R47", 0.47, 0.01},
                   {"1.2M", 1.2e6, 1e5},
                   {"0", 0, 1},
                   {"0.0", 0, 0.1},
                   {".5", 0.5, 0.1},
                   {" 2310 ", 2310, 1},
                   {"1e12", 1e12, 1e12}};
  for (size_t i = 0; i < sizeof notations / sizeof notations[0]; i++) {
    oc_reading reading = read(notations[i].text);
    ck_assert_int_eq(reading.display, OC_DISPLAY_VALUE);
    CHECK_NEAR(reading.r_ohm, notations[i].r_ohm, 1e-15 * notations[i].r_ohm);
    CHECK_NEAR(reading.resolution_ohm, notations[i].resolution_ohm,
               1e-15 * notations[i].resolution_ohm);
  }
}
END_TEST

START_TEST(over_range_is_not_open)
{
  PROVOKES(oc_reading_read, OHM_OK, oc_reading_read("OL", &(oc_reading){0}, NULL));
  ck_assert_int_eq(read("OL").display, OC_DISPLAY_OVER);
  ck_assert_int_eq(read("open").display, OC_DISPLAY_OPEN);
}
END_TEST

START_TEST(over_range_may_say_on_which_range)
{
  static const struct {
    const char *text;
    double range_ohm;
  } faces[] = {{"OL", 0},        {"0L", 0},      {"O.L", 0},     {"0.L", 0},      {"ol", 0},
               {"OL@20k", 20e3}, {">20k", 20e3}, {">2.0M", 2e6}, {"0L@200", 200}, {"OL @ 2k", 2e3}};
  for (size_t i = 0; i < sizeof faces / sizeof faces[0]; i++) {
    oc_reading reading = read(faces[i].text);
    ck_assert_int_eq(reading.display, OC_DISPLAY_OVER);
    CHECK_NEAR(reading.range_ohm, faces[i].range_ohm, 1e-9);
  }
}
END_TEST

START_TEST(a_lone_1_is_no_number_and_1_with_more_is)
{
  ck_assert_int_eq(read("1").display, OC_DISPLAY_ONE);
  static const char *const numbers[] = {"1.0", "1 ohm", "1k", "1R", "01", "10"};
  for (size_t i = 0; i < sizeof numbers / sizeof numbers[0]; i++)
    ck_assert_int_eq(read(numbers[i]).display, OC_DISPLAY_VALUE);
}
END_TEST

START_TEST(whole_numbers_leave_their_zeros_open)
{
  static const struct {
    const char *text;
    double zeros_ohm;
  } texts[] = {{"2310", 10},   {"2300", 100}, {"2000", 1000}, {"10k", 1000},
               {"100k", 1000}, {"2311", 0},   {"2300.0", 0},  {"2.300k", 0},
               {"2k3", 0},     {"10.0k", 0},  {"230 ohm", 0}, {"0", 0}};
  for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++)
    CHECK_NEAR(read(texts[i].text).zeros_ohm, texts[i].zeros_ohm, 0);
}
END_TEST

START_TEST(a_number_without_unit_or_prefix_is_bare)
{
  ck_assert(read("2.31").bare && read("2310").bare);
  ck_assert(!read("2.31k").bare && !read("2.31 ohm").bare && !read("2R31").bare);
}
END_TEST

START_TEST(a_comma_is_answered_with_the_text_to_write)
{
  oc_reading reading;
  ohm_error error;
  ck_assert_int_eq(oc_reading_read("2,31k", &reading, &error), OHM_BAD_SYNTAX);
  ck_assert_str_eq(error.message, "\"2,31k\" has a comma; write 2.31k");
  ck_assert_int_eq(oc_reading_read("2,31 kohm", &reading, &error), OHM_BAD_SYNTAX);
  ck_assert_ptr_nonnull(strstr(error.message, "write 2.31 kohm"));
}
END_TEST

START_TEST(what_is_no_reading_is_refused_with_the_notations)
{
  static char long_text[100000];
  memset(long_text, 'k', sizeof long_text - 1);
  const char *wrong[] = {"",      " ",   "k",      "ohm",      "2.31kk", "2.31 x",   "2,3,1", ",",
                         "OL OL", "1 2", "2.3k1x", "2k31k",    "nan",    "infinity", "0x10",  "--1",
                         "2.31C", "+-1", "\xCE",   "\xC2\xB1", "2 310",  long_text};
  for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
    oc_reading reading = {0};
    ohm_error error;
    PROVOKES(oc_reading_read, OHM_BAD_SYNTAX, oc_reading_read(wrong[i], &reading, &error));
    ck_assert(isnan(reading.r_ohm));
    ck_assert_msg(strstr(error.message, "write it as 2310"), "%s", error.message);
  }
}
END_TEST

START_TEST(a_resistance_below_0_or_above_1e12_is_out_of_range)
{
  static const char *const beyond[] = {"-1", "-2.31k", "1.1e12", "2000G", "1e300k"};
  for (size_t i = 0; i < sizeof beyond / sizeof beyond[0]; i++) {
    oc_reading reading;
    ohm_error error;
    PROVOKES(oc_reading_read, OHM_OUT_OF_RANGE, oc_reading_read(beyond[i], &reading, &error));
    ck_assert(isnan(reading.r_ohm));
    ck_assert_ptr_nonnull(strstr(error.message, "write 0 to 1e12 ohm"));
  }
}
END_TEST

START_TEST(a_reading_needs_a_text_and_an_output)
{
  oc_reading reading;
  PROVOKES(oc_reading_read, OHM_NULL_ARGUMENT, oc_reading_read(NULL, &reading, NULL));
  PROVOKES(oc_reading_read, OHM_NULL_ARGUMENT, oc_reading_read("1", NULL, NULL));
}
END_TEST

/* ---- accuracy as makers print it ---- */

static oc_meter meter_of(const char *text) {
  oc_meter meter = OC_METER_INIT;
  ohm_error error;
  ck_assert_msg(oc_meter_read(text, &meter, &error) == OHM_OK, "%s", error.message);
  return meter;
}

static void check_meter(const char *text, int accuracy, double percent, double counts,
                        double resolution_ohm, double display_count) {
  oc_meter meter = meter_of(text);
  ck_assert_int_eq(meter.accuracy, accuracy);
  CHECK_NEAR(meter.percent, percent, 0);
  CHECK_NEAR(meter.counts, counts, 0);
  CHECK_NEAR(meter.resolution_ohm, resolution_ohm, 0);
  CHECK_NEAR(meter.display_count, display_count, 0);
}

START_TEST(every_notation_of_an_accuracy_is_read)
{
  PROVOKES(oc_meter_read, OHM_OK, oc_meter_read("0.8%", &(oc_meter)OC_METER_INIT, NULL));
  check_meter("0.8%+3", OC_STATED, 0.8, 3, 0, 0);
  check_meter("0.8 % + 3", OC_STATED, 0.8, 3, 0, 0);
  check_meter("0.8%+3x10", OC_STATED, 0.8, 3, 10, 0);
  check_meter("0.8%+3@2000", OC_STATED, 0.8, 3, 0, 2000);
  check_meter("0.8%", OC_STATED, 0.8, 0, 0, 0);
  check_meter("@2000", OC_ASSUMED, 0, 0, 0, 2000);
  check_meter("exact", OC_EXACT, 0, 0, 0, 0);
}
END_TEST

START_TEST(an_accuracy_forgets_the_one_before_and_leaves_the_leads)
{
  oc_meter meter = meter_of("0.8%+3x10");
  ck_assert_int_eq(oc_leads_read("0.4+-0.1", &meter, NULL), OHM_OK);
  ck_assert_int_eq(oc_meter_read("@6000", &meter, NULL), OHM_OK);
  ck_assert_int_eq(meter.accuracy, OC_ASSUMED);
  CHECK_NEAR(meter.percent, 0, 0);
  CHECK_NEAR(meter.resolution_ohm, 0, 0);
  ck_assert_int_eq(meter.leads, OC_STATED);
  CHECK_NEAR(meter.lead_ohm, 0.4, 0);
}
END_TEST

START_TEST(an_accuracy_that_is_refused_changes_nothing)
{
  static const char *const wrong[] = {"",        "0.8",        "0.8+3", "0.8%+",   "0.8%+x10",
                                      "0.8%+3x", "0.8%+3@",    "@",     "0.8%+3x", "exact 1",
                                      "%",       "0.8%+3x10y", "+3",    "0.8%3",   "exactly"};
  static const char *const beyond[] = {"-0.8%+3",   "0.8%+-3",   "0.8%+3x-10", "100%+3",
                                       "0.8%+3@99", "0.8%+3@-1", "@50",        "@1e300"};
  oc_meter before = meter_of("0.5%+1x10");
  ohm_error error;
  for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
    oc_meter meter = before;
    PROVOKES(oc_meter_read, OHM_BAD_SYNTAX, oc_meter_read(wrong[i], &meter, &error));
    ck_assert_int_eq(memcmp(&meter, &before, sizeof meter), 0);
    ck_assert_ptr_nonnull(strstr(error.message, "write 0.8%+3, 0.8%+3x10"));
  }
  for (size_t i = 0; i < sizeof beyond / sizeof beyond[0]; i++) {
    oc_meter meter = before;
    PROVOKES(oc_meter_read, OHM_OUT_OF_RANGE, oc_meter_read(beyond[i], &meter, &error));
    ck_assert_int_eq(memcmp(&meter, &before, sizeof meter), 0);
    ck_assert_ptr_nonnull(strstr(error.message, "must not be negative"));
  }
}
END_TEST

START_TEST(an_accuracy_needs_a_text_and_a_meter)
{
  oc_meter meter = OC_METER_INIT;
  PROVOKES(oc_meter_read, OHM_NULL_ARGUMENT, oc_meter_read(NULL, &meter, NULL));
  PROVOKES(oc_meter_read, OHM_NULL_ARGUMENT, oc_meter_read("exact", NULL, NULL));
}
END_TEST

/* ---- leads ---- */

START_TEST(leads_are_read_with_and_without_a_limit)
{
  static const struct {
    const char *text;
    double lead_ohm;
    double lead_limit_ohm;
  } notations[] = {{"0.4", 0.4, 0.1},
                   {"0.4+-0.05", 0.4, 0.05},
                   {"0.4 \xC2\xB1 0.05 ohm", 0.4, 0.05},
                   {"0.4ohm+-0.2", 0.4, 0.2},
                   {"0+-0", 0, 0}};
  for (size_t i = 0; i < sizeof notations / sizeof notations[0]; i++) {
    oc_meter meter = meter_of("0.8%+3");
    PROVOKES(oc_leads_read, OHM_OK, oc_leads_read(notations[i].text, &meter, NULL));
    ck_assert_int_eq(meter.leads, OC_STATED);
    CHECK_NEAR(meter.lead_ohm, notations[i].lead_ohm, 0);
    CHECK_NEAR(meter.lead_limit_ohm, notations[i].lead_limit_ohm, 0);
    CHECK_NEAR(meter.percent, 0.8, 0);
  }
}
END_TEST

START_TEST(leads_that_are_refused_change_nothing)
{
  static const char *const wrong[] = {"", "ohm", "0.4+-", "0.4-+1", "0.4 0.1", "0.4+-0.1x"};
  static const char *const beyond[] = {"-0.4", "1001", "0.4+--0.1", "0.4+-1001"};
  oc_meter before = meter_of("0.5%+1x10");
  ohm_error error;
  for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
    oc_meter meter = before;
    PROVOKES(oc_leads_read, OHM_BAD_SYNTAX, oc_leads_read(wrong[i], &meter, &error));
    ck_assert_int_eq(memcmp(&meter, &before, sizeof meter), 0);
    ck_assert_ptr_nonnull(strstr(error.message, "such as 0.4 or 0.4+-0.1"));
  }
  for (size_t i = 0; i < sizeof beyond / sizeof beyond[0]; i++) {
    oc_meter meter = before;
    PROVOKES(oc_leads_read, OHM_OUT_OF_RANGE, oc_leads_read(beyond[i], &meter, &error));
    ck_assert_int_eq(memcmp(&meter, &before, sizeof meter), 0);
    ck_assert_ptr_nonnull(strstr(error.message, "write 0 to 1000 ohm"));
  }
}
END_TEST

START_TEST(leads_need_a_text_and_a_meter)
{
  oc_meter meter = OC_METER_INIT;
  PROVOKES(oc_leads_read, OHM_NULL_ARGUMENT, oc_leads_read(NULL, &meter, NULL));
  PROVOKES(oc_leads_read, OHM_NULL_ARGUMENT, oc_leads_read("0.4", NULL, NULL));
}
END_TEST

/* ---- limit of error ---- */

static double limit_of(const oc_meter *meter, const oc_reading *reading) {
  double limit_ohm;
  PROVOKES(oc_meter_limit, OHM_OK, oc_meter_limit(meter, reading, &limit_ohm));
  return limit_ohm;
}

static double limit_for(const char *accuracy, double r_ohm, double resolution_ohm) {
  oc_meter meter = meter_of(accuracy);
  oc_reading reading = OC_READING_INIT;
  reading.r_ohm = r_ohm;
  reading.resolution_ohm = resolution_ohm;
  return limit_of(&meter, &reading);
}

START_TEST(a_stated_resolution_beats_the_display_and_the_display_what_was_typed)
{
  oc_meter meter = meter_of("0%+1");
  oc_reading reading = read("1501");
  CHECK_NEAR(limit_of(&meter, &reading), 1, 0);
  meter.display_count = 200;
  CHECK_NEAR(limit_of(&meter, &reading), 10, 1e-12);
  meter.resolution_ohm = 100;
  CHECK_NEAR(limit_of(&meter, &reading), 100, 0);
}
END_TEST

START_TEST(a_limit_is_never_less_than_half_a_count)
{
  CHECK_NEAR(limit_for("0%", 1500, 10), 5, 0);
  CHECK_NEAR(limit_for("0%+0.2", 1500, 10), 5, 0);
  CHECK_NEAR(limit_for("0%+0.7", 1500, 10), 7, 1e-12);
  CHECK_NEAR(limit_for("1%", 1500, 10), 20, 1e-12);
}
END_TEST

START_TEST(what_is_not_told_is_assumed)
{
  oc_reading reading = read("2311");
  oc_meter all_zero = OC_METER_INIT;
  double want = OC_ASSUMED_METER_PERCENT / 100 * 2311 + OC_ASSUMED_METER_COUNTS * 1;
  CHECK_NEAR(limit_of(NULL, &reading), want, 1e-12);
  CHECK_NEAR(limit_of(&all_zero, &reading), want, 1e-12);
  reading.resolution_ohm = 0;
  want = OC_ASSUMED_METER_PERCENT / 100 * 2311 + OC_ASSUMED_METER_COUNTS * 10;
  CHECK_NEAR(limit_of(NULL, &reading), want, 1e-12);
}
END_TEST

/* One count of an assumed display of 2000, and half of what the zeros leave open. */
START_TEST(open_digits_cost_half_of_what_they_leave_open)
{
  static const struct {
    const char *text;
    double limit_ohm;
  } texts[] = {{"2300", 23 + 3 * 10 + 50},
               {"1500", 15 + 3 * 1 + 50},
               {"10k", 100 + 3 * 10 + 500},
               {"2310", 23.1 + 3 * 10}};
  for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
    oc_reading reading = read(texts[i].text);
    CHECK_NEAR(limit_of(NULL, &reading), texts[i].limit_ohm, 1e-9);
  }
}
END_TEST

START_TEST(a_stated_display_or_resolution_knows_every_digit)
{
  static const char *const shown[] = {"2300", "2000", "10k"};
  for (size_t i = 0; i < sizeof shown / sizeof shown[0]; i++) {
    oc_reading open = read(shown[i]);
    oc_reading all = open;
    all.zeros_ohm = 0;
    oc_meter meter = meter_of("1%+3@6000");
    CHECK_NEAR(limit_of(&meter, &open), limit_of(&meter, &all), 0);
    meter = meter_of("1%+3x1");
    CHECK_NEAR(limit_of(&meter, &open), 0.01 * open.r_ohm + 3, 1e-9);
  }
}
END_TEST

START_TEST(an_exact_meter_has_no_limit_of_error)
{
  oc_meter meter = meter_of("exact");
  oc_reading reading = read("2.31k");
  CHECK_NEAR(limit_of(&meter, &reading), 0, 0);
}
END_TEST

START_TEST(a_display_shows_decimal_steps_whatever_the_decade)
{
  for (double lead = 1; lead < 10; lead += 0.037) {
    double first = limit_for("0.8%+3@2000", 1000 * lead, 0);
    double decade = 1;
    for (int i = 0; i < 6; i++, decade *= 10)
      CHECK_NEAR(limit_for("0.8%+3@2000", 1000 * lead * decade, 0), first * decade,
                 1e-13 * first * decade);
  }
}
END_TEST

START_TEST(a_range_ends_at_its_display_count)
{
  CHECK_NEAR(limit_for("0%+1@2000", 199.9, 0), 0.1, 1e-15);
  CHECK_NEAR(limit_for("0%+1@2000", 200, 0), 1, 1e-15);
  CHECK_NEAR(limit_for("0%+1@2000", 1999, 0), 1, 1e-15);
  CHECK_NEAR(limit_for("0%+1@2000", 2000, 0), 10, 1e-14);
  CHECK_NEAR(limit_for("0%+1@6000", 5999, 0), 1, 1e-15);
}
END_TEST

START_TEST(a_limit_grows_with_each_part_of_its_specification)
{
  double least = limit_for("0.5%+1x1", 1500, 0);
  ck_assert(limit_for("0.6%+1x1", 1500, 0) > least);
  ck_assert(limit_for("0.5%+2x1", 1500, 0) > least);
  ck_assert(limit_for("0.5%+1x10", 1500, 0) > least);
  ck_assert(limit_for("0.5%+1x1", 1600, 0) > least);
}
END_TEST

START_TEST(a_display_without_a_number_has_no_limit)
{
  static const char *const shown[] = {"OL", "OL@20k", "open", "1"};
  for (size_t i = 0; i < sizeof shown / sizeof shown[0]; i++) {
    oc_reading reading = read(shown[i]);
    double limit_ohm = 1;
    ohm_estimate r_ohm = {1, 1};
    PROVOKES(oc_meter_limit, OHM_OUT_OF_RANGE, oc_meter_limit(NULL, &reading, &limit_ohm));
    PROVOKES(oc_meter_estimate, OHM_OUT_OF_RANGE, oc_meter_estimate(NULL, &reading, &r_ohm));
    ck_assert(isnan(limit_ohm) && isnan(r_ohm.value) && isnan(r_ohm.u));
  }
}
END_TEST

static void check_bad(const oc_meter *meter, const oc_reading *reading) {
  double limit_ohm = 1;
  ohm_estimate r_ohm = {1, 1};
  PROVOKES(oc_meter_limit, OHM_BAD_ARGUMENT, oc_meter_limit(meter, reading, &limit_ohm));
  PROVOKES(oc_meter_estimate, OHM_BAD_ARGUMENT, oc_meter_estimate(meter, reading, &r_ohm));
  ck_assert(isnan(limit_ohm) && isnan(r_ohm.value) && isnan(r_ohm.u));
}

START_TEST(a_member_that_is_nan_infinite_or_negative_is_a_bad_argument)
{
  static const double bad[] = {NAN, INFINITY, -INFINITY, -1};
  for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
    for (int member = 0; member < 6; member++) {
      oc_meter meter = OC_METER_INIT;
      double *const members[] = {&meter.percent,       &meter.counts,   &meter.resolution_ohm,
                                 &meter.display_count, &meter.lead_ohm, &meter.lead_limit_ohm};
      *members[member] = bad[i];
      oc_reading reading = read("2310");
      check_bad(&meter, &reading);
    }
    oc_reading reading = read("2310");
    reading.r_ohm = bad[i];
    check_bad(NULL, &reading);
    reading = read("2310");
    reading.resolution_ohm = bad[i];
    check_bad(NULL, &reading);
  }
}
END_TEST

START_TEST(a_constant_that_is_none_is_a_bad_argument)
{
  static const int none[] = {-1, 3, 1000};
  for (size_t i = 0; i < sizeof none / sizeof none[0]; i++) {
    oc_reading reading = read("2310");
    oc_meter meter = OC_METER_INIT;
    meter.accuracy = none[i];
    check_bad(&meter, &reading);
    meter = (oc_meter)OC_METER_INIT;
    meter.leads = none[i];
    check_bad(&meter, &reading);
  }
  static const int no_display[] = {-1, OC_DISPLAY_ONE + 1, 1000};
  for (size_t i = 0; i < sizeof no_display / sizeof no_display[0]; i++) {
    oc_reading reading = read("2310");
    reading.display = no_display[i];
    check_bad(NULL, &reading);
  }
}
END_TEST

START_TEST(a_member_beyond_its_bound_is_a_bad_argument)
{
  for (int member = 0; member < 7; member++) {
    oc_meter meter = OC_METER_INIT;
    double *const members[] = {&meter.percent,       &meter.counts,   &meter.resolution_ohm,
                               &meter.display_count, &meter.lead_ohm, &meter.lead_limit_ohm,
                               &meter.current_ma};
    static const double beyond[] = {100, 1.1e6, 1.1e12, 1.1e9, 1001, 1001, 1001};
    *members[member] = beyond[member];
    oc_reading reading = read("2310");
    check_bad(&meter, &reading);
  }
  for (int member = 0; member < 4; member++) {
    oc_reading reading = read("2310");
    double *const members[] = {&reading.r_ohm, &reading.resolution_ohm, &reading.range_ohm,
                               &reading.zeros_ohm};
    *members[member] = 1.1e12;
    check_bad(NULL, &reading);
  }
}
END_TEST

START_TEST(a_resistance_is_a_number_in_any_notation_of_a_display)
{
  static const struct {
    const char *text;
    double r_ohm;
  } rows[] = {{"2310", 2310}, {"2k31", 2310}, {"2.31 kohm", 2310},
              {"0R47", 0.47}, {"1", 1},       {"0", 0}};
  double r_ohm;
  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
    PROVOKES(ohm_resistance_read, OHM_OK, ohm_resistance_read(rows[i].text, &r_ohm, NULL));
    CHECK_NEAR(r_ohm, rows[i].r_ohm, 1e-12 * rows[i].r_ohm);
  }
}
END_TEST

START_TEST(what_is_no_resistance_leaves_nan_and_a_sentence)
{
  static const char *const none[] = {"", "OL", "OL@20k", "open", "2.31k@20C", "ohm", "21C"};
  double r_ohm;
  ohm_error error;
  for (size_t i = 0; i < sizeof none / sizeof none[0]; i++) {
    PROVOKES(ohm_resistance_read, OHM_BAD_SYNTAX, ohm_resistance_read(none[i], &r_ohm, &error));
    ck_assert(isnan(r_ohm) && error.message[0]);
  }
  PROVOKES(ohm_resistance_read, OHM_OUT_OF_RANGE, ohm_resistance_read("-1", &r_ohm, NULL));
  PROVOKES(ohm_resistance_read, OHM_OUT_OF_RANGE, ohm_resistance_read("1e13", &r_ohm, NULL));
  PROVOKES(ohm_resistance_read, OHM_NULL_ARGUMENT, ohm_resistance_read(NULL, &r_ohm, NULL));
  ck_assert(isnan(r_ohm));
  PROVOKES(ohm_resistance_read, OHM_NULL_ARGUMENT, ohm_resistance_read("1k", NULL, &error));
}
END_TEST

START_TEST(a_limit_needs_a_reading_and_an_output)
{
  oc_reading reading = read("2310");
  double limit_ohm = 1;
  ohm_estimate r_ohm = {1, 1};
  PROVOKES(oc_meter_limit, OHM_NULL_ARGUMENT, oc_meter_limit(NULL, NULL, &limit_ohm));
  PROVOKES(oc_meter_limit, OHM_NULL_ARGUMENT, oc_meter_limit(NULL, &reading, NULL));
  PROVOKES(oc_meter_estimate, OHM_NULL_ARGUMENT, oc_meter_estimate(NULL, NULL, &r_ohm));
  PROVOKES(oc_meter_estimate, OHM_NULL_ARGUMENT, oc_meter_estimate(NULL, &reading, NULL));
  ck_assert(isnan(limit_ohm) && isnan(r_ohm.value) && isnan(r_ohm.u));
}
END_TEST

/* ---- resistance at the probes' tips ---- */

static ohm_estimate estimate_of(const oc_meter *meter, const char *text) {
  oc_reading reading = read(text);
  ohm_estimate r_ohm;
  PROVOKES(oc_meter_estimate, OHM_OK, oc_meter_estimate(meter, &reading, &r_ohm));
  return r_ohm;
}

START_TEST(leads_are_taken_off_and_never_below_0)
{
  oc_meter meter = meter_of("exact");
  for (double lead_ohm = 0; lead_ohm < 1000; lead_ohm += 7.3) {
    meter.leads = OC_STATED;
    meter.lead_ohm = lead_ohm;
    ohm_estimate r_ohm = estimate_of(&meter, "500");
    CHECK_NEAR(r_ohm.value, fmax(0, 500 - lead_ohm), 0);
    CHECK_NEAR(r_ohm.u, 0, 0);
  }
}
END_TEST

START_TEST(limits_of_meter_and_leads_add_as_rectangles)
{
  oc_meter meter = meter_of("0%+3x10");
  ck_assert_int_eq(oc_leads_read("0.5+-40", &meter, NULL), OHM_OK);
  ohm_estimate r_ohm = estimate_of(&meter, "2310");
  CHECK_NEAR(r_ohm.value, 2309.5, 0);
  CHECK_NEAR(r_ohm.u, sqrt((30.0 * 30 + 40.0 * 40) / 3), 1e-12);
}
END_TEST

START_TEST(exact_leads_take_nothing_off)
{
  oc_meter meter = meter_of("exact");
  meter.leads = OC_EXACT;
  meter.lead_ohm = 100;
  meter.lead_limit_ohm = 100;
  ohm_estimate r_ohm = estimate_of(&meter, "2310");
  CHECK_NEAR(r_ohm.value, 2310, 0);
  CHECK_NEAR(r_ohm.u, 0, 0);
}
END_TEST

START_TEST(leads_that_are_not_told_are_assumed)
{
  ohm_estimate r_ohm = estimate_of(NULL, "2311");
  CHECK_NEAR(r_ohm.value, 2311 - OC_ASSUMED_LEAD_OHM, 1e-12);
  double limit_ohm = OC_ASSUMED_METER_PERCENT / 100 * 2311 + OC_ASSUMED_METER_COUNTS;
  CHECK_NEAR(r_ohm.u, hypot(limit_ohm, OC_ASSUMED_LEAD_LIMIT_OHM) / sqrt(3), 1e-12);
}
END_TEST

int main(void) {
  int notations =
      RUN_TESTS("notations of a meter", every_notation_of_a_resistance_is_read_with_its_resolution,
                over_range_is_not_open, over_range_may_say_on_which_range,
                a_lone_1_is_no_number_and_1_with_more_is, whole_numbers_leave_their_zeros_open,
                a_number_without_unit_or_prefix_is_bare, a_comma_is_answered_with_the_text_to_write,
                what_is_no_reading_is_refused_with_the_notations,
                a_resistance_below_0_or_above_1e12_is_out_of_range,
                a_reading_needs_a_text_and_an_output, every_notation_of_an_accuracy_is_read,
                an_accuracy_forgets_the_one_before_and_leaves_the_leads,
                an_accuracy_that_is_refused_changes_nothing, an_accuracy_needs_a_text_and_a_meter,
                leads_are_read_with_and_without_a_limit, leads_that_are_refused_change_nothing,
                leads_need_a_text_and_a_meter);
  int errors = RUN_TESTS(
      "meter", a_stated_resolution_beats_the_display_and_the_display_what_was_typed,
      a_limit_is_never_less_than_half_a_count, what_is_not_told_is_assumed,
      open_digits_cost_half_of_what_they_leave_open,
      a_stated_display_or_resolution_knows_every_digit, an_exact_meter_has_no_limit_of_error,
      a_display_shows_decimal_steps_whatever_the_decade, a_range_ends_at_its_display_count,
      a_limit_grows_with_each_part_of_its_specification, a_display_without_a_number_has_no_limit,
      a_member_that_is_nan_infinite_or_negative_is_a_bad_argument,
      a_constant_that_is_none_is_a_bad_argument, a_member_beyond_its_bound_is_a_bad_argument,
      a_limit_needs_a_reading_and_an_output, a_resistance_is_a_number_in_any_notation_of_a_display,
      what_is_no_resistance_leaves_nan_and_a_sentence, leads_are_taken_off_and_never_below_0,
      limits_of_meter_and_leads_add_as_rectangles, exact_leads_take_nothing_off,
      leads_that_are_not_told_are_assumed);
  return notations | errors;
}
