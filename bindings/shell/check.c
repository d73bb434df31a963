/* SPDX-License-Identifier: MIT */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include <ohmcurve.h>

#include "answers.h"
#include "bench.h"
#include "screen.h"
#include "sensors.h"

/* ---- every sensor built in ---- */

enum { NAME_WIDTH = 23, VERDICT_WIDTH = 38 };

static const char *verdict_of(const ohm_finding *finding) {
  static const struct shell_entry words[] = {
      {"conforms", "GOOD"},
      {"low", "BAD, reads low"},
      {"high", "BAD, reads high"},
      {"open", "BAD, open"},
      {"shorted", "BAD, shorted"},
      {"over_range", "CANNOT TELL YET, one range up"},
      {"no_tolerance", "CANNOT TELL YET, no limits printed"},
      {"outside_band", "CANNOT TELL YET, no limits there"},
      {"uncertain", "CANNOT TELL YET, too coarse"},
      {"plug_on", "CANNOT TELL YET, plug off?"},
      {"missing_k", "CANNOT TELL YET, a k missing?"},
      {"lone_one", "CANNOT TELL YET, one range up"},
      {"moving", "CANNOT TELL YET, still moving"},
      {NULL, NULL},
  };
  const char *reason = ohm_finding_text(finding, OHM_FIELD_REASON, 0);
  for (shell_entries entry = words; reason && entry->word; entry++)
    if (strcmp(reason, entry->word) == 0)
      return entry->meaning;
  return "CANNOT TELL YET";
}

static void write_line(const char *name, const ohm_answer *answer) {
  printf("%-*s%-*s", NAME_WIDTH, name, VERDICT_WIDTH, verdict_of(ohm_answer_finding(answer)));
  for (size_t i = 0; i < ohm_answer_count(answer, OHM_GROUP_READINGS); i++) {
    char means[SHELL_CELL_SIZE] = "-";
    double t_c =
        ohm_finding_number(ohm_answer_member(answer, OHM_GROUP_READINGS, i), OHM_FIELD_T_C);
    if (isfinite(t_c))
      shell_temperature_print(t_c, 1, means);
    printf("%s%s", i == 0 ? "" : ", ", means);
  }
  putchar('\n');
}

static int check_one(ohm_bench *bench, const char *name, bool as_json) {
  ohm_error error;
  int status = SHELL_EXIT_DONE;
  ohm_sensor *sensor = shell_sensor_named(name, &status);
  if (!sensor)
    return status;
  ohm_bench_use_sensor(bench, sensor);
  ohm_answer *answer = ohm_bench_check(bench, &error);
  if (!answer)
    status = shell_bench_refuse(bench, &error);
  else if (as_json)
    shell_answers_write_finding("finding", ohm_answer_finding(answer));
  else
    write_line(name, answer);
  ohm_answer_free(answer);
  ohm_bench_use_sensor(bench, NULL);
  ohm_sensor_free(sensor);
  return status;
}

static int check_each(ohm_bench *bench, bool as_json) {
  int status = SHELL_EXIT_DONE;
  for (size_t i = 0; i < ohm_sensor_built_in_count() && status == SHELL_EXIT_DONE; i++)
    status = check_one(bench, ohm_sensor_built_in_name(i), as_json);
  return status;
}

static int check_unknown(const struct shell_arguments *arguments, ohm_bench *bench) {
  bool as_json = arguments->values[SHELL_OPTION_JSON] != NULL;
  bool band = ohm_bench_setting(bench, OHM_SETTING_BAND) != NULL;
  if (arguments->values[SHELL_OPTION_BUDGET] || band)
    return shell_refuse(SHELL_EXIT_USAGE,
                        "%s is about one sensor, and unknown is every one: leave it out, or write "
                        "which sensor it is",
                        band ? "--band" : "--budget");
  if (!as_json)
    printf("%-*s%-*s%s\n", NAME_WIDTH, "if it is", VERDICT_WIDTH, "it would be", "and it read");
  int status = check_each(bench, as_json);
  if (status != SHELL_EXIT_DONE)
    return status;
  if (!as_json) {
    putchar('\n');
    shell_screen_wrap(0, ohm_bench_count(bench) > 1
                             ? "A sensor known only by these readings cannot be checked by the "
                               "same readings. 'ohmcurve identify' says which go with them."
                             : "A sensor known only by this reading cannot be checked by the same "
                               "reading. 'ohmcurve identify' says which go with it, and what "
                               "tells them apart.");
  }
  return (int)OHM_UNDECIDED;
}

/* ---- the verb ---- */

static int check(const struct shell_arguments *arguments, const ohm_sensor *sensor) {
  int status = SHELL_EXIT_DONE;
  ohm_bench *bench = shell_bench_new(arguments, &status);
  if (bench)
    status = shell_bench_read_ohms(bench, arguments, 1);
  ohm_bench_use_sensor(bench, sensor);
  if (status == SHELL_EXIT_DONE)
    status = sensor ? shell_answers_ask(arguments, bench, ohm_bench_check)
                    : check_unknown(arguments, bench);
  ohm_bench_free(bench);
  return status;
}

int shell_check_run(const struct shell_arguments *arguments) {
  int status = SHELL_EXIT_DONE;
  if (strcmp(arguments->operands[0], shell_sensor_unknown) == 0)
    return check(arguments, NULL);
  ohm_sensor *sensor = shell_sensor_named(arguments->operands[0], &status);
  if (sensor)
    status = check(arguments, sensor);
  ohm_sensor_free(sensor);
  return status;
}
