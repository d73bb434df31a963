/* SPDX-License-Identifier: MIT */
#include "wired_link.h"

#include <stdlib.h>
#include <string.h>

#include "../ground/text.h"

/* What the trade calls the part, where {} is the name of the row it came with; odds are common
 * practice, no source. */
struct trade {
  const char *part;
  const char *action;
  const char *renew;
  const char *odds;
};

static const struct trade of_kind[OC_THING_KINDS] = {
    [OC_THING_BATTERY] = {"battery", "repair",
                          "charge it and test it; renew it if it does not hold", "0.03"},
    [OC_THING_FUSE] = {"fuse {}", "buy", "a new one of the same rating, never larger", "0.06"},
    [OC_THING_CONTACT] = {"relay {}", "buy", "an identical relay, same number on its case", "0.06"},
    [OC_THING_REST] = {"relay {}", "buy", "an identical relay, same number on its case", "0.03"},
    [OC_THING_COIL] = {"relay {}", "buy", "an identical relay, same number on its case", "0.02"},
    [OC_THING_OUTPUT] = {"engine module", "buy", "last of all: module renewed and coded", "0.005"},
    [OC_THING_SWITCH] = {"switch {}", "buy",
                         "engine cold: drain below it, renew with its seal, bleed", "0.05"},
    [OC_THING_RESISTOR] = {"resistor {}", "buy",
                           "first see that its fan turns freely: one that drags burns the next",
                           "0.05"},
    [OC_THING_MOTOR] = {"motor of {}", "buy",
                        "battery lead off, fan and motor renewed together or as sold", "0.08"},
    [OC_THING_CHAFE] = {"wire {}", "repair", "find where it rubs, mend, sleeve and tie it", "0.01"},
    [OC_THING_BLADE] =
        {"blade of {}", "repair",
         "clear what blocks it; renew one that is bent or cracked, never straighten it", "0.02"},
};

static const struct trade of_role[OC_THING_ROLES] = {
    [OC_ROLE_WIRE] = {"wire {}", "repair", "mend or renew the wire with its ends", "0.02"},
    [OC_ROLE_SPLICE] = {"splice {}", "repair", "cut it out, join anew and seal it", "0.02"},
    [OC_ROLE_STRAP] = {"strap {}", "repair", "clean both ends to bare metal, or renew it", "0.02"},
    [OC_ROLE_RAIL] = {"rail {}", "repair",
                      "clean or renew the rail or its screw joint, battery lead off first", "0.02"},
    [OC_ROLE_GROUND] = {"ground point {}", "repair",
                        "move it, clean it to bare metal, tighten, test under load", "0.04"},
    [OC_ROLE_SOCKET] = {"socket of relay {}", "repair",
                        "new terminals, crimped; see why it got hot: amperes of the fan", "0.01"},
    [OC_ROLE_PIN] = {"plug of {}", "repair", "clean the pins, crimp or renew a loose one", "0.02"},
    [OC_ROLE_HOLDER] = {"holder of fuse {}", "repair", "new clips, or a new holder", "0.01"},
    [OC_ROLE_SENSOR] = {"coolant temperature sensor {}", "buy",
                        "cold engine: drain below it, renew with its seal, bleed", "0.04"},
    [OC_ROLE_SENSOR_PLUG] = {"plug of {}", "repair", "clean the pins, crimp or renew a loose one",
                             "0.05"},
    [OC_ROLE_SENSOR_WIRES] = {"wires of {}", "repair",
                              "find the break or the green spot, solder or crimp, seal", "0.02"},
    [OC_ROLE_READING] = {"engine module", "buy", "last of all: module renewed and coded", "0.003"},
    [OC_ROLE_COOLANT] = {"coolant", "repair",
                         "cold engine: top up, bleed the air out, find the leak", "0.05"},
    [OC_ROLE_THERMOSTAT] = {"thermostat", "buy", "drain some coolant, renew with its seal, bleed",
                            "0.03"},
    [OC_ROLE_PUMP] = {"coolant pump", "buy", "drain, renew pump and belt as the maker says, bleed",
                      "0.01"},
};

static const struct trade *trade_of(const struct oc_thing *thing) {
  return thing->role != OC_ROLE_NONE ? &of_role[thing->role] : &of_kind[thing->kind];
}

/* Whose name stands in the part. */
static const char *subject_of(const struct oc_wiring *wiring, const struct oc_thing *thing) {
  switch (thing->kind) {
  case OC_THING_CONTACT:
  case OC_THING_REST:
  case OC_THING_COIL:
    return wiring->relays[thing->of];
  case OC_THING_BLADE:
  case OC_THING_CHAFE:
    return wiring->things[thing->of].name;
  default:
    if (thing->role == OC_ROLE_SOCKET)
      return wiring->relays[thing->of];
    if (thing->role == OC_ROLE_SENSOR)
      return strcmp(thing->name, "sensor") == 0 ? "" : thing->name;
    return thing->role == OC_ROLE_PIN || thing->role == OC_ROLE_HOLDER ||
                   thing->role == OC_ROLE_SENSOR_PLUG || thing->role == OC_ROLE_SENSOR_WIRES
               ? wiring->things[thing->of].name
               : thing->name;
  }
}

static const char *kind_of(const struct oc_thing *thing, bool carries) {
  switch (thing->kind) {
  case OC_THING_BATTERY:
    return "battery";
  case OC_THING_MOTOR:
    return "motor";
  case OC_THING_BLADE:
    return "cooling";
  case OC_THING_OUTPUT:
    return "electronics";
  case OC_THING_ASKER:
    return thing->role == OC_ROLE_READING   ? "electronics"
           : thing->role >= OC_ROLE_COOLANT ? "cooling"
                                            : "sensing";
  default:
    return carries ? "power" : "control";
  }
}

/* A row speaks for what it names, not for the terminals that come with it. */
static bool row_speaks(const struct oc_thing *thing) {
  return thing->row < OC_WIRING_ROWS && thing->kind != OC_THING_BLADE &&
         thing->role != OC_ROLE_SOCKET && thing->role != OC_ROLE_PIN &&
         thing->role != OC_ROLE_HOLDER && thing->role != OC_ROLE_SENSOR_PLUG &&
         thing->role != OC_ROLE_SENSOR_WIRES && thing->role != OC_ROLE_READING;
}

/* What a row says itself of a link; NULL where it has no such column. */
static const char *own_of(const struct oc_wiring_row *row, ohm_link_column column) {
  switch (column) {
  case OHM_LINK_PART:
    return row->cells[OC_WIRING_PART];
  case OHM_LINK_ACTION:
    return row->cells[OC_WIRING_ACTION];
  case OHM_LINK_RENEW:
    return row->cells[OC_WIRING_RENEW];
  case OHM_LINK_ODDS:
    return row->cells[OC_WIRING_ODDS];
  case OHM_LINK_STANDING:
    return row->cells[OC_WIRING_STANDING];
  default:
    return NULL;
  }
}

static void add_filled(struct oc_text *text, const char *with, const char *name) {
  const char *gap = strstr(with, "{}");
  if (gap) {
    oc_text_add_bytes(text, with, (size_t)(gap - with));
    oc_text_add(text, name);
  }
  oc_text_add(text, gap ? gap + 2 : with);
}

static bool set_cell(struct oc_link *link, ohm_link_column column, const char *text) {
  size_t length = strlen(text);
  while (length > 0 && text[length - 1] == ' ')
    length--;
  link->cells[column] = oc_text_new(text, length);
  return link->cells[column] != NULL;
}

static bool fill(struct oc_link *link, const struct oc_wired *wired, size_t at, bool carries) {
  const struct oc_wiring *wiring = &wired->wiring;
  const struct oc_thing *thing = &wiring->things[at];
  const struct trade *trade = trade_of(thing);
  const struct oc_wiring_row *row = thing->row < OC_WIRING_ROWS ? &wired->rows[thing->row] : NULL;
  char part[80];
  char drawing[80];
  struct oc_text text = oc_text_begin(part, sizeof part);
  add_filled(&text, trade->part, subject_of(wiring, thing));
  text = oc_text_begin(drawing, sizeof drawing);
  if (thing->from != thing->to) {
    oc_text_add(&text, wiring->points[thing->from]);
    oc_text_add(&text, " to ");
    oc_text_add(&text, wiring->points[thing->to]);
  }
  const char *const usual[OHM_LINK_COLUMN_COUNT] = {
      [OHM_LINK_LINK] = thing->name,     [OHM_LINK_KIND] = kind_of(thing, carries),
      [OHM_LINK_DRAWING] = drawing,      [OHM_LINK_PART] = part,
      [OHM_LINK_ACTION] = trade->action, [OHM_LINK_RENEW] = trade->renew,
      [OHM_LINK_ODDS] = trade->odds,     [OHM_LINK_STANDING] = "common practice",
  };
  bool whole = true;
  link->line = row ? row->line : 0;
  link->odds = NAN;
  for (int i = 0; i < OHM_LINK_COLUMN_COUNT; i++) {
    const char *own = row && row_speaks(thing) ? own_of(row, (ohm_link_column)i) : NULL;
    whole = set_cell(link, (ohm_link_column)i, own && own[0] ? own : usual[i]) && whole;
  }
  return whole;
}

bool oc_wired_links_add(struct ohm_circuit *circuit, const bool *carries) {
  const struct oc_wired *wired = circuit->wired;
  size_t count = wired->wiring.thing_count;
  bool whole = true;
  circuit->links = calloc(count + 1, sizeof *circuit->links);
  if (!circuit->links)
    return false;
  for (size_t i = 0; i < count; i++) {
    whole = fill(&circuit->links[i], wired, i, carries[i]) && whole;
    circuit->link_count++;
  }
  return whole;
}
