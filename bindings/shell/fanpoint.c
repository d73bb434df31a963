/* SPDX-License-Identifier: MIT */
#include <math.h>

#include <ohmcurve.h>

#include "findings.h"
#include "input.h"
#include "measurement.h"
#include "screen.h"
#include "sensors.h"
#include "verbs.h"

struct asked {
  double on_c;
  double off_c;
  double hidden_ohm;
  ohm_module module;
};

static int read_hidden(const char *text, double *hidden_ohm) {
  ohm_reading reading;
  ohm_error error;
  if (ohm_reading_read(text, &reading, &error) != OHM_OK)
    return ohm_refuse(OHM_EXIT_DATA, "%s", error.message);
  *hidden_ohm = reading.r_ohm;
  if (reading.display != OHM_DISPLAY_VALUE || !(reading.r_ohm <= 1e6))
    return ohm_refuse(OHM_EXIT_DATA, "\"%s\" cannot hide in a wire: write 0 to 1M, such as 50",
                      text);
  return OHM_EXIT_DONE;
}

static int read_asked(const struct ohm_arguments *arguments, struct asked *asked) {
  const char *const *values = arguments->values;
  *asked = (struct asked){OHM_ASSUMED_FAN_C, NAN, OHM_ASSUMED_HIDDEN_OHM, OHM_MODULE_INIT};
  int status = OHM_EXIT_DONE;
  if (values[OHM_OPTION_ON])
    status = ohm_measurement_read_fan(values[OHM_OPTION_ON], &asked->on_c);
  if (values[OHM_OPTION_OFF] && status == OHM_EXIT_DONE)
    status = ohm_measurement_read_fan(values[OHM_OPTION_OFF], &asked->off_c);
  if (status == OHM_EXIT_DONE && asked->off_c >= asked->on_c)
    return ohm_refuse(OHM_EXIT_DATA, "a fan stops below where it starts: write --off lower than "
                                     "--on");
  if (values[OHM_OPTION_HIDDEN] && status == OHM_EXIT_DONE)
    status = read_hidden(values[OHM_OPTION_HIDDEN], &asked->hidden_ohm);
  return status == OHM_EXIT_DONE ? ohm_input_read_module(arguments, &asked->module) : status;
}

static int answer(const struct ohm_arguments *arguments, const ohm_sensor *sensor,
                  const struct asked *asked) {
  ohm_finding finding;
  double r_ohm;
  ohm_status status = ohm_fanpoint_find(sensor, asked->on_c, asked->off_c, &asked->module,
                                        asked->hidden_ohm, &finding);
  if (status != OHM_OK) {
    bool on = ohm_curve_resistance(ohm_sensor_curve(sensor), asked->on_c, &r_ohm) != OHM_OK;
    return ohm_input_refuse(sensor, status, on ? "where the fan starts" : "where it stops",
                            on ? asked->on_c : asked->off_c);
  }
  if (!arguments->values[OHM_OPTION_JSON])
    return ohm_findings_write_report(&finding);
  ohm_findings_write_json(&finding);
  return OHM_EXIT_DONE;
}

int ohm_fanpoint_run(const struct ohm_arguments *arguments) {
  struct asked asked;
  int status = OHM_EXIT_DONE;
  ohm_sensor *sensor = ohm_sensor_named(arguments->operands[0], &status);
  if (sensor)
    status = read_asked(arguments, &asked);
  if (status == OHM_EXIT_DONE)
    status = answer(arguments, sensor, &asked);
  ohm_sensor_free(sensor);
  return status;
}
