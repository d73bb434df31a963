/* SPDX-License-Identifier: MIT */
/* A sensor at a known temperature, in the words of the bench. */
#include "reading_lines.h"
#include "report.h"

static bool is_at(const struct oc_page *page, const char *place) {
  return oc_page_is(page, OHM_FIELD_PLACE, place);
}

static bool is_hot(const struct oc_page *page) {
  return oc_page_number(page, OHM_FIELD_AT_C) > OC_SCALDS_C;
}

/* ---- the verdict on the part ---- */

static bool none_passes(const struct oc_page *page) {
  return !oc_page_has(page, OHM_FIELD_ACCEPT_LOW_OHM);
}

/* Of several readings the one is named that tells. */
static void say_bad(struct oc_page *page, const char *said) {
  oc_page_add(page, "BAD");
  if (oc_page_has(page, OHM_FIELD_BEYOND_AT_C))
    OC_SAY(page, " at {C}", OHM_FIELD_BEYOND_AT_C);
  oc_page_add(page, said);
}

static void say_high(struct oc_page *page) {
  if (oc_page_has(page, OHM_FIELD_RANGE_OHM))
    OC_SAY(page, "BAD: more than {ohm} where {ohm} is the most allowed", OHM_FIELD_RANGE_OHM,
           OHM_FIELD_HIGH_OHM);
  else
    say_bad(page, ": too many ohms, it reads colder than it is");
  oc_reading_sure(page, OHM_FIELD_P_HIGH);
}

static bool some_unlimited(const struct oc_page *page) {
  return oc_page_number(page, OHM_FIELD_UNLIMITED) > 0;
}

/* Of the limits at the temperature as it was told. */
static bool is_beyond(const struct oc_page *page) {
  double r_ohm = oc_page_number(page, OHM_FIELD_R_OHM);
  return r_ohm < oc_page_number(page, OHM_FIELD_LOW_OHM) ||
         r_ohm > oc_page_number(page, OHM_FIELD_HIGH_OHM);
}

static void verdict_line(struct oc_page *page) {
  bool several = oc_page_number(page, OHM_FIELD_READINGS) > 1;
  ohm_reason reason = oc_finding_reason(page->finding);
  switch (reason) {
  case OHM_REASON_CONFORMS:
    if (some_unlimited(page))
      OC_SAY(page, "GOOD where limits are printed, {} of {} not looked at", OHM_FIELD_UNLIMITED,
             OHM_FIELD_READINGS);
    else
      oc_page_add(page, several ? "GOOD at these temperatures" : "GOOD at this temperature");
    oc_reading_sure(page, OHM_FIELD_P_WITHIN);
    if (several && is_beyond(page))
      oc_page_add(page, "; the others show that here it is the temperature's give or take");
    break;
  case OHM_REASON_LOW:
    say_bad(page, ": too few ohms, it reads hotter than it is");
    oc_reading_sure(page, OHM_FIELD_P_LOW);
    break;
  case OHM_REASON_HIGH:
    say_high(page);
    break;
  case OHM_REASON_ANOTHER_BAND:
    OC_SAY(page, "CANNOT TELL YET: beyond the limits of {text|the table}, not of {text}",
           OHM_FIELD_BAND, OHM_FIELD_ALLOWED_BY);
    break;
  case OHM_REASON_NO_TOLERANCE:
    oc_page_add(page, "CANNOT TELL YET: nothing says how far off this sensor may be");
    break;
  case OHM_REASON_OUTSIDE_BAND:
    oc_page_add(page, "CANNOT TELL YET: nothing says what is allowed at this temperature");
    break;
  default:
    if (reason == OHM_REASON_UNCERTAIN && none_passes(page) && !several)
      OC_SAY(page, "CANNOT TELL YET: {in 100} for good; too coarse for any to pass",
             OHM_FIELD_P_WITHIN);
    else
      oc_reading_verdict(page);
    break;
  }
  oc_page_end(page, "VERDICT");
}

/* ---- the verdict for the fan ---- */

static void say_hidden(struct oc_page *page) {
  if (oc_page_number(page, OHM_FIELD_LATE_K) <= oc_page_number(page, OHM_FIELD_LIMIT_K)) {
    OC_SAY(page, "NOT ANSWERED: {ohm} could hide across the sensor (fan {early})",
           OHM_FIELD_LEAKAGE_OHM, OHM_FIELD_LEAKAGE_EARLY_K);
    return;
  }
  OC_SAY(page, "NOT ANSWERED: {ohm} could hide in ", OHM_FIELD_SERIES_OHM);
  oc_page_add(page, is_at(page, "module") ? "sensor, plug and wires" : "the sensor");
  if (ohm_finding_verdict(page->finding) == OHM_OUTSIDE)
    OC_SAY(page, " (fan {late})", OHM_FIELD_SERIES_LATE_K);
  else
    oc_reading_series(page, OHM_FIELD_SERIES_LATE_K);
}

static void say_coarse_for_fan(struct oc_page *page) {
  oc_page_add(page, "NOT ANSWERED: the fan may ");
  if (oc_page_has(page, OHM_FIELD_LATE_K))
    OC_SAY(page, "start {+K} late or ", OHM_FIELD_LATE_K);
  else
    oc_page_add(page, "never start or ");
  if (oc_page_has(page, OHM_FIELD_EARLY_K))
    OC_SAY(page, "{+K} early", OHM_FIELD_EARLY_K);
  else
    oc_page_add(page, "always run");
}

/* Whether it is what hides in series that could make the fan too late. */
static bool hides_in_series(const struct oc_page *page) {
  double late_k = oc_page_number(page, OHM_FIELD_LATE_K);
  double series_late_k = oc_page_number(page, OHM_FIELD_SERIES_LATE_K);
  return !(late_k <= oc_page_number(page, OHM_FIELD_LIMIT_K)) &&
         (isnan(series_late_k) || series_late_k == late_k);
}

static void say_job(struct oc_page *page) {
  ohm_job_reason reason = oc_finding_job_reason(page->finding);
  switch (reason) {
  case OHM_JOB_CONFORMS:
    oc_page_add(page, oc_page_is(page, OHM_FIELD_WIRES, "outside") ? "GOOD by itself" : "GOOD");
    OC_SAY(page, ": set for {C}, it starts at most {+K} late or {+K} early", OHM_FIELD_FAN_C,
           OHM_FIELD_LATE_K, OHM_FIELD_EARLY_K);
    break;
  case OHM_JOB_LATE:
  case OHM_JOB_EARLY:
    OC_SAY(page, "BAD: set for {C}, it starts more than {K} ", OHM_FIELD_FAN_C, OHM_FIELD_LIMIT_K);
    oc_page_add(page, reason == OHM_JOB_LATE ? "late" : "early");
    break;
  case OHM_JOB_HIDDEN:
    say_hidden(page);
    break;
  case OHM_JOB_COLD:
    OC_SAY(page, "NOT ANSWERED: it was not hot enough to say, set for {C}", OHM_FIELD_FAN_C);
    break;
  case OHM_JOB_UNCERTAIN:
    if (hides_in_series(page))
      say_hidden(page);
    else
      say_coarse_for_fan(page);
    break;
  }
}

static void fan_line(struct oc_page *page) {
  ohm_reason reason = oc_finding_reason(page->finding);
  if (reason == OHM_REASON_OPEN || reason == OHM_REASON_SHORTED)
    oc_page_add(page, "open or shorted makes most modules run the fan: not why it stays off");
  else if (oc_page_text(page, OHM_FIELD_JOB))
    say_job(page);
  oc_page_end(page, "For the fan");
}

/* Plug and wires, where both ends were read. */
static void wires_line(struct oc_page *page) {
  if (!oc_page_has(page, OHM_FIELD_BETWEEN_OHM)) {
    if (oc_page_is(page, OHM_FIELD_WIRES, "outside"))
      oc_page_add(page, "BAD: no circuit at the module's end: plug or wire is open");
    oc_page_end(page, "Plug, wires");
    return;
  }
  double most_ohm = oc_page_number(page, OHM_FIELD_BETWEEN_OHM) +
                    oc_page_number(page, OHM_FIELD_EXPANDED_BETWEEN_OHM);
  if (most_ohm < 0) {
    oc_page_add(page, "CANNOT TELL YET: fewer ohms at the module's end: is its plug off?");
  } else if (oc_page_is(page, OHM_FIELD_WIRES, "within")) {
    OC_SAY(page, "GOOD: {2 ohm}{+-}: fan at most {late}", OHM_FIELD_BETWEEN_OHM,
           OHM_FIELD_EXPANDED_BETWEEN_OHM, OHM_FIELD_BETWEEN_MOST_LATE_K);
  } else if (oc_page_is(page, OHM_FIELD_WIRES, "outside")) {
    OC_SAY(page, "BAD: {2 ohm}{+-}: fan {late}", OHM_FIELD_BETWEEN_OHM,
           OHM_FIELD_EXPANDED_BETWEEN_OHM, OHM_FIELD_BETWEEN_LATE_K);
  } else {
    OC_SAY(page, "CANNOT TELL YET: {2 ohm}{+-}: measure both ends hot", OHM_FIELD_BETWEEN_OHM,
           OHM_FIELD_EXPANDED_BETWEEN_OHM);
  }
  oc_page_end(page, "Plug, wires");
}

/* ---- what to do next ---- */

/* What would decide an undecided measurement. */
static void say_finer(struct oc_page *page) {
  double needed_k = oc_page_number(page, OHM_FIELD_NEEDED_K);
  bool by_reading = oc_page_number(page, OHM_FIELD_U_T_C) > oc_page_number(page, OHM_FIELD_U_AT_C);
  if (none_passes(page) && needed_k > OC_LEAST_SAID_K) {
    oc_page_add(page, "know the temperature to ");
    oc_say_decimals(&page->line, floor(needed_k * 10) / 10, 1);
    oc_page_add(page, is_hot(page) ? " C: a trusted thermometer beside it"
                                   : " C: ice water, or a trusted thermometer");
  } else if (by_reading) {
    oc_page_add(page, "a finer range or a better meter; take the leads' own ohms off");
  } else {
    oc_page_add(page, is_hot(page)
                          ? "know the temperature better: a trusted thermometer beside it"
                          : "know the temperature better: ice water, a trusted thermometer");
  }
}

static void next_line(struct oc_page *page) {
  ohm_reason reason = oc_finding_reason(page->finding);
  if (oc_page_is(page, OHM_FIELD_WIRES, "outside"))
    oc_page_add(page, "plug and wires: clean the pins, mend; then both ends once more");
  else if (reason == OHM_REASON_CONFORMS && ohm_finding_job(page->finding) == OHM_WITHIN)
    oc_page_add(page, is_at(page, "module") || oc_page_is(page, OHM_FIELD_WIRES, "within")
                          ? "the module: sensor, plug and wires have shown what they can"
                          : "plug and wires: the same reading at the module's end, hot");
  else if (reason == OHM_REASON_ANOTHER_BAND)
    oc_page_add(page, "which maker made the part? Judge by the band of that name");
  else if (reason == OHM_REASON_NO_TOLERANCE)
    oc_page_add(page, "find the maker's limits, or say how far off it may be, such as 5%");
  else if (reason == OHM_REASON_OUTSIDE_BAND)
    oc_page_add(page, "for the part: at a temperature for which limits are printed");
  else if (!oc_reading_next(page))
    say_finer(page);
  oc_page_end(page, "Next");
}

void oc_report_check(struct oc_page *page) {
  oc_reading_caution(page, is_hot(page));
  oc_reading_lines(page);
  oc_reading_temperature(page);
  oc_reading_allowed(page);
  verdict_line(page);
  fan_line(page);
  wires_line(page);
  oc_page_list(page, "Not tested", OHM_FIELD_NOT_TESTED);
  next_line(page);
  oc_page_list(page, "Assumed", OHM_FIELD_ASSUMED);
}
