/* SPDX-License-Identifier: MIT */
#include "../rows.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* ---- printed tables ---- */

enum { TABLE, SUSPECTS, FITS, REMARK, WHY, TABLE_CELLS };

static struct row tables[ROWS_MAX];

static ohm_audit *loaded(const char *table) {
  char name[128];
  snprintf(name, sizeof name, "tests/sensors/%s.csv", table);
  char *path = source_path(name);
  ohm_error error;
  ohm_audit *audit = ohm_audit_load(path, &error);
  ck_assert_msg(audit != NULL, "%s", error.message);
  free(path);
  return audit;
}

/* The next word of a list apart by spaces. */
static const char *next_word(const char **list, char *word, size_t size) {
  *list += strspn(*list, " ");
  size_t length = strcspn(*list, " ");
  ck_assert_uint_lt(length, size);
  memcpy(word, *list, length);
  word[length] = '\0';
  *list += length;
  return word;
}

static void check_kind(const ohm_suspect *suspect, const char *kind) {
  /* Whether a slip happens to lead there is no matter of the page. */
  if (strcmp(kind, "line") == 0 && suspect->kind == OHM_SUSPECT_DIGITS)
    return;
  ck_assert_str_eq(ohm_suspicion_name(suspect->kind), kind);
}

static void check_suspects(const ohm_audit *audit, const struct row *table) {
  const char *expected = table->cell[SUSPECTS];
  const char *fits = table->cell[FITS];
  size_t count = 0;
  while (strcmp(expected, "-") != 0 && *expected) {
    char word[64];
    double t_c;
    const ohm_suspect *suspect = ohm_audit_suspect(audit, count++);
    ck_assert_msg(suspect != NULL, "%s: not found: %s", table->cell[TABLE], expected);
    next_word(&expected, word, sizeof word);
    char *colon = strchr(word, ':');
    ck_assert_int_eq(ohm_number_read(word, (size_t)(colon - word), &t_c), OHM_OK);
    CHECK_NEAR(suspect->t_c, t_c, 0);
    check_kind(suspect, colon + 1);
    next_word(&fits, word, sizeof word);
    if (strcmp(word, "?") == 0)
      ck_assert_ptr_null(suspect->would_fit);
    else if (strcmp(word, "*") != 0)
      ck_assert_str_eq(suspect->would_fit, word);
  }
  ck_assert_msg(ohm_audit_count(audit) == count, "%s: also %s", table->cell[TABLE],
                count < ohm_audit_count(audit) ? ohm_audit_suspect(audit, count)->sentence : "");
}

START_TEST(a_printed_table_is_suspected_of_what_is_wrong_with_it_and_no_more)
{
  const struct row *table = &tables[_i];
  ohm_audit *audit = loaded(table->cell[TABLE]);
  check_suspects(audit, table);
  bool remarks = strcmp(table->cell[REMARK], "-") != 0;
  ck_assert_uint_eq(ohm_audit_remark_count(audit), remarks);
  if (remarks)
    ck_assert_msg(strstr(ohm_audit_remark(audit, 0), table->cell[REMARK]) != NULL, "%s",
                  ohm_audit_remark(audit, 0));
  ohm_audit_free(audit);
}
END_TEST

/* ---- one misprint each ---- */

static ohm_audit *parsed(const char *text) {
  ohm_error error;
  ohm_audit *audit = ohm_audit_parse(text, strlen(text), "page", &error);
  ck_assert_msg(audit != NULL, "%s", error.message);
  ck_assert_int_eq(error.status, OHM_OK);
  return audit;
}

struct found {
  int kind;
  int line;
  int column;
  const char *name;
  const char *printed;
  const char *would_fit; /* NULL for none */
};

/* All that is found, and nothing else. */
static void check_found(const char *text, const struct found *found, size_t count) {
  ohm_audit *audit = parsed(text);
  for (size_t i = 0; i < count; i++) {
    const ohm_suspect *suspect = ohm_audit_suspect(audit, i);
    ck_assert_msg(suspect != NULL, "nothing found in %s", text);
    ck_assert_str_eq(ohm_suspicion_name(suspect->kind), ohm_suspicion_name(found[i].kind));
    ck_assert_int_eq(suspect->line, found[i].line);
    ck_assert_int_eq(suspect->column, found[i].column);
    ck_assert_str_eq(suspect->name, found[i].name);
    ck_assert_str_eq(suspect->printed, found[i].printed);
    if (found[i].would_fit)
      ck_assert_str_eq(suspect->would_fit, found[i].would_fit);
    else
      ck_assert_ptr_null(suspect->would_fit);
  }
  ck_assert_msg(ohm_audit_count(audit) == count, "also: %s",
                count < ohm_audit_count(audit) ? ohm_audit_suspect(audit, count)->sentence : "");
  ohm_audit_free(audit);
}

#define CHECK_FOUND(text, ...)                                                                     \
  check_found(text, (const struct found[]){__VA_ARGS__},                                           \
              sizeof(const struct found[]){__VA_ARGS__} / sizeof(struct found))

/* ILX Lightwave LDT-5525 manual, appendix A, table A.1; the fit through 0, 25 and 50 C
 * gives 5230.7 at 40 C. */
static const char ilx[] = "temp_c,r_nom_ohm\n0,32128\n10,19549\n20,12262\n25,9814\n"
                          "30,7908\n40,5331\n50,3542\n";

START_TEST(a_wrong_digit_of_a_published_table_is_found)
{ CHECK_FOUND(ilx, {OHM_SUSPECT_DIGITS, 7, 4, "r_nom_ohm", "5331", "5231"}); }
END_TEST

START_TEST(a_suspect_says_what_would_fit_how_sure_it_is_and_why)
{
  ohm_audit *audit = parsed(ilx);
  const ohm_suspect *suspect = ohm_audit_suspect(audit, 0);
  ck_assert(suspect->low < 5230.7 && 5230.7 < suspect->high);
  ck_assert(suspect->high - suspect->low < 50);
  ck_assert(suspect->level > 0.99);
  const char *begins = "page, line 7, column 4: r_nom_ohm 5331 at 40 C looks like a misprint, "
                       "it lies 1.9 % above 5.231 k, where the other rows lead (";
  ck_assert_msg(strncmp(suspect->sentence, begins, strlen(begins)) == 0, "%s", suspect->sentence);
  ck_assert_ptr_nonnull(
      strstr(suspect->sentence, "); 5231, with one other digit, would fit; look it up again"));
  ohm_audit_free(audit);
}
END_TEST

/* Mazda BT-50 workshop manual, ECT sensor inspection, 10 K steps; one row misprinted. */
#define BT50_COLD "temp_c,r_nom_ohm\n-40,48140\n-30,26740\n-20,15480\n-10,9308\n0,5790\n10,3714\n"
#define BT50_HOT  "30,1658\n40,1148\n50,812.6\n60,586.5\n70,431.1\n80,322.2\n"

START_TEST(each_slip_of_digits_is_found_and_undone)
{
  CHECK_FOUND(BT50_COLD "20,2540\n" BT50_HOT,
              {OHM_SUSPECT_DIGITS, 8, 4, "r_nom_ohm", "2540", "2450"});
  CHECK_FOUND(BT50_COLD "20,24500\n" BT50_HOT,
              {OHM_SUSPECT_DIGITS, 8, 4, "r_nom_ohm", "24500", "2450"});
  CHECK_FOUND(BT50_COLD "20,245\n" BT50_HOT,
              {OHM_SUSPECT_DIGITS, 8, 4, "r_nom_ohm", "245", "2450"});
  CHECK_FOUND(BT50_COLD "20,2.45\n" BT50_HOT,
              {OHM_SUSPECT_DIGITS, 8, 4, "r_nom_ohm", "2.45", "2450"});
  CHECK_FOUND(BT50_COLD "20,2950\n" BT50_HOT,
              {OHM_SUSPECT_DIGITS, 8, 4, "r_nom_ohm", "2950", "2450"});
}
END_TEST

START_TEST(a_figure_that_no_slip_explains_is_still_suspect)
{
  CHECK_FOUND(BT50_COLD "20,2777.7\n" BT50_HOT,
              {OHM_SUSPECT_LINE, 8, 4, "r_nom_ohm", "2777.7", NULL});
}
END_TEST

START_TEST(a_row_flagged_suspect_is_looked_at_like_any_other)
{
  CHECK_FOUND("temp_c,r_nom_ohm,flag\n0,32128,\n10,19549,\n20,12262,\n25,9814,\n"
              "30,7908,\n40,5331,suspect\n50,3542,\n",
              {OHM_SUSPECT_DIGITS, 7, 4, "r_nom_ohm", "5331", "5231"});
}
END_TEST

/* Sensor Scientific, reference table for Pt elements, every 10 C: 35.34 at -160 C, where
 * IEC 60751 and another print give 35.54. */
START_TEST(platinum_is_audited_like_thermistors)
{
  ohm_audit *audit = parsed("temp_c,r_nom_ohm\n-200,18.52\n-190,22.83\n-180,27.10\n-170,31.34\n"
                            "-160,35.34\n-150,39.72\n-140,43.88\n-130,48.00\n-120,52.11\n"
                            "-110,56.19\n-100,60.26\n-90,64.30\n");
  ck_assert_uint_eq(ohm_audit_count(audit), 1);
  ck_assert_str_eq(ohm_audit_suspect(audit, 0)->would_fit, "35.54");
  ck_assert_uint_eq(ohm_audit_remark_count(audit), 1);
  ck_assert_ptr_nonnull(strstr(ohm_audit_remark(audit, 0), "rises with temperature"));
  ohm_audit_free(audit);
}
END_TEST

START_TEST(neighbouring_rows_off_together_are_told_as_another_curve)
{
  ohm_audit *audit = parsed(BT50_COLD "20,2450\n30,1658\n40,1263\n50,893.9\n60,645.2\n70,431.1\n"
                                      "80,322.2\n90,244.6\n100,188.4\n110,147.1\n120,116.3\n");
  ck_assert_uint_eq(ohm_audit_count(audit), 3);
  for (size_t i = 0; i < 3; i++) {
    ck_assert_int_eq(ohm_audit_suspect(audit, i)->kind, OHM_SUSPECT_CURVE);
    ck_assert_int_eq(ohm_audit_suspect(audit, i)->line, 10 + (int)i);
    ck_assert_ptr_null(ohm_audit_suspect(audit, i)->would_fit);
  }
  ck_assert_uint_eq(ohm_audit_remark_count(audit), 1);
  ck_assert_str_eq(ohm_audit_remark(audit, 0),
                   "page: the rows from 40 to 60 C lie together above the line through the "
                   "others: they may be of another curve");
  ohm_audit_free(audit);
}
END_TEST

START_TEST(rounding_of_printed_digits_is_no_misprint)
{
  check_found("temp_c,r_nom_ohm\n-40,48100\n-20,15600\n0,5880\n20,2510\n40,1190\n60,610\n"
              "80,320\n100,180\n120,100\n140,60\n150,50\n",
              NULL, 0);
}
END_TEST

/* ---- limits ---- */

#define LIMITS "temp_c,r_min_ohm,r_max_ohm\n-20,85850,108390\n-10,49250,61430\n0,29330,35990\n"

START_TEST(a_misprinted_limit_is_found_in_its_own_column)
{
  CHECK_FOUND(LIMITS "10,17990,28110\n20,11370,13610\n30,7370,8750\n40,4900,5750\n",
              {OHM_SUSPECT_DIGITS, 5, 10, "r_max_ohm", "28110", "21810"});
}
END_TEST

START_TEST(limits_that_are_exchanged_are_found_where_no_line_can_be_drawn)
{
  CHECK_FOUND("temp_c,r_min_ohm,r_max_ohm\n20,2590,2310\n80,310,326\n",
              {OHM_SUSPECT_BAND, 2, 9, "r_max_ohm", "2310", NULL});
}
END_TEST

START_TEST(a_nominal_outside_its_limits_is_found)
{
  CHECK_FOUND("temp_c,r_min_ohm,r_nom_ohm,r_max_ohm\n20,2500,2450,2590\n80,310,318,326\n",
              {OHM_SUSPECT_BAND, 2, 4, "r_min_ohm", "2500", NULL});
  CHECK_FOUND("temp_c,r_min_ohm,r_nom_ohm,r_max_ohm\n20,2310,2450,2390\n80,310,318,326\n",
              {OHM_SUSPECT_BAND, 2, 14, "r_max_ohm", "2390", NULL});
}
END_TEST

START_TEST(rows_of_a_makers_band_are_a_table_of_their_own)
{
  check_found("temp_c,r_min_ohm,r_nom_ohm,r_max_ohm,band\n0,,5790,,\n20,,2450,,\n80,,322,,\n"
              "0,5000,,6600,one\n20,2100,,2800,one\n80,290,,350,one\n",
              NULL, 0);
  CHECK_FOUND("temp_c,r_min_ohm,r_nom_ohm,r_max_ohm,band\n0,,5790,,\n20,,2450,,\n"
              "0,5000,,6600,one\n20,2800,,2100,one\n",
              {OHM_SUSPECT_BAND, 5, 10, "r_max_ohm", "2100", NULL});
}
END_TEST

/* ---- order ---- */

START_TEST(a_resistance_that_does_not_fall_is_found_in_a_short_table)
{
  CHECK_FOUND("temp_c,r_nom_ohm\n0,5790\n20,24500\n40,1148\n80,322\n",
              {OHM_SUSPECT_ORDER, 3, 4, "r_nom_ohm", "24500", NULL});
}
END_TEST

START_TEST(a_row_flagged_already_bears_the_blame_for_the_order)
{
  CHECK_FOUND("temp_c,r_nom_ohm,flag\n0,1,suspect\n25,10000,\n50,3600,\n",
              {OHM_SUSPECT_ORDER, 2, 3, "r_nom_ohm", "1", NULL});
}
END_TEST

START_TEST(a_temperature_out_of_its_place_is_found)
{
  CHECK_FOUND("temp_c,r_nom_ohm\n-20,15480\n0,5790\n20,2450\n400,1148\n60,586.5\n80,322.2\n",
              {OHM_SUSPECT_ORDER, 5, 1, "temp_c", "400", "40"});
}
END_TEST

START_TEST(rows_may_fall_in_temperature_or_stand_in_no_order)
{
  check_found("temp_c,r_nom_ohm\n80,322.2\n60,586.5\n40,1148\n20,2450\n0,5790\n", NULL, 0);
  check_found("temp_c,r_nom_ohm\n80,322.2\n0,5790\n60,586.5\n20,2450\n40,1148\n", NULL, 0);
}
END_TEST

/* ---- degrees ---- */

/* BMW 325i 1988, Motronic component testing: 178 F printed for 80 C. Saab 9-3 2002,
 * technical data of sensor 202: -10 (-14). */
START_TEST(degrees_that_disagree_are_found_in_a_column_of_fahrenheit)
{
  CHECK_FOUND("temp_c,temp_f,r_min_ohm,r_max_ohm\n-10,14,8200,10500\n20,68,2200,2700\n"
              "80,178,300,360\n",
              {OHM_SUSPECT_DEGREES, 4, 4, "temp_c", "80", NULL});
  CHECK_FOUND("temp_c,temp_f,r_min_ohm,r_max_ohm\n-10,-14,7000,11400\n20,68,2100,2900\n",
              {OHM_SUSPECT_DEGREES, 2, 5, "temp_c", "-10", NULL});
}
END_TEST

START_TEST(degrees_agree_within_their_rounding)
{
  check_found("temp_c,r_nom_ohm,as_printed\n-17.78,25000,0 F -18 C 25000\n4.44,7500,40 F 4 C\n"
              "37.78,1600,100 F (38 C)\n100,185,212 F 100 C 185\n",
              NULL, 0);
}
END_TEST

START_TEST(the_sentence_on_degrees_converts_both_ways)
{
  ohm_audit *audit = parsed("temp_c,r_nom_ohm,as_printed\n21.11,3400,70 F 20 C\n100,185,\n");
  ck_assert_str_eq(ohm_audit_suspect(audit, 0)->sentence,
                   "page, line 2, column 12: the degrees disagree: 70 F is 21.1 C, and 20 C is "
                   "68 F; find out which of the two is meant");
  ohm_audit_free(audit);
}
END_TEST

/* ---- volts ---- */

START_TEST(volts_that_do_not_fit_the_pull_up_are_found_by_the_supply_that_is_told)
{
  CHECK_FOUND("# supply_v: 8\ntemp_c,r_nom_ohm,v_signal\n0,5790,6.82\n20,2450,5.68\n"
              "40,1148,4.78\n60,586.5,2.96\n80,322.2,1.95\n",
              {OHM_SUSPECT_VOLTS, 5, 9, "v_signal", "4.78", "4.28"});
}
END_TEST

START_TEST(an_input_of_two_ranges_raises_no_doubt)
{
  ohm_audit *audit = parsed("temp_c,r_nom_ohm,v_signal\n0,5790,1.83\n20,2450,0.98\n"
                            "40,1148,3.84\n60,586.5,3.13\n80,322.2,2.40\n");
  ck_assert_uint_eq(ohm_audit_count(audit), 0);
  ck_assert_uint_eq(ohm_audit_remark_count(audit), 0);
  ohm_audit_free(audit);
}
END_TEST

/* ---- what a loader says ---- */

START_TEST(a_loaded_sensor_notes_a_misprint_and_keeps_the_row)
{
  ohm_sensor *sensor = ohm_sensor_parse(ilx, strlen(ilx), "page", NULL);
  ck_assert_uint_eq(ohm_sensor_note_count(sensor), 1);
  ohm_audit *audit = parsed(ilx);
  ck_assert_str_eq(ohm_sensor_note(sensor, 0), ohm_audit_suspect(audit, 0)->sentence);
  double r_ohm;
  ck_assert_int_eq(ohm_curve_resistance(ohm_sensor_curve(sensor), 40, &r_ohm), OHM_OK);
  CHECK_NEAR(r_ohm, 5331, 1e-9);
  ohm_audit_free(audit);
  ohm_sensor_free(sensor);
}
END_TEST

/* ---- refusals ---- */

START_TEST(what_cannot_be_audited_is_refused)
{
  ohm_error error;
  const char *text = "temp_c,r_nom_ohm\n20,2450\n";
  PROVOKES(ohm_audit_parse, OHM_NULL_ARGUMENT,
           (ohm_audit_parse(NULL, 0, "page", &error), error.status));
  PROVOKES(ohm_audit_parse, OHM_NULL_ARGUMENT,
           (ohm_audit_parse(text, strlen(text), NULL, &error), error.status));
  PROVOKES(ohm_audit_parse, OHM_BAD_SYNTAX,
           (ohm_audit_parse("temp_c\n", 7, "page", &error), error.status));
  PROVOKES(ohm_audit_parse, OHM_BAD_DEFINITION,
           (ohm_audit_parse("# name: x\n", 10, "page", &error), error.status));
  PROVOKES(ohm_audit_parse, OHM_TOO_LARGE,
           (ohm_audit_parse(text, (size_t)16 * 1024 * 1024 + 1, "page", &error), error.status));
  PROVOKES(ohm_audit_load, OHM_NULL_ARGUMENT, (ohm_audit_load(NULL, &error), error.status));
  PROVOKES(ohm_audit_load, OHM_CANNOT_OPEN, (ohm_audit_load("no/such.csv", &error), error.status));
  ck_assert_ptr_null(ohm_audit_parse(NULL, 0, NULL, NULL));
}
END_TEST

static ohm_status status_of_file(const char *text) {
  static const char name[] = "test_audit.csv";
  FILE *file = fopen(name, "wb");
  ck_assert_ptr_nonnull(file);
  ck_assert_int_ge(fputs(text, file), 0);
  ck_assert_int_eq(fclose(file), 0);
  ohm_error error;
  ohm_audit *audit = ohm_audit_load(name, &error);
  ohm_audit_free(audit);
  ck_assert_int_eq(remove(name), 0);
  return (ohm_status)error.status;
}

START_TEST(a_file_is_refused_for_what_its_text_would_be)
{
  ck_assert_int_eq(status_of_file("temp_c,r_nom_ohm\n20,2450\n"), OHM_OK);
  PROVOKES(ohm_audit_load, OHM_BAD_SYNTAX, status_of_file("t,r\n1,2\n"));
  PROVOKES(ohm_audit_load, OHM_BAD_DEFINITION, status_of_file("# model: beta\n"));
}
END_TEST

START_TEST(more_rows_than_4096_are_refused)
{
  static char text[200000] = "temp_c,r_nom_ohm\n";
  size_t length = strlen(text);
  for (int i = 0; i < 4097; i++)
    length += (size_t)snprintf(text + length, sizeof text - length, "%d.%d,%d\n", i / 10, i % 10,
                               100000 - i);
  ohm_error error;
  PROVOKES(ohm_audit_parse, OHM_TOO_LARGE,
           (ohm_audit_parse(text, length, "page", &error), error.status));
  PROVOKES(ohm_audit_load, OHM_TOO_LARGE, status_of_file(text));
}
END_TEST

START_TEST(no_audit_holds_nothing)
{
  ck_assert_uint_eq(ohm_audit_row_count(NULL), 0);
  ck_assert_uint_eq(ohm_audit_count(NULL), 0);
  ck_assert_ptr_null(ohm_audit_suspect(NULL, 0));
  ck_assert_uint_eq(ohm_audit_remark_count(NULL), 0);
  ck_assert_ptr_null(ohm_audit_remark(NULL, 0));
  ck_assert_ptr_null(ohm_suspicion_name(-1));
  ck_assert_ptr_null(ohm_suspicion_name(OHM_SUSPECT_VOLTS + 1));
  ohm_audit_free(NULL);
}
END_TEST

int main(void) {
  size_t count = rows_read("tests/audit_expected.psv", TABLE_CELLS, tables, 0);
  int printed = RUN_TESTS_FOR_EACH(
      "printed tables", count, a_printed_table_is_suspected_of_what_is_wrong_with_it_and_no_more);
  int invented = RUN_TESTS(
      "audit", a_wrong_digit_of_a_published_table_is_found,
      a_suspect_says_what_would_fit_how_sure_it_is_and_why, each_slip_of_digits_is_found_and_undone,
      a_figure_that_no_slip_explains_is_still_suspect,
      a_row_flagged_suspect_is_looked_at_like_any_other, platinum_is_audited_like_thermistors,
      neighbouring_rows_off_together_are_told_as_another_curve,
      rounding_of_printed_digits_is_no_misprint, a_misprinted_limit_is_found_in_its_own_column,
      limits_that_are_exchanged_are_found_where_no_line_can_be_drawn,
      a_nominal_outside_its_limits_is_found, rows_of_a_makers_band_are_a_table_of_their_own,
      a_resistance_that_does_not_fall_is_found_in_a_short_table,
      a_row_flagged_already_bears_the_blame_for_the_order, a_temperature_out_of_its_place_is_found,
      rows_may_fall_in_temperature_or_stand_in_no_order,
      degrees_that_disagree_are_found_in_a_column_of_fahrenheit,
      degrees_agree_within_their_rounding, the_sentence_on_degrees_converts_both_ways,
      volts_that_do_not_fit_the_pull_up_are_found_by_the_supply_that_is_told,
      an_input_of_two_ranges_raises_no_doubt, a_loaded_sensor_notes_a_misprint_and_keeps_the_row,
      what_cannot_be_audited_is_refused, a_file_is_refused_for_what_its_text_would_be,
      more_rows_than_4096_are_refused, no_audit_holds_nothing);
  return printed | invented;
}
