/* SPDX-License-Identifier: MIT */
#include <math.h>

#include <ohmcurve.h>

#include "findings.h"
#include "input.h"
#include "measurement.h"
#include "screen.h"
#include "sensors.h"
#include "verbs.h"

/* What was taken along the way; what was not is not told. */
struct taken {
  ohm_module module;
  ohm_meter meter;
  ohm_pin pin;
  ohm_reading reading;
  ohm_volts volts;
  ohm_reported reported;
  ohm_reference reference;
};

static int read_volts(const struct ohm_arguments *arguments, ohm_volts *volts) {
  static const char *const places[] = {"pin", "sensor", "body", NULL};
  const char *const *values = arguments->values;
  ohm_error error;
  if (!values[OHM_OPTION_PULLUP])
    return ohm_refuse(OHM_EXIT_USAGE,
                      "--volts needs --pullup, the resistor in the module: write --pullup 1k, with "
                      "the value of the car's wiring papers");
  if (ohm_volts_read(values[OHM_OPTION_VOLTS], volts, &error) != OHM_OK)
    return ohm_refuse(OHM_EXIT_DATA, "%s", error.message);
  if (!values[OHM_OPTION_NEGATIVE])
    return OHM_EXIT_DONE;
  int status = ohm_input_read_word(values[OHM_OPTION_NEGATIVE], places,
                                   "place of the negative lead", &volts->negative);
  volts->negative += OHM_NEGATIVE_PIN;
  return status;
}

static int read_readings(const struct ohm_arguments *arguments, struct taken *taken) {
  const char *const *values = arguments->values;
  ohm_error error;
  int status = OHM_EXIT_DONE;
  if ((values[OHM_OPTION_OHMS] &&
       ohm_reading_read(values[OHM_OPTION_OHMS], &taken->reading, &error) != OHM_OK) ||
      (values[OHM_OPTION_AT] &&
       ohm_reference_read(values[OHM_OPTION_AT], &taken->reference, &error) != OHM_OK))
    return ohm_refuse(OHM_EXIT_DATA, "%s", error.message);
  if (values[OHM_OPTION_VOLTS])
    status = read_volts(arguments, &taken->volts);
  if (values[OHM_OPTION_REPORTED] && status == OHM_EXIT_DONE)
    status = ohm_input_read_reported(arguments, values[OHM_OPTION_REPORTED], &taken->reported);
  return status;
}

static int read_taken(const struct ohm_arguments *arguments, struct taken *taken) {
  const char *const *values = arguments->values;
  *taken = (struct taken){.module = OHM_MODULE_INIT, .meter = OHM_METER_INIT, .pin = OHM_PIN_INIT};
  if (!values[OHM_OPTION_OHMS] && !values[OHM_OPTION_VOLTS] && !values[OHM_OPTION_REPORTED])
    return ohm_refuse(OHM_EXIT_USAGE, "nothing was taken: write two or three of --ohms, --volts "
                                      "and --reported");
  int status = read_readings(arguments, taken);
  if (status == OHM_EXIT_DONE)
    status = ohm_measurement_read_meter(arguments, &taken->meter);
  if (status == OHM_EXIT_DONE)
    status = ohm_input_read_module(arguments, &taken->module);
  return status == OHM_EXIT_DONE ? ohm_input_read_pin(arguments, &taken->pin) : status;
}

static int answer(const struct ohm_arguments *arguments, const ohm_sensor *sensor,
                  const struct taken *taken) {
  const char *const *values = arguments->values;
  ohm_finding finding;
  ohm_status status =
      ohm_pin_check(sensor, &taken->module, values[OHM_OPTION_OHMS] ? &taken->reading : NULL,
                    &taken->meter, values[OHM_OPTION_VOLTS] ? &taken->volts : NULL,
                    values[OHM_OPTION_REPORTED] ? &taken->reported : NULL,
                    values[OHM_OPTION_AT] ? &taken->reference : NULL, &taken->pin, &finding);
  if (status != OHM_OK)
    return ohm_input_refuse(sensor, status, values[OHM_OPTION_AT] ? values[OHM_OPTION_AT] : "",
                            values[OHM_OPTION_AT] ? taken->reference.t_c : NAN);
  int written = OHM_EXIT_DONE;
  if (values[OHM_OPTION_JSON])
    ohm_findings_write_json(&finding);
  else
    written = ohm_findings_write_report(&finding);
  return written == OHM_EXIT_DONE ? (int)ohm_finding_verdict(&finding) : written;
}

int ohm_signal_run(const struct ohm_arguments *arguments) {
  struct taken taken;
  int status = OHM_EXIT_DONE;
  ohm_sensor *sensor = ohm_sensor_named(arguments->operands[0], &status);
  if (sensor)
    status = read_taken(arguments, &taken);
  if (status == OHM_EXIT_DONE)
    status = answer(arguments, sensor, &taken);
  ohm_sensor_free(sensor);
  return status;
}
