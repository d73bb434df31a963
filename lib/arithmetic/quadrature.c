/* SPDX-License-Identifier: MIT */
#include "quadrature.h"

static const double abscissa[4] = {0.18343464249564980, 0.52553240991632899, 0.79666647741362674,
                                   0.96028985649753623};
static const double share[4] = {0.36268378337836198, 0.31370664587788729, 0.22238103445337447,
                                0.10122853629037626};

void oc_quadrature_fill(double low, double high, size_t panels, double *node, double *weight) {
  double half = (high - low) / (double)panels / 2;
  for (size_t panel = 0; panel < panels; panel++) {
    double middle = low + (2 * (double)panel + 1) * half;
    for (int i = 0; i < OC_PANEL_NODES; i++) {
      *node++ = middle + (i % 2 ? -1 : 1) * half * abscissa[i / 2];
      *weight++ = half * share[i / 2];
    }
  }
}
