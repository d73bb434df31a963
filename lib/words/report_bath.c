/* SPDX-License-Identifier: MIT */
/* A sensor at a known temperature, in the words of the bench. */
#include "report.h"

#include <string.h>

#include "../bench/finding.h"
#include "../ground/number.h"
#include "sentence.h"

static void add_chance(struct oc_text *out, double p) {
  if (isnan(p))
    return;
  oc_text_add(out, " (");
  oc_say_in_100(out, p);
  oc_text_add(out, " sure)");
}

/* ---- the lines, in the order of the screen ---- */

struct page {
  const ohm_finding *finding;
  struct oc_text *out;
};

static double number(const struct page *page, ohm_field field) {
  return ohm_finding_number(page->finding, (int)field);
}

static void caution_lines(const struct page *page) {
  oc_sentence_line(page->out, "CAUTION",
                   "Key off, blades clear: unplugging this sensor starts many fans.");
  if (number(page, OHM_FIELD_AT_C) > OC_SCALDS_C)
    oc_sentence_line(page->out, "",
                     "Hot coolant scalds: never open it hot. Maker's procedure first.");
}

static bool text_is(const struct page *page, ohm_field field, const char *word) {
  const char *text = ohm_finding_text(page->finding, (int)field, 0);
  return text && strcmp(text, word) == 0;
}

static const char *place_words(const struct page *page) {
  if (text_is(page, OHM_FIELD_PLACE, "sensor"))
    return ", plug off, at the sensor's own pins";
  if (text_is(page, OHM_FIELD_PLACE, "plug_on"))
    return ", with the plug on";
  if (text_is(page, OHM_FIELD_PLACE, "module"))
    return ", at the module's end of the wires";
  return ", you did not say where";
}

void oc_report_reading(struct oc_text *out, const ohm_finding *finding) {
  const struct page whole = {finding, out};
  const struct page *page = &whole;
  OC_SENTENCE(read);
  const char *display = ohm_finding_text(page->finding, OHM_FIELD_READ, 0);
  oc_text_add(&read, display ? display : "several times");
  oc_text_add(&read, place_words(page));
  oc_sentence_line(page->out, "You read", read.buffer);
  if (isnan(number(page, OHM_FIELD_R_OHM)))
    return;
  OC_SENTENCE(means);
  double t_c = number(page, OHM_FIELD_T_C);
  if (isnan(t_c)) {
    oc_text_add(&means, "no temperature within this sensor's range");
  } else {
    oc_say_temperature(&means, t_c);
    oc_say_give_or_take(&means, number(page, OHM_FIELD_EXPANDED_T_K));
  }
  oc_sentence_line(page->out, "That means", means.buffer);
}

static void temperature_line(const struct page *page) {
  static const struct {
    const char *word;
    const char *said;
  } kinds[] = {{"thermometer", " (your thermometer)"},
               {"ice", " (your ice bath)"},
               {"boil", " (boiling near sea level)"},
               {"boil_altitude", " (boiling at your altitude)"},
               {"boil_pressure", " (boiling at your pressure)"},
               {"infrared", " (infrared, of the surface it sees)"}};
  OC_SENTENCE(text);
  oc_say_temperature(&text, number(page, OHM_FIELD_AT_C));
  double half = number(page, OHM_FIELD_EXPANDED_AT_K);
  if (half > 0)
    oc_say_give_or_take(&text, half);
  for (size_t i = 0; i < sizeof kinds / sizeof kinds[0]; i++)
    if (text_is(page, OHM_FIELD_REFERENCE, kinds[i].word))
      oc_text_add(&text, kinds[i].said);
  oc_sentence_line(page->out, "It really is", text.buffer);
}

/* The tightest of the other makers; all of them are in the finding. */
static void other_bands_line(const struct page *page) {
  OC_SENTENCE(text);
  const char *tightest = ohm_finding_text(page->finding, OHM_FIELD_OTHER_BANDS, 0);
  if (!tightest)
    return;
  size_t more = 0;
  while (ohm_finding_text(page->finding, OHM_FIELD_OTHER_BANDS, more + 1))
    more++;
  oc_text_add(&text, "the tightest ");
  oc_text_add(&text, tightest);
  if (more > 0) {
    oc_text_add(&text, "; ");
    oc_text_add_count(&text, more);
    oc_text_add(&text, " more");
  }
  oc_sentence_line(page->out, "By others", text.buffer);
}

static void allowed_lines(const struct page *page) {
  OC_SENTENCE(text);
  double low = number(page, OHM_FIELD_LOW_OHM);
  double expected = number(page, OHM_FIELD_EXPECTED_OHM);
  const char *band = ohm_finding_text(page->finding, OHM_FIELD_BAND, 0);
  if (!isnan(low)) {
    oc_say_limits(&text, low, number(page, OHM_FIELD_HIGH_OHM));
    oc_text_add(&text, " here (");
    char percent[OHM_NUMBER_SIZE];
    ohm_number_print_fixed(number(page, OHM_FIELD_TOLERANCE_PERCENT), 1, percent, sizeof percent);
    oc_text_add(&text, percent);
    oc_text_add(&text, " %");
    oc_text_add(&text, band ? ", by " : "");
    oc_text_add(&text, band ? band : "");
    oc_text_add(&text, ")");
  } else if (!isnan(expected)) {
    oc_text_add(&text, "not known; about ");
    oc_say_resistance(&text, expected);
    oc_text_add(&text, " is usual at this temperature");
  } else {
    oc_text_add(&text, "not known at this temperature");
  }
  oc_sentence_line(page->out, "Allowed", text.buffer);
  other_bands_line(page);
}

/* ---- the verdict on the part ---- */

static void add_high(struct oc_text *text, const struct page *page) {
  double range_ohm = number(page, OHM_FIELD_RANGE_OHM);
  if (isnan(range_ohm)) {
    oc_text_add(text, "BAD: too many ohms, it reads colder than it is");
  } else {
    oc_text_add(text, "BAD: more than ");
    oc_say_resistance(text, range_ohm);
    oc_text_add(text, " where ");
    oc_say_resistance(text, number(page, OHM_FIELD_HIGH_OHM));
    oc_text_add(text, " is the most allowed");
  }
  add_chance(text, number(page, OHM_FIELD_P_HIGH));
}

static void add_uncertain(struct oc_text *text, const struct page *page) {
  bool none_passes = isnan(number(page, OHM_FIELD_ACCEPT_LOW_OHM));
  oc_text_add(text, "CANNOT TELL YET: ");
  oc_say_in_100(text, number(page, OHM_FIELD_P_WITHIN));
  oc_text_add(text, " for good");
  if (none_passes && number(page, OHM_FIELD_READINGS) == 1) {
    oc_text_add(text, "; too coarse for any to pass");
    return;
  }
  oc_text_add(text, ", ");
  oc_text_add_number(text, round(1000 * number(page, OHM_FIELD_LEVEL)) / 10);
  oc_text_add(text, " are needed");
}

/* A pull-up across the sensor: a measurement, unless the plug was said to be on. */
static void add_plug_on(struct oc_text *text, const struct page *page) {
  if (text_is(page, OHM_FIELD_PLACE, "plug_on"))
    oc_text_add(text, "CANNOT TELL YET: with the plug on, the module is measured too");
  else
    oc_text_add(text, "CANNOT TELL YET: is the plug off? With it on, a good one reads so");
}

void oc_report_verdict(struct oc_text *out, const ohm_finding *finding) {
  const struct page whole = {finding, out};
  const struct page *page = &whole;
  OC_SENTENCE(text);
  switch (oc_finding_reason(page->finding)) {
  case OHM_REASON_CONFORMS:
    oc_text_add(&text, number(page, OHM_FIELD_READINGS) > 1 ? "GOOD at these temperatures"
                                                            : "GOOD at this temperature");
    add_chance(&text, number(page, OHM_FIELD_P_WITHIN));
    break;
  case OHM_REASON_LOW:
    oc_text_add(&text, "BAD: too few ohms, it reads hotter than it is");
    add_chance(&text, number(page, OHM_FIELD_P_LOW));
    break;
  case OHM_REASON_HIGH:
    add_high(&text, page);
    break;
  case OHM_REASON_OPEN:
    oc_text_add(&text, "BAD: open, no circuit between your probes");
    break;
  case OHM_REASON_SHORTED:
    oc_text_add(&text, "BAD: shorted, next to 0 ohm between your probes");
    break;
  case OHM_REASON_OVER_RANGE:
    oc_text_add(&text, "CANNOT TELL YET: the meter ran out of range; that is not yet open");
    break;
  case OHM_REASON_LONE_ONE:
    oc_text_add(&text, "CANNOT TELL YET: a 1 alone at the left of the display is over range");
    break;
  case OHM_REASON_MISSING_K:
    oc_text_add(&text, "CANNOT TELL YET: did you mean ");
    oc_say_resistance(&text, number(page, OHM_FIELD_SUGGESTED_OHM));
    oc_text_add(&text, "? A dial at k shows it without");
    break;
  case OHM_REASON_PLUG_ON:
    add_plug_on(&text, page);
    break;
  case OHM_REASON_MOVING:
    oc_text_add(&text, "CANNOT TELL YET: still moving, by ");
    oc_say_resistance(&text, number(page, OHM_FIELD_MOVED_OHM));
    oc_text_add(&text, " between the last two readings");
    break;
  case OHM_REASON_NO_TOLERANCE:
    oc_text_add(&text, "CANNOT TELL YET: nothing says how far off this sensor may be");
    break;
  case OHM_REASON_OUTSIDE_BAND:
    oc_text_add(&text, "CANNOT TELL YET: nothing says what is allowed at this temperature");
    break;
  default:
    add_uncertain(&text, page);
    break;
  }
  oc_sentence_line(page->out, "VERDICT", text.buffer);
}

/* ---- the verdict for the fan ---- */

static void add_start(struct oc_text *out, double late_k) {
  if (isnan(late_k)) {
    oc_text_add(out, "off up to ");
    oc_say_never(out);
    return;
  }
  oc_say_kelvins(out, fabs(late_k));
  oc_text_add(out, late_k >= 0 ? " late" : " early");
}

static void add_good_for_fan(struct oc_text *text, const struct page *page) {
  oc_text_add(text, "GOOD: set for ");
  oc_say_temperature(text, number(page, OHM_FIELD_FAN_C));
  oc_text_add(text, ", it starts at most ");
  oc_say_kelvins(text, fmax(0, number(page, OHM_FIELD_LATE_K)));
  oc_text_add(text, " late or ");
  oc_say_kelvins(text, fmax(0, number(page, OHM_FIELD_EARLY_K)));
  oc_text_add(text, " early");
}

static void add_hidden(struct oc_text *text, const struct page *page) {
  bool late = !(number(page, OHM_FIELD_LATE_K) <= number(page, OHM_FIELD_LIMIT_K));
  bool wires = text_is(page, OHM_FIELD_PLACE, "module");
  oc_text_add(text, "NOT ANSWERED: ");
  if (late) {
    oc_say_resistance(text, number(page, OHM_FIELD_SERIES_OHM));
    oc_text_add(text, wires ? " could hide in sensor, plug and wires (fan "
                            : " could hide in the sensor (fan ");
    add_start(text, number(page, OHM_FIELD_SERIES_LATE_K));
    oc_text_add(text, "); ");
    oc_say_digits(text, OC_ASSUMED_HIDDEN_OHM, 2);
    oc_text_add(text, " before a sound one: fan ");
    add_start(text, number(page, OHM_FIELD_FIFTY_LATE_K));
  } else {
    oc_say_resistance(text, number(page, OHM_FIELD_LEAKAGE_OHM));
    oc_text_add(text, " could hide across the sensor (fan ");
    add_start(text, -number(page, OHM_FIELD_LEAKAGE_EARLY_K));
    oc_text_add(text, ")");
  }
}

static void add_coarse_for_fan(struct oc_text *text, const struct page *page) {
  double late_k = number(page, OHM_FIELD_LATE_K);
  double early_k = number(page, OHM_FIELD_EARLY_K);
  oc_text_add(text, "NOT ANSWERED: after this measurement the fan may ");
  if (isnan(late_k)) {
    oc_text_add(text, "never start");
  } else {
    oc_text_add(text, "start ");
    oc_say_kelvins(text, fmax(0, late_k));
    oc_text_add(text, " late");
  }
  oc_text_add(text, " or ");
  if (isnan(early_k)) {
    oc_text_add(text, "always run");
    return;
  }
  oc_say_kelvins(text, fmax(0, early_k));
  oc_text_add(text, " early");
}

/* Whether it is what hides in series that could make the fan too late. */
static bool hides_in_series(const struct page *page) {
  double late_k = number(page, OHM_FIELD_LATE_K);
  double series_late_k = number(page, OHM_FIELD_SERIES_LATE_K);
  return !(late_k <= number(page, OHM_FIELD_LIMIT_K)) &&
         (isnan(series_late_k) || series_late_k == late_k);
}

static void fan_line(const struct page *page) {
  OC_SENTENCE(text);
  ohm_reason reason = oc_finding_reason(page->finding);
  if (reason == OHM_REASON_OPEN || reason == OHM_REASON_SHORTED) {
    oc_sentence_line(page->out, "For the fan",
                     "open or shorted makes most modules run the fan: not why it stays off");
    return;
  }
  if (!ohm_finding_text(page->finding, OHM_FIELD_JOB, 0))
    return;
  switch (oc_finding_job_reason(page->finding)) {
  case OHM_JOB_CONFORMS:
    add_good_for_fan(&text, page);
    break;
  case OHM_JOB_LATE:
  case OHM_JOB_EARLY:
    oc_text_add(&text, "BAD: set for ");
    oc_say_temperature(&text, number(page, OHM_FIELD_FAN_C));
    oc_text_add(&text, ", it starts more than ");
    oc_say_kelvins(&text, number(page, OHM_FIELD_LIMIT_K));
    oc_text_add(&text, text_is(page, OHM_FIELD_JOB_REASON, "late") ? " late" : " early");
    break;
  case OHM_JOB_HIDDEN:
    add_hidden(&text, page);
    break;
  case OHM_JOB_UNCERTAIN:
    if (hides_in_series(page))
      add_hidden(&text, page);
    else
      add_coarse_for_fan(&text, page);
    break;
  }
  oc_sentence_line(page->out, "For the fan", text.buffer);
}

/* ---- what to do next ---- */

/* What would decide an undecided measurement. */
static void add_finer(struct oc_text *text, const struct page *page) {
  double needed_k = number(page, OHM_FIELD_NEEDED_K);
  double reading_k = number(page, OHM_FIELD_U_T_C);
  double bath_k = number(page, OHM_FIELD_U_AT_C);
  if (isnan(number(page, OHM_FIELD_ACCEPT_LOW_OHM)) && needed_k > OC_LEAST_SAID_K) {
    char digits[OHM_NUMBER_SIZE];
    ohm_number_print_fixed(floor(needed_k * 10) / 10, 1, digits, sizeof digits);
    oc_text_add(text, "know the temperature to ");
    oc_text_add(text, digits);
    oc_text_add(text, number(page, OHM_FIELD_AT_C) > OC_SCALDS_C
                          ? " C: a trusted thermometer beside it"
                          : " C: ice water, or a trusted thermometer");
  } else if (reading_k > bath_k) {
    oc_text_add(text, "a finer range or a better meter; take the leads' own ohms off");
  } else {
    oc_text_add(text, number(page, OHM_FIELD_AT_C) > OC_SCALDS_C
                          ? "know the temperature better: a trusted thermometer beside it"
                          : "know the temperature better: ice water, a trusted thermometer");
  }
}

static void add_next_when_good(struct oc_text *text, const struct page *page) {
  if (ohm_finding_job(page->finding) == OHM_WITHIN)
    oc_text_add(text, text_is(page, OHM_FIELD_PLACE, "module")
                          ? "the module: sensor, plug and wires have shown what they can"
                          : "plug and wires: the same reading at the module's end, hot");
  else
    oc_say_hot(text);
}

static bool may_be_a_gauges(const struct page *page) {
  double r_ohm = number(page, OHM_FIELD_R_OHM);
  return r_ohm < number(page, OHM_FIELD_LOW_OHM) / OC_GAUGE_FACTOR ||
         r_ohm > number(page, OHM_FIELD_HIGH_OHM) * OC_GAUGE_FACTOR;
}

static void add_next_when_bad(struct oc_text *text, const struct page *page) {
  if (may_be_a_gauges(page))
    oc_text_add(text, "pins cleaned, once more; or is it a gauge's sender? identify it");
  else if (text_is(page, OHM_FIELD_PLACE, "module"))
    oc_text_add(text, "the same at the sensor's own pins: if good there, plug or wires");
  else
    oc_text_add(text, "pins cleaned, plug off, at the sensor: once more before you buy");
}

void oc_report_next(struct oc_text *out, const ohm_finding *finding) {
  const struct page whole = {finding, out};
  const struct page *page = &whole;
  OC_SENTENCE(text);
  switch (oc_finding_reason(page->finding)) {
  case OHM_REASON_CONFORMS:
    add_next_when_good(&text, page);
    break;
  case OHM_REASON_LOW:
  case OHM_REASON_HIGH:
    add_next_when_bad(&text, page);
    break;
  case OHM_REASON_OPEN:
  case OHM_REASON_SHORTED:
    oc_text_add(&text, "is it a radiator fan switch? OL cold and 0 hot is good. Else repeat");
    break;
  case OHM_REASON_OVER_RANGE:
    oc_text_add(&text, "one range up; over range on the highest is open: then type open");
    break;
  case OHM_REASON_LONE_ONE:
    oc_text_add(&text, "go one range up; if it was 1 ohm, type 1.0");
    break;
  case OHM_REASON_MISSING_K:
    oc_text_add(&text, "type the reading with its k, or with ohm behind it");
    break;
  case OHM_REASON_PLUG_ON:
    oc_text_add(&text, "key off, plug off, and at the sensor's own pins");
    break;
  case OHM_REASON_MOVING:
    oc_text_add(&text, "wait until it stands still, then once more");
    break;
  case OHM_REASON_NO_TOLERANCE:
    oc_text_add(&text, "find the maker's limits, or say how far off it may be, such as 5%");
    break;
  case OHM_REASON_OUTSIDE_BAND:
    oc_text_add(&text, "for the part: at a temperature for which limits are printed");
    break;
  default:
    add_finer(&text, page);
    break;
  }
  oc_sentence_line(page->out, "Next", text.buffer);
}

void oc_report_list(struct oc_text *out, const ohm_finding *finding, const char *label,
                    ohm_field field) {
  OC_SENTENCE(text);
  const char *entry;
  for (size_t i = 0; (entry = ohm_finding_text(finding, (int)field, i)); i++) {
    oc_text_add(&text, i > 0 ? "; " : "");
    oc_text_add(&text, entry);
  }
  if (text.length > 0)
    oc_sentence_line(out, label, text.buffer);
}

void oc_report_bath(struct oc_text *out, const ohm_finding *finding) {
  const struct page page = {finding, out};
  caution_lines(&page);
  oc_report_reading(out, finding);
  temperature_line(&page);
  allowed_lines(&page);
  oc_report_verdict(out, finding);
  fan_line(&page);
  oc_report_list(out, finding, "Not tested", OHM_FIELD_NOT_TESTED);
  oc_report_next(out, finding);
  oc_report_list(out, finding, "Assumed", OHM_FIELD_ASSUMED);
}
