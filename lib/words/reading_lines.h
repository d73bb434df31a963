/* SPDX-License-Identifier: MIT */
/* What every screen about a reading says alike. */
#ifndef OC_READING_LINES_H
#define OC_READING_LINES_H

#include "page.h"

/** Cautions that more than one screen has. */
#define OC_UNPLUGGING   "Key off, blades clear: unplugging this sensor starts many fans."
#define OC_SCALDS       "Hot coolant scalds: never open it hot."
#define OC_SCALDS_FIRST OC_SCALDS " Maker's procedure first."
#define OC_HANDS        "Hands, hair, sleeves clear: the fan may start, key off too."

/** What a display shows between its probes. */
#define OC_OPEN_CIRCUIT  "no circuit between your probes"
#define OC_SHORT_CIRCUIT "next to 0 ohm between your probes"

/** What to do next with one that is bad, and with one that was found. */
#define OC_ONCE_MORE "pins cleaned, plug off, at the sensor: once more before you buy"
#define OC_BY_NAME   " by name at another temperature, the hotter the better"

/** What unplugging does, and that what is hot scalds. */
void oc_reading_caution(struct oc_page *page, bool hot);

/** "You read", "That means". */
void oc_reading_lines(struct oc_page *page);

/** "It really is". */
void oc_reading_temperature(struct oc_page *page);

/** "Allowed", "By others". */
void oc_reading_allowed(struct oc_page *page);

/** Go on with how sure a verdict is, if that is known. */
void oc_reading_sure(struct oc_page *page, ohm_field p);

/** Go on with what ohms in series make of the fan, and what 50 ohm would. */
void oc_reading_series(struct oc_page *page, ohm_field late_k);

/** Go on with the verdict that the display gives, else with how near it came. */
void oc_reading_verdict(struct oc_page *page);

/** Go on with what to do next, if what was read decides it. */
bool oc_reading_next(struct oc_page *page);

#endif
