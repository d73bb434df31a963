/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include <stdlib.h>

#include "../draw.h"
#include "../../lib/arithmetic/network.h"

static struct oc_network *network;

static void begin(size_t nodes) {
  network = malloc(sizeof *network);
  ck_assert_ptr_nonnull(network);
  oc_network_begin(network, nodes);
}

static void solve(void) {
  ck_assert(oc_network_solve(network));
}

static void end(void) {
  free(network);
}

/* ---- the net ---- */

START_TEST(a_divider_divides)
{
  begin(3);
  oc_network_source(network, 1, 0, 12, 0.02);
  oc_network_join(network, 1, 2, 3);
  oc_network_join(network, 2, 0, 1);
  solve();
  double ampere = 12 / 4.02;
  CHECK_NEAR(network->volts[1], 12 - 0.02 * ampere, 1e-6);
  CHECK_NEAR(network->volts[2], ampere, 1e-6);
  end();
}
END_TEST

/* In balance nothing flows through the bridge, whatever it is. */
START_TEST(a_balanced_bridge_has_no_volts_across_it)
{
  begin(4);
  oc_network_source(network, 1, 0, 10, 0.1);
  oc_network_join(network, 1, 2, 10);
  oc_network_join(network, 2, 0, 20);
  oc_network_join(network, 1, 3, 100);
  oc_network_join(network, 3, 0, 200);
  oc_network_join(network, 2, 3, 5);
  solve();
  CHECK_NEAR(network->volts[2] - network->volts[3], 0, 1e-6);
  end();
}
END_TEST

/* A ladder of 1 ohm rungs: the ohms seen approach the golden ratio. */
START_TEST(an_endless_ladder_is_the_golden_ratio)
{
  enum { RUNGS = 40 };
  begin(RUNGS + 2);
  oc_network_source(network, 1, 0, 1, 1);
  for (size_t i = 1; i <= RUNGS; i++) {
    oc_network_join(network, i, i + 1, 1);
    oc_network_join(network, i + 1, 0, 1);
  }
  solve();
  double golden = (1 + sqrt(5)) / 2;
  CHECK_NEAR(network->volts[1], golden / (1 + golden), 1e-7);
  end();
}
END_TEST

START_TEST(a_node_that_hangs_free_has_no_volts)
{
  begin(4);
  oc_network_source(network, 1, 0, 12, 0.02);
  oc_network_join(network, 2, 3, 1);
  oc_network_join(network, 1, 2, INFINITY);
  solve();
  CHECK_NEAR(network->volts[2], 0, 1e-9);
  CHECK_NEAR(network->volts[3], 0, 1e-9);
  end();
}
END_TEST

/* ---- ports ---- */

static double resistor(const void *context, double volts, double *slope_s) {
  double ohm = *(const double *)context;
  *slope_s = 1 / ohm;
  return volts / ohm;
}

/* Milliohms of wires and megohms of a meter stand in one net. */
static void draw_net(uint64_t *state, size_t nodes) {
  oc_network_source(network, 1, 0, 12.6, 0.02);
  for (size_t node = 2; node < nodes; node++) {
    oc_network_join(network, node, draw_below(state, node), exp(draw_between(state, -6, 6)));
    if (draw_below(state, 2))
      oc_network_join(network, node, draw_below(state, node), exp(draw_between(state, -6, 16)));
  }
}

START_TEST(resistances_across_ports_are_as_if_they_had_been_joined)
{
  enum { NODES = 30, PORTS = 5 };
  uint64_t state = 7;
  for (int i = 0; i < 50; i++) {
    struct oc_port ports[PORTS];
    struct oc_device devices[PORTS];
    double ohm[PORTS];
    struct oc_ports seen;
    double volts[PORTS];
    uint64_t again = state;
    begin(NODES);
    draw_net(&state, NODES);
    solve();
    for (size_t k = 0; k < PORTS; k++) {
      ports[k] = (struct oc_port){1 + draw_below(&state, NODES - 1), draw_below(&state, NODES)};
      ohm[k] = exp(draw_between(&state, -4, 8));
      devices[k] = (struct oc_device){resistor, &ohm[k]};
    }
    oc_network_look(network, ports, PORTS, &seen);
    ck_assert(oc_ports_settle(&seen, devices, volts));
    end();
    begin(NODES);
    draw_net(&again, NODES);
    for (size_t k = 0; k < PORTS; k++)
      oc_network_join(network, ports[k].plus, ports[k].minus, ohm[k]);
    solve();
    for (size_t k = 0; k < PORTS; k++)
      CHECK_NEAR(volts[k], network->volts[ports[k].plus] - network->volts[ports[k].minus], 1e-6);
    end();
  }
}
END_TEST

START_TEST(ohms_from_port_to_port_are_the_same_both_ways)
{
  enum { NODES = 20 };
  uint64_t state = 3;
  struct oc_ports seen;
  const struct oc_port ports[] = {{2, 0}, {5, 3}, {9, 12}};
  begin(NODES);
  draw_net(&state, NODES);
  solve();
  oc_network_look(network, ports, 3, &seen);
  for (int i = 0; i < 3; i++) {
    ck_assert(seen.ohms[i][i] > 0);
    for (int j = 0; j < i; j++)
      CHECK_NEAR(seen.ohms[i][j], seen.ohms[j][i], 1e-9 * seen.ohms[i][i]);
  }
  end();
}
END_TEST

/* A load whose amperes go with the square of the volts: V = E - R I, I = k V^2. */
static double square_law(const void *context, double volts, double *slope_s) {
  double k = *(const double *)context;
  *slope_s = 2 * k * fmax(volts, 0);
  return volts > 0 ? k * volts * volts : 0;
}

START_TEST(a_load_that_is_not_a_resistance_settles_where_both_laws_hold)
{
  for (double k = 0.001; k < 10; k *= 3) {
    const struct oc_port port = {2, 0};
    const struct oc_device device = {square_law, &k};
    struct oc_ports seen;
    double volts;
    begin(3);
    oc_network_source(network, 1, 0, 12, 0.1);
    oc_network_join(network, 1, 2, 0.4);
    solve();
    oc_network_look(network, &port, 1, &seen);
    ck_assert(oc_ports_settle(&seen, &device, &volts));
    double expected = (sqrt(1 + 4 * 0.5 * k * 12) - 1) / (2 * 0.5 * k);
    CHECK_NEAR(volts, expected, 1e-6);
    end();
  }
}
END_TEST

int main(void) {
  return RUN_TESTS("network", a_divider_divides, a_balanced_bridge_has_no_volts_across_it,
                   an_endless_ladder_is_the_golden_ratio, a_node_that_hangs_free_has_no_volts,
                   resistances_across_ports_are_as_if_they_had_been_joined,
                   ohms_from_port_to_port_are_the_same_both_ways,
                   a_load_that_is_not_a_resistance_settles_where_both_laws_hold);
}
