/* SPDX-License-Identifier: MIT */
/*
 * Identifications from text: lines of "reading at", such as "2.31k 21.5C", then perhaps a
 * line "meter SPEC", "leads OHMS" or "level P", against the built-in sensors. What is in no
 * notation is left out; the rest must come to an answer that keeps the header's promises.
 */
#include "contract.h"
#include "../../lib/answers/explain.h"
#include "../../lib/answers/identify.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

enum { READINGS_MAX = 17, SENSORS_MAX = 64, WORD_SIZE = 64, TEXT_SIZE = 2048 };

struct bench {
  size_t count;
  oc_reading readings[READINGS_MAX];
  oc_reference references[READINGS_MAX];
  oc_meter meter;
  oc_check check;
};

/* Read once, and kept to the end. */
static size_t sensors_of(const ohm_sensor **all) {
  static const ohm_sensor *sensors[SENSORS_MAX];
  size_t count = ohm_sensor_built_in_count();
  require(count <= SENSORS_MAX, "SENSORS_MAX is large enough");
  for (size_t i = 0; i < count; i++) {
    if (!sensors[i])
      sensors[i] = ohm_sensor_built_in_load(ohm_sensor_built_in_name(i), NULL);
    require(sensors[i] != NULL, "a built-in sensor loads");
    all[i] = sensors[i];
  }
  return count;
}

static void take_line(struct bench *bench, const char *first, const char *second) {
  double level;
  if (strcmp(first, "meter") == 0) {
    oc_meter_read(second, &bench->meter, NULL);
  } else if (strcmp(first, "leads") == 0) {
    oc_leads_read(second, &bench->meter, NULL);
  } else if (strcmp(first, "level") == 0) {
    if (ohm_number_read(second, strlen(second), &level) == OHM_OK)
      bench->check.level = level;
  } else if (bench->count < READINGS_MAX &&
             oc_reading_read(first, &bench->readings[bench->count], NULL) == OHM_OK &&
             oc_reference_read(second, &bench->references[bench->count], NULL) == OHM_OK) {
    bench->count++;
  }
}

static void take_lines(struct bench *bench, const char *text) {
  char first[WORD_SIZE], second[WORD_SIZE];
  for (; *text; text += strcspn(text, "\n"), text += *text == '\n')
    if (sscanf(text, "%63[^ \n] %63[^\n]", first, second) == 2)
      take_line(bench, first, second);
}

static void require_candidate(const ohm_finding *candidate, int compared) {
  for (int field = 1; field < OC_FIELDS; field++)
    require_field(candidate, field);
  double p = ohm_finding_number(candidate, OHM_FIELD_P_SENSOR);
  double p_fit = ohm_finding_number(candidate, OHM_FIELD_P_FIT);
  if (!compared) {
    require_nothing(candidate);
    return;
  }
  require(within(0, p, 1), "a probability lies between 0 and 1");
  require(within(0, p_fit, 1), "a probability of fit lies between 0 and 1");
}

static void require_identified(const ohm_finding *candidates, size_t count,
                               const ohm_finding *finding) {
  require_finding(finding, 1);
  double compared = ohm_finding_number(finding, OHM_FIELD_COMPARED);
  if (isnan(compared))
    return;
  double sum = 0;
  for (size_t i = 0; i < count; i++) {
    require_candidate(&candidates[i], (double)i < compared);
    if ((double)i < compared)
      sum += ohm_finding_number(&candidates[i], OHM_FIELD_P_SENSOR);
  }
  require(compared == 0 || within(1 - 1e-9, sum, 1 + 1e-9), "one of those compared it is");
}

static int is_status(ohm_status status) {
  return status == OHM_OK || status == OHM_BAD_ARGUMENT || status == OHM_OUT_OF_RANGE ||
         status == OHM_TOO_LARGE;
}

/* The same readings, of the first sensor, with a few others that it may be. */
static void explain(const ohm_sensor *const *sensors, const struct bench *bench) {
  enum { OTHERS = 3 };
  ohm_finding each[OC_EXPLANATIONS];
  ohm_finding finding = finding_new();
  findings_begin(each, OC_EXPLANATIONS);
  ohm_status status =
      oc_explain(sensors[0], sensors + 1, OTHERS, bench->readings, bench->references, bench->count,
                 &bench->meter, &bench->check, each, &finding);
  require(is_status(status), "a status of explain is one of those named");
  if (status == OHM_OK)
    require_finding(&finding, 1);
  else
    require_nothing(&finding);
  for (int i = 0; i < OC_EXPLANATIONS; i++) {
    for (int field = 1; field < OC_FIELDS; field++)
      require_field(&each[i], field);
    double p_fit = ohm_finding_number(&each[i], OHM_FIELD_P_FIT);
    require(status == OHM_OK ? within(0, p_fit, 1) : isnan(p_fit),
            "an explanation fits with a probability");
    require_report(&each[i], ohm_finding_print_report, COLUMNS_MAX);
  }
}

static void identify(const ohm_sensor *const *sensors, size_t count, const struct bench *bench) {
  static ohm_finding candidates[SENSORS_MAX];
  ohm_finding finding = finding_new();
  findings_begin(candidates, count);
  ohm_status status = oc_identify(sensors, count, bench->readings, bench->references, bench->count,
                                  &bench->meter, &bench->check, candidates, &finding);
  require(is_status(status), "a status is one of those named");
  if (status == OHM_OK) {
    require_identified(candidates, count, &finding);
    return;
  }
  require_nothing(&finding);
  for (size_t i = 0; i < count; i++)
    require_nothing(&candidates[i]);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
  char text[TEXT_SIZE];
  if (size >= sizeof text)
    return 0;
  memcpy(text, data, size);
  text[size] = '\0';
  struct bench bench = {0};
  bench.meter = (oc_meter)OC_METER_INIT;
  bench.check = (oc_check)OC_CHECK_INIT;
  take_lines(&bench, text);
  const ohm_sensor *sensors[SENSORS_MAX];
  size_t count = sensors_of(sensors);
  identify(sensors, count, &bench);
  explain(sensors, &bench);
  findings_free();
  return 0;
}
