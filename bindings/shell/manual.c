/* SPDX-License-Identifier: MIT */
/* Prints the manual page, man(7), from the option table. */
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
    "ohmcurve writes no file. A sensor file is UTF-8 text of at most 16 MiB. It begins with lines "
    "'# key: value': name, description, source, kind (module or gauge), tolerance, "
    "dissipation_mw_per_k, and model, which is points unless it says beta or steinhart-hart.\n"
    "With points a header row and rows follow, the cells separated by commas: temp_c, and "
    "r_nom_ohm or r_min_ohm and r_max_ohm or all three. A row that cannot be used is left out, and "
    "a note on standard error says which and why.\n"
    "The other models have a range, as below, and r0_ohm, t0_c and beta_k; or a, b and c.";

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

static const struct ohm_entry examples[] = {
    {"The radiator fan of a van stays off in slow traffic. Next morning, engine cold and plug off, "
     "its sensor reads 2.31 k; the thermometer strapped to it shows 21.5 C and is good to half a "
     "degree:",
     "ohmcurve check ntc-2k45-20c 2.31k --at 21.5C+-0.5"},
    {"The sensor taken out and put into ice water, the accuracy of the meter known, for a script:",
     "ohmcurve check ntc-2k45-20c 5.81k --at ice --meter 0.8%+3 --json"},
    {"The readings of a warming up, one a line, as temperatures:",
     "ohmcurve degrees ntc-2k45-20c < readings.txt"},
    {"What to expect on a frosty morning and in hot water:", "ohmcurve ohms ntc-2k45-20c -10C 80C"},
    {"A table for the workshop wall:", "ohmcurve table ntc-2k45-20c --from 0C --to 100C --step 5"},
    {NULL, NULL},
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

static void put_option(const struct ohm_option *option) {
  put_font("B", option->name);
  if (option->argument) {
    fputs("\\ ", stdout);
    put_font("I", option->argument);
  }
}

static void put_synopsis(void) {
  puts(".SH SYNOPSIS");
  for (size_t i = 0; i < OHM_VERB_COUNT; i++) {
    const struct ohm_verb *verb = &ohm_verbs[i];
    printf(".HP\n.B ohmcurve %s\n", verb->name);
    if (*verb->operands) {
      put_font("I", verb->operands);
      puts("\\&"); /* its dots end no sentence */
    }
    for (size_t j = 0; j + 1 < verb->option_count; j++) {
      bool required = verb->options[j].required;
      fputs(required ? "" : "[", stdout);
      put_option(&verb->options[j]);
      puts(required ? "" : "]");
    }
  }
  for (size_t i = 0; i < sizeof ohm_program_options / sizeof ohm_program_options[0]; i++) {
    puts(".HP\n.B ohmcurve");
    put_option(&ohm_program_options[i]);
    putchar('\n');
  }
}

static void put_options(const struct ohm_option *options, size_t count) {
  for (size_t i = 0; i < count; i++) {
    puts(".TP");
    put_option(&options[i]);
    putchar('\n');
    put(options[i].meaning);
    puts(".");
    if (options[i].fallback) {
      fputs("Without it: ", stdout);
      put(options[i].fallback);
      puts(".");
    }
  }
}

static void put_verbs(void) {
  puts(".SH VERBS");
  for (size_t i = 0; i < OHM_VERB_COUNT; i++) {
    const struct ohm_verb *verb = &ohm_verbs[i];
    printf(".SS ohmcurve %s ", verb->name);
    put(verb->operands);
    putchar('\n');
    put_prose(verb->description);
    put_options(verb->options, verb->option_count - 1); /* all but --help */
  }
}

static void put_entries(const char *title, const char *font, ohm_entries entries) {
  printf(".SH %s\n", title);
  for (; entries->word; entries++) {
    puts(".TP");
    put_font(font, entries->word);
    putchar('\n');
    put(entries->meaning);
    puts(".");
  }
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

static void put_examples(void) {
  puts(".SH EXAMPLES");
  for (ohm_entries example = examples; example->word; example++) {
    puts(".PP");
    put_prose(example->word);
    puts(".PP\n.RS 4\n.nf");
    put_font("B", example->meaning);
    puts("\n.fi\n.RE");
  }
}

static void put_cautions(void) {
  puts(".SH CAUTIONS");
  for (const char *const *caution = cautions; *caution; caution++) {
    puts(".PP");
    put_prose(*caution);
  }
}

int main(void) {
  printf(".\\\" SPDX-License-Identifier: MIT\n.TH OHMCURVE 1 \"\" \"ohmcurve %s\"\n",
         ohm_version());
  puts(".\\\" Ragged right and unhyphenated: values must be read as they are typed.\n.ad l\n.nh");
  puts(".SH NAME");
  printf("ohmcurve \\- %s\n", ohm_program_summary);
  put_synopsis();
  puts(".SH DESCRIPTION");
  put_prose(about);
  put_verbs();
  puts(".SH OPTIONS");
  put_options(ohm_program_options, sizeof ohm_program_options / sizeof ohm_program_options[0]);
  put_entries("NOTATIONS", "I", ohm_notations);
  put_entries("EXIT STATUS", "B", ohm_exits);
  put_files();
  put_examples();
  put_cautions();
  puts(".SH SEE ALSO");
  put_prose("The header ohmcurve.h describes the library underneath.\n"
            "JCGM 106:2012, The role of measurement uncertainty in conformity assessment.");
  return fflush(stdout) != 0 || ferror(stdout);
}
