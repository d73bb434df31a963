/* SPDX-License-Identifier: MIT */
/* What was set and what was read, as the verbs look at it. */
#ifndef OC_BENCH_H
#define OC_BENCH_H

#include "reading.h"
#include "setting.h"

enum { OC_BENCH_READINGS_MAX = 512, OC_BENCH_COMPARED_MAX = 4096 };

struct oc_bench_line {
  char *text;
  struct oc_bench_reading reading;
};

struct ohm_bench {
  char *settings[OC_SETTINGS]; /**< NULL where unset */
  double numbers[OC_SETTINGS]; /**< of those; NaN where unset, or of text alone */
  size_t count;
  size_t room;
  struct oc_bench_line *lines;
  const ohm_sensor *sensor;
  size_t compared_count;
  size_t compared_room;
  const ohm_sensor **compared;
  const ohm_history *history;
  const ohm_circuit *circuit;
};

#endif
