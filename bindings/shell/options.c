/* SPDX-License-Identifier: MIT */
#include "options.h"

#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <ohmcurve.h>

#define COUNT(array) (sizeof(array) / sizeof((array)[0]))

const char shell_program_summary[] =
    "judges a temperature sensor by its resistance, and converts both ways";

#define JSON(what)                                                                                 \
  { SHELL_OPTION_JSON, "--json", NULL, "write " what ", one JSON object a line", NULL }
#define HELP                                                                                       \
  { SHELL_OPTION_HELP, "--help", NULL, "explain this verb and do nothing else", NULL }

/* ---- options that are no settings ---- */

static const struct shell_option check_options[] = {
    {SHELL_OPTION_BUDGET, "--budget", NULL,
     "after the report, what each cause adds to the doubt, to be worked out again by hand; --json "
     "holds these figures anyway",
     NULL},
    JSON("a finding on each reading, then the finding of them all"),
    HELP,
};

static const struct shell_option identify_options[] = {
    {SHELL_OPTION_SENSOR, "--sensor", "SENSOR",
     "compare with this one too, such as a sensor file; may be written several times",
     "with the sensors built in"},
    {SHELL_OPTION_PINS, "--pins", NULL,
     "OHMS are pairs of pins and what was read across each: 1-2=2.31k 1-3=OL 2-body=480, pins 1 to "
     "9 or A to H, body, and minus for battery negative; tells which pair is the module's element, "
     "which the gauge's and which was the wrong one",
     NULL},
    JSON("each sensor that was compared, the likeliest first, then what they come to"),
    HELP,
};

static const struct shell_option explain_options[] = {
    JSON("every explanation, then what they come to"),
    HELP,
};

static const struct shell_option soak_options[] = {
    {SHELL_OPTION_HISTORY, "--history", "FILE",
     "what the air did, CSV: hours (after the stop), minutes or time (of a clock, with a line # "
     "stopped: 21:40), and temp_c or temp_f",
     "the air never changed"},
    JSON("the finding"),
    HELP,
};

static const struct shell_option convert_options[] = {JSON("r_ohm and t_c"), HELP};

static const struct shell_option parts_options[] = {
    {SHELL_OPTION_NEAR, "--near", "OHMS@TEMP",
     "only those that read about this much there, as in 2.3k@20C: within what is allowed, or "
     "within "
     "a tenth where no limit is printed",
     "all of them"},
    JSON("name, description, range, source and bands"),
    HELP};

static const struct shell_option table_options[] = {
    {SHELL_OPTION_FROM, "--from", "TEMP", "lowest temperature; the rows are counted from it",
     "the lower end of the curve, then multiples of the step"},
    {SHELL_OPTION_TO, "--to", "TEMP", "highest temperature; always the last row",
     "the upper end of the curve"},
    {SHELL_OPTION_STEP, "--step", "DEGREES", "from one row to the next, in Celsius degrees", "10"},
    {SHELL_OPTION_BAND, "--band", "NAME",
     "the maker's band to print, one that 'ohmcurve parts' shows for the sensor",
     "of each row the widest"},
    JSON("the rows"),
    HELP,
};

static const struct shell_option chart_options[] = {
    {SHELL_OPTION_OUTPUT, "-o", "FILE", "where to write the picture, an SVG file",
     "standard output"},
    {SHELL_OPTION_FAN, "--fan", "TEMP", "mark where the fan is to start, and the resistance there",
     "no mark"},
    HELP,
};

static const struct shell_option audit_options[] = {JSON("what is suspect"), HELP};

static const struct shell_option fit_options[] = {
    {SHELL_OPTION_MODEL, "--model", "MODEL", "beta, steinhart-hart or four-term",
     "beta for points at two temperatures, steinhart-hart for more"},
    {SHELL_OPTION_FROM, "--from", "TEMP", "lowest temperature the curve is to reach",
     "that of the coldest point"},
    {SHELL_OPTION_TO, "--to", "TEMP", "highest temperature the curve is to reach",
     "that of the hottest point"},
    {SHELL_OPTION_AT, "--at", "OHMS",
     "after the fit, the temperature it means by OHMS, and what the points leave open of it; "
     "several with commas between them: 2.31k,330",
     NULL},
    {SHELL_OPTION_OUTPUT, "-o", "FILE",
     "write the curve as a sensor file too, with what is known of its coefficients; - for standard "
     "output, in place of all else",
     "no file"},
    {SHELL_OPTION_NAME, "--name", "NAME", "of the sensor in FILE", "after FILE"},
    JSON("the fit"),
    HELP,
};

static const struct shell_option circuit_options[] = {
    {SHELL_OPTION_SAW, "--saw", "NAME=OUTCOME",
     "what was seen, as behind the name of the circuit; may be written several times",
     "nothing yet"},
    {SHELL_OPTION_RECORD, "--record", "FILE",
     "go on from what FILE says was seen, and keep there what is added; a line each of "
     "NAME=OUTCOME",
     "nothing is kept"},
    {SHELL_OPTION_PRINT, "--print", NULL,
     "write the circuit as a circuit file and do nothing else, to make one of your own of it",
     NULL},
    JSON("the finding, or the circuits there are"),
    HELP,
};

static const struct shell_option signal_options[] = {JSON("the finding"), HELP};
static const struct shell_option substitute_options[] = {
    JSON("one resistor, then the pair, then the finding"), HELP};
static const struct shell_option fanpoint_options[] = {JSON("the finding"), HELP};
static const struct shell_option expect_options[] = {JSON("the finding"), HELP};
static const struct shell_option help_options[] = {HELP};

const struct shell_option shell_program_options[2] = {
    {SHELL_OPTION_HELP, "--help", NULL, "list the verbs; after a verb, explain that verb", NULL},
    {SHELL_OPTION_VERSION, "--version", NULL,
     "the versions of the library and of the sensor tables built into it", NULL},
};

/* ---- the verbs ---- */

/* Each is the file of its name. */
shell_verb_run shell_check_run, shell_identify_run, shell_explain_run, shell_soak_run,
    shell_degrees_run, shell_ohms_run, shell_parts_run, shell_table_run, shell_chart_run,
    shell_audit_run, shell_fit_run, shell_circuit_run, shell_signal_run, shell_substitute_run,
    shell_fanpoint_run, shell_expect_run, shell_help_run;

#define OWN(list) list, COUNT(list)
#define FROM_INPUT                                                                                 \
  "Without values, standard input is read, a value a line; blank lines and lines that begin with " \
  "# are skipped. A value that cannot be converted is reported on standard error, the others "     \
  "still are converted, and the exit status is 65."

const struct shell_verb shell_verbs[] = {
    {"check", shell_check_run, "SENSOR OHMS...", 2, SIZE_MAX, "ntc-2k45-20c 2.31k --at 21.5C",
     "judge a sensor that lies at a known temperature",
     "Tells whether OHMS is what the maker of the sensor allows at the temperature it really "
     "has, once the errors of meter, leads and thermometer are counted; and whether such a "
     "sensor is good enough for the fan, with all that could still hide in it. Good, bad, or "
     "cannot tell yet: a measurement too coarse to decide condemns nothing.\n"
     "Several readings are judged together. Each may carry its temperature behind an @: "
     "2.31k@21.5C 330@80C. Readings in a row at one temperature are the same one repeated: "
     "the last counts, once it stands still.\n"
     "The exit status is the verdict on the part; that for the fan is the key job of --json. "
     "--json writes a line for each reading, in their order, and a last line of all together, "
     "whose readings is how many they were.\n"
     "Measure at the sensor's own pins with its plug off.",
     SHELL_ASKS(OHM_VERB_CHECK), OWN(check_options)},
    {"expect", shell_expect_run, "SENSOR", 1, 1, "ntc-2k45-20c --at 21.5C --meter 0.8%+3",
     "what a good sensor shows, before it is measured",
     "Tells what it should read at the temperature --at, what is allowed there, and which "
     "displays would be called good with your meter and thermometer; or how well the "
     "temperature has to be known for any to be.\n"
     "The exit status is 0: nothing was measured.",
     SHELL_ASKS(OHM_VERB_EXPECT), OWN(expect_options)},
    {"identify", shell_identify_run, "OHMS...", 1, SIZE_MAX, "2.31k@21.5C 330@80C",
     "tell which sensor readings were taken of",
     "Compares readings at known temperatures with every sensor built in, and says which go "
     "with them, how probable each of these is, and where a further reading tells them apart. "
     "That none of them goes with the readings is an answer too.\n"
     "A sensor leads when it fits and no other that fits is ten times as probable. What was "
     "identified by readings is not checked by the same readings: a sensor that fits may be "
     "one of another kind that went bad.\n"
     "Each reading may carry its temperature behind an @: 2.31k@21.5C 330@80C. With --pins, a "
     "body of several pins is taken apart by what every pair of them reads.\n"
     "The exit status is 0 when it is found, also when no reading tells apart those it may "
     "be, 1 when none goes with the readings, 2 when it cannot be told yet.",
     SHELL_ASKS(OHM_VERB_IDENTIFY) | SHELL_ASKS(OHM_VERB_PINS), OWN(identify_options)},
    {"explain", shell_explain_run, "SENSOR OHMS...", 2, SIZE_MAX,
     "ntc-2k45-20c 2.31k@21.5C 412@80C", "say what would explain the readings of a sensor",
     "Asks of every fault how large it would have to be for the readings to go together: "
     "resistance in series, leakage across, drift of the resistance, a curve too steep or too "
     "flat, another sensor of those built in, the plug left on, a range or degrees misread, open, "
     "short; "
     "or a healthy sensor. Each that would do is written with its size and with what it makes "
     "of the fan.\n"
     "One reading goes with almost any fault. Where several would do, a temperature is named "
     "at which a further reading tells them apart, and what each would read there.\n"
     "The exit status is 0 when the readings go with a healthy sensor alone, 1 when they "
     "do not, 2 when that is undecided. --json writes a line each, and a last line of what "
     "they come to.",
     SHELL_ASKS(OHM_VERB_EXPLAIN), OWN(explain_options)},
    {"soak", shell_soak_run, "SENSOR OHMS [NAME=TEMP...]", 2, SIZE_MAX,
     "ntc-2k45-20c 3.9k intake=10.5C --air 9C+-2 --after 7h --stop 92C",
     "judge a coolant sensor in the car, after it stood",
     "Tells whether OHMS is what the coolant can have come to since the engine was stopped. "
     "Colder than that is bad. Warmer is undecided until sun, a block heater, a warm garage "
     "and "
     "moving are excluded with --undisturbed. The report says how much too cold would not have "
     "shown, and after how many hours a sound sensor would pass.\n"
     "Other sensors of the car, intake=10.5C, oil=9C or ambient=9C+-1, are held against each "
     "other, whatever the air was: one is named when the others agree without it; of two, none "
     "is.\n"
     "The exit status is the verdict.",
     SHELL_ASKS(OHM_VERB_SOAK), OWN(soak_options)},
    {"degrees", shell_degrees_run, "SENSOR [OHMS...]", 1, SIZE_MAX, "ntc-2k45-20c 2.31k",
     "temperatures from resistances",
     "Converts each resistance to the temperature it means on the nominal curve. Nothing is "
     "taken off for the leads.\n" FROM_INPUT,
     0, OWN(convert_options)},
    {"ohms", shell_ohms_run, "SENSOR [TEMP...]", 1, SIZE_MAX, "ntc-2k45-20c 21.5C",
     "resistances from temperatures",
     "Converts each temperature to the nominal resistance.\n" FROM_INPUT, 0, OWN(convert_options)},
    {"parts", shell_parts_run, "[WORDS...]", 0, SIZE_MAX, "mazda bt-50",
     "list the sensors built in",
     "Lists each with its name, what it is, the range of its curve, where the figures were "
     "printed, and the bands that makers allow it. With words (maker, model, year, engine), "
     "only those whose description and sources hold every one of them, and with the source of "
     "each band.",
     0, OWN(parts_options)},
    {"table", shell_table_run, "SENSOR", 1, 1, "ntc-2k45-20c --step 5",
     "print the table of a sensor",
     "Prints temperature, least resistance allowed, nominal, and greatest allowed. A "
     "- stands where the maker printed no limit.",
     0, OWN(table_options)},
    {"chart", shell_chart_run, "SENSOR [OHMS@TEMP...]", 1, SIZE_MAX,
     "ntc-2k45-20c 2.31k@21.5C -o chart.svg", "draw a sensor as a picture",
     "Draws resistance against temperature: the nominal curve, what is allowed, the rows as "
     "printed, and your readings, each as wide and as high as it is sure. To be pinned over "
     "the bench, or looked at in any browser.",
     SHELL_ASKS(OHM_VERB_MEASURE), OWN(chart_options)},
    {"audit", shell_audit_run, "FILE...", 1, SIZE_MAX, "sensor.csv",
     "look for misprints in a sensor table",
     "Says which rows of a printed table cannot be believed, and why: out of order, off the "
     "line of the others, a digit lost, added or exchanged, degrees C and F that disagree, "
     "volts that fit no one resistor. What would fit is told and never put in. The exit status "
     "is 0 when nothing is suspect, 1 when something is.",
     0, OWN(audit_options)},
    {"fit", shell_fit_run, "[OHMS@TEMP...]", 0, SIZE_MAX, "5.79k@0C 2.45k@20C 322@80C -o mine.csv",
     "a curve through points you have",
     "Finds the coefficients of a curve from resistances at known temperatures, and says how "
     "well they are known, how far each point lies from the curve, and whether the points "
     "agree. With as many points as coefficients the curve goes through all of them; with more "
     "it keeps as near to them as they deserve.\n"
     "Either figure of a point may carry its limit: 2.45k+-12@20C+-0.1, or 2.45k+-0.5%@20C; a "
     "limit in ohm, in percent, or in the unit of the temperature. Give limits to all points "
     "or "
     "to none. A limit is taken as rectangular: its standard uncertainty is the limit over the "
     "square root of 3.\n"
     "FILE is a SENSOR of every verb: ohmcurve degrees mine.csv 2.31k.\n"
     "Without points, standard input is read, a point a line; blank lines and lines that begin "
     "with # are skipped. A point that cannot be read is reported on standard error; the "
     "others "
     "still are fitted and shown, FILE is not written, and the exit status is 65.",
     0, OWN(fit_options)},
    {"circuit", shell_circuit_run, "[CIRCUIT [NAME=OUTCOME...]]", 0, SIZE_MAX,
     "radiator-switch starts=bad", "find which part of a fan circuit is bad",
     "Tells what to test next, with its caution before it, and ends with what to buy, what to "
     "repair, what to measure again after that, or that there is nothing to buy. Without "
     "CIRCUIT it lists those built in.\n"
     "On a terminal and without an outcome it is a conversation: answer each test with a number, "
     "good, bad or skip; back takes the last answer out, why says what a test is for, none "
     "TOOL that you have not got it, stop leaves. Nothing is lost where the input ends.\n"
     "Good clears links for certain, bad accuses one of several; a part is condemned when a "
     "bad test leaves nothing else. The case is closed when the fan has started by itself.\n"
     "The exit status is the verdict: 0 the fan has started by itself, 1 a part is at fault, 2 "
     "cannot tell yet.",
     SHELL_ASKS(OHM_VERB_CIRCUIT), OWN(circuit_options)},
    {"signal", shell_signal_run, "SENSOR READING...", 2, SIZE_MAX,
     "ntc-2k45-20c 187 0.97V 91C --pull-up 1k",
     "find where the way from the sensor to what the module reports parts",
     "Give any two or three of ohms at the sensor, 187, volts at the module's pin, 0.97V, and "
     "degrees it reports, 91C, all at about the same temperature, and that of a thermometer "
     "with --at if there is one. Each is turned into the resistance it means; which of them "
     "agree says whether it is the sensor, ohms in plug or wire, a path across it, the ground "
     "the volts were read from, the pull-up or the module; and at what true temperature the "
     "fan then starts.\n"
     "Ohms with the key off and the plug off; volts with the plug on and the key on, from "
     "behind the plug.\n"
     "In --json r_ohm and t_c are as seen from the volts. The exit status is 0 when they "
     "agree, "
     "1 when they part, 2 when it cannot be told.",
     SHELL_ASKS(OHM_VERB_SIGNAL), OWN(signal_options)},
    {"substitute", shell_substitute_run, "SENSOR [TEMP | OHMS@TEMP OHMS@TEMP]", 1, 3,
     "ntc-2k45-20c 105C --pull-up 1k",
     "ordinary resistors in the sensor's place, to ask for the fan",
     "Key off to fit it, blades clear, one minute at most with the engine running, and a "
     "matching terminal, never a lead pushed into the socket.\n"
     "Finds the resistor, and the pair, with which the module sees TEMP, the same as --aim "
     "TEMP. Tells what it sees with the resistor's tolerance, what the resistor bears, and "
     "whether it would look open or shorted. The exit status is 0 when one resistor asks for "
     "the fan, 1 when it does not, 2 when that depends on its tolerance.\n"
     "With two of them fitted in turn, OHMS as measured and TEMP as the module reported it, it "
     "tells the ohms in plug and wires without any sensor: 179.4@93C 998@42C. Then the exit "
     "status is 0 when they leave the fan in time, 1 when not, 2 when it cannot be told.",
     SHELL_ASKS(OHM_VERB_SUBSTITUTE) | SHELL_ASKS(OHM_VERB_LOOM), OWN(substitute_options)},
    {"fanpoint", shell_fanpoint_run, "SENSOR", 1, 1,
     "ntc-2k45-20c --fan 98C --off 93C --pull-up 1k",
     "ohms and volts where the fan starts and stops",
     "Tells the ohms to expect there, with --pull-up the volts too, what a degree is worth, and "
     "at which true temperatures the fan starts and stops with ohms hidden in plug or wire.",
     SHELL_ASKS(OHM_VERB_FANPOINT), OWN(fanpoint_options)},
    {"help", shell_help_run, "[VERB]", 0, 1, "check", "explain a verb",
     "The same as ohmcurve VERB --help; without a verb, ohmcurve --help.", 0, OWN(help_options)},
};

const size_t shell_verb_count = COUNT(shell_verbs);

/* What a word of a setting means, from the library's lists. */
#define WORD(number, constant, word, meaning) {#word, meaning},
static const struct shell_entry places[] = {OHM_PLACES(WORD){NULL, NULL}};
static const struct shell_entry negatives[] = {OHM_NEGATIVES(WORD){NULL, NULL}};
#undef WORD

const struct shell_entry shell_notations[] = {
    {"SENSOR",
     "a name that 'ohmcurve parts' lists; a sensor file: a name with a / in it, one that ends in "
     ".csv, or any file that exists; or, in quotes, words that fit one sensor alone: 'mazda bt-50 "
     "2021'"},
    {"CIRCUIT", "a name that 'ohmcurve circuit' lists, or a circuit file: a name with a / in it, "
                "one that ends "
                "in .csv, or any file that exists"},
    {"NAME=OUTCOME",
     "a test and good, bad, skip or the number that was read: fuse-look=good, battery-volts=12.4, "
     "fuse-mv=12mV@ATO30; a link that was renewed: fuse=renewed; a tool you have not got: "
     "clamp=none; a fact the maker states: ac-runs-fan=yes"},
    {"READING",
     "187 ohms at the sensor's own pins; 0.97V or 970mV at the module's pin, 0.97V,body with the "
     "negative lead on the body; 91C or 196F as a scan tool or a gauge with figures shows"},
    {"NAME=TEMP", "another sensor of the car and what it shows: intake, oil or ambient"},
    {"OHMS",
     "a resistance as the display showed it, all its digits: 2310, 2.31k, 2k31, '2.31 kohm', "
     "0R47"},
    {"TEMP", "a temperature with its unit: 21.5C, -10C, 70F, 294.7K"},
    {"SPEC",
     "0.8%+3 is percent of reading plus counts of the last digit; 0.8%+3x10 says that a count is "
     "10 ohm, 0.8%+3@2000 that the display has 2000 counts; @2000 alone, or exact"},
    {NULL, NULL},
};

const struct shell_entry shell_reading_notations[] = {
    {"OL", "as OHMS: over range, on a range not told"},
    {"OL@20k", "as OHMS: over range on the 20 k range; also '>20k', in quotes"},
    {"open", "as OHMS: no number on the highest range either"},
    {"1",
     "as OHMS: a lone 1, over range on many displays; 1 ohm that was displayed as such is 1.0"},
    {"2.31k,sensor", "as OHMS: where the probes were: sensor, plug_on or module"},
    {"21.5C", "as TEMP: a thermometer beside the sensor"},
    {"ice", "as TEMP: crushed ice and water, stirred, 0 C"},
    {"boil", "as TEMP: boiling water, near sea level"},
    {"boil@1200m", "as TEMP: boiling water at that altitude, m or ft"},
    {"boil@870hPa",
     "as TEMP: boiling water with a barometer beside the pot; a pressure given with an altitude is "
     "refused, for such a one was reduced to sea level"},
    {"infrared@80C", "as TEMP: an infrared thermometer aimed at the sensor"},
    {"21.5C+-0.5", "as TEMP: any of them, good to what stands behind +-"},
    {"unknown", "as SENSOR of check: which it is, as identify says"},
    {NULL, NULL},
};

const struct shell_entry shell_exits[] = {
    {"0", "done; of a verdict: within what is allowed; of audit: nothing is suspect; of identify: "
          "found"},
    {"1", "of a verdict: outside what is allowed; of audit: something is suspect; of circuit: a "
          "part is at fault; of identify: none goes with the readings"},
    {"2", "of a verdict: undecided, or the sensor is unknown"},
    {"64", "the command line cannot be understood"},
    {"65", "a value or the content of a file cannot be used"},
    {"66", "no such sensor, or a file or standard input cannot be read"},
    {"71", "the system gave no memory"},
    {"74", "the output could not be written whole"},
    {NULL, NULL},
};

/* ---- verbs and what they take ---- */

const struct shell_verb *shell_verb_find(const char *name) {
  for (size_t i = 0; i < shell_verb_count; i++)
    if (strcmp(shell_verbs[i].name, name) == 0)
      return &shell_verbs[i];
  return NULL;
}

bool shell_verb_judges(const struct shell_verb *verb) {
  static const unsigned tell =
      SHELL_ASKS(OHM_VERB_MEASURE) | SHELL_ASKS(OHM_VERB_FANPOINT) | SHELL_ASKS(OHM_VERB_EXPECT);
  return (verb->asks & ~tell) != 0;
}

bool shell_verb_reads(const struct shell_verb *verb) {
  return shell_verb_judges(verb) && (verb->asks & SHELL_ASKS(OHM_VERB_CIRCUIT)) == 0;
}

bool shell_verb_takes(const struct shell_verb *verb, const char *word) {
  struct shell_option option;
  if (strstr(verb->operands, word))
    return true;
  for (size_t i = 0; shell_option_at(verb, i, &option); i++)
    if (option.argument && strcmp(option.argument, word) == 0)
      return true;
  return false;
}

/* ---- options that are settings ---- */

void shell_option_name(int setting, char name[SHELL_OPTION_NAME_SIZE]) {
  static const char *const units[] = {"_c", "_k", "_ma", "_ohm", "_volt", "_h", "_percent"};
  const char *whole = ohm_setting_name(setting);
  size_t length = strlen(whole);
  for (size_t i = 0; i < COUNT(units); i++) {
    size_t unit = strlen(units[i]);
    if (length > unit && strcmp(whole + length - unit, units[i]) == 0) {
      length -= unit;
      break;
    }
  }
  snprintf(name, SHELL_OPTION_NAME_SIZE, "--%.*s", (int)length, whole);
  for (char *at = name; *at; at++)
    *at = *at == '_' ? '-' : *at;
}

/* The word for its value; NULL of a flag. */
static const char *argument_of(int setting) {
  static const char *const words[] = {[OHM_SETTING_KIND_PROBABILITY] = "P",
                                      [OHM_SETTING_KIND_TEMPERATURE] = "TEMP",
                                      [OHM_SETTING_KIND_DIFFERENCE] = "DEGREES",
                                      [OHM_SETTING_KIND_PERCENT] = "PERCENT",
                                      [OHM_SETTING_KIND_RESISTANCE] = "OHMS",
                                      [OHM_SETTING_KIND_CURRENT] = "CURRENT",
                                      [OHM_SETTING_KIND_HOURS] = "HOURS",
                                      [OHM_SETTING_KIND_VOLTS] = "VOLTS",
                                      [OHM_SETTING_KIND_FLAG] = NULL,
                                      [OHM_SETTING_KIND_TEXT] = "NAME",
                                      [OHM_SETTING_KIND_PLACE] = "PLACE",
                                      [OHM_SETTING_KIND_NEGATIVE] = "LEAD",
                                      [OHM_SETTING_KIND_RANGE] = "RANGE",
                                      [OHM_SETTING_KIND_MOVES] = "ANSWER",
                                      [OHM_SETTING_KIND_ROUNDING] = "HOW",
                                      [OHM_SETTING_KIND_SERIES] = "SERIES",
                                      [OHM_SETTING_KIND_REFERENCE] = "TEMP",
                                      [OHM_SETTING_KIND_METER] = "SPEC",
                                      [OHM_SETTING_KIND_LEADS] = "OHMS",
                                      [OHM_SETTING_KIND_AIR] = "TEMP",
                                      [OHM_SETTING_KIND_STOP] = "TEMP",
                                      [OHM_SETTING_KIND_TAU] = "HOURS-HOURS",
                                      [OHM_SETTING_KIND_PULL_UP] = "OHMS",
                                      [OHM_SETTING_KIND_SUPPLY] = "VOLTS",
                                      [OHM_SETTING_KIND_DRAWER] = "OHMS"};
  size_t kind = (size_t)ohm_setting_kind_of(setting);
  return kind < COUNT(words) ? words[kind] : "VALUE";
}

static bool is_asked(const struct shell_verb *verb, int setting) {
  for (int bit = 0; verb->asks >> bit; bit++)
    if ((verb->asks >> bit & 1) && ohm_setting_is_of(setting, (ohm_verb)bit))
      return true;
  return false;
}

static void take_setting(int place, struct shell_option *option) {
  int setting = ohm_setting_at((size_t)place);
  *option = (struct shell_option){.id = SHELL_OPTION_SETTING + place,
                                  .argument = argument_of(setting),
                                  .meaning = ohm_setting_meaning(setting)};
  if (option->argument)
    option->fallback = ohm_setting_default(setting);
  shell_option_name(setting, option->name);
}

bool shell_option_at(const struct shell_verb *verb, size_t index, struct shell_option *option) {
  size_t seen = 0;
  for (int place = 0; place < SHELL_OPTION_COUNT - SHELL_OPTION_SETTING; place++) {
    int setting = ohm_setting_at((size_t)place);
    if (setting == 0 || !is_asked(verb, setting) || seen++ < index)
      continue;
    take_setting(place, option);
    return true;
  }
  if (index - seen >= verb->own_count)
    return false;
  *option = verb->own[index - seen];
  return true;
}

bool shell_option_find(const struct shell_verb *verb, const char *name, size_t length,
                       struct shell_option *option) {
  for (size_t i = 0; shell_option_at(verb, i, option); i++)
    if (strlen(option->name) == length && memcmp(option->name, name, length) == 0)
      return true;
  return false;
}

/* The words it may be, each with its meaning; the first is what was not told. */
static void add_words(char text[SHELL_OPTION_TEXT_SIZE], shell_entries words) {
  for (shell_entries entry = words + 1; entry->word; entry++) {
    size_t length = strlen(text);
    snprintf(text + length, SHELL_OPTION_TEXT_SIZE - length, "%s%s (%s)",
             entry == words + 1 ? ": " : ", ", entry->word, entry->meaning);
  }
}

void shell_option_explain(const struct shell_option *option, char text[SHELL_OPTION_TEXT_SIZE]) {
  int setting = option->id < SHELL_OPTION_SETTING
                    ? 0
                    : ohm_setting_at((size_t)(option->id - SHELL_OPTION_SETTING));
  int kind = ohm_setting_kind_of(setting);
  snprintf(text, SHELL_OPTION_TEXT_SIZE, "%s", option->meaning);
  if (setting == 0 || kind == OHM_SETTING_KIND_FLAG)
    return;
  if (kind == OHM_SETTING_KIND_PLACE || kind == OHM_SETTING_KIND_NEGATIVE) {
    add_words(text, kind == OHM_SETTING_KIND_PLACE ? places : negatives);
    return;
  }
  char allowed[200];
  size_t length = strlen(text);
  bool words = OHM_SETTING_KIND_RANGE <= kind && kind <= OHM_SETTING_KIND_SERIES;
  ohm_setting_allowed(setting, allowed, sizeof allowed);
  snprintf(text + length, SHELL_OPTION_TEXT_SIZE - length, ": %s%s%s", allowed,
           words ? "" : ", such as ", words ? "" : ohm_setting_example(setting));
}

/* ---- references ---- */

/* What is assumed of a reference is asked of a check that says nothing else. */
static double limit_of(const char *reference) {
  char reading[SHELL_OPTION_NAME_SIZE];
  double limit_k = NAN;
  ohm_sensor *sensor = ohm_sensor_built_in_load(ohm_sensor_built_in_name(0), NULL);
  ohm_bench *bench = ohm_bench_new(NULL);
  ohm_bench_use_sensor(bench, sensor);
  snprintf(reading, sizeof reading, "open@%s", reference);
  if (ohm_bench_read(bench, reading, NULL, NULL) == OHM_OK) {
    ohm_answer *answer = ohm_bench_check(bench, NULL);
    limit_k = ohm_finding_number(ohm_answer_finding(answer), OHM_FIELD_REFERENCE_LIMIT_K);
    ohm_answer_free(answer);
  }
  ohm_bench_free(bench);
  ohm_sensor_free(sensor);
  return limit_k;
}

void shell_notation_explain(const struct shell_entry *entry, char text[SHELL_OPTION_TEXT_SIZE]) {
  bool is_reference = strncmp(entry->meaning, "as TEMP", strlen("as TEMP")) == 0;
  double limit_k = is_reference && !strstr(entry->word, "+-") ? limit_of(entry->word) : NAN;
  snprintf(text, SHELL_OPTION_TEXT_SIZE, "%s", entry->meaning);
  if (isnan(limit_k))
    return;
  char number[OHM_NUMBER_SIZE];
  size_t length = strlen(text);
  ohm_number_print(limit_k, number, sizeof number);
  snprintf(text + length, SHELL_OPTION_TEXT_SIZE - length, "; give or take %s", number);
}
