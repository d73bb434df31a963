/* SPDX-License-Identifier: MIT */
#include "../scene.h"

#include "../../lib/words/page.h"

static char screen[2000];
static struct oc_text out;
static struct oc_page page;
static ohm_finding finding;

static void begin(void) {
  out = oc_text_begin(screen, sizeof screen);
  finding = finding_new();
  oc_page_begin(&page, &out, &finding);
}

START_TEST(a_sentence_stands_behind_its_label)
{
  begin();
  oc_page_line(&page, "Next", "once more");
  oc_page_line(&page, "A label as wide as that", "once more");
  ck_assert_str_eq(screen, "Next        once more\nA label as wide as that once more\n");
}
END_TEST

START_TEST(a_line_ends_between_words_at_80_columns)
{
  begin();
  oc_page_line(&page, "Next",
               "words that fill the line of eighty columns to the very last of them, one more");
  oc_page_line(&page, "", "words that fill the line of eighty columns to the very last of them.");
  ck_assert_str_eq(
      screen, "Next        words that fill the line of eighty columns to the very last of them,\n"
              "            one more\n"
              "            words that fill the line of eighty columns to the very last of them.\n");
}
END_TEST

START_TEST(bytes_that_continue_a_character_take_no_column)
{
  begin();
  oc_page_cell(&out,
               "0 \xC2\xB0"
               "C",
               6);
  oc_page_cell(&out, "wider than that", 6);
  oc_page_cell(&out, "end", 0);
  ck_assert_str_eq(screen, "0 \xC2\xB0"
                           "C  wider than that end");
}
END_TEST

START_TEST(nothing_said_is_no_line)
{
  begin();
  oc_page_end(&page, "Next");
  oc_page_list(&page, "Suspect", OHM_FIELD_SUSPECTS);
  ck_assert_str_eq(screen, "");
}
END_TEST

START_TEST(a_list_is_told_whole_or_by_its_first_entries)
{
  begin();
  oc_finding_add_entry(&finding, OHM_FIELD_SUSPECTS, "fuse");
  oc_finding_add_entry(&finding, OHM_FIELD_SUSPECTS, "relay");
  oc_finding_add_entry(&finding, OHM_FIELD_SUSPECTS, "motor");
  oc_page_list(&page, "Suspect", OHM_FIELD_SUSPECTS);
  oc_page_add_first(&page, OHM_FIELD_SUSPECTS, 2);
  oc_page_end(&page, "Suspect");
  ck_assert_str_eq(screen, "Suspect     fuse; relay; motor\nSuspect     fuse, relay and 1 more\n");
}
END_TEST

START_TEST(words_of_a_table_are_added_when_it_has_them)
{
  static const char *const words[] = {[1] = "one"};
  begin();
  ck_assert(!OC_ADD_OF(&page, words, 0));
  ck_assert(!OC_ADD_OF(&page, words, 2));
  ck_assert(OC_ADD_OF(&page, words, 1));
  oc_page_end(&page, "VERDICT");
  ck_assert_str_eq(screen, "VERDICT     one\n");
}
END_TEST

int main(void) {
  return RUN_TESTS(
      "page", a_sentence_stands_behind_its_label, a_line_ends_between_words_at_80_columns,
      bytes_that_continue_a_character_take_no_column, nothing_said_is_no_line,
      a_list_is_told_whole_or_by_its_first_entries, words_of_a_table_are_added_when_it_has_them);
}
