/* SPDX-License-Identifier: MIT */
/* identify --pins: which pins of a body are which element. */
#include <stdio.h>
#include <stdlib.h>

#include <ohmcurve.h>

#include "findings.h"
#include "measurement.h"
#include "screen.h"
#include "shelf.h"
#include "verbs.h"

struct pins {
  size_t count;
  ohm_pair pairs[OHM_MEASUREMENT_MAX];
  ohm_reference reference;
  struct ohm_measurement how;
  ohm_finding each[OHM_MEASUREMENT_MAX];
  ohm_finding together;
};

static int read_at(const char *at, ohm_reference *reference) {
  ohm_error error;
  if (!at)
    return ohm_refuse(OHM_EXIT_USAGE,
                      "--at is missing: write --at TEMP, such as --at 21.5C; all pairs are read at "
                      "one temperature");
  if (ohm_reference_read(at, reference, &error) != OHM_OK)
    return ohm_refuse(OHM_EXIT_DATA, "%s", error.message);
  return OHM_EXIT_DONE;
}

static int read_pairs(const struct ohm_arguments *arguments, struct pins *pins) {
  ohm_error error;
  pins->count = arguments->count;
  if (pins->count > OHM_MEASUREMENT_MAX)
    return ohm_refuse(OHM_EXIT_DATA, "%zu pairs are too many: write %d at most", pins->count,
                      OHM_MEASUREMENT_MAX);
  for (size_t i = 0; i < pins->count; i++)
    if (ohm_pair_read(arguments->operands[i], &pins->pairs[i], &error) != OHM_OK)
      return ohm_refuse(OHM_EXIT_DATA, "%s", error.message);
  return OHM_EXIT_DONE;
}

static int identify(struct pins *pins) {
  struct ohm_shelf shelf;
  int loaded = ohm_shelf_load(&shelf);
  if (loaded != OHM_EXIT_DONE)
    return loaded;
  ohm_finding *candidates = calloc(shelf.count, sizeof *candidates);
  ohm_status status = !candidates
                          ? OHM_NO_MEMORY
                          : ohm_pins_identify(shelf.sensors, shelf.count, pins->pairs, pins->count,
                                              &pins->reference, &pins->how.meter, &pins->how.check,
                                              pins->each, candidates, &pins->together);
  free(candidates);
  ohm_shelf_free(&shelf);
  if (status == OHM_BAD_ARGUMENT)
    return ohm_refuse(OHM_EXIT_DATA, "a pair of pins stands there twice: write each once");
  if (status != OHM_OK)
    return ohm_refuse(status == OHM_NO_MEMORY ? OHM_EXIT_MEMORY : OHM_EXIT_DATA, "%s",
                      ohm_status_text((int)status));
  return OHM_EXIT_DONE;
}

static int write_screen(const struct pins *pins) {
  int status = OHM_EXIT_DONE;
  for (size_t i = 0; i < pins->count && status == OHM_EXIT_DONE; i++)
    status = ohm_findings_write_report(&pins->each[i]);
  putchar('\n');
  return status == OHM_EXIT_DONE ? ohm_findings_write_report(&pins->together) : status;
}

static void write_json(const struct pins *pins) {
  for (size_t i = 0; i < pins->count; i++)
    ohm_findings_write_json(&pins->each[i]);
  ohm_findings_write_json(&pins->together);
}

int ohm_pins_run(const struct ohm_arguments *arguments) {
  struct pins pins;
  if (arguments->repeated_count > 0)
    return ohm_refuse(OHM_EXIT_USAGE,
                      "--pins compares with the sensors built in alone: leave --sensor out");
  int status = ohm_measurement_read_how(arguments, &pins.how);
  if (status == OHM_EXIT_DONE)
    status = read_at(arguments->values[OHM_OPTION_AT], &pins.reference);
  if (status == OHM_EXIT_DONE)
    status = read_pairs(arguments, &pins);
  if (status == OHM_EXIT_DONE)
    status = identify(&pins);
  if (status == OHM_EXIT_DONE && arguments->values[OHM_OPTION_JSON])
    write_json(&pins);
  else if (status == OHM_EXIT_DONE)
    status = write_screen(&pins);
  return status == OHM_EXIT_DONE ? (int)ohm_finding_verdict(&pins.together) : status;
}
