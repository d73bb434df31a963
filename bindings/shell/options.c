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
  { OHM_OPTION_JSON, "--json", NULL, "write " what ", one JSON object a line", NULL }
#define HELP                                                                                       \
  { OHM_OPTION_HELP, "--help", NULL, "explain this verb and do nothing else", NULL }

/* Rows that several verbs have. */
#define AT                                                                                         \
  {                                                                                                \
    OHM_OPTION_AT, "--at", "TEMP",                                                                 \
        "the temperature the sensor really has, for every reading that carries none of its own",   \
        "each carries its own"                                                                     \
  }
#define PLACE                                                                                      \
  {                                                                                                \
    OHM_OPTION_PLACE, "--place", "PLACE",                                                          \
        "where the probes were: sensor, at its own pins with the plug off; plug-on, "              \
        "back-probed with the plug on; or module, at the module's end of the wires, module "       \
        "unplugged, sensor plugged in",                                                            \
        "not told, and the report says what that leaves open"                                      \
  }
#define FAN                                                                                        \
  {                                                                                                \
    OHM_OPTION_FAN, "--fan", "TEMP", "the temperature at which the fan is to start",               \
        TEXT(OHM_ASSUMED_FAN_C) "C"                                                                \
  }
#define LIMIT                                                                                      \
  {                                                                                                \
    OHM_OPTION_LIMIT, "--limit", "DEGREES",                                                        \
        "how late or early the fan may start, in Celsius degrees: 5, 5K or 5C",                    \
        TEXT(OHM_ASSUMED_FAN_LIMIT_K)                                                              \
  }
#define BAND                                                                                       \
  {                                                                                                \
    OHM_OPTION_BAND, "--band", "NAME",                                                             \
        "the maker's band to judge by, one that 'ohmcurve parts' shows for the sensor",            \
        "the widest of those printed for the temperature"                                          \
  }
#define TOLERANCE                                                                                  \
  {                                                                                                \
    OHM_OPTION_TOLERANCE, "--tolerance", "PERCENT",                                                \
        "what is allowed either side of nominal instead, percent of resistance: 5%",               \
        "what the makers printed"                                                                  \
  }
#define METER                                                                                      \
  {                                                                                                \
    OHM_OPTION_METER, "--meter", "SPEC", "what the maker of the ohmmeter states of its accuracy",  \
        TEXT(OHM_ASSUMED_METER_PERCENT) "%+" TEXT(OHM_ASSUMED_METER_COUNTS)                        \
  }
#define LEADS                                                                                      \
  {                                                                                                \
    OHM_OPTION_LEADS, "--leads", "OHMS",                                                           \
        "resistance of the leads, the reading with the probes held together: 0.4, or "             \
        "0.4+-0.1, or exact; it is taken off the reading",                                         \
        TEXT(OHM_ASSUMED_LEAD_OHM) "+-" TEXT(OHM_ASSUMED_LEAD_LIMIT_OHM)                           \
  }
#define CURRENT                                                                                    \
  {                                                                                                \
    OHM_OPTION_CURRENT, "--current", "CURRENT",                                                    \
        "what the ohmmeter sends through the sensor, 1mA or 100uA; it warms a sensor whose "       \
        "dissipation factor is known",                                                             \
        "up to " TEXT(OHM_ASSUMED_CURRENT_MA) "mA, less on higher ranges"                          \
  }
#define LEVEL                                                                                      \
  {                                                                                                \
    OHM_OPTION_LEVEL, "--level", "P",                                                              \
        "how probable a verdict must be before it is given, above 0.5 and below 1", "0.95"         \
  }

static const struct ohm_option check_options[] = {
    AT,
    PLACE,
    FAN,
    LIMIT,
    BAND,
    TOLERANCE,
    METER,
    LEADS,
    CURRENT,
    LEVEL,
    {OHM_OPTION_BUDGET, "--budget", NULL,
     "after the report, what each cause adds to the doubt, to be worked out again by hand; --json "
     "holds these figures anyway",
     NULL},
    JSON("the finding"),
    HELP,
};

static const struct ohm_option identify_options[] = {
    AT,
    {OHM_OPTION_SENSOR, "--sensor", "SENSOR",
     "compare with this one too, such as a sensor file; may be written several times",
     "with the sensors built in"},
    {OHM_OPTION_PINS, "--pins", NULL,
     "OHMS are pairs of pins and what was read across each: 1-2=2.31k 1-3=OL 2-body=480, pins 1 to "
     "9 or A to H, body, and minus for battery negative; tells which pair is the module's element, "
     "which the gauge's and which was the wrong one",
     NULL},
    FAN,
    TOLERANCE,
    METER,
    LEADS,
    CURRENT,
    LEVEL,
    JSON("each sensor that was compared, the likeliest first, then what they come to"),
    HELP,
};

static const struct ohm_option explain_options[] = {
    AT,    PLACE, FAN,     BAND,  TOLERANCE,
    METER, LEADS, CURRENT, LEVEL, JSON("every explanation, then what they come to"),
    HELP,
};

static const struct ohm_option soak_options[] = {
    {OHM_OPTION_AIR, "--air", "TEMP",
     "the air the car stood in, with a +- how far off it may be; with a history its +- alone "
     "counts, "
     "as common to all of it",
     "that of the history"},
    {OHM_OPTION_HOURS, "--hours", "HOURS", "how long ago the engine was stopped",
     "up to the last row of the history"},
    {OHM_OPTION_FROM, "--from", "TEMP", "temperature of the coolant when the engine was stopped",
     TEXT(OHM_ASSUMED_STOP_C) "C+-" TEXT(OHM_ASSUMED_STOP_LIMIT_K) "C"},
    {OHM_OPTION_HISTORY, "--history", "FILE",
     "what the air did, CSV: hours (after the stop), minutes or time (of a clock, with a line # "
     "stopped: 21:40), and temp_c or temp_f",
     "the air never changed"},
    {OHM_OPTION_EXTEND, "--extend", NULL,
     "after the last row of the history the air stayed as it was", "that is refused"},
    {OHM_OPTION_TAU, "--tau", "HOURS-HOURS",
     "time constant of the coolant, least and greatest, in which the difference to the air falls "
     "by 63 %; inferred from what makers print, not measured",
     TEXT(OHM_ASSUMED_COOLANT_TAU_LOW_H) "h-" TEXT(OHM_ASSUMED_COOLANT_TAU_HIGH_H) "h"},
    {OHM_OPTION_WITH, "--with", "LIST",
     "what other sensors of the car show, coolant, intake, oil or ambient, commas between: "
     "intake=10.5C,ambient=9C",
     NULL},
    {OHM_OPTION_UNDISTURBED, "--undisturbed", NULL,
     "no sun, block heater or warm garage, and the car was not moved",
     "a reading too warm stays undecided"},
    {OHM_OPTION_ALLOW, "--allow", "DEGREES",
     "how far the sensor may be off, in Celsius degrees; makers print 5.6 to 15",
     TEXT(OHM_ASSUMED_SOAK_ALLOW_K)},
    PLACE,
    FAN,
    METER,
    LEADS,
    CURRENT,
    LEVEL,
    JSON("the finding"),
    HELP,
};

static const struct ohm_option convert_options[] = {JSON("r_ohm and t_c"), HELP};

static const struct ohm_option parts_options[] = {
    {OHM_OPTION_NEAR, "--near", "OHMS@TEMP",
     "only those that read about this much there, as in 2.3k@20C: within what is allowed, or "
     "within "
     "a tenth where no limit is printed",
     "all of them"},
    JSON("name, description, range, source and bands"),
    HELP};

static const struct ohm_option table_options[] = {
    {OHM_OPTION_FROM, "--from", "TEMP", "lowest temperature; the rows are counted from it",
     "the lower end of the curve, then multiples of the step"},
    {OHM_OPTION_TO, "--to", "TEMP", "highest temperature; always the last row",
     "the upper end of the curve"},
    {OHM_OPTION_STEP, "--step", "DEGREES", "from one row to the next, in Celsius degrees", "10"},
    {OHM_OPTION_BAND, "--band", "NAME",
     "the maker's band to print, one that 'ohmcurve parts' shows for the sensor",
     "of each row the widest"},
    JSON("the rows"),
    HELP,
};

static const struct ohm_option chart_options[] = {
    {OHM_OPTION_OUTPUT, "-o", "FILE", "where to write the picture, an SVG file", "standard output"},
    {OHM_OPTION_FAN, "--fan", "TEMP", "mark where the fan is to start, and the resistance there",
     "no mark"},
    AT,
    METER,
    LEADS,
    HELP,
};

static const struct ohm_option audit_options[] = {JSON("what is suspect"), HELP};

static const struct ohm_option fit_options[] = {
    {OHM_OPTION_MODEL, "--model", "MODEL", "beta, steinhart-hart or four-term",
     "beta for points at two temperatures, steinhart-hart for more"},
    {OHM_OPTION_FROM, "--from", "TEMP", "lowest temperature the curve is to reach",
     "that of the coldest point"},
    {OHM_OPTION_TO, "--to", "TEMP", "highest temperature the curve is to reach",
     "that of the hottest point"},
    {OHM_OPTION_AT, "--at", "OHMS",
     "after the fit, the temperature it means by OHMS, and what the points leave open of it; "
     "several with commas between them: 2.31k,330",
     NULL},
    {OHM_OPTION_OUTPUT, "-o", "FILE",
     "write the curve as a sensor file too, with what is known of its coefficients; - for standard "
     "output, in place of all else",
     "no file"},
    {OHM_OPTION_NAME, "--name", "NAME", "of the sensor in FILE", "after FILE"},
    JSON("the fit"),
    HELP,
};

static const struct ohm_option circuit_options[] = {
    {OHM_OPTION_SAW, "--saw", "NAME=OUTCOME",
     "what was seen; may be written as often as there is something to say", "nothing yet"},
    {OHM_OPTION_RECORD, "--record", "FILE",
     "go on from what FILE says was seen, and keep there what is added; a line each of "
     "NAME=OUTCOME",
     "nothing is kept"},
    {OHM_OPTION_FAN, "--fan", "TEMP", "the temperature at which the fan is to start",
     "what the circuit says"},
    {OHM_OPTION_PRINT, "--print", NULL,
     "write the circuit as a circuit file and do nothing else, to make one of your own of it",
     NULL},
    JSON("the finding, or the circuits there are"),
    HELP,
};

#define PULLUP(without)                                                                            \
  {                                                                                                \
    OHM_OPTION_PULLUP, "--pullup", "PULLUP",                                                       \
        "the resistor in the module from the pin to its supply, of the car's wiring papers: 1k, "  \
        "1k+-1%, or two and where they change, 10k,1k@50C",                                        \
        without                                                                                    \
  }
#define REF                                                                                        \
  {                                                                                                \
    OHM_OPTION_REF, "--ref", "VOLTS",                                                              \
        "the supply of the pull-up, the volts at the open plug: 5V, or 5.02V+-0.01",               \
        TEXT(OHM_ASSUMED_SUPPLY_VOLT) "V+-" TEXT(OHM_ASSUMED_SUPPLY_PERCENT) "%"                   \
  }
#define WHOLE                                                                                      \
  {                                                                                                \
    OHM_OPTION_WHOLE, "--whole", "HOW", "how the module makes whole degrees: rounded, or cut off", \
        "either; write rounded or cut"                                                             \
  }

static const struct ohm_option signal_options[] = {
    {OHM_OPTION_OHMS, "--ohms", "OHMS", "ohms at the sensor's own pins, plug off, key off",
     "not taken"},
    {OHM_OPTION_VOLTS, "--volts", "VOLTS",
     "volts at the module's pin, plug on, key on: 0.97, 970mV, 0.97+-0.02", "not taken"},
    {OHM_OPTION_REPORTED, "--reported", "DEGREES",
     "what a scan tool or a gauge with figures shows: 91C, 196F, 91C+-2", "not taken"},
    {OHM_OPTION_AT, "--at", "TEMP", "what a thermometer beside the sensor says", "not taken"},
    PULLUP("needed with --volts"),
    REF,
    {OHM_OPTION_NEGATIVE, "--negative", "PLACE",
     "where the voltmeter's negative lead was: pin, the module's own pin for the sensor's ground; "
     "sensor, the ground terminal at the sensor; body, engine, body or battery",
     "not told, and it is asked where it matters"},
    {OHM_OPTION_RANGE, "--range", "RANGE", "which of two pull-ups was in use: cold or hot",
     "what the other readings say"},
    {OHM_OPTION_MOVES, "--moves", "ANSWER",
     "whether the reported value follows the engine: yes or no",
     "not told; what modules are known to make up is questioned"},
    WHOLE,
    {OHM_OPTION_OPEN, "--open", "VOLTS", "from here up the module sees no circuit",
     TEXT(OHM_ASSUMED_OPEN_SHARE) " of --ref"},
    {OHM_OPTION_SHORT, "--short", "VOLTS", "from here down it sees a short",
     TEXT(OHM_ASSUMED_SHORT_SHARE) " of --ref"},
    {OHM_OPTION_WITHIN, "--within", "DEGREES",
     "how far the sensor cooled or warmed between the readings", TEXT(OHM_ASSUMED_MOVED_LIMIT_K)},
    FAN,
    LIMIT,
    METER,
    LEADS,
    LEVEL,
    JSON("the finding"),
    HELP,
};

static const struct ohm_option substitute_options[] = {
    {OHM_OPTION_SERIES, "--series", "SERIES", "values to choose from: E12, E24 or E96", "E12"},
    {OHM_OPTION_DRAWER, "--drawer", "OHMS",
     "values at hand instead, each as often as it is there, with commas between: 100,220,330,1k",
     NULL},
    {OHM_OPTION_TOLERANCE, "--tolerance", "PERCENT", "of each resistor: 5%",
     TEXT(OHM_ASSUMED_RESISTOR_PERCENT) "%, of E96 " TEXT(OHM_ASSUMED_RESISTOR_E96_PERCENT) "%"},
    PULLUP("not known: no volts, and the limits that makers print in degrees"),
    REF,
    FAN,
    LIMIT,
    WHOLE,
    METER,
    LEADS,
    LEVEL,
    JSON("a finding for one resistor and one for two"),
    HELP,
};

static const struct ohm_option fanpoint_options[] = {
    {OHM_OPTION_ON, "--on", "TEMP", "where the fan starts", TEXT(OHM_ASSUMED_FAN_C) "C"},
    {OHM_OPTION_OFF, "--off", "TEMP", "where it stops", "not known"},
    PULLUP("not known: no volts"),
    REF,
    {OHM_OPTION_HIDDEN, "--hidden", "OHMS", "the ohms in plug or wire to ask about",
     TEXT(OHM_ASSUMED_HIDDEN_OHM)},
    JSON("the finding"),
    HELP,
};

static const struct ohm_option help_options[] = {HELP};

const struct ohm_option ohm_program_options[2] = {
    {OHM_OPTION_HELP, "--help", NULL, "list the verbs; after a verb, explain that verb", NULL},
    {OHM_OPTION_VERSION, "--version", NULL,
     "the versions of the library and of the sensor tables built into it", NULL},
};

#define OPTIONS(list) list, COUNT(list)
#define FROM_INPUT                                                                                 \
  "Without values, standard input is read, a value a line; blank lines and lines that begin with " \
  "# are skipped. A value that cannot be converted is reported on standard error, the others "     \
  "still are converted, and the exit status is 65."

const struct ohm_verb ohm_verbs[OHM_VERB_COUNT] = {
    [OHM_VERB_CHECK] =
        {"check", "SENSOR OHMS...", 2, SIZE_MAX, "ntc-2k45-20c 2.31k --at 21.5C",
         "judge a sensor that lies at a known temperature",
         "Tells whether OHMS is what the maker of the sensor allows at the temperature it really "
         "has, once the errors of meter, leads and thermometer are counted; and whether such a "
         "sensor is good enough for the fan, with all that could still hide in it. Good, bad, or "
         "cannot tell yet: a measurement too coarse to decide condemns nothing.\n"
         "Several readings are judged together. Each may carry its temperature behind an @: "
         "2.31k@21.5C 330@80C. Readings in a row at one temperature are the same one repeated: "
         "the last counts, once it stands still.\n"
         "The exit status is the verdict on the part; that for the fan is the key job of --json. "
         "Of several readings --json writes a line each, in their order, and a last line of all "
         "together, whose readings is how many they were.\n"
         "Measure at the sensor's own pins with its plug off.",
         OPTIONS(check_options)},
    [OHM_VERB_IDENTIFY] =
        {"identify", "OHMS...", 1, SIZE_MAX, "2.31k@21.5C 330@80C",
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
         OPTIONS(identify_options)},
    [OHM_VERB_EXPLAIN] =
        {"explain", "SENSOR OHMS...", 2, SIZE_MAX, "ntc-2k45-20c 2.31k@21.5C 412@80C",
         "say what would explain the readings of a sensor",
         "Asks of every fault how large it would have to be for the readings to go together: "
         "resistance in series, leakage across, drift of the resistance, a curve too steep or too "
         "flat, another sensor of those built in, the plug left on, a range misread, open, short; "
         "or a healthy sensor. Each that would do is written with its size and with what it makes "
         "of the fan.\n"
         "One reading goes with almost any fault. Where several would do, a temperature is named "
         "at which a further reading tells them apart, and what each would read there.\n"
         "The exit status is 0 when the readings go with a healthy sensor alone, 1 when they "
         "do not, 2 when that is undecided. --json writes a line each, and a last line of what "
         "they come to.",
         OPTIONS(explain_options)},
    [OHM_VERB_SOAK] =
        {"soak", "SENSOR OHMS", 2, 2, "ntc-2k45-20c 3.9k --air 9C+-2 --hours 7 --from 92C",
         "judge a coolant sensor in the car, after it stood",
         "Tells whether OHMS is what the coolant can have come to since the engine was stopped. "
         "Colder than that is bad. Warmer is undecided until sun, a block heater, a warm garage "
         "and "
         "moving are excluded with --undisturbed. The report says how much too cold would not have "
         "shown, and after how many hours a sound sensor would pass.\n"
         "Other sensors of the car are held against each other, whatever the air was: one is named "
         "when the others agree without it; of two, none is.\n"
         "The exit status is the verdict.",
         OPTIONS(soak_options)},
    [OHM_VERB_DEGREES] =
        {"degrees", "SENSOR [OHMS...]", 1, SIZE_MAX, "ntc-2k45-20c 2.31k",
         "temperatures from resistances",
         "Converts each resistance to the temperature it means on the nominal curve. Nothing is "
         "taken off for the leads.\n" FROM_INPUT,
         OPTIONS(convert_options)},
    [OHM_VERB_OHMS] = {"ohms", "SENSOR [TEMP...]", 1, SIZE_MAX, "ntc-2k45-20c 21.5C",
                       "resistances from temperatures",
                       "Converts each temperature to the nominal resistance.\n" FROM_INPUT,
                       OPTIONS(convert_options)},
    [OHM_VERB_PARTS] =
        {"parts", "[WORDS...]", 0, SIZE_MAX, "mazda bt-50", "list the sensors built in",
         "Lists each with its name, what it is, the range of its curve, where the figures were "
         "printed, and the bands that makers allow it. With words (maker, model, year, engine), "
         "only those whose description and sources hold every one of them, and with the source of "
         "each band.",
         OPTIONS(parts_options)},
    [OHM_VERB_TABLE] =
        {"table", "SENSOR", 1, 1, "ntc-2k45-20c --step 5", "print the table of a sensor",
         "Prints temperature, least resistance allowed, nominal, and greatest allowed. A "
         "- stands where the maker printed no limit.",
         OPTIONS(table_options)},
    [OHM_VERB_CHART] =
        {"chart", "SENSOR [OHMS@TEMP...]", 1, SIZE_MAX, "ntc-2k45-20c 2.31k@21.5C -o chart.svg",
         "draw a sensor as a picture",
         "Draws resistance against temperature: the nominal curve, what is allowed, the rows as "
         "printed, and your readings, each as wide and as high as it is sure. To be pinned over "
         "the bench, or looked at in any browser.",
         OPTIONS(chart_options)},
    [OHM_VERB_AUDIT] =
        {"audit", "FILE...", 1, SIZE_MAX, "sensor.csv", "look for misprints in a sensor table",
         "Says which rows of a printed table cannot be believed, and why: out of order, off the "
         "line of the others, a digit lost, added or exchanged, degrees C and F that disagree, "
         "volts that fit no one resistor. What would fit is told and never put in. The exit status "
         "is 0 when nothing is suspect, 1 when something is.",
         OPTIONS(audit_options)},
    [OHM_VERB_FIT] =
        {"fit", "[OHMS@TEMP...]", 0, SIZE_MAX, "5.79k@0C 2.45k@20C 322@80C -o mine.csv",
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
         OPTIONS(fit_options)},
    [OHM_VERB_CIRCUIT] =
        {"circuit", "[CIRCUIT]", 0, 1, "radiator-switch --saw starts=bad",
         "find which part of a fan circuit is bad",
         "Tells what to test next, with its caution before it, and ends with what to buy, what to "
         "repair, what to measure again after that, or that there is nothing to buy. Without "
         "CIRCUIT it lists those built in.\n"
         "On a terminal and without --saw it is a conversation: answer each test with a number, "
         "good, bad or skip; back takes the last answer out, why says what a test is for, none "
         "TOOL that you have not got it, stop leaves. Nothing is lost where the input ends.\n"
         "Good clears links for certain, bad accuses one of several; a part is condemned when a "
         "bad test leaves nothing else. The case is closed when the fan has started by itself.\n"
         "The exit status is the verdict: 0 the fan has started by itself, 1 a part is at fault, 2 "
         "cannot tell yet.",
         OPTIONS(circuit_options)},
    [OHM_VERB_SIGNAL] =
        {"signal", "SENSOR", 1, 1,
         "ntc-2k45-20c --ohms 187 --volts 0.97 --reported 91C --pullup 1k",
         "find where the way from the sensor to what the module reports parts",
         "Give any two or three of ohms at the sensor, volts at the module's pin and degrees it "
         "reports, all at about the same temperature, and a thermometer if there is one. Each is "
         "turned into the resistance it means; which of them agree says whether it is the sensor, "
         "ohms in plug or wire, a path across it, the ground the volts were read from, the pull-up "
         "or the module; and at what true temperature the fan then starts.\n"
         "Ohms with the key off and the plug off; volts with the plug on and the key on, from "
         "behind the plug.\n"
         "In --json r_ohm and t_c are as seen from the volts. The exit status is 0 when they "
         "agree, "
         "1 when they part, 2 when it cannot be told.",
         OPTIONS(signal_options)},
    [OHM_VERB_SUBSTITUTE] =
        {"substitute", "SENSOR [TEMP | OHMS@TEMP OHMS@TEMP]", 1, 3, "ntc-2k45-20c 105C --pullup 1k",
         "ordinary resistors in the sensor's place, to ask for the fan",
         "Key off to fit it, blades clear, one minute at most with the engine running, and a "
         "matching terminal, never a lead pushed into the socket.\n"
         "Finds the resistor, and the pair, with which the module sees TEMP; without it, " TEXT(
             OHM_ASSUMED_AIM_K) " C above --fan. Tells what it sees with the resistor's tolerance, "
                                "what the resistor bears, and whether it would look open or "
                                "shorted. The exit status is 0 "
                                "when one resistor asks for the fan, 1 when it does not, 2 when "
                                "that depends on its "
                                "tolerance.\n"
                                "With two of them fitted in turn, OHMS as measured and TEMP as the "
                                "module reported it, it "
                                "tells the ohms in plug and wires without any sensor: 179.4@93C "
                                "998@42C. Then the exit "
                                "status is 0 when they leave the fan in time, 1 when not, 2 when "
                                "it cannot be told.",
         OPTIONS(substitute_options)},
    [OHM_VERB_FANPOINT] =
        {"fanpoint", "SENSOR", 1, 1, "ntc-2k45-20c --on 98C --off 93C --pullup 1k",
         "ohms and volts where the fan starts and stops",
         "Tells the ohms to expect there, with --pullup the volts too, what a degree is worth, and "
         "at which true temperatures the fan starts and stops with ohms hidden in plug or wire.",
         OPTIONS(fanpoint_options)},
    [OHM_VERB_HELP] = {"help", "[VERB]", 0, 1, "check", "explain a verb",
                       "The same as ohmcurve VERB --help; without a verb, ohmcurve --help.",
                       OPTIONS(help_options)},
};

const struct ohm_entry ohm_notations[] = {
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
    {"OHMS",
     "a resistance as the display showed it, all its digits: 2310, 2.31k, 2k31, '2.31 kohm', "
     "0R47"},
    {"TEMP", "a temperature with its unit: 21.5C, -10C, 70F, 294.7K"},
    {"SPEC",
     "0.8%+3 is percent of reading plus counts of the last digit; 0.8%+3x10 says that a count is "
     "10 ohm, 0.8%+3@2000 that the display has 2000 counts; @2000 alone, or exact"},
    {NULL, NULL},
};

#define GIVE_OR_TAKE(figure) ", give or take " TEXT(figure)

const struct ohm_entry ohm_check_notations[] = {
    {"OL", "as OHMS: over range, on a range not told"},
    {"OL@20k", "as OHMS: over range on the 20 k range; also '>20k', in quotes"},
    {"open", "as OHMS: no number on the highest range either"},
    {"1",
     "as OHMS: a lone 1, over range on many displays; 1 ohm that was displayed as such is 1.0"},
    {"21.5C",
     "as TEMP: a thermometer beside the sensor" GIVE_OR_TAKE(OHM_ASSUMED_THERMOMETER_LIMIT_K)},
    {"ice", "as TEMP: crushed ice and water, stirred, 0 C" GIVE_OR_TAKE(OHM_ASSUMED_ICE_LIMIT_K)},
    {"boil", "as TEMP: boiling water, near sea level" GIVE_OR_TAKE(OHM_ASSUMED_BOIL_LIMIT_K)},
    {"boil@1200m", "as TEMP: boiling water at that altitude, m or ft" GIVE_OR_TAKE(
                       OHM_ASSUMED_BOIL_ALTITUDE_LIMIT_K)},
    {"boil@870hPa",
     "as TEMP: boiling water with a barometer beside the pot" GIVE_OR_TAKE(
         OHM_ASSUMED_BOIL_PRESSURE_LIMIT_K) "; a pressure given with an altitude is refused, for "
                                            "such a one was reduced to sea level"},
    {"infrared@80C", "as TEMP: an infrared thermometer aimed at the sensor" GIVE_OR_TAKE(
                         OHM_ASSUMED_INFRARED_LIMIT_K)},
    {"21.5C+-0.5", "as TEMP: any of them, good to what stands behind +-"},
    {"unknown", "as SENSOR: every sensor built in, a line each"},
    {NULL, NULL},
};

const struct ohm_entry ohm_exits[] = {
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

const struct ohm_verb *ohm_verb_find(const char *name) {
  for (size_t i = 0; i < OHM_VERB_COUNT; i++)
    if (strcmp(ohm_verbs[i].name, name) == 0)
      return &ohm_verbs[i];
  return NULL;
}

bool ohm_verb_judges(const struct ohm_verb *verb) {
  return ohm_option_find(verb, "--level", strlen("--level")) != NULL;
}

bool ohm_verb_takes(const struct ohm_verb *verb, const char *word) {
  if (strstr(verb->operands, word))
    return true;
  for (size_t i = 0; i < verb->option_count; i++)
    if (verb->options[i].argument && strcmp(verb->options[i].argument, word) == 0)
      return true;
  return false;
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
