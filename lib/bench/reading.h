/* SPDX-License-Identifier: MIT */
/* One thing that was read, in the one notation of all verbs. */
#ifndef OC_READING_H
#define OC_READING_H

#include "../evidence/meter.h"
#include "../evidence/module.h"
#include "../evidence/pair.h"
#include "../evidence/reference.h"

enum oc_reading_kind {
  OC_READING_OHMS,
  OC_READING_PAIR,
  OC_READING_VOLTS,
  OC_READING_REPORTED,
  OC_READING_COMPANION,
  OC_READING_OUTCOME /**< of a circuit; its text says it all */
};

struct oc_bench_reading {
  enum oc_reading_kind kind;
  oc_reading ohms;
  bool has_at;
  oc_reference at; /**< of ohms; of a companion what it shows */
  ohm_place place; /**< of ohms; OHM_PLACE_NOT_TOLD when it carries none */
  oc_volts volts;
  oc_reported reported;
  oc_pair pair;
  ohm_soaked companion;
};

/** Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE. */
ohm_status oc_bench_reading_read(const char *text, struct oc_bench_reading *reading,
                                 ohm_error *error);

#endif
