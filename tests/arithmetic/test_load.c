/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include "../../lib/arithmetic/load.h"

static double amperes(const struct oc_motor *motor, double volts) {
  double slope_s;
  return oc_motor_amperes(motor, volts, &slope_s);
}

static double bulb(double watt, double volts) {
  double slope_s;
  return oc_bulb_amperes(&watt, volts, &slope_s);
}

/* ---- the motor ---- */

START_TEST(a_motor_takes_its_amperes_at_12_volts_and_5_times_as_many_at_standstill)
{
  for (double running_a = 5; running_a <= 35; running_a += 5) {
    struct oc_motor motor = oc_motor_of(running_a);
    CHECK_NEAR(amperes(&motor, 12), running_a, 1e-9);
    CHECK_NEAR(oc_motor_speed(&motor, 12), 1, 1e-9);
    motor.drag_a = INFINITY;
    CHECK_NEAR(amperes(&motor, 12), running_a * 80 / 15, 1e-9);
    CHECK_NEAR(oc_motor_speed(&motor, 12), 0, 0);
  }
}
END_TEST

/* Saab NG900, owners' measurements: low 12 A at 12 V and 14 A at 14 V, high 16 A and 19 A. */
START_TEST(amperes_rise_with_the_volts_as_owners_measured)
{
  struct oc_motor low = oc_motor_of(12);
  struct oc_motor high = oc_motor_of(16);
  CHECK_NEAR(amperes(&low, 14), 14, 1.6);
  CHECK_NEAR(amperes(&high, 14), 19, 1.8);
}
END_TEST

START_TEST(volts_are_those_of_winding_and_speed)
{
  struct oc_motor motor = oc_motor_of(18);
  motor.winding_ohm += 0.3;
  motor.drag_a = 4;
  for (double volts = 0.5; volts < 20; volts += 0.5) {
    double ampere = amperes(&motor, volts);
    double speed = oc_motor_speed(&motor, volts);
    CHECK_NEAR(motor.winding_ohm * ampere + 9.75 * speed, volts, 1e-9);
    if (speed > 0)
      CHECK_NEAR(ampere, 4 + 18 * speed * speed, 1e-9);
  }
}
END_TEST

START_TEST(fed_the_wrong_way_round_it_turns_backwards)
{
  struct oc_motor motor = oc_motor_of(18);
  for (double volts = 0; volts < 15; volts += 1) {
    CHECK_NEAR(amperes(&motor, -volts), -amperes(&motor, volts), 1e-12);
    CHECK_NEAR(oc_motor_speed(&motor, -volts), -oc_motor_speed(&motor, volts), 1e-12);
  }
}
END_TEST

/* ---- the bulb ---- */

START_TEST(a_bulb_takes_its_watts_at_12_volts_and_is_a_small_resistance_cold)
{
  CHECK_NEAR(bulb(55, 12), 55 / 12.0, 1e-12);
  CHECK_NEAR(bulb(55, 0.01), 0.01 * 13 * 55 / 144, 1e-9);
  CHECK_NEAR(bulb(55, -6), -bulb(55, 6), 1e-12);
  /* Half the volts leave two thirds of the amperes. */
  CHECK_NEAR(bulb(55, 6) / bulb(55, 12), 0.683, 0.001);
}
END_TEST

/* ---- all of them ---- */

/* In  device  and the greatest volts */
static void check_slope(const struct oc_device *device) {
  static const double STEP_V = 1e-6;
  double before = -INFINITY;
  for (double volts = -15; volts <= 15; volts += 0.1234) {
    double slope_s, beside_s;
    double ampere = device->load(device->context, volts, &slope_s);
    double beyond = device->load(device->context, volts + STEP_V, &beside_s);
    ck_assert(ampere >= before);
    CHECK_NEAR((beyond - ampere) / STEP_V, slope_s, 1e-3 * slope_s + 1e-6);
    before = ampere;
  }
}

START_TEST(amperes_never_fall_and_their_slope_is_what_is_told)
{
  struct oc_motor sound = oc_motor_of(15);
  struct oc_motor stiff = sound;
  struct oc_motor stuck = sound;
  double watt = 55;
  double ohm = 90;
  stiff.drag_a = 9;
  stuck.drag_a = INFINITY;
  const struct oc_device devices[] = {{oc_motor_amperes, &sound},
                                      {oc_motor_amperes, &stiff},
                                      {oc_motor_amperes, &stuck},
                                      {oc_bulb_amperes, &watt},
                                      {oc_resistance_amperes, &ohm}};
  for (size_t i = 0; i < sizeof devices / sizeof devices[0]; i++)
    check_slope(&devices[i]);
}
END_TEST

/* Two alike in series at low speed: half the volts each (Toyota course 752, about 6 V); a stuck
 * one has no back-voltage and takes the fewer volts. */
START_TEST(of_two_motors_in_series_the_stuck_one_has_the_fewer_volts)
{
  static struct oc_network network;
  struct oc_motor first = oc_motor_of(15);
  struct oc_motor second = first;
  const struct oc_device devices[] = {{oc_motor_amperes, &first}, {oc_motor_amperes, &second}};
  const struct oc_port ports[] = {{1, 2}, {2, 0}};
  struct oc_ports seen;
  double volts[2];
  oc_network_begin(&network, 3);
  oc_network_source(&network, 1, 0, 12, 0.02);
  ck_assert(oc_network_solve(&network));
  oc_network_look(&network, ports, 2, &seen);
  ck_assert(oc_ports_settle(&seen, devices, volts));
  CHECK_NEAR(volts[0], 6, 0.1);
  CHECK_NEAR(volts[1], volts[0], 1e-6);
  second.drag_a = INFINITY;
  ck_assert(oc_ports_settle(&seen, devices, volts));
  ck_assert(volts[1] < volts[0] / 3);
  CHECK_NEAR(volts[0] + volts[1], 12, 0.3);
}
END_TEST

int main(void) {
  return RUN_TESTS("loads", a_motor_takes_its_amperes_at_12_volts_and_5_times_as_many_at_standstill,
                   amperes_rise_with_the_volts_as_owners_measured,
                   volts_are_those_of_winding_and_speed, fed_the_wrong_way_round_it_turns_backwards,
                   a_bulb_takes_its_watts_at_12_volts_and_is_a_small_resistance_cold,
                   amperes_never_fall_and_their_slope_is_what_is_told,
                   of_two_motors_in_series_the_stuck_one_has_the_fewer_volts);
}
