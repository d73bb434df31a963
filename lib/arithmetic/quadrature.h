/* SPDX-License-Identifier: MIT */
/* An integral as a sum. */
#ifndef OC_QUADRATURE_H
#define OC_QUADRATURE_H

#include "../ground/internal.h"

enum { OC_PANEL_NODES = 8 };

/**
 * Nodes and weights of Gauss and Legendre, OC_PANEL_NODES in each of so many equal
 * panels from low to high, in rising order of panels. The weights add up to high - low.
 *
 * Source  Abramowitz and Stegun, Handbook of Mathematical Functions, table 25.4.
 */
void oc_quadrature_fill(double low, double high, size_t panels, double *node, double *weight);

#endif
