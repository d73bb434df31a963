/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include <stdlib.h>
#include <string.h>

#include "../../lib/ground/table_file.h"

enum { COLOUR, WEIGHT, SHELF };

static const char *const words[] = {"colour", "weight"};
static const struct oc_keys keys = {2, words, "shelf"};

static ohm_error error;
static struct oc_notes notes;
static struct oc_complaints complaints;
static struct oc_table_file file;

static void begin(const char *bytes) {
  struct oc_table_text text = {bytes, strlen(bytes), "list", "list"};
  notes = (struct oc_notes){0};
  complaints = (struct oc_complaints){.place = "list", .error = &error, .notes = &notes};
  oc_table_file_begin(&file, &keys, &text, &complaints);
}

static void check_cell(const struct oc_csv_cell *cell, const char *text, int column) {
  ck_assert_msg(oc_csv_is(cell, text), "\"%.*s\", not \"%s\"", (int)cell->length, cell->text, text);
  ck_assert_int_eq(cell->column, column);
}

static void check_next(enum oc_part part, int line) {
  ck_assert_int_eq(oc_table_file_next(&file), part);
  ck_assert_int_eq(file.csv.line, line);
}

static void check_note(size_t index, const char *note) {
  ck_assert_ptr_nonnull(oc_notes_at(&notes, index));
  ck_assert_str_eq(oc_notes_at(&notes, index), note);
}

/* ---- keys ---- */

START_TEST(a_line_of_a_key_gives_its_value_without_the_blanks_around_it)
{
  begin("\xEF\xBB\xBF# colour:  light  red \r\n#\tweight :7\r\n# weight:\r\n");
  check_next(OC_PART_KEY, 1);
  ck_assert_uint_eq(file.key, COLOUR);
  check_cell(&file.value, "light  red", 12);
  check_next(OC_PART_KEY, 2);
  ck_assert_uint_eq(file.key, WEIGHT);
  check_cell(&file.value, "7", 11);
  check_next(OC_PART_KEY, 3);
  ck_assert_uint_eq(file.value.length, 0);
  check_next(OC_PART_END, 4);
}
END_TEST

START_TEST(a_key_with_a_name_gives_both)
{
  begin("# shelf  upper left: 12 pieces\n# shelf: 3\n# shelfa: 3\n");
  check_next(OC_PART_KEY, 1);
  ck_assert_uint_eq(file.key, SHELF);
  check_cell(&file.name, "upper left", 10);
  check_cell(&file.value, "12 pieces", 22);
  check_next(OC_PART_END, 4);
  ck_assert_uint_eq(notes.count, 0);
}
END_TEST

START_TEST(a_remark_is_passed_over)
{
  begin("# bought in May\n# remark: it is heavy\n#\n# col: 3\n");
  check_next(OC_PART_END, 5);
  ck_assert_uint_eq(notes.count, 0);
}
END_TEST

START_TEST(a_key_that_is_nearly_known_is_noted)
{
  begin("# ok\n# color: red\n");
  check_next(OC_PART_END, 3);
  ck_assert_uint_eq(notes.count, 1);
  check_note(0, "list, line 2, column 3: the key \"color\" is not known and left out; was colour "
                "meant?");
  oc_notes_free(&notes);
}
END_TEST

START_TEST(of_two_texts_of_one_key_the_first_counts)
{
  char *colour = NULL;
  begin("# colour:\n# colour: red\n# colour: blue\n");
  while (oc_table_file_next(&file) == OC_PART_KEY)
    oc_table_file_take_text(&file, &colour);
  ck_assert_str_eq(colour, "red");
  ck_assert_uint_eq(notes.count, 1);
  check_note(0, "list, line 3, column 11: a second line of this key is \"blue\"; the first one "
                "counts, leave one out");
  oc_notes_free(&notes);
  free(colour);
}
END_TEST

/* ---- tables ---- */

static const char *const columns[] = {"part", "count", "place"};

START_TEST(a_cell_is_found_by_its_column_wherever_that_stands)
{
  begin("count,more,part,count\n7,x,screw,8\n9\n");
  check_next(OC_PART_ROW, 1);
  ck_assert(!file.has_header);
  oc_table_file_take_header(&file, columns, 3);
  ck_assert(file.has_header);
  check_next(OC_PART_ROW, 2);
  check_cell(oc_table_file_cell(&file, 0), "screw", 5);
  check_cell(oc_table_file_cell(&file, 1), "7", 1);
  check_cell(oc_table_file_cell(&file, 2), "", 0);
  check_next(OC_PART_ROW, 3);
  check_cell(oc_table_file_cell(&file, 0), "", 0);
  check_cell(oc_table_file_cell(&file, 1), "9", 1);
}
END_TEST

START_TEST(a_later_header_row_begins_another_table)
{
  begin("count,part\n7,screw\npart\nnut\n");
  oc_table_file_next(&file);
  oc_table_file_take_header(&file, columns, 3);
  oc_table_file_next(&file);
  oc_table_file_next(&file);
  oc_table_file_take_header(&file, columns, 3);
  check_next(OC_PART_ROW, 4);
  check_cell(oc_table_file_cell(&file, 0), "nut", 1);
  check_cell(oc_table_file_cell(&file, 1), "", 0);
}
END_TEST

START_TEST(a_line_that_is_no_row_is_told_with_its_place_and_reading_goes_on)
{
  begin("a,b\"c\nd\n");
  check_next(OC_PART_FAULT, 1);
  oc_table_file_note(&file, "no row", NULL, "");
  check_note(0, "list, line 1, column 4: no row");
  check_next(OC_PART_ROW, 2);
  oc_table_file_note(&file, "a row of ", &file.csv.cells[0], "");
  check_note(1, "list, line 2, column 1: a row of \"d\"");
  oc_table_file_note(&file, "a row", NULL, "");
  check_note(2, "list, line 2: a row");
  oc_notes_free(&notes);
}
END_TEST

/* ---- complaints ---- */

START_TEST(a_fault_ends_the_reading)
{
  begin("a\nb\n");
  check_next(OC_PART_ROW, 1);
  oc_table_file_fail(&file, OHM_BAD_SYNTAX, "the part is ", &file.csv.cells[0], "; write screw");
  check_next(OC_PART_END, 1);
  ck_assert(!oc_goes_on(&complaints));
  ck_assert_int_eq(error.status, OHM_BAD_SYNTAX);
  ck_assert_int_eq(error.line, 1);
  ck_assert_int_eq(error.column, 1);
  ck_assert_str_eq(error.message, "list, line 1, column 1: the part is \"a\"; write screw");
}
END_TEST

START_TEST(a_fault_may_be_told_to_nobody)
{
  begin("");
  complaints.error = NULL;
  oc_complaints_fail(&complaints, OHM_TOO_LARGE, (struct oc_spot){0}, "too many", "");
  ck_assert(!oc_goes_on(&complaints));
}
END_TEST

START_TEST(notes_that_nobody_wants_are_not_kept)
{
  begin("# color: red\n");
  complaints.notes = NULL;
  check_next(OC_PART_END, 2);
  ck_assert(oc_goes_on(&complaints));
}
END_TEST

static void note_times(int count) {
  begin("");
  for (int i = 1; i <= count; i++)
    oc_complaints_note(&complaints, (struct oc_spot){.line = i}, "it is odd", "; leave it out");
  oc_complaints_end(&complaints);
}

START_TEST(a_hundred_notes_are_kept_and_more_are_counted)
{
  note_times(100);
  ck_assert_uint_eq(notes.count, 100);
  check_note(99, "list, line 100: it is odd; leave it out");
  oc_notes_free(&notes);
  note_times(103);
  ck_assert_uint_eq(notes.count, 100);
  check_note(98, "list, line 99: it is odd; leave it out");
  check_note(99, "list: and 4 more of the kind");
  ck_assert_ptr_null(oc_notes_at(&notes, 100));
  oc_notes_free(&notes);
}
END_TEST

/* ---- whole texts ---- */

struct parsed {
  size_t length;
  char place[200];
  char name[40];
};

static void *parse(const struct oc_table_text *text, ohm_error *told) {
  static struct parsed parsed;
  (void)told;
  parsed.length = text->length;
  strcpy(parsed.place, text->place);
  strcpy(parsed.name, text->name);
  return &parsed;
}

START_TEST(a_file_is_called_by_its_path_and_named_by_its_end)
{
  char *path = source_path("tests/fuzz/corpus/circuit_file/nameless.csv");
  const struct parsed *parsed = oc_table_file_load(path, parse, &error);
  ck_assert_ptr_nonnull(parsed);
  ck_assert_uint_gt(parsed->length, 0);
  ck_assert_str_eq(parsed->place, path);
  ck_assert_str_eq(parsed->name, "nameless");
  free(path);
  path = source_path("tests/fuzz/corpus/history/clock");
  parsed = oc_table_file_load(path, parse, &error);
  ck_assert_str_eq(parsed->name, "clock");
  free(path);
}
END_TEST

START_TEST(what_is_missing_or_too_large_is_not_parsed)
{
  ck_assert_ptr_null(oc_table_file_parse(NULL, 0, "list", parse, &error));
  ck_assert_int_eq(error.status, OHM_NULL_ARGUMENT);
  ck_assert_ptr_null(oc_table_file_parse("", 0, NULL, parse, &error));
  ck_assert_int_eq(error.status, OHM_NULL_ARGUMENT);
  ck_assert_ptr_null(oc_table_file_load(NULL, parse, &error));
  ck_assert_int_eq(error.status, OHM_NULL_ARGUMENT);
  ck_assert_ptr_null(oc_table_file_parse("", (size_t)1 << 25, "list", parse, &error));
  ck_assert_int_eq(error.status, OHM_TOO_LARGE);
  ck_assert_str_eq(error.message, "list: it is larger than 16 MiB: leave out what is not needed");
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "table_file", a_line_of_a_key_gives_its_value_without_the_blanks_around_it,
      a_key_with_a_name_gives_both, a_remark_is_passed_over, a_key_that_is_nearly_known_is_noted,
      of_two_texts_of_one_key_the_first_counts, a_cell_is_found_by_its_column_wherever_that_stands,
      a_later_header_row_begins_another_table,
      a_line_that_is_no_row_is_told_with_its_place_and_reading_goes_on, a_fault_ends_the_reading,
      a_fault_may_be_told_to_nobody, notes_that_nobody_wants_are_not_kept,
      a_hundred_notes_are_kept_and_more_are_counted,
      a_file_is_called_by_its_path_and_named_by_its_end,
      what_is_missing_or_too_large_is_not_parsed);
}
