/* SPDX-License-Identifier: MIT */
/* The readings of check: OHMS, or OHMS@TEMP. */
#include <string.h>

#include "measurement.h"
#include "screen.h"

/* Where the temperature of a reading begins. An @ may stand inside of both: OL@20k,
 * boil@1200m. What is a reading as a whole has none. */
static char *temperature_in(char *text, ohm_reference *reference) {
  ohm_reading whole;
  if (ohm_reading_read(text, &whole, NULL) == OHM_OK)
    return NULL;
  for (char *at = strchr(text, '@'); at; at = strchr(at + 1, '@'))
    if (ohm_reference_read(at + 1, reference, NULL) == OHM_OK)
      return at;
  return NULL;
}

/* The last @ with a reading before it: what follows was meant as a temperature. */
static char *bad_temperature_in(char *text) {
  char *found = NULL;
  for (char *at = strchr(text, '@'); at; at = strchr(at + 1, '@')) {
    ohm_reading before;
    *at = '\0';
    if (ohm_reading_read(text, &before, NULL) == OHM_OK)
      found = at;
    *at = '@';
  }
  return found;
}

static bool is_unit(const char *text) {
  static const char *const units[] = {"k",    "K",    "M",    "ohm",  "ohms",
                                      "kohm", "Kohm", "Mohm", "kohms"};
  for (size_t i = 0; i < sizeof units / sizeof units[0]; i++)
    if (strcmp(text, units[i]) == 0)
      return true;
  return false;
}

static int refuse_reading(char *text, const ohm_error *of_reading) {
  ohm_error error;
  ohm_reference reference;
  char *at = bad_temperature_in(text);
  if (at && ohm_reference_read(at + 1, &reference, &error) != OHM_OK)
    return ohm_refuse(OHM_EXIT_DATA, "%s", error.message);
  if (is_unit(text))
    return ohm_refuse(OHM_EXIT_USAGE,
                      "\"%s\" is one word too many: write number and unit as one word, such as "
                      "2.31k, or in quotes",
                      text);
  return ohm_refuse(OHM_EXIT_DATA, "%s", of_reading->message);
}

static int read_one(char *text, const ohm_reference *common, ohm_reading *reading,
                    ohm_reference *reference) {
  ohm_error error;
  char *at = temperature_in(text, reference);
  if (at)
    *at = '\0';
  if (ohm_reading_read(text, reading, &error) != OHM_OK)
    return refuse_reading(text, &error);
  if (at)
    return OHM_EXIT_DONE;
  if (!common)
    return ohm_refuse(OHM_EXIT_USAGE,
                      "--at is missing: write --at TEMP, such as --at 21.5C, or the temperature "
                      "behind each reading, such as 2.31k@21.5C");
  *reference = *common;
  return OHM_EXIT_DONE;
}

int ohm_measurement_read_readings(const struct ohm_arguments *arguments,
                                  struct ohm_measurement *measurement) {
  const char *at = arguments->values[OHM_OPTION_AT];
  ohm_reference common;
  ohm_error error;
  if (at && ohm_reference_read(at, &common, &error) != OHM_OK)
    return ohm_refuse(OHM_EXIT_DATA, "%s", error.message);
  size_t first = strncmp(arguments->verb->operands, "SENSOR", 6) == 0;
  measurement->count = arguments->count - first;
  if (measurement->count > OHM_MEASUREMENT_MAX)
    return ohm_refuse(OHM_EXIT_DATA, "%zu readings are too many: write %d at most",
                      measurement->count, OHM_MEASUREMENT_MAX);
  for (size_t i = 0; i < measurement->count; i++) {
    int status = read_one(arguments->operands[first + i], at ? &common : NULL,
                          &measurement->readings[i], &measurement->references[i]);
    if (status != OHM_EXIT_DONE)
      return status;
  }
  return OHM_EXIT_DONE;
}
