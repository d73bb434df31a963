/* SPDX-License-Identifier: MIT */
#include "built_in.h"

#include <string.h>

#include "status.h"

const char *ohm_tables_version(void) {
  return oc_tables_version_text;
}

const char *oc_built_in_name(const struct oc_tables *tables, size_t index) {
  return index < tables->count ? tables->names[index] : NULL;
}

const char *oc_built_in_nearest(const struct oc_tables *tables, const char *name) {
  return ohm_nearest(name, tables->names, tables->count);
}

static void fail_unknown(const struct oc_tables *tables, const char *name, ohm_error *error) {
  char quoted[64];
  struct oc_text text = oc_text_begin(quoted, sizeof quoted);
  oc_text_add_quoted(&text, name, strlen(name));
  const char *nearest = oc_built_in_nearest(tables, name);
  if (nearest)
    oc_fail(error, OHM_NOT_FOUND, "no ", tables->noun, " is called ", quoted, "; did you mean ",
            nearest, "?", (const char *)NULL);
  else
    oc_fail(error, OHM_NOT_FOUND, "no ", tables->noun, " is called ", quoted,
            "; look in the list of ", tables->noun, "s", (const char *)NULL);
}

const struct oc_table *oc_built_in_find(const struct oc_tables *tables, const char *name,
                                        ohm_error *error) {
  oc_error_clear(error);
  if (!name) {
    oc_fail_null(error);
    return NULL;
  }
  for (size_t i = 0; i < tables->count; i++)
    if (strcmp(tables->names[i], name) == 0)
      return &tables->at[i];
  fail_unknown(tables, name, error);
  return NULL;
}
