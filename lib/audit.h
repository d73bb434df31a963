/* SPDX-License-Identifier: MIT */
/* What the reader of sensor files asks of an audit. */
#ifndef OHM_AUDIT_H
#define OHM_AUDIT_H

#include "internal.h"

/** Is it for whoever loads the table: a temperature or a resistance, not flagged already,
 *  and no row that cannot be used anyway? */
bool ohm_audit_is_news(const ohm_audit *audit, size_t index);

/** The sentence of a suspect without its place. */
const char *ohm_audit_clause(const ohm_audit *audit, size_t index);

#endif
