/* SPDX-License-Identifier: MIT */
/* One part behind several readings. */
#include "../support.h"

#include "../../lib/arithmetic/gaussian.h"
#include "../../lib/model/part.h"
#include "../draw.h"

static uint64_t state = 20261127;

/* A reading of a part at a place in a band of this half-width, off by so much besides. */
static void add(struct oc_part *part, double place, double half, double off, int range) {
  struct oc_part_reading *reading = &part->readings[part->count++];
  *reading = (struct oc_part_reading){.log_ohm = place * half + off,
                                      .half = half,
                                      .worth = {half, 0},
                                      .meter = 0.01,
                                      .leads = 0.001,
                                      .range = range,
                                      .u_own = 0.003,
                                      .scatter = 0.005};
  for (int i = 0; i < OC_PART_NODES; i++)
    reading->middle[i] = -0.03 * (2.0 * i / (OC_PART_NODES - 1) - 1);
}

static struct oc_part_answer judged(const struct oc_part *part) {
  struct oc_part_answer answer;
  ck_assert(oc_part_judge(part, 0.95, &answer));
  return answer;
}

START_TEST(a_reading_alone_says_what_it_would_by_itself)
{
  for (double place = -1.6; place <= 1.6; place += 0.2) {
    struct oc_part part;
    oc_part_begin(&part);
    add(&part, place, 0.05, 0, 0);
    part.readings[0].leads = part.readings[0].meter = 0;
    for (int i = 0; i < OC_PART_NODES; i++)
      part.readings[0].middle[i] = 0;
    struct oc_part_answer answer = judged(&part);
    CHECK_NEAR(answer.p_high[0], oc_normal_below((place - 1) * 0.05 / 0.003), 2e-3);
    CHECK_NEAR(answer.p_low[0], oc_normal_below((-1 - place) * 0.05 / 0.003), 2e-3);
    CHECK_NEAR(answer.p_within, 1 - answer.p_low[0] - answer.p_high[0], 2e-3);
  }
}
END_TEST

START_TEST(the_place_is_found_and_lies_where_it_is_said_to)
{
  for (double place = -2; place <= 2; place += 0.5) {
    struct oc_part part;
    oc_part_begin(&part);
    for (int i = 0; i < 4; i++)
      add(&part, place, 0.05, 0, i / 2);
    struct oc_part_answer answer = judged(&part);
    CHECK_NEAR(answer.place, place, 0.03);
    ck_assert(answer.place_low < place && place < answer.place_high);
    ck_assert(answer.place_high - answer.place_low < 2);
  }
}
END_TEST

/* Any readings, so that what holds of all of them can be asked. */
static struct oc_part any_part(void) {
  struct oc_part part;
  oc_part_begin(&part);
  size_t count = 1 + draw_below(&state, 5);
  double half = draw_between(&state, 0.01, 0.15);
  for (size_t i = 0; i < count; i++)
    add(&part, draw_rectangular(&state, 1.5), half, draw_rectangular(&state, 0.01),
        (int)draw_below(&state, 3));
  return part;
}

START_TEST(probabilities_are_probabilities)
{
  for (int k = 0; k < 60; k++) {
    struct oc_part part = any_part();
    struct oc_part_answer answer = judged(&part);
    ck_assert(0 <= answer.p_within && answer.p_within <= 1 + 1e-9);
    for (size_t i = 0; i < part.count; i++) {
      ck_assert(0 <= answer.p_low[i] && answer.p_low[i] + answer.p_high[i] <= 1 + 1e-9);
      ck_assert(answer.p_within <= 1 - fmax(answer.p_low[i], answer.p_high[i]) + 1e-3);
    }
  }
}
END_TEST

START_TEST(a_mirrored_part_has_mirrored_answers)
{
  for (int k = 0; k < 40; k++) {
    struct oc_part part = any_part();
    struct oc_part other = part;
    for (size_t i = 0; i < part.count; i++)
      other.readings[i].log_ohm = -part.readings[i].log_ohm;
    struct oc_part_answer answer = judged(&part);
    struct oc_part_answer mirrored = judged(&other);
    for (size_t i = 0; i < part.count; i++)
      CHECK_NEAR(answer.p_low[i], mirrored.p_high[i], 0.02);
    CHECK_NEAR(answer.p_within, mirrored.p_within, 0.02);
    CHECK_NEAR(answer.place_low, -mirrored.place_high, 0.05);
  }
}
END_TEST

START_TEST(ranges_that_may_err_apart_never_condemn_more)
{
  for (int k = 0; k < 40; k++) {
    struct oc_part part = any_part();
    struct oc_part alike = part;
    for (size_t i = 0; i < part.count; i++)
      alike.readings[i].range = 0;
    struct oc_part_answer either = judged(&part);
    struct oc_part_answer one = judged(&alike);
    for (size_t i = 0; i < part.count; i++) {
      ck_assert(either.p_low[i] <= one.p_low[i] + 1e-9);
      ck_assert(either.p_high[i] <= one.p_high[i] + 1e-9);
    }
    ck_assert(either.p_within <= one.p_within + 1e-9);
    ck_assert(either.place_low <= one.place_low + 1e-9);
    ck_assert(either.place_high >= one.place_high - 1e-9);
  }
}
END_TEST

START_TEST(how_the_ranges_err_may_be_told)
{
  for (int k = 0; k < 20; k++) {
    struct oc_part part = any_part();
    struct oc_part_answer either = judged(&part);
    part.ranges_alike = 1;
    struct oc_part_answer alike = judged(&part);
    part.ranges_alike = 0;
    struct oc_part_answer apart = judged(&part);
    CHECK_NEAR(either.p_within, fmin(alike.p_within, apart.p_within), 1e-12);
    CHECK_NEAR(either.place_low, fmin(alike.place_low, apart.place_low), 1e-12);
  }
}
END_TEST

START_TEST(two_places_ask_for_half_the_doubt_from_the_second_reading_on)
{
  struct oc_part part;
  oc_part_begin(&part);
  part.places = 2;
  add(&part, 0, 0.05, 0, 0);
  CHECK_NEAR(oc_part_level(&part, 0.95), 0.95, 1e-12);
  add(&part, 0, 0.05, 0, 0);
  CHECK_NEAR(oc_part_level(&part, 0.95), 0.975, 1e-12);
  add(&part, 0, 0.05, 0, 0);
  CHECK_NEAR(oc_part_level(&part, 0.95), 0.975, 1e-12);
}
END_TEST

START_TEST(two_places_explain_what_one_cannot)
{
  struct oc_part part;
  oc_part_begin(&part);
  part.places = 2;
  for (int i = 0; i < 3; i++) {
    add(&part, 0, 0.05, 0.035 * (i - 1), 0);
    part.readings[i].worth[0] = 0.02;
    part.readings[i].worth[1] = 0.03 * (i - 1);
  }
  struct oc_part_answer answer = judged(&part);
  ck_assert_double_gt(answer.p_within, 0.45);
  ck_assert(isnan(answer.place));
}
END_TEST

int main(void) {
  return RUN_TESTS("part", a_reading_alone_says_what_it_would_by_itself,
                   the_place_is_found_and_lies_where_it_is_said_to, probabilities_are_probabilities,
                   a_mirrored_part_has_mirrored_answers,
                   ranges_that_may_err_apart_never_condemn_more, how_the_ranges_err_may_be_told,
                   two_places_ask_for_half_the_doubt_from_the_second_reading_on,
                   two_places_explain_what_one_cannot);
}
