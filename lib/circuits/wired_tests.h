/* SPDX-License-Identifier: MIT */
/* The templates of the trade, each wherever it makes sense in a wiring. */
#ifndef OC_WIRED_TESTS_H
#define OC_WIRED_TESTS_H

#include "wired_test.h"

/* ---- a fan ---- */

/** In each way of asking for it, and not asked at all. */
void oc_wired_add_asked(struct oc_wired_maker *maker, size_t motor);

/** At its plug: bulbs, volts, amperes, fed directly. */
void oc_wired_add_at_plug(struct oc_wired_maker *maker, size_t motor);

void oc_wired_add_blade_look(struct oc_wired_maker *maker, size_t motor);
void oc_wired_add_by_hand(struct oc_wired_maker *maker, size_t motor);

/* ---- relays, and who pulls them ---- */

/** Bridged, heard, changed for another, in the hand. */
void oc_wired_add_of_relay(struct oc_wired_maker *maker, size_t relay);

/** What comes to its coil. */
void oc_wired_add_coil_volts(struct oc_wired_maker *maker, size_t relay);

/** An output's wire pulled to ground by hand. */
void oc_wired_add_pull(struct oc_wired_maker *maker, size_t output);

/* ---- fuses and switches ---- */

/** Looked at, and new ones: do they hold? */
void oc_wired_add_of_fuse(struct oc_wired_maker *maker, size_t fuse);

/** Bridged, and by its ohms when it is hot. */
void oc_wired_add_of_switch(struct oc_wired_maker *maker, size_t at);

/* ---- anywhere ---- */

/** Volts that a thing loses. */
void oc_wired_add_lost(struct oc_wired_maker *maker, size_t at);

void oc_wired_add_post_volts(struct oc_wired_maker *maker);

/** Ohms to where a wire may rub through. */
void oc_wired_add_rub(struct oc_wired_maker *maker, size_t chafe);

/** A bulb at every point that can be reached. */
void oc_wired_add_at_points(struct oc_wired_maker *maker);

/* ---- heat, and who tells it ---- */

void oc_wired_add_cooling(struct oc_wired_maker *maker);
void oc_wired_add_of_sensor(struct oc_wired_maker *maker, size_t sensor);

#endif
