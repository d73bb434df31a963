/* SPDX-License-Identifier: MIT */
#include "../ground/built_in.h"

size_t ohm_circuit_built_in_count(void) {
  return oc_circuit_tables.count;
}

const char *ohm_circuit_built_in_name(size_t index) {
  return oc_built_in_name(&oc_circuit_tables, index);
}

ohm_circuit *ohm_circuit_built_in_load(const char *name, ohm_error *error) {
  const struct oc_table *table = oc_built_in_find(&oc_circuit_tables, name, error);
  return table ? ohm_circuit_parse((const char *)table->bytes, table->length, name, error) : NULL;
}
