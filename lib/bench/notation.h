/* SPDX-License-Identifier: MIT */
/* The notations of settings that no room of evidence reads. */
#ifndef OC_NOTATION_H
#define OC_NOTATION_H

#include "../evidence/reference.h"
#include "../model/lag.h"

enum { OC_DRAWER_MAX = 64 };

/** Resistors at hand. */
struct oc_drawer {
  size_t count;
  double r_ohm[OC_DRAWER_MAX];
};

/** A number and a unit of that kind, in the unit of its settings; NaN when it is none. */
double oc_notation_amount(ohm_setting_kind kind, const char *text);

/** A temperature by a thermometer, with its limit or not. Status  those of
 *  oc_reference_read(). */
ohm_status oc_notation_thermometer(const char *text, oc_reference *reference, ohm_error *error);

/** "1h-4h". Status  OHM_OK; OHM_BAD_SYNTAX. */
ohm_status oc_notation_tau(const char *text, struct oc_span *tau, ohm_error *error);

/** "100,220,1k". Status  OHM_OK; OHM_BAD_SYNTAX; OHM_TOO_LARGE. */
ohm_status oc_notation_drawer(const char *text, struct oc_drawer *drawer, ohm_error *error);

#endif
