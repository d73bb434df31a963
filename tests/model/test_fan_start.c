/* SPDX-License-Identifier: MIT */
/* Held against formulas of the test: a beta model, and what a fault makes of it. */
#include "../scene.h"

#include "../../lib/model/fan_start.h"

static const char flat[] = "# tolerance: 5 %\n# range: -60 to 150 C\n# model: beta\n"
                           "# r0_ohm: 2450\n# t0_c: 20\n# beta_k: 3500\n";
static const char steeper[] = "# tolerance: 5 %\n# range: -60 to 150 C\n# model: beta\n"
                              "# r0_ohm: 2450\n# t0_c: 20\n# beta_k: 3700\n";

static const double FAN_C = 90;
static const double READ_C = 80;

static const double sizes[OC_FAULT_SHAPES][4] = {[OC_FAULT_SERIES] = {1, 20, 50, 120},
                                                 [OC_FAULT_LEAKAGE] = {1e-6, 1e-4, 1e-3, 3e-3},
                                                 [OC_FAULT_DRIFT] = {0.03, -0.03, 0.3, -0.5},
                                                 [OC_FAULT_BETA] = {10, -10, 100, -300}};

static double element_ohm(double beta_k, double t_c) {
  return 2450 * exp(beta_k * (1 / (t_c + 273.15) - 1 / 293.15));
}

static double behind_ohm(const struct oc_fault *fault, double r_ohm, double t_c) {
  switch (fault->shape) {
  case OC_FAULT_SERIES:
    return r_ohm + fault->size;
  case OC_FAULT_LEAKAGE:
    return 1 / (1 / r_ohm + fault->size);
  case OC_FAULT_DRIFT:
    return r_ohm * exp(fault->size);
  default:
    return r_ohm * exp(fault->size * (1 / (t_c + 273.15) - 1 / 298.15));
  }
}

/* An exact reading at 80 C. */
static struct oc_evidence read_of(const ohm_sensor *sensor, double r_ohm) {
  struct oc_evidence evidence;
  struct scene scene = scene_exact(r_ohm, READ_C);
  ck_assert_int_eq(oc_evidence_gather(&evidence, sensor, &scene.reading, &scene.reference, 1,
                                      &scene.meter, &scene.check),
                   OHM_OK);
  return evidence;
}

static double start_c(const ohm_sensor *sensor, double place, const struct oc_fault *fault) {
  double factor = 1 + 0.05 * place;
  struct oc_evidence evidence =
      read_of(sensor, behind_ohm(fault, factor * element_ohm(3500, READ_C), READ_C));
  return oc_start_of_part(ohm_sensor_curve(sensor), FAN_C, &evidence, fault, 0);
}

/* ---- the part that was read ---- */

START_TEST(a_fan_starts_where_the_part_behind_its_fault_reads_what_the_module_waits_for)
{
  ohm_sensor *sensor = sensor_of(flat);
  for (int i = 0; i < OC_FAULT_SHAPES; i++)
    for (int j = 0; j < 4; j++)
      for (double place = -1; place <= 1; place += 0.5) {
        struct oc_fault fault = {(enum oc_fault_shape)i, sizes[i][j]};
        double at_c = start_c(sensor, place, &fault);
        if (!isfinite(at_c))
          continue;
        double factor = 1 + 0.05 * place;
        CHECK_NEAR(behind_ohm(&fault, factor * element_ohm(3500, at_c), at_c),
                   element_ohm(3500, FAN_C), 1e-6 * element_ohm(3500, FAN_C));
      }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_fan_is_the_later_the_more_is_in_series)
{
  ohm_sensor *sensor = sensor_of(flat);
  double before_c = FAN_C - 1e-6;
  for (double size = 0; size <= 90; size += 5) {
    struct oc_fault fault = {OC_FAULT_SERIES, size};
    double at_c = start_c(sensor, 0, &fault);
    ck_assert(at_c > before_c);
    before_c = at_c;
  }
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_fan_never_starts_or_always_runs)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct oc_fault never = {OC_FAULT_SERIES, 500};
  struct oc_fault always = {OC_FAULT_LEAKAGE, 1 / 100.0};
  ck_assert(start_c(sensor, 0, &never) == INFINITY);
  ck_assert(start_c(sensor, 0, &always) == -INFINITY);
  ohm_sensor_free(sensor);
}
END_TEST

/* Of a fault that would be more than was read, nearly all is taken. */
START_TEST(more_in_series_than_was_read_starts_as_all_of_it_does)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct oc_evidence evidence = read_of(sensor, 100);
  struct oc_fault more = {OC_FAULT_SERIES, 1000};
  double at_c = oc_start_of_part(ohm_sensor_curve(sensor), FAN_C, &evidence, &more, 0);
  ck_assert(at_c == -INFINITY);
  ohm_sensor_free(sensor);
}
END_TEST

/* By the formula of both: B2 (1/T - 1/T0) = B1 (1/Tfan - 1/T0). */
START_TEST(another_part_starts_the_fan_by_its_own_curve)
{
  ohm_sensor *sensor = sensor_of(flat);
  ohm_sensor *other = sensor_of(steeper);
  struct oc_fault sound = {OC_FAULT_DRIFT, 0};
  struct oc_evidence evidence = read_of(other, element_ohm(3700, READ_C));
  double at_c = oc_start_of_part(ohm_sensor_curve(sensor), FAN_C, &evidence, &sound, 0);
  double inverse = 3500 / 3700.0 * (1 / (FAN_C + 273.15) - 1 / 293.15) + 1 / 293.15;
  CHECK_NEAR(at_c, 1 / inverse - 273.15, 1e-6);
  ohm_sensor_free(sensor);
  ohm_sensor_free(other);
}
END_TEST

START_TEST(between_two_sizes_a_fan_starts_between_those_of_each)
{
  ohm_sensor *sensor = sensor_of(flat);
  const ohm_curve *curve = ohm_sensor_curve(sensor);
  struct oc_evidence evidence = read_of(sensor, element_ohm(3500, READ_C) + 40);
  struct oc_starts starts = oc_starts_of_part(curve, FAN_C, &evidence, OC_FAULT_SERIES, 20, 60);
  ck_assert(starts.low_c < starts.high_c);
  for (double size = 20; size <= 60; size += 10) {
    struct oc_fault fault = {OC_FAULT_SERIES, size};
    double at_c = oc_start_of_part(curve, FAN_C, &evidence, &fault, 0);
    ck_assert(starts.low_c <= at_c && at_c <= starts.high_c);
  }
  ohm_sensor_free(sensor);
}
END_TEST

int main(void) {
  return RUN_TESTS("fan start",
                   a_fan_starts_where_the_part_behind_its_fault_reads_what_the_module_waits_for,
                   a_fan_is_the_later_the_more_is_in_series, a_fan_never_starts_or_always_runs,
                   more_in_series_than_was_read_starts_as_all_of_it_does,
                   another_part_starts_the_fan_by_its_own_curve,
                   between_two_sizes_a_fan_starts_between_those_of_each);
}
