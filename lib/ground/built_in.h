/* SPDX-License-Identifier: MIT */
/* The files built in, found by their names. tables/embed.awk makes their bytes of the
 * files of tables/. */
#ifndef OC_BUILT_IN_H
#define OC_BUILT_IN_H

#include "internal.h"

/** The bytes of one file, which no NUL ends. */
struct oc_table {
  const unsigned char *bytes;
  size_t length;
};

/** All files of one kind. */
struct oc_tables {
  const char *noun; /**< what a sentence calls one of them */
  size_t count;
  const char *const *names; /**< without ".csv", in the order of their bytes */
  const struct oc_table *at;
};

extern const struct oc_tables oc_sensor_tables;
extern const struct oc_tables oc_circuit_tables;

/** What tables/VERSION says, "1". */
extern const char oc_tables_version_text[];

/** NULL past the last. */
const char *oc_built_in_name(const struct oc_tables *tables, size_t index);

/** The name that is spelt most like the given one; NULL when none is near. */
const char *oc_built_in_nearest(const struct oc_tables *tables, const char *name);

/**
 * Find a file by its name.
 *
 * Return  NULL with the error filled in when there is none.
 * Status  OHM_NULL_ARGUMENT; OHM_NOT_FOUND, and which name is near.
 */
const struct oc_table *oc_built_in_find(const struct oc_tables *tables, const char *name,
                                        ohm_error *error);

#endif
