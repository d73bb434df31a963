/* SPDX-License-Identifier: MIT */
#include "reading_lines.h"

void oc_reading_caution(struct oc_page *page, bool hot) {
  oc_page_line(page, "CAUTION", OC_UNPLUGGING);
  if (hot)
    oc_page_line(page, "", OC_SCALDS_FIRST);
}

/* ---- what was read ---- */

static const char *place_words(const struct oc_page *page) {
  if (oc_page_is(page, OHM_FIELD_PLACE, "sensor"))
    return ", plug off, at the sensor's own pins";
  if (oc_page_is(page, OHM_FIELD_PLACE, "plug_on"))
    return ", with the plug on";
  if (oc_page_is(page, OHM_FIELD_PLACE, "module"))
    return ", at the module's end of the wires";
  return ", you did not say where";
}

void oc_reading_lines(struct oc_page *page) {
  OC_SAY(page, "{text|several times}", OHM_FIELD_READ);
  oc_page_line(page, "You read", place_words(page));
  if (oc_page_has(page, OHM_FIELD_R_OHM))
    OC_SAY(page, "{C|no temperature within this sensor's range}{+-|}", OHM_FIELD_T_C,
           OHM_FIELD_EXPANDED_T_K);
  oc_page_end(page, "That means");
}

/* ---- how warm it is ---- */

void oc_reading_temperature(struct oc_page *page) {
  static const struct {
    const char *word;
    const char *said;
  } kinds[] = {{"thermometer", " (your thermometer)"},
               {"ice", " (your ice bath)"},
               {"boil", " (boiling near sea level)"},
               {"boil_altitude", " (boiling at your altitude)"},
               {"boil_pressure", " (boiling at your pressure)"},
               {"infrared", " (infrared, of the surface it sees)"}};
  OC_SAY(page, "{C}", OHM_FIELD_AT_C);
  if (oc_page_number(page, OHM_FIELD_EXPANDED_AT_K) > 0)
    OC_SAY(page, "{+-}", OHM_FIELD_EXPANDED_AT_K);
  for (size_t i = 0; i < sizeof kinds / sizeof kinds[0]; i++)
    if (oc_page_is(page, OHM_FIELD_REFERENCE, kinds[i].word))
      oc_page_add(page, kinds[i].said);
  oc_page_end(page, "It really is");
}

/* ---- what is allowed ---- */

/* The tightest of the other makers; all of them are in the finding. */
static void other_bands_line(struct oc_page *page) {
  size_t count = oc_page_count(page, OHM_FIELD_OTHER_BANDS);
  if (count > 0)
    OC_SAY(page, "the tightest {text}", OHM_FIELD_OTHER_BANDS);
  if (count > 1) {
    oc_page_add(page, "; ");
    oc_text_add_count(&page->line, count - 1);
    oc_page_add(page, " more");
  }
  oc_page_end(page, "By others");
}

void oc_reading_allowed(struct oc_page *page) {
  if (oc_page_has(page, OHM_FIELD_LOW_OHM)) {
    OC_SAY(page, "{4 ohm} to {4 ohm} here ({.1} %", OHM_FIELD_LOW_OHM, OHM_FIELD_HIGH_OHM,
           OHM_FIELD_TOLERANCE_PERCENT);
    if (oc_page_text(page, OHM_FIELD_BAND))
      OC_SAY(page, ", by {text}", OHM_FIELD_BAND);
    oc_page_add(page, ")");
  } else if (oc_page_has(page, OHM_FIELD_EXPECTED_OHM)) {
    OC_SAY(page, "not known; about {ohm} is usual at this temperature", OHM_FIELD_EXPECTED_OHM);
  } else {
    oc_page_add(page, "not known at this temperature");
  }
  oc_page_end(page, "Allowed");
  other_bands_line(page);
}

/* ---- what it decides ---- */

void oc_reading_sure(struct oc_page *page, ohm_field p) {
  if (oc_page_has(page, p))
    OC_SAY(page, " ({in 100} sure)", p);
}

void oc_reading_series(struct oc_page *page, ohm_field late_k) {
  OC_SAY(page, " (fan {late}); ", late_k);
  oc_page_add(page, oc_hidden);
  OC_SAY(page, " before a sound one: fan {late}", OHM_FIELD_FIFTY_LATE_K);
}

static const char *const verdicts[] = {
    [OHM_REASON_OPEN] = "BAD: open, " OC_OPEN_CIRCUIT,
    [OHM_REASON_SHORTED] = "BAD: shorted, " OC_SHORT_CIRCUIT,
    [OHM_REASON_OVER_RANGE] = "CANNOT TELL YET: the meter ran out of range; that is not yet open",
    [OHM_REASON_LONE_ONE] = "CANNOT TELL YET: a 1 alone at the left of the display is over range",
    [OHM_REASON_PLUG_ON] = "CANNOT TELL YET: is the plug off? With it on, a good one reads so",
};

/* A pull-up across the sensor: a measurement, unless the plug was said to be on. */
void oc_reading_verdict(struct oc_page *page) {
  ohm_reason reason = oc_finding_reason(page->finding);
  if (reason == OHM_REASON_PLUG_ON && oc_page_is(page, OHM_FIELD_PLACE, "plug_on"))
    oc_page_add(page, "CANNOT TELL YET: with the plug on, the module is measured too");
  else if (reason == OHM_REASON_MISSING_K)
    OC_SAY(page, "CANNOT TELL YET: did you mean {ohm}? A dial at k shows it without",
           OHM_FIELD_SUGGESTED_OHM);
  else if (reason == OHM_REASON_MOVING)
    OC_SAY(page, "CANNOT TELL YET: still moving, by {ohm} between the last two readings",
           OHM_FIELD_MOVED_OHM);
  else if (!OC_ADD_OF(page, verdicts, reason))
    OC_SAY(page, "CANNOT TELL YET: {in 100} for good, {of 100} are needed", OHM_FIELD_P_WITHIN,
           OHM_FIELD_LEVEL);
}

/* ---- what to do next ---- */

#define FAN_SWITCH "is it a radiator fan switch? OL cold and 0 hot is good. Else repeat"

static const char *const nexts[] = {
    [OHM_REASON_CONFORMS] = oc_read_hot,
    [OHM_REASON_OPEN] = FAN_SWITCH,
    [OHM_REASON_SHORTED] = FAN_SWITCH,
    [OHM_REASON_OVER_RANGE] = "one range up; over range on the highest is open: then type open",
    [OHM_REASON_LONE_ONE] = "go one range up; if it was 1 ohm, type 1.0",
    [OHM_REASON_MISSING_K] = "type the reading with its k, or with ohm behind it",
    [OHM_REASON_PLUG_ON] = "key off, plug off, and at the sensor's own pins",
    [OHM_REASON_MOVING] = "wait until it stands still, then once more",
};

static bool may_be_a_gauges(const struct oc_page *page) {
  double r_ohm = oc_page_number(page, OHM_FIELD_R_OHM);
  return r_ohm < oc_page_number(page, OHM_FIELD_LOW_OHM) / OC_GAUGE_FACTOR ||
         r_ohm > oc_page_number(page, OHM_FIELD_HIGH_OHM) * OC_GAUGE_FACTOR;
}

static const char *next_of_bad(const struct oc_page *page) {
  if (may_be_a_gauges(page))
    return "pins cleaned, once more; or is it a gauge's sender? identify it";
  if (oc_page_is(page, OHM_FIELD_PLACE, "module"))
    return "the same at the sensor's own pins: if good there, plug or wires";
  return OC_ONCE_MORE;
}

bool oc_reading_next(struct oc_page *page) {
  ohm_reason reason = oc_finding_reason(page->finding);
  if (reason != OHM_REASON_LOW && reason != OHM_REASON_HIGH)
    return OC_ADD_OF(page, nexts, reason);
  oc_page_add(page, next_of_bad(page));
  return true;
}
