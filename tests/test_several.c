/* SPDX-License-Identifier: MIT */
#include "scene.h"

#include <string.h>

enum { MOST = 16 };

static const char flat[] = "# tolerance: 5 %\n# range: -40 to 150 C\n# model: beta\n"
                           "# r0_ohm: 2450\n# t0_c: 20\n# beta_k: 3500\n";

/* Readings of one meter, judged together. */
struct bench {
  ohm_reading readings[MOST + 1];
  ohm_reference references[MOST + 1];
  size_t count;
  ohm_meter meter;
  ohm_check check;
  ohm_finding findings[MOST + 1];
};

static struct bench bench_of(const struct scene *scenes, size_t count) {
  struct bench bench = {.count = count, .meter = scenes[0].meter, .check = scenes[0].check};
  for (size_t i = 0; i < count; i++) {
    bench.readings[i] = scenes[i].reading;
    bench.references[i] = scenes[i].reference;
  }
  return bench;
}

static ohm_status run(const ohm_sensor *sensor, struct bench *bench, ohm_finding *finding) {
  return ohm_bath_check_several(sensor, bench->readings, bench->references, bench->count,
                                &bench->meter, &bench->check, bench->findings, finding);
}

static ohm_finding together(const ohm_sensor *sensor, struct bench *bench) {
  ohm_finding finding;
  PROVOKES(ohm_bath_check_several, OHM_OK, run(sensor, bench, &finding));
  return finding;
}

/* ---- bad values ---- */

static void check_absent(const ohm_finding *finding) {
  for (int i = 0; i < OHM_FIELD_COUNT; i++) {
    ck_assert(isnan(ohm_finding_number(finding, i)));
    ck_assert_ptr_null(ohm_finding_text(finding, i, 0));
  }
}

START_TEST(every_pointer_but_meter_and_check_is_required)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct scene scene = scene_exact(2450, 20);
  struct bench bench = bench_of(&scene, 1);
  ohm_finding finding;
  memset(&finding, 0x55, sizeof finding);
  PROVOKES(ohm_bath_check_several, OHM_NULL_ARGUMENT, run(NULL, &bench, &finding));
  check_absent(&finding);
  PROVOKES(ohm_bath_check_several, OHM_NULL_ARGUMENT,
           ohm_bath_check_several(sensor, NULL, bench.references, 1, NULL, NULL, bench.findings,
                                  &finding));
  PROVOKES(ohm_bath_check_several, OHM_NULL_ARGUMENT,
           ohm_bath_check_several(sensor, bench.readings, NULL, 1, NULL, NULL, bench.findings,
                                  &finding));
  PROVOKES(ohm_bath_check_several, OHM_NULL_ARGUMENT,
           ohm_bath_check_several(sensor, bench.readings, bench.references, 1, NULL, NULL, NULL,
                                  &finding));
  PROVOKES(ohm_bath_check_several, OHM_NULL_ARGUMENT, run(sensor, &bench, NULL));
  PROVOKES(ohm_bath_check_several, OHM_OK,
           ohm_bath_check_several(sensor, bench.readings, bench.references, 1, NULL, NULL,
                                  bench.findings, &finding));
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(one_to_16_readings_are_judged_together)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct scene scenes[MOST + 1];
  for (size_t i = 0; i <= MOST; i++)
    scenes[i] = scene_exact(2450, 20);
  struct bench bench = bench_of(scenes, MOST + 1);
  ohm_finding finding;
  PROVOKES(ohm_bath_check_several, OHM_TOO_LARGE, run(sensor, &bench, &finding));
  check_absent(&finding);
  bench.count = 0;
  PROVOKES(ohm_bath_check_several, OHM_BAD_ARGUMENT, run(sensor, &bench, &finding));
  check_absent(&finding);
  for (bench.count = 1; bench.count <= MOST; bench.count++) {
    finding = together(sensor, &bench);
    CHECK_NEAR(number_in(&finding, OHM_FIELD_READINGS), (double)bench.count, 0);
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(one_reading_that_fails_fails_them_all)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct scene scenes[] = {scene_exact(2450, 20), scene_exact(2450, 20), scene_exact(2450, 20)};
  for (size_t i = 0; i < 3; i++) {
    struct bench bench = bench_of(scenes, 3);
    memset(bench.findings, 0x55, sizeof bench.findings);
    ohm_finding finding;
    bench.readings[i].r_ohm = NAN;
    PROVOKES(ohm_bath_check_several, OHM_BAD_ARGUMENT, run(sensor, &bench, &finding));
    check_absent(&finding);
    for (size_t j = 0; j < 3; j++)
      check_absent(&bench.findings[j]);
    bench.readings[i].r_ohm = 2450;
    bench.references[i].t_c = 1001;
    PROVOKES(ohm_bath_check_several, OHM_OUT_OF_RANGE, run(sensor, &bench, &finding));
    check_absent(&finding);
    bench.references[i].t_c = 20;
    bench.check.band = "nobody";
    PROVOKES(ohm_bath_check_several, OHM_NOT_FOUND, run(sensor, &bench, &finding));
    check_absent(&finding);
  }
  ohm_sensor_free(sensor);
}
END_TEST

int main(void) {
  return RUN_TESTS("several", every_pointer_but_meter_and_check_is_required,
                   one_to_16_readings_are_judged_together, one_reading_that_fails_fails_them_all);
}
