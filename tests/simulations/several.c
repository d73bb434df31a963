/* SPDX-License-Identifier: MIT */
/*
 * How often several readings of one part are judged rightly. The parts follow formulas of
 * this program, their place in the band is drawn, and they are read by the errors that
 * were declared, or by worse ones: how often a good part is called bad, one far out good,
 * and whether the place in the band lies where it is said to.
 */
#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../../include/ohmcurve.h"
#include "../draw.h"
#include "../share.h"

enum { DRAWS = 400, READINGS_MAX = 5, TEXT_MAX = 4096 };

static const double SCATTER = 0.005; /* as the header declares */
static const double METER_PERCENT = 0.8;
static const double COUNTS = 3;
static const double THERMOMETER_K = 1;
static const double LEADS_OHM = 0.1;

static uint64_t state = 20261127;
static int failures;

/* ---- parts ---- */

enum kind { PERCENT, R25_AND_BETA, LIMITS, KELVIN, KINDS };

static const char *const kind_names[KINDS] = {"5 %", "3 % at 25 C, beta 1 %", "printed limits",
                                              "class B"};

static double kelvin(double t_c) {
  return t_c + 273.15;
}

static double thermistor(double t_c) {
  return 2500 * exp(3500 * (1 / kelvin(t_c) - 1 / kelvin(20)));
}

/* Callendar, above 0 C. */
static double platinum(double t_c) {
  return 1000 * (1 + 3.9083e-3 * t_c - 5.775e-7 * t_c * t_c);
}

static double nominal(enum kind kind, double t_c) {
  return kind == KELVIN ? platinum(t_c) : thermistor(t_c);
}

/* Half of what is allowed at a temperature, a logarithm: 8 % at 20 C, 4 % at 100 C. */
static double printed_half(double t_c) {
  return 0.08 - 0.04 * (t_c - 20) / 80;
}

/* Resistance of a part at its places in the band. */
static double element(enum kind kind, const double *place, double t_c) {
  double r_ohm = nominal(kind, t_c);
  switch (kind) {
  case PERCENT:
    return r_ohm * exp(place[0] * log(1.05 / 0.95) / 2 + log(1.05 * 0.95) / 2);
  case R25_AND_BETA:
    return r_ohm * exp(place[0] * log(1.03 / 0.97) / 2 + log(1.03 * 0.97) / 2 +
                       place[1] * 0.01 * 3500 * (1 / kelvin(t_c) - 1 / kelvin(25)));
  case LIMITS:
    return r_ohm * exp(place[0] * printed_half(t_c));
  default:
    return platinum(t_c + place[0] * (0.3 + 0.005 * fabs(t_c)));
  }
}

static ohm_sensor *sensor_of(enum kind kind) {
  static const char *const texts[KINDS] = {
      "# model: beta\n# r0_ohm: 2500\n# t0_c: 20\n# beta_k: 3500\n# range: -20 to 130 C\n"
      "# tolerance: 5 %\n",
      "# model: beta\n# r0_ohm: 2500\n# t0_c: 20\n# beta_k: 3500\n# range: -20 to 130 C\n"
      "# tolerance: 3 % at 25 C, beta 1 %\n",
      "temp_c,r_min_ohm,r_nom_ohm,r_max_ohm\n",
      "# model: platinum\n# r0_ohm: 1000\n# range: -50 to 200 C\n# tolerance: class B\n"};
  char text[TEXT_MAX];
  int length = snprintf(text, sizeof text, "# name: drawn\n%s", texts[kind]);
  for (int t_c = -10; kind == LIMITS && t_c <= 120; t_c += 10)
    length += snprintf(text + length, sizeof text - (size_t)length, "%d,%.5g,%.5g,%.5g\n", t_c,
                       thermistor(t_c) * exp(-printed_half(t_c)), thermistor(t_c),
                       thermistor(t_c) * exp(printed_half(t_c)));
  ohm_error error;
  ohm_sensor *sensor = ohm_sensor_parse(text, (size_t)length, "drawn", &error);
  if (!sensor) {
    fprintf(stderr, "%s\n", error.message);
    exit(2);
  }
  return sensor;
}

/* ---- readings ---- */

enum world { DECLARED, APART, NORMAL, ENDS, UNEVEN_BATH, WORLDS };

static const char *const world_names[WORLDS] = {
    "as declared", "each range its own", "normal errors", "errors at their ends", "bath not even"};

/* An error known by its limit, as the world has it. */
static double drawn(enum world world, double limit) {
  if (world == NORMAL)
    return draw_normal(&state, limit / sqrt(3));
  if (world == ENDS)
    return draw_share(&state) < 0.5 ? -limit : limit;
  return draw_rectangular(&state, limit);
}

static const struct {
  const char *name;
  double t_c;
  double limit_k;
  bool thermometer;
} baths[READINGS_MAX] = {{"ice", 0, 0.5, false},
                         {"20C+-1", 20, 1, true},
                         {"boil", 100.1, 1, false},
                         {"85C+-1", 85, 1, true},
                         {"50C+-1", 50, 1, true}};

/* Which are taken, of one to five readings. */
static const int taken[READINGS_MAX][READINGS_MAX] = {
    {2}, {1, 2}, {0, 1, 2}, {0, 1, 3, 2}, {0, 1, 4, 3, 2}};

enum { RANGES = 9 };

struct errors {
  double meter[RANGES]; /* of its percent, by range */
  double thermometer_k;
  double leads_ohm;
};

static struct errors draw_errors(enum world world) {
  struct errors errors;
  double alike = drawn(world, METER_PERCENT / 100);
  for (int i = 0; i < RANGES; i++)
    errors.meter[i] = world == APART ? drawn(world, METER_PERCENT / 100) : alike;
  errors.thermometer_k = drawn(world, THERMOMETER_K);
  errors.leads_ohm = drawn(world, LEADS_OHM);
  return errors;
}

/* What a display of 2000 counts shows, and its range: 200, 2000, 20k. */
static double count_of(double r_ohm, int *range) {
  double count_ohm = 0.1;
  for (*range = 0; r_ohm >= 2000 * count_ohm; (*range)++)
    count_ohm *= 10;
  return count_ohm;
}

static double half_of(enum kind kind, double t_c) {
  const double up[2] = {1, kelvin(t_c) < kelvin(25) ? 1 : -1};
  const double down[2] = {-up[0], -up[1]};
  return log(element(kind, up, t_c) / element(kind, down, t_c)) / 2;
}

/* A part follows its curve no closer than it does, but a good one stays inside its limits. */
static double scattered(enum kind kind, const double *place, double t_c) {
  static const double middle[2] = {0, 0};
  double r_ohm = element(kind, place, t_c);
  double off = log(r_ohm / element(kind, middle, t_c));
  double half = half_of(kind, t_c);
  if (kind == KELVIN)
    return r_ohm;
  for (;;) {
    double scatter = draw_normal(&state, SCATTER);
    if (fabs(off) > half || fabs(off + scatter) <= half)
      return r_ohm * exp(scatter);
  }
}

static void read_at(ohm_bench *bench, enum kind kind, const double *place, enum world world,
                    const struct errors *errors, int bath) {
  double error_k =
      baths[bath].thermometer ? errors->thermometer_k : drawn(world, baths[bath].limit_k);
  if (world == UNEVEN_BATH)
    error_k += draw_rectangular(&state, 0.5);
  double t_c = baths[bath].t_c + error_k;
  double r_ohm = scattered(kind, place, t_c);
  int range;
  double count_ohm = count_of(r_ohm, &range);
  double shown_ohm = r_ohm * (1 + errors->meter[range]) + errors->leads_ohm + 0.4 +
                     drawn(world, COUNTS * count_ohm);
  char text[80];
  snprintf(text, sizeof text, "%.*fohm@%s", count_ohm < 1 ? 1 : 0,
           round(shown_ohm / count_ohm) * count_ohm, baths[bath].name);
  ohm_error error;
  if (ohm_bench_read(bench, text, NULL, &error) != OHM_OK) {
    fprintf(stderr, "%s\n", error.message);
    exit(2);
  }
}

struct said {
  int bad;
  int good;
  int placed;
  int held;
};

static bool inside(const double *place, size_t places) {
  for (size_t i = 0; i < places; i++)
    if (fabs(place[i]) > 1)
      return false;
  return true;
}

static void judge_one(struct said *said, const ohm_sensor *sensor, enum kind kind,
                      const double *place, enum world world, int count) {
  ohm_error error;
  ohm_bench *bench = ohm_bench_new(&error);
  ohm_bench_use_sensor(bench, sensor);
  ohm_bench_set(bench, OHM_SETTING_METER, "0.8%+3@2000", &error);
  ohm_bench_set(bench, OHM_SETTING_LEADS, "0.4+-0.1", &error);
  ohm_bench_set(bench, OHM_SETTING_PLACE, "sensor", &error);
  struct errors errors = draw_errors(world);
  for (int i = 0; i < count; i++)
    read_at(bench, kind, place, world, &errors, taken[count - 1][i]);
  ohm_answer *answer = ohm_bench_check(bench, &error);
  if (!answer) {
    fprintf(stderr, "%s\n", error.message);
    exit(2);
  }
  const ohm_finding *finding = ohm_answer_finding(answer);
  said->bad += ohm_finding_verdict(finding) == OHM_OUTSIDE;
  said->good += ohm_finding_verdict(finding) == OHM_WITHIN;
  double low = ohm_finding_number(finding, OHM_FIELD_IN_BAND_LOW);
  double high = ohm_finding_number(finding, OHM_FIELD_IN_BAND_HIGH);
  said->placed += !isnan(low);
  said->held += low <= place[0] && place[0] <= high;
  ohm_answer_free(answer);
  ohm_bench_free(bench);
}

/* ---- what is held ---- */

/* Errors at their ends, and a bath that is not even, are told and not held: nothing was
 * promised of them. */
static bool is_held(enum world world) {
  return world == DECLARED || world == APART;
}

static void hold(const char *what, double rate, double least, double most, double made) {
  double give = share_scatter(0.05, made) + 3 * sqrt(0.05 * 0.95 / DRAWS);
  if (least - give <= rate && rate <= most + give)
    return;
  printf("    %s: %.1f %% is not %.0f to %.0f %%\n", what, 100 * rate, 100 * least, 100 * most);
  failures++;
}

struct where {
  const char *name;
  double place[2];
  bool drawn; /* uniform, up to place */
};

static const struct where wheres[] = {
    {"middle", {0, 0}, false},        {"anywhere", {1, 1}, true},     {"0.99", {0.99, 0.99}, false},
    {"corner", {0.99, -0.99}, false}, {"1.5 out", {1.5, 1.5}, false}, {"2 out", {2, 2}, false}};

static void run(enum kind kind, enum world world, int count) {
  ohm_sensor *sensor = sensor_of(kind);
  int draws = share_of(DRAWS);
  printf("%-24s %-22s %d", kind_names[kind], world_names[world], count);
  for (size_t w = 0; w < sizeof wheres / sizeof wheres[0]; w++) {
    struct said said = {0, 0, 0, 0};
    if (wheres[w].place[0] * wheres[w].place[1] < 0 && kind != R25_AND_BETA)
      continue;
    for (int i = 0; i < draws; i++) {
      double place[2] = {wheres[w].place[0], wheres[w].place[1]};
      for (int k = 0; k < 2 && wheres[w].drawn; k++)
        place[k] = draw_rectangular(&state, 1);
      if (!inside(place, 2))
        place[1] = -place[1];
      judge_one(&said, sensor, kind, place, world, count);
    }
    bool good = inside(wheres[w].place, 2);
    double bad = (double)said.bad / draws;
    printf("  %s %.1f %% %s", wheres[w].name,
           100 * (good     ? bad
                  : w == 4 ? (double)said.good / draws
                           : bad),
           good || w == 5 ? "bad" : "good");
    double give = world == DECLARED ? 0 : 0.03;
    if (good && is_held(world))
      hold("a good part called bad", bad, 0, 0.05 + give, draws);
    if (w == 5 && world == DECLARED && count > 1 && (kind == PERCENT || kind == LIMITS))
      hold("one 2 half-bands out called bad", bad, 0.9, 1, draws);
    if (w == 4 && world == DECLARED)
      hold("one 1.5 half-bands out called good", (double)said.good / draws, 0, 0.01, draws);
    if (said.placed > 0) {
      double held = (double)said.held / said.placed;
      printf(" (%.1f)", 100 * held);
      if (is_held(world))
        hold("the place lies where it is said to", held, world == DECLARED ? 0.94 : 0.90, 1, draws);
    }
  }
  printf("\n");
  fflush(stdout);
  ohm_sensor_free(sensor);
}

/* ---- the fan ---- */

static const double FAN_C = 97;
static const double LIMIT_K = 5;

/* A thermistor with ohms in series, as a module sees it. */
struct behind {
  double r20_ohm;
  double beta_k;
  double series_ohm;
};

static double seen(const struct behind *behind, double t_c) {
  return behind->series_ohm +
         behind->r20_ohm * exp(behind->beta_k * (1 / kelvin(t_c) - 1 / kelvin(20)));
}

/* Where the module sees what a sound sensor has where the fan is to start. */
static double start_of(const struct behind *behind) {
  double low_c = 0;
  double high_c = 300;
  while (high_c - low_c > 1e-6) {
    double middle_c = low_c + (high_c - low_c) / 2;
    if (seen(behind, middle_c) > thermistor(FAN_C))
      low_c = middle_c;
    else
      high_c = middle_c;
  }
  return low_c;
}

/* How the fan is called after readings at these temperatures of the thermometer. */
static const char *fan_of(const ohm_sensor *sensor, const struct behind *behind, const double *t_c,
                          int count) {
  static char said[16];
  ohm_error error;
  ohm_bench *bench = ohm_bench_new(&error);
  struct errors errors = draw_errors(DECLARED);
  ohm_bench_use_sensor(bench, sensor);
  ohm_bench_set(bench, OHM_SETTING_METER, "0.8%+3@2000", &error);
  ohm_bench_set(bench, OHM_SETTING_LEADS, "0.4+-0.1", &error);
  ohm_bench_set(bench, OHM_SETTING_PLACE, "sensor", &error);
  for (int i = 0; i < count; i++) {
    int range;
    double r_ohm = seen(behind, t_c[i] + errors.thermometer_k);
    double count_ohm = count_of(r_ohm, &range);
    char text[80];
    snprintf(text, sizeof text, "%.*fohm@%.1fC+-1", count_ohm < 1 ? 1 : 0,
             round((r_ohm * (1 + errors.meter[range]) + errors.leads_ohm + 0.4) / count_ohm) *
                 count_ohm,
             t_c[i]);
    ohm_bench_read(bench, text, NULL, &error);
  }
  ohm_answer *answer = ohm_bench_check(bench, &error);
  const char *reason = ohm_finding_text(ohm_answer_finding(answer), OHM_FIELD_JOB_REASON, 0);
  snprintf(said, sizeof said, "%s", reason ? reason : "none");
  ohm_answer_free(answer);
  ohm_bench_free(bench);
  return said;
}

static void run_series(const ohm_sensor *sensor) {
  static const double hot_c[] = {90, 95, 100, 105};
  int draws = share_of(DRAWS);
  for (size_t i = 0; i < sizeof hot_c / sizeof hot_c[0]; i++) {
    int late = 0;
    for (int k = 0; k < draws; k++) {
      const struct behind behind = {2500 * exp(draw_rectangular(&state, 0.05)), 3500, 100};
      late += strcmp(fan_of(sensor, &behind, &hot_c[i], 1), "late") == 0;
    }
    printf("100 ohm in series, read at %.0f C: late said %.1f %%\n", hot_c[i],
           100.0 * late / draws);
    hold("100 ohm in series are called late", (double)late / draws, 0.9, 1, draws);
  }
}

/* Any thermistor that starts the fan early, or late, and any readings of it. */
static void run_others(const ohm_sensor *sensor) {
  int draws = 4 * share_of(DRAWS);
  int wrong = 0;
  for (int k = 0; k < draws; k++) {
    struct behind behind = {2500 * exp(draw_rectangular(&state, 0.7)),
                            draw_between(&state, 3000, 4600), 0};
    behind.series_ohm = draw_share(&state) < 0.5 ? 0 : draw_between(&state, 0, 100);
    double t_c[3];
    int count = 1 + (int)draw_below(&state, 3);
    for (int i = 0; i < count; i++)
      t_c[i] = draw_between(&state, 5, 110);
    double late_k = start_of(&behind) - FAN_C;
    const char *said = fan_of(sensor, &behind, t_c, count);
    bool other_way = (strcmp(said, "late") == 0 && late_k < LIMIT_K) ||
                     (strcmp(said, "early") == 0 && late_k > -LIMIT_K);
    wrong += other_way;
    if (strcmp(said, "late") == 0 && late_k < 0) {
      printf("    a fan that starts %.1f K early was called late\n", -late_k);
      failures++;
    }
  }
  printf("any thermistor, one to three readings: late or early said wrongly %.2f %%\n",
         100.0 * wrong / draws);
  hold("late or early said wrongly", (double)wrong / draws, 0, 0.01, draws);
}

int main(void) {
  printf("of each part where it lies: how often it is called bad, or good; and of 100 how often\n"
         "its place in the band lies where it is said to\n");
  for (int kind = 0; kind < KINDS; kind++)
    for (int count = 1; count <= READINGS_MAX; count++)
      run((enum kind)kind, DECLARED, count);
  for (int world = APART; world < WORLDS; world++)
    for (int kind = 0; kind < KINDS; kind++)
      run((enum kind)kind, (enum world)world, 3);
  ohm_sensor *sensor = sensor_of(PERCENT);
  run_series(sensor);
  run_others(sensor);
  ohm_sensor_free(sensor);
  printf("%d failures\n", failures);
  return failures > 0;
}
