/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include "../../lib/arithmetic/quadrature.h"

enum { PANELS_MAX = 5, NODES_MAX = PANELS_MAX * OC_PANEL_NODES };

static double sum_of_power(double low, double high, size_t panels, int power) {
  double node[NODES_MAX];
  double weight[NODES_MAX];
  oc_quadrature_fill(low, high, panels, node, weight);
  double sum = 0;
  for (size_t i = 0; i < panels * OC_PANEL_NODES; i++)
    sum += weight[i] * pow(node[i], power);
  return sum;
}

/* Eight nodes are exact up to the fifteenth power, and no further. */
START_TEST(powers_are_exact_up_to_the_fifteenth)
{
  for (int power = 0; power <= 15; power++) {
    double want = (pow(1.25, power + 1) - pow(-0.75, power + 1)) / (power + 1);
    CHECK_NEAR(sum_of_power(-0.75, 1.25, 1, power), want, 1e-14 * fmax(1, want));
  }
  ck_assert(fabs(sum_of_power(-1, 1, 1, 16) - 2.0 / 17) > 1e-6);
}
END_TEST

START_TEST(panels_lie_side_by_side)
{
  double node[NODES_MAX];
  double weight[NODES_MAX];
  for (size_t panels = 1; panels <= PANELS_MAX; panels++) {
    double width = 3 / (double)panels;
    oc_quadrature_fill(-1, 2, panels, node, weight);
    for (size_t panel = 0; panel < panels; panel++) {
      double sum = 0;
      for (size_t i = panel * OC_PANEL_NODES; i < (panel + 1) * OC_PANEL_NODES; i++) {
        double low = -1 + (double)panel * width;
        ck_assert(low < node[i] && node[i] < low + width);
        ck_assert(weight[i] > 0);
        sum += weight[i];
      }
      CHECK_NEAR(sum, width, 1e-15);
    }
  }
}
END_TEST

START_TEST(a_narrow_hill_needs_panels_as_narrow)
{
  double node[NODES_MAX];
  double weight[NODES_MAX];
  oc_quadrature_fill(-1, 1, PANELS_MAX, node, weight);
  double sum = 0;
  for (size_t i = 0; i < NODES_MAX; i++)
    sum += weight[i] * exp(-node[i] * node[i] / (2 * 0.01)) / sqrt(2 * acos(-1) * 0.01);
  CHECK_NEAR(sum, 1, 1e-5);
}
END_TEST

int main(void) {
  return RUN_TESTS("quadrature", powers_are_exact_up_to_the_fifteenth, panels_lie_side_by_side,
                   a_narrow_hill_needs_panels_as_narrow);
}
