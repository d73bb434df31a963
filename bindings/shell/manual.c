/* SPDX-License-Identifier: MIT */
/* Prints a manual page, man(7), from the option table: that of the command, or of
 * the verb in the name of the page, ohmcurve-check.1. */
#include <ctype.h>
#include <stdio.h>
#include <string.h>

#include <ohmcurve.h>

#include "options.h"

static const char about[] =
    "The resistance of an NTC sensor falls as it warms. ohmcurve takes what an ohmmeter showed "
    "across one and tells what that means.\n"
    "What was not told is assumed, and the finding says what was. A finding comes with its "
    "probability: the sensor is called good or bad only when the errors of the meter, of its leads "
    "and of the thermometer together leave little doubt, else the answer is that this measurement "
    "cannot tell.\n"
    "An option and its value are written --at 20C or --at=20C. A name of an option is written "
    "whole. "
    "Of an option given twice the last counts. After -- nothing is an option. A word such as -10C "
    "is a value.";

static const char files[] =
    "ohmcurve writes no file but what -o names. A sensor file is UTF-8 text of at most 16 MiB. It "
    "begins with lines "
    "'# key: value': name, description, source, kind (module or gauge), tolerance, "
    "dissipation_mw_per_k, and model, which is points unless it says otherwise.\n"
    "With points a header row and rows follow, the cells separated by commas: temp_c, and "
    "r_nom_ohm or r_min_ohm and r_max_ohm or all three. A row that cannot be used is left out, and "
    "a note on standard error says which and why. A maker's band beside them has a line '# band "
    "NAME: where it was printed', and rows with its NAME in a further column, band.\n"
    "The other models have a range, as below, and their parameters: beta has r0_ohm, t0_c and "
    "beta_k; steinhart-hart has a, b and c; four-term has r_ref_ohm, a1, b1, c1 and d1; "
    "four-term-of-temperature has r_ref_ohm, a, b, c and d; platinum has r0_ohm; silicon has "
    "r25_ohm, alpha_per_k and beta_per_k2. What fit writes has a covariance too, the lower "
    "triangle, "
    "row by row, of that of the parameters, and degrees_of_freedom when it rests on scatter.";

static const char *const file_lines[] = {
    "# name: stable-door",
    "# description: air in a stable, probe by the door",
    "# source: invented for this page",
    "# model: beta",
    "# r0_ohm: 10000",
    "# t0_c: 25",
    "# beta_k: 3950",
    "# range: -40 to 80 C",
    "# tolerance: 3 %",
    NULL,
};

struct example {
  const char *when;
  const char *verb;
  const char *rest; /**< of the command line */
};

static const struct example examples[] = {
    {"The radiator fan of a van stays off in slow traffic. Next morning, engine cold and plug off, "
     "its sensor reads 2.31 k; the thermometer strapped to it shows 21.5 C and is good to half a "
     "degree:",
     "check", "ntc-2k45-20c 2.31k --at 21.5C+-0.5 --place sensor"},
    {"That cannot see what keeps a fan off hot. The same sensor in boiling water as well, in a "
     "kitchen 1200 m up:",
     "check", "ntc-2k45-20c 2.31k@21.5C 212@boil@1200m --place sensor"},
    {"The sensor taken out and put into ice water, the accuracy of the meter known, for a script:",
     "check", "ntc-2k45-20c 5.81k@ice --meter 0.8%+3 --json"},
    {"The fan of a tractor is to start at 92 C, and may be 3 degrees late or early:", "check",
     "ntc-2k45-20c 330 --at 80C --fan 92C --limit 3"},
    {"A sensor out of the drawer, its family forgotten:", "check", "unknown 2.31k --at 21.5C"},
    {"The readings of a warming up, one a line, as temperatures:", "degrees",
     "ntc-2k45-20c < readings.txt"},
    {"What to expect on a frosty morning and in hot water:", "ohms", "ntc-2k45-20c -10C 80C"},
    {"Which sensor does it have?", "parts", "mazda bt-50"},
    {"A table for the workshop wall:", "table", "ntc-2k45-20c --from 0C --to 100C --step 5"},
    {"The same as one maker allows it:", "table", "ntc-2k45-20c --band saab-9-3-2002"},
    {"A sensor no manual tells of, measured in ice water, at the bench and in hot water, made a "
     "sensor file:",
     "fit", "5.79k@0C 2.45k@20C 322@80C -o mine.csv"},
    {"All of check on a screen:", "help", "check"},
};

static const char *const cautions[] = {
    "Hot coolant under pressure scalds. Never open a hot cooling system.",
    "An electric fan can start by itself, even with the key off, and often does when its sensor is "
    "unplugged. Keep hands, sleeves and leads out of it, or disconnect it.",
    "Measure resistance only with the plug off: a live circuit spoils the reading, and may spoil "
    "the meter.",
    "The vehicle maker's procedure and local rules come first. A sensor that is good on the bench "
    "says nothing of plug, wires or module.",
    NULL,
};

/* A byte of ordinary text as roff wants it. */
static void put_byte(char byte) {
  static const struct {
    char byte;
    const char *roff;
  } special[] = {{'-', "\\-"},   {'\\', "\\e"},  {'\'', "\\(aq"}, {'"', "\\(dq"},
                 {'^', "\\(ha"}, {'~', "\\(ti"}, {'`', "\\(ga"}};
  for (size_t i = 0; i < sizeof special / sizeof special[0]; i++)
    if (special[i].byte == byte) {
      fputs(special[i].roff, stdout);
      return;
    }
  putchar(byte);
}

static void put(const char *text) {
  while (*text)
    put_byte(*text++);
}

/* A new input line after each sentence; a newline of the text is a new paragraph. */
static void put_prose(const char *text) {
  for (; *text; text++) {
    if (*text == '\n')
      fputs("\n.PP\n", stdout);
    else if (text[0] == '.' && text[1] == ' ' && isupper((unsigned char)text[2]))
      fputs(".\n", stdout), text++;
    else
      put_byte(*text);
  }
  putchar('\n');
}

static void put_font(const char *font, const char *text) {
  printf("\\f%s", font);
  put(text);
  fputs("\\fR", stdout);
}

static void put_option(const struct shell_option *option) {
  put_font("B", option->name);
  if (option->argument) {
    fputs("\\ ", stdout);
    put_font("I", option->argument);
  }
}

static void put_usage(const struct shell_verb *verb) {
  printf(".HP\n.B ohmcurve %s\n", verb->name);
  if (*verb->operands) {
    put_font("I", verb->operands);
    puts("\\&"); /* its dots end no sentence */
  }
  struct shell_option option;
  for (size_t i = 0; shell_option_at(verb, i, &option); i++) {
    if (option.id == SHELL_OPTION_HELP)
      continue;
    putchar('[');
    put_option(&option);
    puts("]");
  }
}

static void put_usages(void) {
  puts(".SH SYNOPSIS");
  for (size_t i = 0; i < shell_verb_count; i++)
    put_usage(&shell_verbs[i]);
  for (size_t i = 0; i < sizeof shell_program_options / sizeof shell_program_options[0]; i++) {
    puts(".HP\n.B ohmcurve");
    put_option(&shell_program_options[i]);
    putchar('\n');
  }
}

static void put_meaning(const struct shell_option *option) {
  char meaning[SHELL_OPTION_TEXT_SIZE];
  shell_option_explain(option, meaning);
  puts(".TP");
  put_option(option);
  putchar('\n');
  put(meaning);
  puts(".");
  if (option->fallback) {
    fputs("Without it: ", stdout);
    put(option->fallback);
    puts(".");
  }
}

static void put_options(const struct shell_verb *verb) {
  struct shell_option option;
  for (size_t i = 0; shell_option_at(verb, i, &option); i++)
    put_meaning(&option);
}

static void put_page_name(const char *verb) {
  printf("\\fBohmcurve\\-%s\\fR(1)", verb);
}

static void put_verbs(void) {
  puts(".SH VERBS");
  for (size_t i = 0; i < shell_verb_count; i++) {
    const struct shell_verb *verb = &shell_verbs[i];
    printf(".SS ohmcurve %s ", verb->name);
    put(verb->operands);
    putchar('\n');
    put(verb->summary);
    fputs("; see ", stdout);
    put_page_name(verb->name);
    puts(".");
  }
}

static void put_entry(const char *font, const struct shell_entry *entry) {
  puts(".TP");
  put_font(font, entry->word);
  putchar('\n');
  put(entry->meaning);
  puts(".");
}

/* What a verb takes; of all of them when it is NULL. */
static void put_notations(const struct shell_verb *verb) {
  const char *title = ".SH NOTATIONS\n";
  for (shell_entries entry = shell_notations; entry->word; entry++) {
    if (verb && !shell_verb_takes(verb, entry->word))
      continue;
    fputs(title, stdout);
    title = "";
    put_entry("I", entry);
  }
  if (verb && !shell_verb_reads(verb))
    return;
  puts(".SS Besides, of a reading");
  for (shell_entries entry = shell_reading_notations; entry->word; entry++) {
    char meaning[SHELL_OPTION_TEXT_SIZE];
    shell_notation_explain(entry, meaning);
    put_entry("B", &(struct shell_entry){entry->word, meaning});
  }
}

/* 1 and 2 are of verdicts, and so is what 0 means beside done; an audit has its own. */
static void put_exits(const struct shell_verb *verb) {
  static const struct shell_entry done[] = {{"0", "done"}, {NULL, NULL}};
  static const struct shell_entry audited[] = {
      {"0", "nothing is suspect"}, {"1", "something is suspect"}, {NULL, NULL}};
  bool all = !verb || shell_verb_judges(verb);
  puts(".SH EXIT STATUS");
  if (!all)
    for (shell_entries entry = strcmp(verb->name, "audit") == 0 ? audited : done; entry->word;
         entry++)
      put_entry("B", entry);
  for (shell_entries entry = shell_exits; entry->word; entry++)
    if (all || strlen(entry->word) > 1)
      put_entry("B", entry);
}

static void put_files(void) {
  puts(".SH FILES");
  put_prose(files);
  puts(".PP\n.RS 4\n.nf");
  for (const char *const *line = file_lines; *line; line++) {
    put(*line);
    putchar('\n');
  }
  puts(".fi\n.RE");
}

static void put_examples(const struct shell_verb *verb) {
  puts(".SH EXAMPLES");
  for (size_t i = 0; i < sizeof examples / sizeof examples[0]; i++) {
    const struct example *example = &examples[i];
    if (verb && strcmp(example->verb, verb->name) != 0)
      continue;
    puts(".PP");
    put_prose(example->when);
    printf(".PP\n.RS 4\n.nf\n\\fBohmcurve %s ", example->verb);
    put(example->rest);
    puts("\\fR\n.fi\n.RE");
  }
}

static void put_cautions(void) {
  puts(".SH CAUTIONS");
  for (const char *const *caution = cautions; *caution; caution++) {
    puts(".PP");
    put_prose(*caution);
  }
}

/* ---- the pages ---- */

static void put_heading(const struct shell_verb *verb) {
  fputs(".\\\" SPDX-License-Identifier: MIT\n.TH OHMCURVE", stdout);
  fputs(verb ? "\\-" : "", stdout);
  for (const char *letter = verb ? verb->name : ""; *letter; letter++)
    putchar(toupper((unsigned char)*letter));
  printf(" 1 \"\" \"ohmcurve %s\"\n", ohm_version());
  puts(".\\\" Ragged right and unhyphenated: values must be read as they are typed.\n.ad "
       "l\n.nh\n.ss 12 0");
  printf(".SH NAME\nohmcurve%s%s \\- %s\n", verb ? "\\-" : "", verb ? verb->name : "",
         verb ? verb->summary : shell_program_summary);
}

static void put_program(void) {
  put_heading(NULL);
  put_usages();
  puts(".SH DESCRIPTION");
  put_prose(about);
  put_verbs();
  puts(".SH OPTIONS");
  for (size_t i = 0; i < sizeof shell_program_options / sizeof shell_program_options[0]; i++)
    put_meaning(&shell_program_options[i]);
  put_notations(NULL);
  put_exits(NULL);
  put_files();
  put_examples(NULL);
  put_cautions();
  puts(".SH SEE ALSO\n\\fBohmcurve\\fR(3), the library underneath.\n.PP");
  put_prose("JCGM 106:2012, The role of measurement uncertainty in conformity assessment.");
}

static void put_verb(const struct shell_verb *verb) {
  put_heading(verb);
  puts(".SH SYNOPSIS");
  put_usage(verb);
  puts(".SH DESCRIPTION");
  put_prose(verb->description);
  puts(".SH OPTIONS");
  put_options(verb);
  put_notations(verb);
  put_exits(verb);
  put_examples(verb);
  if (shell_verb_judges(verb))
    put_cautions();
  puts(".SH SEE ALSO\n\\fBohmcurve\\fR(1)");
}

/* "ohmcurve-check.1" is of check, "ohmcurve.1" of none. */
static bool read_page(const char *path, const struct shell_verb **verb) {
  const char *slash = strrchr(path, '/');
  const char *page = slash ? slash + 1 : path;
  *verb = NULL;
  if (strcmp(page, "ohmcurve.1") == 0)
    return true;
  for (size_t i = 0; i < shell_verb_count; i++) {
    char name[64];
    snprintf(name, sizeof name, "ohmcurve-%s.1", shell_verbs[i].name);
    if (strcmp(page, name) == 0)
      *verb = &shell_verbs[i];
  }
  return *verb != NULL;
}

int main(int argc, char **argv) {
  const struct shell_verb *verb;
  if (argc != 2 || !read_page(argv[1], &verb)) {
    fputs("manual: write the page to print: ohmcurve.1, or ohmcurve-VERB.1\n", stderr);
    return 64;
  }
  if (verb)
    put_verb(verb);
  else
    put_program();
  return fflush(stdout) != 0 || ferror(stdout);
}
