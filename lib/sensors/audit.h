/* SPDX-License-Identifier: MIT */
/* What the reader of sensor files asks of an audit. */
#ifndef OC_AUDIT_H
#define OC_AUDIT_H

#include "../ground/internal.h"

/** Is it for whoever loads the table: a temperature or a resistance, not flagged already,
 *  and no row that cannot be used anyway? */
bool oc_audit_is_news(const ohm_audit *audit, size_t index);

/** The sentence of a suspect without its place. */
const char *oc_audit_clause(const ohm_audit *audit, size_t index);

#endif
