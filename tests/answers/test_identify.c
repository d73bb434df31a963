/* SPDX-License-Identifier: MIT */
#include "../rows.h"
#include "../scene.h"
#include "../../lib/answers/identify.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { SENSORS_MAX = 64, MOST = 16 };

/* Every built-in sensor, and room for more; read once. */
static const ohm_sensor *sensors[SENSORS_MAX];
static size_t built_in_count;

static void load_catalogue(void) {
  built_in_count = ohm_sensor_built_in_count();
  for (size_t i = 0; i < built_in_count; i++)
    sensors[i] = ohm_sensor_built_in_load(ohm_sensor_built_in_name(i), NULL);
}

/* ---- the bench ---- */

struct answer {
  size_t count;
  ohm_finding candidates[SENSORS_MAX];
  ohm_finding finding;
};

struct bench {
  size_t count;
  oc_reading readings[MOST + 1];
  oc_reference references[MOST + 1];
};

/* "2.31k@21.5C 330@80C" */
static struct bench typed_bench(const char *text) {
  struct bench bench = {0};
  char word[32];
  for (int used; sscanf(text, "%31s%n", word, &used) == 1; text += used) {
    char *at = strrchr(word, '@');
    *at = '\0';
    ck_assert_int_eq(oc_reading_read(word, &bench.readings[bench.count], NULL), OHM_OK);
    ck_assert_int_eq(oc_reference_read(at + 1, &bench.references[bench.count], NULL), OHM_OK);
    bench.count++;
  }
  return bench;
}

static void identify_among(const ohm_sensor *const *among, size_t count, const struct bench *bench,
                           const oc_check *check, struct answer *answer) {
  answer->count = count;
  answer->finding = finding_new();
  findings_begin(answer->candidates, count);
  PROVOKES(oc_identify, OHM_OK,
           oc_identify(among, count, bench->readings, bench->references, bench->count, NULL, check,
                       answer->candidates, &answer->finding));
}

static const struct answer *identified(const char *text) {
  static struct answer answer;
  struct bench bench = typed_bench(text);
  identify_among(sensors, built_in_count, &bench, NULL, &answer);
  return &answer;
}

static const char *name_of(const ohm_finding *finding) {
  const char *name = ohm_finding_text(finding, OHM_FIELD_SENSOR, 0);
  return name ? name : "";
}

static bool is_compared(const ohm_finding *candidate) {
  return ohm_finding_text(candidate, OHM_FIELD_ABOUT, 0) != NULL;
}

static bool leads(const ohm_finding *candidate) {
  return number_in(candidate, OHM_FIELD_LEADING) == 1;
}

static const ohm_finding *candidate_named(const struct answer *answer, const char *name) {
  for (size_t i = 0; i < answer->count; i++)
    if (strcmp(name_of(&answer->candidates[i]), name) == 0)
      return &answer->candidates[i];
  ck_abort_msg("%s was not compared", name);
}

/* ---- bad values ---- */

static void check_absent(const ohm_finding *finding) {
  for (int i = 0; i < OC_FIELDS; i++) {
    ck_assert(isnan(ohm_finding_number(finding, i)));
    ck_assert_ptr_null(ohm_finding_text(finding, i, 0));
  }
}

/* Everything one call takes; a test spoils one thing. */
struct call {
  const ohm_sensor *const *among;
  size_t sensor_count;
  struct bench bench;
  const oc_reading *readings;
  const oc_reference *references;
  oc_meter meter;
  oc_check check;
  struct answer answer;
};

static void begin(struct call *call) {
  findings_stale(call->answer.candidates, SENSORS_MAX);
  findings_stale(&call->answer.finding, 1);
  call->among = sensors;
  call->sensor_count = built_in_count;
  call->bench = typed_bench("2.31k@21.5C 330@80C");
  call->readings = call->bench.readings;
  call->references = call->bench.references;
  call->meter = (oc_meter)OC_METER_INIT;
  call->check = (oc_check)OC_CHECK_INIT;
}

static ohm_status run(struct call *call) {
  return oc_identify(call->among, call->sensor_count, call->readings, call->references,
                     call->bench.count, &call->meter, &call->check, call->answer.candidates,
                     &call->answer.finding);
}

static void check_all_absent(const struct call *call) {
  check_absent(&call->answer.finding);
  for (size_t i = 0; i < call->sensor_count; i++)
    check_absent(&call->answer.candidates[i]);
}

START_TEST(every_pointer_but_meter_and_check_is_required)
{
  static struct call call;
  const ohm_sensor *with_none[SENSORS_MAX];
  memcpy(with_none, sensors, sizeof with_none);
  with_none[3] = NULL;
  begin(&call);
  call.among = NULL;
  PROVOKES(oc_identify, OHM_NULL_ARGUMENT, run(&call));
  check_all_absent(&call);
  begin(&call);
  call.among = with_none;
  PROVOKES(oc_identify, OHM_NULL_ARGUMENT, run(&call));
  check_all_absent(&call);
  begin(&call);
  call.readings = NULL;
  PROVOKES(oc_identify, OHM_NULL_ARGUMENT, run(&call));
  check_all_absent(&call);
  begin(&call);
  call.references = NULL;
  PROVOKES(oc_identify, OHM_NULL_ARGUMENT, run(&call));
  check_all_absent(&call);
  PROVOKES(oc_identify, OHM_NULL_ARGUMENT,
           oc_identify(sensors, 1, call.bench.readings, call.bench.references, 1, NULL, NULL, NULL,
                       &call.answer.finding));
  PROVOKES(oc_identify, OHM_NULL_ARGUMENT,
           oc_identify(sensors, 1, call.bench.readings, call.bench.references, 1, NULL, NULL,
                       call.answer.candidates, NULL));
}
END_TEST

START_TEST(there_is_a_sensor_and_1_to_16_readings)
{
  static struct call call;
  begin(&call);
  call.sensor_count = 0;
  PROVOKES(oc_identify, OHM_BAD_ARGUMENT, run(&call));
  begin(&call);
  call.bench.count = 0;
  PROVOKES(oc_identify, OHM_BAD_ARGUMENT, run(&call));
  check_all_absent(&call);
  begin(&call);
  call.bench.count = MOST + 1;
  PROVOKES(oc_identify, OHM_TOO_LARGE, run(&call));
  check_all_absent(&call);
  for (size_t count = 1; count <= MOST; count++) {
    begin(&call);
    for (size_t i = 0; i < count; i++) {
      call.bench.readings[i] = call.bench.readings[0];
      call.bench.references[i] = call.bench.references[0];
    }
    call.bench.count = count;
    PROVOKES(oc_identify, OHM_OK, run(&call));
    CHECK_NEAR(number_in(&call.answer.finding, OHM_FIELD_READINGS), (double)count, 0);
  }
}
END_TEST

START_TEST(a_band_of_one_sensor_is_no_question_to_all)
{
  static struct call call;
  begin(&call);
  call.check.band = "mazda-rx8-2004";
  PROVOKES(oc_identify, OHM_BAD_ARGUMENT, run(&call));
  check_all_absent(&call);
}
END_TEST

START_TEST(a_member_out_of_its_range_is_refused)
{
  static struct call call;
  static const double levels[] = {0.5, 1, -1, 2};
  for (size_t i = 0; i < sizeof levels / sizeof levels[0]; i++) {
    begin(&call);
    call.check.level = levels[i];
    PROVOKES(oc_identify, OHM_OUT_OF_RANGE, run(&call));
    check_all_absent(&call);
  }
  begin(&call);
  call.bench.references[1].t_c = 1001;
  PROVOKES(oc_identify, OHM_OUT_OF_RANGE, run(&call));
  begin(&call);
  call.check.tolerance_percent = 100;
  PROVOKES(oc_identify, OHM_OUT_OF_RANGE, run(&call));
  begin(&call);
  call.check.fan_c = 131;
  PROVOKES(oc_identify, OHM_OUT_OF_RANGE, run(&call));
}
END_TEST

START_TEST(no_double_that_is_none_gets_through)
{
  static struct call call;
  static const double bad[] = {NAN, INFINITY, -INFINITY};
  for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
    double *const members[] = {&call.bench.readings[1].r_ohm,
                               &call.bench.readings[0].resolution_ohm,
                               &call.bench.references[1].t_c,
                               &call.bench.references[0].limit_k,
                               &call.bench.references[0].u_k,
                               &call.meter.percent,
                               &call.meter.counts,
                               &call.meter.lead_ohm,
                               &call.meter.current_ma,
                               &call.check.level,
                               &call.check.tolerance_percent,
                               &call.check.fan_c,
                               &call.check.limit_k};
    for (size_t j = 0; j < sizeof members / sizeof members[0]; j++) {
      begin(&call);
      *members[j] = bad[i];
      PROVOKES(oc_identify, OHM_BAD_ARGUMENT, run(&call));
      check_all_absent(&call);
    }
  }
}
END_TEST

/* ---- what readings come to ---- */

START_TEST(one_that_leads_is_found)
{
  const struct answer *answer = identified("37.4k@20C+-0.5 3.7k@80C+-0.5");
  check_verdict(&answer->finding, OHM_WITHIN, "one");
  ck_assert_str_eq(name_of(&answer->finding), "ntc-37k-20c");
  ck_assert_str_eq(ohm_finding_text(&answer->finding, OHM_FIELD_CANDIDATES, 0), "ntc-37k-20c");
  ck_assert_ptr_null(ohm_finding_text(&answer->finding, OHM_FIELD_CANDIDATES, 1));
  const char *text = report_of(&answer->finding);
  check_has(text, "FOUND: of the");
  check_has(text, "ntc-37k-20c");
  check_has(text, "another temperature");
}
END_TEST

START_TEST(what_was_identified_is_not_checked_by_the_same_readings)
{
  static const char *const texts[] = {"37.4k@20C 3.7k@80C", "330@80C", "2.31k@21.5C 330@80C"};
  for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
    const struct answer *answer = identified(texts[i]);
    check_has(report_of(&answer->finding), "readings that name it cannot check it");
    check_has_not(report_of(&answer->finding), "GOOD");
    ck_assert_ptr_null(ohm_finding_text(&answer->finding, OHM_FIELD_JOB, 0));
  }
}
END_TEST

/* Near 80 and 100 C the families of 2.45 and 3.5 kohm cross; near 20 C they are apart:
 * the trade's, and of the printed tables. */
START_TEST(a_hot_reading_alone_tells_no_family)
{
  const struct answer *answer = identified("330@80C");
  check_verdict(&answer->finding, OHM_UNDECIDED, "several");
  ck_assert(leads(candidate_named(answer, "ntc-2k45-20c")));
  ck_assert(leads(candidate_named(answer, "ntc-3k5-20c")));
  CHECK_NEAR(number_in(&answer->finding, OHM_FIELD_SEPARATING_C), 20, 0);
  double one = number_in(&answer->finding, OHM_FIELD_SEPARATING_OHM);
  double other = number_in(&answer->finding, OHM_FIELD_SEPARATING_OTHER_OHM);
  CHECK_NEAR(fmin(one, other), 2500, 100);
  CHECK_NEAR(fmax(one, other), 3500, 100);
  check_has(report_of(&answer->finding), "measure near 20 C, thermometer beside: ");
}
END_TEST

START_TEST(the_reading_it_asks_for_settles_it)
{
  const struct answer *answer = identified("330@80C 3.5k@20C");
  ck_assert(!leads(candidate_named(answer, "ntc-2k45-20c")));
  ck_assert(leads(candidate_named(answer, "ntc-3k5-20c")));
  answer = identified("330@80C 2.45k@20C");
  ck_assert(leads(candidate_named(answer, "ntc-2k45-20c")));
  ck_assert(!leads(candidate_named(answer, "ntc-3k5-20c")));
}
END_TEST

START_TEST(sensors_that_are_equal_are_alike)
{
  static struct answer answer;
  ohm_sensor *once = sensor_built_in("ntc-37k-20c");
  ohm_sensor *again = sensor_built_in("ntc-37k-20c");
  const ohm_sensor *among[] = {once, sensors[0], again};
  struct bench bench = typed_bench("37.4k@20C 3.7k@80C");
  identify_among(among, 3, &bench, NULL, &answer);
  check_verdict(&answer.finding, OHM_WITHIN, "alike");
  ck_assert(isnan(number_in(&answer.finding, OHM_FIELD_SEPARATING_C)));
  CHECK_NEAR(number_in(&answer.candidates[0], OHM_FIELD_P_SENSOR), 0.5, 1e-6);
  CHECK_NEAR(number_in(&answer.candidates[0], OHM_FIELD_SENSOR_INDEX), 0, 0);
  CHECK_NEAR(number_in(&answer.candidates[1], OHM_FIELD_SENSOR_INDEX), 2, 0);
  check_has(report_of(&answer.finding), "FOUND: one of these; no reading");
  ohm_sensor_free(once);
  ohm_sensor_free(again);
}
END_TEST

START_TEST(none_of_these_is_an_answer)
{
  static const char *const texts[] = {"480@35C", "50@20C 20@80C", "150k@20C 10k@80C",
                                      "2.45k@20C 900@80C"};
  for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
    const struct answer *answer = identified(texts[i]);
    check_verdict(&answer->finding, OHM_OUTSIDE, "none");
    ck_assert_ptr_null(ohm_finding_text(&answer->finding, OHM_FIELD_SENSOR, 0));
    for (size_t j = 0; j < answer->count; j++)
      ck_assert(!leads(&answer->candidates[j]));
    check_has(report_of(&answer->finding), "NONE of the");
  }
}
END_TEST

/* No sensor reaches 900 C: none was compared, and that is said. */
START_TEST(nothing_compared_is_none)
{
  const struct answer *answer = identified("2.45k@900C");
  check_verdict(&answer->finding, OHM_OUTSIDE, "none");
  CHECK_NEAR(number_in(&answer->finding, OHM_FIELD_COMPARED), 0, 0);
  CHECK_NEAR(number_in(&answer->finding, OHM_FIELD_NOT_COMPARED), (double)built_in_count, 0);
  for (size_t i = 0; i < answer->count; i++)
    ck_assert(!is_compared(&answer->candidates[i]));
}
END_TEST

START_TEST(a_missing_k_is_asked_for)
{
  const struct answer *answer = identified("2.31@21.5C");
  check_verdict(&answer->finding, OHM_UNDECIDED, "missing_k");
  CHECK_NEAR(number_in(&answer->finding, OHM_FIELD_SUGGESTED_OHM), 2310, 1e-9);
  check_has(report_of(&answer->finding), "did you mean 2.31 k?");
  answer = identified("37.4@20C 3.7@80C");
  check_verdict(&answer->finding, OHM_UNDECIDED, "missing_k");
  answer = identified("2.31ohm@21.5C");
  check_verdict(&answer->finding, OHM_OUTSIDE, "none");
}
END_TEST

START_TEST(what_is_open_cold_and_closed_hot_is_a_fan_switch)
{
  static const struct {
    const char *readings;
    const char *reason;
  } rows[] = {{"OL@20C 0.3@95C", "fan_switch"},
              {"open@20C OL@60C 0.2@98C", "fan_switch"},
              {"0.3@20C OL@95C", "shorted"},
              {"OL@20C OL@95C", "over_range"},
              {"OL@20C 0.3@95C 40@60C", "over_range"}};
  static struct call call;
  begin(&call);
  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
    call.bench = typed_bench(rows[i].readings);
    ck_assert_int_eq(run(&call), OHM_OK);
    ck_assert_str_eq(ohm_finding_text(&call.answer.finding, OHM_FIELD_REASON, 0), rows[i].reason);
  }
}
END_TEST

START_TEST(a_display_without_a_number_identifies_nothing)
{
  static const struct {
    const char *text;
    const char *reason;
  } rows[] = {{"OL@21.5C", "over_range"},  {"OL@20k@21.5C", "over_range"},
              {"open@21.5C", "open"},      {"1@21.5C", "lone_one"},
              {"0@21.5C", "shorted"},      {"2.31k@21.5C OL@80C", "over_range"},
              {"open@20C 330@80C", "open"}};
  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
    const struct answer *answer = identified(rows[i].text);
    check_verdict(&answer->finding, OHM_UNDECIDED, rows[i].reason);
    ck_assert_ptr_null(ohm_finding_text(&answer->finding, OHM_FIELD_SENSOR, 0));
    for (size_t j = 0; j < answer->count; j++)
      check_absent(&answer->candidates[j]);
    check_has(report_of(&answer->finding), "names no sensor");
    check_has(report_of(&answer->finding), "a radiator fan switch reads OL cold");
  }
}
END_TEST

/* ---- the candidates ---- */

static const char *const benches[] = {
    "330@80C", "2.31k@21.5C", "2.31k@21.5C 330@80C", "37.4k@20C", "10k@25C 700@100C",
    "210@50C", "107.8@20C",   "2.45k@20C+-10",       "480@35C",   "330@80C 2.31k@ice 188@boil"};
enum { BENCHES = sizeof benches / sizeof benches[0] };

START_TEST(one_leads_when_it_fits_and_none_is_ten_times_as_probable)
{
  const struct answer *answer = identified(benches[_i]);
  double level = number_in(&answer->finding, OHM_FIELD_LEVEL);
  double best = 0;
  for (size_t i = 0; i < answer->count; i++)
    if (number_in(&answer->candidates[i], OHM_FIELD_P_FIT) >= 1 - level)
      best = fmax(best, number_in(&answer->candidates[i], OHM_FIELD_P_SENSOR));
  size_t leading = 0;
  for (size_t i = 0; i < answer->count; i++) {
    const ohm_finding *candidate = &answer->candidates[i];
    bool fits = number_in(candidate, OHM_FIELD_P_FIT) >= 1 - level;
    bool near = number_in(candidate, OHM_FIELD_P_SENSOR) >= best / 10;
    if (is_compared(candidate))
      ck_assert_int_eq(leads(candidate), fits && near);
    if (leads(candidate))
      ck_assert_str_eq(ohm_finding_text(&answer->finding, OHM_FIELD_CANDIDATES, leading++),
                       name_of(candidate));
  }
  ck_assert_ptr_null(ohm_finding_text(&answer->finding, OHM_FIELD_CANDIDATES, leading));
}
END_TEST

START_TEST(the_likeliest_come_first_and_add_up_to_one)
{
  const struct answer *answer = identified(benches[_i]);
  double sum = 0;
  size_t compared = (size_t)number_in(&answer->finding, OHM_FIELD_COMPARED);
  for (size_t i = 0; i < answer->count; i++) {
    const ohm_finding *candidate = &answer->candidates[i];
    ck_assert_int_eq(is_compared(candidate), i < compared);
    if (i >= compared)
      continue;
    double p = number_in(candidate, OHM_FIELD_P_SENSOR);
    ck_assert(i == 0 || p <= number_in(&answer->candidates[i - 1], OHM_FIELD_P_SENSOR));
    double p_fit = number_in(candidate, OHM_FIELD_P_FIT);
    ck_assert(0 <= p_fit && p_fit <= 1);
    sum += p;
  }
  CHECK_NEAR(sum, 1, 1e-12);
  CHECK_NEAR(number_in(&answer->finding, OHM_FIELD_NOT_COMPARED),
             (double)(answer->count - compared), 0);
}
END_TEST

/* One whose curve does not reach a temperature is not compared; it keeps its place among
 * the sensors and nothing else. */
START_TEST(what_was_not_compared_is_absent)
{
  const struct answer *answer = identified("2.31k@-35C");
  size_t compared = (size_t)number_in(&answer->finding, OHM_FIELD_COMPARED);
  ck_assert_uint_lt(compared, answer->count);
  for (size_t i = compared; i < answer->count; i++)
    check_absent(&answer->candidates[i]);
}
END_TEST

START_TEST(the_order_of_sensors_and_readings_does_not_matter)
{
  static struct answer turned;
  const ohm_sensor *backwards[SENSORS_MAX];
  for (size_t i = 0; i < built_in_count; i++)
    backwards[i] = sensors[built_in_count - 1 - i];
  const struct answer *answer = identified("2.31k@21.5C 330@80C+-1 1.15k@40C");
  struct bench bench = typed_bench("1.15k@40C 2.31k@21.5C 330@80C+-1");
  identify_among(backwards, built_in_count, &bench, NULL, &turned);
  for (size_t i = 0; i < 5; i++) {
    const ohm_finding *candidate = &answer->candidates[i];
    const ohm_finding *other = candidate_named(&turned, name_of(candidate));
    CHECK_NEAR(number_in(other, OHM_FIELD_P_SENSOR), number_in(candidate, OHM_FIELD_P_SENSOR),
               1e-6);
  }
  ck_assert_str_eq(ohm_finding_text(&turned.finding, OHM_FIELD_REASON, 0),
                   ohm_finding_text(&answer->finding, OHM_FIELD_REASON, 0));
}
END_TEST

/* A level nearer to 1 asks more before a sensor is ruled out. */
START_TEST(a_stricter_level_lets_more_lead)
{
  static struct answer answers[2];
  struct bench bench = typed_bench("2.31k@21.5C 330@80C");
  size_t leading[2] = {0, 0};
  for (int i = 0; i < 2; i++) {
    oc_check check = OC_CHECK_INIT;
    check.level = i == 0 ? 0.8 : 0.999;
    identify_among(sensors, built_in_count, &bench, &check, &answers[i]);
    for (size_t j = 0; j < built_in_count; j++)
      leading[i] += leads(&answers[i].candidates[j]);
  }
  ck_assert_uint_lt(leading[0], leading[1]);
}
END_TEST

START_TEST(a_tolerance_given_is_that_of_every_sensor)
{
  static struct answer answer;
  struct bench bench = typed_bench("2.20k@20C+-0.1");
  oc_check check = OC_CHECK_INIT;
  check.tolerance_percent = 3;
  identify_among(sensors, built_in_count, &bench, &check, &answer);
  ck_assert(!leads(candidate_named(&answer, "ntc-2k45-20c")));
  check.tolerance_percent = 20;
  identify_among(sensors, built_in_count, &bench, &check, &answer);
  ck_assert(leads(candidate_named(&answer, "ntc-2k45-20c")));
}
END_TEST

/* ---- the fan, and gauges ---- */

START_TEST(what_is_certain_of_the_fan_is_said)
{
  const struct answer *answer = identified("2.31k@21.5C");
  double least = INFINITY;
  double most = 0;
  for (size_t i = 0; i < answer->count; i++)
    if (leads(&answer->candidates[i])) {
      least = fmin(least, number_in(&answer->candidates[i], OHM_FIELD_FIFTY_LATE_K));
      most = fmax(most, number_in(&answer->candidates[i], OHM_FIELD_FIFTY_LATE_K));
    }
  CHECK_NEAR(number_in(&answer->finding, OHM_FIELD_FIFTY_LEAST_LATE_K), least, 0);
  CHECK_NEAR(number_in(&answer->finding, OHM_FIELD_FIFTY_LATE_K), most, 0);
  check_has(report_of(&answer->finding),
            "whichever it is, set for 97.0 C, 50 ohm in the plug make");
}
END_TEST

static bool has_gauge(const struct answer *answer) {
  for (size_t i = 0; i < answer->count; i++) {
    const char *kind = ohm_finding_text(&answer->candidates[i], OHM_FIELD_SENSOR_KIND, 0);
    if (leads(&answer->candidates[i]) && strcmp(kind, "gauge") == 0)
      return true;
  }
  return false;
}

/* Its own nominal, at temperatures it is printed for. */
START_TEST(a_gauge_sender_never_appears_without_its_sentence)
{
  int seen = 0;
  for (size_t i = 0; i < built_in_count; i++) {
    double low_c, high_c;
    ohm_curve_range(ohm_sensor_curve(sensors[i]), &low_c, &high_c, NULL, NULL);
    for (double t_c = ceil(low_c); t_c <= fmin(high_c, 120); t_c += 5) {
      static struct answer answer;
      double r_ohm;
      ck_assert_int_eq(ohm_curve_resistance(ohm_sensor_curve(sensors[i]), t_c, &r_ohm), OHM_OK);
      struct scene scene = scene_exact(r_ohm, t_c);
      struct bench bench = {1, {scene.reading}, {scene.reference}};
      identify_among(sensors, built_in_count, &bench, NULL, &answer);
      bool gauge = has_gauge(&answer);
      ck_assert_int_eq(gauge, number_in(&answer.finding, OHM_FIELD_GAUGES) > 0);
      if (gauge)
        check_has(report_of(&answer.finding), "gauge's sender");
      else
        check_has_not(report_of(&answer.finding), "gauge's sender");
      seen += gauge;
    }
  }
  ck_assert_int_gt(seen, 10);
}
END_TEST

/* Far from every limit of a module's sensor a reading may be a gauge's. */
START_TEST(a_check_far_off_points_to_a_gauge_sender)
{
  ohm_finding finding = typed("ntc-2k45-20c", "210", "50C", OHM_PLACE_SENSOR);
  check_verdict(&finding, OHM_OUTSIDE, "low");
  check_has(report_of(&finding), "gauge's sender? identify it");
  finding = typed("ntc-2k45-20c", "690", "80C", OHM_PLACE_SENSOR);
  check_verdict(&finding, OHM_OUTSIDE, "high");
  check_has(report_of(&finding), "gauge's sender? identify it");
  finding = typed("ntc-2k45-20c", "550", "50C", OHM_PLACE_SENSOR);
  check_verdict(&finding, OHM_OUTSIDE, "low");
  check_has_not(report_of(&finding), "gauge");
}
END_TEST

START_TEST(a_report_keeps_to_its_lines)
{
  const struct answer *answer = identified(benches[_i]);
  const char *text = report_of(&answer->finding);
  int lines = 0;
  for (const char *line = text; *line; line += strcspn(line, "\n") + 1, lines++)
    ck_assert_uint_le(strcspn(line, "\n"), 80);
  ck_assert_msg(lines <= 12, "%s", text);
}
END_TEST

/* ---- the printed tables ---- */

enum { TABLE, SUSPECTS, FITS, REMARK, WHY, TABLE_CELLS };

static struct row tables[ROWS_MAX];
static size_t table_count;

static ohm_sensor *load_table(const char *table) {
  char name[128];
  snprintf(name, sizeof name, "tests/sensors/%s.csv", table);
  char *path = source_path(name);
  ohm_sensor *sensor = ohm_sensor_load(path, NULL);
  free(path);
  return sensor;
}

static double printed_ohm(const ohm_sensor_row *row) {
  return isnan(row->nominal_ohm) ? sqrt(row->min_ohm * row->max_ohm) : row->nominal_ohm;
}

/* The row nearest to a temperature, above another. */
static ohm_sensor_row row_near(const ohm_sensor *sensor, double t_c, double above_c) {
  ohm_sensor_row best = ohm_sensor_row_at(sensor, SIZE_MAX);
  for (size_t i = 0; i < ohm_sensor_row_count(sensor); i++) {
    ohm_sensor_row row = ohm_sensor_row_at(sensor, i);
    if (row.t_c > above_c && !(fabs(best.t_c - t_c) <= fabs(row.t_c - t_c)))
      best = row;
  }
  return best;
}

/* Equal to what tables of one curve differ by, 3 %: of the reference's check of tables. */
static bool is_equal_there(const ohm_finding *candidate, const ohm_sensor_row *rows) {
  const ohm_sensor *sensor = sensors[(size_t)number_in(candidate, OHM_FIELD_SENSOR_INDEX)];
  for (int i = 0; i < 2; i++) {
    double r_ohm = NAN;
    ohm_curve_resistance(ohm_sensor_curve(sensor), rows[i].t_c, &r_ohm);
    if (!(fabs(log(r_ohm / printed_ohm(&rows[i]))) <= 0.03))
      return false;
  }
  return true;
}

/* Its own sensor, or one that is equal to it electrically, is among those that lead. */
static void check_own_leads(const char *table, const ohm_sensor *own, double limit_k) {
  static struct answer answer;
  const ohm_sensor_row cold = row_near(own, 20, -INFINITY);
  const ohm_sensor_row rows[] = {cold, row_near(own, 80, cold.t_c)};
  struct bench bench = {.count = 2};
  for (int i = 0; i < 2; i++) {
    struct scene scene = scene_exact(printed_ohm(&rows[i]), rows[i].t_c);
    bench.readings[i] = scene.reading;
    bench.references[i] = scene.reference;
    bench.references[i].accuracy = OC_STATED;
    bench.references[i].limit_k = limit_k;
  }
  sensors[built_in_count] = own;
  identify_among(sensors, built_in_count + 1, &bench, NULL, &answer);
  bool found = false;
  for (size_t i = 0; i < answer.count; i++)
    found = found ||
            (leads(&answer.candidates[i]) &&
             (number_in(&answer.candidates[i], OHM_FIELD_SENSOR_INDEX) == (double)built_in_count ||
              is_equal_there(&answer.candidates[i], rows)));
  ck_assert_msg(found, "%s, %g K: %s", table, limit_k, report_of(&answer.finding));
}

START_TEST(two_rows_of_a_clean_table_lead_to_its_sensor)
{
  const struct row *table = &tables[_i];
  if (strcmp(table->cell[SUSPECTS], "-") != 0 || strcmp(table->cell[REMARK], "-") != 0)
    return;
  ohm_sensor *own = load_table(table->cell[TABLE]);
  ck_assert_ptr_nonnull(own);
  check_own_leads(table->cell[TABLE], own, 0.5);
  check_own_leads(table->cell[TABLE], own, OC_ASSUMED_THERMOMETER_LIMIT_K);
  ohm_sensor_free(own);
}
END_TEST

int main(void) {
  load_catalogue();
  table_count = rows_read("tests/audit_expected.psv", TABLE_CELLS, tables, 0);
  int bad =
      RUN_TESTS("bad values of identify", every_pointer_but_meter_and_check_is_required,
                there_is_a_sensor_and_1_to_16_readings, a_band_of_one_sensor_is_no_question_to_all,
                a_member_out_of_its_range_is_refused, no_double_that_is_none_gets_through);
  int good = RUN_TESTS(
      "identify", one_that_leads_is_found, what_was_identified_is_not_checked_by_the_same_readings,
      a_hot_reading_alone_tells_no_family, the_reading_it_asks_for_settles_it,
      sensors_that_are_equal_are_alike, none_of_these_is_an_answer, nothing_compared_is_none,
      a_missing_k_is_asked_for, what_is_open_cold_and_closed_hot_is_a_fan_switch,
      a_display_without_a_number_identifies_nothing, what_was_not_compared_is_absent,
      the_order_of_sensors_and_readings_does_not_matter, a_stricter_level_lets_more_lead,
      a_tolerance_given_is_that_of_every_sensor, what_is_certain_of_the_fan_is_said,
      a_gauge_sender_never_appears_without_its_sentence, a_check_far_off_points_to_a_gauge_sender);
  int each = RUN_TESTS_FOR_EACH(
      "benches", BENCHES, one_leads_when_it_fits_and_none_is_ten_times_as_probable,
      the_likeliest_come_first_and_add_up_to_one, a_report_keeps_to_its_lines);
  int printed = RUN_TESTS_FOR_EACH("printed tables", table_count,
                                   two_rows_of_a_clean_table_lead_to_its_sensor);
  return bad | good | each | printed;
}
