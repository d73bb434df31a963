/* SPDX-License-Identifier: MIT */
/* What the fields of a finding are called and mean; no room that answers needs it. */
#include <string.h>

#include "../ground/internal.h"

static const struct {
  int number;
  const char *name;
  const char *meaning;
} fields[] = {
#define FIELD(number, constant, name, kind, meaning) {number, #name, meaning},
    OHM_FIELDS(FIELD)
#undef FIELD
};

enum { COUNT = sizeof fields / sizeof fields[0] };

size_t ohm_field_count(void) {
  return COUNT;
}

int ohm_field_at(size_t index) {
  return index < COUNT ? fields[index].number : 0;
}

int ohm_field_named(const char *name) {
  for (size_t i = 0; name && i < COUNT; i++)
    if (strcmp(fields[i].name, name) == 0)
      return fields[i].number;
  return 0;
}

const char *ohm_field_name(int field) {
  for (size_t i = 0; i < COUNT; i++)
    if (fields[i].number == field)
      return fields[i].name;
  return NULL;
}

const char *ohm_field_meaning(int field) {
  for (size_t i = 0; i < COUNT; i++)
    if (fields[i].number == field)
      return fields[i].meaning;
  return NULL;
}
