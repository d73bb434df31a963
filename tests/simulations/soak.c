/* SPDX-License-Identifier: MIT */
/*
 * How often a soak is right. Cars are left standing: air about what the thermometer shows,
 * a start about what was told, a time constant in its range. What findings say is held
 * against what the coolant and the sensor really did.
 */
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>

#include "../draw.h"
#include "../findings.h"
#include "../../lib/answers/soak.h"
#include "../share.h"

enum { DRAWS = 40000, TRIOS = 500, STEPS = 64 };

static const double LEVEL = 0.95;
/* Four standard deviations of a rate of 1 in 20 over DRAWS draws, and the steps. */
static const double SCATTER = 0.006;

/* The draws that are made, and what a rate of 1 in 20 scatters over them. */
static int draws;
static int trios_drawn;
static double scatter;

static const double AIR_C = 9;
static const double AIR_LIMIT_K = 2;

static uint64_t state = 20261125;
static int failures;
static ohm_sensor *sensor;

static void must(ohm_status status) {
  if (status == OHM_OK)
    return;
  fprintf(stderr, "%s\n", ohm_status_text((int)status));
  exit(2);
}

static void verdict(bool good) {
  printf("%s\n", good ? "" : "   MISSED");
  failures += !good;
}

/* ---- a car ---- */

struct car {
  double after_h;
  double allow_k;
};

static double coolant_of(const struct car *car, double air_c, double start_c) {
  double tau_h = draw_between(&state, OC_ASSUMED_COOLANT_TAU_LOW_H, OC_ASSUMED_COOLANT_TAU_HIGH_H);
  double t_c;
  must(ohm_cooling_temperature(start_c, air_c, tau_h, car->after_h, &t_c));
  return t_c;
}

static double drawn_coolant(const struct car *car) {
  double air_c = AIR_C + draw_rectangular(&state, AIR_LIMIT_K);
  double start_c = OC_ASSUMED_STOP_C + draw_rectangular(&state, OC_ASSUMED_STOP_LIMIT_K);
  return coolant_of(car, air_c, start_c);
}

static ohm_finding judged(const struct car *car, double shown_c, const oc_companion *companions,
                          size_t count) {
  oc_reading reading = OC_READING_INIT;
  oc_meter meter = OC_METER_INIT;
  oc_reference air = OC_REFERENCE_INIT;
  oc_soak_told soak = OC_SOAK_TOLD_INIT;
  ohm_finding finding = finding_new();
  must(ohm_curve_resistance(ohm_sensor_curve(sensor), shown_c, &reading.r_ohm));
  meter.accuracy = meter.leads = OC_EXACT;
  air.t_c = AIR_C;
  air.accuracy = OC_STATED;
  air.limit_k = AIR_LIMIT_K;
  soak.after_h = car->after_h;
  soak.allow_k = car->allow_k;
  soak.undisturbed = 1;
  soak.companions = companions;
  soak.companion_count = count;
  must(oc_soak_check(sensor, &reading, &meter, &air, &soak, NULL, &finding));
  return finding;
}

/* ---- one sensor ---- */

/* What is said depends on the reading alone, and is smooth between two steps of it: from
 * the coldest to the warmest coolant, for a sensor that is off by error_k. */
struct said {
  double p_cold;
  double p_warm;
  double p_within;
  double missed_k;
};

struct kept {
  double from_c;
  double step_k;
  struct said said[STEPS];
};

static struct ends {
  double low_c;
  double high_c;
} ends;

static void keep(const struct car *car, double error_k, struct kept *kept) {
  double warmest_c;
  double coldest_c = AIR_C - AIR_LIMIT_K;
  must(ohm_cooling_temperature(OC_ASSUMED_STOP_C + OC_ASSUMED_STOP_LIMIT_K, AIR_C + AIR_LIMIT_K,
                               OC_ASSUMED_COOLANT_TAU_HIGH_H, car->after_h, &warmest_c));
  kept->from_c = coldest_c + error_k;
  kept->step_k = (warmest_c - coldest_c) / (STEPS - 1);
  for (int i = 0; i < STEPS; i++) {
    ohm_finding finding = judged(car, kept->from_c + i * kept->step_k, NULL, 0);
    kept->said[i] = (struct said){ohm_finding_number(&finding, OHM_FIELD_P_COLD),
                                  ohm_finding_number(&finding, OHM_FIELD_P_WARM),
                                  ohm_finding_number(&finding, OHM_FIELD_P_WITHIN),
                                  ohm_finding_number(&finding, OHM_FIELD_MISSED_COLD_K)};
    ends.low_c = ohm_finding_number(&finding, OHM_FIELD_COOLANT_LOW_C);
    ends.high_c = ohm_finding_number(&finding, OHM_FIELD_COOLANT_HIGH_C);
    findings_free();
  }
}

static double between(double a, double b, double part) {
  return a + part * (b - a);
}

static struct said said_of(const struct kept *kept, double shown_c) {
  double place = (shown_c - kept->from_c) / kept->step_k;
  int at = (int)fmin(fmax(floor(place), 0), STEPS - 2);
  const struct said *a = &kept->said[at], *b = a + 1;
  double part = place - at;
  return (struct said){between(a->p_cold, b->p_cold, part), between(a->p_warm, b->p_warm, part),
                       between(a->p_within, b->p_within, part),
                       between(a->missed_k, b->missed_k, part)};
}

static void rate_line(const char *what, double rate, double want, bool at_most) {
  printf("  %-58s %.4f of %.4f", what, rate, want);
  verdict(at_most ? rate <= want + scatter : fabs(rate - want) <= scatter);
}

static void one_sensor(const struct car *car) {
  int inside = 0, cold = 0, warm = 0, passed_cold = 0, passed_warm = 0, covered = 0;
  const double error_k = -15;
  struct kept kept_cold, kept_warm, kept_off;
  keep(car, -car->allow_k, &kept_cold);
  keep(car, car->allow_k, &kept_warm);
  keep(car, error_k, &kept_off);
  for (int i = 0; i < draws; i++) {
    double t_c = drawn_coolant(car);
    inside += ends.low_c <= t_c && t_c <= ends.high_c;
    struct said at_cold = said_of(&kept_cold, t_c - car->allow_k);
    struct said at_warm = said_of(&kept_warm, t_c + car->allow_k);
    cold += at_cold.p_cold >= LEVEL;
    warm += at_warm.p_warm >= LEVEL;
    passed_cold += at_cold.p_within >= LEVEL;
    passed_warm += at_warm.p_within >= LEVEL;
    covered += said_of(&kept_off, t_c + error_k).missed_k >= -error_k;
  }
  printf("stood %g h, %g C off allowed\n", car->after_h, car->allow_k);
  rate_line("coolant between the ends", (double)inside / draws, LEVEL, false);
  rate_line("condemned as cold, exactly on that limit", (double)cold / draws, 1 - LEVEL, false);
  rate_line("condemned as warm, exactly on that limit", (double)warm / draws, 1 - LEVEL, false);
  rate_line("passed, exactly on the cold limit", (double)passed_cold / draws, 1 - LEVEL, true);
  rate_line("passed, exactly on the warm limit", (double)passed_warm / draws, 1 - LEVEL, true);
  rate_line("15 C too cold, and no more was said to be missed", (double)covered / draws, LEVEL,
            false);
}

/* ---- what makers allow ---- */

/* Hours and differences as printed; the tests they make, and this library's. */
static const struct {
  const char *source;
  double after_h;
  double allow_k;
} makers[] = {
    {"GM Uplander 2006, P0116", 8, 15},
    {"GM Sky 2007, 8 h soak", 8, 9},
    {"Chrysler Concorde 2002, P0116, 10 C meant", 8, 10},
    {"Acura MDX 2009, P0111, intake to coolant 2", 6, 17},
    {"Ford, trade text, cold engine, overnight", 12, 5.6},
};

static void maker(const char *source, const struct car *car) {
  int healthy = 0, condemned = 0, failed = 0, caught = 0;
  struct kept kept_sound, kept_drifted;
  keep(car, 0, &kept_sound);
  keep(car, 2 * car->allow_k, &kept_drifted);
  for (int i = 0; i < draws; i++) {
    double air_c = AIR_C + draw_rectangular(&state, AIR_LIMIT_K);
    double start_c = OC_ASSUMED_STOP_C + draw_rectangular(&state, OC_ASSUMED_STOP_LIMIT_K);
    double t_c = coolant_of(car, air_c, start_c);
    struct said sound = said_of(&kept_sound, t_c);
    struct said drifted = said_of(&kept_drifted, t_c + 2 * car->allow_k);
    healthy += fabs(t_c - air_c) <= car->allow_k;
    condemned += sound.p_cold >= LEVEL || sound.p_warm >= LEVEL;
    failed += fabs(t_c + 2 * car->allow_k - air_c) > car->allow_k;
    caught += drifted.p_warm >= LEVEL;
  }
  printf("%s: %g h, %g C\n", source, car->after_h, car->allow_k);
  printf("  healthy engines within it, at least 0.85                   %.4f",
         (double)healthy / draws);
  verdict(healthy >= (0.85 - share_scatter(0.85, draws)) * draws);
  printf("  healthy engines condemned here, at most 0.01               %.4f",
         (double)condemned / draws);
  verdict(condemned <= (0.01 + share_scatter(0.01, draws)) * draws);
  printf("  warm by twice that: beyond it, at least 0.99               %.4f",
         (double)failed / draws);
  verdict(failed >= (0.99 - share_scatter(0.99, draws)) * draws);
  printf("  warm by twice that: condemned here when undisturbed        %.4f\n",
         (double)caught / draws);
}

/* ---- three sensors ---- */

static oc_companion drawn_companion(ohm_soaked kind, double air_c, double start_c, double low_h,
                                    double high_h, double after_h, double error_k) {
  oc_companion companion = OC_COMPANION_INIT;
  double t_c;
  double from_c = draw_between(&state, air_c, start_c);
  must(ohm_cooling_temperature(from_c, air_c, draw_between(&state, low_h, high_h), after_h, &t_c));
  companion.kind = (int)kind;
  companion.t_c = t_c + error_k + draw_rectangular(&state, OC_ASSUMED_THERMOMETER_LIMIT_K);
  return companion;
}

static bool names(const ohm_finding *finding, const char **odd) {
  *odd = ohm_finding_text(finding, OHM_FIELD_ODD, 0);
  return *odd != NULL;
}

static void trios(const struct car *car, double error_k) {
  const double most = (0.03 + share_scatter(0.03, trios_drawn)) * trios_drawn;
  int named = 0, intake = 0;
  for (int i = 0; i < trios_drawn; i++) {
    double air_c = AIR_C + draw_rectangular(&state, AIR_LIMIT_K);
    double start_c = OC_ASSUMED_STOP_C + draw_rectangular(&state, OC_ASSUMED_STOP_LIMIT_K);
    oc_companion others[] = {
        drawn_companion(OHM_SOAKED_INTAKE, air_c, start_c, OC_ASSUMED_INTAKE_TAU_LOW_H,
                        OC_ASSUMED_INTAKE_TAU_HIGH_H, car->after_h, error_k),
        drawn_companion(OHM_SOAKED_AMBIENT, air_c, start_c, OC_ASSUMED_AMBIENT_TAU_LOW_H,
                        OC_ASSUMED_AMBIENT_TAU_HIGH_H, car->after_h, 0)};
    ohm_finding finding = judged(car, coolant_of(car, air_c, start_c), others, 2);
    const char *odd;
    if (names(&finding, &odd)) {
      named++;
      intake += odd[0] == 'i';
    }
    findings_free();
  }
  if (error_k == 0) {
    printf("stood %g h: of consistent trios one named, at most 0.03       %.4f", car->after_h,
           (double)named / trios_drawn);
    verdict(named <= most);
  } else {
    printf("stood %g h: intake %g C off, it is named %.4f, another %.4f", car->after_h, error_k,
           (double)intake / trios_drawn, (double)(named - intake) / trios_drawn);
    verdict(named - intake <= most);
  }
}

int main(void) {
  static const struct car cars[] = {{5, 6}, {8, 6}, {14, 6}, {24, 3}};
  ohm_error error;
  setvbuf(stdout, NULL, _IOLBF, 0);
  sensor = ohm_sensor_built_in_load("ntc-2k45-20c", &error);
  if (!sensor)
    return 2;
  draws = share_of(DRAWS);
  trios_drawn = share_of(TRIOS);
  scatter = SCATTER + share_scatter(LEVEL, draws);
  for (size_t i = 0; i < sizeof cars / sizeof cars[0]; i++)
    one_sensor(&cars[i]);
  for (size_t i = 0; i < sizeof makers / sizeof makers[0]; i++) {
    struct car car = {makers[i].after_h, makers[i].allow_k};
    maker(makers[i].source, &car);
  }
  for (size_t i = 0; i < 3; i++) {
    trios(&cars[i], 0);
    trios(&cars[i], -20);
  }
  ohm_sensor_free(sensor);
  printf("%d missed\n", failures);
  return failures > 0;
}
