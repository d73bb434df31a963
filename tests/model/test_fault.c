/* SPDX-License-Identifier: MIT */
#include "../scene.h"

#include "../../lib/model/fault.h"

static const double sizes[OC_FAULT_SHAPES][4] = {[OC_FAULT_SERIES] = {1, 50, 500, -20},
                                                 [OC_FAULT_LEAKAGE] = {1e-6, 1e-4, 1e-3, -1e-5},
                                                 [OC_FAULT_DRIFT] = {0.03, -0.03, 0.5, -1},
                                                 [OC_FAULT_BETA] = {10, -10, 100, -300}};

static double seen(enum oc_fault_shape shape, double size, double r_ohm, double t_c) {
  struct oc_fault fault = {shape, size};
  return exp(oc_fault_log(&fault, log(r_ohm), t_c));
}

/* ---- what a fault makes of a resistance ---- */

START_TEST(resistance_in_series_adds)
{
  CHECK_NEAR(seen(OC_FAULT_SERIES, 50, 2450, 20), 2500, 1e-9);
  CHECK_NEAR(seen(OC_FAULT_SERIES, 500, 188, 100), 688, 1e-9);
}
END_TEST

START_TEST(leakage_shunts)
{
  CHECK_NEAR(seen(OC_FAULT_LEAKAGE, 1e-3, 1000, 20), 500, 1e-9);
  CHECK_NEAR(seen(OC_FAULT_LEAKAGE, 1e-4, 2450, 20), 1 / (1 / 2450.0 + 1 / 1e4), 1e-9);
}
END_TEST

START_TEST(drift_multiplies)
{ CHECK_NEAR(seen(OC_FAULT_DRIFT, log(1.03), 2450, 20), 1.03 * 2450, 1e-9); }
END_TEST

START_TEST(beta_turns_about_25_c)
{
  CHECK_NEAR(seen(OC_FAULT_BETA, 200, 2000, 25), 2000, 1e-9);
  CHECK_NEAR(seen(OC_FAULT_BETA, 200, 200, 100), 200 * exp(200 * (1 / 373.15 - 1 / 298.15)), 1e-9);
}
END_TEST

START_TEST(a_fault_of_no_size_changes_nothing)
{
  for (int shape = 0; shape < OC_FAULT_SHAPES; shape++)
    for (double t_c = -40; t_c <= 140; t_c += 20)
      CHECK_NEAR(seen((enum oc_fault_shape)shape, 0, 1234, t_c), 1234, 1e-9);
}
END_TEST

START_TEST(a_size_is_found_again)
{
  for (int i = 0; i < OC_FAULT_SHAPES; i++)
    for (int j = 0; j < 4; j++)
      for (double t_c = -40; t_c <= 140; t_c += 15) {
        enum oc_fault_shape shape = (enum oc_fault_shape)i;
        double log_seen = log(seen(shape, sizes[i][j], 800, t_c));
        double size = oc_fault_size(shape, log(800), log_seen, t_c);
        if (shape != OC_FAULT_BETA || fabs(t_c - 25) > 1)
          CHECK_NEAR(size, sizes[i][j], 1e-9 * fabs(sizes[i][j]) + 1e-12);
      }
  ck_assert(isinf(oc_fault_size(OC_FAULT_BETA, 7, 8, 25)));
}
END_TEST

START_TEST(a_size_that_leaves_no_resistance_gives_none)
{
  ck_assert(!(seen(OC_FAULT_SERIES, -2451, 2450, 20) > 0));
  ck_assert(!(seen(OC_FAULT_LEAKAGE, -1 / 2449.0, 2450, 20) > 0));
  for (int shape = 0; shape < OC_FAULT_SHAPES; shape++)
    ck_assert(isnan(seen((enum oc_fault_shape)shape, NAN, 2450, 20)));
}
END_TEST

START_TEST(an_element_is_found_again)
{
  for (int i = 0; i < OC_FAULT_SHAPES; i++)
    for (int j = 0; j < 4; j++)
      for (double t_c = -40; t_c <= 140; t_c += 15) {
        struct oc_fault fault = {(enum oc_fault_shape)i, sizes[i][j]};
        double log_seen = log(seen(fault.shape, fault.size, 800, t_c));
        CHECK_NEAR(oc_fault_element(&fault, log_seen, t_c), log(800), 1e-12);
      }
  struct oc_fault more_than_all = {OC_FAULT_SERIES, 801};
  ck_assert(isnan(oc_fault_element(&more_than_all, log(800), 20)));
}
END_TEST

int main(void) {
  return RUN_TESTS("fault", resistance_in_series_adds, leakage_shunts, drift_multiplies,
                   beta_turns_about_25_c, a_fault_of_no_size_changes_nothing, a_size_is_found_again,
                   a_size_that_leaves_no_resistance_gives_none, an_element_is_found_again);
}
