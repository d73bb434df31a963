/* SPDX-License-Identifier: MIT */
/*
 * A wiring as it is typed off a diagram, in place of a circuit file's links: a row a thing, with
 * the columns
 *
 *     link    its name
 *     kind    battery wire splice strap rail ground fuse relay output switch resistor motor sensor
 *     from    a point: what is written alike is joined; + and - are the posts of the battery
 *     to      another; a relay and a sensor have none, a relay's points are NAME.30 .87 .87a .85
 *             .86
 *     value   volts of the battery, amperes of a fuse or motor, ohms of a coil or resistor
 *     by      of a wire where it can rub through to; of a fuse key, if it is live with the key on
 *             alone; of an output or switch what closes it: hot high ac unplugged commanded, with
 *             a ? behind what the maker has to state first; of a switch also what opens it, cold
 *
 * and, where the usual does not do, part, action, renew, odds and standing as links have them.
 * Relay, motor, fuse and switch bring the terminals they are plugged into; a motor its blade; a
 * sensor its plug, its wires and what reads it. Coolant, thermostat and pump are in every car.
 */
#ifndef OC_WIRING_FILE_H
#define OC_WIRING_FILE_H

#include "../ground/table_file.h"
#include "circuit.h"

/** The state of reading. */
struct oc_wiring_file {
  struct oc_table_file *file;
  struct oc_wired *wired; /**< of the circuit that is read */
  size_t relay_count;     /**< added at the end, when all their points are known */
  struct {
    size_t row;
    double coil_ohm;
  } relays[OC_WIRING_RELAYS];
};

/** Whether the header row at hand is of a wiring. */
bool oc_wiring_file_is(const struct oc_csv *csv);

/** Begin with the header row at hand; the circuit holds what is read.  Return  false when there is
 *  no memory */
bool oc_wiring_file_begin(struct oc_wiring_file *reader, struct oc_table_file *file,
                          struct ohm_circuit *circuit);

/** Take the row at hand. Whatever cannot be used ends the reading, for what is left out of a
 *  wiring makes the rest another one. */
void oc_wiring_file_take_row(struct oc_wiring_file *reader);

/** Add what every car has, and see that the rest is whole. */
void oc_wiring_file_end(struct oc_wiring_file *reader);

#endif
