/* SPDX-License-Identifier: MIT */
#include "../support.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../../lib/ground/csv.h"

static struct oc_csv csv;

static void begin(const char *text) {
  oc_csv_begin(&csv, text, strlen(text));
}

static void check_cell(size_t index, const char *text, int column) {
  ck_assert_uint_lt(index, csv.count);
  const struct oc_csv_cell *cell = &csv.cells[index];
  ck_assert_msg(cell->length == strlen(text) && memcmp(cell->text, text, cell->length) == 0,
                "\"%.*s\", not \"%s\"", (int)cell->length, cell->text, text);
  ck_assert_int_eq(cell->column, column);
}

static void check_next(enum oc_csv_kind kind, int line, size_t count) {
  ck_assert_int_eq(oc_csv_next(&csv), kind);
  ck_assert_int_eq(csv.line, line);
  ck_assert_uint_eq(csv.count, count);
}

static void check_fault(int line, int column, const char *clause) {
  check_next(OC_CSV_FAULT, line, 0);
  ck_assert_int_eq(csv.column, column);
  ck_assert_ptr_nonnull(strstr(csv.fault, clause));
}

static void check_end(void) {
  ck_assert_int_eq(oc_csv_next(&csv), OC_CSV_END);
  ck_assert_int_eq(oc_csv_next(&csv), OC_CSV_END);
}

START_TEST(cells_come_without_the_blanks_around_them)
{
  begin(" 25 ,\t10000\t,\n");
  check_next(OC_CSV_ROW, 1, 3);
  check_cell(0, "25", 2);
  check_cell(1, "10000", 7);
  check_cell(2, "", 14);
  check_end();
}
END_TEST

START_TEST(a_comment_is_one_cell_that_keeps_commas_and_quotes)
{
  begin("# source: a \"list\", page 3 \n#\n");
  check_next(OC_CSV_COMMENT, 1, 1);
  check_cell(0, "source: a \"list\", page 3", 3);
  check_next(OC_CSV_COMMENT, 2, 1);
  check_cell(0, "", 2);
  check_end();
}
END_TEST

START_TEST(lines_end_in_lf_cr_lf_or_cr_and_empty_ones_are_skipped)
{
  begin("1\r\n2\r\r \n3\n\n4");
  check_next(OC_CSV_ROW, 1, 1);
  check_next(OC_CSV_ROW, 2, 1);
  check_next(OC_CSV_ROW, 5, 1);
  check_next(OC_CSV_ROW, 7, 1);
  check_cell(0, "4", 1);
  check_end();
}
END_TEST

START_TEST(a_byte_order_mark_is_no_part_of_the_first_cell)
{
  begin("\xEF\xBB\xBFt_c,r_ohm\n");
  check_next(OC_CSV_ROW, 1, 2);
  check_cell(0, "t_c", 1);
}
END_TEST

START_TEST(a_quoted_cell_keeps_commas_blanks_quotes_and_line_ends)
{
  begin("a, \" b, \"\"c\"\"\r\nd \" ,e\nf\n");
  check_next(OC_CSV_ROW, 1, 3);
  check_cell(1, " b, \"c\"\r\nd ", 5);
  check_cell(2, "e", 6);
  check_next(OC_CSV_ROW, 3, 1);
  check_cell(0, "f", 1);
}
END_TEST

START_TEST(a_quote_inside_a_bare_cell_is_a_fault_and_reading_goes_on)
{
  begin("1,2\"3\n4,5\n");
  check_fault(1, 4, "a quote inside a cell");
  check_next(OC_CSV_ROW, 2, 2);
}
END_TEST

START_TEST(text_after_a_closing_quote_is_a_fault_in_its_own_line)
{
  begin("\"a\nb\" c\n4\n");
  check_fault(2, 4, "after the quote that closes");
  check_next(OC_CSV_ROW, 3, 1);
}
END_TEST

START_TEST(a_quote_that_is_never_closed_costs_only_its_line)
{
  begin("1, \"open\n2,3\n");
  check_fault(1, 4, "never closed");
  check_next(OC_CSV_ROW, 2, 2);
  check_end();
}
END_TEST

START_TEST(sixty_four_cells_are_a_row_and_one_more_a_fault)
{
  char text[160];
  memset(text, ',', 63);
  strcpy(text + 63, "\n");
  memset(text + 64, ',', 64);
  strcpy(text + 128, "\n1\n");
  begin(text);
  check_next(OC_CSV_ROW, 1, 64);
  check_fault(2, 65, "64 cells");
  check_next(OC_CSV_ROW, 3, 1);
}
END_TEST

/* A row of count bytes, quoted or bare, and one after it. */
static void begin_long(int count, char quote) {
  static char text[2 * OC_CSV_ROW_MAX];
  memset(text, 'x', (size_t)count);
  if (quote)
    text[0] = text[count - 1] = quote;
  strcpy(text + count, "\n1\n");
  begin(text);
}

START_TEST(a_row_may_have_4096_bytes_and_no_more)
{
  begin_long(OC_CSV_ROW_MAX, 0);
  check_next(OC_CSV_ROW, 1, 1);
  begin_long(OC_CSV_ROW_MAX + 1, 0);
  check_fault(1, 1, "4096 bytes");
  check_next(OC_CSV_ROW, 2, 1);
}
END_TEST

START_TEST(a_quoted_row_is_bounded_alike)
{
  begin_long(OC_CSV_ROW_MAX, '"');
  check_next(OC_CSV_ROW, 1, 1);
  begin_long(OC_CSV_ROW_MAX + 1, '"');
  check_fault(1, 1, "4096 bytes");
  check_next(OC_CSV_ROW, 2, 1);
}
END_TEST

START_TEST(an_empty_text_has_no_rows)
{
  begin("");
  check_end();
  begin("\xEF\xBB\xBF");
  check_end();
  oc_csv_begin(&csv, NULL, 0);
  check_end();
}
END_TEST

static unsigned next_random(unsigned *state) {
  *state = *state * 1664525u + 1013904223u;
  return *state >> 16;
}

/* The text stands in memory of its own size, so that a checker of memory sees a
 * read past it. */
START_TEST(any_bytes_end_with_cells_inside_the_text_and_lines_that_rise)
{
  static const char alphabet[] = "\"\",,#\n\r x1\t";
  unsigned state = 1;
  for (int round = 0; round < 20000; round++) {
    size_t length = next_random(&state) % 40;
    char *text = malloc(length + 1);
    for (size_t i = 0; i < length; i++)
      text[i] = alphabet[next_random(&state) % (sizeof alphabet - 1)];
    char *exact = realloc(text, length > 0 ? length : 1);
    oc_csv_begin(&csv, exact, length);
    int line = 0;
    while (oc_csv_next(&csv) != OC_CSV_END) {
      ck_assert_int_gt(csv.line, line - 1);
      ck_assert_uint_le(csv.count, OC_CSV_CELLS_MAX);
      for (size_t i = 0; i < csv.count; i++)
        ck_assert_uint_le(csv.cells[i].length, length);
      line = csv.line + 1;
    }
    free(exact);
  }
}
END_TEST

int main(void) {
  return RUN_TESTS("csv", cells_come_without_the_blanks_around_them,
                   a_comment_is_one_cell_that_keeps_commas_and_quotes,
                   lines_end_in_lf_cr_lf_or_cr_and_empty_ones_are_skipped,
                   a_byte_order_mark_is_no_part_of_the_first_cell,
                   a_quoted_cell_keeps_commas_blanks_quotes_and_line_ends,
                   a_quote_inside_a_bare_cell_is_a_fault_and_reading_goes_on,
                   text_after_a_closing_quote_is_a_fault_in_its_own_line,
                   a_quote_that_is_never_closed_costs_only_its_line,
                   sixty_four_cells_are_a_row_and_one_more_a_fault,
                   a_row_may_have_4096_bytes_and_no_more, a_quoted_row_is_bounded_alike,
                   an_empty_text_has_no_rows,
                   any_bytes_end_with_cells_inside_the_text_and_lines_that_rise);
}
