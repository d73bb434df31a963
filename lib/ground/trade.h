/* SPDX-License-Identifier: MIT */
/*
 * What the trade takes for granted, each figure once. "Common practice" has no source; a
 * manual is cited by maker, model, year and section. A figure is a number, and where
 * OC_FIGURE is made otherwise, as in bench/finding.c, the text of it.
 */
#ifndef OC_TRADE_H
#define OC_TRADE_H

#define OC_FIGURE(figure) ((double)(figure))

/* ---- the fan ---- */

/* Ford Probe 1993, fan operation; Mercury Tracer 1997, cooling, initial inspection. */
#define OC_ASSUMED_FAN_C OC_FIGURE(97)
/* Common practice, no source. */
#define OC_ASSUMED_LEVEL       OC_FIGURE(0.95)
#define OC_ASSUMED_FAN_LIMIT_K OC_FIGURE(5)
/* Up to here a fan that has not started is said never to; common practice, no source. */
#define OC_NEVER_C OC_FIGURE(130)
/* Engine off this far above where the fan is to start; common practice, no source. */
#define OC_TOO_HOT_K OC_FIGURE(12)
/* Coolant warmer than this scalds; common practice, no source. */
#define OC_SCALDS_C OC_FIGURE(45)
/* From here up a reading is hot enough to speak for the fan; common practice, no source. */
#define OC_HOT_ENOUGH_C OC_FIGURE(85)
/* Series resistance asked about unless told; common practice, no source. */
#define OC_ASSUMED_HIDDEN_OHM OC_FIGURE(50)

/* ---- the sensor ---- */

/* Chevrolet Traverse 2010, P0116, component testing. */
#define OC_ASSUMED_TOLERANCE_PERCENT OC_FIGURE(5)
/* A part follows the printed curve no closer than this at any one temperature, relative
 * standard uncertainty; common practice, no source. */
#define OC_SCATTER OC_FIGURE(0.005)
/* A good part's curve is no rougher than this share of what its maker allows; common
 * practice, no source. */
#define OC_SCATTER_SHARE OC_FIGURE(0.2)
/* The flattest and the steepest beta between two rows above 60 C of the printed tables of
 * engine and gauge sensors, 3010 of Volvo LH 2.4 and 4570 of the same car in trade tables,
 * rounded outwards. */
#define OC_FLATTEST_BETA_K OC_FIGURE(3000)
#define OC_STEEPEST_BETA_K OC_FIGURE(4600)
/* A curve continued past its last row by the beta of its end may be off by this share of the
 * way: 9 in 10 of the printed tables, cut off 5 to 40 K before their end, are off by less. */
#define OC_BEYOND_SHARE OC_FIGURE(0.1)
/* How far a dissipation factor differs from sensor to sensor; common practice, no source. */
#define OC_DISSIPATION_SPREAD OC_FIGURE(0.2)
/* A resistance that changed by more than this factor, or a beta by more than this share, is
 * another part's; common practice, no source. */
#define OC_MOST_DRIFT_FACTOR OC_FIGURE(4)
#define OC_MOST_BETA_SHARE   OC_FIGURE(0.3)
/* Of sensors that are read to find out what they are, so many are none of those compared;
 * common practice, no source. */
#define OC_NONE_SHARE OC_FIGURE(0.25)
/* A gauge's sender reads this many times more or less than a module's sensor is allowed;
 * common practice, below the 1.9 times of the nearest of tables/. */
#define OC_GAUGE_FACTOR OC_FIGURE(1.75)

/* ---- the ohmmeter ---- */

/* Common practice, no source. */
#define OC_ASSUMED_METER_PERCENT OC_FIGURE(1)
#define OC_ASSUMED_METER_COUNTS  OC_FIGURE(3)
#define OC_ASSUMED_DISPLAY_COUNT OC_FIGURE(2000)
#define OC_FINEST_COUNT_OHM      OC_FIGURE(0.1)
/* Fluke 187 and 189, users manual, page 3-8: 0.1 to 0.2 ohm; longer ones common practice. */
#define OC_ASSUMED_LEAD_OHM       OC_FIGURE(0.3)
#define OC_ASSUMED_LEAD_LIMIT_OHM OC_FIGURE(0.2)
/* Leads that were measured repeat within this; common practice, no source. */
#define OC_LEADS_REPEAT_OHM OC_FIGURE(0.1)
/* Test current up to a resistance, and a tenth of it in each decade above, down to a
 * hundredth: Keithley 2002, specifications, page A-7, rounded up. */
#define OC_ASSUMED_CURRENT_MA OC_FIGURE(1)
#define OC_FULL_CURRENT_OHM   OC_FIGURE(2000)
/* A bare number that means more than the first from the bath is doubted when a thousand
 * times as much comes nearer than the second; common practice, no source. */
#define OC_DOUBTED_K OC_FIGURE(50)
#define OC_NEAR_K    OC_FIGURE(15)
/* Below this there is no element, but a wire: General Motors 2006-10, circuit testing, low
 * reference to ground. A short is below this share of the sensor too; common practice. */
#define OC_SHORTED_OHM   OC_FIGURE(5)
#define OC_SHORTED_SHARE OC_FIGURE(0.1)

/* ---- what says how warm it is ---- */

/* Common practice, no source. */
#define OC_ASSUMED_THERMOMETER_LIMIT_K   OC_FIGURE(2)
#define OC_ASSUMED_ICE_LIMIT_K           OC_FIGURE(0.5)
#define OC_ASSUMED_BOIL_LIMIT_K          OC_FIGURE(1)
#define OC_ASSUMED_BOIL_ALTITUDE_LIMIT_K OC_FIGURE(0.4)
#define OC_ASSUMED_BOIL_PRESSURE_LIMIT_K OC_FIGURE(0.2)
#define OC_ASSUMED_BOIL_DEPTH_K          OC_FIGURE(0.1)
#define OC_ASSUMED_INFRARED_LIMIT_K      OC_FIGURE(4)

/* ---- one more reading ---- */

/* Common practice, no source: not this near to one that was taken; a room; and of two
 * temperatures that tell as much but for this share, the room. */
#define OC_ELSEWHERE_K  OC_FIGURE(15)
#define OC_ROOM_C       OC_FIGURE(20)
#define OC_NEARLY_SHARE OC_FIGURE(0.9)
/* Forecasts so many standard uncertainties apart are told apart, and need not be further
 * apart than the second; common practice, no source. */
#define OC_TELLS_APART OC_FIGURE(2)
#define OC_WELL_APART  OC_FIGURE(5)
/* One that fits leads unless another is so many times as probable: Jeffreys, Theory of
 * Probability, 3rd ed., appendix B. */
#define OC_MUCH_LIKELIER OC_FIGURE(10)

/* ---- a car left standing ---- */

/* Inferred from the hours and differences that makers print for a cold start, not measured:
 * 5 to 8 h and 5.6 to 15 K, Chevrolet Uplander 2006, P0116; Saturn Sky 2007, P2199; Suzuki
 * Grand Vitara 2010, ECT rationality. */
#define OC_ASSUMED_STOP_C             OC_FIGURE(90)
#define OC_ASSUMED_STOP_LIMIT_K       OC_FIGURE(15)
#define OC_ASSUMED_STOP_TOLD_LIMIT_K  OC_FIGURE(5)
#define OC_ASSUMED_SOAK_ALLOW_K       OC_FIGURE(6)
#define OC_ASSUMED_COOLANT_TAU_LOW_H  OC_FIGURE(1)
#define OC_ASSUMED_COOLANT_TAU_HIGH_H OC_FIGURE(4)
#define OC_ASSUMED_OIL_TAU_LOW_H      OC_FIGURE(1)
#define OC_ASSUMED_OIL_TAU_HIGH_H     OC_FIGURE(5)
#define OC_ASSUMED_INTAKE_TAU_LOW_H   OC_FIGURE(0.5)
#define OC_ASSUMED_INTAKE_TAU_HIGH_H  OC_FIGURE(3)
#define OC_ASSUMED_AMBIENT_TAU_LOW_H  OC_FIGURE(0.1)
#define OC_ASSUMED_AMBIENT_TAU_HIGH_H OC_FIGURE(1)
/* Waiting longer than this is no advice; common practice, no source. */
#define OC_PATIENCE_H OC_FIGURE(72)

/* ---- the module's pin ---- */

/* Common practice, no source. */
#define OC_ASSUMED_SUPPLY_VOLT      OC_FIGURE(5)
#define OC_ASSUMED_SUPPLY_PERCENT   OC_FIGURE(2)
#define OC_ASSUMED_PULL_UP_PERCENT  OC_FIGURE(2)
#define OC_ASSUMED_VOLTS_PERCENT    OC_FIGURE(1)
#define OC_ASSUMED_VOLTS_COUNTS     OC_FIGURE(2)
#define OC_ASSUMED_REPORTED_LIMIT_K OC_FIGURE(1)
#define OC_ASSUMED_MOVED_LIMIT_K    OC_FIGURE(1)
/* Of the supply. Open: 4.90 V of 5 V, Hyundai Santa Fe 2011 diesel, P0118. Short: 0.1 V,
 * Mercedes-Benz, GF07.04-P-6040. Another feed: 5.2 V, General Motors 2006-10, circuit
 * testing. */
#define OC_ASSUMED_OPEN_SHARE  OC_FIGURE(0.98)
#define OC_ASSUMED_SHORT_SHARE OC_FIGURE(0.02)
#define OC_OTHER_FEED_SHARE    OC_FIGURE(1.04)
/* Of the degrees printed as those of an open or a shorted circuit the nearest: Chevrolet
 * Monte Carlo 1988, code 15; General Motors 2006-10, circuit testing. */
#define OC_OPEN_C    OC_FIGURE(-30)
#define OC_SHORTED_C OC_FIGURE(128)
/* The least and the greatest printed: Saturn SL 1991, DTC 17; Ford Windstar 2003, sensor
 * operating range charts, evaporator, worked out of its volts. */
#define OC_LEAST_PULL_UP_OHM    OC_FIGURE(348)
#define OC_GREATEST_PULL_UP_OHM OC_FIGURE(20000)
/* A good sensor below a pull-up reads less than this share of the least allowed: nearer to
 * it the sensor would have to be at its upper limit; common practice, no source. */
#define OC_PLUG_ON_SHARE OC_FIGURE(0.97)
/* The input keeps its range this factor past its changeover; common practice, no source. */
#define OC_PAST_CHANGEOVER OC_FIGURE(1.2)
/* Used, or shown, when the sensor is not believed: Toyota RAV4 2002, P0115, and Mitsubishi
 * Eclipse 1990-98 80; Saab 9-3 2002 diesel, P0117, 0; Saab 9-5 2004 V6 diesel, temperature
 * sensor, -20 and 60; Hyundai Santa Fe 2011 diesel, P0118, -10; and -40 or 140 for the
 * circuit, Lexus ES300 1999, P0115. */
#define OC_STAND_INS_C -40, -20, -10, 0, 60, 80, 140

/* ---- resistors in the sensor's place ---- */

/* Film resistors, and how far above the fan's start to aim; common practice, no source. */
#define OC_ASSUMED_RESISTOR_PERCENT     OC_FIGURE(5)
#define OC_ASSUMED_RESISTOR_E96_PERCENT OC_FIGURE(1)
#define OC_ASSUMED_AIM_K                OC_FIGURE(8)

/* ---- the circuit of the fan ---- */

/* The most a fan draws, unless its circuit says; common practice, no source. */
#define OC_ASSUMED_MOST_A OC_FIGURE(30)
/* From the first over a fuse it carries a current, below the second none; common practice,
 * no source. */
#define OC_DRAWS_MV     OC_FIGURE(0.7)
#define OC_DRAWS_NOT_MV OC_FIGURE(0.3)
/* Relative limit of error of a current by a fuse: those of one rating differ; common
 * practice, no source. */
#define OC_FUSE_ERROR OC_FIGURE(0.25)
/* Volts of one balance were not all read at one moment; common practice, no source. */
#define OC_BALANCE_VOLT OC_FIGURE(0.3)
/* Of a link of which nothing is known; by what they fall once it was renewed, and with each
 * good test that it would have shown itself in; common practice, no source. */
#define OC_ODDS_UNLESS_TOLD  OC_FIGURE(0.02)
#define OC_ODDS_IF_RENEWED   OC_FIGURE(0.1)
#define OC_ODDS_IF_NOT_SHOWN OC_FIGURE(0.2)
/* What is open or stuck altogether is so many times as frequent as any one size short of it; common
 * practice, no source. */
#define OC_OPEN_SHARE OC_FIGURE(4)
/* A part is bought or repaired when it is so probable, and at once when it is as good as certain;
 * common practice, no source. */
#define OC_PROBABLE_PART      OC_FIGURE(0.95)
#define OC_AS_GOOD_AS_CERTAIN OC_FIGURE(0.995)
/* And by what those of a link fall that would have to fail in two ways at once; common practice,
 * no source. */
#define OC_ODDS_IF_TWO_WAYS OC_FIGURE(0.01)

/* ---- the wiring ---- */

/* Sound ones: a wire with its ends, a contact, a blade fuse, what pulls a relay to ground, a
 * battery at rest; common practice, no source. */
#define OC_SOUND_CONDUCTOR_OHM OC_FIGURE(0.002)
#define OC_SOUND_CONTACT_OHM   OC_FIGURE(0.01)
#define OC_SOUND_FUSE_OHM      OC_FIGURE(0.003)
#define OC_SOUND_OUTPUT_OHM    OC_FIGURE(1)
#define OC_SOUND_BATTERY_OHM   OC_FIGURE(0.02)
/* A battery at rest, and the coil of a relay: 70 to 110 ohm (Daewoo Lacetti workshop manual, 2009,
 * cooling fan always on). */
#define OC_BATTERY_AT_REST_V OC_FIGURE(12.6)
#define OC_RELAY_COIL_OHM    OC_FIGURE(90)
/* Where a relay of 12 V pulls in and lets go; common practice, no source. */
#define OC_RELAY_PULLS_IN_V OC_FIGURE(7)
#define OC_RELAY_LETS_GO_V  OC_FIGURE(2.5)
/* A fuse blows in the time of a test from so many times its rating on; common practice, no
 * source. */
#define OC_FUSE_BLOWS_AT OC_FIGURE(1.6)
/* What is put across: a jumper with its clips, a bulb of a headlight, a lamp that takes no more
 * than a coil, both headlights; common practice, no source. */
#define OC_JUMPER_OHM      OC_FIGURE(0.02)
#define OC_BULB_WATT       OC_FIGURE(55)
#define OC_LAMP_WATT       OC_FIGURE(2)
#define OC_HEADLIGHTS_WATT OC_FIGURE(120)
/* A running fan draws from the first share of its amperes to the second; a coil has its ohms give
 * or take a share; a side of the circuit loses twice what a sound one does and so many ohm more;
 * all common practice, no source. */
#define OC_RUNNING_LEAST OC_FIGURE(0.3)
#define OC_RUNNING_MOST  OC_FIGURE(1.7)
#define OC_COIL_SPREAD   OC_FIGURE(0.3)
#define OC_DROP_OHM      OC_FIGURE(0.03)
/* And so many volts more than twice what a car that draws more would; common practice, no source.
 */
#define OC_LOST_V OC_FIGURE(0.1)
/* A fan at low speed has so much of the volts it has in a sound car; common practice, no source. */
#define OC_LOW_VOLTS_SHARE OC_FIGURE(0.85)
/* From so many amperes on a thing carries a fan, not a coil; common practice, no source. */
#define OC_CARRIES_A OC_FIGURE(1)
/* A car draws so many times more or less than a file says, and has so much more battery with its
 * engine running; common practice, no source. */
#define OC_CAR_SPREAD    OC_FIGURE(1.7)
#define OC_CHARGED_SHARE OC_FIGURE(1.15)

/* A fan below this share of its speed cools too little; common practice, no source. */
#define OC_FAN_MATTERS OC_FIGURE(0.75)
/* What an eye calls a fan that runs, and one that does not or is slow, as a share of its speed;
 * between them it cannot tell. Common practice, no source. */
#define OC_EYE_FAN_GOOD OC_FIGURE(0.9)
#define OC_EYE_FAN_BAD  OC_FIGURE(0.6)
/* Likewise one that stands still, and one that turns though nothing asks for it. */
#define OC_EYE_FAN_STILL OC_FIGURE(0.02)
#define OC_EYE_FAN_TURNS OC_FIGURE(0.15)
/* Likewise a bulb of 12 V that is bright, and one that is dim or dark; common practice, no
 * source. */
#define OC_EYE_BULB_DARK_V  OC_FIGURE(0.7)
#define OC_EYE_BULB_GLOWS_V OC_FIGURE(3)
#define OC_EYE_BULB_GOOD_V  OC_FIGURE(10)
#define OC_EYE_BULB_BAD_V   OC_FIGURE(8)

#endif
