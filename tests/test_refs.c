/* SPDX-License-Identifier: MIT */
/* Every reference row, by the call it names. */
#include "rows.h"
#include "findings.h"
#include "../lib/answers/bath.h"
#include "../lib/answers/signal_path.h"
#include "../lib/answers/substitute.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char *const files[] = {
    "tests/refs/curve.psv",    "tests/refs/decision.psv",  "tests/refs/meter.psv",
    "tests/refs/sensor.psv",   "tests/refs/water.psv",     "tests/refs/fault.psv",
    "tests/refs/platinum.psv", "tests/refs/four_term.psv", "tests/refs/models.psv",
    "tests/refs/soak.psv",     "tests/refs/divider.psv",   "tests/refs/preferred.psv",
    "tests/refs/module.psv"};

static struct row rows[ROWS_MAX];
static size_t row_count;

static bool asks_for(const struct row *row, const char *quantity) {
  return strcmp(row->cell[QUANTITY], quantity) == 0;
}

static double fail_quantity(const struct row *row) {
  ck_abort_msg("%s:%d: %s gives no %s", row->file, row->line, row->cell[CALL], row->cell[QUANTITY]);
  return NAN;
}

static double ask_curve(const struct row *row, ohm_curve *curve, const ohm_error *error) {
  double got = NAN;
  if (!curve)
    ck_abort_msg("%s:%d: no curve: %s", row->file, row->line, error->message);
  if (asks_for(row, "t_c"))
    ohm_curve_temperature(curve, row_input(row, "r_ohm"), &got);
  else if (asks_for(row, "r_ohm"))
    ohm_curve_resistance(curve, row_input(row, "t_c"), &got);
  else if (asks_for(row, "alpha_per_k"))
    ohm_curve_alpha(curve, row_input(row, "t_c"), &got);
  else
    fail_quantity(row);
  ohm_curve_free(curve);
  return got;
}

static double beta(const struct row *row) {
  ohm_error error;
  ohm_curve *curve =
      ohm_curve_beta_new(row_input(row, "r0_ohm"), row_input(row, "t0_c"), row_input(row, "beta_k"),
                         row_input(row, "low_c"), row_input(row, "high_c"), &error);
  return ask_curve(row, curve, &error);
}

static double steinhart_hart(const struct row *row) {
  ohm_error error;
  ohm_curve *curve =
      ohm_curve_steinhart_hart_new(row_input(row, "a"), row_input(row, "b"), row_input(row, "c"),
                                   row_input(row, "low_c"), row_input(row, "high_c"), &error);
  return ask_curve(row, curve, &error);
}

static ohm_curve *four_term_curve(const struct row *row, ohm_error *error) {
  return ohm_curve_four_term_new(row_input(row, "r_ref_ohm"), row_input(row, "a1"),
                                 row_input(row, "b1"), row_input(row, "c1"), row_input(row, "d1"),
                                 row_input(row, "low_c"), row_input(row, "high_c"), error);
}

static double four_term(const struct row *row) {
  ohm_error error;
  return ask_curve(row, four_term_curve(row, &error), &error);
}

static ohm_curve *of_temperature_curve(const struct row *row, ohm_error *error) {
  return ohm_curve_four_term_of_temperature_new(
      row_input(row, "r_ref_ohm"), row_input(row, "a"), row_input(row, "b"), row_input(row, "c"),
      row_input(row, "d"), row_input(row, "low_c"), row_input(row, "high_c"), error);
}

static double four_term_of_temperature(const struct row *row) {
  ohm_error error;
  return ask_curve(row, of_temperature_curve(row, &error), &error);
}

/* How far the inverse form misses the temperature the forward form was asked for. */
static double exchange(const struct row *row) {
  ohm_error error;
  double t_c = row_input(row, "t_c");
  double r_ohm = NAN;
  double back_c = NAN;
  ohm_curve *forward = of_temperature_curve(row, &error);
  ohm_curve *inverse = four_term_curve(row, &error);
  if (forward && inverse) {
    ohm_curve_resistance(forward, t_c, &r_ohm);
    ohm_curve_temperature(inverse, r_ohm, &back_c);
  }
  ohm_curve_free(forward);
  ohm_curve_free(inverse);
  return asks_for(row, "difference_k") ? back_c - t_c : fail_quantity(row);
}

static double platinum(const struct row *row) {
  ohm_error error;
  ohm_curve *curve = ohm_curve_platinum_new(row_input(row, "r0_ohm"), row_input(row, "low_c"),
                                            row_input(row, "high_c"), &error);
  return ask_curve(row, curve, &error);
}

static double silicon(const struct row *row) {
  ohm_error error;
  ohm_curve *curve = ohm_curve_silicon_new(row_input(row, "r25_ohm"), row_input(row, "alpha_per_k"),
                                           row_input(row, "beta_per_k2"), row_input(row, "low_c"),
                                           row_input(row, "high_c"), &error);
  return ask_curve(row, curve, &error);
}

/* Half the width of a class at a temperature, in ohm and through the slope in kelvin. */
static double platinum_class(const struct row *row) {
  size_t length = 0;
  const char *name = row_input_text(row, "class", &length);
  char text[128];
  snprintf(text, sizeof text,
           "# tolerance: class %.*s\n# model: platinum\n# r0_ohm: %g\n# range: -200 to 850 C\n",
           (int)length, name, row_input(row, "r0_ohm"));
  ohm_error error;
  ohm_sensor *sensor = ohm_sensor_parse(text, strlen(text), "class", &error);
  double t_c = row_input(row, "t_c");
  double low_ohm = NAN, r_ohm = NAN, high_ohm = NAN, alpha_per_k = NAN;
  if (sensor) {
    ohm_sensor_band(sensor, t_c, &low_ohm, &r_ohm, &high_ohm);
    ohm_curve_alpha(ohm_sensor_curve(sensor), t_c, &alpha_per_k);
  }
  ohm_sensor_free(sensor);
  double limit_ohm = (high_ohm - low_ohm) / 2;
  return asks_for(row, "limit_ohm") ? limit_ohm
         : asks_for(row, "limit_k") ? limit_ohm / (r_ohm * alpha_per_k)
                                    : fail_quantity(row);
}

/* Pairs of an input: points=0:32650,25:10000 */
static size_t row_pairs(const struct row *row, const char *name, double *first, double *second,
                        size_t most) {
  size_t count = 0;
  size_t length = 0;
  const char *text = row_input_text(row, name, &length);
  const char *end = text + length;
  ck_assert_ptr_nonnull(text);
  for (char *next; text < end && count < most; text = next + 1) {
    first[count] = strtod(text, &next);
    second[count++] = strtod(next + 1, &next);
  }
  return count;
}

static double points(const struct row *row) {
  enum { MOST = 64 };
  double t_c[MOST];
  double r_ohm[MOST];
  size_t count = row_pairs(row, "points", t_c, r_ohm, MOST);
  ohm_error error;
  return ask_curve(row, ohm_curve_points_new(t_c, r_ohm, count, &error), &error);
}

static double conformance(const struct row *row) {
  ohm_conformance p = {NAN, NAN, NAN};
  ohm_conformance_of(row_input(row, "value"), row_input(row, "u"), row_input(row, "limit"),
                     row_input(row, "low"), row_input(row, "high"), &p);
  return asks_for(row, "p_low")      ? p.p_low
         : asks_for(row, "p_within") ? p.p_within
         : asks_for(row, "p_high")   ? p.p_high
                                     : fail_quantity(row);
}

static double meter_limit(const struct row *row) {
  oc_meter meter = OC_METER_INIT;
  meter.accuracy = OC_STATED;
  meter.percent = row_input(row, "percent");
  meter.counts = row_input(row, "counts");
  meter.resolution_ohm = row_input(row, "resolution_ohm");
  oc_reading reading = OC_READING_INIT;
  reading.r_ohm = row_input(row, "r_ohm");
  double limit_ohm = NAN;
  oc_meter_limit(&meter, &reading, &limit_ohm);
  return asks_for(row, "limit_ohm") ? limit_ohm : fail_quantity(row);
}

static ohm_sensor *sensor_of_table(const struct row *row) {
  size_t length = 0;
  const char *table = row_input_text(row, "table", &length);
  char *text = rows_sensor_text(rows, row_count, table, length);
  ohm_error error;
  ohm_sensor *sensor = ohm_sensor_parse(text, strlen(text), "rows", &error);
  free(text);
  if (!sensor)
    ck_abort_msg("%s:%d: no sensor: %s", row->file, row->line, error.message);
  return sensor;
}

static double band(const struct row *row) {
  ohm_sensor *sensor = sensor_of_table(row);
  double low = NAN;
  double nominal = NAN;
  double high = NAN;
  ohm_sensor_band(sensor, row_input(row, "t_c"), &low, &nominal, &high);
  ohm_sensor_free(sensor);
  return asks_for(row, "low_ohm")       ? low
         : asks_for(row, "nominal_ohm") ? nominal
         : asks_for(row, "high_ohm")    ? high
                                        : fail_quantity(row);
}

/* What the temperature seems to be with a fault beside the nominal sensor. */
static double infer(const struct row *row) {
  ohm_sensor *sensor = sensor_of_table(row);
  size_t length;
  double r_ohm = NAN;
  double got = NAN;
  ohm_curve_resistance(ohm_sensor_curve(sensor), row_input(row, "t_c"), &r_ohm);
  if (row_input_text(row, "series_ohm", &length))
    r_ohm += row_input(row, "series_ohm");
  else
    r_ohm = 1 / (1 / r_ohm + 1 / row_input(row, "leakage_ohm"));
  ohm_curve_temperature(ohm_sensor_curve(sensor), r_ohm, &got);
  ohm_sensor_free(sensor);
  return asks_for(row, "t_c") ? got : fail_quantity(row);
}

static double boiling(const struct row *row) {
  double t_c = NAN;
  ohm_water_boiling(row_input(row, "pressure_hpa"), &t_c);
  return asks_for(row, "t_c") ? t_c : asks_for(row, "t_k") ? t_c + 273.15 : fail_quantity(row);
}

static double pressure(const struct row *row) {
  double pressure_hpa = NAN;
  ohm_water_pressure(row_input(row, "altitude_m"), &pressure_hpa);
  return asks_for(row, "p_bar")  ? pressure_hpa / 1000
         : asks_for(row, "p_pa") ? pressure_hpa * 100
                                 : fail_quantity(row);
}

static double boiling_at(const struct row *row) {
  double pressure_hpa = NAN;
  double t_c = NAN;
  ohm_water_pressure(row_input(row, "altitude_m"), &pressure_hpa);
  ohm_water_boiling(pressure_hpa, &t_c);
  return asks_for(row, "t_c") ? t_c : fail_quantity(row);
}

/* A temperature of a row in either unit, "start_c" or "start_f". */
static double degrees(const struct row *row, const char *name) {
  char key[32];
  size_t length;
  snprintf(key, sizeof key, "%s_f", name);
  if (row_input_text(row, key, &length))
    return (row_input(row, key) - 32) / 1.8;
  snprintf(key, sizeof key, "%s_c", name);
  return row_input(row, key);
}

static double cooling(const struct row *row) {
  double t_c = NAN;
  ohm_cooling_temperature(degrees(row, "start"), degrees(row, "air"),
                          row_input(row, "tau_min") / 60, row_input(row, "after_min") / 60, &t_c);
  return asks_for(row, "t_c") ? t_c : fail_quantity(row);
}

static double cooling_tau(const struct row *row) {
  double tau_h = NAN;
  ohm_cooling_tau(degrees(row, "start"), degrees(row, "air"), degrees(row, "to"),
                  row_input(row, "after_min") / 60, &tau_h);
  return asks_for(row, "k_per_min") ? 1 / (60 * tau_h) : fail_quantity(row);
}

/* By the time constant of what was seen on the way. */
static double cooling_hours(const struct row *row) {
  double start_c = degrees(row, "start");
  double air_c = degrees(row, "air");
  double tau_h = NAN;
  double after_h = NAN;
  ohm_cooling_tau(start_c, air_c, degrees(row, "seen"), row_input(row, "seen_min") / 60, &tau_h);
  ohm_cooling_hours(start_c, air_c, tau_h, degrees(row, "to"), &after_h);
  return asks_for(row, "after_min") ? 60 * after_h : fail_quantity(row);
}

static double history_cooling(const struct row *row) {
  double after_h[16];
  double air_c[16];
  double t_c = NAN;
  size_t count = row_pairs(row, "air", after_h, air_c, 16);
  ohm_history *history = ohm_history_new(after_h, air_c, count, NULL);
  ck_assert_ptr_nonnull(history);
  ohm_history_cooling(history, row_input(row, "start_c"), row_input(row, "tau_h"),
                      row_input(row, "after_h"), &t_c);
  ohm_history_free(history);
  return asks_for(row, "t_c") ? t_c : fail_quantity(row);
}

static double divider(const struct row *row) {
  double got = NAN;
  double pull_up_ohm = row_input(row, "pull_up_ohm");
  double supply_volt = row_input(row, "supply_volt");
  if (asks_for(row, "v_volt"))
    ohm_divider_volts(row_input(row, "r_ohm"), pull_up_ohm, supply_volt, &got);
  else if (asks_for(row, "r_ohm"))
    ohm_divider_resistance(row_input(row, "v_volt"), pull_up_ohm, supply_volt, &got);
  else
    fail_quantity(row);
  return got;
}

static double preferred(const struct row *row) {
  static const char *const names[] = {"E12", "E24", "E96"};
  size_t length = 0;
  const char *name = row_input_text(row, "series", &length);
  double nearest_ohm = NAN;
  for (int series = OHM_SERIES_E12; series <= OHM_SERIES_E96; series++)
    if (name && strncmp(name, names[series], length) == 0)
      ohm_preferred_nearest(row_input(row, "r_ohm"), series, &nearest_ohm);
  return asks_for(row, "nearest_ohm") ? nearest_ohm : fail_quantity(row);
}

static double reported(const struct row *row) {
  double shown_c = NAN;
  ohm_reported_of(row_input(row, "t_c"), row_input(row, "rounding") == OC_TRUNCATED, &shown_c);
  return asks_for(row, "shown_c") ? shown_c : fail_quantity(row);
}

/* What a module of 5 V takes volts for. */
static double looks(const struct row *row) {
  oc_module module = OC_MODULE_INIT;
  oc_volts volts = OC_VOLTS_INIT;
  ohm_finding finding = finding_new();
  ohm_error error;
  module.pull_up_ohm = 1000;
  volts.v_volt = row_input(row, "v_volt");
  ohm_sensor *sensor = ohm_sensor_built_in_load("ntc-2k45-20c", &error);
  ohm_status status = oc_pin_check(sensor, &module, NULL, NULL, &volts, NULL, NULL, NULL, &finding);
  ohm_sensor_free(sensor);
  const char *reason = status == OHM_OK ? ohm_finding_text(&finding, OHM_FIELD_REASON, 0) : NULL;
  if (!reason || !asks_for(row, "looks"))
    return fail_quantity(row);
  return strcmp(reason, "open") == 0 ? 1 : strcmp(reason, "shorted") == 0 ? -1 : 0;
}

/* What a module sees of a resistor in the place of its sensor. */
static double substitute(const struct row *row) {
  ohm_sensor *sensor = sensor_of_table(row);
  double r_ohm = row_input(row, "r_ohm");
  oc_substitute wanted = OC_SUBSTITUTE_INIT;
  ohm_finding single = finding_new();
  wanted.drawer_ohm = &r_ohm;
  wanted.drawer_count = 1;
  oc_substitute_find(sensor, NULL, &wanted, &single, NULL);
  ohm_sensor_free(sensor);
  return asks_for(row, "t_c") ? ohm_finding_number(&single, OHM_FIELD_T_C) : fail_quantity(row);
}

static const struct {
  const char *name;
  double (*ask)(const struct row *row);
} calls[] = {
    {"beta", beta},
    {"steinhart_hart", steinhart_hart},
    {"four_term", four_term},
    {"four_term_of_temperature", four_term_of_temperature},
    {"exchange", exchange},
    {"platinum", platinum},
    {"platinum_class", platinum_class},
    {"silicon", silicon},
    {"points", points},
    {"conformance", conformance},
    {"meter_limit", meter_limit},
    {"band", band},
    {"infer", infer},
    {"boiling", boiling},
    {"pressure", pressure},
    {"boiling_at", boiling_at},
    {"cooling", cooling},
    {"cooling_tau", cooling_tau},
    {"cooling_hours", cooling_hours},
    {"history_cooling", history_cooling},
    {"divider", divider},
    {"preferred", preferred},
    {"reported", reported},
    {"looks", looks},
    {"substitute", substitute},
};

static double ask(const struct row *row) {
  for (size_t i = 0; i < sizeof calls / sizeof calls[0]; i++)
    if (strcmp(row->cell[CALL], calls[i].name) == 0)
      return calls[i].ask(row);
  ck_abort_msg("%s:%d: there is no call %s", row->file, row->line, row->cell[CALL]);
  return NAN;
}

START_TEST(a_reference_row_is_met)
{
  const struct row *row = &rows[_i];
  double got = ask(row);
  double want = row_number(row, EXPECTED);
  double tol = row_tolerance(row);
  if (!is_near(got, want, tol))
    ck_abort_msg("%s:%d: %s %s, %s, %s: %s is %.17g, not within %.17g of %.17g", row->file,
                 row->line, row->cell[KIND], row->cell[ID], row->cell[SOURCE], row->cell[PLACE],
                 row->cell[QUANTITY], got, tol, want);
}
END_TEST

static void print_counts(void) {
  static const char *const kinds[] = {"published", "computed", "practice", "memory"};
  printf("reference rows:");
  for (size_t k = 0; k < sizeof kinds / sizeof kinds[0]; k++) {
    size_t count = 0;
    for (size_t i = 0; i < row_count; i++)
      count += strcmp(rows[i].cell[KIND], kinds[k]) == 0;
    printf("%s %zu %s", k > 0 ? "," : "", count, kinds[k]);
  }
  printf("\n");
}

int main(void) {
  for (size_t i = 0; i < sizeof files / sizeof files[0]; i++)
    row_count = rows_read(files[i], ROW_CELLS, rows, row_count);
  int result = RUN_TESTS_FOR_EACH("refs", row_count, a_reference_row_is_met);
  print_counts();
  return result;
}
