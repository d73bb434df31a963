/* SPDX-License-Identifier: MIT */
/*
 * A fan circuit as it is wired: things between points. Whatever can fail by itself is a thing of
 * its own, so a relay is its contacts, its coil and a terminal in its socket for each; a motor
 * brings the pins of its plug.
 */
#ifndef OC_WIRING_H
#define OC_WIRING_H

#include "../ground/internal.h"

enum { OC_WIRING_POINTS = 96, OC_WIRING_THINGS = 64, OC_WIRING_RELAYS = 8, OC_WIRING_NAME = 24 };

/** The ways in which a fan is asked for. */
enum oc_way {
  OC_WAY_HOT = 1,       /**< the engine is, from where the fan is to start */
  OC_WAY_HIGH = 2,      /**< it is hotter, from where the fan is to run fast */
  OC_WAY_AC = 4,        /**< the air conditioning is on */
  OC_WAY_UNPLUGGED = 8, /**< the coolant sensor is */
  OC_WAY_COMMANDED = 16 /**< by the module's self-test or a scan tool */
};

enum { OC_WAYS = 5 };

/** Their words, a bit after the other. */
extern const char *const oc_way_words[OC_WAYS];

/** Battery minus, from which volts are counted, and plus. */
enum { OC_POINT_MINUS, OC_POINT_PLUS };

enum oc_thing_kind {
  OC_THING_BATTERY,
  OC_THING_CONDUCTOR, /**< wire, terminal, whatever else only joins */
  OC_THING_FUSE,
  OC_THING_CONTACT, /**< of a relay, closed when it is in */
  OC_THING_REST,    /**< of a relay, closed when it is out */
  OC_THING_COIL,
  OC_THING_OUTPUT, /**< of a module: closed when asked */
  OC_THING_SWITCH, /**< closed when it is asked: hot, or by pressure */
  OC_THING_RESISTOR,
  OC_THING_MOTOR,
  OC_THING_CHAFE, /**< where a wire can rub through: open while it has not */
  OC_THING_BLADE, /**< of a motor; carries no current, nor does the next */
  OC_THING_ASKER, /**< without which some ways of asking do nothing: sensor, coolant, pump */
  OC_THING_KINDS
};

/** What renews it. */
enum oc_thing_role {
  OC_ROLE_NONE,
  OC_ROLE_WIRE,
  OC_ROLE_SPLICE,
  OC_ROLE_STRAP,
  OC_ROLE_RAIL,
  OC_ROLE_GROUND,
  OC_ROLE_SOCKET, /**< a terminal of a relay's */
  OC_ROLE_PIN,    /**< a terminal of a plug's */
  OC_ROLE_HOLDER, /**< the clips of a fuse */
  OC_ROLE_SENSOR,
  OC_ROLE_SENSOR_PLUG,
  OC_ROLE_SENSOR_WIRES,
  OC_ROLE_READING,
  OC_ROLE_COOLANT,
  OC_ROLE_THERMOSTAT,
  OC_ROLE_PUMP,
  OC_THING_ROLES
};

struct oc_thing {
  char name[OC_WIRING_NAME];
  enum oc_thing_kind kind;
  enum oc_thing_role role; /**< of a conductor or asker */
  size_t from;             /**< points */
  size_t to;
  double value;   /**< ohm of a coil or resistor, amperes of a fuse or motor */
  size_t of;      /**< relay of a coil, contact or terminal of its socket; thing of what a pin, a
                       holder, a blade or a chafe belongs to */
  unsigned asked; /**< the ways of asking that close an output or switch, or that need an asker, a
                       bit each */
  unsigned opens; /**< likewise those that open it */
  size_t row;     /**< of its file */
  bool key;       /**< live with the key on alone */
};

struct oc_wiring {
  size_t point_count;
  char points[OC_WIRING_POINTS][OC_WIRING_NAME];
  size_t thing_count;
  struct oc_thing things[OC_WIRING_THINGS];
  size_t relay_count;
  char relays[OC_WIRING_RELAYS][OC_WIRING_NAME];
  unsigned unsure_ways; /**< ways of asking that a maker has to state first, a bit each */
  size_t row;           /**< of the file, that things are added for */
};

/** Battery minus and plus alone. */
void oc_wiring_begin(struct oc_wiring *wiring);

/** The point of that name, a new one when there is none; OC_WIRING_POINTS when there is no room
 *  for it. */
size_t oc_wiring_point(struct oc_wiring *wiring, const char *name, size_t length);

/** Add a thing between two points.  Return  NULL when there is no room, or no such point */
struct oc_thing *oc_wiring_add(struct oc_wiring *wiring, const char *name, enum oc_thing_kind kind,
                               size_t from, size_t to, double value);

/** Add a relay: for each cavity that is wired, NAME.30, .87, .87a, .85, .86, the terminal in its
 *  socket; contacts and coil behind them.  Return  false when there is no room */
bool oc_wiring_add_relay(struct oc_wiring *wiring, const char *name, double coil_ohm);

/** Add a thing with the two pins of its plug, NAME.1 and NAME.2; a motor with its blade too.
 *  Return  the thing; NULL when there is no room */
struct oc_thing *oc_wiring_add_plugged(struct oc_wiring *wiring, const char *name,
                                       enum oc_thing_kind kind, size_t from, size_t to,
                                       double value);

/** Add a fuse, with the clips of its holder before it. */
struct oc_thing *oc_wiring_add_fuse(struct oc_wiring *wiring, const char *name, size_t from,
                                    size_t to, double rating_a);

/** Add where a wire can rub through, NAME.chafe. */
bool oc_wiring_add_chafe(struct oc_wiring *wiring, size_t wire, size_t to);

/** Add a coolant sensor: NAME, its .plug and .wires, and the module's .reading. */
bool oc_wiring_add_sensor(struct oc_wiring *wiring, const char *name);

/** Add coolant, thermostat and pump, which bring the heat to where it is felt. */
bool oc_wiring_add_cooling(struct oc_wiring *wiring);

/** The ways that close an output or a switch, and by heat in any case, a bit each. */
unsigned oc_wiring_ways(const struct oc_wiring *wiring);

/** Place of a thing; OC_WIRING_THINGS when there is none of that name. */
size_t oc_wiring_find(const struct oc_wiring *wiring, const char *name);

#endif
