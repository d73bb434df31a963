/* SPDX-License-Identifier: MIT */
/*
 * The header says in words what holds without a setting. Those words are the figures of the
 * trade, and a bench without the setting answers as one with it.
 */
#include "../support.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "../../lib/ground/trade.h"

/* Here figures are only written. */
#undef OC_FIGURE
#define OC_FIGURE(figure) #figure

static const struct {
  ohm_setting setting;
  const char *without;
} settings[] = {
    {OHM_SETTING_LEVEL, OC_ASSUMED_LEVEL},
    {OHM_SETTING_FAN_C, OC_ASSUMED_FAN_C "C"},
    {OHM_SETTING_LIMIT_K, OC_ASSUMED_FAN_LIMIT_K "C"},
    {OHM_SETTING_METER, OC_ASSUMED_METER_PERCENT "%+" OC_ASSUMED_METER_COUNTS},
    {OHM_SETTING_LEADS, OC_ASSUMED_LEAD_OHM "+-" OC_ASSUMED_LEAD_LIMIT_OHM},
    {OHM_SETTING_CURRENT_MA, "up to " OC_ASSUMED_CURRENT_MA "mA, less on higher ranges"},
    {OHM_SETTING_AIR, "that of the history, within " OC_ASSUMED_THERMOMETER_LIMIT_K "C"},
    {OHM_SETTING_STOP, OC_ASSUMED_STOP_C "C+-" OC_ASSUMED_STOP_LIMIT_K "C"},
    {OHM_SETTING_TAU, OC_ASSUMED_COOLANT_TAU_LOW_H "h-" OC_ASSUMED_COOLANT_TAU_HIGH_H "h"},
    {OHM_SETTING_ALLOW_K, OC_ASSUMED_SOAK_ALLOW_K "C"},
    {OHM_SETTING_SUPPLY, OC_ASSUMED_SUPPLY_VOLT "V+-" OC_ASSUMED_SUPPLY_PERCENT "%"},
    {OHM_SETTING_OPEN_VOLT, OC_ASSUMED_OPEN_SHARE " of the supply"},
    {OHM_SETTING_SHORT_VOLT, OC_ASSUMED_SHORT_SHARE " of the supply"},
    {OHM_SETTING_MOVED_K, OC_ASSUMED_MOVED_LIMIT_K "C"},
    {OHM_SETTING_AIM_C, OC_ASSUMED_AIM_K "C above the start of the fan"},
    {OHM_SETTING_RESISTOR_PERCENT,
     OC_ASSUMED_RESISTOR_PERCENT "%, of E96 " OC_ASSUMED_RESISTOR_E96_PERCENT "%"},
    {OHM_SETTING_HIDDEN_OHM, OC_ASSUMED_HIDDEN_OHM},
};

START_TEST(the_words_of_the_header_are_the_figures_of_the_trade)
{
  for (size_t i = 0; i < sizeof settings / sizeof settings[0]; i++)
    ck_assert_str_eq(ohm_setting_default((int)settings[i].setting), settings[i].without);
}
END_TEST

START_TEST(a_fan_is_set_below_where_it_is_said_never_to_start)
{
  static const ohm_setting of_fan[] = {OHM_SETTING_FAN_C, OHM_SETTING_OFF_C};
  for (size_t i = 0; i < sizeof of_fan / sizeof of_fan[0]; i++) {
    char allowed[100];
    ohm_setting_allowed((int)of_fan[i], allowed, sizeof allowed);
    ck_assert_str_eq(allowed, "above 0C and below " OC_NEVER_C "C");
  }
}
END_TEST

static bool means(ohm_field field, const char *part) {
  return strstr(ohm_field_meaning((int)field), part) != NULL;
}

START_TEST(the_meanings_of_fields_name_the_figures_too)
{
  ck_assert(means(OHM_FIELD_LATE_K, "up to " OC_NEVER_C " C"));
  ck_assert(means(OHM_FIELD_START_C, "to " OC_NEVER_C " C"));
  ck_assert(means(OHM_FIELD_START_HIGH_C, "up to " OC_NEVER_C " C"));
  ck_assert(means(OHM_FIELD_FIFTY_LATE_K, OC_ASSUMED_HIDDEN_OHM " ohm in series"));
  ck_assert(means(OHM_FIELD_DECIDABLE_H, "never up to " OC_PATIENCE_H));
  ck_assert(means(OHM_FIELD_PASSES_H, "never up to " OC_PATIENCE_H));
}
END_TEST

/* ---- circuits ---- */

static bool circuits_say(const char *what, const char *figure) {
  bool said = false;
  for (size_t i = 0; i < ohm_circuit_built_in_count(); i++) {
    static char text[100000];
    ohm_circuit *circuit = ohm_circuit_built_in_load(ohm_circuit_built_in_name(i), NULL);
    ck_assert_uint_lt(ohm_circuit_print(circuit, text, sizeof text), sizeof text);
    ohm_circuit_free(circuit);
    for (char *at = strstr(text, what); at; at = strstr(at + 1, what)) {
      size_t length = strlen(figure);
      ck_assert_msg(at >= text + length && memcmp(at - length, figure, length) == 0,
                    "another figure before \"%s\"", what);
      said = true;
    }
  }
  return said;
}

START_TEST(circuits_warn_of_the_heat_at_which_the_engine_goes_off)
{ ck_assert(circuits_say(" C above fan-on", " " OC_TOO_HOT_K)); }
END_TEST

/* ---- a bench without the setting ---- */

typedef ohm_answer *(*verb)(const ohm_bench *bench, ohm_error *error);

static ohm_answer *ask(verb asked, const ohm_sensor *sensor, const char *record,
                       ohm_setting setting, const char *text) {
  ohm_error error;
  ohm_bench *bench = ohm_bench_new(NULL);
  ohm_bench_use_sensor(bench, sensor);
  ck_assert_msg(ohm_bench_read_record(bench, record, strlen(record), &error) == OHM_OK, "%s",
                error.message);
  ck_assert_msg(ohm_bench_set(bench, (int)setting, text, &error) == OHM_OK, "%s", error.message);
  ohm_answer *answer = asked(bench, &error);
  ohm_bench_free(bench);
  ck_assert_msg(answer != NULL, "%s", error.message);
  return answer;
}

/* Every number and word; what was assumed is not the same. */
static void check_alike(const ohm_finding *one, const ohm_finding *other, const char *text) {
  for (size_t i = 0; i < ohm_field_count(); i++) {
    int field = ohm_field_at(i);
    double a = ohm_finding_number(one, field);
    double b = ohm_finding_number(other, field);
    ck_assert_msg((isnan(a) && isnan(b)) || fabs(a - b) <= 1e-12 * fabs(a),
                  "%s: %s is %.17g and %.17g", text, ohm_field_name(field), a, b);
    ck_assert_int_eq(ohm_finding_word(one, field), ohm_finding_word(other, field));
  }
}

static const struct {
  verb asked;
  const char *record;
  ohm_setting setting;
  const char *text; /* what the header's words mean; NULL: the words themselves */
} benches[] = {
    {ohm_bench_check, "2450@20C,sensor\n", OHM_SETTING_LEVEL, NULL},
    {ohm_bench_check, "2450@20C,sensor\n", OHM_SETTING_FAN_C, NULL},
    {ohm_bench_check, "2450@20C,sensor\n", OHM_SETTING_LIMIT_K, NULL},
    {ohm_bench_check, "2451@20C,sensor\n", OHM_SETTING_METER, NULL},
    {ohm_bench_check, "2451@20C,sensor\n", OHM_SETTING_LEADS, NULL},
    {ohm_bench_soak, "# air: 9C\n# after_h: 7h\n2451\n", OHM_SETTING_AIR, "9C+-2"},
    {ohm_bench_soak, "# air: 9C\n# after_h: 7h\n2451\n", OHM_SETTING_STOP, NULL},
    {ohm_bench_soak, "# air: 9C\n# after_h: 7h\n2451\n", OHM_SETTING_TAU, NULL},
    {ohm_bench_soak, "# air: 9C\n# after_h: 7h\n2451\n", OHM_SETTING_ALLOW_K, NULL},
    {ohm_bench_signal, "# pull_up: 1k\n0.97V,pin\n241.0\n", OHM_SETTING_SUPPLY, "5V+-0.1"},
    {ohm_bench_signal, "# pull_up: 1k\n0.97V,pin\n241.0\n", OHM_SETTING_MOVED_K, NULL},
    {ohm_bench_signal, "# pull_up: 1k\n0.97V,pin\n241.0\n", OHM_SETTING_OPEN_VOLT, "4.9V"},
    {ohm_bench_signal, "# pull_up: 1k\n0.97V,pin\n241.0\n", OHM_SETTING_SHORT_VOLT, "0.1V"},
    {ohm_bench_signal, "241.0\n91C\n", OHM_SETTING_LEVEL, NULL},
    {ohm_bench_signal, "241.0\n91C\n", OHM_SETTING_FAN_C, NULL},
    {ohm_bench_signal, "241.0\n91C\n", OHM_SETTING_LIMIT_K, NULL},
    {ohm_bench_substitute, "", OHM_SETTING_FAN_C, NULL},
    {ohm_bench_substitute, "", OHM_SETTING_AIM_C, "105C"},
    {ohm_bench_substitute, "", OHM_SETTING_RESISTOR_PERCENT, "5%"},
    {ohm_bench_substitute, "# series: E96\n", OHM_SETTING_RESISTOR_PERCENT, "1%"},
    {ohm_bench_loom, "179.4@93C\n998@42C\n", OHM_SETTING_LIMIT_K, NULL},
    {ohm_bench_fanpoint, "", OHM_SETTING_FAN_C, NULL},
    {ohm_bench_fanpoint, "", OHM_SETTING_HIDDEN_OHM, NULL},
    {ohm_bench_measure, "2451\n", OHM_SETTING_LEVEL, NULL},
};

START_TEST(a_bench_without_a_setting_answers_as_the_header_says)
{
  ohm_sensor *sensor = ohm_sensor_built_in_load("ntc-2k45-20c", NULL);
  for (size_t i = 0; i < sizeof benches / sizeof benches[0]; i++) {
    ohm_setting setting = benches[i].setting;
    const char *text = benches[i].text ? benches[i].text : ohm_setting_default((int)setting);
    ohm_answer *without = ask(benches[i].asked, sensor, benches[i].record, setting,
                              setting == OHM_SETTING_AIR ? "9C" : NULL);
    ohm_answer *with = ask(benches[i].asked, sensor, benches[i].record, setting, text);
    check_alike(ohm_answer_finding(without), ohm_answer_finding(with), text);
    ohm_answer_free(without);
    ohm_answer_free(with);
  }
  ohm_sensor_free(sensor);
}
END_TEST

int main(void) {
  return RUN_TESTS("defaults", the_words_of_the_header_are_the_figures_of_the_trade,
                   a_fan_is_set_below_where_it_is_said_never_to_start,
                   the_meanings_of_fields_name_the_figures_too,
                   circuits_warn_of_the_heat_at_which_the_engine_goes_off,
                   a_bench_without_a_setting_answers_as_the_header_says);
}
