/* SPDX-License-Identifier: MIT */
/* The module's side of the wire, in the words of the bench. */
#include "reading_lines.h"
#include "report.h"

static bool has(const struct oc_page *page, ohm_field field) {
  return oc_page_has(page, field);
}

#define DEGREES "{C|no temperature of this sensor}"

/* ---- what was read ---- */

static void caution_lines(struct oc_page *page) {
  static const ohm_field warm[] = {OHM_FIELD_SENSOR_C, OHM_FIELD_T_C, OHM_FIELD_REPORTED_C,
                                   OHM_FIELD_AT_C};
  bool hot = false;
  for (size_t i = 0; i < sizeof warm / sizeof warm[0]; i++)
    hot = hot || oc_page_number(page, warm[i]) > OC_SCALDS_C;
  oc_page_line(page, "CAUTION", OC_HANDS);
  oc_page_line(page, "",
               hot ? OC_SCALDS " Pierce no wire."
                   : "Probe from behind the plug; pierce no wire, spread no pin.");
}

static void sensor_line(struct oc_page *page) {
  if (has(page, OHM_FIELD_SENSOR_OHM))
    OC_SAY(page, "{ohm}{+-}: " DEGREES, OHM_FIELD_SENSOR_OHM, OHM_FIELD_EXPANDED_SENSOR_OHM,
           OHM_FIELD_SENSOR_C);
  oc_page_end(page, "At sensor");
}

static void pin_line(struct oc_page *page) {
  if (has(page, OHM_FIELD_V_VOLT))
    OC_SAY(page, "{.2} V", OHM_FIELD_V_VOLT);
  if (has(page, OHM_FIELD_V_VOLT) && has(page, OHM_FIELD_R_OHM))
    OC_SAY(page, " through {ohm}: {ohm}{+-}: " DEGREES, OHM_FIELD_PULL_UP_OHM, OHM_FIELD_R_OHM,
           OHM_FIELD_EXPANDED_R_OHM, OHM_FIELD_T_C);
  oc_page_end(page, "At the pin");
}

static void gauge_line(struct oc_page *page) {
  if (has(page, OHM_FIELD_REPORTED_C))
    OC_SAY(page, "{.0} C: {ohm|beyond this sensor}", OHM_FIELD_REPORTED_C, OHM_FIELD_REPORTED_OHM);
  oc_page_end(page, "Reported");
}

static void thermometer_line(struct oc_page *page) {
  OC_SAY(page, "{C|}", OHM_FIELD_AT_C);
  oc_page_end(page, "It really is");
}

/* ---- where they part ---- */

/* "; module 10 C too cold" */
static void say_parted(struct oc_page *page) {
  bool cold = oc_page_number(page, OHM_FIELD_PARTED_K) < 0;
  if (has(page, OHM_FIELD_PARTED_K))
    OC_SAY(page, cold ? "; module {K} too cold" : "; module {K} too hot", OHM_FIELD_PARTED_K);
}

static void say_agreement(struct oc_page *page) {
  if (has(page, OHM_FIELD_BETWEEN_OHM))
    OC_SAY(page, "GOOD: they agree; up to {2 ohm} could still hide in plug and wire",
           OHM_FIELD_SERIES_OHM);
  else
    oc_page_add(page, "GOOD: the module reports what its volts say");
}

static void say_ground(struct oc_page *page) {
  oc_page_add(page, oc_page_is(page, OHM_FIELD_NEGATIVE, "body")
                        ? "YOUR GROUND: engine or body is not the module's; one off by "
                        : "CANNOT TELL YET: where was the negative lead? A ground off by ");
  oc_say_decimals(&page->line, fabs(oc_page_number(page, OHM_FIELD_OFFSET_VOLT)), 2);
  oc_page_add(page, " V reads so");
}

static const char *parting(const struct oc_page *page) {
  if (!has(page, OHM_FIELD_SENSOR_OHM))
    return "BAD: sensor, plug or wire";
  return has(page, OHM_FIELD_R_OHM)
             ? "BAD: no two agree: more than one fault, or a slip in a number"
             : "BAD: plug, wire or module";
}

static void say_range(struct oc_page *page) {
  if (has(page, OHM_FIELD_OTHER_R_OHM))
    OC_SAY(page, "CANNOT TELL YET: " DEGREES " through {ohm}, or " DEGREES " through {ohm}",
           OHM_FIELD_T_C, OHM_FIELD_PULL_UP_OHM, OHM_FIELD_OTHER_T_C, OHM_FIELD_OTHER_PULL_UP_OHM);
  else
    oc_page_add(page, "CANNOT TELL YET: neither pull-up fits these volts");
}

/* More than 5.2 V of 5 V is a short to a feed, General Motors 2006-10, circuit testing. */
static void say_circuit(struct oc_page *page, bool open) {
  if (!has(page, OHM_FIELD_V_VOLT)) {
    oc_page_add(page, open ? "BAD: the sensor is open, no circuit between its pins"
                           : "BAD: the sensor is shorted, next to 0 ohm between its pins");
    return;
  }
  if (oc_page_number(page, OHM_FIELD_V_VOLT) >
      OC_OTHER_FEED_SHARE * oc_page_number(page, OHM_FIELD_SUPPLY_VOLT)) {
    oc_page_add(page, "BAD: more volts than its supply has: a wire that touches another feed");
    return;
  }
  oc_page_add(page, open ? "BAD: the module sees no circuit: " : "BAD: the module sees a short: ");
  oc_page_add(page, has(page, OHM_FIELD_SENSOR_OHM) ? "plug or wire" : "sensor, plug or wire");
}

#define OVER_RANGE "CANNOT TELL YET: the ohmmeter ran out of range; that is not yet open"

static const char *const verdicts[] = {
    [OHM_REASON_CURVE] = "BAD: the module makes other degrees of these volts",
    [OHM_REASON_STUCK] = "CANNOT TELL YET: a value that never moves is no reading",
    [OHM_REASON_ALONE] = "CANNOT TELL YET: nothing to hold it against",
    [OHM_REASON_OVER_RANGE] = OVER_RANGE,
    [OHM_REASON_LONE_ONE] = OVER_RANGE,
    [OHM_REASON_UNCERTAIN] = "CANNOT TELL YET: too coarse to say whether they part",
};

static void say_verdict(struct oc_page *page, ohm_reason reason) {
  switch (reason) {
  case OHM_REASON_CONFORMS:
    say_agreement(page);
    break;
  case OHM_REASON_SERIES:
    oc_page_add(page, "BAD: ");
    oc_say_digits(&page->line, fabs(oc_page_number(page, OHM_FIELD_BETWEEN_OHM)), 2);
    OC_SAY(page, "{+-}, in plug or wire", OHM_FIELD_EXPANDED_BETWEEN_OHM);
    break;
  case OHM_REASON_LEAKAGE:
    OC_SAY(page, "BAD: a path of about {ohm} across the sensor, in plug or wire",
           OHM_FIELD_SHUNT_OHM);
    break;
  case OHM_REASON_GROUND:
    say_ground(page);
    break;
  case OHM_REASON_PULL_UP:
    OC_SAY(page, "NOT AS TOLD: the rest agrees, and the volts fit a pull-up of {ohm}",
           OHM_FIELD_FITS_PULL_UP_OHM);
    break;
  case OHM_REASON_BETWEEN:
    oc_page_add(page, parting(page));
    break;
  case OHM_REASON_STAND_IN:
    OC_SAY(page, "CANNOT TELL YET: {.0} C is what some modules use when they believe no sensor",
           OHM_FIELD_REPORTED_C);
    break;
  case OHM_REASON_RANGE:
    say_range(page);
    break;
  case OHM_REASON_OPEN:
  case OHM_REASON_SHORTED:
    say_circuit(page, reason == OHM_REASON_OPEN);
    break;
  case OHM_REASON_LOW:
  case OHM_REASON_HIGH:
    oc_page_add(page, "BAD: the sensor itself has too ");
    oc_page_add(page, reason == OHM_REASON_LOW ? "few" : "many");
    OC_SAY(page, " ohms ({4 ohm} to {4 ohm} is allowed)", OHM_FIELD_LOW_OHM, OHM_FIELD_HIGH_OHM);
    break;
  default:
    OC_ADD_OF(page, verdicts, reason);
    break;
  }
}

static void verdict_line(struct oc_page *page) {
  ohm_reason reason = oc_finding_reason(page->finding);
  say_verdict(page, reason);
  if (reason == OHM_REASON_SERIES || reason == OHM_REASON_LEAKAGE || reason == OHM_REASON_CURVE ||
      reason == OHM_REASON_BETWEEN)
    say_parted(page);
  oc_page_end(page, "VERDICT");
}

/* ---- the fan ---- */

/* Where a fan starts, or that it never does up to where it is followed. */
static void say_start(struct oc_page *page, ohm_field field) {
  if (has(page, field)) {
    OC_SAY(page, "{.0}", field);
    return;
  }
  oc_page_add(page, "over ");
  oc_page_add(page, oc_never_figure);
}

/* "it starts at a true 108 C (105 to 112) while the gauge shows 97" */
static void say_fan(struct oc_page *page) {
  static const char *const words[] = {
      [OHM_WITHIN] = "GOOD", [OHM_OUTSIDE] = "BAD", [OHM_UNDECIDED] = "NOT ANSWERED"};
  oc_page_add(page, words[ohm_finding_job(page->finding)]);
  oc_page_add(page, ": it starts at a true ");
  say_start(page, OHM_FIELD_START_C);
  oc_page_add(page, " C (");
  if (has(page, OHM_FIELD_START_C))
    OC_SAY(page, "{.0|always}", OHM_FIELD_START_LOW_C);
  else
    say_start(page, OHM_FIELD_START_LOW_C);
  oc_page_add(page, " to ");
  say_start(page, OHM_FIELD_START_HIGH_C);
  OC_SAY(page, ") while the gauge shows {.0}", OHM_FIELD_FAN_C);
}

static void fan_line(struct oc_page *page) {
  ohm_reason reason = oc_finding_reason(page->finding);
  if (reason == OHM_REASON_OPEN || reason == OHM_REASON_SHORTED)
    oc_page_add(page, "most modules run the fan then: not why it stays off");
  else if (!oc_page_text(page, OHM_FIELD_JOB))
    oc_page_add(page, "NOT ANSWERED: ohms at the sensor with volts or degrees tell");
  else
    say_fan(page);
  oc_page_end(page, "For the fan");
}

/* ---- what to do next ---- */

#define PLUG    "clean and tighten the plug; then ohmcurve substitute tells more"
#define MOVES   "does it move as the engine warms? If not, read the codes first"
#define CIRCUIT "key off, plug off: ohms at the sensor; then pins and wires"
#define HIGHEST "one range up; over range on the highest is open: type open"

static const char *const nexts[] = {
    [OHM_REASON_CONFORMS] = "the same with the engine hot, where a few ohms count",
    [OHM_REASON_SERIES] = PLUG,
    [OHM_REASON_LEAKAGE] = PLUG,
    [OHM_REASON_GROUND] = "negative lead on the module's pin for the sensor's ground",
    [OHM_REASON_PULL_UP] = "measure the supply at the open plug, and say so with its limit",
    [OHM_REASON_CURVE] = "is it the sensor this module was made for? Compare part numbers",
    [OHM_REASON_BETWEEN] = "volts at the pin, negative lead on the module's sensor ground",
    [OHM_REASON_STUCK] = MOVES,
    [OHM_REASON_STAND_IN] = MOVES,
    [OHM_REASON_RANGE] = "say which pull-up is in use, or add ohms at the sensor",
    [OHM_REASON_ALONE] = "ohms at the sensor, plug off, key off, while it is as hot",
    [OHM_REASON_OPEN] = CIRCUIT,
    [OHM_REASON_SHORTED] = CIRCUIT,
    [OHM_REASON_LOW] = OC_ONCE_MORE,
    [OHM_REASON_HIGH] = OC_ONCE_MORE,
    [OHM_REASON_OVER_RANGE] = HIGHEST,
    [OHM_REASON_LONE_ONE] = HIGHEST,
    [OHM_REASON_UNCERTAIN] = "hot, with finer meters: a few ohms count there",
};

static void next_line(struct oc_page *page) {
  ohm_reason reason = oc_finding_reason(page->finding);
  if (reason == OHM_REASON_CONFORMS && ohm_finding_job(page->finding) == OHM_WITHIN)
    oc_page_add(page, "fan, relay and fuse: sensor, plug and wires are not why");
  else
    OC_ADD_OF(page, nexts, reason);
  oc_page_end(page, "Next");
}

void oc_report_signal(struct oc_page *page) {
  caution_lines(page);
  sensor_line(page);
  pin_line(page);
  gauge_line(page);
  thermometer_line(page);
  verdict_line(page);
  fan_line(page);
  oc_page_list(page, "Not tested", OHM_FIELD_NOT_TESTED);
  next_line(page);
  oc_page_list(page, "Assumed", OHM_FIELD_ASSUMED);
}
