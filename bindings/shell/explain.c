/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdio.h>

#include <ohmcurve.h>

#include "findings.h"
#include "measurement.h"
#include "screen.h"
#include "sensors.h"
#include "shelf.h"
#include "verbs.h"

struct explained {
  ohm_finding each[OHM_EXPLANATION_COUNT];
  ohm_finding together;
};

static void write_json(const struct explained *explained) {
  for (int i = 0; i < OHM_EXPLANATION_COUNT; i++)
    ohm_findings_write_json(&explained->each[i]);
  ohm_findings_write_json(&explained->together);
}

/* The lines of those that lead, then what they come to. */
static int write_screen(const struct explained *explained) {
  int status = OHM_EXIT_DONE;
  for (int i = 0; i < OHM_EXPLANATION_COUNT && status == OHM_EXIT_DONE; i++)
    if (ohm_finding_number(&explained->each[i], OHM_FIELD_LEADING) == 1)
      status = ohm_findings_write_report(&explained->each[i]);
  if (ohm_finding_text(&explained->together, OHM_FIELD_CANDIDATES, 0))
    putchar('\n');
  return status == OHM_EXIT_DONE ? ohm_findings_write_report(&explained->together) : status;
}

static int refuse(const ohm_sensor *sensor, ohm_status status) {
  if (status == OHM_OUT_OF_RANGE)
    return ohm_refuse_outside(sensor, "", "a temperature",
                              ": read it within that, or name the part it was read of");
  return ohm_refuse(OHM_EXIT_DATA, "%s", ohm_status_text((int)status));
}

static int explain(const ohm_sensor *sensor, const struct ohm_measurement *all,
                   struct explained *explained) {
  struct ohm_shelf shelf;
  int loaded = ohm_shelf_load(&shelf);
  if (loaded != OHM_EXIT_DONE)
    return loaded;
  ohm_status status =
      ohm_explain(sensor, shelf.sensors, shelf.count, all->readings, all->references, all->count,
                  &all->meter, &all->check, explained->each, &explained->together);
  ohm_shelf_free(&shelf);
  return status == OHM_OK ? OHM_EXIT_DONE : refuse(sensor, status);
}

int ohm_explain_run(const struct ohm_arguments *arguments) {
  struct ohm_measurement all;
  struct explained explained;
  int status = OHM_EXIT_DONE;
  ohm_sensor *sensor = ohm_sensor_named(arguments->operands[0], &status);
  if (status == OHM_EXIT_DONE)
    status = ohm_measurement_read(arguments, &all);
  if (status == OHM_EXIT_DONE && all.check.band)
    status = ohm_sensor_need_band(sensor, all.check.band);
  if (status == OHM_EXIT_DONE)
    status = explain(sensor, &all, &explained);
  if (status == OHM_EXIT_DONE && arguments->values[OHM_OPTION_JSON])
    write_json(&explained);
  else if (status == OHM_EXIT_DONE)
    status = write_screen(&explained);
  ohm_sensor_free(sensor);
  return status == OHM_EXIT_DONE ? (int)ohm_finding_verdict(&explained.together) : status;
}
