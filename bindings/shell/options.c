/* SPDX-License-Identifier: MIT */
#include "options.h"

#include <stdint.h>
#include <string.h>

#include <ohmcurve.h>

#define TEXT_OF(figure) #figure
#define TEXT(figure)    TEXT_OF(figure)
#define COUNT(array)    (sizeof(array) / sizeof((array)[0]))

const char ohm_program_summary[] =
    "judges a temperature sensor by its resistance, and converts both ways";

#define JSON(what)                                                                                 \
  { OHM_OPTION_JSON, "--json", NULL, "write " what ", one JSON object a line", NULL, false }
#define HELP                                                                                       \
  { OHM_OPTION_HELP, "--help", NULL, "explain this verb and do nothing else", NULL, false }

static const struct ohm_option check_options[] = {
    {OHM_OPTION_AT, "--at", "TEMP",
     "the temperature the sensor really has: 21.5C, 70F, 294.7K, or ice for crushed ice and "
     "water, stirred; each may end in +-1, a limit in the same unit",
     "the limit is " TEXT(OHM_ASSUMED_THERMOMETER_LIMIT_K) " K for a thermometer, " TEXT(
         OHM_ASSUMED_ICE_LIMIT_K) " K for ice",
     true},
    {OHM_OPTION_METER, "--meter", "SPEC", "what the maker of the ohmmeter states of its accuracy",
     TEXT(OHM_ASSUMED_METER_PERCENT) "%+" TEXT(OHM_ASSUMED_METER_COUNTS), false},
    {OHM_OPTION_LEADS, "--leads", "OHMS",
     "resistance of the leads, the reading with the probes held together: 0.4, or 0.4+-0.1; it "
     "is taken off the reading",
     TEXT(OHM_ASSUMED_LEAD_OHM) "+-" TEXT(OHM_ASSUMED_LEAD_LIMIT_OHM), false},
    {OHM_OPTION_TOLERANCE, "--tolerance", "PERCENT",
     "what is allowed either side of nominal, percent of resistance: 5%",
     "what the maker of the sensor printed", false},
    {OHM_OPTION_LEVEL, "--level", "P",
     "how probable a verdict must be before it is given, above 0.5 and below 1", "0.95", false},
    JSON("the finding"),
    HELP,
};

static const struct ohm_option convert_options[] = {JSON("r_ohm and t_c"), HELP};

static const struct ohm_option parts_options[] = {JSON("name, description, range and source"),
                                                  HELP};

static const struct ohm_option table_options[] = {
    {OHM_OPTION_FROM, "--from", "TEMP", "lowest temperature; the rows are counted from it",
     "the lower end of the curve, then multiples of the step", false},
    {OHM_OPTION_TO, "--to", "TEMP", "highest temperature; always the last row",
     "the upper end of the curve", false},
    {OHM_OPTION_STEP, "--step", "DEGREES", "from one row to the next, in Celsius degrees", "10",
     false},
    JSON("the rows"),
    HELP,
};

static const struct ohm_option help_options[] = {HELP};

const struct ohm_option ohm_program_options[2] = {
    {OHM_OPTION_HELP, "--help", NULL, "list the verbs; after a verb, explain that verb", NULL,
     false},
    {OHM_OPTION_VERSION, "--version", NULL,
     "the versions of the library and of the sensor tables built into it", NULL, false},
};

#define OPTIONS(list) list, COUNT(list)
#define FROM_INPUT                                                                                 \
  "Without values, standard input is read, a value a line; blank lines and lines that begin with " \
  "# are skipped. A value that cannot be converted is reported on standard error, the others "     \
  "still are converted, and the exit status is 65."

const struct ohm_verb ohm_verbs[OHM_VERB_COUNT] = {
    [OHM_VERB_CHECK] =
        {"check", "SENSOR OHMS", 2, 2, "judge a sensor that lies at a known temperature",
         "Tells whether the reading OHMS is what the maker of the sensor allows at TEMP, once the "
         "errors of meter, leads and thermometer are counted. Within, outside, or undecided: a "
         "measurement too coarse to decide condemns nothing.\n"
         "Measure at the sensor's own pins with its plug off.",
         OPTIONS(check_options)},
    [OHM_VERB_DEGREES] =
        {"degrees", "SENSOR [OHMS...]", 1, SIZE_MAX, "temperatures from resistances",
         "Converts each resistance to the temperature it means on the nominal curve. Nothing is "
         "taken off for the leads.\n" FROM_INPUT,
         OPTIONS(convert_options)},
    [OHM_VERB_OHMS] = {"ohms", "SENSOR [TEMP...]", 1, SIZE_MAX, "resistances from temperatures",
                       "Converts each temperature to the nominal resistance.\n" FROM_INPUT,
                       OPTIONS(convert_options)},
    [OHM_VERB_PARTS] =
        {"parts", "", 0, 0, "list the sensors built in",
         "Lists each with its name, what it is, the range of its curve, and where the "
         "figures were printed.",
         OPTIONS(parts_options)},
    [OHM_VERB_TABLE] =
        {"table", "SENSOR", 1, 1, "print the table of a sensor",
         "Prints temperature, least resistance allowed, nominal, and greatest allowed. A "
         "- stands where the maker printed no limit.",
         OPTIONS(table_options)},
    [OHM_VERB_HELP] = {"help", "[VERB]", 0, 1, "explain a verb",
                       "The same as ohmcurve VERB --help; without a verb, ohmcurve --help.",
                       OPTIONS(help_options)},
};

const struct ohm_entry ohm_notations[] = {
    {"SENSOR",
     "a name that 'ohmcurve parts' lists, or a sensor file: a name with a / in it, one that ends "
     "in .csv, or any file that exists"},
    {"OHMS",
     "a resistance as the display showed it, all its digits: 2310, 2.31k, 2k31, '2.31 kohm', "
     "0R47. For check also OL (over-range), or open when the highest range shows no number"},
    {"TEMP", "a temperature with its unit: 21.5C, -10C, 70F, 294.7K"},
    {"SPEC",
     "0.8%+3 is percent of reading plus counts of the last digit; 0.8%+3x10 says that a count is "
     "10 ohm, 0.8%+3@2000 that the display has 2000 counts; @2000 alone, or exact"},
    {NULL, NULL},
};

const struct ohm_entry ohm_exits[] = {
    {"0", "done; of check: within what is allowed"},
    {"1", "of check: outside what is allowed"},
    {"2", "of check: undecided"},
    {"64", "the command line cannot be understood"},
    {"65", "a value or the content of a file cannot be used"},
    {"66", "no such sensor, or a file or standard input cannot be read"},
    {"71", "the system gave no memory"},
    {"74", "the output could not be written whole"},
    {NULL, NULL},
};

const struct ohm_verb *ohm_verb_find(const char *name) {
  for (size_t i = 0; i < OHM_VERB_COUNT; i++)
    if (strcmp(ohm_verbs[i].name, name) == 0)
      return &ohm_verbs[i];
  return NULL;
}

const struct ohm_option *ohm_option_find(const struct ohm_verb *verb, const char *name,
                                         size_t length) {
  for (size_t i = 0; i < verb->option_count; i++) {
    const char *known = verb->options[i].name;
    if (strlen(known) == length && memcmp(known, name, length) == 0)
      return &verb->options[i];
  }
  return NULL;
}
