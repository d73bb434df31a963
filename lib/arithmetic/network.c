/* SPDX-License-Identifier: MIT */
#include "network.h"

#include <string.h>

#include "cholesky.h"

/* ---- the net ---- */

/* Node 0 has no row. */
static double *entry(struct oc_network *network, size_t a, size_t b) {
  size_t row = (a > b ? a : b) - 1;
  size_t column = (a > b ? b : a) - 1;
  return &network->conductance[row * OC_NETWORK_NODES + column];
}

void oc_network_begin(struct oc_network *network, size_t nodes) {
  network->nodes = nodes;
  for (size_t i = 0; i < nodes; i++) {
    memset(&network->conductance[i * OC_NETWORK_NODES], 0, nodes * sizeof(double));
    network->injected[i] = 0;
    network->volts[i] = 0;
  }
  for (size_t node = 1; node < nodes; node++)
    *entry(network, node, node) = OC_NETWORK_LEAK;
}

void oc_network_join(struct oc_network *network, size_t a, size_t b, double ohm) {
  double siemens = 1 / ohm;
  if (a == b || !(siemens > 0))
    return;
  if (a != 0)
    *entry(network, a, a) += siemens;
  if (b != 0)
    *entry(network, b, b) += siemens;
  if (a != 0 && b != 0)
    *entry(network, a, b) -= siemens;
}

void oc_network_source(struct oc_network *network, size_t plus, size_t minus, double volts,
                       double ohm) {
  oc_network_join(network, plus, minus, ohm);
  if (plus != 0)
    network->injected[plus - 1] += volts / ohm;
  if (minus != 0)
    network->injected[minus - 1] -= volts / ohm;
}

/* Of amperes into each node but 0; x may be injected. */
static void volts_of(const struct oc_network *network, const double *injected, double *volts) {
  size_t count = network->nodes - 1;
  oc_cholesky_solve_lower(network->conductance, count, OC_NETWORK_NODES, injected, volts);
  oc_cholesky_solve_upper(network->conductance, count, OC_NETWORK_NODES, volts, volts);
}

bool oc_network_solve(struct oc_network *network) {
  size_t count = network->nodes - 1;
  double solved[OC_NETWORK_NODES];
  if (!oc_cholesky_factor(network->conductance, count, OC_NETWORK_NODES))
    return false;
  volts_of(network, network->injected, solved);
  network->volts[0] = 0;
  memcpy(&network->volts[1], solved, count * sizeof *solved);
  return true;
}

/* ---- ports ---- */

static double across(const struct oc_port *port, const double *volts) {
  return volts[port->plus] - volts[port->minus];
}

void oc_network_look(const struct oc_network *network, const struct oc_port *ports, size_t count,
                     struct oc_ports *seen) {
  seen->count = count;
  for (size_t i = 0; i < count; i++) {
    double ampere[OC_NETWORK_NODES] = {0};
    double volts[OC_NETWORK_NODES] = {0};
    if (ports[i].plus != 0)
      ampere[ports[i].plus - 1] += 1;
    if (ports[i].minus != 0)
      ampere[ports[i].minus - 1] -= 1;
    volts_of(network, ampere, &volts[1]);
    seen->open_volts[i] = across(&ports[i], network->volts);
    for (size_t j = 0; j < count; j++)
      seen->ohms[j][i] = across(&ports[j], volts);
  }
}

void oc_network_load(const struct oc_network *network, const struct oc_port *ports,
                     const double *ampere, size_t count, double *volts) {
  double injected[OC_NETWORK_NODES];
  memcpy(injected, network->injected, network->nodes * sizeof *injected);
  for (size_t i = 0; i < count; i++) {
    if (ports[i].plus != 0)
      injected[ports[i].plus - 1] -= ampere[i];
    if (ports[i].minus != 0)
      injected[ports[i].minus - 1] += ampere[i];
  }
  volts[0] = 0;
  volts_of(network, injected, &volts[1]);
}

/* ---- what is across them ---- */

enum { TURNS = 100 };

static const double SETTLED_V = 1e-9;
static const double ROUNDED = 1e-14;

struct balance {
  double off[OC_NETWORK_PORTS]; /* volts that are not accounted for */
  double slope[OC_NETWORK_PORTS];
  double worst; /* over what there may be */
};

/* Behind many ohms the last digit of a volt is many volts off. */
static double allowed_v(const struct oc_ports *ports, const struct balance *balance,
                        const double *volts, size_t port) {
  return SETTLED_V + ROUNDED * ports->ohms[port][port] * balance->slope[port] * fabs(volts[port]);
}

static void weigh(const struct oc_ports *ports, const struct oc_device *devices,
                  const double *volts, struct balance *balance) {
  double ampere[OC_NETWORK_PORTS];
  for (size_t i = 0; i < ports->count; i++) {
    ampere[i] = balance->slope[i] = 0;
    if (devices[i].load)
      ampere[i] = devices[i].load(devices[i].context, volts[i], &balance->slope[i]);
  }
  balance->worst = 0;
  for (size_t i = 0; i < ports->count; i++) {
    balance->off[i] = ports->open_volts[i] - volts[i];
    for (size_t j = 0; j < ports->count; j++)
      balance->off[i] -= ports->ohms[i][j] * ampere[j];
    balance->worst =
        fmax(balance->worst, fabs(balance->off[i]) / allowed_v(ports, balance, volts, i));
  }
}

/* Solve (1 + Z diag(slope)) step = off by elimination; the rows are few. */
static bool newton_step(const struct oc_ports *ports, const struct balance *balance, double *step) {
  size_t count = ports->count;
  double rows[OC_NETWORK_PORTS][OC_NETWORK_PORTS + 1];
  for (size_t i = 0; i < count; i++) {
    for (size_t j = 0; j < count; j++)
      rows[i][j] = (i == j) + ports->ohms[i][j] * balance->slope[j];
    rows[i][count] = balance->off[i];
  }
  for (size_t k = 0; k < count; k++) {
    size_t pivot = k;
    for (size_t i = k + 1; i < count; i++)
      if (fabs(rows[i][k]) > fabs(rows[pivot][k]))
        pivot = i;
    if (!(fabs(rows[pivot][k]) > 0))
      return false;
    for (size_t j = k; j <= count; j++) {
      double swapped = rows[k][j];
      rows[k][j] = rows[pivot][j];
      rows[pivot][j] = swapped;
    }
    for (size_t i = k + 1; i < count; i++) {
      double share = rows[i][k] / rows[k][k];
      for (size_t j = k; j <= count; j++)
        rows[i][j] -= share * rows[k][j];
    }
  }
  for (size_t i = count; i-- > 0;) {
    double sum = rows[i][count];
    for (size_t j = i + 1; j < count; j++)
      sum -= rows[i][j] * step[j];
    step[i] = sum / rows[i][i];
  }
  return true;
}

/* Newton's step, halved until it does not leave more open than there was. */
bool oc_ports_settle(const struct oc_ports *ports, const struct oc_device *devices, double *volts) {
  struct balance balance;
  for (size_t i = 0; i < ports->count; i++)
    volts[i] = ports->open_volts[i];
  weigh(ports, devices, volts, &balance);
  for (int turn = 0; turn < TURNS && balance.worst > 1; turn++) {
    double step[OC_NETWORK_PORTS];
    double tried[OC_NETWORK_PORTS];
    struct balance there;
    double share = 1;
    if (!newton_step(ports, &balance, step))
      return false;
    do {
      for (size_t i = 0; i < ports->count; i++)
        tried[i] = volts[i] + share * step[i];
      weigh(ports, devices, tried, &there);
      share /= 2;
    } while (!(there.worst < balance.worst) && share > 1e-6);
    memcpy(volts, tried, ports->count * sizeof *tried);
    balance = there;
  }
  return balance.worst <= 1;
}
