/* SPDX-License-Identifier: MIT */
#define _POSIX_C_SOURCE 200809L

#include <signal.h>
#include <stdio.h>
#include <string.h>

#include <ohmcurve.h>

#include "screen.h"
#include "verbs.h"

static ohm_verb_run *const runs[OHM_VERB_COUNT] = {
    [OHM_VERB_CHECK] = ohm_check_run,
    [OHM_VERB_EXPLAIN] = ohm_explain_run,
    [OHM_VERB_DEGREES] = ohm_convert_run,
    [OHM_VERB_OHMS] = ohm_convert_run,
    [OHM_VERB_PARTS] = ohm_parts_run,
    [OHM_VERB_TABLE] = ohm_table_run,
    [OHM_VERB_CHART] = ohm_chart_run,
    [OHM_VERB_AUDIT] = ohm_audit_run,
    [OHM_VERB_FIT] = ohm_fit_run,
    [OHM_VERB_HELP] = ohm_help_run,
    [OHM_VERB_CIRCUIT] = ohm_circuit_run,
    [OHM_VERB_SIGNAL] = ohm_signal_run,
    [OHM_VERB_SUBSTITUTE] = ohm_substitute_run,
    [OHM_VERB_FANPOINT] = ohm_fanpoint_run,
    [OHM_VERB_IDENTIFY] = ohm_identify_run,
    [OHM_VERB_SOAK] = ohm_soak_run,
};

static int print_usage(void) {
  fputs("Usage: ohmcurve VERB ..., VERB one of", stderr);
  for (size_t i = 0; i < OHM_VERB_COUNT; i++)
    fprintf(stderr, "%s %s", i == 0 ? "" : ",", ohm_verbs[i].name);
  fputs(".\n'ohmcurve --help' says what each does.\n", stderr);
  return OHM_EXIT_USAGE;
}

static int run_verb(const struct ohm_verb *verb, char **words, size_t count) {
  struct ohm_arguments arguments;
  int status = ohm_arguments_read(verb, words, count, &arguments);
  if (status != OHM_EXIT_DONE)
    return status;
  if (arguments.values[OHM_OPTION_HELP]) {
    ohm_help_print(verb);
    return OHM_EXIT_DONE;
  }
  return runs[verb - ohm_verbs](&arguments);
}

static int run_program_option(const char *word) {
  if (strcmp(word, "--help") == 0) {
    ohm_help_print(NULL);
    return OHM_EXIT_DONE;
  }
  if (strcmp(word, "--version") == 0) {
    printf("ohmcurve %s, sensor tables %s\n", ohm_version(), ohm_tables_version());
    return OHM_EXIT_DONE;
  }
  const char *const names[] = {ohm_program_options[0].name, ohm_program_options[1].name};
  const char *near = ohm_nearest(word, names, 2);
  if (near)
    return ohm_refuse(OHM_EXIT_USAGE, "there is no option %s; did you mean %s?", word, near);
  return ohm_refuse(OHM_EXIT_USAGE,
                    "%s stands before any verb: write the verb first, 'ohmcurve --help' lists them",
                    word);
}

static int run(int argc, char **argv) {
  if (argc < 2)
    return print_usage();
  if (argv[1][0] == '-')
    return run_program_option(argv[1]);
  const struct ohm_verb *verb = ohm_verb_find(argv[1]);
  if (!verb)
    return ohm_verb_unknown(argv[1]);
  return run_verb(verb, argv + 2, (size_t)argc - 2);
}

int main(int argc, char **argv) {
  /* A reader that went away is told like a full disk: by the write that fails. */
  signal(SIGPIPE, SIG_IGN);
  int status = run(argc, argv);
  if (fflush(stdout) != 0 || ferror(stdout))
    return ohm_refuse(OHM_EXIT_OUTPUT, "the output could not be written whole: free some room on "
                                       "its disk, or let its reader read to the end");
  return status;
}
