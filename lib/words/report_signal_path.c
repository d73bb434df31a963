/* SPDX-License-Identifier: MIT */
/* The module's side of the wire, in the words of the bench. */
#include <string.h>

#include "../bench/finding.h"
#include "../ground/number.h"
#include "report.h"
#include "sentence.h"

struct page {
  const ohm_finding *finding;
  struct oc_text *out;
};

static double number(const struct page *page, ohm_field field) {
  return ohm_finding_number(page->finding, (int)field);
}

static bool has(const struct page *page, ohm_field field) {
  return !isnan(number(page, field));
}

static bool text_is(const struct page *page, ohm_field field, const char *word) {
  const char *text = ohm_finding_text(page->finding, (int)field, 0);
  return text && strcmp(text, word) == 0;
}

static void add_volts(struct oc_text *text, double v_volt) {
  char digits[OHM_NUMBER_SIZE];
  ohm_number_print_fixed(v_volt, 2, digits, sizeof digits);
  oc_text_add(text, digits);
  oc_text_add(text, " V");
}

static void add_whole_degrees(struct oc_text *text, double t_c) {
  char digits[OHM_NUMBER_SIZE];
  ohm_number_print_fixed(t_c, 0, digits, sizeof digits);
  oc_text_add(text, digits);
}

static void add_temperature_or(struct oc_text *text, double t_c) {
  if (isnan(t_c))
    oc_text_add(text, "no temperature of this sensor");
  else
    oc_say_temperature(text, t_c);
}

/* ---- what was read ---- */

static void caution_lines(const struct page *page) {
  bool hot = false;
  static const ohm_field warm[] = {OHM_FIELD_SENSOR_C, OHM_FIELD_T_C, OHM_FIELD_REPORTED_C,
                                   OHM_FIELD_AT_C};
  for (size_t i = 0; i < sizeof warm / sizeof warm[0]; i++)
    hot = hot || number(page, warm[i]) > OC_SCALDS_C;
  oc_sentence_line(page->out, "CAUTION",
                   "Hands, hair, sleeves clear: the fan may start, key off too.");
  oc_sentence_line(page->out, "",
                   hot ? "Hot coolant scalds: never open it hot. Pierce no wire."
                       : "Probe from behind the plug; pierce no wire, spread no pin.");
}

static void sensor_line(const struct page *page) {
  OC_SENTENCE(text);
  if (!has(page, OHM_FIELD_SENSOR_OHM))
    return;
  oc_say_resistance(&text, number(page, OHM_FIELD_SENSOR_OHM));
  oc_say_give_or_take(&text, number(page, OHM_FIELD_EXPANDED_SENSOR_OHM));
  oc_text_add(&text, ": ");
  add_temperature_or(&text, number(page, OHM_FIELD_SENSOR_C));
  oc_sentence_line(page->out, "At sensor", text.buffer);
}

static void pin_line(const struct page *page) {
  OC_SENTENCE(text);
  if (!has(page, OHM_FIELD_V_VOLT))
    return;
  add_volts(&text, number(page, OHM_FIELD_V_VOLT));
  if (has(page, OHM_FIELD_R_OHM)) {
    oc_text_add(&text, " through ");
    oc_say_resistance(&text, number(page, OHM_FIELD_PULL_UP_OHM));
    oc_text_add(&text, ": ");
    oc_say_resistance(&text, number(page, OHM_FIELD_R_OHM));
    oc_say_give_or_take(&text, number(page, OHM_FIELD_EXPANDED_R_OHM));
    oc_text_add(&text, ": ");
    add_temperature_or(&text, number(page, OHM_FIELD_T_C));
  }
  oc_sentence_line(page->out, "At the pin", text.buffer);
}

static void gauge_line(const struct page *page) {
  OC_SENTENCE(text);
  if (!has(page, OHM_FIELD_REPORTED_C))
    return;
  add_whole_degrees(&text, number(page, OHM_FIELD_REPORTED_C));
  oc_text_add(&text, " C: ");
  if (has(page, OHM_FIELD_REPORTED_OHM))
    oc_say_resistance(&text, number(page, OHM_FIELD_REPORTED_OHM));
  else
    oc_text_add(&text, "beyond this sensor");
  oc_sentence_line(page->out, "Reported", text.buffer);
}

static void thermometer_line(const struct page *page) {
  OC_SENTENCE(text);
  if (!has(page, OHM_FIELD_AT_C))
    return;
  oc_say_temperature(&text, number(page, OHM_FIELD_AT_C));
  oc_sentence_line(page->out, "It really is", text.buffer);
}

/* ---- where they part ---- */

static void add_between(struct oc_text *text, const struct page *page) {
  oc_say_digits(text, fabs(number(page, OHM_FIELD_BETWEEN_OHM)), 2);
  oc_say_give_or_take(text, number(page, OHM_FIELD_EXPANDED_BETWEEN_OHM));
}

/* ": the module sees 10 C too cold" */
static void add_parted(struct oc_text *text, const struct page *page) {
  double parted_k = number(page, OHM_FIELD_PARTED_K);
  if (isnan(parted_k))
    return;
  oc_text_add(text, "; module ");
  oc_say_kelvins(text, fabs(parted_k));
  oc_text_add(text, parted_k < 0 ? " too cold" : " too hot");
}

static void add_agreement(struct oc_text *text, const struct page *page) {
  if (!has(page, OHM_FIELD_BETWEEN_OHM)) {
    oc_text_add(text, "GOOD: the module reports what its volts say");
    return;
  }
  oc_text_add(text, "GOOD: they agree; up to ");
  oc_say_digits(text, number(page, OHM_FIELD_SERIES_OHM), 2);
  oc_text_add(text, " could still hide in plug and wire");
}

static void add_ground(struct oc_text *text, const struct page *page) {
  bool body = text_is(page, OHM_FIELD_NEGATIVE, "body");
  oc_text_add(text, body ? "YOUR GROUND: engine or body is not the module's; one"
                         : "CANNOT TELL YET: where was the negative lead? A ground");
  oc_text_add(text, " off by ");
  add_volts(text, fabs(number(page, OHM_FIELD_OFFSET_VOLT)));
  oc_text_add(text, " reads so");
}

static void add_several(struct oc_text *text, const struct page *page) {
  if (!has(page, OHM_FIELD_SENSOR_OHM))
    oc_text_add(text, "BAD: sensor, plug or wire");
  else if (has(page, OHM_FIELD_R_OHM))
    oc_text_add(text, "BAD: no two agree: more than one fault, or a slip in a number");
  else
    oc_text_add(text, "BAD: plug, wire or module");
  add_parted(text, page);
}

static void add_range(struct oc_text *text, const struct page *page) {
  if (!has(page, OHM_FIELD_OTHER_R_OHM)) {
    oc_text_add(text, "CANNOT TELL YET: neither pull-up fits these volts");
    return;
  }
  oc_text_add(text, "CANNOT TELL YET: ");
  add_temperature_or(text, number(page, OHM_FIELD_T_C));
  oc_text_add(text, " through ");
  oc_say_resistance(text, number(page, OHM_FIELD_PULL_UP_OHM));
  oc_text_add(text, ", or ");
  add_temperature_or(text, number(page, OHM_FIELD_OTHER_T_C));
  oc_text_add(text, " through ");
  oc_say_resistance(text, number(page, OHM_FIELD_OTHER_PULL_UP_OHM));
}

static void add_circuit(struct oc_text *text, const struct page *page, bool open) {
  if (!has(page, OHM_FIELD_V_VOLT)) {
    oc_text_add(text, "BAD: the sensor is open, no circuit between its pins");
    return;
  }
  if (number(page, OHM_FIELD_V_VOLT) > OC_OTHER_FEED_SHARE * number(page, OHM_FIELD_SUPPLY_VOLT)) {
    oc_text_add(text, "BAD: more volts than its supply has: a wire that touches another feed");
    return;
  }
  oc_text_add(text, open ? "BAD: the module sees no circuit: " : "BAD: the module sees a short: ");
  oc_text_add(text, has(page, OHM_FIELD_SENSOR_OHM) ? "plug or wire" : "sensor, plug or wire");
}

static void add_sensor(struct oc_text *text, const struct page *page, const char *what) {
  oc_text_add(text, "BAD: the sensor itself has too ");
  oc_text_add(text, what);
  oc_text_add(text, " ohms (");
  oc_say_limits(text, number(page, OHM_FIELD_LOW_OHM), number(page, OHM_FIELD_HIGH_OHM));
  oc_text_add(text, " is allowed)");
}

static void add_verdict(struct oc_text *text, const struct page *page) {
  switch (oc_finding_reason(page->finding)) {
  case OHM_REASON_CONFORMS:
    add_agreement(text, page);
    break;
  case OHM_REASON_SERIES:
    oc_text_add(text, "BAD: ");
    add_between(text, page);
    oc_text_add(text, ", in plug or wire");
    add_parted(text, page);
    break;
  case OHM_REASON_LEAKAGE:
    oc_text_add(text, "BAD: a path of about ");
    oc_say_resistance(text, number(page, OHM_FIELD_SHUNT_OHM));
    oc_text_add(text, " across the sensor, in plug or wire");
    add_parted(text, page);
    break;
  case OHM_REASON_GROUND:
    add_ground(text, page);
    break;
  case OHM_REASON_PULL_UP:
    oc_text_add(text, "NOT AS TOLD: the rest agrees, and the volts fit a pull-up of ");
    oc_say_resistance(text, number(page, OHM_FIELD_FITS_PULL_UP_OHM));
    break;
  case OHM_REASON_CURVE:
    oc_text_add(text, "BAD: the module makes other degrees of these volts");
    add_parted(text, page);
    break;
  case OHM_REASON_BETWEEN:
    add_several(text, page);
    break;
  case OHM_REASON_STUCK:
    oc_text_add(text, "CANNOT TELL YET: a value that never moves is no reading");
    break;
  case OHM_REASON_STAND_IN:
    oc_text_add(text, "CANNOT TELL YET: ");
    add_whole_degrees(text, number(page, OHM_FIELD_REPORTED_C));
    oc_text_add(text, " C is what some modules use when they believe no sensor");
    break;
  case OHM_REASON_RANGE:
    add_range(text, page);
    break;
  case OHM_REASON_ALONE:
    oc_text_add(text, "CANNOT TELL YET: nothing to hold it against");
    break;
  case OHM_REASON_OPEN:
    add_circuit(text, page, true);
    break;
  case OHM_REASON_SHORTED:
    if (has(page, OHM_FIELD_V_VOLT))
      add_circuit(text, page, false);
    else
      oc_text_add(text, "BAD: the sensor is shorted, next to 0 ohm between its pins");
    break;
  case OHM_REASON_LOW:
    add_sensor(text, page, "few");
    break;
  case OHM_REASON_HIGH:
    add_sensor(text, page, "many");
    break;
  case OHM_REASON_OVER_RANGE:
  case OHM_REASON_LONE_ONE:
    oc_text_add(text, "CANNOT TELL YET: the ohmmeter ran out of range; that is not yet open");
    break;
  default:
    oc_text_add(text, "CANNOT TELL YET: too coarse to say whether they part");
    break;
  }
}

static void verdict_line(const struct page *page) {
  OC_SENTENCE(text);
  add_verdict(&text, page);
  oc_sentence_line(page->out, "VERDICT", text.buffer);
}

/* ---- the fan ---- */

static void add_start(struct oc_text *text, double start_c) {
  if (isnan(start_c)) {
    oc_text_add(text, "over ");
    oc_text_add_number(text, OC_NEVER_C);
    return;
  }
  add_whole_degrees(text, start_c);
}

/* "108 C (105 to 112) while the gauge shows 97" */
static void add_fan(struct oc_text *text, const struct page *page) {
  oc_text_add(text, "it starts at a true ");
  add_start(text, number(page, OHM_FIELD_START_C));
  oc_text_add(text, " C (");
  if (has(page, OHM_FIELD_START_LOW_C) || !has(page, OHM_FIELD_START_C))
    add_start(text, number(page, OHM_FIELD_START_LOW_C));
  else
    oc_text_add(text, "always");
  oc_text_add(text, " to ");
  add_start(text, number(page, OHM_FIELD_START_HIGH_C));
  oc_text_add(text, ") while the gauge shows ");
  add_whole_degrees(text, number(page, OHM_FIELD_FAN_C));
}

static void fan_line(const struct page *page) {
  OC_SENTENCE(text);
  ohm_reason reason = oc_finding_reason(page->finding);
  if (reason == OHM_REASON_OPEN || reason == OHM_REASON_SHORTED) {
    oc_text_add(&text, "most modules run the fan then: not why it stays off");
  } else if (!ohm_finding_text(page->finding, OHM_FIELD_JOB, 0)) {
    oc_text_add(&text, "NOT ANSWERED: ohms at the sensor with volts or degrees tell");
  } else {
    static const char *const words[] = {
        [OHM_WITHIN] = "GOOD: ", [OHM_OUTSIDE] = "BAD: ", [OHM_UNDECIDED] = "NOT ANSWERED: "};
    oc_text_add(&text, words[ohm_finding_job(page->finding)]);
    add_fan(&text, page);
  }
  oc_sentence_line(page->out, "For the fan", text.buffer);
}

/* ---- what to do next ---- */

static const char *next_of(const struct page *page) {
  switch (oc_finding_reason(page->finding)) {
  case OHM_REASON_CONFORMS:
    return ohm_finding_job(page->finding) == OHM_WITHIN
               ? "fan, relay and fuse: sensor, plug and wires are not why"
               : "the same with the engine hot, where a few ohms count";
  case OHM_REASON_SERIES:
  case OHM_REASON_LEAKAGE:
    return "clean and tighten the plug; then ohmcurve substitute tells more";
  case OHM_REASON_GROUND:
    return "negative lead on the module's pin for the sensor's ground";
  case OHM_REASON_PULL_UP:
    return "measure the supply at the open plug, and say so with its limit";
  case OHM_REASON_CURVE:
    return "is it the sensor this module was made for? Compare part numbers";
  case OHM_REASON_BETWEEN:
    return "volts at the pin, negative lead on the module's sensor ground";
  case OHM_REASON_STUCK:
  case OHM_REASON_STAND_IN:
    return "does it move as the engine warms? If not, read the codes first";
  case OHM_REASON_RANGE:
    return "say which pull-up is in use, or add ohms at the sensor";
  case OHM_REASON_ALONE:
    return "ohms at the sensor, plug off, key off, while it is as hot";
  case OHM_REASON_OPEN:
  case OHM_REASON_SHORTED:
    return "key off, plug off: ohms at the sensor; then pins and wires";
  case OHM_REASON_LOW:
  case OHM_REASON_HIGH:
    return "pins cleaned, plug off, at the sensor: once more before you buy";
  case OHM_REASON_OVER_RANGE:
  case OHM_REASON_LONE_ONE:
    return "one range up; over range on the highest is open: type open";
  default:
    return "hot, with finer meters: a few ohms count there";
  }
}

void oc_report_pin(struct oc_text *out, const ohm_finding *finding) {
  const struct page page = {finding, out};
  caution_lines(&page);
  sensor_line(&page);
  pin_line(&page);
  gauge_line(&page);
  thermometer_line(&page);
  verdict_line(&page);
  fan_line(&page);
  oc_report_list(out, finding, "Not tested", OHM_FIELD_NOT_TESTED);
  oc_sentence_line(out, "Next", next_of(&page));
  oc_report_list(out, finding, "Assumed", OHM_FIELD_ASSUMED);
}
