/* SPDX-License-Identifier: MIT */
#include "input.h"

#include <stdio.h>
#include <string.h>

#include "measurement.h"
#include "screen.h"
#include "sensors.h"

int ohm_input_read_word(const char *text, const char *const *words, const char *what, int *index) {
  char list[OHM_CELL_SIZE * 2] = "";
  for (int i = 0; words[i]; i++) {
    if (strcmp(text, words[i]) == 0) {
      *index = i;
      return OHM_EXIT_DONE;
    }
    size_t used = strlen(list);
    snprintf(list + used, sizeof list - used, "%s%s",
             i == 0         ? ""
             : words[i + 1] ? ", "
                            : " or ",
             words[i]);
  }
  return ohm_refuse(OHM_EXIT_DATA, "\"%s\" is no %s: write %s", text, what, list);
}

static int read_limit_volt(const char *text, double *limit_volt) {
  ohm_volts volts;
  ohm_error error;
  if (ohm_volts_read(text, &volts, &error) != OHM_OK)
    return ohm_refuse(OHM_EXIT_DATA, "%s", error.message);
  if (volts.v_volt == 0 || volts.accuracy == OHM_STATED)
    return ohm_refuse(OHM_EXIT_DATA, "\"%s\" is no limit of the pin: write volts above 0, as 4.9V",
                      text);
  *limit_volt = volts.v_volt;
  return OHM_EXIT_DONE;
}

int ohm_input_read_module(const struct ohm_arguments *arguments, ohm_module *module) {
  static const char *const ranges[] = {"cold", "hot", NULL};
  const char *const *values = arguments->values;
  ohm_error error;
  int status = OHM_EXIT_DONE;
  if ((values[OHM_OPTION_PULLUP] &&
       ohm_pull_up_read(values[OHM_OPTION_PULLUP], module, &error) != OHM_OK) ||
      (values[OHM_OPTION_REF] && ohm_supply_read(values[OHM_OPTION_REF], module, &error) != OHM_OK))
    return ohm_refuse(OHM_EXIT_DATA, "%s", error.message);
  if (values[OHM_OPTION_RANGE]) {
    status = ohm_input_read_word(values[OHM_OPTION_RANGE], ranges, "range", &module->range);
    module->range += OHM_RANGE_COLD;
  }
  if (values[OHM_OPTION_OPEN] && status == OHM_EXIT_DONE)
    status = read_limit_volt(values[OHM_OPTION_OPEN], &module->open_volt);
  if (values[OHM_OPTION_SHORT] && status == OHM_EXIT_DONE)
    status = read_limit_volt(values[OHM_OPTION_SHORT], &module->short_volt);
  return status;
}

int ohm_input_read_reported(const struct ohm_arguments *arguments, const char *text,
                            ohm_reported *reported) {
  static const char *const wholes[] = {"rounded", "cut", NULL};
  static const char *const answers[] = {"yes", "no", NULL};
  const char *const *values = arguments->values;
  ohm_error error;
  int status = OHM_EXIT_DONE;
  if (ohm_reported_read(text, reported, &error) != OHM_OK)
    return ohm_refuse(OHM_EXIT_DATA, "%s", error.message);
  if (values[OHM_OPTION_WHOLE]) {
    status = ohm_input_read_word(values[OHM_OPTION_WHOLE], wholes, "way to make whole degrees",
                                 &reported->rounding);
    reported->rounding += OHM_ROUNDED;
  }
  if (values[OHM_OPTION_MOVES] && status == OHM_EXIT_DONE) {
    status = ohm_input_read_word(values[OHM_OPTION_MOVES], answers, "answer", &reported->moves);
    reported->moves += OHM_MOVES;
  }
  return status;
}

static int read_within(const char *text, ohm_pin *pin) {
  double *limit_k = &pin->moved_limit_k;
  pin->moved = OHM_STATED;
  if (ohm_number_read(text, strlen(text), limit_k) == OHM_OK && 0 <= *limit_k && *limit_k <= 20)
    return OHM_EXIT_DONE;
  return ohm_refuse(OHM_EXIT_DATA,
                    "\"%s\" is not how far a sensor moved: write Celsius degrees, 0 to 20", text);
}

int ohm_input_read_pin(const struct ohm_arguments *arguments, ohm_pin *pin) {
  const char *const *values = arguments->values;
  int status = OHM_EXIT_DONE;
  if (values[OHM_OPTION_FAN])
    status = ohm_measurement_read_fan(values[OHM_OPTION_FAN], &pin->fan_c);
  if (values[OHM_OPTION_LIMIT] && status == OHM_EXIT_DONE)
    status = ohm_measurement_read_limit(values[OHM_OPTION_LIMIT], &pin->limit_k);
  if (values[OHM_OPTION_LEVEL] && status == OHM_EXIT_DONE)
    status = ohm_measurement_read_level(values[OHM_OPTION_LEVEL], &pin->level);
  if (values[OHM_OPTION_WITHIN] && status == OHM_EXIT_DONE)
    status = read_within(values[OHM_OPTION_WITHIN], pin);
  return status;
}

int ohm_input_refuse(const ohm_sensor *sensor, ohm_status status, const char *what, double t_c) {
  double r_ohm;
  if (status == OHM_OUT_OF_RANGE &&
      ohm_curve_resistance(ohm_sensor_curve(sensor), t_c, &r_ohm) == OHM_OUT_OF_RANGE)
    return ohm_refuse_outside(sensor, "", what, "");
  return ohm_refuse(OHM_EXIT_DATA, "%s", ohm_status_text((int)status));
}
