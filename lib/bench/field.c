/* SPDX-License-Identifier: MIT */
/* What the fields of a finding are called and mean; no room that answers needs it. */
#include "../ground/internal.h"

static const struct {
  const char *name;
  const char *meaning;
} fields[] = {
#define FIELD(constant, name, kind, meaning) {#name, meaning},
    OHM_FIELDS(FIELD)
#undef FIELD
};

static bool is_field(int field) {
  return 0 <= field && field < OHM_FIELD_COUNT;
}

const char *ohm_field_name(int field) {
  return is_field(field) ? fields[field].name : NULL;
}

const char *ohm_field_meaning(int field) {
  return is_field(field) ? fields[field].meaning : NULL;
}
