/* SPDX-License-Identifier: MIT */
#define _POSIX_C_SOURCE 200809L

#include <signal.h>
#include <stdio.h>
#include <string.h>

#include <ohmcurve.h>

#include "arguments.h"
#include "help.h"
#include "screen.h"

static int print_usage(void) {
  fputs("Usage: ohmcurve VERB ..., VERB one of", stderr);
  for (size_t i = 0; i < shell_verb_count; i++)
    fprintf(stderr, "%s %s", i == 0 ? "" : ",", shell_verbs[i].name);
  fputs(".\n'ohmcurve --help' says what each does.\n", stderr);
  return SHELL_EXIT_USAGE;
}

static int run_verb(const struct shell_verb *verb, char **words, size_t count) {
  struct shell_arguments arguments;
  int status = shell_arguments_read(verb, words, count, &arguments);
  if (status != SHELL_EXIT_DONE)
    return status;
  if (arguments.values[SHELL_OPTION_HELP]) {
    shell_help_print(verb);
    return SHELL_EXIT_DONE;
  }
  return verb->run(&arguments);
}

static int run_program_option(const char *word) {
  if (strcmp(word, "--help") == 0) {
    shell_help_print(NULL);
    return SHELL_EXIT_DONE;
  }
  if (strcmp(word, "--version") == 0) {
    printf("ohmcurve %s, sensor tables %s\n", ohm_version(), ohm_tables_version());
    return SHELL_EXIT_DONE;
  }
  const char *const names[] = {shell_program_options[0].name, shell_program_options[1].name};
  const char *near = ohm_nearest(word, names, 2);
  if (near)
    return shell_refuse(SHELL_EXIT_USAGE, "there is no option %s; did you mean %s?", word, near);
  return shell_refuse(
      SHELL_EXIT_USAGE,
      "%s stands before any verb: write the verb first, 'ohmcurve --help' lists them", word);
}

static int run(int argc, char **argv) {
  if (argc < 2)
    return print_usage();
  if (argv[1][0] == '-')
    return run_program_option(argv[1]);
  const struct shell_verb *verb = shell_verb_find(argv[1]);
  if (!verb)
    return shell_verb_unknown(argv[1]);
  return run_verb(verb, argv + 2, (size_t)argc - 2);
}

int main(int argc, char **argv) {
  /* A reader that went away is told like a full disk: by the write that fails. */
  signal(SIGPIPE, SIG_IGN);
  int status = run(argc, argv);
  if (fflush(stdout) != 0 || ferror(stdout))
    return shell_refuse(SHELL_EXIT_OUTPUT,
                        "the output could not be written whole: free some room on "
                        "its disk, or let its reader read to the end");
  return status;
}
