/* SPDX-License-Identifier: MIT */
/*
 * Direct current in a net of resistances and sources. The net is solved once; what is put
 * across two of its nodes afterwards, a motor, a bulb, a resistance that changed, sees it
 * through a port alone: volts without load and ohms, within the port and from port to port.
 * Source  nodal analysis and port (Thevenin) equivalents, as any textbook of circuits has them;
 *         Chua, Desoer and Kuh, Linear and Nonlinear Circuits, 1987, chapters 5 and 8.
 */
#ifndef OC_NETWORK_H
#define OC_NETWORK_H

#include "../ground/internal.h"

enum { OC_NETWORK_NODES = 128, OC_NETWORK_PORTS = 12 };

/** Every node leaks this to node 0, siemens: one that hangs free has 0 volts. */
#define OC_NETWORK_LEAK 1e-9

/** Node 0 is what volts are counted from. Large: not for a stack. */
struct oc_network {
  size_t nodes;
  double conductance[OC_NETWORK_NODES * OC_NETWORK_NODES]; /**< once solved, its factor */
  double injected[OC_NETWORK_NODES];
  double volts[OC_NETWORK_NODES]; /**< once solved */
};

/** Nothing joined yet. In  nodes  1 to OC_NETWORK_NODES, node 0 among them */
void oc_network_begin(struct oc_network *network, size_t nodes);

/** Join two nodes. In  ohm  above 0; INFINITY joins nothing */
void oc_network_join(struct oc_network *network, size_t a, size_t b, double ohm);

/** A source of volts behind ohm, above 0, between two nodes. */
void oc_network_source(struct oc_network *network, size_t plus, size_t minus, double volts,
                       double ohm);

/** Return  false when the ohms lie too far apart to be solved. */
bool oc_network_solve(struct oc_network *network);

/** Two nodes of a net. */
struct oc_port {
  size_t plus;
  size_t minus;
};

/** A solved net as its ports see it. */
struct oc_ports {
  size_t count;
  double open_volts[OC_NETWORK_PORTS];
  double ohms[OC_NETWORK_PORTS][OC_NETWORK_PORTS]; /**< volts lost at one per ampere out of the
                                                        other */
};

/** In  count  up to OC_NETWORK_PORTS */
void oc_network_look(const struct oc_network *network, const struct oc_port *ports, size_t count,
                     struct oc_ports *seen);

/** The volts of every node with so many amperes taken at each port. */
void oc_network_load(const struct oc_network *network, const struct oc_port *ports,
                     const double *ampere, size_t count, double *volts);

/** What is across a port: the amperes it takes of so many volts, and their slope. The amperes
 *  never fall as the volts rise. */
typedef double (*oc_load)(const void *context, double volts, double *slope_s);

struct oc_device {
  oc_load load; /**< NULL: nothing is across it */
  const void *context;
};

/**
 * The volts at every port with all devices across.
 *
 * In      devices  one for each port
 * Return  false when no balance is found
 */
bool oc_ports_settle(const struct oc_ports *ports, const struct oc_device *devices, double *volts);

#endif
