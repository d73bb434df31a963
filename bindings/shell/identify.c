/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <ohmcurve.h>

#include "findings.h"
#include "measurement.h"
#include "screen.h"
#include "sensors.h"
#include "verbs.h"

enum { NAME_WIDTH = 24, CHANCE_WIDTH = 10, KIND_WIDTH = 10, FURTHER_MAX = 3 };

/* The sensors compared, those built in first, and what was found on each. */
struct comparison {
  size_t count;
  ohm_sensor **sensors;
  ohm_finding *candidates;
  ohm_finding finding;
};

/* ---- what is compared ---- */

static void end(struct comparison *comparison) {
  for (size_t i = 0; i < comparison->count; i++)
    ohm_sensor_free(comparison->sensors[i]);
  free(comparison->sensors);
  free(comparison->candidates);
}

static int begin(const struct ohm_arguments *arguments, struct comparison *comparison) {
  size_t built_in = ohm_sensor_built_in_count();
  size_t count = built_in + arguments->repeated_count;
  int status = OHM_EXIT_DONE;
  *comparison = (struct comparison){.sensors = calloc(count, sizeof *comparison->sensors),
                                    .candidates = calloc(count, sizeof *comparison->candidates)};
  if (!comparison->sensors || !comparison->candidates)
    return ohm_refuse(OHM_EXIT_MEMORY, "%s", ohm_status_text(OHM_NO_MEMORY));
  for (size_t i = 0; i < count; i++) {
    const char *name =
        i < built_in ? ohm_sensor_built_in_name(i) : arguments->repeated[i - built_in];
    ohm_sensor *sensor = ohm_sensor_named(name, &status);
    if (!sensor)
      return status;
    comparison->sensors[comparison->count++] = sensor;
  }
  return status;
}

/* ---- what was found ---- */

static double number(const ohm_finding *finding, int field) {
  return ohm_finding_number(finding, field);
}

static bool leads(const ohm_finding *candidate) {
  return number(candidate, OHM_FIELD_LEADING) == 1;
}

static bool is_compared(const ohm_finding *candidate) {
  return ohm_finding_text(candidate, OHM_FIELD_ABOUT, 0) != NULL;
}

/* Of those compared; where none leads, how they share what is not theirs says nothing. */
static void write_chance(double p, bool none_leads) {
  char cell[OHM_CELL_SIZE];
  double in_100 = nearbyint(100 * p);
  if (none_leads)
    strcpy(cell, "-");
  else if (in_100 < 1)
    strcpy(cell, "under 1");
  else if (in_100 > 99)
    strcpy(cell, "over 99");
  else
    snprintf(cell, sizeof cell, "%.0f", in_100);
  printf("%-*s", CHANCE_WIDTH, cell);
}

static const char *mark(const ohm_finding *candidate) {
  if (leads(candidate))
    return "";
  bool fits = number(candidate, OHM_FIELD_P_FIT) >= 1 - number(candidate, OHM_FIELD_LEVEL);
  return fits ? "  less likely" : "  fits badly";
}

static void write_line(const ohm_finding *candidate, bool none_leads) {
  const char *name = ohm_finding_text(candidate, OHM_FIELD_SENSOR, 0);
  const char *kind = ohm_finding_text(candidate, OHM_FIELD_SENSOR_KIND, 0);
  double further_ohm = number(candidate, OHM_FIELD_SEPARATING_OHM);
  ohm_screen_text(name);
  ohm_screen_pad(name, NAME_WIDTH);
  write_chance(number(candidate, OHM_FIELD_P_SENSOR), none_leads);
  ohm_screen_text(kind ? kind : "-");
  if (isfinite(further_ohm)) {
    char cell[OHM_CELL_SIZE];
    ohm_resistance_print(further_ohm, 3, cell, sizeof cell);
    ohm_screen_pad(kind ? kind : "-", KIND_WIDTH);
    fputs(cell, stdout);
  }
  printf("%s\n", mark(candidate));
}

static void write_head(const ohm_finding *finding) {
  double t_c = number(finding, OHM_FIELD_SEPARATING_C);
  printf("%-*s%-*s%s", NAME_WIDTH, "it may be", CHANCE_WIDTH, "in 100", "feeds");
  if (isfinite(t_c))
    printf("%*snear %.0f C it would read", KIND_WIDTH - (int)strlen("feeds"), "", t_c);
  putchar('\n');
}

/* Those that lead, and the next few. */
static void write_table(const struct comparison *comparison) {
  size_t further = 0;
  bool none_leads = !ohm_finding_text(&comparison->finding, OHM_FIELD_SENSOR, 0);
  write_head(&comparison->finding);
  for (size_t i = 0; i < comparison->count; i++) {
    const ohm_finding *candidate = &comparison->candidates[i];
    if (is_compared(candidate) && (leads(candidate) || further++ < FURTHER_MAX))
      write_line(candidate, none_leads);
  }
  putchar('\n');
}

static void write_json(const struct comparison *comparison) {
  for (size_t i = 0; i < comparison->count; i++)
    if (is_compared(&comparison->candidates[i]))
      ohm_findings_write_json(&comparison->candidates[i]);
  ohm_findings_write_json(&comparison->finding);
}

/* ---- the verb ---- */

static int compare(struct comparison *comparison, const struct ohm_measurement *all) {
  ohm_status status =
      ohm_identify((const ohm_sensor *const *)comparison->sensors, comparison->count, all->readings,
                   all->references, all->count, &all->meter, &all->check, comparison->candidates,
                   &comparison->finding);
  return status == OHM_OK ? OHM_EXIT_DONE
                          : ohm_refuse(OHM_EXIT_DATA, "%s", ohm_status_text((int)status));
}

static int write_all(const struct ohm_arguments *arguments, const struct comparison *comparison) {
  int status = OHM_EXIT_DONE;
  if (arguments->values[OHM_OPTION_JSON]) {
    write_json(comparison);
  } else {
    if (is_compared(&comparison->candidates[0]))
      write_table(comparison);
    status = ohm_findings_write_report(&comparison->finding);
  }
  return status == OHM_EXIT_DONE ? (int)ohm_finding_verdict(&comparison->finding) : status;
}

int ohm_identify_run(const struct ohm_arguments *arguments) {
  struct ohm_measurement all;
  struct comparison comparison;
  if (arguments->values[OHM_OPTION_PINS])
    return ohm_pins_run(arguments);
  int status = ohm_measurement_read(arguments, &all);
  if (status != OHM_EXIT_DONE)
    return status;
  status = begin(arguments, &comparison);
  if (status == OHM_EXIT_DONE)
    status = compare(&comparison, &all);
  if (status == OHM_EXIT_DONE)
    status = write_all(arguments, &comparison);
  end(&comparison);
  return status;
}
