/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <string.h>

#include "screen.h"
#include "verbs.h"

enum { WORD_WIDTH = 10, CELL = 128 };

static void print_entry(const char *word, size_t width, const char *meaning) {
  printf("  %s", word);
  ohm_screen_pad(word, width);
  ohm_screen_wrap(2 + width, meaning);
}

static void print_synopsis(const struct ohm_verb *verb) {
  char word[CELL];
  size_t column = strlen("Usage: ohmcurve  ") + strlen(verb->name);
  size_t used = column;
  printf("Usage: ohmcurve %s ", verb->name);
  if (*verb->operands)
    ohm_screen_word(column, &used, verb->operands, strlen(verb->operands));
  for (size_t i = 0; i + 1 < verb->option_count; i++) { /* all but --help */
    const struct ohm_option *option = &verb->options[i];
    snprintf(word, sizeof word, "[%s%s%s]", option->name, option->argument ? " " : "",
             option->argument ? option->argument : "");
    ohm_screen_word(column, &used, word, strlen(word));
  }
  putchar('\n');
}

static void print_options(const struct ohm_option *options, size_t count) {
  enum { WIDTH = 21 };
  puts("\nOptions");
  for (size_t i = 0; i < count; i++) {
    const struct ohm_option *option = &options[i];
    char word[CELL], meaning[4 * CELL];
    snprintf(word, sizeof word, "%s%s%s", option->name, option->argument ? " " : "",
             option->argument ? option->argument : "");
    snprintf(meaning, sizeof meaning, "%s%s%s%s", option->meaning,
             option->fallback ? " (default: " : "", option->fallback ? option->fallback : "",
             option->fallback ? ")" : "");
    print_entry(word, WIDTH, meaning);
  }
}

static void print_notations(const struct ohm_verb *verb) {
  enum { READING_WIDTH = 14 };
  const char *title = "\nWhat to write for\n";
  for (ohm_entries entry = ohm_notations; entry->word; entry++) {
    if (!ohm_verb_takes(verb, entry->word))
      continue;
    fputs(title, stdout);
    title = "";
    print_entry(entry->word, WORD_WIDTH, entry->meaning);
  }
  if (!ohm_verb_judges(verb))
    return;
  puts("\nBesides, of a reading");
  for (ohm_entries entry = ohm_check_notations; entry->word; entry++)
    print_entry(entry->word, READING_WIDTH, entry->meaning);
}

static void print_verb(const struct ohm_verb *verb) {
  print_synopsis(verb);
  printf("For example: ohmcurve %s %s\n\n", verb->name, verb->example);
  ohm_screen_wrap(0, verb->description);
  print_options(verb->options, verb->option_count);
  print_notations(verb);
}

static void print_program(void) {
  printf("Usage: ohmcurve VERB ...\n\nohmcurve %s.\n\nVerbs\n", ohm_program_summary);
  for (size_t i = 0; i < OHM_VERB_COUNT; i++)
    print_entry(ohm_verbs[i].name, WORD_WIDTH, ohm_verbs[i].summary);
  puts("\nOptions");
  for (size_t i = 0; i < 2; i++)
    print_entry(ohm_program_options[i].name, WORD_WIDTH + 1, ohm_program_options[i].meaning);
  puts("\nExit status");
  for (ohm_entries entry = ohm_exits; entry->word; entry++)
    print_entry(entry->word, WORD_WIDTH, entry->meaning);
  puts("\n'ohmcurve help VERB' explains a verb, 'man ohmcurve' all of it, and 'man 3\n"
       "ohmcurve' the library.");
}

void ohm_help_print(const struct ohm_verb *verb) {
  if (verb)
    print_verb(verb);
  else
    print_program();
}

int ohm_help_run(const struct ohm_arguments *arguments) {
  const struct ohm_verb *verb = NULL;
  if (arguments->count > 0) {
    verb = ohm_verb_find(arguments->operands[0]);
    if (!verb)
      return ohm_verb_unknown(arguments->operands[0]);
  }
  ohm_help_print(verb);
  return OHM_EXIT_DONE;
}
