/* SPDX-License-Identifier: MIT */
/* What the trade takes for granted. */
#ifndef OC_TRADE_H
#define OC_TRADE_H

/* Assumed when not stated; all common practice, no source. */
#define OC_ASSUMED_LEVEL                 0.95
#define OC_ASSUMED_METER_PERCENT         1.0
#define OC_ASSUMED_METER_COUNTS          3.0
#define OC_ASSUMED_LEAD_OHM              0.3
#define OC_ASSUMED_LEAD_LIMIT_OHM        0.2
#define OC_ASSUMED_DISPLAY_COUNT         2000.0
#define OC_ASSUMED_THERMOMETER_LIMIT_K   2.0
#define OC_ASSUMED_ICE_LIMIT_K           0.5
#define OC_ASSUMED_BOIL_LIMIT_K          1.0
#define OC_ASSUMED_BOIL_ALTITUDE_LIMIT_K 0.4
#define OC_ASSUMED_BOIL_PRESSURE_LIMIT_K 0.2
#define OC_ASSUMED_BOIL_DEPTH_K          0.1
#define OC_ASSUMED_INFRARED_LIMIT_K      4.0
#define OC_ASSUMED_TOLERANCE_PERCENT     5.0
#define OC_ASSUMED_FAN_C                 97.0
#define OC_ASSUMED_FAN_LIMIT_K           5.0
#define OC_ASSUMED_CURRENT_MA            1.0

/* Assumed of a car left standing; inferred from the hours and differences that makers
 * print for a cold start, not measured. */
#define OC_ASSUMED_STOP_C             90.0
#define OC_ASSUMED_STOP_LIMIT_K       15.0
#define OC_ASSUMED_STOP_TOLD_LIMIT_K  5.0
#define OC_ASSUMED_SOAK_ALLOW_K       6.0
#define OC_ASSUMED_COOLANT_TAU_LOW_H  1.0
#define OC_ASSUMED_COOLANT_TAU_HIGH_H 4.0
#define OC_ASSUMED_OIL_TAU_LOW_H      1.0
#define OC_ASSUMED_OIL_TAU_HIGH_H     5.0
#define OC_ASSUMED_INTAKE_TAU_LOW_H   0.5
#define OC_ASSUMED_INTAKE_TAU_HIGH_H  3.0
#define OC_ASSUMED_AMBIENT_TAU_LOW_H  0.1
#define OC_ASSUMED_AMBIENT_TAU_HIGH_H 1.0

/* Assumed when not stated; all common practice, no source. The limits of the pin, as
 * shares of the supply, lie among those printed: 4.90 V and 0.1 V of 5 V. */
#define OC_ASSUMED_SUPPLY_VOLT      5.0
#define OC_ASSUMED_SUPPLY_PERCENT   2.0
#define OC_ASSUMED_PULL_UP_PERCENT  2.0
#define OC_ASSUMED_OPEN_SHARE       0.98
#define OC_ASSUMED_SHORT_SHARE      0.02
#define OC_ASSUMED_VOLTS_PERCENT    1.0
#define OC_ASSUMED_VOLTS_COUNTS     2.0
#define OC_ASSUMED_REPORTED_LIMIT_K 1.0

/** What the sensor may have cooled or warmed between ohms and volts; common practice. */
#define OC_ASSUMED_MOVED_LIMIT_K 1.0

/* Common practice: film resistors, and how far above the fan's start to aim. */
#define OC_ASSUMED_RESISTOR_PERCENT     5.0
#define OC_ASSUMED_RESISTOR_E96_PERCENT 1.0
#define OC_ASSUMED_AIM_K                8.0

/** Series resistance asked about unless told; common practice. */
#define OC_ASSUMED_HIDDEN_OHM 50.0

#endif
