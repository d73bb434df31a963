/* SPDX-License-Identifier: MIT */
#include "wiring.h"

#include "../ground/text.h"

#include <string.h>

const char *const oc_way_words[OC_WAYS] = {"hot", "high", "ac", "unplugged", "commanded"};

/* ---- points ---- */

void oc_wiring_begin(struct oc_wiring *wiring) {
  memset(wiring, 0, sizeof *wiring);
  oc_wiring_point(wiring, "-", 1);
  oc_wiring_point(wiring, "+", 1);
}

static size_t find_point(const struct oc_wiring *wiring, const char *name, size_t length) {
  for (size_t i = 0; i < wiring->point_count; i++)
    if (strlen(wiring->points[i]) == length && memcmp(wiring->points[i], name, length) == 0)
      return i;
  return OC_WIRING_POINTS;
}

size_t oc_wiring_point(struct oc_wiring *wiring, const char *name, size_t length) {
  size_t found = find_point(wiring, name, length);
  if (found < OC_WIRING_POINTS || length >= OC_WIRING_NAME ||
      wiring->point_count == OC_WIRING_POINTS)
    return found;
  memcpy(wiring->points[wiring->point_count], name, length);
  wiring->points[wiring->point_count][length] = '\0';
  return wiring->point_count++;
}

/* ---- things ---- */

size_t oc_wiring_find(const struct oc_wiring *wiring, const char *name) {
  for (size_t i = 0; i < wiring->thing_count; i++)
    if (strcmp(wiring->things[i].name, name) == 0)
      return i;
  return OC_WIRING_THINGS;
}

struct oc_thing *oc_wiring_add(struct oc_wiring *wiring, const char *name, enum oc_thing_kind kind,
                               size_t from, size_t to, double value) {
  if (wiring->thing_count == OC_WIRING_THINGS || from >= wiring->point_count ||
      to >= wiring->point_count || strlen(name) >= OC_WIRING_NAME)
    return NULL;
  struct oc_thing *thing = &wiring->things[wiring->thing_count++];
  *thing =
      (struct oc_thing){.kind = kind, .from = from, .to = to, .value = value, .row = wiring->row};
  strcpy(thing->name, name);
  return thing;
}

/* NAME and what follows, cut to fit. */
struct joined {
  char text[OC_WIRING_NAME];
  bool fits;
};

static struct joined join(const char *name, const char *end) {
  struct joined joined;
  struct oc_text out = oc_text_begin(joined.text, sizeof joined.text);
  oc_text_add(&out, name);
  oc_text_add(&out, end);
  joined.fits = out.length < sizeof joined.text;
  return joined;
}

/* A terminal of its own between a point of the wiring and one behind it, which is returned. */
static size_t add_terminal(struct oc_wiring *wiring, const char *name, enum oc_thing_role role,
                           size_t of, size_t point) {
  struct joined behind = join(name, "'");
  size_t inner =
      behind.fits ? oc_wiring_point(wiring, behind.text, strlen(behind.text)) : OC_WIRING_POINTS;
  struct oc_thing *terminal = oc_wiring_add(wiring, name, OC_THING_CONDUCTOR, point, inner, 0);
  if (!terminal)
    return OC_WIRING_POINTS;
  terminal->role = role;
  terminal->of = of;
  return inner;
}

/* ---- relay and motor ---- */

enum cavity { FEED, MAKE, REST, COIL_1, COIL_2, CAVITIES };

static const char *const cavity_names[CAVITIES] = {".30", ".87", ".87a", ".85", ".86"};

static bool add_of_relay(struct oc_wiring *wiring, const char *name, const char *end,
                         enum oc_thing_kind kind, size_t from, size_t to, double value) {
  if (from == OC_WIRING_POINTS || to == OC_WIRING_POINTS)
    return true;
  struct joined joined = join(name, end);
  struct oc_thing *thing =
      joined.fits ? oc_wiring_add(wiring, joined.text, kind, from, to, value) : NULL;
  if (thing)
    thing->of = wiring->relay_count;
  return thing != NULL;
}

bool oc_wiring_add_relay(struct oc_wiring *wiring, const char *name, double coil_ohm) {
  size_t behind[CAVITIES];
  if (wiring->relay_count == OC_WIRING_RELAYS)
    return false;
  for (int i = 0; i < CAVITIES; i++) {
    struct joined cavity = join(name, cavity_names[i]);
    size_t point = find_point(wiring, cavity.text, strlen(cavity.text));
    behind[i] = OC_WIRING_POINTS;
    if (!cavity.fits || point == OC_WIRING_POINTS)
      continue;
    behind[i] = add_terminal(wiring, cavity.text, OC_ROLE_SOCKET, wiring->relay_count, point);
    if (behind[i] == OC_WIRING_POINTS)
      return false;
  }
  bool whole =
      add_of_relay(wiring, name, ".contact", OC_THING_CONTACT, behind[FEED], behind[MAKE], 0) &&
      add_of_relay(wiring, name, ".rest", OC_THING_REST, behind[FEED], behind[REST], 0) &&
      add_of_relay(wiring, name, ".coil", OC_THING_COIL, behind[COIL_1], behind[COIL_2], coil_ohm);
  strcpy(wiring->relays[wiring->relay_count++], name);
  return whole;
}

/* ---- what is plugged ---- */

static bool add_blade(struct oc_wiring *wiring, size_t motor) {
  struct joined blade = join(wiring->things[motor].name, ".blade");
  struct oc_thing *thing = blade.fits ? oc_wiring_add(wiring, blade.text, OC_THING_BLADE, 0, 0,
                                                      wiring->things[motor].value)
                                      : NULL;
  if (thing)
    thing->of = motor;
  return thing != NULL;
}

struct oc_thing *oc_wiring_add_plugged(struct oc_wiring *wiring, const char *name,
                                       enum oc_thing_kind kind, size_t from, size_t to,
                                       double value) {
  struct joined first = join(name, ".1");
  struct joined second = join(name, ".2");
  size_t thing = wiring->thing_count + 2;
  if (!first.fits || !second.fits)
    return NULL;
  size_t plus = add_terminal(wiring, first.text, OC_ROLE_PIN, thing, from);
  size_t minus = add_terminal(wiring, second.text, OC_ROLE_PIN, thing, to);
  if (!oc_wiring_add(wiring, name, kind, plus, minus, value) ||
      (kind == OC_THING_MOTOR && !add_blade(wiring, thing)))
    return NULL;
  return &wiring->things[thing];
}

struct oc_thing *oc_wiring_add_fuse(struct oc_wiring *wiring, const char *name, size_t from,
                                    size_t to, double rating_a) {
  struct joined holder = join(name, ".clips");
  size_t behind =
      holder.fits ? add_terminal(wiring, holder.text, OC_ROLE_HOLDER, wiring->thing_count + 1, from)
                  : OC_WIRING_POINTS;
  return oc_wiring_add(wiring, name, OC_THING_FUSE, behind, to, rating_a);
}

bool oc_wiring_add_chafe(struct oc_wiring *wiring, size_t wire, size_t to) {
  struct joined chafe = join(wiring->things[wire].name, ".chafe");
  struct oc_thing *thing =
      chafe.fits ? oc_wiring_add(wiring, chafe.text, OC_THING_CHAFE, wiring->things[wire].to, to, 0)
                 : NULL;
  if (thing)
    thing->of = wire;
  return thing != NULL;
}

/* ---- what asks ---- */

static bool add_asker(struct oc_wiring *wiring, const char *name, const char *end,
                      enum oc_thing_role role, unsigned loses, unsigned may_lose) {
  size_t sensor = oc_wiring_find(wiring, name);
  struct joined joined = join(name, end);
  struct oc_thing *thing =
      joined.fits ? oc_wiring_add(wiring, joined.text, OC_THING_ASKER, 0, 0, 0) : NULL;
  if (!thing)
    return false;
  thing->role = role;
  thing->of = sensor;
  thing->asked = loses;
  thing->opens = may_lose;
  return true;
}

static const unsigned by_heat = OC_WAY_HOT | OC_WAY_HIGH;

bool oc_wiring_add_sensor(struct oc_wiring *wiring, const char *name) {
  return add_asker(wiring, name, "", OC_ROLE_SENSOR, by_heat, 0) &&
         add_asker(wiring, name, ".plug", OC_ROLE_SENSOR_PLUG, by_heat, OC_WAY_UNPLUGGED) &&
         add_asker(wiring, name, ".wires", OC_ROLE_SENSOR_WIRES, by_heat, OC_WAY_UNPLUGGED) &&
         add_asker(wiring, name, ".reading", OC_ROLE_READING, by_heat | OC_WAY_UNPLUGGED, 0);
}

bool oc_wiring_add_cooling(struct oc_wiring *wiring) {
  return add_asker(wiring, "coolant", "", OC_ROLE_COOLANT, by_heat, 0) &&
         add_asker(wiring, "thermostat", "", OC_ROLE_THERMOSTAT, by_heat, 0) &&
         add_asker(wiring, "pump", "", OC_ROLE_PUMP, by_heat, 0);
}

unsigned oc_wiring_ways(const struct oc_wiring *wiring) {
  unsigned ways = OC_WAY_HOT;
  for (size_t i = 0; i < wiring->thing_count; i++)
    if (wiring->things[i].kind == OC_THING_OUTPUT || wiring->things[i].kind == OC_THING_SWITCH)
      ways |= wiring->things[i].asked;
  return ways;
}
