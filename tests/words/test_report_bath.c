/* SPDX-License-Identifier: MIT */
/*
 * The screens of random benches, read back as a person reads them: no two lines may exclude
 * each other. A bench is a part of a known kind, off by a factor, with ohms before and across
 * it, read cold and hot by a meter and thermometers that err.
 */
#include "../scene.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../draw.h"

enum { BENCHES = 400, READINGS_MAX = 4, ROOM = 16000, READ_COLUMN = 20 };

static const char *const parts[] = {"ntc-2k45-20c", "ntc-2k46-20c", "ntc-2k74-20c", "ntc-3k5-20c",
                                    "ntc-37k-20c"};

static uint64_t state = 20261127;
static char typed_in[400];
static char screen[ROOM];
static char told[ROOM];

/* ---- a bench ---- */

static double seen_at(const ohm_curve *curve, double t_c, double factor, double series_ohm,
                      double across_ohm) {
  double r_ohm = factor * oc_curve_resistance_beyond(curve, t_c);
  return series_ohm + 1 / (1 / r_ohm + 1 / across_ohm);
}

static void draw_record(const ohm_curve *curve, const char *place) {
  static const double at_c[] = {0, 21, 45, 80, 90, 97};
  double low_c;
  ohm_curve_range(curve, &low_c, NULL, NULL, NULL);
  double factor = draw_below(&state, 3) ? exp(draw_normal(&state, 0.12)) : 1;
  double series_ohm = draw_below(&state, 3) ? 0 : exp(draw_between(&state, 0, 6));
  double across_ohm = draw_below(&state, 4) ? INFINITY : exp(draw_between(&state, 5, 12));
  double meter = draw_between(&state, -0.008, 0.008);
  size_t count = 1 + draw_below(&state, READINGS_MAX);
  bool both = strcmp(place, "both") == 0;
  int length = sprintf(typed_in, "# meter: 0.8%%+3\n# leads: 0.3\n");
  if (!both)
    length += sprintf(typed_in + length, "# place: %s\n", place);
  for (size_t i = 0; i < count; i++) {
    double known_c = fmax(low_c, at_c[draw_below(&state, sizeof at_c / sizeof at_c[0])]);
    double limit_k = draw_below(&state, 2) ? 0.3 : 1.5;
    double true_c = known_c + draw_rectangular(&state, limit_k);
    double ohm = (1 + meter) * seen_at(curve, true_c, factor, series_ohm, across_ohm) + 0.3;
    const char *here = !both ? "" : draw_below(&state, 2) ? ",sensor" : ",module";
    if (strcmp(here, ",sensor") == 0)
      ohm -= series_ohm;
    length += sprintf(typed_in + length, "%.*fohm@%.1fC+-%.1f%s\n", ohm < 2000 ? 1 : 0, ohm,
                      known_c, limit_k, here);
  }
}

typedef ohm_answer *(*verb)(const ohm_bench *bench, ohm_error *error);

static void ask(const ohm_sensor *sensor, verb ask_verb, char *text) {
  ohm_error error = {0};
  ohm_bench *bench = ohm_bench_new(&error);
  ck_assert_int_eq(ohm_bench_use_sensor(bench, sensor), OHM_OK);
  ck_assert_int_eq(ohm_bench_read_record(bench, typed_in, strlen(typed_in), &error), OHM_OK);
  ohm_answer *answer = ask_verb(bench, &error);
  ck_assert_msg(answer != NULL, "%s\n%s", typed_in, error.message);
  ck_assert_uint_lt(ohm_answer_print_report(answer, text, ROOM), ROOM);
  ohm_answer_free(answer);
  ohm_bench_free(bench);
}

/* ---- reading it back ---- */

static void require(bool holds, const char *why, const char *text) {
  ck_assert_msg(holds, "%s:\n%s%s", why, typed_in, text);
}

/* What stands behind a label, the lines below it as one; "" without it. */
static const char *line(const char *text, const char *label) {
  static char lines[8][1000];
  static int turn;
  char *found = lines[turn = (turn + 1) % 8];
  size_t length = 0;
  found[0] = '\0';
  for (const char *at = text; at && *at; at = strchr(at, '\n') ? strchr(at, '\n') + 1 : NULL) {
    bool starts = strncmp(at, label, strlen(label)) == 0;
    bool goes_on = length > 0 && at[0] == ' ';
    if (!starts && !goes_on) {
      if (length > 0)
        break;
      continue;
    }
    const char *words = at + (starts ? strlen(label) : 0);
    words += strspn(words, " ");
    length += (size_t)sprintf(found + length, "%s%.*s", length > 0 ? " " : "",
                              (int)strcspn(words, "\n"), words);
  }
  return found;
}

static bool says(const char *text, const char *label, const char *part) {
  return strstr(line(text, label), part) != NULL;
}

/* The number behind some words, in ohm or degrees; NAN without it. */
static double number_behind(const char *words, const char *part) {
  const char *at = strstr(words, part);
  if (!at)
    return NAN;
  char *end;
  double number = strtod(at + strlen(part), &end);
  return strncmp(end, " k", 2) == 0 ? 1000 * number : number;
}

static double first_number(const char *words) {
  char *end;
  double number = strtod(words, &end);
  return end == words ? NAN : strncmp(end, " k", 2) == 0 ? 1000 * number : number;
}

/* ---- what excludes what ---- */

struct lines {
  const char *verdict;
  const char *fan;
  double read_ohm;
  double means_c;
  double really_c;
  double sure_k;    /* give or take, both */
  double hottest_c; /* of all readings */
  double low_ohm;
  double high_ohm;
};

/* Of the table, where there are several readings. */
static double hottest_of(const char *text, double one_c) {
  double hottest_c = one_c;
  for (const char *at = strchr(text, '\n'); at && strncmp(text, "read ", 5) == 0 && at[1] != '\n';
       at = strchr(at + 1, '\n')) {
    hottest_c = fmax(hottest_c, strtod(at + 1 + READ_COLUMN, NULL));
  }
  return hottest_c;
}

static struct lines lines_of(const char *text) {
  const char *means = line(text, "That means");
  const char *really = line(text, "It really is");
  const char *allowed = line(text, "Allowed");
  return (struct lines){.verdict = line(text, "VERDICT"),
                        .fan = line(text, "For the fan"),
                        .read_ohm = first_number(line(text, "You read")),
                        .means_c = first_number(means),
                        .really_c = first_number(really),
                        .sure_k = fmax(0, number_behind(means, "take")) +
                                  fmax(0, number_behind(really, "take")),
                        .hottest_c = hottest_of(text, first_number(really)),
                        .low_ohm = first_number(allowed),
                        .high_ohm = number_behind(allowed, " to ")};
}

/* A sensor with too few ohms means a temperature above the true one, and one with too many
 * below it. */
static void check_part(const struct lines *lines, const char *text) {
  bool low = strstr(lines->verdict, "too few ohms") != NULL;
  bool high = strstr(lines->verdict, "too many ohms") != NULL;
  bool good = strncmp(lines->verdict, "GOOD", 4) == 0;
  bool measured = lines->low_ohm > 0 && lines->read_ohm > 0;
  double told_c = number_behind(lines->verdict, "BAD at ");
  bool here = isnan(told_c) || fabs(told_c - lines->really_c) < 0.06;
  if (low && here)
    require(!(lines->means_c < lines->really_c), "too few ohms, and it means colder", text);
  if (high && here)
    require(!(lines->means_c > lines->really_c), "too many ohms, and it means hotter", text);
  if (low && here && measured)
    require(lines->read_ohm < lines->low_ohm * 1.01 + 1, "too few ohms, within the limits", text);
  if (high && here && measured)
    require(lines->read_ohm > lines->high_ohm * 0.99, "too many ohms, within the limits", text);
  if (good && measured && !strstr(lines->verdict, "give or take"))
    require(lines->low_ohm * 0.99 < lines->read_ohm && lines->read_ohm < lines->high_ohm * 1.01 + 1,
            "good, beyond the limits", text);
  if (strstr(lines->verdict, "95 are needed"))
    require(number_behind(lines->verdict, "CANNOT TELL YET: ") < 95, "enough, and not", text);
}

static void check_fan(const struct lines *lines, const char *text) {
  bool late = strstr(lines->fan, "C late") && strncmp(lines->fan, "BAD", 3) == 0;
  bool early = strstr(lines->fan, "C early") && strncmp(lines->fan, "BAD", 3) == 0;
  bool good = strncmp(lines->fan, "GOOD", 4) == 0;
  double above_k = lines->means_c - lines->really_c;
  if (late)
    require(!(above_k > lines->sure_k), "hotter than it is, and late", text);
  if (early)
    require(!(above_k < -lines->sure_k), "colder than it is, and early", text);
  if (good) {
    require(number_behind(lines->fan, "at most ") <= 5, "good, and late", text);
    require(number_behind(lines->fan, " or ") <= 5, "good, and early", text);
    require(!strstr(lines->fan, "could hide"), "good, and something hides", text);
    require(lines->hottest_c >= 80.3, "good for the fan by a cold reading", text);
  }
  if (late || early)
    require(lines->hottest_c > 87.5, "certain of the fan by a cold reading", text);
}

static void check_rest(const struct lines *lines, const char *place, const char *text) {
  bool done = strncmp(lines->verdict, "GOOD", 4) == 0 && strncmp(lines->fan, "GOOD", 4) == 0;
  bool at_module = strcmp(place, "module") == 0;
  require(!(at_module && says(text, "Next", "at the module's end")), "there already", text);
  require(!(at_module && says(text, "Not tested", "wires")), "wires were in it", text);
  require(!(done && says(text, "Next", "before you buy")), "good, and to be bought", text);
  const char *wires = line(text, "Plug, wires");
  bool judged = wires[0] && strncmp(wires, "CANNOT", 6) != 0;
  require(!(judged && says(text, "Not tested", "wires")), "wires judged, and not tested", text);
  require(!(strncmp(wires, "BAD", 3) == 0 && strncmp(lines->fan, "GOOD:", 5) == 0),
          "good for the fan, and late by plug and wires", text);
  require(!(strncmp(wires, "GOOD", 4) == 0 && says(text, "Next", "plug and wires:")),
          "plug and wires good, and to be measured next", text);
  require(!says(text, "Assumed", "meter"), "the meter was told", text);
  require(!says(text, "Assumed", "thermometer"), "the thermometer was told", text);
}

START_TEST(no_two_lines_of_a_check_exclude_each_other)
{
  static const char *const places[] = {"sensor", "module", "both"};
  for (int i = 0; i < BENCHES; i++) {
    ohm_sensor *sensor = sensor_built_in(parts[draw_below(&state, sizeof parts / sizeof parts[0])]);
    const char *place = places[draw_below(&state, 3)];
    draw_record(ohm_sensor_curve(sensor), place);
    ask(sensor, ohm_bench_check, screen);
    struct lines lines = lines_of(screen);
    check_part(&lines, screen);
    check_fan(&lines, screen);
    check_rest(&lines, place, screen);
    ohm_sensor_free(sensor);
  }
}
END_TEST

/* What an explanation does to the fan, beside what a check says of it and what all of them
 * come to. */
START_TEST(what_check_and_explain_say_of_the_fan_goes_together)
{
  for (int i = 0; i < BENCHES / 2; i++) {
    ohm_sensor *sensor = sensor_built_in(parts[draw_below(&state, sizeof parts / sizeof parts[0])]);
    draw_record(ohm_sensor_curve(sensor), "sensor");
    ask(sensor, ohm_bench_check, screen);
    ask(sensor, ohm_bench_explain, told);
    const char *check_says = line(screen, "For the fan");
    const char *explain_says = line(told, "For the fan");
    bool late = strncmp(check_says, "BAD", 3) == 0 && strstr(check_says, "C late");
    bool early = strncmp(check_says, "BAD", 3) == 0 && strstr(check_says, "C early");
    bool never_late = strstr(explain_says, "not what keeps the fan off") != NULL;
    bool all_late = explain_says[0] && !never_late;
    strcat(screen, told);
    require(!(late && never_late), "late, and not", screen);
    require(!(early && all_late), "early, and late", screen);
    require(!(strncmp(check_says, "GOOD", 4) == 0 && all_late), "good, and late", screen);
    require(!(never_late && strstr(told, "stays off")), "stays off, and not", screen);
    ohm_sensor_free(sensor);
  }
}
END_TEST

int main(void) {
  return RUN_TESTS("screens read back", no_two_lines_of_a_check_exclude_each_other,
                   what_check_and_explain_say_of_the_fan_goes_together);
}
