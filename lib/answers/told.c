/* SPDX-License-Identifier: MIT */
#include "told.h"

#include "../ground/text.h"

static const double LEAST_SHOWN_OHM = 1e-3;

static void tell(ohm_finding *finding, ohm_field field, double value) {
  oc_finding_set_number(finding, field, value);
}

void oc_told_meter(ohm_finding *finding, const struct oc_meter_assumed *assumed) {
  if (assumed->accuracy)
    oc_finding_assume(finding, OC_ASSUME_ACCURACY);
  if (assumed->resolution)
    oc_finding_assume(finding, OC_ASSUME_RESOLUTION);
  if (assumed->zeros)
    oc_finding_assume(finding, OC_ASSUME_ZEROS);
  if (assumed->leads)
    oc_finding_assume(finding, OC_ASSUME_LEADS);
}

void oc_told_assumed(const struct oc_measurement *measurement, ohm_finding *finding) {
  static const enum oc_assumption of_reference[] = {
      [OHM_REFERENCE_THERMOMETER] = OC_ASSUME_THERMOMETER,
      [OHM_REFERENCE_ICE] = OC_ASSUME_ICE,
      [OHM_REFERENCE_BOIL] = OC_ASSUME_BOIL,
      [OHM_REFERENCE_BOIL_ALTITUDE] = OC_ASSUME_BOIL_ALTITUDE,
      [OHM_REFERENCE_BOIL_PRESSURE] = OC_ASSUME_BOIL_PRESSURE,
      [OHM_REFERENCE_INFRARED] = OC_ASSUME_INFRARED,
  };
  const struct {
    bool taken;
    enum oc_assumption assumption;
  } all[] = {
      {measurement->bath_assumed, of_reference[measurement->reference->kind]},
      {measurement->current_assumed, OC_ASSUME_CURRENT},
      {measurement->fan_assumed, OC_ASSUME_FAN},
      {measurement->limit_assumed, OC_ASSUME_LIMIT},
  };
  oc_told_meter(finding, &measurement->meter_assumed);
  for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
    if (all[i].taken)
      oc_finding_assume(finding, all[i].assumption);
}

void oc_told_place(const struct oc_measurement *measurement, ohm_finding *finding) {
  oc_finding_set_place(finding, measurement->place);
  switch (measurement->place) {
  case OHM_PLACE_SENSOR:
    oc_finding_leave_untested(finding, OC_UNTESTED_AT_SENSOR);
    break;
  case OHM_PLACE_PLUG_ON:
    oc_finding_leave_untested(finding, OC_UNTESTED_AT_PLUG);
    break;
  case OHM_PLACE_MODULE:
    oc_finding_leave_untested(finding, OC_UNTESTED_AT_MODULE);
    break;
  case OHM_PLACE_NOT_TOLD:
    oc_finding_leave_untested(finding, OC_UNTESTED_IF_SENSOR);
    oc_finding_leave_untested(finding, OC_UNTESTED_IF_MODULE);
    break;
  }
}

void oc_told_resistance(ohm_finding *finding, const oc_reading *reading,
                        const struct oc_budget *r_ohm, double level) {
  struct oc_spread spread = oc_spread_of(r_ohm);
  tell(finding, OHM_FIELD_R_OHM, r_ohm->value);
  tell(finding, OHM_FIELD_U_R_OHM, oc_budget_u(r_ohm));
  tell(finding, OHM_FIELD_EXPANDED_R_OHM, oc_spread_expanded(&spread, level));
  tell(finding, OHM_FIELD_METER_LIMIT_OHM, oc_budget_limit(r_ohm, OC_CAUSE_METER));
  tell(finding, OHM_FIELD_LEAD_OHM, reading->r_ohm - r_ohm->value);
  tell(finding, OHM_FIELD_LEAD_LIMIT_OHM, oc_budget_limit(r_ohm, OC_CAUSE_LEADS));
}

static void tell_meaning(ohm_finding *finding, const struct oc_measurement *measurement) {
  double r_ohm = measurement->read.value;
  double t_c;
  double alpha_per_k;
  if (ohm_curve_temperature(measurement->curve, r_ohm, &t_c) != OHM_OK ||
      ohm_curve_alpha(measurement->curve, t_c, &alpha_per_k) != OHM_OK)
    return;
  double ohm_per_k = fabs(alpha_per_k) * r_ohm;
  tell(finding, OHM_FIELD_T_C, t_c);
  tell(finding, OHM_FIELD_U_T_C, ohm_finding_number(finding, OHM_FIELD_U_R_OHM) / ohm_per_k);
  tell(finding, OHM_FIELD_EXPANDED_T_K,
       ohm_finding_number(finding, OHM_FIELD_EXPANDED_R_OHM) / ohm_per_k);
}

void oc_told_display(ohm_finding *finding, const oc_reading *reading) {
  char text[OHM_NUMBER_SIZE];
  struct oc_text out = oc_text_begin(text, sizeof text);
  if (reading->display == OC_DISPLAY_OPEN) {
    oc_text_add(&out, "open");
  } else if (reading->display == OC_DISPLAY_ONE) {
    oc_text_add(&out, "a lone 1");
  } else if (reading->display == OC_DISPLAY_OVER) {
    oc_text_add(&out, "over range");
    if (reading->range_ohm > 0) {
      char range[OHM_NUMBER_SIZE];
      ohm_resistance_print(reading->range_ohm, 1, range, sizeof range);
      oc_text_add(&out, " on ");
      oc_text_add(&out, range);
      tell(finding, OHM_FIELD_RANGE_OHM, reading->range_ohm);
    }
  } else if (reading->r_ohm < LEAST_SHOWN_OHM) {
    oc_text_add(&out, "0 ohm");
  } else {
    double digits = 4;
    if (reading->resolution_ohm > 0 && reading->r_ohm >= reading->resolution_ohm)
      digits = floor(log10(reading->r_ohm / reading->resolution_ohm) + 1e-9) + 1;
    ohm_resistance_print(reading->r_ohm, (int)fmin(fmax(digits, 1), 9), text, sizeof text);
  }
  oc_finding_set_text(finding, OHM_FIELD_READ, text);
}

void oc_told_reading(ohm_finding *finding, const struct oc_measurement *measurement) {
  oc_finding_set_text(finding, OHM_FIELD_SENSOR, ohm_sensor_name(measurement->sensor));
  oc_finding_set_text(finding, OHM_FIELD_SOURCE, ohm_sensor_source(measurement->sensor));
  tell(finding, OHM_FIELD_LEVEL, measurement->level);
  tell(finding, OHM_FIELD_READINGS, 1);
  oc_told_display(finding, measurement->reading);
  oc_told_place(measurement, finding);
  oc_told_assumed(measurement, finding);
  if (!measurement->has_number)
    return;
  oc_told_resistance(finding, measurement->reading, &measurement->read, measurement->level);
  tell_meaning(finding, measurement);
}

void oc_told_links(ohm_finding *finding, ohm_field field, const struct ohm_circuit *circuit,
                   oc_set links) {
  for (size_t i = 0; i < circuit->link_count; i++)
    if (links & oc_set_of(i))
      oc_finding_add_entry(finding, field, circuit->links[i].cells[OHM_LINK_LINK]);
}
