/* SPDX-License-Identifier: MIT */
#include "../../lib/circuits/circuit.h"

#include "../support.h"

#include <stdlib.h>
#include <string.h>

static ohm_circuit *built_in(size_t index) {
  ohm_error error;
  ohm_circuit *circuit = ohm_circuit_built_in_load(ohm_circuit_built_in_name(index), &error);
  ck_assert_msg(circuit != NULL, "%s", error.message);
  return circuit;
}

static char *printed(const ohm_circuit *circuit) {
  size_t size = ohm_circuit_print(circuit, NULL, 0) + 1;
  char *text = malloc(size);
  ck_assert_uint_eq(ohm_circuit_print(circuit, text, size), size - 1);
  return text;
}

#define FOR_EACH_BUILT_IN(circuit)                                                                 \
  for (size_t at_ = 0; at_ < ohm_circuit_built_in_count(); at_++)                                  \
    for (ohm_circuit *circuit = built_in(at_); circuit; ohm_circuit_free(circuit), circuit = NULL)

START_TEST(five_are_built_in_and_no_sensor_is_among_them)
{
  ck_assert_uint_ge(ohm_circuit_built_in_count(), 5);
  for (size_t i = 0; i < ohm_circuit_built_in_count(); i++) {
    const char *name = ohm_circuit_built_in_name(i);
    ck_assert(i == 0 || strcmp(ohm_circuit_built_in_name(i - 1), name) < 0);
    ck_assert_ptr_null(ohm_sensor_built_in_load(name, NULL));
  }
  ck_assert_ptr_null(ohm_circuit_built_in_name(ohm_circuit_built_in_count()));
}
END_TEST

START_TEST(every_built_in_circuit_loads_without_a_note_and_says_what_it_is)
{
  FOR_EACH_BUILT_IN(circuit) {
    ck_assert_msg(ohm_circuit_note_count(circuit) == 0, "%s", ohm_circuit_note(circuit, 0));
    ck_assert_str_ne(ohm_circuit_description(circuit), "");
    ck_assert_str_ne(ohm_circuit_source(circuit), "");
  }
}
END_TEST

START_TEST(every_built_in_circuit_prints_to_what_parses_to_the_same)
{
  FOR_EACH_BUILT_IN(circuit) {
    char *first = printed(circuit);
    ohm_circuit *again = ohm_circuit_parse(first, strlen(first), "again", NULL);
    ck_assert_ptr_nonnull(again);
    char *second = printed(again);
    ck_assert_str_eq(first, second);
    free(second);
    free(first);
    ohm_circuit_free(again);
  }
}
END_TEST

/* Where the work can hurt, and what the trade never does. */
START_TEST(every_built_in_test_that_runs_a_fan_has_a_caution)
{
  FOR_EACH_BUILT_IN(circuit)
  for (size_t i = 0; i < circuit->test_count; i++)
    if (circuit->tests[i].load == OC_LOAD_FAN)
      ck_assert_str_ne(circuit->tests[i].cells[OHM_TEST_CAUTION], "");
}
END_TEST

START_TEST(every_link_can_be_accused_and_all_but_the_last_resort_cleared)
{
  FOR_EACH_BUILT_IN(circuit) {
    oc_set accused = 0;
    oc_set cleared = 0;
    for (size_t i = 0; i < circuit->test_count; i++) {
      accused |= circuit->tests[i].accuses;
      cleared |= circuit->tests[i].clears;
    }
    for (size_t i = 0; i < circuit->link_count; i++) {
      ck_assert_msg(accused & oc_set_of(i), "%s", circuit->links[i].cells[OHM_LINK_LINK]);
      ck_assert_msg(circuit->wired || cleared & oc_set_of(i), "%s",
                    circuit->links[i].cells[OHM_LINK_LINK]);
    }
  }
}
END_TEST

/* Of a wiring it takes several tests to clear a link. An ohm or two in the mated pins of a fan,
 * where no lead reaches, or in a battery that the engine charges, is seen by an eye alone. */
START_TEST(from_5_ohm_on_whatever_matters_is_seen_by_some_test)
{
  FOR_EACH_BUILT_IN(circuit)
  for (size_t i = 0; i < circuit->failing_count; i++) {
    bool seen = !circuit->failings[i].matters || !(circuit->failings[i].ohm >= 5);
    for (size_t k = 0; k < circuit->test_count && !seen; k++)
      seen = (circuit->tests[k].foretold[i] & oc_test_good(&circuit->tests[k])) == 0;
    ck_assert_msg(seen, "%s: %s, %g ohm", circuit->name,
                  circuit->links[circuit->failings[i].link].cells[OHM_LINK_LINK],
                  circuit->failings[i].ohm);
  }
}
END_TEST

START_TEST(links_of_one_part_are_renewed_together)
{
  FOR_EACH_BUILT_IN(circuit) {
    if (strcmp(circuit->name, "module-relays") != 0)
      continue;
    size_t coil = oc_circuit_link(circuit, "coil-1", 6);
    size_t contact = oc_circuit_link(circuit, "contact-1", 9);
    ck_assert_uint_eq(oc_circuit_part(circuit, coil), oc_set_of(coil) | oc_set_of(contact));
  }
}
END_TEST

START_TEST(tells_tools_apart)
{
  FOR_EACH_BUILT_IN(circuit) {
    ck_assert(oc_circuit_has_tool(circuit, "clamp", 5));
    ck_assert(!oc_circuit_has_tool(circuit, "clam", 4));
    ck_assert(!oc_circuit_has_tool(circuit, "", 0));
  }
}
END_TEST

START_TEST(asking_past_the_end_or_of_nothing_gives_nothing)
{
  ohm_circuit *circuit = built_in(0);
  ck_assert_ptr_null(ohm_circuit_link_text(circuit, ohm_circuit_link_count(circuit), 0));
  ck_assert_ptr_null(ohm_circuit_link_text(circuit, 0, OHM_LINK_COLUMN_COUNT));
  ck_assert_ptr_null(ohm_circuit_link_text(circuit, 0, -1));
  ck_assert_ptr_null(ohm_circuit_test_text(circuit, ohm_circuit_test_count(circuit), 0));
  ck_assert_ptr_null(ohm_circuit_test_text(circuit, 0, OHM_TEST_COLUMN_COUNT));
  ck_assert_ptr_null(ohm_circuit_note(circuit, 0));
  ohm_circuit_free(circuit);
  ck_assert_ptr_null(ohm_circuit_name(NULL));
  ck_assert_str_eq(ohm_circuit_description(NULL), "");
  ck_assert_str_eq(ohm_circuit_source(NULL), "");
  ck_assert_uint_eq(ohm_circuit_link_count(NULL), 0);
  ck_assert_uint_eq(ohm_circuit_test_count(NULL), 0);
  ck_assert_uint_eq(ohm_circuit_note_count(NULL), 0);
  ck_assert_uint_eq(ohm_circuit_print(NULL, NULL, 0), 0);
  ck_assert_ptr_null(ohm_link_column_name(OHM_LINK_COLUMN_COUNT));
  ck_assert_ptr_null(ohm_test_column_name(-1));
  ck_assert_str_eq(ohm_link_column_name(OHM_LINK_PART), "part");
  ck_assert_str_eq(ohm_test_column_name(OHM_TEST_WHAT), "what");
  ohm_circuit_free(NULL);
}
END_TEST

START_TEST(an_unknown_name_is_told_with_the_nearest)
{
  ohm_error error;
  PROVOKES(ohm_circuit_built_in_load, OHM_NOT_FOUND,
           (ohm_circuit_built_in_load("module-relay", &error), error.status));
  ck_assert_ptr_nonnull(strstr(error.message, "did you mean module-relays?"));
  PROVOKES(ohm_circuit_built_in_load, OHM_NULL_ARGUMENT,
           (ohm_circuit_built_in_load(NULL, &error), error.status));
}
END_TEST

int main(void) {
  return RUN_TESTS("circuit", five_are_built_in_and_no_sensor_is_among_them,
                   every_built_in_circuit_loads_without_a_note_and_says_what_it_is,
                   every_built_in_circuit_prints_to_what_parses_to_the_same,
                   every_built_in_test_that_runs_a_fan_has_a_caution,
                   every_link_can_be_accused_and_all_but_the_last_resort_cleared,
                   from_5_ohm_on_whatever_matters_is_seen_by_some_test,
                   links_of_one_part_are_renewed_together, tells_tools_apart,
                   asking_past_the_end_or_of_nothing_gives_nothing,
                   an_unknown_name_is_told_with_the_nearest);
}
