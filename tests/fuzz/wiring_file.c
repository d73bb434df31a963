/* SPDX-License-Identifier: MIT */
/* Any bytes as a wiring. What loads is driven in many ways of asking: no point has more volts than
 * the batteries together, no current is without bounds; and its tests tell something of every way
 * in which a link can fail. */
#include "contract.h"

#include <stdlib.h>

#include "../../lib/circuits/circuit.h"
#include "../../lib/circuits/drive.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static struct oc_drive drive;
static struct oc_drive_result result;

static double batteries_v(const struct oc_wiring *wiring) {
  double sum_v = 0;
  for (size_t i = 0; i < wiring->thing_count; i++)
    if (wiring->things[i].kind == OC_THING_BATTERY)
      sum_v += wiring->things[i].value;
  return sum_v;
}

static void check_result(const struct oc_wiring *wiring) {
  double most_v = batteries_v(wiring) * (1 + 1e-6) + 1e-3;
  for (size_t i = 0; i < wiring->point_count; i++)
    require(fabs(result.volts[i]) <= most_v, "no point has more volts than all batteries");
  for (size_t i = 0; i < wiring->thing_count; i++)
    require(isfinite(result.motor_a[i]) && isfinite(result.motor_speed[i]),
            "a motor has amperes and a speed");
}

/* Whatever clears a link accuses it, and a sound car passes every test that is offered. */
static void check_tests(const struct ohm_circuit *circuit) {
  for (size_t i = 0; i < circuit->test_count; i++) {
    const struct oc_test *test = &circuit->tests[i];
    require((test->clears & ~test->accuses) == 0 || test->accuses == 0,
            "what is cleared could have shown itself");
    oc_outcomes any = oc_test_any(test);
    for (size_t k = 0; k < circuit->failing_count; k++)
      require(test->foretold[k] != 0 && (test->foretold[k] & ~any) == 0,
              "of every failing something is foretold that the test can show");
  }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
  ohm_error error;
  struct ohm_circuit *circuit = ohm_circuit_parse((const char *)data, size, "given", &error);
  if (!circuit) {
    require(error.status != OHM_OK && error.message[0], "what is refused has a sentence");
    return 0;
  }
  require(error.status == OHM_OK, "what loads has no fault");
  check_tests(circuit);
  for (unsigned asked = 0; circuit->wired && asked < 1u << OC_WAYS; asked += 7) {
    const struct oc_setup setup = {.asked = asked, .key = asked % 2 == 0};
    oc_drive_begin(&drive, &circuit->wired->wiring, &setup);
    if (oc_drive_run(&drive, (struct oc_failures){0, NULL, 0}, &result))
      check_result(&circuit->wired->wiring);
  }
  ohm_circuit_free(circuit);
  return 0;
}
