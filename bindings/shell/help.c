/* SPDX-License-Identifier: MIT */
#include <stdio.h>
#include <string.h>

#include "help.h"
#include "screen.h"

enum { WORD_WIDTH = 10, CELL = 128 };

static void print_entry(const char *word, size_t width, const char *meaning) {
  printf("  %s", word);
  shell_screen_pad(word, width);
  shell_screen_wrap(2 + width, meaning);
}

static void print_synopsis(const struct shell_verb *verb) {
  char word[CELL];
  size_t column = strlen("Usage: ohmcurve  ") + strlen(verb->name);
  size_t used = column;
  printf("Usage: ohmcurve %s ", verb->name);
  if (*verb->operands)
    shell_screen_word(column, &used, verb->operands, strlen(verb->operands));
  struct shell_option option;
  for (size_t i = 0; shell_option_at(verb, i, &option); i++) {
    if (option.id == SHELL_OPTION_HELP)
      continue;
    snprintf(word, sizeof word, "[%s%s%s]", option.name, option.argument ? " " : "",
             option.argument ? option.argument : "");
    shell_screen_word(column, &used, word, strlen(word));
  }
  putchar('\n');
}

static void print_option(const struct shell_option *option) {
  enum { WIDTH = 22 };
  char word[CELL];
  char meaning[SHELL_OPTION_TEXT_SIZE + CELL];
  snprintf(word, sizeof word, "%s%s%s", option->name, option->argument ? " " : "",
           option->argument ? option->argument : "");
  shell_option_explain(option, meaning);
  if (option->fallback) {
    size_t length = strlen(meaning);
    snprintf(meaning + length, sizeof meaning - length, " (default: %s)", option->fallback);
  }
  print_entry(word, WIDTH, meaning);
}

static void print_options(const struct shell_verb *verb) {
  struct shell_option option;
  puts("\nOptions");
  for (size_t i = 0; shell_option_at(verb, i, &option); i++)
    print_option(&option);
}

static void print_notations(const struct shell_verb *verb) {
  enum { READING_WIDTH = 14 };
  const char *title = "\nWhat to write for\n";
  for (shell_entries entry = shell_notations; entry->word; entry++) {
    if (!shell_verb_takes(verb, entry->word))
      continue;
    fputs(title, stdout);
    title = "";
    print_entry(entry->word, WORD_WIDTH, entry->meaning);
  }
  if (!shell_verb_reads(verb))
    return;
  puts("\nBesides, of a reading");
  for (shell_entries entry = shell_reading_notations; entry->word; entry++) {
    char meaning[SHELL_OPTION_TEXT_SIZE];
    shell_notation_explain(entry, meaning);
    print_entry(entry->word, READING_WIDTH, meaning);
  }
}

static void print_verb(const struct shell_verb *verb) {
  print_synopsis(verb);
  printf("For example: ohmcurve %s ", verb->name);
  shell_screen_wrap(strlen("For example: ohmcurve  ") + strlen(verb->name), verb->example);
  putchar('\n');
  shell_screen_wrap(0, verb->description);
  print_options(verb);
  print_notations(verb);
}

static void print_program(void) {
  printf("Usage: ohmcurve VERB ...\n\nohmcurve %s.\n\nVerbs\n", shell_program_summary);
  for (size_t i = 0; i < shell_verb_count; i++)
    print_entry(shell_verbs[i].name, WORD_WIDTH, shell_verbs[i].summary);
  puts("\nOptions");
  for (size_t i = 0; i < 2; i++)
    print_entry(shell_program_options[i].name, WORD_WIDTH + 1, shell_program_options[i].meaning);
  puts("\nExit status");
  for (shell_entries entry = shell_exits; entry->word; entry++)
    print_entry(entry->word, WORD_WIDTH, entry->meaning);
  puts("\n'ohmcurve help VERB' explains a verb, 'man ohmcurve' all of it, and 'man 3\n"
       "ohmcurve' the library.");
}

void shell_help_print(const struct shell_verb *verb) {
  if (verb)
    print_verb(verb);
  else
    print_program();
}

int shell_help_run(const struct shell_arguments *arguments) {
  const struct shell_verb *verb = NULL;
  if (arguments->count > 0) {
    verb = shell_verb_find(arguments->operands[0]);
    if (!verb)
      return shell_verb_unknown(arguments->operands[0]);
  }
  shell_help_print(verb);
  return SHELL_EXIT_DONE;
}
