/* SPDX-License-Identifier: MIT */
#include "bench.h"

#include <ctype.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "screen.h"

/* ---- sentences of the library, in words of the command ---- */

struct sentence {
  size_t length;
  char text[sizeof((ohm_error *)NULL)->message + 128];
};

static void add(struct sentence *sentence, const char *text, size_t length) {
  size_t room = sizeof sentence->text - 1 - sentence->length;
  length = length < room ? length : room;
  memcpy(sentence->text + sentence->length, text, length);
  sentence->length += length;
  sentence->text[sentence->length] = '\0';
}

static size_t word_length(const char *text) {
  size_t length = 0;
  while (isalnum((unsigned char)text[length]) || text[length] == '_')
    length++;
  return length;
}

static bool is_word(const char *text, size_t length, const char *word) {
  return strlen(word) == length && memcmp(text, word, length) == 0;
}

/* The setting of that very name; 0 when there is none. */
static int setting_of(const char *text, size_t length) {
  char name[SHELL_OPTION_NAME_SIZE];
  if (length == 0 || length >= sizeof name)
    return 0;
  memcpy(name, text, length);
  name[length] = '\0';
  int setting = ohm_setting_named(name);
  return setting && strcmp(ohm_setting_name(setting), name) == 0 ? setting : 0;
}

static bool is_setting(const char *text) {
  return setting_of(text, word_length(text)) != 0;
}

/* Most settings are ordinary words too: they are settings behind "set", and two of them
 * with an "and" between. */
static void add_word(struct sentence *sentence, const char *word, size_t length, bool *named) {
  char option[SHELL_OPTION_NAME_SIZE];
  int setting = setting_of(word, length);
  bool sets = is_word(word, length, "set") && word[length] == ' ' && is_setting(word + length + 1);
  if (setting && strncmp(word + length, " and ", 5) == 0 && is_setting(word + length + 5))
    *named = true;
  if (setting && (*named || memchr(word, '_', length))) {
    shell_option_name(setting, option);
    add(sentence, option, strlen(option));
    return;
  }
  *named = sets || (*named && is_word(word, length, "and"));
  add(sentence, sets ? "write" : word, sets ? strlen("write") : length);
}

static void translate(struct sentence *sentence, const char *text) {
  bool named = false;
  bool quoted = false;
  sentence->length = 0;
  sentence->text[0] = '\0';
  while (*text) {
    size_t length = quoted ? 0 : word_length(text);
    if (length > 0) {
      add_word(sentence, text, length, &named);
    } else {
      quoted = quoted != (*text == '"');
      named = named && *text == ' ';
      add(sentence, text, length = 1);
    }
    text += length;
  }
}

static bool lacks_band(const ohm_bench *bench, const ohm_error *error) {
  const char *band = ohm_bench_setting(bench, OHM_SETTING_BAND);
  return band && strstr(error->message, " has no band ") != NULL;
}

int shell_bench_refuse(const ohm_bench *bench, const ohm_error *error) {
  struct sentence sentence;
  int status = error->status == OHM_NO_MEMORY ? SHELL_EXIT_MEMORY : SHELL_EXIT_DATA;
  /* What is missing, and what says the same twice, is a matter of the command line. */
  if ((error->status == OHM_NOT_FOUND && !lacks_band(bench, error)) ||
      error->status == OHM_BAD_ARGUMENT)
    status = SHELL_EXIT_USAGE;
  translate(&sentence, error->message);
  return shell_refuse(status, "%s", sentence.text);
}

/* ---- settings ---- */

static int refuse_setting(int setting, const ohm_error *error) {
  char option[SHELL_OPTION_NAME_SIZE];
  const char *message = error->message;
  size_t length = strlen(ohm_setting_name(setting));
  if (strncmp(message, ohm_setting_name(setting), length) == 0 &&
      strncmp(message + length, ": ", 2) == 0)
    message += length + 2;
  shell_option_name(setting, option);
  return shell_refuse(SHELL_EXIT_DATA, "%s: %s", option, message);
}

static int set(ohm_bench *bench, int setting, const char *value) {
  ohm_error error;
  bool flag = ohm_setting_kind_of(setting) == OHM_SETTING_KIND_FLAG;
  if (ohm_bench_set(bench, setting, flag ? "yes" : value, &error) == OHM_OK)
    return SHELL_EXIT_DONE;
  return refuse_setting(setting, &error);
}

int shell_bench_set(ohm_bench *bench, const struct shell_arguments *arguments) {
  int status = SHELL_EXIT_DONE;
  for (int id = SHELL_OPTION_SETTING; id < SHELL_OPTION_COUNT && status == SHELL_EXIT_DONE; id++)
    if (arguments->values[id])
      status =
          set(bench, ohm_setting_at((size_t)(id - SHELL_OPTION_SETTING)), arguments->values[id]);
  return status;
}

ohm_bench *shell_bench_new(const struct shell_arguments *arguments, int *status) {
  ohm_error error;
  ohm_bench *bench = ohm_bench_new(&error);
  if (!bench) {
    *status = shell_refuse(SHELL_EXIT_MEMORY, "%s", error.message);
    return NULL;
  }
  *status = shell_bench_set(bench, arguments);
  if (*status == SHELL_EXIT_DONE)
    return bench;
  ohm_bench_free(bench);
  return NULL;
}

/* ---- readings ---- */

static bool is_unit(const char *text) {
  static const char *const units[] = {"k",    "K",    "M",    "ohm",  "ohms",
                                      "kohm", "Kohm", "Mohm", "kohms"};
  for (size_t i = 0; i < sizeof units / sizeof units[0]; i++)
    if (strcmp(text, units[i]) == 0)
      return true;
  return false;
}

int shell_bench_read(ohm_bench *bench, const char *operand) {
  ohm_error error;
  if (is_unit(operand))
    return shell_refuse(SHELL_EXIT_USAGE,
                        "\"%s\" is one word too many: write number and unit as one word, such as "
                        "2.31k, or in quotes",
                        operand);
  if (ohm_bench_read(bench, operand, NULL, &error) == OHM_OK)
    return SHELL_EXIT_DONE;
  return shell_refuse(SHELL_EXIT_DATA, "%s", error.message);
}

/* Whether the notation has it for volts, degrees reported or something with a name: no
 * verb that asks for ohms looks at these. */
static bool is_other(const char *text) {
  double t_c;
  return strpbrk(text, "=V") || ohm_temperature_read(text, &t_c, NULL) == OHM_OK;
}

int shell_bench_read_ohms(ohm_bench *bench, const struct shell_arguments *arguments, size_t first) {
  int status = SHELL_EXIT_DONE;
  for (size_t i = first; i < arguments->count && status == SHELL_EXIT_DONE; i++) {
    const char *operand = arguments->operands[i];
    if (is_other(operand))
      return shell_refuse(SHELL_EXIT_DATA,
                          "\"%s\" is no reading of ohms, and %s looks at nothing else: write one "
                          "such as 2.31k@21.5C",
                          operand, arguments->verb->name);
    status = shell_bench_read(bench, operand);
  }
  return status;
}
