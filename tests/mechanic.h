/* SPDX-License-Identifier: MIT */
/* Somebody who makes the tests of a wiring's circuit on a car, by what they say: nothing of the
 * library is asked but their words. */
#ifndef OHM_TESTS_MECHANIC_H
#define OHM_TESTS_MECHANIC_H

#include "../lib/circuits/circuit.h"
#include "car.h"

enum { MECHANIC_RECORD = 16384 };

/** Whose eyes and meters differ. */
struct mechanic_person {
  double fan_runs_at;  /* shares of its speed */
  double fan_still_at; /* below it */
  double bulb_bright_v;
  double bulb_dark_v;
  double meter_off; /* shares of what is read */
  double clamp_off;
};

struct mechanic {
  const ohm_circuit *circuit;
  struct car car;
  struct mechanic_person person;
  const char *condition; /* of the test that is made */
  char record[MECHANIC_RECORD];
  size_t length;
};

/** Add to the record. */
void mechanic_say(struct mechanic *world, const char *format, ...)
    __attribute__((format(printf, 2, 3)));

/** Make a test and add what was seen, or skip it where this car does not allow it. */
void mechanic_make(struct mechanic *world, const char *test);

/** The speed of a motor in the same car, set up in the same way, with nothing wrong. */
double mechanic_sound_speed(const struct mechanic *world, const char *motor);

#endif
