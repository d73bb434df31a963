/* SPDX-License-Identifier: MIT */
#include "arguments.h"

#include <stdio.h>
#include <string.h>

#include <ohmcurve.h>

#include "screen.h"

enum { NAMES_MAX = 64, LINE_SIZE = 256 };

int shell_verb_unknown(const char *name) {
  const char *names[NAMES_MAX];
  for (size_t i = 0; i < shell_verb_count; i++)
    names[i] = shell_verbs[i].name;
  const char *near = ohm_nearest(name, names, shell_verb_count);
  if (near)
    return shell_refuse(SHELL_EXIT_USAGE,
                        "there is no verb \"%s\"; did you mean %s? 'ohmcurve --help' lists them",
                        name, near);
  return shell_refuse(SHELL_EXIT_USAGE, "there is no verb \"%s\": 'ohmcurve --help' lists them",
                      name);
}

static bool is_option(const char *word) {
  return word[0] == '-' && word[1] != '\0' && strchr(".0123456789", word[1]) == NULL;
}

/* A cut name is meant more often than a misspelt one. */
static bool option_near(const struct shell_verb *verb, const char *word, size_t length,
                        struct shell_option *near) {
  struct shell_option options[NAMES_MAX];
  const char *names[NAMES_MAX];
  size_t count = 0;
  size_t begun_count = 0;
  for (; count < NAMES_MAX && shell_option_at(verb, count, &options[count]); count++) {
    names[count] = options[count].name;
    if (length > 2 && strncmp(names[count], word, length) == 0) {
      *near = options[count];
      begun_count++;
    }
  }
  char name[LINE_SIZE];
  snprintf(name, sizeof name, "%.*s", (int)length, word);
  const char *nearest = ohm_nearest(name, names, count);
  if (begun_count == 1)
    return true;
  return nearest && shell_option_find(verb, nearest, strlen(nearest), near);
}

static int option_unknown(const struct shell_verb *verb, const char *word, size_t length) {
  int shown = length < LINE_SIZE ? (int)length : LINE_SIZE - 1;
  struct shell_option near;
  if (option_near(verb, word, (size_t)shown, &near))
    return shell_refuse(SHELL_EXIT_USAGE,
                        "%s has no option %.*s; did you mean %s? 'ohmcurve help %s' lists them",
                        verb->name, shown, word, near.name, verb->name);
  return shell_refuse(SHELL_EXIT_USAGE, "%s has no option %.*s: 'ohmcurve help %s' lists them",
                      verb->name, shown, word, verb->name);
}

/* One option at words[0]; used is how many words it took. */
static int read_option(struct shell_arguments *arguments, char **words, size_t count,
                       size_t *used) {
  const char *word = words[0];
  size_t length = strcspn(word, "=");
  const char *value = word[length] == '=' ? word + length + 1 : NULL;
  struct shell_option option;
  *used = 1;
  if (!shell_option_find(arguments->verb, word, length, &option))
    return option_unknown(arguments->verb, word, length);
  if (!option.argument && value)
    return shell_refuse(SHELL_EXIT_USAGE, "%s takes no value: write %s alone", option.name,
                        option.name);
  if (option.argument && !value) {
    if (count < 2 || is_option(words[1]))
      return shell_refuse(SHELL_EXIT_USAGE, "%s lacks its value: write %s %s", option.name,
                          option.name, option.argument);
    value = words[1];
    *used = 2;
  }
  bool repeats = option.id == SHELL_OPTION_SAW || option.id == SHELL_OPTION_SENSOR;
  if (repeats && arguments->repeated_count == SHELL_REPEATED_MAX)
    return shell_refuse(SHELL_EXIT_USAGE, "%s stands here more than 512 times: %s", option.name,
                        option.id == SHELL_OPTION_SAW ? "write a record, --record"
                                                      : "leave some out");
  if (repeats)
    arguments->repeated[arguments->repeated_count++] = value;
  arguments->values[option.id] = value ? value : "";
  return SHELL_EXIT_DONE;
}

static int check_operands(const struct shell_arguments *arguments) {
  const struct shell_verb *verb = arguments->verb;
  if (arguments->count < verb->least) {
    const char *missing = verb->operands;
    for (size_t i = 0; i < arguments->count; i++)
      missing += strcspn(missing, " ") + 1;
    return shell_refuse(SHELL_EXIT_USAGE, "%.*s is missing: write it as in ohmcurve %s %s",
                        (int)strcspn(missing, " ."), missing, verb->name, verb->example);
  }
  if (arguments->count > verb->most)
    return shell_refuse(
        SHELL_EXIT_USAGE,
        "\"%s\" is one word too many: write it as in ohmcurve %s %s; a value with a "
        "space in it goes in quotes",
        arguments->operands[verb->most], verb->name, verb->example);
  return SHELL_EXIT_DONE;
}

int shell_arguments_read(const struct shell_verb *verb, char **words, size_t count,
                         struct shell_arguments *arguments) {
  *arguments = (struct shell_arguments){.verb = verb, .operands = words};
  bool options_ended = false;
  size_t used;
  for (size_t i = 0; i < count; i += used) {
    used = 1;
    if (options_ended || !is_option(words[i])) {
      words[arguments->count++] = words[i];
    } else if (strcmp(words[i], "--") == 0) {
      options_ended = true;
    } else {
      int status = read_option(arguments, words + i, count - i, &used);
      if (status != SHELL_EXIT_DONE)
        return status;
    }
  }
  if (arguments->values[SHELL_OPTION_HELP])
    return SHELL_EXIT_DONE;
  return check_operands(arguments);
}
