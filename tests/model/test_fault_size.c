/* SPDX-License-Identifier: MIT */
#include "../scene.h"

#include "../../lib/model/fault_size.h"
#include "../../lib/model/next_reading.h"

static const char flat[] = "# tolerance: 5 %\n# range: -40 to 150 C\n# model: beta\n"
                           "# r0_ohm: 2450\n# t0_c: 20\n# beta_k: 3500\n";

static const enum oc_fault_shape shapes[] = {OC_FAULT_SERIES, OC_FAULT_LEAKAGE, OC_FAULT_DRIFT,
                                             OC_FAULT_BETA};

enum { SHAPES = sizeof shapes / sizeof shapes[0] };

/* Readings of a nominal sensor behind a fault, by an exact meter in a bath known to
 * +-0.5 C. */
struct measured {
  oc_reading readings[4];
  oc_reference references[4];
  oc_meter meter;
  size_t count;
};

static struct measured measure(const ohm_sensor *sensor, const struct oc_fault *fault,
                               const double *t_c, size_t count) {
  struct scene scene = scene_exact(1000, 20);
  struct measured measured = {.meter = scene.meter, .count = count};
  for (size_t i = 0; i < count; i++) {
    double r_ohm;
    ck_assert_int_eq(ohm_curve_resistance(ohm_sensor_curve(sensor), t_c[i], &r_ohm), OHM_OK);
    measured.readings[i] = scene.reading;
    measured.readings[i].r_ohm = exp(oc_fault_log(fault, log(r_ohm), t_c[i]));
    measured.references[i] = scene.reference;
    measured.references[i].t_c = t_c[i];
    measured.references[i].accuracy = OC_STATED;
    measured.references[i].limit_k = 0.5;
  }
  return measured;
}

static bool estimated(const ohm_sensor *sensor, const struct measured *measured,
                      enum oc_fault_shape shape, struct oc_fault_estimate *estimate) {
  struct oc_evidence evidence;
  struct oc_ask ask = {measured->readings, measured->references, measured->count, &measured->meter,
                       NULL};
  ck_assert_int_eq(oc_ask_gather(&evidence, sensor, &ask), OHM_OK);
  return oc_fault_estimate(&evidence, shape, 0.95, estimate);
}

static struct oc_fault fault_of(enum oc_fault_shape shape) {
  switch (shape) {
  case OC_FAULT_SERIES:
    return (struct oc_fault){shape, 100};
  case OC_FAULT_LEAKAGE:
    return (struct oc_fault){shape, 1e-3};
  case OC_FAULT_DRIFT:
    return (struct oc_fault){shape, 0.2};
  default:
    return (struct oc_fault){shape, -400};
  }
}

static const double cold_and_hot[] = {0, 60, 95};

START_TEST(a_fault_that_was_given_is_found_with_its_size)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct oc_fault fault = fault_of(shapes[_i]);
  struct measured measured = measure(sensor, &fault, cold_and_hot, 3);
  struct oc_fault_estimate estimate;
  ck_assert(estimated(sensor, &measured, fault.shape, &estimate));
  ck_assert(fabs(estimate.size - fault.size) <= 0.5 * estimate.u);
  ck_assert(estimate.low < fault.size && fault.size < estimate.high);
  ck_assert(estimate.chi_square < 1);
  ck_assert(estimate.p_chance < 1e-3);
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_sound_sensor_has_a_fault_of_no_size)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct oc_fault none = {shapes[_i], 0};
  struct measured measured = measure(sensor, &none, cold_and_hot, 3);
  struct oc_fault_estimate estimate;
  ck_assert(estimated(sensor, &measured, none.shape, &estimate));
  ck_assert(estimate.low < 0 && 0 < estimate.high);
  ck_assert(estimate.p_chance > 0.4);
  ohm_sensor_free(sensor);
}
END_TEST

/* Half of all sound sensors look as though a size that cannot be negative were. */
START_TEST(the_chance_of_a_one_sided_size_is_half_that_of_a_two_sided_one)
{
  ohm_sensor *sensor = sensor_of(flat);
  static const double warm[] = {40};
  struct oc_fault small = {OC_FAULT_DRIFT, 0.06};
  struct measured measured = measure(sensor, &small, warm, 1);
  struct oc_fault_estimate series;
  struct oc_fault_estimate drift;
  ck_assert(estimated(sensor, &measured, OC_FAULT_SERIES, &series));
  ck_assert(estimated(sensor, &measured, OC_FAULT_DRIFT, &drift));
  ck_assert(series.p_chance > 0);
  CHECK_NEAR(series.p_chance / drift.p_chance, 0.5, 0.05);
  ohm_sensor_free(sensor);
}
END_TEST

/* With one reading of an exact meter a resistance in series shifts what is read, and all
 * that is not known of the sensor is the width of its band: 5 % to either side, rectangular,
 * drawn together with the bath and 0.5 % of scatter. */
START_TEST(the_interval_of_a_series_resistance_is_as_wide_as_the_band)
{
  ohm_sensor *sensor = sensor_of(flat);
  static const double warm[] = {20};
  struct oc_fault fault = {OC_FAULT_SERIES, 500};
  struct measured measured = measure(sensor, &fault, warm, 1);
  measured.references[0].accuracy = OC_EXACT;
  struct oc_fault_estimate estimate;
  ck_assert(estimated(sensor, &measured, OC_FAULT_SERIES, &estimate));
  CHECK_NEAR(estimate.size, 500, 5);
  CHECK_NEAR(estimate.u, 2450 * hypot(0.05 / sqrt(3), 0.005), 3);
  CHECK_NEAR(estimate.high - estimate.low, 2 * 0.95 * 0.05 * 2450, 12);
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_reading_at_25_C_says_nothing_of_beta)
{
  ohm_sensor *sensor = sensor_of(flat);
  static const double there[] = {25};
  struct oc_fault none = {OC_FAULT_BETA, 0};
  struct measured measured = measure(sensor, &none, there, 1);
  struct oc_fault_estimate estimate;
  ck_assert(!estimated(sensor, &measured, OC_FAULT_BETA, &estimate));
  ohm_sensor_free(sensor);
}
END_TEST

/* Ten times all resistances is another unit. */
START_TEST(a_size_scales_with_the_sensor)
{
  ohm_sensor *sensor = sensor_of(flat);
  ohm_sensor *tenfold = sensor_of("# tolerance: 5 %\n# range: -40 to 150 C\n# model: beta\n"
                                  "# r0_ohm: 24500\n# t0_c: 20\n# beta_k: 3500\n");
  struct oc_fault fault = {OC_FAULT_SERIES, 100};
  struct measured measured = measure(sensor, &fault, cold_and_hot, 3);
  struct oc_fault_estimate once;
  struct oc_fault_estimate ten;
  ck_assert(estimated(sensor, &measured, fault.shape, &once));
  for (size_t i = 0; i < measured.count; i++)
    measured.readings[i].r_ohm *= 10;
  ck_assert(estimated(tenfold, &measured, fault.shape, &ten));
  CHECK_NEAR(ten.size / once.size, 10, 1e-6);
  CHECK_NEAR(ten.low / once.low, 10, 1e-6);
  CHECK_NEAR(ten.high / once.high, 10, 1e-6);
  CHECK_NEAR(ten.p_chance, once.p_chance, 1e-9);
  ohm_sensor_free(tenfold);
  ohm_sensor_free(sensor);
}
END_TEST

START_TEST(a_step_to_the_best_size_is_none)
{
  ohm_sensor *sensor = sensor_of(flat);
  struct oc_fault fault = fault_of(shapes[_i]);
  struct measured measured = measure(sensor, &fault, cold_and_hot, 3);
  struct oc_evidence evidence;
  struct oc_ask ask = {measured.readings, measured.references, 3, &measured.meter, NULL};
  double change;
  double u;
  ck_assert_int_eq(oc_ask_gather(&evidence, sensor, &ask), OHM_OK);
  ck_assert(oc_evidence_step(&evidence, &fault, &change, &u));
  ck_assert(u > 0);
  ck_assert(fabs(change) <= 0.1 * u);
  ohm_sensor_free(sensor);
}
END_TEST

int main(void) {
  int each = RUN_TESTS_FOR_EACH(
      "fault_size of each shape", SHAPES, a_fault_that_was_given_is_found_with_its_size,
      a_sound_sensor_has_a_fault_of_no_size, a_step_to_the_best_size_is_none);
  int one = RUN_TESTS("fault_size", the_chance_of_a_one_sided_size_is_half_that_of_a_two_sided_one,
                      the_interval_of_a_series_resistance_is_as_wide_as_the_band,
                      a_reading_at_25_C_says_nothing_of_beta, a_size_scales_with_the_sensor);
  return each | one;
}
