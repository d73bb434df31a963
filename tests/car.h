/* SPDX-License-Identifier: MIT */
/*
 * A car of its own, in which every fault is known: what a wiring file says, with ohms, amperes and
 * thresholds that are drawn, followed in time. It shares no code with the library and no method:
 * every point of the wiring is solved for by elimination at every step, motors are turned by their
 * torque, filaments heat up, fuses melt, relays move.
 * Source  nodal analysis by Gauss; motor and blade, d(speed)/dt by torque; fuse, heat of I^2;
 *         filament, heat against the fourth power of its temperature; textbook, all of it.
 */
#ifndef OHM_TESTS_CAR_H
#define OHM_TESTS_CAR_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum { CAR_NODES = 128, CAR_PARTS = 96, CAR_EXTRAS = 8, CAR_NAME = 32 };

enum car_kind {
  CAR_JOINS,
  CAR_BATTERY,
  CAR_FUSE,
  CAR_MAKES, /**< contact of a relay that is in */
  CAR_RESTS, /**< of one that is out */
  CAR_COIL,
  CAR_OUTPUT,
  CAR_SWITCH,
  CAR_RESISTOR,
  CAR_MOTOR,
  CAR_RUB,
  CAR_BLADE,
  CAR_ASKER
};

enum car_way { CAR_HOT = 1, CAR_HIGH = 2, CAR_AC = 4, CAR_UNPLUGGED = 8, CAR_COMMANDED = 16 };

struct car_part {
  char name[CAR_NAME];
  char owner[CAR_NAME]; /**< relay of a contact, motor of a pin */
  enum car_kind kind;
  int from;
  int to;
  double value;
  double ohm; /**< when it is sound */
  bool key;
  unsigned closes; /**< ways that close it; of an asker those that need it */
  unsigned opens;
  /* What is wrong with it. */
  double more_ohm;
  double drag_a;
  double lacks_v;
  double rub_ohm; /**< 0: it has not rubbed through */
  bool never;
  bool silent;
  /* How the car is set up, and what became of it. */
  bool out;
  bool spare;
  bool closed;
  bool blown;
  double heat;
  double speed;
  double ampere;
};

struct car_extra {
  int plus;
  int minus;
  double ohm;
  double watt; /**< of a bulb */
  double kelvin;
  double volt; /**< across it in the end */
};

struct car {
  uint64_t draws;
  int node_count;
  char nodes[CAR_NODES][CAR_NAME];
  double volt[CAR_NODES];
  int part_count;
  struct car_part parts[CAR_PARTS];
  unsigned unsure_ways; /**< that the file leaves to the maker */
  unsigned ways;        /**< that hold in this car */
  double rest_v;
  double running_v;
  double pulls_in_v;
  double lets_go_v;
  double fan_size;  /**< its amperes over those of the file */
  double fan_power; /**< of the speed that the torque goes with */
  double stall_ratio;
  double fuse_heat; /**< that melts it */
  bool key;
  bool running;
  unsigned asked;
  int extra_count;
  struct car_extra extras[CAR_EXTRAS];
};

/** Build one from the text of a wiring file, its figures drawn. */
void car_build(struct car *car, const char *text, uint64_t seed);

/** A part of that name, or NULL. */
struct car_part *car_find(struct car *car, const char *name);

int car_node(struct car *car, const char *name);

/** Plugged together, nothing across, key off, nothing asked; blown fuses stay blown. */
void car_put_right(struct car *car);

int car_across(struct car *car, int plus, int minus, double ohm, double watt);

/** Go on until nothing changes. */
void car_run(struct car *car);

#endif
