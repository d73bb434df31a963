/* SPDX-License-Identifier: MIT */
/* A thermistor that nobody compared. */
#include "../support.h"

#include "../../lib/model/any_thermistor.h"

/* Readings of a thermistor, each with its own relative error alone. */
static struct oc_evidence evidence_of(double r25_ohm, double beta_k, const double *t_c,
                                      size_t count, double u) {
  struct oc_evidence evidence = {.count = count};
  for (size_t i = 0; i < count; i++)
    evidence.readings[i] = (struct oc_evidence_reading){
        .log_ohm = log(r25_ohm) + beta_k * (1 / (t_c[i] + 273.15) - 1 / 298.15),
        .at_c = t_c[i],
        .u_own = u};
  return evidence;
}

static const double temperatures[3] = {20, 80, 50};

START_TEST(one_reading_is_as_probable_as_any_other)
{
  double first = NAN;
  for (double r_ohm = 100; r_ohm < 1e5; r_ohm *= 3) {
    struct oc_evidence evidence = evidence_of(r_ohm, 3500, temperatures, 1, 0.01);
    double here = oc_any_thermistor_log_likelihood(&evidence);
    if (isnan(first))
      first = here;
    CHECK_NEAR(here, first, 1e-9);
  }
  CHECK_NEAR(first, -log(log(1e4)), 1e-9);
}
END_TEST

START_TEST(two_readings_say_the_same_of_every_usual_beta)
{
  struct oc_evidence usual = evidence_of(2000, 3800, temperatures, 2, 0.005);
  double want = oc_any_thermistor_log_likelihood(&usual);
  for (double beta_k = 3200; beta_k <= 4400; beta_k += 200) {
    struct oc_evidence evidence = evidence_of(5000, beta_k, temperatures, 2, 0.005);
    CHECK_NEAR(oc_any_thermistor_log_likelihood(&evidence), want, 0.01);
  }
  /* One of R25 in 9.2, one of beta in 1600 K by what 60 K make of a kelvin of it. */
  double swing = 1600 * (1 / 293.15 - 1 / 353.15);
  CHECK_NEAR(want, -log(9.2103403719761836) - log(swing), 0.01);
}
END_TEST

START_TEST(no_usual_beta_is_as_good_as_none)
{
  struct oc_evidence usual = evidence_of(2000, 3800, temperatures, 2, 0.005);
  struct oc_evidence flat = evidence_of(2000, 1500, temperatures, 2, 0.005);
  ck_assert(oc_any_thermistor_log_likelihood(&flat) <
            oc_any_thermistor_log_likelihood(&usual) - 20);
}
END_TEST

START_TEST(without_a_reading_there_is_nothing)
{
  struct oc_evidence evidence = {.count = 0};
  ck_assert(isinf(oc_any_thermistor_log_likelihood(&evidence)));
}
END_TEST

int main(void) {
  return RUN_TESTS("any thermistor", one_reading_is_as_probable_as_any_other,
                   two_readings_say_the_same_of_every_usual_beta, no_usual_beta_is_as_good_as_none,
                   without_a_reading_there_is_nothing);
}
