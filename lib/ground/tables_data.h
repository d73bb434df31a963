/* SPDX-License-Identifier: MIT */
/* The sensor tables as bytes, made from the files of tables/ by embed.awk. */
#ifndef OC_TABLES_DATA_H
#define OC_TABLES_DATA_H

#include <stddef.h>

/** One sensor or circuit file: its name without ".csv" and its bytes, which no NUL ends. */
struct oc_table {
  const char *name;
  const unsigned char *bytes;
  size_t length;
};

/** Every table, in the byte order of the names. */
extern const struct oc_table oc_tables[];
extern const size_t oc_table_count;

/** Likewise the circuits. */
extern const struct oc_table oc_circuit_tables[];
extern const size_t oc_circuit_table_count;

/** What tables/VERSION says, "1". */
extern const char oc_tables_version_text[];

#endif
