/* SPDX-License-Identifier: MIT */
/* Any bytes as a wiring. What loads is driven in every way of asking: no point has more volts
 * than the batteries together, no current is without bounds, and of a small one it is worked out
 * what a look at its first motor means. */
#include "contract.h"

#include "../../lib/circuits/meaning.h"
#include "../../lib/circuits/wiring_file.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

enum { WAYS = 5, SMALL = 12 };

static struct oc_drive drive;
static struct oc_drive_result result;
static struct oc_faults faults;
static struct oc_meaning meaning;

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

static size_t first_motor(const struct oc_wiring *wiring) {
  size_t at = 0;
  while (at < wiring->thing_count && wiring->things[at].kind != OC_THING_MOTOR)
    at++;
  return at;
}

static void check_meaning(const struct oc_wiring *wiring) {
  size_t motor = first_motor(wiring);
  if (motor == wiring->thing_count || wiring->thing_count > SMALL)
    return;
  const struct oc_look look = {OC_LOOK_FAN, motor, {.asked = 1, .key = true}};
  oc_faults_list(&faults, &drive, wiring, 1);
  if (oc_meaning_find(&drive, wiring, &faults, &look, &meaning))
    require(meaning.useful || (meaning.clears == 0 && meaning.accuses == 0),
            "a test that a sound wiring fails tells nothing");
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
  ohm_error error;
  struct oc_wiring *wiring = oc_wiring_file_parse((const char *)data, size, "given", &error);
  if (!wiring) {
    require(error.status != OHM_OK && error.message[0], "what is refused has a sentence");
    return 0;
  }
  require(error.status == OHM_OK, "what loads has no fault");
  for (unsigned asked = 0; asked < 1u << WAYS; asked += 7) {
    const struct oc_setup setup = {.asked = asked, .key = asked % 2 == 0};
    if (oc_drive_run(&drive, wiring, NULL, &setup, &result))
      check_result(wiring);
  }
  check_meaning(wiring);
  free(wiring);
  return 0;
}
