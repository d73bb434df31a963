/* SPDX-License-Identifier: MIT */
/* The sensor tables as bytes, made from the files of tables/ by embed.awk. */
#ifndef OHM_TABLES_DATA_H
#define OHM_TABLES_DATA_H

#include <stddef.h>

/** One sensor or circuit file: its name without ".csv" and its bytes, which no NUL ends. */
struct ohm_table {
  const char *name;
  const unsigned char *bytes;
  size_t length;
};

/** Every table, in the byte order of the names. */
extern const struct ohm_table ohm_tables[];
extern const size_t ohm_table_count;

/** Likewise the circuits. */
extern const struct ohm_table ohm_circuit_tables[];
extern const size_t ohm_circuit_table_count;

/** What tables/VERSION says, "1". */
extern const char ohm_tables_version_text[];

#endif
