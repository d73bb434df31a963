/* SPDX-License-Identifier: MIT */
#include "wiring.h"

#include "../ground/text.h"

#include <string.h>

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
  *thing = (struct oc_thing){.kind = kind, .from = from, .to = to, .value = value};
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
static size_t add_terminal(struct oc_wiring *wiring, const char *name, size_t point) {
  struct joined behind = join(name, "'");
  size_t inner =
      behind.fits ? oc_wiring_point(wiring, behind.text, strlen(behind.text)) : OC_WIRING_POINTS;
  return oc_wiring_add(wiring, name, OC_THING_CONDUCTOR, point, inner, 0) ? inner
                                                                          : OC_WIRING_POINTS;
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
    thing->relay = wiring->relay_count;
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
    behind[i] = add_terminal(wiring, cavity.text, point);
    if (behind[i] == OC_WIRING_POINTS)
      return false;
  }
  bool whole =
      add_of_relay(wiring, name, ".contact", OC_THING_CONTACT, behind[FEED], behind[MAKE], 0) &&
      add_of_relay(wiring, name, ".rest", OC_THING_REST, behind[FEED], behind[REST], 0) &&
      add_of_relay(wiring, name, ".coil", OC_THING_COIL, behind[COIL_1], behind[COIL_2], coil_ohm);
  wiring->relay_count++;
  return whole;
}

bool oc_wiring_add_motor(struct oc_wiring *wiring, const char *name, size_t from, size_t to,
                         double running_a) {
  struct joined first = join(name, ".1");
  struct joined second = join(name, ".2");
  if (!first.fits || !second.fits)
    return false;
  size_t plus = add_terminal(wiring, first.text, from);
  size_t minus = add_terminal(wiring, second.text, to);
  return oc_wiring_add(wiring, name, OC_THING_MOTOR, plus, minus, running_a) != NULL;
}
