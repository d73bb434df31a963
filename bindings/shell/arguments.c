/* SPDX-License-Identifier: MIT */
#include "arguments.h"

#include <stdio.h>
#include <string.h>

#include <ohmcurve.h>

#include "screen.h"

enum { NAMES_MAX = 16, LINE_SIZE = 256 };

int ohm_verb_unknown(const char *name) {
  const char *names[OHM_VERB_COUNT];
  for (size_t i = 0; i < OHM_VERB_COUNT; i++)
    names[i] = ohm_verbs[i].name;
  const char *near = ohm_nearest(name, names, OHM_VERB_COUNT);
  if (near)
    return ohm_refuse(OHM_EXIT_USAGE,
                      "there is no verb \"%s\"; did you mean %s? 'ohmcurve --help' lists them",
                      name, near);
  return ohm_refuse(OHM_EXIT_USAGE, "there is no verb \"%s\": 'ohmcurve --help' lists them", name);
}

static bool is_option(const char *word) {
  return word[0] == '-' && word[1] != '\0' && strchr(".0123456789", word[1]) == NULL;
}

/* A cut name is meant more often than a misspelt one. */
static const char *option_near(const struct ohm_verb *verb, const char *word, size_t length) {
  const char *names[NAMES_MAX];
  const char *begun = NULL;
  size_t begun_count = 0;
  for (size_t i = 0; i < verb->option_count; i++) {
    names[i] = verb->options[i].name;
    if (length > 2 && strncmp(names[i], word, length) == 0) {
      begun = names[i];
      begun_count++;
    }
  }
  char name[LINE_SIZE];
  snprintf(name, sizeof name, "%.*s", (int)length, word);
  return begun_count == 1 ? begun : ohm_nearest(name, names, verb->option_count);
}

static int option_unknown(const struct ohm_verb *verb, const char *word, size_t length) {
  int shown = length < LINE_SIZE ? (int)length : LINE_SIZE - 1;
  const char *near = option_near(verb, word, (size_t)shown);
  if (near)
    return ohm_refuse(OHM_EXIT_USAGE,
                      "%s has no option %.*s; did you mean %s? 'ohmcurve help %s' lists them",
                      verb->name, shown, word, near, verb->name);
  return ohm_refuse(OHM_EXIT_USAGE, "%s has no option %.*s: 'ohmcurve help %s' lists them",
                    verb->name, shown, word, verb->name);
}

/* One option at words[0]; used is how many words it took. */
static int read_option(struct ohm_arguments *arguments, char **words, size_t count, size_t *used) {
  const char *word = words[0];
  size_t length = strcspn(word, "=");
  const char *value = word[length] == '=' ? word + length + 1 : NULL;
  const struct ohm_option *option = ohm_option_find(arguments->verb, word, length);
  *used = 1;
  if (!option)
    return option_unknown(arguments->verb, word, length);
  if (!option->argument && value)
    return ohm_refuse(OHM_EXIT_USAGE, "%s takes no value: write %s alone", option->name,
                      option->name);
  if (option->argument && !value) {
    if (count < 2 || is_option(words[1]))
      return ohm_refuse(OHM_EXIT_USAGE, "%s lacks its value: write %s %s", option->name,
                        option->name, option->argument);
    value = words[1];
    *used = 2;
  }
  bool repeats = option->id == OHM_OPTION_SAW || option->id == OHM_OPTION_SENSOR;
  if (repeats && arguments->repeated_count == OHM_REPEATED_MAX)
    return ohm_refuse(OHM_EXIT_USAGE, "%s stands here more than 512 times: %s", option->name,
                      option->id == OHM_OPTION_SAW ? "write a record, --record" : "leave some out");
  if (repeats)
    arguments->repeated[arguments->repeated_count++] = value;
  arguments->values[option->id] = value ? value : "";
  return OHM_EXIT_DONE;
}

static int check_operands(const struct ohm_arguments *arguments) {
  const struct ohm_verb *verb = arguments->verb;
  if (arguments->count < verb->least) {
    const char *missing = verb->operands;
    for (size_t i = 0; i < arguments->count; i++)
      missing += strcspn(missing, " ") + 1;
    return ohm_refuse(OHM_EXIT_USAGE, "%.*s is missing: write it as in ohmcurve %s %s",
                      (int)strcspn(missing, " ."), missing, verb->name, verb->example);
  }
  if (arguments->count > verb->most)
    return ohm_refuse(OHM_EXIT_USAGE,
                      "\"%s\" is one word too many: write it as in ohmcurve %s %s; a value with a "
                      "space in it goes in quotes",
                      arguments->operands[verb->most], verb->name, verb->example);
  return OHM_EXIT_DONE;
}

int ohm_arguments_read(const struct ohm_verb *verb, char **words, size_t count,
                       struct ohm_arguments *arguments) {
  *arguments = (struct ohm_arguments){.verb = verb, .operands = words};
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
      if (status != OHM_EXIT_DONE)
        return status;
    }
  }
  if (arguments->values[OHM_OPTION_HELP])
    return OHM_EXIT_DONE;
  return check_operands(arguments);
}
