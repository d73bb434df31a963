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

/** Battery minus, from which volts are counted, and plus. */
enum { OC_POINT_MINUS, OC_POINT_PLUS };

enum oc_thing_kind {
  OC_THING_BATTERY,
  OC_THING_CONDUCTOR, /**< wire, splice, terminal, rail, ground point, strap */
  OC_THING_FUSE,
  OC_THING_CONTACT, /**< of a relay, closed when it is in */
  OC_THING_REST,    /**< of a relay, closed when it is out */
  OC_THING_COIL,
  OC_THING_OUTPUT, /**< of a module: closed when asked */
  OC_THING_SWITCH, /**< closed when it is asked: hot, or by pressure */
  OC_THING_RESISTOR,
  OC_THING_MOTOR,
  OC_THING_CHAFE, /**< where a wire can rub through: open while it has not */
  OC_THING_KINDS
};

struct oc_thing {
  char name[OC_WIRING_NAME];
  enum oc_thing_kind kind;
  size_t from; /**< points */
  size_t to;
  double value;   /**< ohm of a coil or resistor, amperes of a fuse or motor */
  size_t relay;   /**< of a coil or contact */
  unsigned asked; /**< of an output or switch: the ways of asking that close it, a bit each */
  bool key;       /**< live with the key on alone */
};

struct oc_wiring {
  size_t point_count;
  char points[OC_WIRING_POINTS][OC_WIRING_NAME];
  size_t thing_count;
  struct oc_thing things[OC_WIRING_THINGS];
  size_t relay_count;
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

/** Add a motor between two points, with the pins of its plug. */
bool oc_wiring_add_motor(struct oc_wiring *wiring, const char *name, size_t from, size_t to,
                         double running_a);

/** Place of a thing; OC_WIRING_THINGS when there is none of that name. */
size_t oc_wiring_find(const struct oc_wiring *wiring, const char *name);

#endif
