/* SPDX-License-Identifier: MIT */
#define _POSIX_C_SOURCE 200809L

#include "../support.h"

#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "../../lib/ground/file.h"

/* A folder of its own for each test, which runs in it. */
static void enter_folder(void) {
  char name[] = "test_file.XXXXXX";
  ck_assert_ptr_nonnull(mkdtemp(name));
  ck_assert_int_eq(chdir(name), 0);
}

static void leave_folder(const char *file) {
  char here[4096];
  ck_assert_ptr_nonnull(getcwd(here, sizeof here));
  if (file)
    ck_assert_int_eq(remove(file), 0);
  ck_assert_int_eq(chdir(".."), 0);
  ck_assert_int_eq(rmdir(strrchr(here, '/') + 1), 0);
}

static void write_file(const char *name, const char *bytes, size_t length) {
  FILE *file = fopen(name, "wb");
  ck_assert_ptr_nonnull(file);
  ck_assert_uint_eq(fwrite(bytes, 1, length, file), length);
  ck_assert_int_eq(fclose(file), 0);
}

static void size_file(const char *name, off_t size) {
  write_file(name, "", 0);
  ck_assert_int_eq(truncate(name, size), 0);
}

static void check_refused(const char *path, ohm_status status, const char *why) {
  size_t length = 1;
  ohm_error error;
  ck_assert_ptr_null(oc_file_read(path, &length, &error));
  ck_assert_int_eq(error.status, status);
  ck_assert_msg(strstr(error.message, why) != NULL, "\"%s\" lacks \"%s\"", error.message, why);
}

START_TEST(a_file_is_read_whole_with_a_nul_after_it)
{
  enter_folder();
  write_file("points.csv", "25,10000\0x\n", 11);
  size_t length;
  char *bytes = oc_file_read("points.csv", &length, NULL);
  ck_assert_ptr_nonnull(bytes);
  ck_assert_uint_eq(length, 11);
  ck_assert_int_eq(memcmp(bytes, "25,10000\0x\n", 12), 0);
  free(bytes);
  leave_folder("points.csv");
}
END_TEST

START_TEST(an_empty_file_is_an_empty_text)
{
  enter_folder();
  write_file("empty.csv", "", 0);
  size_t length = 1;
  char *bytes = oc_file_read("empty.csv", &length, NULL);
  ck_assert_ptr_nonnull(bytes);
  ck_assert_uint_eq(length, 0);
  ck_assert_str_eq(bytes, "");
  free(bytes);
  leave_folder("empty.csv");
}
END_TEST

START_TEST(a_file_of_16_mib_is_read_and_one_byte_more_refused)
{
  enter_folder();
  size_file("large.csv", OC_FILE_MAX);
  size_t length;
  char *bytes = oc_file_read("large.csv", &length, NULL);
  ck_assert_ptr_nonnull(bytes);
  ck_assert_uint_eq(length, OC_FILE_MAX);
  free(bytes);
  size_file("large.csv", OC_FILE_MAX + 1);
  check_refused("large.csv", OHM_TOO_LARGE, "larger than 16 MiB");
  leave_folder("large.csv");
}
END_TEST

START_TEST(a_name_that_is_not_there_is_named)
{
  check_refused("no-such-folder/x.csv", OHM_CANNOT_OPEN,
                "no-such-folder/x.csv: there is no such file");
  check_refused("", OHM_CANNOT_OPEN, "there is no such file");
}
END_TEST

START_TEST(a_directory_is_refused)
{ check_refused(".", OHM_CANNOT_OPEN, "it is a directory"); }
END_TEST

START_TEST(a_device_is_refused)
{ check_refused("/dev/null", OHM_CANNOT_OPEN, "not a plain file"); }
END_TEST

START_TEST(a_pipe_without_a_writer_is_refused_at_once)
{
  enter_folder();
  ck_assert_int_eq(mkfifo("pipe", 0600), 0);
  check_refused("pipe", OHM_CANNOT_OPEN, "not a plain file");
  leave_folder("pipe");
}
END_TEST

START_TEST(a_link_to_itself_is_refused)
{
  enter_folder();
  ck_assert_int_eq(symlink("circle", "circle"), 0);
  check_refused("circle", OHM_CANNOT_OPEN, "in a circle");
  leave_folder("circle");
}
END_TEST

/* Whoever may read everything is not refused. */
START_TEST(a_file_that_may_not_be_read_is_refused)
{
  enter_folder();
  write_file("closed.csv", "1", 1);
  ck_assert_int_eq(chmod("closed.csv", 0), 0);
  if (access("closed.csv", R_OK) == 0)
    printf("skipped: a_file_that_may_not_be_read_is_refused, this user may read everything\n");
  else
    check_refused("closed.csv", OHM_CANNOT_OPEN, "not permitted");
  leave_folder("closed.csv");
}
END_TEST

START_TEST(a_long_path_keeps_the_reason_in_the_sentence)
{
  char path[1000];
  memset(path, 'a', sizeof path);
  path[sizeof path - 1] = '\0';
  check_refused(path, OHM_CANNOT_OPEN, "aaa...: its name is too long");
}
END_TEST

START_TEST(no_handle_is_left_open)
{
  int before = dup(0);
  ck_assert_int_ge(before, 0);
  close(before);
  size_t length;
  for (int i = 0; i < 100; i++) {
    ck_assert_ptr_null(oc_file_read(".", &length, NULL));
    ck_assert_ptr_null(oc_file_read("/dev/null", &length, NULL));
  }
  int after = dup(0);
  ck_assert_int_eq(after, before);
  close(after);
}
END_TEST

int main(void) {
  return RUN_TESTS("file", a_file_is_read_whole_with_a_nul_after_it, an_empty_file_is_an_empty_text,
                   a_file_of_16_mib_is_read_and_one_byte_more_refused,
                   a_name_that_is_not_there_is_named, a_directory_is_refused, a_device_is_refused,
                   a_pipe_without_a_writer_is_refused_at_once, a_link_to_itself_is_refused,
                   a_file_that_may_not_be_read_is_refused,
                   a_long_path_keeps_the_reason_in_the_sentence, no_handle_is_left_open);
}
