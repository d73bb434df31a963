/* SPDX-License-Identifier: MIT */
/*
 * One test of a wiring: words of the trade with gaps for what it is done to, and what it tells
 * worked out. The rooms wired_fan, wired_relay, wired_fuse, wired_point and wired_heat make them
 * wherever they make sense.
 */
#ifndef OC_WIRED_TEST_H
#define OC_WIRED_TEST_H

#include "circuit.h"
#include "../ground/text.h"
#include "meaning.h"

/* ---- words ---- */

#define OC_SAY_FAN_STARTS                                                                          \
  "The fan may start by itself at any moment, key off too: hands and sleeves clear. "
#define OC_SAY_HOT_ENGINE                                                                          \
  "Hot coolant scalds: never open a hot system. Red gauge, or 12 C above fan-on: engine off. "
#define OC_SAY_FUSED_LEAD                                                                          \
  "Fused lead only, no larger than the fan fuse; clips must not touch each other or the body. "
#define OC_SAY_BULB_LEAD                                                                           \
  "Fused lead only, 10 A or less; clips must not touch each other or the body. The bulb gets "     \
  "hot. "
#define OC_SAY_RELAY_OUT    "Key off before a relay is pulled. "
#define OC_SAY_NO_LARGER    "Never a larger fuse. "
#define OC_SAY_MODULE_WIRES "No lamp and no lead on the wires of a module or a sensor. "
#define OC_SAY_AIR          "In the open air: exhaust gas kills. Parking brake on. "
#define OC_SAY_PRACTICE     "common practice, no source"

#define OC_SAY_ASKED "{a}"

/* A column of a test each; {} is what it is done to, {1} and {2} two points. */
struct oc_wired_words {
  const char *name;
  const char *what;
  const char *points;
  const char *condition;
  const char *load;
  const char *tool;
  const char *minutes;
  const char *unit;
  const char *error;
  const char *caution;
  const char *source;
};

/* What goes into the gaps. */
struct oc_wired_gaps {
  const char *subject;
  const char *other; /* behind the name, after -; or NULL */
  const char *first;
  const char *second;
  const char *asked; /* for {a}; NULL: as the first asking says */
};

/** Words with their gaps filled. */
void oc_wired_fill(struct oc_text *text, const char *with, const struct oc_wired_gaps *gaps);

/** A figure as a cell, to two digits.  Return  the cell */
const char *oc_wired_figure(char *cell, size_t size, double number);

/** The number in a cell. */
double oc_wired_judged(const char *cell);

/* ---- adding ---- */

/** A way in which the fan can be asked for. */
struct oc_wired_asking {
  struct oc_setup setup;
  char said[120]; /**< as a condition of a test */
};

enum { OC_ASKINGS = 16 };

/** What tests are added to, and worked out with. */
struct oc_wired_maker {
  struct ohm_circuit *circuit;
  const struct oc_wiring *wiring;
  struct oc_drive *drive;
  const struct oc_failings *failings;
  size_t room; /**< for tests */
  bool failed;
  size_t asking_count;
  struct oc_wired_asking askings[OC_ASKINGS];
  struct oc_setup setups[OC_CIRCUIT_TESTS]; /**< of each test that is to be worked out */
  struct oc_look looks[OC_CIRCUIT_TESTS];
  bool is_open[OC_CIRCUIT_TESTS];
};

/* What a test has beside its words. */
struct oc_wired_extras {
  const char *role;
  const char *needs;
  const char *only_if;
  const char *feeds;
  const char *amperes;
  const char *clears;  /* of a test that is not worked out */
  const char *accuses; /* likewise */
  const char *low;
  const char *high;
};

/** Add a test of words alone.  Return  NULL when there is no room */
struct oc_test *oc_wired_add_words(struct oc_wired_maker *maker, const struct oc_wired_words *words,
                                   const struct oc_wired_gaps *gaps,
                                   const struct oc_wired_extras *extras);

/** What may be seen of a failing by one who needs no currents to be worked out. */
typedef oc_outcomes oc_wired_sight(const struct oc_wired_maker *maker,
                                   const struct oc_failure *failure, size_t at);

/** Add a test of a thing whose meaning is plain. */
void oc_wired_add_plain(struct oc_wired_maker *maker, const struct oc_wired_words *words,
                        const struct oc_wired_gaps *gaps, oc_wired_sight *sight, size_t at);

/** Add one that is to be worked out. */
void oc_wired_add(struct oc_wired_maker *maker, const struct oc_wired_words *words,
                  const struct oc_wired_gaps *gaps, const struct oc_wired_extras *extras,
                  const struct oc_setup *setup, const struct oc_look *look);

/** Add one for each motor that then turns: it runs. */
void oc_wired_add_for_motors(struct oc_wired_maker *maker, const struct oc_wired_words *words,
                             const char *subject, const char *first, const struct oc_setup *setup);

/** Work them all out. Those that tell nothing are left out, and those that tell what another does
 *  by the same tools. */
void oc_wired_work_out(struct oc_wired_maker *maker);

/* ---- what a test is done to ---- */

const struct oc_thing *oc_wired_thing(const struct oc_wired_maker *maker, size_t at);

/** Its name. */
const char *oc_wired_point(const struct oc_wired_maker *maker, size_t point);

oc_set oc_wired_things(const struct oc_wiring *wiring, enum oc_thing_kind kind);

/** A thing in its plug with its pins: what is out when it is pulled. */
oc_set oc_wired_plugged(const struct oc_wired_maker *maker, size_t at);

/** Pins of a thing: 0 towards from, 1 towards to. */
const struct oc_thing *oc_wired_pin(const struct oc_wired_maker *maker, size_t at, int which);

bool oc_wired_is_of_relay(const struct oc_thing *thing, size_t relay);

/** A relay with the terminals that are mated with it. */
oc_set oc_wired_relay_out(const struct oc_wired_maker *maker, size_t relay);

/** The terminal of a relay's cavity, ".30"; OC_WIRING_THINGS when it is not wired. */
size_t oc_wired_cavity(const struct oc_wired_maker *maker, size_t relay, const char *end);

/* ---- how the car is set up ---- */

/** Find the ways there are, that for a fan at full speed first: in every way but by heat, in each
 * by itself, by bridging each switch, by heat. */
void oc_wired_find_askings(struct oc_wired_maker *maker);

/** The first of them. */
struct oc_setup oc_wired_asked(const struct oc_wired_maker *maker);

void oc_wired_put(struct oc_setup *setup, struct oc_across across);

struct oc_across oc_wired_bulb(size_t plus, size_t minus);
struct oc_across oc_wired_lead(size_t plus, size_t minus);
struct oc_across oc_wired_ohmmeter(size_t plus, size_t minus);

/** Whether a motor turns in a sound wiring that is set up so. */
bool oc_wired_turns(struct oc_wired_maker *maker, const struct oc_setup *setup, size_t motor);

#endif
