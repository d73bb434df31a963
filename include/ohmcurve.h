/* SPDX-License-Identifier: MIT */
/*
 * ohmcurve: from the reading of an ohmmeter to a verdict on a temperature
 * sensor.
 *
 *   reading -- meter --> estimate -- curve --> estimate -- reference and
 *   tolerance --> finding -- report --> sentences
 *
 * Conventions, true of every declaration below
 *
 * Units     Resistance is in ohm, temperature in degrees Celsius. The suffix
 *           of a name is its unit: r_ohm, t_c, dt_k (a difference, kelvin),
 *           beta_k. A name that begins with u_ is a standard uncertainty
 *           (k = 1) of the quantity that follows; of a temperature, kelvin.
 *           A name that ends in _percent is 5 for 5 %.
 * Errors    Three kinds, kept apart. A bad definition (of a curve, a sensor, a
 *           notation) gives a status and, in the caller's ohm_error, a sentence
 *           with its place. A bad value gives a status, and NaN in every output.
 *           A verdict is a result, never an error; "undecided" is a verdict.
 *           An ohm_error pointer may be NULL when the sentence is not wanted.
 * NULL      A NULL where an object, a text or an output is required gives
 *           OHM_NULL_ARGUMENT. Every ..._free accepts NULL.
 * Memory    Only functions named ..._new, ..._load and ..._parse allocate; what
 *           they return is the caller's, to be given to the matching ..._free.
 *           Texts returned by other functions belong to the object they were
 *           asked of and live as long as it does. Functions that write a text
 *           fill the caller's buffer, end it with NUL when size is not 0, and
 *           return the length the whole text needs without that NUL.
 * Threads   No global state, no locale. A curve and a sensor never change once
 *           made and may be used by many threads at once. Any other object may
 *           be used by one thread at a time.
 * Growth    A struct that begins with size_t size may grow: start from its
 *           ..._INIT. A zero in any other member means the default.
 *           ohm_estimate and ohm_error are frozen.
 */
#ifndef OHMCURVE_H
#define OHMCURVE_H

#include <stddef.h>

#define OHM_VERSION_MAJOR 0
#define OHM_VERSION_MINOR 1
#define OHM_VERSION_PATCH 0
#define OHM_VERSION       "0.1.0"

#if defined(__GNUC__) && !defined(SWIG)
#define OHM_API __attribute__((visibility("default")))
#else
#define OHM_API
#endif

#ifdef __cplusplus
extern "C" {
#endif

/* ---- status ------------------------------------------------------------- */

/** What a call says of itself. OHM_OK is 0; every other value is a failure. */
typedef enum ohm_status {
  OHM_OK = 0,         /**< done */
  OHM_NULL_ARGUMENT,  /**< a required pointer is NULL */
  OHM_BAD_ARGUMENT,   /**< a value is NaN, infinite or of the wrong sign */
  OHM_OUT_OF_RANGE,   /**< a value lies outside the range that was asked of */
  OHM_BAD_SYNTAX,     /**< a text is not in its notation */
  OHM_BAD_DEFINITION, /**< the parts do not make a usable curve or sensor */
  OHM_NOT_FOUND,      /**< no such name */
  OHM_CANNOT_OPEN,    /**< the file cannot be opened or read */
  OHM_TOO_LARGE,      /**< more than 16 MiB, 4096 rows or 16 readings */
  OHM_NO_MEMORY       /**< an allocation failed */
} ohm_status;

/** The sentence of a failure and its place. Frozen at 512 bytes. */
typedef struct ohm_error {
  int status;        /**< an ohm_status */
  int line;          /**< 1 is the first line; 0 when no line is meant */
  int column;        /**< in bytes, 1 is the first; 0 when none is meant */
  char message[500]; /**< the place and one sentence, UTF-8 */
} ohm_error;

/** A quantity and its standard uncertainty (k = 1), both in the same unit
 *  (a temperature in degrees Celsius, its uncertainty in kelvin). Frozen. */
typedef struct ohm_estimate {
  double value;
  double u;
} ohm_estimate;

/**
 * Version of the library that is running, "0.1.0".
 * Status  cannot fail.
 */
OHM_API const char *ohm_version(void);

/**
 * Version of the sensor tables built into the library, "1".
 * It changes whenever a value in them does.
 * Status  cannot fail.
 */
OHM_API const char *ohm_tables_version(void);

/**
 * Name of a status in lower case, "out_of_range"; "unknown" for any other value.
 * Status  cannot fail.
 */
OHM_API const char *ohm_status_name(int status);

/**
 * A sentence for a status: what was wrong and what to do.
 * Status  cannot fail; a value that is no status gets a sentence that says so.
 */
OHM_API const char *ohm_status_text(int status);

/* ---- number ------------------------------------------------------------- */

/** Room for any text that ohm_number_print() writes, with its NUL. */
#define OHM_NUMBER_SIZE 32

/**
 * Read a decimal number: 12, -0.5, .5, 1e-3. Correctly rounded (to nearest,
 * ties to even), whatever the locale. All of text[0..length) must belong to it.
 *
 * Out     value   the number; NaN unless OHM_OK. Too small becomes 0.
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX no number, or more than it;
 *         OHM_OUT_OF_RANGE beyond the largest double.
 */
OHM_API ohm_status ohm_number_read(const char *text, size_t length, double *value);

/**
 * Write a number as the shortest decimal text that reads back equal, and of the
 * shortest the nearest: 2310, 21.5, 1e-7. Whatever the locale. NaN is "nan",
 * infinities are "inf" and "-inf".
 *
 * In      buffer  room for size bytes; may be NULL when size is 0
 * Return  length of the whole text; cut to fit when it is size or more.
 * Status  cannot fail.
 */
OHM_API size_t ohm_number_print(double value, char *buffer, size_t size);

/**
 * Write a number with a fixed count of decimals, correctly rounded (ties to
 * even): 21.50.
 *
 * In      decimals  0 to 20; outside of it the nearer end is taken
 * Return  length of the whole text; cut to fit when it is size or more.
 * Status  cannot fail.
 */
OHM_API size_t ohm_number_print_fixed(double value, int decimals, char *buffer, size_t size);

/**
 * Write a resistance as a bench would say it: "187 ohm", "2.31 k", "1.2 M".
 *
 * In      r_ohm   any; what is not finite is written as ohm_number_print() does
 *         digits  significant digits to keep, 1 to 17; zeros at the end are kept
 * Return  length of the whole text; cut to fit when it is size or more.
 * Status  cannot fail.
 */
OHM_API size_t ohm_resistance_print(double r_ohm, int digits, char *buffer, size_t size);

/* ---- nearest ------------------------------------------------------------ */

/**
 * The word that is spelt most like the given one, case aside: the fewest letters
 * put in, left out, changed or exchanged with a neighbour.
 *
 * In      words   count texts
 * Return  one of words; NULL when none is near (more than a third of the letters
 *         differ), or a pointer is NULL.
 * Status  cannot fail.
 */
OHM_API const char *ohm_nearest(const char *word, const char *const *words, size_t count);

/* ---- decision ----------------------------------------------------------- */

/** Probabilities that a quantity lies below, inside and above its limits. */
typedef struct ohm_conformance {
  double p_low;
  double p_within;
  double p_high;
} ohm_conformance;

/**
 * Conformance probability of a quantity that was measured once, flat prior.
 * The error is a normal part plus, when limit is not 0, an independent
 * rectangular part; the distribution of the sum is exact.
 *
 * In      value   the measured value, any unit, finite
 *         u       standard uncertainty of the normal part, same unit, >= 0
 *         limit   half-width of the rectangular part, same unit, >= 0
 *         low     lower limit; -INFINITY for none
 *         high    upper limit, >= low; INFINITY for none
 * Out     conformance  NaN unless OHM_OK. A value without any error that lies on
 *         a limit counts half on each side, the limit of a small error.
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT.
 * Source  JCGM 106:2012, clause 7 (specific risk).
 */
OHM_API ohm_status ohm_conformance_of(double value, double u, double limit, double low, double high,
                                      ohm_conformance *conformance);

/* ---- water -------------------------------------------------------------- */

/**
 * Temperature at which water boils.
 *
 * In      pressure_hpa  absolute, hectopascal, 6.12 to 220000
 * Out     t_c     degrees Celsius; NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT NaN; OHM_OUT_OF_RANGE.
 * Source  IAPWS R7-97(2012), equation 31 (region 4, backward).
 */
OHM_API ohm_status ohm_water_boiling(double pressure_hpa, double *t_c);

/**
 * Pressure of the standard atmosphere at a height.
 *
 * In      altitude_m  geometric height, -430 to 11000
 * Out     pressure_hpa  hectopascal; NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT NaN; OHM_OUT_OF_RANGE.
 * Source  ISO 2533:1975, troposphere.
 */
OHM_API ohm_status ohm_water_pressure(double altitude_m, double *pressure_hpa);

/* ---- divider ------------------------------------------------------------ */

/**
 * Volts at a module's pin, a sensor to ground below a pull-up resistor.
 *
 *     V = V0 R / (P + R)
 *
 * In      r_ohm   0 to 1e12
 *         pull_up_ohm, supply_volt  P and V0, above 0, up to 1e12
 * Out     v_volt  volt; NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT.
 */
OHM_API ohm_status ohm_divider_volts(double r_ohm, double pull_up_ohm, double supply_volt,
                                     double *v_volt);

/**
 * The resistance that leaves these volts at the pin.
 *
 * In      v_volt  0 up to, but not, supply_volt
 * Out     r_ohm   ohm; NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE.
 */
OHM_API ohm_status ohm_divider_resistance(double v_volt, double pull_up_ohm, double supply_volt,
                                          double *r_ohm);

/* ---- preferred ---------------------------------------------------------- */

/** A series of preferred values. */
typedef enum ohm_series { OHM_SERIES_E12 = 0, OHM_SERIES_E24, OHM_SERIES_E96 } ohm_series;

/**
 * The preferred value nearest to a resistance, by their ratio.
 *
 * In      r_ohm   1 to 1e7
 *         series  an ohm_series
 * Out     nearest_ohm  ohm, 1 to 1e7; NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT NaN, or no such series;
 *         OHM_OUT_OF_RANGE.
 * Source  IEC 60063.
 */
OHM_API ohm_status ohm_preferred_nearest(double r_ohm, int series, double *nearest_ohm);

/* ---- curve -------------------------------------------------------------- */

/** Resistance against temperature, one face over all models. */
typedef struct ohm_curve ohm_curve;

/**
 * Two-parameter model of an NTC element.
 *
 *     1/T = 1/T0 + ln(R/R0) / B
 *
 * In      r0_ohm  resistance at t0_c, ohm, finite, > 0
 *         t0_c    degrees Celsius, > -273.15, <= 1000
 *         beta_k  B, kelvin, 100 to 100000
 *         low_c, high_c  range, degrees Celsius, -273.15 < low_c < high_c <= 1000
 * Return  the curve, or NULL with the error filled in.
 * Status  OHM_BAD_ARGUMENT; OHM_BAD_DEFINITION a resistance in the range is not
 *         a finite positive double; OHM_NO_MEMORY.
 * Source  IEC 60539-1, B-value.
 */
OHM_API ohm_curve *ohm_curve_beta_new(double r0_ohm, double t0_c, double beta_k, double low_c,
                                      double high_c, ohm_error *error);

/**
 * Three-parameter model of an NTC element.
 *
 *     1/T = A + B ln(R) + C ln(R)^3      T in kelvin, R in ohm
 *
 * In      a, b, c  the coefficients, finite; c may be 0
 *         low_c, high_c  range, degrees Celsius, -273.15 < low_c < high_c <= 1000
 * Return  the curve, or NULL with the error filled in.
 * Status  OHM_BAD_ARGUMENT; OHM_BAD_DEFINITION resistance does not fall steadily
 *         over the range (the sentence says where it turns), or the terms cancel to
 *         fewer than nine digits; OHM_NO_MEMORY.
 * Source  Steinhart and Hart, Deep-Sea Research 15 (1968) 497-503.
 */
OHM_API ohm_curve *ohm_curve_steinhart_hart_new(double a, double b, double c, double low_c,
                                                double high_c, ohm_error *error);

/**
 * Four-term model of an NTC element, canonical from resistance to temperature.
 *
 *     1/T = A1 + B1 L + C1 L^2 + D1 L^3    L = ln(R/Rref), T in K
 *
 * In      r_ref_ohm  ohm, finite, > 0
 *         a1, b1, c1, d1  the coefficients, finite
 *         low_c, high_c  range, degrees Celsius, -273.15 < low_c < high_c <= 1000
 * Return  the curve, or NULL with the error filled in.
 * Status  OHM_BAD_ARGUMENT; OHM_BAD_DEFINITION resistance does not fall steadily
 *         over the range (the sentence says where it turns), or the terms cancel to
 *         fewer than nine digits; OHM_NO_MEMORY.
 * Source  as data sheets print it, for one Vishay BCcomponents document 29049. A data
 *         sheet's two sets of coefficients are separate fits and do not close: one of
 *         them is canonical.
 */
OHM_API ohm_curve *ohm_curve_four_term_new(double r_ref_ohm, double a1, double b1, double c1,
                                           double d1, double low_c, double high_c,
                                           ohm_error *error);

/**
 * Four-term model of an NTC element, canonical from temperature to resistance.
 *
 *     ln(R/Rref) = A + B/T + C/T^2 + D/T^3      T in kelvin
 *
 * In, Return, Status, Source   as ohm_curve_four_term_new().
 * Status  OHM_BAD_ARGUMENT; OHM_BAD_DEFINITION; OHM_NO_MEMORY.
 */
OHM_API ohm_curve *ohm_curve_four_term_of_temperature_new(double r_ref_ohm, double a, double b,
                                                          double c, double d, double low_c,
                                                          double high_c, ohm_error *error);

/**
 * Platinum element, by the Callendar-Van Dusen equation.
 *
 *     R = R0 (1 + A t + B t^2), below 0 C also + R0 C (t - 100) t^3
 *
 * In      r0_ohm  resistance at 0 degrees Celsius, ohm, finite, > 0
 *         low_c, high_c  range, degrees Celsius, -200 <= low_c < high_c <= 850
 * Return  the curve, or NULL with the error filled in.
 * Status  OHM_BAD_ARGUMENT; OHM_NO_MEMORY.
 * Source  IEC 60751, which gives A, B and C.
 */
OHM_API ohm_curve *ohm_curve_platinum_new(double r0_ohm, double low_c, double high_c,
                                          ohm_error *error);

/**
 * Silicon element with a positive temperature coefficient.
 *
 *     R = R25 (1 + alpha D + beta D^2)      D = t - 25
 *
 * In      r25_ohm  resistance at 25 degrees Celsius, ohm, finite, > 0
 *         alpha_per_k  per kelvin, finite
 *         beta_per_k2  per square kelvin, finite
 *         low_c, high_c  range, degrees Celsius, -273.15 < low_c < high_c <= 1000
 * Return  the curve, or NULL with the error filled in.
 * Status  OHM_BAD_ARGUMENT; OHM_BAD_DEFINITION resistance does not rise steadily over
 *         the range (the sentence says where it turns); OHM_NO_MEMORY.
 * Source  as data sheets of silicon sensors print it.
 */
OHM_API ohm_curve *ohm_curve_silicon_new(double r25_ohm, double alpha_per_k, double beta_per_k2,
                                         double low_c, double high_c, ohm_error *error);

/**
 * Curve through printed points of an NTC element: piecewise cubic in
 * (ln R, 1/T), its slopes those of the parabola through three neighbours, limited
 * so that it falls steadily. Two points are a beta. The points convert exactly.
 *
 * In      t_c     temperatures, degrees Celsius, rising, > -273.15, <= 1000
 *         r_ohm   resistances, ohm, finite, > 0, falling
 *         count   2 to 4096
 * Return  the curve, or NULL with the error filled in.
 * Status  OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT; OHM_BAD_DEFINITION the points do
 *         not rise and fall (the sentence names the pair); OHM_TOO_LARGE;
 *         OHM_NO_MEMORY.
 * Source  slopes: three-point (parabolic) finite differences on unequal spacing;
 *         limiter: Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980) 238-246.
 */
OHM_API ohm_curve *ohm_curve_points_new(const double *t_c, const double *r_ohm, size_t count,
                                        ohm_error *error);

/** Give a curve back. NULL is allowed. Status  cannot fail. */
OHM_API void ohm_curve_free(ohm_curve *curve);

/**
 * Temperature of the element from its resistance.
 *
 * In      r_ohm   inside ohm_curve_range()
 * Out     t_c     degrees Celsius; NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT NaN, or not above 0;
 *         OHM_OUT_OF_RANGE.
 */
OHM_API ohm_status ohm_curve_temperature(const ohm_curve *curve, double r_ohm, double *t_c);

/**
 * Resistance of the element at a temperature.
 *
 * In      t_c     inside ohm_curve_range()
 * Out     r_ohm   ohm; NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT NaN, or at or below
 *         -273.15; OHM_OUT_OF_RANGE.
 */
OHM_API ohm_status ohm_curve_resistance(const ohm_curve *curve, double t_c, double *r_ohm);

/**
 * Temperature coefficient alpha = (1/R) dR/dT at a temperature; negative for an
 * NTC element, positive for platinum and silicon.
 *
 * In      t_c     inside ohm_curve_range()
 * Out     alpha_per_k  per kelvin; NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE.
 */
OHM_API ohm_status ohm_curve_alpha(const ohm_curve *curve, double t_c, double *alpha_per_k);

/**
 * The range of a curve, both ends included.
 *
 * Out     low_c, high_c         degrees Celsius
 *         at_low_ohm, at_high_ohm  resistance at those two temperatures, ohm.
 *         Any of the four may be NULL. NaN unless OHM_OK.
 * Status  OHM_OK; OHM_NULL_ARGUMENT no curve.
 */
OHM_API ohm_status ohm_curve_range(const ohm_curve *curve, double *low_c, double *high_c,
                                   double *at_low_ohm, double *at_high_ohm);

/**
 * ohm_curve_temperature() for an array. A value that cannot be converted gives
 * NaN in its place and the rest go on. r_ohm and t_c may be the same array.
 *
 * In      r_ohm   count resistances; NULL only when count is 0
 * Out     t_c     count temperatures, degrees Celsius
 *         failed  how many are NaN; may be NULL
 * Status  OHM_OK, whatever failed; OHM_NULL_ARGUMENT.
 */
OHM_API ohm_status ohm_curve_temperatures(const ohm_curve *curve, const double *r_ohm, double *t_c,
                                          size_t count, size_t *failed);

/**
 * ohm_curve_resistance() for an array, in the same manner.
 *
 * In      t_c     count temperatures; NULL only when count is 0
 * Out     r_ohm   count resistances, ohm
 *         failed  how many are NaN; may be NULL
 * Status  OHM_OK, whatever failed; OHM_NULL_ARGUMENT.
 */
OHM_API ohm_status ohm_curve_resistances(const ohm_curve *curve, const double *t_c, double *r_ohm,
                                         size_t count, size_t *failed);

/* ---- audit -------------------------------------------------------------- */

/** What speaks against the rows of a printed table, before it is believed. */
typedef struct ohm_audit ohm_audit;

/** What is wrong with a suspect figure. */
typedef enum ohm_suspicion {
  OHM_SUSPECT_ORDER = 0, /**< temperatures do not rise, or resistances do not fall */
  OHM_SUSPECT_BAND,      /**< the nominal is not between its limits */
  OHM_SUSPECT_DIGITS,    /**< off the line through the other rows; a slip of digits fits */
  OHM_SUSPECT_LINE,      /**< off that line; no slip of digits fits */
  OHM_SUSPECT_CURVE,     /**< off that line together with neighbours: another curve */
  OHM_SUSPECT_DEGREES,   /**< degrees Celsius and Fahrenheit disagree */
  OHM_SUSPECT_VOLTS      /**< the volts do not fit the pull-up of the other rows */
} ohm_suspicion;

/** One suspect figure. Its texts belong to the audit. */
typedef struct ohm_suspect {
  size_t size;
  int kind;   /**< an ohm_suspicion */
  int line;   /**< of the text, 1 is the first */
  int column; /**< in bytes, 1 is the first */
  double t_c;
  const char *name;      /**< of its column, "r_nom_ohm" */
  const char *printed;   /**< the figure as it stands there */
  const char *would_fit; /**< the figure that a slip would explain; NULL when none does.
                              Suggested, never applied */
  double low;            /**< what would fit lies from here, in the unit of the column; */
  double high;           /**< to here. NaN when not known */
  double level;          /**< how sure it is, 0.5 to 1 */
  const char *sentence;  /**< the place and the evidence, UTF-8 */
} ohm_suspect;

/**
 * Look for misprints in the text of a sensor file with rows. Rows flagged suspect are
 * looked at like any other. Beside its columns, temp_f, v_signal, v_signal_hot and
 * as_printed are read ("70 F 20 C", "5.23 k": what the page says of the digits), and
 * a line "# supply_v: 5" (5 V when there is none).
 *
 * Line   Every row is led to by the others in (1/T, ln R), T in kelvin: a polynomial
 *        with normal priors of a thermistor's size on its coefficients, weighted by
 *        what the printed digits leave open and by the scatter of the others. Worst
 *        rows are taken away first. A row is suspect when it is likelier off than not,
 *        with one in a hundred off beforehand; ends are allowed half as much again.
 *        Needs five rows. Limits may be uneven, by a share of the band's width.
 * Volts  V/V0 = R/(R + P): the pull-up P that most rows agree with; three rows.
 *
 * In      text    UTF-8, length bytes; need not end in NUL
 *         name    used in sentences
 * Return  the audit, or NULL with the error filled in.
 * Status  OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX the header row lacks a column;
 *         OHM_BAD_DEFINITION there is no row; OHM_TOO_LARGE; OHM_NO_MEMORY.
 * Source  deleted residuals taken away in turn: Rosner, Technometrics 25 (1983)
 *         165-172.
 */
OHM_API ohm_audit *ohm_audit_parse(const char *text, size_t length, const char *name,
                                   ohm_error *error);

/**
 * Look for misprints in a sensor file: one plain file of at most 16 MiB.
 *
 * Return  the audit, or NULL with the error filled in.
 * Status  those of ohm_audit_parse(); OHM_CANNOT_OPEN.
 */
OHM_API ohm_audit *ohm_audit_load(const char *path, ohm_error *error);

/** Give an audit back. NULL is allowed. Status  cannot fail. */
OHM_API void ohm_audit_free(ohm_audit *audit);

/** How many rows were looked at; 0 when audit is NULL. Status  cannot fail. */
OHM_API size_t ohm_audit_row_count(const ohm_audit *audit);

/** How many figures are suspect; 0 when audit is NULL. Status  cannot fail. */
OHM_API size_t ohm_audit_count(const ohm_audit *audit);

/** A suspect figure, in the order of the lines; NULL when there is no such.
 *  Status  cannot fail. */
OHM_API const ohm_suspect *ohm_audit_suspect(const ohm_audit *audit, size_t index);

/** How many doubts concern the table as a whole. Status  cannot fail; 0 when audit is
 *  NULL. */
OHM_API size_t ohm_audit_remark_count(const ohm_audit *audit);

/** One of them, a sentence: volts that fit no one pull-up, rows of another curve,
 *  resistance that rises. NULL when there is no such. Status  cannot fail. */
OHM_API const char *ohm_audit_remark(const ohm_audit *audit, size_t index);

/** Name of an ohm_suspicion, "digits"; NULL when there is no such. Status  cannot fail. */
OHM_API const char *ohm_suspicion_name(int suspicion);

/* ---- sensor ------------------------------------------------------------- */

/** A curve with its tolerance, name and source: what a sensor file holds. */
typedef struct ohm_sensor ohm_sensor;

/**
 * Read a sensor from the text of a sensor file. Lines of "# key: value", then,
 * for a table, a header row and rows, CSV. A row that cannot be used is left out
 * and noted; see ohm_sensor_note().
 *
 * In      text    UTF-8, length bytes; need not end in NUL
 *         name    used for the sensor when the text gives none, and in sentences
 *         error   the first fault that made the sensor unusable
 * Return  the sensor, or NULL with the error filled in.
 * Status  OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_BAD_DEFINITION; OHM_TOO_LARGE;
 *         OHM_NO_MEMORY.
 */
OHM_API ohm_sensor *ohm_sensor_parse(const char *text, size_t length, const char *name,
                                     ohm_error *error);

/**
 * Read a sensor file: one plain file of at most 16 MiB.
 *
 * Return  the sensor, or NULL with the error filled in.
 * Status  those of ohm_sensor_parse(); OHM_CANNOT_OPEN.
 */
OHM_API ohm_sensor *ohm_sensor_load(const char *path, ohm_error *error);

/** Give a sensor back. NULL is allowed. Status  cannot fail. */
OHM_API void ohm_sensor_free(ohm_sensor *sensor);

/**
 * Write a sensor as the text of a sensor file; parsed again it gives an equal one.
 *
 * Return  length of the whole text, cut to fit when it is size or more; 0 when
 *         sensor is NULL.
 * Status  cannot fail.
 */
OHM_API size_t ohm_sensor_print(const ohm_sensor *sensor, char *buffer, size_t size);

/** The curve of a sensor, owned by it; NULL when sensor is. Status  cannot fail. */
OHM_API const ohm_curve *ohm_sensor_curve(const ohm_sensor *sensor);

/** Name of a sensor, "ntc-2k45-20c"; NULL when sensor is. Status  cannot fail. */
OHM_API const char *ohm_sensor_name(const ohm_sensor *sensor);

/** Description of a sensor; "" when none. Status  cannot fail. */
OHM_API const char *ohm_sensor_description(const ohm_sensor *sensor);

/** Source of a sensor's figures; "" when none. Status  cannot fail. */
OHM_API const char *ohm_sensor_source(const ohm_sensor *sensor);

/**
 * What kind of sensor it is, as its file says: "module" feeds a control module,
 * "gauge" an instrument; "" when not told.
 * Status  cannot fail.
 */
OHM_API const char *ohm_sensor_kind(const ohm_sensor *sensor);

/**
 * Dissipation factor, milliwatt per kelvin; NaN when not known or sensor is NULL.
 * Status  cannot fail.
 */
OHM_API double ohm_sensor_dissipation_mw_per_k(const ohm_sensor *sensor);

/** How many notes loading left. Status  cannot fail; 0 when sensor is NULL. */
OHM_API size_t ohm_sensor_note_count(const ohm_sensor *sensor);

/** One note: its place and a sentence; NULL when there is no such note.
 *  Status  cannot fail. */
OHM_API const char *ohm_sensor_note(const ohm_sensor *sensor, size_t index);

/**
 * What the maker allows at a temperature; where makers' bands differ, the widest.
 * Between printed rows the relative half-widths ln(high/nominal) and ln(nominal/low)
 * run linearly in 1/T.
 *
 * In      t_c     degrees Celsius
 * Out     low_ohm, nominal_ohm, high_ohm   ohm. Each may be NULL. The limits are
 *         NaN unless OHM_OK; the nominal is given wherever the curve reaches.
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE the curve
 *         does not reach it, or reaches it and the printed limits do not;
 *         OHM_NOT_FOUND the sensor has no tolerance at all.
 */
OHM_API ohm_status ohm_sensor_band(const ohm_sensor *sensor, double t_c, double *low_ohm,
                                   double *nominal_ohm, double *high_ohm);

/** One printed row of a sensor; a cell that was left blank is NaN. Frozen. */
typedef struct ohm_sensor_row {
  double t_c;
  double min_ohm;
  double nominal_ohm;
  double max_ohm;
} ohm_sensor_row;

/** How many printed rows a sensor has, in rising temperature; 0 for a model. Rows of
 *  makers' bands are not among them. Status  cannot fail; 0 when sensor is NULL. */
OHM_API size_t ohm_sensor_row_count(const ohm_sensor *sensor);

/** One printed row; all NaN when there is no such row. Status  cannot fail. */
OHM_API ohm_sensor_row ohm_sensor_row_at(const ohm_sensor *sensor, size_t index);

/** How many makers' bands a sensor has beside its own limits. Status  cannot fail; 0
 *  when sensor is NULL. */
OHM_API size_t ohm_sensor_band_count(const ohm_sensor *sensor);

/** Name of a maker's band, "kawasaki-z750"; NULL when there is no such band.
 *  Status  cannot fail. */
OHM_API const char *ohm_sensor_band_name(const ohm_sensor *sensor, size_t index);

/** Where a maker's band was printed; NULL when there is no such band.
 *  Status  cannot fail. */
OHM_API const char *ohm_sensor_band_source(const ohm_sensor *sensor, size_t index);

/* ---- fit ---------------------------------------------------------------- */

/** A point a curve is fitted to. Frozen. */
typedef struct ohm_fit_point {
  double t_c;     /**< degrees Celsius, > -273.15, <= 1000 */
  double r_ohm;   /**< ohm, finite, > 0 */
  double u_t_k;   /**< standard uncertainty of the temperature, kelvin; 0: not known */
  double u_r_ohm; /**< standard uncertainty of the resistance; 0: not known. When one of the
                       two is known the other counts as none */
} ohm_fit_point;

/** What can be fitted; t0_c of a beta is 25. */
typedef enum ohm_fit_model {
  OHM_FIT_BETA = 0,       /**< ohm_curve_beta_new(), from 2 points */
  OHM_FIT_STEINHART_HART, /**< ohm_curve_steinhart_hart_new(), from 3 */
  OHM_FIT_FOUR_TERM       /**< ohm_curve_four_term_new(), from 4 */
} ohm_fit_model;

/** What to fit. */
typedef struct ohm_fit_request {
  size_t size;
  int model;        /**< an ohm_fit_model */
  double r_ref_ohm; /**< Rref of the four-term form; 0: that of the point nearest to 25 C */
  double low_c;     /**< range the curve is to have; both 0: the span of the points */
  double high_c;
} ohm_fit_request;

#define OHM_FIT_REQUEST_INIT                                                                       \
  { sizeof(ohm_fit_request), OHM_FIT_BETA, 0.0, 0.0, 0.0 }

/** What the intervals of a fit rest on. */
typedef enum ohm_fit_basis {
  OHM_FIT_NO_INTERVAL = 0, /**< nothing: as many points as coefficients, none known */
  OHM_FIT_KNOWN,           /**< the uncertainties given, as they are, never scaled */
  OHM_FIT_SCATTER          /**< the scatter about the fit, by Student's t */
} ohm_fit_basis;

/** A curve fitted to points, and how well it is known. */
typedef struct ohm_fit ohm_fit;

/**
 * Fit a curve to points: exactly when there are as many as coefficients, else by
 * least squares of temperature, each point weighted by its uncertainty (that of a
 * resistance through the slope), all alike when none is known. The order of the points
 * does not matter; several may share a temperature.
 *
 * In      points  count of them, up to 4096; NULL only when count is 0
 *         request the model and its range
 * Return  the fit, or NULL with the error filled in.
 * Status  OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT a number is unusable; OHM_TOO_LARGE;
 *         OHM_BAD_DEFINITION too few points, too close or contradictory ones (the
 *         sentence names the pair), some with an uncertainty and some without, or a fit
 *         that does not fall steadily over the range; OHM_NO_MEMORY.
 * Source  orthogonal factors: Golub and Van Loan, Matrix Computations, 5.3; weights:
 *         Orear, Am. J. Phys. 50 (1982) 912-916.
 */
OHM_API ohm_fit *ohm_curve_fit(const ohm_fit_point *points, size_t count,
                               const ohm_fit_request *request, ohm_error *error);

/** Give a fit back. NULL is allowed. Status  cannot fail. */
OHM_API void ohm_fit_free(ohm_fit *fit);

/** The fitted curve, owned by the fit; NULL when fit is. Status  cannot fail. */
OHM_API const ohm_curve *ohm_fit_curve(const ohm_fit *fit);

/** Name of a parameter in the order of the curve's own, "beta_k"; NULL past the last.
 *  Status  cannot fail. */
OHM_API const char *ohm_fit_parameter_name(const ohm_fit *fit, size_t index);

/**
 * A parameter in its printed form, and its standard uncertainty.
 *
 * Out     parameter  its u is 0 for one that was chosen (t0_c, r_ref_ohm), NaN when there
 *         is no interval; both NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_NOT_FOUND no such parameter.
 */
OHM_API ohm_status ohm_fit_parameter(const ohm_fit *fit, size_t index, ohm_estimate *parameter);

/**
 * Covariance and correlation of two parameters. A parameter that was chosen has
 * neither with any other: 0. Of each with itself the covariance is its variance, of one
 * that was chosen 0, and the correlation 1.
 *
 * Out     covariance, correlation  may be NULL; NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT no fit; OHM_NOT_FOUND no such parameter, or there is no
 *         interval.
 */
OHM_API ohm_status ohm_fit_covariance(const ohm_fit *fit, size_t first, size_t second,
                                      double *covariance, double *correlation);

/** An ohm_fit_basis; OHM_FIT_NO_INTERVAL when fit is NULL. Status  cannot fail. */
OHM_API int ohm_fit_basis_of(const ohm_fit *fit);

/** A sentence for an ohm_fit_basis: what the intervals rest on, or why there are none.
 *  Status  cannot fail. */
OHM_API const char *ohm_fit_basis_text(int basis);

/** Points less coefficients: degrees of freedom. 0 when fit is NULL. Status  cannot fail. */
OHM_API size_t ohm_fit_degrees(const ohm_fit *fit);

/** Fitted temperature less that of a point, in the order given, kelvin; NaN past the
 *  last.  Status  cannot fail. */
OHM_API double ohm_fit_residual_k(const ohm_fit *fit, size_t index);

/**
 * Scatter s of the points about the fit, one standard deviation, kelvin; it holds what
 * the model cannot follow too. NaN when the uncertainties are known, or nothing is left
 * to tell it from.
 * Status  cannot fail.
 */
OHM_API double ohm_fit_scatter_k(const ohm_fit *fit);

/**
 * Chi-square of the points about the fit and the probability that chance alone
 * exceeds it, at ohm_fit_degrees(). A probability near 0: the model does not follow the
 * points, or their uncertainties are too small; near 1: too large.
 *
 * Out     chi_square, probability  may be NULL; NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT no fit; OHM_NOT_FOUND the uncertainties are not known,
 *         or there are only as many points as coefficients.
 * Source  Pearson, Philos. Mag. 50 (1900) 157-175.
 */
OHM_API ohm_status ohm_fit_chi_square(const ohm_fit *fit, double *chi_square, double *probability);

/**
 * Misfit of the model, kelvin: the standard deviation that, alike at every point and on
 * top of the uncertainties given, makes chi-square its expectation; 0 when chi-square
 * is not above it. It is a line of its own and in no other figure. NaN where there is no
 * chi-square.
 * Status  cannot fail.
 * Source  the moment estimator of DerSimonian and Laird, Control. Clin. Trials 7 (1986)
 *         177-188.
 */
OHM_API double ohm_fit_misfit_k(const ohm_fit *fit);

/**
 * Temperature from a resistance, with what the points leave uncertain of the curve. The
 * uncertainty of the resistance itself and the misfit of the model are not in it.
 *
 * In      r_ohm   inside the range of the curve or the span of the points
 *         level   coverage probability, 0 < level < 1
 * Out     t_c     its u is NaN unless OHM_OK
 *         expanded_k  u times Student's t, or the normal quantile when the uncertainties
 *                 of the points are known; may be NULL; NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE resistance or
 *         level; OHM_NOT_FOUND there is no interval, the value is given.
 * Source  JCGM 100:2008, 5.2.2 and G.3.
 */
OHM_API ohm_status ohm_fit_temperature(const ohm_fit *fit, double r_ohm, double level,
                                       ohm_estimate *t_c, double *expanded_k);

/**
 * Make a sensor of a fit. Printed and parsed again it keeps the covariance.
 *
 * In      name    of the sensor
 * Return  the sensor, or NULL with the error filled in.
 * Status  OHM_NULL_ARGUMENT; OHM_NO_MEMORY.
 */
OHM_API ohm_sensor *ohm_fit_sensor_new(const ohm_fit *fit, const char *name, ohm_error *error);

/**
 * ohm_fit_temperature() of a sensor that was fitted, also after it went through a file.
 *
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE; OHM_NOT_FOUND the
 *         sensor carries no covariance, the value is given.
 */
OHM_API ohm_status ohm_sensor_temperature(const ohm_sensor *sensor, double r_ohm, double level,
                                          ohm_estimate *t_c, double *expanded_k);

/* ---- sensors built in --------------------------------------------------- */

/** How many sensors are built in. Status  cannot fail. */
OHM_API size_t ohm_sensor_built_in_count(void);

/** Name of a built-in sensor, in the order of names; NULL past the last.
 *  Status  cannot fail. */
OHM_API const char *ohm_sensor_built_in_name(size_t index);

/** The built-in name that is spelt most like the given one; NULL when none is
 *  near, or name is NULL.  Status  cannot fail. */
OHM_API const char *ohm_sensor_built_in_nearest(const char *name);

/**
 * Built-in sensors whose description and sources hold every one of the given words
 * (maker, model, year, engine), case aside.
 *
 * In      words    separated by spaces
 *         room     how many places indices has
 * Out     indices  for ohm_sensor_built_in_name(), rising; may be NULL when room is 0
 * Return  how many there are, also those for which there was no room; 0 when words is
 *         NULL or holds no word.
 * Status  cannot fail.
 */
OHM_API size_t ohm_sensor_built_in_matches(const char *words, size_t *indices, size_t room);

/**
 * Read a built-in sensor.
 *
 * Return  the sensor, or NULL with the error filled in.
 * Status  OHM_NULL_ARGUMENT; OHM_NOT_FOUND (the sentence offers the nearest name);
 *         OHM_NO_MEMORY.
 */
OHM_API ohm_sensor *ohm_sensor_built_in_load(const char *name, ohm_error *error);

/* ---- meter -------------------------------------------------------------- */

/** Whether a group of members was stated or is to be assumed. */
typedef enum ohm_standing {
  OHM_ASSUMED = 0, /**< use the library's assumption and say so in the finding */
  OHM_STATED,      /**< use the members as they are, zeros too */
  OHM_EXACT        /**< no error at all: the members of the group are not looked at */
} ohm_standing;

/** What the display showed. */
typedef enum ohm_display {
  OHM_DISPLAY_VALUE = 0, /**< a number */
  OHM_DISPLAY_OVER,      /**< over-range: OL */
  OHM_DISPLAY_OPEN,      /**< no circuit, said of the highest range */
  OHM_DISPLAY_ONE        /**< a lone 1: over-range on many displays, or 1 ohm */
} ohm_display;

/** One reading of an ohmmeter. */
typedef struct ohm_reading {
  size_t size;
  int display;           /**< an ohm_display */
  double r_ohm;          /**< as displayed, leads included, 0 to 1e12 */
  double resolution_ohm; /**< of the digits given; 0: not known */
  double range_ohm;      /**< of OHM_DISPLAY_OVER, the range it was on; 0: not told */
  double zeros_ohm;      /**< what a whole number leaves open: 100 of a bare 2300, 1000 of
                              10k; 0: every digit was displayed */
  int bare;              /**< not 0: a bare number, the dial's k may be missing */
} ohm_reading;

#define OHM_READING_INIT                                                                           \
  { sizeof(ohm_reading), OHM_DISPLAY_VALUE, 0.0, 0.0, 0.0, 0.0, 0 }

/** What is known of the ohmmeter. */
typedef struct ohm_meter {
  size_t size;
  int accuracy;          /**< an ohm_standing, of percent and counts */
  double percent;        /**< of reading, under 100 */
  double counts;         /**< of the last digit, up to 1e6 */
  double resolution_ohm; /**< of one count; 0: from display_count or the reading;
                              when neither tells and accuracy is assumed, a display of
                              OHM_ASSUMED_DISPLAY_COUNT is */
  double display_count;  /**< 2000 for a display up to 1999; 0: not known */
  int leads;             /**< an ohm_standing, of the next two */
  double lead_ohm;       /**< resistance of the leads, taken off the reading, up to 1000 */
  double lead_limit_ohm; /**< the leads are within this of lead_ohm, up to 1000 */
  double current_ma;     /**< test current, milliampere, up to 1000; 0: not known */
} ohm_meter;

#define OHM_METER_INIT                                                                             \
  { sizeof(ohm_meter), OHM_ASSUMED, 0.0, 0.0, 0.0, 0.0, OHM_ASSUMED, 0.0, 0.0, 0.0 }

/* Assumed when not stated; all common practice, no source. */
#define OHM_ASSUMED_METER_PERCENT         1.0
#define OHM_ASSUMED_METER_COUNTS          3.0
#define OHM_ASSUMED_LEAD_OHM              0.3
#define OHM_ASSUMED_LEAD_LIMIT_OHM        0.2
#define OHM_ASSUMED_DISPLAY_COUNT         2000.0
#define OHM_ASSUMED_THERMOMETER_LIMIT_K   2.0
#define OHM_ASSUMED_ICE_LIMIT_K           0.5
#define OHM_ASSUMED_BOIL_LIMIT_K          1.0
#define OHM_ASSUMED_BOIL_ALTITUDE_LIMIT_K 0.4
#define OHM_ASSUMED_BOIL_PRESSURE_LIMIT_K 0.2
#define OHM_ASSUMED_BOIL_DEPTH_K          0.1
#define OHM_ASSUMED_INFRARED_LIMIT_K      4.0
#define OHM_ASSUMED_TOLERANCE_PERCENT     5.0
#define OHM_ASSUMED_FAN_C                 97.0
#define OHM_ASSUMED_FAN_LIMIT_K           5.0
#define OHM_ASSUMED_CURRENT_MA            1.0

/* Assumed of a car left standing; inferred from the hours and differences that makers
 * print for a cold start, not measured. */
#define OHM_ASSUMED_STOP_C             90.0
#define OHM_ASSUMED_STOP_LIMIT_K       15.0
#define OHM_ASSUMED_STOP_TOLD_LIMIT_K  5.0
#define OHM_ASSUMED_SOAK_ALLOW_K       6.0
#define OHM_ASSUMED_COOLANT_TAU_LOW_H  1.0
#define OHM_ASSUMED_COOLANT_TAU_HIGH_H 4.0
#define OHM_ASSUMED_OIL_TAU_LOW_H      1.0
#define OHM_ASSUMED_OIL_TAU_HIGH_H     5.0
#define OHM_ASSUMED_INTAKE_TAU_LOW_H   0.5
#define OHM_ASSUMED_INTAKE_TAU_HIGH_H  3.0
#define OHM_ASSUMED_AMBIENT_TAU_LOW_H  0.1
#define OHM_ASSUMED_AMBIENT_TAU_HIGH_H 1.0

/**
 * Read what a display showed: 2310, 2.31k, 2k31 (IEC 60062), 2.31 kohm, 0R47; OL,
 * OL@20k or >20k (over-range on the 20 k range); 1 alone; open. The resolution is
 * that of the digits as typed.
 *
 * Out     reading  every member set
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE below 0 or
 *         above 1e12 ohm.
 */
OHM_API ohm_status ohm_reading_read(const char *text, ohm_reading *reading, ohm_error *error);

/**
 * Read an accuracy as meter makers print it: 0.8%+3 (percent of reading plus
 * counts), 0.8%+3x10 (one count is 10 ohm), 0.8%+3@2000 (a display of 2000
 * counts), @2000 alone, or "exact". The members for the leads stay as they are.
 *
 * Out     meter   must have come from OHM_METER_INIT
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE a negative
 *         part, 100 % or more, a display of under 100 counts.
 */
OHM_API ohm_status ohm_meter_read(const char *text, ohm_meter *meter, ohm_error *error);

/**
 * Read the resistance of the leads: 0.4, 0.4+-0.1 (ohm), or "exact" when there is none
 * to take off. Without a limit they are taken to repeat within 0.1 ohm (common
 * practice). Other members stay.
 *
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE.
 */
OHM_API ohm_status ohm_leads_read(const char *text, ohm_meter *meter, ohm_error *error);

/**
 * The limit of error of a reading by the meter's own specification:
 * percent of reading plus counts, never less than half a count. A count is the stated
 * resolution, else that of the stated display, else the last digit as typed; of a
 * whole number that leaves digits open, a count of an assumed display and half of what
 * is left open.
 *
 * In      meter   NULL for all assumed
 * Out     limit_ohm  ohm; NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT a member is NaN, infinite or
 *         negative; OHM_OUT_OF_RANGE the display did not show a number.
 */
OHM_API ohm_status ohm_meter_limit(const ohm_meter *meter, const ohm_reading *reading,
                                   double *limit_ohm);

/**
 * What a reading says of the resistance at the probes' tips: leads taken off,
 * every cause counted.
 *
 * In      meter   NULL for all assumed
 * Out     r_ohm   ohm; both NaN unless OHM_OK. The value is never below 0.
 * Status  those of ohm_meter_limit().
 */
OHM_API ohm_status ohm_meter_estimate(const ohm_meter *meter, const ohm_reading *reading,
                                      ohm_estimate *r_ohm);

/* ---- reference ---------------------------------------------------------- */

/** What says how warm the sensor is. */
typedef enum ohm_reference_kind {
  OHM_REFERENCE_THERMOMETER = 0, /**< a thermometer beside it */
  OHM_REFERENCE_ICE,             /**< crushed ice and water, stirred: 0 degrees C */
  OHM_REFERENCE_BOIL,            /**< boiling water, near sea level */
  OHM_REFERENCE_BOIL_ALTITUDE,   /**< boiling water at altitude_m */
  OHM_REFERENCE_BOIL_PRESSURE,   /**< boiling water at pressure_hpa */
  OHM_REFERENCE_INFRARED         /**< an infrared thermometer aimed at it */
} ohm_reference_kind;

/** The temperature of the sensor and how well it is known. */
typedef struct ohm_reference {
  size_t size;
  int kind;            /**< an ohm_reference_kind */
  double t_c;          /**< degrees Celsius; ignored for ice and boiling water */
  int accuracy;        /**< an ohm_standing, of the next two */
  double limit_k;      /**< within this: rectangular, kelvin, up to 1000 */
  double u_k;          /**< standard uncertainty of a further normal part, kelvin, up to 1000 */
  double altitude_m;   /**< above sea level, -430 to 5000 */
  double pressure_hpa; /**< where you stand, not reduced to sea level, 500 to 1100 */
} ohm_reference;

#define OHM_REFERENCE_INIT                                                                         \
  { sizeof(ohm_reference), OHM_REFERENCE_THERMOMETER, 0.0, OHM_ASSUMED, 0.0, 0.0, 0.0, 0.0 }

/**
 * Read a reference: 21.5C, 70F, 294.7K, ice, boil, boil@1200m, boil@870hPa,
 * infrared@80C; each may end in +-1 (or with a plus-minus sign), a limit in the same
 * unit. A temperature without a unit is refused, and so is a pressure given with an
 * altitude: such a one was reduced to sea level.
 *
 * Out     reference  every member set
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE below
 *         absolute zero or above 1000 degrees C, altitude or pressure out of range.
 */
OHM_API ohm_status ohm_reference_read(const char *text, ohm_reference *reference, ohm_error *error);

/**
 * Read a temperature with its unit: 21.5C, -10C, 70F, 294.7K.
 *
 * Out     t_c     degrees Celsius; NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE.
 */
OHM_API ohm_status ohm_temperature_read(const char *text, double *t_c, ohm_error *error);

/**
 * Read a tolerance as percent of resistance: 5%.
 *
 * Out     percent  NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE not above 0
 *         and below 100.
 */
OHM_API ohm_status ohm_tolerance_read(const char *text, double *percent, ohm_error *error);

/* ---- module ------------------------------------------------------------- */

/* Assumed when not stated; all common practice, no source. The limits of the pin, as
 * shares of the supply, lie among those printed: 4.90 V and 0.1 V of 5 V. */
#define OHM_ASSUMED_SUPPLY_VOLT      5.0
#define OHM_ASSUMED_SUPPLY_PERCENT   2.0
#define OHM_ASSUMED_PULL_UP_PERCENT  2.0
#define OHM_ASSUMED_OPEN_SHARE       0.98
#define OHM_ASSUMED_SHORT_SHARE      0.02
#define OHM_ASSUMED_VOLTS_PERCENT    1.0
#define OHM_ASSUMED_VOLTS_COUNTS     2.0
#define OHM_ASSUMED_REPORTED_LIMIT_K 1.0

/** Which pull-up was in use, of an input with two. */
typedef enum ohm_range {
  OHM_RANGE_NOT_TOLD = 0,
  OHM_RANGE_COLD, /**< the larger one */
  OHM_RANGE_HOT   /**< the smaller one */
} ohm_range;

/** The input of a control module: a supply, a pull-up to it, or two that change. */
typedef struct ohm_module {
  size_t size;
  double pull_up_ohm;       /**< 1 to 1e7; of the cold range when there are two; 0: not told */
  double hot_pull_up_ohm;   /**< of the hot range, smaller; 0: one range */
  double changeover_c;      /**< where they change; looked at when there are two */
  int range;                /**< an ohm_range */
  int pull_up_accuracy;     /**< an ohm_standing, of the next */
  double pull_up_percent;   /**< either is within this of what was told, up to 50 */
  double supply_volt;       /**< 0.5 to 30; 0: OHM_ASSUMED_SUPPLY_VOLT */
  int supply_accuracy;      /**< an ohm_standing, of the next */
  double supply_limit_volt; /**< it is within this, under half of it */
  double open_volt;         /**< from here up the module sees no circuit; 0: assumed */
  double short_volt;        /**< from here down it sees a short; 0: assumed */
} ohm_module;

#define OHM_MODULE_INIT                                                                            \
  {                                                                                                \
    sizeof(ohm_module), 0.0, 0.0, 0.0, OHM_RANGE_NOT_TOLD, OHM_ASSUMED, 0.0, 0.0, OHM_ASSUMED,     \
        0.0, 0.0, 0.0                                                                              \
  }

/** Where the negative lead of the voltmeter was. */
typedef enum ohm_negative {
  OHM_NEGATIVE_NOT_TOLD = 0, /**< "not_told" */
  OHM_NEGATIVE_PIN,          /**< "pin": the module's own pin for the sensor's ground */
  OHM_NEGATIVE_SENSOR,       /**< "sensor": the ground terminal at the sensor */
  OHM_NEGATIVE_BODY          /**< "body": engine, body or battery */
} ohm_negative;

/** Volts at the module's pin, plug on, key on. */
typedef struct ohm_volts {
  size_t size;
  double v_volt;          /**< as displayed, 0 to 30 */
  double resolution_volt; /**< of the digits given; 0: not known */
  int accuracy;           /**< an ohm_standing, of the next; assumed: percent and counts above */
  double limit_volt;      /**< the display is within this of the truth */
  int negative;           /**< an ohm_negative */
} ohm_volts;

#define OHM_VOLTS_INIT                                                                             \
  { sizeof(ohm_volts), 0.0, 0.0, OHM_ASSUMED, 0.0, OHM_NEGATIVE_NOT_TOLD }

/** How a module makes whole degrees. */
typedef enum ohm_rounding {
  OHM_ROUNDING_NOT_TOLD = 0,
  OHM_ROUNDED,  /**< to the nearest */
  OHM_TRUNCATED /**< to the next below */
} ohm_rounding;

/** Whether a reported value follows the engine. */
typedef enum ohm_moves {
  OHM_MOVES_NOT_TOLD = 0,
  OHM_MOVES,
  OHM_NEVER_MOVES /**< the same cold and hot */
} ohm_moves;

/** Degrees that the module reports: a scan tool, or a gauge with figures. */
typedef struct ohm_reported {
  size_t size;
  double t_c;          /**< as displayed, -60 to 300 */
  double resolution_k; /**< of the display when coarser than a degree, up to 20; 0: a degree */
  int rounding;        /**< an ohm_rounding */
  int accuracy;        /**< an ohm_standing, of the next */
  double limit_k;      /**< what the module makes of a resistance is within this, up to 20 */
  int moves;           /**< an ohm_moves */
} ohm_reported;

#define OHM_REPORTED_INIT                                                                          \
  { sizeof(ohm_reported), 0.0, 0.0, OHM_ROUNDING_NOT_TOLD, OHM_ASSUMED, 0.0, OHM_MOVES_NOT_TOLD }

/**
 * Read a pull-up, or two with the temperature where they change: 1k, 1k+-1%,
 * 10k,1k@50C, 4k,348@40C+-1%.
 *
 * Out     module  must have come from OHM_MODULE_INIT; other members stay
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE.
 */
OHM_API ohm_status ohm_pull_up_read(const char *text, ohm_module *module, ohm_error *error);

/**
 * Read the supply of the pull-up: 5V, 5, 5.02V+-0.01.
 *
 * Out     module  must have come from OHM_MODULE_INIT; other members stay
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE.
 */
OHM_API ohm_status ohm_supply_read(const char *text, ohm_module *module, ohm_error *error);

/**
 * Read what a voltmeter showed: 0.97, 0.97V, 970mV, 0.97+-0.02. The resolution is that
 * of the digits as typed.
 *
 * Out     volts   every member set
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE below 0 or above 30.
 */
OHM_API ohm_status ohm_volts_read(const char *text, ohm_volts *volts, ohm_error *error);

/**
 * Read degrees that a module reported: 91C, 196F, 91C+-2.
 *
 * Out     reported  every member set
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE below -60 or above
 *         300 degrees C.
 */
OHM_API ohm_status ohm_reported_read(const char *text, ohm_reported *reported, ohm_error *error);

/**
 * What a module reports of a temperature: whole degrees from -40 to 215, one byte.
 *
 * In      t_c       above -273.15, up to 1000
 *         rounding  an ohm_rounding; not told counts as rounded
 * Out     shown_c   degrees Celsius; NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT NaN, or no such rounding;
 *         OHM_OUT_OF_RANGE.
 * Source  SAE J1979, service 01: A - 40.
 */
OHM_API ohm_status ohm_reported_of(double t_c, int rounding, double *shown_c);

/* ---- finding ------------------------------------------------------------ */

/** How a field is read. */
typedef enum ohm_field_kind {
  OHM_KIND_NUMBER, /**< ohm_finding_number(); NaN when absent */
  OHM_KIND_TEXT,   /**< ohm_finding_text(), index 0; NULL when absent */
  OHM_KIND_LIST    /**< ohm_finding_text(), index 0, 1, ... until NULL */
} ohm_field_kind;

/**
 * The fields of a finding, one list: constant, name (with its unit), kind,
 * meaning. The JSON keys of the command and the attributes of the Python class
 * are these names.
 */
#define OHM_FIELDS(X)                                                                              \
  X(VERDICT, verdict, TEXT,                                                                        \
    "within, outside or undecided: is the part inside what its maker allows")                      \
  X(REASON, reason, TEXT, "one word for why; see ohm_reason")                                      \
  X(P_LOW, p_low, NUMBER, "probability that the resistance lies below what is allowed")            \
  X(P_WITHIN, p_within, NUMBER, "probability that it lies within")                                 \
  X(P_HIGH, p_high, NUMBER, "probability that it lies above")                                      \
  X(LEVEL, level, NUMBER, "probability asked for before anything is decided")                      \
  X(JOB, job, TEXT, "within, outside or undecided: is it good enough for the fan")                 \
  X(JOB_REASON, job_reason, TEXT, "one word for why; see ohm_job_reason")                          \
  X(FAN_C, fan_c, NUMBER, "temperature at which the fan is to start")                              \
  X(LIMIT_K, limit_k, NUMBER, "how late or early it may start, kelvin")                            \
  X(LATE_K, late_k, NUMBER,                                                                        \
    "latest it could start after fan_c, kelvin; absent when never up to 130 C")                    \
  X(EARLY_K, early_k, NUMBER, "earliest it could start before fan_c, kelvin")                      \
  X(SERIES_OHM, series_ohm, NUMBER, "largest series resistance that could hide")                   \
  X(SERIES_LATE_K, series_late_k, NUMBER,                                                          \
    "how late it makes the fan; negative: early; absent: never")                                   \
  X(SERIES_SOUND_LATE_K, series_sound_late_k, NUMBER, "the same in series with a nominal sensor")  \
  X(LEAKAGE_OHM, leakage_ohm, NUMBER, "smallest leakage across that could hide; absent: none")     \
  X(LEAKAGE_EARLY_K, leakage_early_k, NUMBER, "how early it makes the fan; negative: late")        \
  X(LEAKAGE_SOUND_EARLY_K, leakage_sound_early_k, NUMBER, "the same across a nominal sensor")      \
  X(FIFTY_LATE_K, fifty_late_k, NUMBER,                                                            \
    "how late 50 ohm in series make a nominal sensor; absent: never")                              \
  X(PLACE, place, TEXT, "where the probes were; see ohm_place")                                    \
  X(R_OHM, r_ohm, NUMBER, "resistance at the probes' tips, leads taken off")                       \
  X(U_R_OHM, u_r_ohm, NUMBER, "its standard uncertainty")                                          \
  X(EXPANDED_R_OHM, expanded_r_ohm, NUMBER, "its expanded uncertainty at the level")               \
  X(SUGGESTED_OHM, suggested_ohm, NUMBER, "what was probably meant, when a k seems to be missing") \
  X(RANGE_OHM, range_ohm, NUMBER, "range on which the display was over")                           \
  X(T_C, t_c, NUMBER, "temperature that resistance means on the nominal curve")                    \
  X(U_T_C, u_t_c, NUMBER, "its standard uncertainty from the reading, kelvin")                     \
  X(EXPANDED_T_K, expanded_t_k, NUMBER, "its expanded uncertainty at the level")                   \
  X(AT_C, at_c, NUMBER, "temperature the sensor really has")                                       \
  X(U_AT_C, u_at_c, NUMBER, "its standard uncertainty, kelvin")                                    \
  X(EXPANDED_AT_K, expanded_at_k, NUMBER, "its expanded uncertainty at the level")                 \
  X(EXPECTED_OHM, expected_ohm, NUMBER, "nominal resistance at that temperature")                  \
  X(LOW_OHM, low_ohm, NUMBER, "least resistance allowed there")                                    \
  X(HIGH_OHM, high_ohm, NUMBER, "greatest resistance allowed there")                               \
  X(TOLERANCE_PERCENT, tolerance_percent, NUMBER, "half-width of what is allowed there")           \
  X(ACCEPT_LOW_OHM, accept_low_ohm, NUMBER, "least reading that would pass; absent: none would")   \
  X(ACCEPT_HIGH_OHM, accept_high_ohm, NUMBER,                                                      \
    "greatest reading that would pass; absent: none would")                                        \
  X(NEEDED_K, needed_k, NUMBER, "limit of a thermometer with which a reading could pass")          \
  X(CM, cm, NUMBER,                                                                                \
    "measurement capability index, allowed width over four standard uncertainties")                \
  X(ALPHA_PER_K, alpha_per_k, NUMBER, "relative slope of the nominal curve there, per kelvin")     \
  X(U_COMBINED_OHM, u_combined_ohm, NUMBER,                                                        \
    "reading and temperature together, standard uncertainty")                                      \
  X(METER_LIMIT_OHM, meter_limit_ohm, NUMBER, "limit of error of the meter, rectangular")          \
  X(LEAD_OHM, lead_ohm, NUMBER, "resistance of the leads, taken off")                              \
  X(LEAD_LIMIT_OHM, lead_limit_ohm, NUMBER, "limit of error of that, rectangular")                 \
  X(REFERENCE_LIMIT_K, reference_limit_k, NUMBER, "limit of error of the reference, rectangular")  \
  X(REFERENCE_U_K, reference_u_k, NUMBER, "further standard uncertainty of the reference, normal") \
  X(HEATING_K, heating_k, NUMBER,                                                                  \
    "element warmer than the bath by the test current, middle value")                              \
  X(HEATING_LIMIT_K, heating_limit_k, NUMBER, "limit of error of that, rectangular")               \
  X(READINGS, readings, NUMBER, "how many readings the finding rests on")                          \
  X(MOVED_OHM, moved_ohm, NUMBER, "what the last two readings of one temperature differ by")       \
  X(P_SENSOR, p_sensor, NUMBER, "probability that it is this sensor, of those compared")           \
  X(P_FIT, p_fit, NUMBER, "probability that a good one gives readings that fit it no better")      \
  X(LEADING, leading, NUMBER, "1: it fits, and none is ten times as probable; else 0")             \
  X(SENSOR_INDEX, sensor_index, NUMBER, "its place among the sensors compared, from 0")            \
  X(SENSOR_KIND, sensor_kind, TEXT, "module, gauge or probe: what it feeds")                       \
  X(COMPARED, compared, NUMBER, "how many sensors the readings were compared with")                \
  X(NOT_COMPARED, not_compared, NUMBER, "how many whose curves do not reach a temperature")        \
  X(CANDIDATES, candidates, LIST, "what the readings do not tell apart, the likeliest first")      \
  X(GAUGES, gauges, NUMBER, "how many of those drive a gauge")                                     \
  X(SEPARATING_C, separating_c, NUMBER, "temperature at which a further reading tells most")       \
  X(SEPARATING_OHM, separating_ohm, NUMBER, "what it would read there; of all, what one would")    \
  X(SEPARATING_OTHER_OHM, separating_other_ohm, NUMBER, "and what another would")                  \
  X(FIFTY_LEAST_LATE_K, fifty_least_late_k, NUMBER, "least of fifty_late_k of the candidates")     \
  X(EXPLANATION, explanation, TEXT, "what may be wrong; see ohm_explanation")                      \
  X(P_CHANCE, p_chance, NUMBER, "probability that a sound sensor looks so faulty by chance")       \
  X(FAULT_OHM, fault_ohm, NUMBER, "series resistance, or leakage; absent: none")                   \
  X(FAULT_LOW_OHM, fault_low_ohm, NUMBER, "least it may be at the level")                          \
  X(FAULT_HIGH_OHM, fault_high_ohm, NUMBER, "greatest it may be; absent: no bound")                \
  X(FAULT_PERCENT, fault_percent, NUMBER, "drift of the resistance, or of beta")                   \
  X(FAULT_LOW_PERCENT, fault_low_percent, NUMBER, "least it may be at the level")                  \
  X(FAULT_HIGH_PERCENT, fault_high_percent, NUMBER, "greatest it may be")                          \
  X(FAULT_LATE_K, fault_late_k, NUMBER,                                                            \
    "how late a fault of that size makes the fan; negative: early; absent: never")                 \
  X(AFTER_H, after_h, NUMBER, "hours the car stood")                                               \
  X(STOP_C, stop_c, NUMBER, "temperature of the coolant when the engine was stopped")              \
  X(STOP_LIMIT_K, stop_limit_k, NUMBER, "limit of error of that, rectangular")                     \
  X(TAU_LOW_H, tau_low_h, NUMBER, "least time constant of the coolant, hours")                     \
  X(TAU_HIGH_H, tau_high_h, NUMBER, "greatest time constant of the coolant, hours")                \
  X(AIR_C, air_c, NUMBER, "temperature of the air at the end of the soak")                         \
  X(AIR_LIMIT_K, air_limit_k, NUMBER, "limit of error of the air, rectangular")                    \
  X(COLDEST_C, coldest_c, NUMBER, "coldest the air can have been")                                 \
  X(COOLANT_LOW_C, coolant_low_c, NUMBER,                                                          \
    "lower end of where the coolant has come to, at the level")                                    \
  X(COOLANT_HIGH_C, coolant_high_c, NUMBER, "upper end of it")                                     \
  X(ALLOW_K, allow_k, NUMBER, "how far the sensor may be off after a soak, kelvin")                \
  X(P_COLD, p_cold, NUMBER, "probability that it reads colder than it is by more than that")       \
  X(P_WARM, p_warm, NUMBER, "probability that it reads warmer than it is by more than that")       \
  X(MISSED_COLD_K, missed_cold_k, NUMBER,                                                          \
    "largest error to the cold side that could be missed, kelvin")                                 \
  X(DECIDABLE_H, decidable_h, NUMBER,                                                              \
    "hours after which a sound sensor would pass; absent: never up to 72")                         \
  X(AGREEMENT, agreement, TEXT, "consistent, odd or disagree: what the sensors say of each other") \
  X(ODD, odd, TEXT, "which one does not agree with the others: coolant, intake, oil or ambient")   \
  X(ODD_OFF_K, odd_off_k, NUMBER, "how far it is off from what the others say, kelvin")            \
  X(P_AGREE, p_agree, NUMBER, "probability that chance alone makes them differ more")              \
  X(PAIR, pair, TEXT, "pins it was read across; of all, those of the module's element")            \
  X(ROLE, role, TEXT, "what lies between those pins; see ohm_role")                                \
  X(GAUGE_PAIR, gauge_pair, TEXT, "pins of the gauge's element")                                   \
  X(GROUND_OHM, ground_ohm, NUMBER, "resistance between the body and battery negative")            \
  X(GROUND_LIMIT_OHM, ground_limit_ohm, NUMBER, "limit of error of that, rectangular")             \
  X(ABOUT, about, TEXT,                                                                            \
    "the room that answered: bath, identify, pins, explain, soak, pin, substitute, loom, "         \
    "fanpoint or "                                                                                 \
    "isolation")                                                                                   \
  X(V_VOLT, v_volt, NUMBER, "volts at the module's pin")                                           \
  X(SUPPLY_VOLT, supply_volt, NUMBER, "supply of the pull-up")                                     \
  X(PULL_UP_OHM, pull_up_ohm, NUMBER, "pull-up in use")                                            \
  X(OTHER_PULL_UP_OHM, other_pull_up_ohm, NUMBER, "the other one that these volts would fit")      \
  X(OTHER_R_OHM, other_r_ohm, NUMBER, "resistance that would be seen through that")                \
  X(OTHER_T_C, other_t_c, NUMBER, "temperature that would mean")                                   \
  X(NEGATIVE, negative, TEXT, "where the negative lead was; see ohm_negative")                     \
  X(SENSOR_OHM, sensor_ohm, NUMBER, "resistance at the sensor's own pins, leads taken off")        \
  X(EXPANDED_SENSOR_OHM, expanded_sensor_ohm, NUMBER, "its expanded uncertainty at the level")     \
  X(SENSOR_C, sensor_c, NUMBER, "temperature that means")                                          \
  X(REPORTED_C, reported_c, NUMBER, "temperature the module reports")                              \
  X(REPORTED_OHM, reported_ohm, NUMBER, "resistance that means, whole degrees allowed for")        \
  X(BETWEEN_OHM, between_ohm, NUMBER, "what the module sees less what the sensor has")             \
  X(U_BETWEEN_OHM, u_between_ohm, NUMBER, "its standard uncertainty")                              \
  X(EXPANDED_BETWEEN_OHM, expanded_between_ohm, NUMBER, "its expanded uncertainty at the level")   \
  X(SHUNT_OHM, shunt_ohm, NUMBER, "leakage across the sensor that would explain it")               \
  X(OFFSET_VOLT, offset_volt, NUMBER, "rise of the ground that would explain it")                  \
  X(FITS_PULL_UP_OHM, fits_pull_up_ohm, NUMBER, "pull-up that would explain it")                   \
  X(PARTED_K, parted_k, NUMBER, "degrees the module is off what the sensor has")                   \
  X(START_C, start_c, NUMBER, "true temperature at which the fan starts; absent: never to 130 C")  \
  X(START_LOW_C, start_low_c, NUMBER, "least it could be at the level")                            \
  X(START_HIGH_C, start_high_c, NUMBER, "greatest it could be; absent: never up to 130 C")         \
  X(AIM_C, aim_c, NUMBER, "temperature the module is to see")                                      \
  X(FIRST_OHM, first_ohm, NUMBER, "resistor to fit")                                               \
  X(SECOND_OHM, second_ohm, NUMBER, "second resistor to fit; absent: none")                        \
  X(JOINED, joined, TEXT, "how two are joined; see ohm_joined")                                    \
  X(SEEN_LOW_C, seen_low_c, NUMBER, "least temperature the module could see")                      \
  X(SEEN_HIGH_C, seen_high_c, NUMBER, "greatest temperature the module could see")                 \
  X(SHOWN_C, shown_c, NUMBER, "whole degrees a module then reports")                               \
  X(POWER_MW, power_mw, NUMBER, "most that one resistor has to bear, milliwatt")                   \
  X(FACTOR, factor, NUMBER, "what the module multiplies every resistance by; 1 is right")          \
  X(EXPANDED_FACTOR, expanded_factor, NUMBER, "its expanded uncertainty at the level")             \
  X(ON_C, on_c, NUMBER, "temperature at which the fan starts")                                     \
  X(OFF_C, off_c, NUMBER, "temperature at which it stops")                                         \
  X(ON_OHM, on_ohm, NUMBER, "nominal resistance at on_c")                                          \
  X(OFF_OHM, off_ohm, NUMBER, "nominal resistance at off_c")                                       \
  X(ON_VOLT, on_volt, NUMBER, "volts at the module's pin at on_c")                                 \
  X(OFF_VOLT, off_volt, NUMBER, "volts at the module's pin at off_c")                              \
  X(OHM_PER_K, ohm_per_k, NUMBER, "what a kelvin is worth at on_c, ohm")                           \
  X(VOLT_PER_K, volt_per_k, NUMBER, "what a kelvin is worth at on_c, volt")                        \
  X(HIDDEN_OHM, hidden_ohm, NUMBER, "series resistance asked about")                               \
  X(FAN_STOP_C, fan_stop_c, NUMBER,                                                                \
    "true temperature at which the fan then stops; absent: never started")                         \
  X(TESTS, tests, NUMBER, "how many tests were made on a circuit")                                 \
  X(MINUTES, minutes, NUMBER, "about how long they took")                                          \
  X(NEXT_MINUTES, next_minutes, NUMBER, "about how long the next one takes")                       \
  X(NEXT_BITS, next_bits, NUMBER, "what it is expected to tell, in bits")                          \
  X(FUSE_AMPERES, fuse_amperes, NUMBER, "current that the millivolts over a fuse mean")            \
  X(CIRCUIT, circuit, TEXT, "name of the circuit")                                                 \
  X(STATE, state, TEXT, "what stands now; see ohm_isolation_judge()")                              \
  X(BUY, buy, LIST, "parts at fault that are bought, and what renewing them involves")             \
  X(REPAIR, repair, LIST, "parts at fault that are repaired, likewise")                            \
  X(AGAIN, again, LIST, "tests to make again after that, and what to expect of them")              \
  X(RENEWED, renewed, LIST, "links that were renewed")                                             \
  X(LAST, last, TEXT, "the last test and its outcome")                                             \
  X(SKIPPED, skipped, LIST, "tests that were skipped")                                             \
  X(CONTRADICTION, contradiction, LIST, "tests that cannot all be right")                          \
  X(NEXT, next, TEXT, "the test to make next")                                                     \
  X(NEXT_WHAT, next_what, TEXT, "what is done or measured, and what is good")                      \
  X(NEXT_POINTS, next_points, TEXT, "where, between which points")                                 \
  X(NEXT_CONDITION, next_condition, TEXT, "under which condition")                                 \
  X(NEXT_TOOLS, next_tools, TEXT, "tools it takes, apart by spaces")                               \
  X(NEXT_CAUTION, next_caution, TEXT, "what could hurt")                                           \
  X(NEXT_SOURCE, next_source, TEXT, "where it was printed")                                        \
  X(NEXT_GOOD, next_good, TEXT, "the number that is good")                                         \
  X(NEXT_WHY, next_why, TEXT, "what it is for")                                                    \
  X(FAULTY, faulty, LIST, "links at fault")                                                        \
  X(SUSPECTS, suspects, LIST, "links that could be at fault, the most probable first")             \
  X(CLEARED, cleared, LIST, "links that are not at fault")                                         \
  X(SENSOR, sensor, TEXT, "name of the sensor")                                                    \
  X(SOURCE, source, TEXT, "where its figures were printed")                                        \
  X(BAND, band, TEXT, "name of the maker's band judged by; absent: the sensor's own limits")       \
  X(BAND_SOURCE, band_source, TEXT, "where that band was printed")                                 \
  X(OTHER_BANDS, other_bands, LIST, "what other makers allow there")                               \
  X(READ, read, TEXT, "the reading as displayed")                                                  \
  X(REFERENCE, reference, TEXT,                                                                    \
    "thermometer, ice, boil, boil_altitude, boil_pressure or infrared")                            \
  X(ASSUMED, assumed, LIST, "what was not told and therefore assumed")                             \
  X(NOT_TESTED, not_tested, LIST, "what lies outside the probes")                                  \
  X(VERSION, version, TEXT, "version of the library")                                              \
  X(TABLES_VERSION, tables_version, TEXT, "version of the tables built in")

#define OHM_FIELD_CONSTANT(constant, name, kind, meaning) OHM_FIELD_##constant,
/** A field, OHM_FIELD_VERDICT and so on in the order of OHM_FIELDS. */
typedef enum ohm_field { OHM_FIELDS(OHM_FIELD_CONSTANT) OHM_FIELD_COUNT } ohm_field;
#undef OHM_FIELD_CONSTANT

/** The verdicts, in the order of a command's exit status. */
typedef enum ohm_verdict { OHM_WITHIN = 0, OHM_OUTSIDE, OHM_UNDECIDED } ohm_verdict;

/** Why the verdict is what it is. */
typedef enum ohm_reason {
  OHM_REASON_CONFORMS = 0, /**< "conforms" */
  OHM_REASON_LOW,          /**< "low": below what is allowed */
  OHM_REASON_HIGH,         /**< "high": above what is allowed */
  OHM_REASON_OPEN,         /**< "open": no circuit */
  OHM_REASON_OVER_RANGE,   /**< "over_range": the meter showed no number */
  OHM_REASON_NO_TOLERANCE, /**< "no_tolerance": nothing says what is allowed */
  OHM_REASON_OUTSIDE_BAND, /**< "outside_band": nothing says so at this temperature */
  OHM_REASON_UNCERTAIN,    /**< "uncertain": the measurement is too coarse to decide */
  OHM_REASON_PLUG_ON,      /**< "plug_on": it fits a good sensor with the plug left on */
  OHM_REASON_MISSING_K,    /**< "missing_k": a thousand times as much was probably read */
  OHM_REASON_LONE_ONE,     /**< "lone_one": over-range, or 1 ohm */
  OHM_REASON_MOVING,       /**< "moving": the last two readings differ, wait */
  OHM_REASON_SHORTED,      /**< "shorted": 0 ohm, or nearly */
  OHM_REASON_ONE,          /**< "one": one answer fits the readings */
  OHM_REASON_ALIKE,        /**< "alike": several do, that no reading could tell apart */
  OHM_REASON_SEVERAL,      /**< "several": a further reading tells them apart */
  OHM_REASON_NONE,         /**< "none": nothing compared fits */
  OHM_REASON_WARM,         /**< "warm": warmer than a soak explains, but sun, a heater, a
                                garage or a move would */
  OHM_REASON_SERIES,       /**< "series": ohms in plug or wire */
  OHM_REASON_LEAKAGE,      /**< "leakage": a path across the sensor, in plug or wire */
  OHM_REASON_GROUND,       /**< "ground": the volts were read from another ground */
  OHM_REASON_PULL_UP,      /**< "pull_up": not the pull-up or the supply that was told */
  OHM_REASON_CURVE,        /**< "curve": the module makes other degrees of the same volts */
  OHM_REASON_BETWEEN,      /**< "between": they part, and more than one thing could be it */
  OHM_REASON_STUCK,        /**< "stuck": the reported value never moves */
  OHM_REASON_STAND_IN,     /**< "stand_in": the reported value is a known substitute */
  OHM_REASON_RANGE,        /**< "range": which of two pull-ups is in use is not known */
  OHM_REASON_ALONE,        /**< "alone": there is nothing to hold it against */
  OHM_REASON_COLD          /**< "cold": the module would not ask for the fan */
} ohm_reason;

/** Why the sensor is or is not good enough for the fan. */
typedef enum ohm_job_reason {
  OHM_JOB_CONFORMS = 0, /**< "conforms" */
  OHM_JOB_LATE,         /**< "late": at the least the fan starts too late */
  OHM_JOB_EARLY,        /**< "early": at the least it starts too early */
  OHM_JOB_HIDDEN,       /**< "hidden": what could still hide would be too much */
  OHM_JOB_UNCERTAIN     /**< "uncertain": the measurement is too coarse to say */
} ohm_job_reason;

/** What may be wrong with what was read. */
typedef enum ohm_explanation {
  OHM_HEALTHY = 0, /**< "healthy" */
  OHM_SERIES,      /**< "series": resistance in the plug, the pins or a wire */
  OHM_LEAKAGE,     /**< "leakage": something conducts across the sensor */
  OHM_DRIFT,       /**< "drift": more or fewer ohms, by the same part everywhere */
  OHM_BETA_DRIFT,  /**< "beta": right near 25 C, and too steep or too flat */
  OHM_OTHER_PART,  /**< "other_part": it is another sensor */
  OHM_OPEN,        /**< "open" */
  OHM_SHORT,       /**< "short" */
  OHM_PLUG_ON,     /**< "plug_on": a good one with the plug left on */
  OHM_WRONG_RANGE, /**< "wrong_range": a thousand times as much or as little was read */
  OHM_EXPLANATION_COUNT
} ohm_explanation;

/** Where the probes were. */
typedef enum ohm_place {
  OHM_PLACE_NOT_TOLD = 0, /**< "not_told" */
  OHM_PLACE_SENSOR,       /**< "sensor": at its own pins, plug off */
  OHM_PLACE_PLUG_ON,      /**< "plug_on": back-probed with the plug on */
  OHM_PLACE_MODULE        /**< "module": at the module's end of the wires, module unplugged,
                               sensor plugged in */
} ohm_place;

/** The one result of every answer. A value: copy it, keep it, give it away; it
 *  refers to nothing else. Read it by field. */
typedef struct ohm_finding {
  double private_storage[896];
} ohm_finding;

/** Name of a field, "r_ohm"; NULL when there is no such field. Status  cannot fail. */
OHM_API const char *ohm_field_name(int field);

/** What a field means; NULL when there is no such field. Status  cannot fail. */
OHM_API const char *ohm_field_meaning(int field);

/** An ohm_field_kind; -1 when there is no such field. Status  cannot fail. */
OHM_API int ohm_field_kind_of(int field);

/** A number of a finding; NaN when it is absent or no number. Status  cannot fail. */
OHM_API double ohm_finding_number(const ohm_finding *finding, int field);

/** A text of a finding; NULL when it is absent, past the last, or no text.
 *  Status  cannot fail. */
OHM_API const char *ohm_finding_text(const ohm_finding *finding, int field, size_t index);

/** The verdict as an ohm_verdict; OHM_UNDECIDED when finding is NULL.
 *  Status  cannot fail. */
OHM_API ohm_verdict ohm_finding_verdict(const ohm_finding *finding);

/** The verdict for the fan, likewise. Status  cannot fail. */
OHM_API ohm_verdict ohm_finding_job(const ohm_finding *finding);

/* ---- bath --------------------------------------------------------------- */

/** How strictly to decide. */
typedef struct ohm_check {
  size_t size;
  double level;             /**< 0.5 < level < 1; 0: 0.95 */
  double tolerance_percent; /**< instead of the sensor's own; 0: the sensor's own */
  const char *band;         /**< a maker's band to judge by; NULL: the widest */
  int place;                /**< an ohm_place */
  double fan_c;             /**< the fan is to start here; 0: OHM_ASSUMED_FAN_C */
  double limit_k;           /**< and may be late or early by this; 0:
                                 OHM_ASSUMED_FAN_LIMIT_K */
} ohm_check;

#define OHM_CHECK_INIT                                                                             \
  { sizeof(ohm_check), 0.0, 0.0, NULL, OHM_PLACE_NOT_TOLD, 0.0, 0.0 }

/**
 * Judge a sensor that lies at a known temperature: a bath, a room, the open air.
 * Two verdicts.
 *
 * Part   is it inside what its maker allows? "within" when p_within reaches the
 *        level, "outside" when p_low or p_high does, else "undecided"; over the errors
 *        of reading and temperature together. A temperature beyond the last printed row
 *        by less than its own standard uncertainty is judged there.
 * Job    is it good enough for the fan, with all that could still hide? The largest
 *        series resistance that could hide is the level-quantile of
 *        max(0, R - low(T)), the smallest leakage that of max(0, 1/R - 1/high(T)); a
 *        sensor at that limit with that fault is what the fan is started by.
 *        "within" when neither that nor plain drift makes it late or early by more
 *        than limit_k, "outside" when the least of them does, else "undecided".
 *
 * In      meter   NULL for all assumed
 *         check   NULL for all defaults
 * Out     finding every field absent unless OHM_OK
 * Status  OHM_OK, also when undecided; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT a
 *         member is NaN, infinite, of the wrong sign or no such constant;
 *         OHM_OUT_OF_RANGE level, tolerance, temperature, fan or limit out of its
 *         range; OHM_NOT_FOUND the sensor has no band of that name.
 * Source  JCGM 106:2012, clause 7; JCGM 100:2008, clauses 4.3.7 and 5.1.
 */
OHM_API ohm_status ohm_bath_check(const ohm_sensor *sensor, const ohm_reading *reading,
                                  const ohm_meter *meter, const ohm_reference *reference,
                                  const ohm_check *check, ohm_finding *finding);

/**
 * Judge a sensor by several readings, in the order they were taken. Readings in a row
 * with equal references are repeats: the last one counts, unless it still differs
 * from the one before by more than a count. At several temperatures the sensor
 * has to be inside everywhere at once: the meter, the leads and one thermometer err
 * alike in all readings, every other bath on its own. Then p_low and p_high are the probabilities
 * that any reading lies low, or high, and need not add up to 1 with p_within.
 *
 * In      readings, references   count of each, 1 to 16
 * Out     findings  count of them, each of its reading alone
 *         finding   of all together; the fields of one temperature are those of the
 *                   reading that says most about the fan
 * Status  those of ohm_bath_check(); OHM_BAD_ARGUMENT count is 0; OHM_TOO_LARGE count
 *         is above 16.
 */
OHM_API ohm_status ohm_bath_check_several(const ohm_sensor *sensor, const ohm_reading *readings,
                                          const ohm_reference *references, size_t count,
                                          const ohm_meter *meter, const ohm_check *check,
                                          ohm_finding *findings, ohm_finding *finding);

/* ---- circuit ------------------------------------------------------------ */

/** A fan circuit: links that can fail, and tests that clear or accuse them. */
typedef struct ohm_circuit ohm_circuit;

/** The columns of a circuit file's links, and what they hold. */
#define OHM_LINK_COLUMNS(X)                                                                        \
  X(LINK, link, "its name")                                                                        \
  X(KIND, kind, "power, motor, battery, control, electronics, sensing or cooling")                 \
  X(DRAWING, drawing, "what a drawing calls it")                                                   \
  X(PART, part, "what is bought or repaired; links of one part are renewed together")              \
  X(ACTION, action, "buy or repair")                                                               \
  X(RENEW, renew, "what that involves")                                                            \
  X(ODDS, odds, "odds that it is at fault; may be blank")                                          \
  X(STANDING, standing, "where these odds come from")

/** The columns of a circuit file's tests, and what they hold. */
#define OHM_TEST_COLUMNS(X)                                                                        \
  X(TEST, test, "its name")                                                                        \
  X(ROLE, role, "symptom, condition or blank")                                                     \
  X(WHAT, what, "what is done or measured, and what is good")                                      \
  X(POINTS, points, "where, between which points")                                                 \
  X(CONDITION, condition, "under which condition")                                                 \
  X(LOAD, load, "none, lights, bulb or fan")                                                       \
  X(TOOL, tool, "tools it takes, apart by spaces")                                                 \
  X(MINUTES, minutes, "how long it takes")                                                         \
  X(UNIT, unit,                                                                                    \
    "blank for good or bad; V, A, ohm, C, V/A, mV-fuse, finding:sensor, finding:module")           \
  X(LOW, low, "least that is good; fan, fan+5: where the fan is to start, and 5 above")            \
  X(HIGH, high, "most that is good; of V/A in ohm")                                                \
  X(ERROR, error, "limit of error of the instrument, 1%+0.02")                                     \
  X(CLEARS, clears, "links that a good result clears")                                             \
  X(ACCUSES, accuses, "links of which a bad result accuses one; blank: it tells nothing")          \
  X(ONLY_IF, only_if, "a fact without which a bad result tells nothing")                           \
  X(NEEDS, needs, "what must have been seen before, NAME=good, bad, renewed or yes")               \
  X(FEEDS, feeds, "a motor that is fed from the battery")                                          \
  X(AMPERES, amperes, "tests that tell the current; one must have been good before")               \
  X(CAUTION, caution, "what could hurt")                                                           \
  X(SOURCE, source, "where limit and procedure were printed, or common practice")

#define OHM_LINK_CONSTANT(constant, name, meaning) OHM_LINK_##constant,
/** A column of a link. */
typedef enum ohm_link_column {
  OHM_LINK_COLUMNS(OHM_LINK_CONSTANT) OHM_LINK_COLUMN_COUNT
} ohm_link_column;
#undef OHM_LINK_CONSTANT

#define OHM_TEST_CONSTANT(constant, name, meaning) OHM_TEST_##constant,
/** A column of a test. */
typedef enum ohm_test_column {
  OHM_TEST_COLUMNS(OHM_TEST_CONSTANT) OHM_TEST_COLUMN_COUNT
} ohm_test_column;
#undef OHM_TEST_CONSTANT

/**
 * Read a circuit from the text of a circuit file: lines of "# key: value", a table of
 * links whose header row begins with the cell link, a table of tests whose header row
 * begins with test. A test that cannot be used is left out and noted; a link is not,
 * because what is left out can not be found at fault.
 *
 * In      text    UTF-8, length bytes; need not end in NUL
 *         name    used for the circuit when the text gives none, and in sentences
 * Return  the circuit, or NULL with the error filled in.
 * Status  OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_BAD_DEFINITION no link, no symptom, or
 *         two of one name; OHM_TOO_LARGE also above 64 links; OHM_NO_MEMORY.
 */
OHM_API ohm_circuit *ohm_circuit_parse(const char *text, size_t length, const char *name,
                                       ohm_error *error);

/**
 * Read a circuit file: one plain file of at most 16 MiB.
 *
 * Return  the circuit, or NULL with the error filled in.
 * Status  those of ohm_circuit_parse(); OHM_CANNOT_OPEN.
 */
OHM_API ohm_circuit *ohm_circuit_load(const char *path, ohm_error *error);

/** How many circuits are built in. Status  cannot fail. */
OHM_API size_t ohm_circuit_built_in_count(void);

/** Name of a built-in circuit, in the order of names; NULL past the last.
 *  Status  cannot fail. */
OHM_API const char *ohm_circuit_built_in_name(size_t index);

/**
 * Read a built-in circuit.
 *
 * Return  the circuit, or NULL with the error filled in.
 * Status  OHM_NULL_ARGUMENT; OHM_NOT_FOUND (the sentence offers the nearest name);
 *         OHM_NO_MEMORY.
 */
OHM_API ohm_circuit *ohm_circuit_built_in_load(const char *name, ohm_error *error);

/** Give a circuit back. NULL is allowed. Status  cannot fail. */
OHM_API void ohm_circuit_free(ohm_circuit *circuit);

/**
 * Write a circuit as the text of a circuit file; parsed again it gives an equal one.
 *
 * Return  length of the whole text, cut to fit when it is size or more; 0 when
 *         circuit is NULL.
 * Status  cannot fail.
 */
OHM_API size_t ohm_circuit_print(const ohm_circuit *circuit, char *buffer, size_t size);

/** Its name; NULL when circuit is NULL. Status  cannot fail. */
OHM_API const char *ohm_circuit_name(const ohm_circuit *circuit);

/** What it is; "" when not given. Status  cannot fail. */
OHM_API const char *ohm_circuit_description(const ohm_circuit *circuit);

/** Where it comes from; "" when not given. Status  cannot fail. */
OHM_API const char *ohm_circuit_source(const ohm_circuit *circuit);

/** How many links it has; 0 when circuit is NULL. Status  cannot fail. */
OHM_API size_t ohm_circuit_link_count(const ohm_circuit *circuit);

/** A cell of a link, "" when blank; NULL past the last link or column. Status  cannot fail. */
OHM_API const char *ohm_circuit_link_text(const ohm_circuit *circuit, size_t index, int column);

/** How many tests it has; 0 when circuit is NULL. Status  cannot fail. */
OHM_API size_t ohm_circuit_test_count(const ohm_circuit *circuit);

/** A cell of a test, "" when blank; NULL past the last test or column. Status  cannot fail. */
OHM_API const char *ohm_circuit_test_text(const ohm_circuit *circuit, size_t index, int column);

/** Name of a column of links, "part"; NULL when there is none. Status  cannot fail. */
OHM_API const char *ohm_link_column_name(int column);

/** Name of a column of tests, "what"; NULL when there is none. Status  cannot fail. */
OHM_API const char *ohm_test_column_name(int column);

/** How many notes reading left. Status  cannot fail. */
OHM_API size_t ohm_circuit_note_count(const ohm_circuit *circuit);

/** A note, a sentence with its place; NULL past the last. Status  cannot fail. */
OHM_API const char *ohm_circuit_note(const ohm_circuit *circuit, size_t index);
/* ---- identify ----------------------------------------------------------- */

/**
 * Which sensor it is. Each is as probable as any other beforehand; what is not known
 * is drawn over: where in its band this one part lies (the same in every reading; 5 %
 * where nothing says), the errors of the meter, the leads and one thermometer, alike in
 * all readings, and what each bath errs by on its own. A part is taken to follow its
 * curve to 0.5 % at any one temperature (common practice).
 *
 * "within"     reason "one" when a single sensor leads, "alike" when no reading
 *              from 0 C to 100 C by such instruments tells apart
 *              those that lead
 * "undecided"  "several": separating_c says where a further reading tells them apart;
 *              "missing_k", or what a display without a number says
 * "outside"    "none": the readings go with no sensor that was compared
 *
 * A sensor leads when p_fit is at least 1 - level and none that fits is ten times as
 * probable. What was identified by readings is not checked by the same readings.
 *
 * In      sensors  sensor_count of them, none NULL
 *         readings, references   count of each, 1 to 16
 *         meter    NULL for all assumed
 *         check    NULL for all defaults; its band has to be NULL
 * Out     candidates  sensor_count of them, the likeliest first; every field of those that
 *                  were not compared is absent, of all when a display shows no number
 *         finding  what they come to
 * Status  OHM_OK, also when undecided; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT a count is
 *         0, a band is named, or a member is NaN, infinite, of the wrong sign or no such
 *         constant; OHM_OUT_OF_RANGE level, tolerance, temperature, fan or limit out of
 *         its range; OHM_TOO_LARGE count is above 16.
 * Source  Bayes' theorem with equal priors; factor of ten: Jeffreys, Theory of Probability,
 *         3rd ed., appendix B ("strong"). p_fit: Rosenblatt, Ann. Math. Stat. 23 (1952)
 *         470-472.
 */
OHM_API ohm_status ohm_identify(const ohm_sensor *const *sensors, size_t sensor_count,
                                const ohm_reading *readings, const ohm_reference *references,
                                size_t count, const ohm_meter *meter, const ohm_check *check,
                                ohm_finding *candidates, ohm_finding *finding);

/* ---- pins --------------------------------------------------------------- */

/** What probes touch: pins 1 to 9, or A to H from OHM_TERMINAL_A on. */
typedef enum ohm_terminal {
  OHM_TERMINAL_1 = 1,
  OHM_TERMINAL_A = 11,
  OHM_TERMINAL_BODY = 30, /**< the metal body of the sensor */
  OHM_TERMINAL_MINUS      /**< battery negative */
} ohm_terminal;

/** A reading across two terminals. */
typedef struct ohm_pair {
  size_t size;
  int from; /**< an ohm_terminal */
  int to;
  ohm_reading reading;
} ohm_pair;

#define OHM_PAIR_INIT                                                                              \
  { sizeof(ohm_pair), 0, 0, OHM_READING_INIT }

/** What lies between two terminals. */
typedef enum ohm_role {
  OHM_ROLE_NONE = 0, /**< "none": no circuit */
  OHM_ROLE_MODULE,   /**< "module": an element that feeds a module */
  OHM_ROLE_GAUGE,    /**< "gauge": one that feeds an instrument */
  OHM_ROLE_EITHER,   /**< "either": one that may feed either */
  OHM_ROLE_UNKNOWN,  /**< "unknown": one that goes with no sensor compared */
  OHM_ROLE_BOTH,     /**< "both": two elements in series, the wrong pair */
  OHM_ROLE_JOINED,   /**< "joined": a wire, next to 0 ohm */
  OHM_ROLE_GROUND,   /**< "ground": the same element by way of the engine and its ground */
  OHM_ROLE_ASK       /**< "ask": the display showed no number, and not that it is open */
} ohm_role;

/**
 * Read a pair as 1-2=2.31k, B-D=OL, 1-body=480, 1-minus=480: two terminals, and what the
 * display showed as ohm_reading_read() has it.
 *
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX also one terminal twice;
 *         OHM_OUT_OF_RANGE below 0 or above 1e12 ohm.
 */
OHM_API ohm_status ohm_pair_read(const char *text, ohm_pair *pair, ohm_error *error);

/**
 * Which pins of a body with several are the module's element, and which the gauge's. A
 * pair that reads as much as two others on the way between its ends is across both. An
 * element is identified as by ohm_identify(), with sensors for modules and for gauges.
 * What reads the same to the body and to battery negative is grounded through its thread;
 * what reads more to battery negative tells the resistance of that ground.
 *
 * "within"     "one" element is the module's
 * "undecided"  "several": more than one element could be; "over_range", "lone_one": a
 *              display is to be read again first
 * "outside"    "none" goes with a module's sensor; "open" there is no circuit at all
 *
 * In      sensors  sensor_count of them, none NULL
 *         pairs    count of them, 1 to 16; no two of the same terminals
 *         reference  the temperature of all
 *         meter    NULL for all assumed
 *         check    NULL for all defaults; its band has to be NULL
 * Out     findings  count of them, one a pair
 *         candidates  sensor_count of them, used up
 *         finding  what they come to
 * Status  those of ohm_identify(); OHM_OUT_OF_RANGE also a terminal that is none;
 *         OHM_BAD_ARGUMENT also a pair that is there twice.
 * Source  bodies with a gauge's and a module's element: Audi A4 1997, coolant sensor G62
 *         (four pins); Kawasaki Z750 service manual, 16-76 (three, gauge to body).
 */
OHM_API ohm_status ohm_pins_identify(const ohm_sensor *const *sensors, size_t sensor_count,
                                     const ohm_pair *pairs, size_t count,
                                     const ohm_reference *reference, const ohm_meter *meter,
                                     const ohm_check *check, ohm_finding *findings,
                                     ohm_finding *candidates, ohm_finding *finding);

/* ---- explain ------------------------------------------------------------ */

/**
 * What is wrong with a sensor that was measured. Every kind of fault is asked how large
 * it would have to be, everything else drawn over as by ohm_identify(), and whether the
 * readings would then go together.
 *
 * "within"     "conforms": the readings go with a healthy sensor, and no fault goes
 *              markedly better with them
 * "outside"    not with a healthy one: "one" fault explains them, "several" do, "none"
 *              does; "open", "shorted"
 * "undecided"  "several": healthy or a fault; "plug_on", "missing_k", "over_range",
 *              "lone_one": a question to be answered first
 *
 * A fault with a size explains as many readings as one, whatever they are: one reading
 * never ranks them. separating_c says where a further one tells most of them.
 *
 * In      others   other_count sensors that it may be instead; NULL when 0
 *         readings, references   count of each, 1 to 16
 *         meter    NULL for all assumed
 *         check    NULL for all defaults
 * Out     explanations  OHM_EXPLANATION_COUNT of them, in the order of ohm_explanation
 *         finding  what they come to; with the figures of the only one that leads
 * Status  OHM_OK, also when undecided; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT count is 0,
 *         or a member is NaN, infinite, of the wrong sign or no such constant;
 *         OHM_OUT_OF_RANGE level, tolerance, temperature, fan or limit out of its range,
 *         or the curve does not reach a temperature; OHM_NOT_FOUND the sensor has no band
 *         of that name; OHM_TOO_LARGE count is above 16.
 * Source  a size that cannot be negative: Chernoff, Ann. Math. Stat. 25 (1954) 573-578.
 */
OHM_API ohm_status ohm_explain(const ohm_sensor *sensor, const ohm_sensor *const *others,
                               size_t other_count, const ohm_reading *readings,
                               const ohm_reference *references, size_t count,
                               const ohm_meter *meter, const ohm_check *check,
                               ohm_finding *explanations, ohm_finding *finding);
/* ---- cooling ------------------------------------------------------------ */

/** No soak and no time constant is longer, hours. */
#define OHM_SOAK_MOST_H 1000.0

/**
 * What a warm thing has cooled to in air that never changes, lagging behind it in
 * proportion to the difference.
 *
 *     T = air + (start - air) exp(-after/tau)
 *
 * In      start_c, air_c  degrees Celsius, above -273.15, up to 1000
 *         tau_h    time constant, hours, above 0, up to OHM_SOAK_MOST_H
 *         after_h  hours, 0 to OHM_SOAK_MOST_H
 * Out     t_c      NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT not finite; OHM_OUT_OF_RANGE.
 * Source  Newton's law of cooling, Philos. Trans. 22 (1701) 824-829.
 */
OHM_API ohm_status ohm_cooling_temperature(double start_c, double air_c, double tau_h,
                                           double after_h, double *t_c);

/**
 * Hours after which it has come to a temperature.
 *
 * In      t_c      between start and air, neither of them
 * Out     after_h  NaN unless OHM_OK
 * Status  those of ohm_cooling_temperature(); OHM_OUT_OF_RANGE it never has that
 *         temperature, or has it from the start.
 */
OHM_API ohm_status ohm_cooling_hours(double start_c, double air_c, double tau_h, double t_c,
                                     double *after_h);

/**
 * The time constant from one temperature on the way: of your own car, from a reading
 * while it cools.
 *
 * In      t_c      between start and air, neither of them
 *         after_h  hours, above 0
 * Out     tau_h    NaN unless OHM_OK
 * Status  those of ohm_cooling_hours().
 */
OHM_API ohm_status ohm_cooling_tau(double start_c, double air_c, double t_c, double after_h,
                                   double *tau_h);

/* ---- history ------------------------------------------------------------ */

/** What the air did while the car stood: straight between points. */
typedef struct ohm_history ohm_history;

/**
 * Make a history of the air.
 *
 * In      after_h  hours after the engine was stopped, rising, within OHM_SOAK_MOST_H of it;
 *                  before it they are negative
 *         t_c      degrees Celsius, above -273.15, up to 1000
 *         count    1 to 4096
 * Return  the history, or NULL with the error filled in.
 * Status  OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT; OHM_BAD_DEFINITION no point, or times that do
 *         not rise; OHM_TOO_LARGE; OHM_NO_MEMORY.
 */
OHM_API ohm_history *ohm_history_new(const double *after_h, const double *t_c, size_t count,
                                     ohm_error *error);

/**
 * Read a history as a logger writes it, CSV: a header row and rows. Times in a column
 * hours or minutes, after the engine was stopped; or time, of a clock: 21:40, 21:40:30,
 * 2026-11-03 21:40. Then a line "# stopped: 21:40" says when that was; without it, at
 * the first row. Temperatures in temp_c or temp_f. Other columns are not looked at.
 *
 * In      text    UTF-8, length bytes; need not end in NUL
 *         name    used in sentences
 * Return  the history, or NULL with the error filled in.
 * Status  OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE a temperature, or a row too
 *         far from the stop; OHM_BAD_DEFINITION no row, or times that do not rise;
 *         OHM_TOO_LARGE; OHM_NO_MEMORY.
 */
OHM_API ohm_history *ohm_history_parse(const char *text, size_t length, const char *name,
                                       ohm_error *error);

/**
 * Read a history from one plain file of at most 16 MiB.
 *
 * Return  the history, or NULL with the error filled in.
 * Status  those of ohm_history_parse(); OHM_CANNOT_OPEN.
 */
OHM_API ohm_history *ohm_history_load(const char *path, ohm_error *error);

/** Give a history back. NULL is allowed. Status  cannot fail. */
OHM_API void ohm_history_free(ohm_history *history);

/** How many points it has; 0 when history is NULL. Status  cannot fail. */
OHM_API size_t ohm_history_count(const ohm_history *history);

/**
 * One point, in the order of time.
 *
 * Out     after_h, t_c  each may be NULL; NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT no history; OHM_NOT_FOUND no such point.
 */
OHM_API ohm_status ohm_history_point(const ohm_history *history, size_t index, double *after_h,
                                     double *t_c);

/**
 * What a warm thing has cooled to in this air: the lag of ohm_cooling_temperature(),
 * its integral exact.
 *
 * In      start_c  at the stop, 0 h, or at the first point when that is later
 *         tau_h    above 0, up to OHM_SOAK_MOST_H
 *         after_h  from there up to the last point: air that was not told is not made up
 * Out     t_c      NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT not finite; OHM_OUT_OF_RANGE.
 */
OHM_API ohm_status ohm_history_cooling(const ohm_history *history, double start_c, double tau_h,
                                       double after_h, double *t_c);

/* ---- soak --------------------------------------------------------------- */

/** A sensor of a car that stood. */
typedef enum ohm_soaked {
  OHM_SOAKED_COOLANT = 0, /**< "coolant" */
  OHM_SOAKED_INTAKE,      /**< "intake": the air that goes into the engine */
  OHM_SOAKED_OIL,         /**< "oil" */
  OHM_SOAKED_AMBIENT      /**< "ambient": the air in front of the car */
} ohm_soaked;

/** What another sensor of the car shows at the same time. */
typedef struct ohm_companion {
  size_t size;
  int kind;          /**< an ohm_soaked */
  double t_c;        /**< degrees Celsius, as reported */
  double limit_k;    /**< it is within this; 0: OHM_ASSUMED_THERMOMETER_LIMIT_K */
  double tau_low_h;  /**< its time constant, hours; both 0: assumed by its kind */
  double tau_high_h; /**< not below tau_low_h */
} ohm_companion;

#define OHM_COMPANION_INIT                                                                         \
  { sizeof(ohm_companion), OHM_SOAKED_INTAKE, 0.0, 0.0, 0.0, 0.0 }

/** How the car stood. */
typedef struct ohm_soak {
  size_t size;
  double after_h;             /**< hours since the engine was stopped, up to OHM_SOAK_MOST_H; 0:
                                   up to the last point of the history */
  const ohm_history *history; /**< what the air did; NULL: it never changed */
  int extend;                 /**< not 0: past its last point the air stays as it was there */
  int start;                  /**< an ohm_standing, of the next two */
  double stop_c;              /**< temperature of the coolant when the engine was stopped; 0 and
                                   assumed: OHM_ASSUMED_STOP_C */
  double stop_limit_k;        /**< it was within this of stop_c, up to 1000; assumed:
                                   OHM_ASSUMED_STOP_TOLD_LIMIT_K of a stop_c that was told */
  double tau_low_h;           /**< time constant of the coolant, hours; both 0: */
  double tau_high_h;          /**< OHM_ASSUMED_COOLANT_TAU_LOW_H to ..._HIGH_H */
  int undisturbed;            /**< not 0: no sun, block heater, warm garage or move */
  double allow_k;             /**< how far the sensor may be off, up to 100; 0:
                                   OHM_ASSUMED_SOAK_ALLOW_K */
  const ohm_companion *companions; /**< other sensors of the car; NULL for none */
  size_t companion_count;          /**< up to 8 */
} ohm_soak;

#define OHM_SOAK_INIT                                                                              \
  { sizeof(ohm_soak), 0.0, NULL, 0, OHM_ASSUMED, 0.0, 0.0, 0.0, 0.0, 0, 0.0, NULL, 0 }

/**
 * Judge a coolant sensor of a car that stood, by the air. The coolant lags behind the air
 * with a time constant that may be any in its range alike; the start and one common
 * error of the air are rectangular, the noise of its points is normal, each its own. A
 * history that begins after the stop leaves the start anywhere from its first air up
 * to the stop. The verdict:
 *
 * Within     it is off by no more than allow_k, with a probability of the level.
 * Outside    it reads colder than the coolant can be, reason "high" (of an NTC
 *            element); or, when undisturbed, warmer, reason "low".
 * Undecided  else. Warmer is undecided, reason "warm", while sun, a block heater, a
 *            garage or a move may explain it; nothing explains colder.
 *
 * Companions are held against each other with the error of the air eliminated:
 * "consistent", or one is "odd", or they "disagree" and nobody can say which one is off.
 * One is odd when the others agree without it and do not without any other; of two,
 * none is; and none that is warm unless undisturbed.
 *
 * In      air     t_c unless there is a history; limit_k is the common error, u_k the noise;
 *                 a thermometer. May be NULL with a history: assumed
 *         meter, check  as ohm_bath_check(); of check the level, the place and the fan count
 * Out     finding every field absent unless OHM_OK
 * Status  OHM_OK, also when undecided; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT a member is
 *         NaN, infinite, of the wrong sign or no such constant; OHM_OUT_OF_RANGE a member is
 *         out of its range, or the history does not reach the reading;
 *         OHM_NOT_FOUND the sensor has no band of that name; OHM_TOO_LARGE companions.
 * Source  chi-square: Pearson, Philos. Mag. 50 (1900) 157-175. The time constant is
 *         inferred: no measured one was found in print.
 */
OHM_API ohm_status ohm_soak_check(const ohm_sensor *sensor, const ohm_reading *reading,
                                  const ohm_meter *meter, const ohm_reference *air,
                                  const ohm_soak *soak, const ohm_check *check,
                                  ohm_finding *finding);
/* ---- pin ---------------------------------------------------------------- */

/** What the sensor may have cooled or warmed between ohms and volts; common practice. */
#define OHM_ASSUMED_MOVED_LIMIT_K 1.0

/** How to judge the module's side of the wire. */
typedef struct ohm_pin {
  size_t size;
  double level;         /**< 0.5 < level < 1; 0: 0.95 */
  double fan_c;         /**< the fan is to start here; 0: OHM_ASSUMED_FAN_C */
  double limit_k;       /**< and may be late or early by this; 0: OHM_ASSUMED_FAN_LIMIT_K */
  int moved;            /**< an ohm_standing, of the next */
  double moved_limit_k; /**< between the readings the sensor moved by this at most, up to 20 */
} ohm_pin;

#define OHM_PIN_INIT                                                                               \
  { sizeof(ohm_pin), 0.0, 0.0, 0.0, OHM_ASSUMED, 0.0 }

/**
 * Say where the way from the sensor to what the module reports parts, from any of: ohms
 * at the sensor's own pins (plug off, key off), volts at the module's pin (plug on, key
 * on), degrees the module reports, and what a thermometer says. All at about the same
 * temperature.
 *
 * Each is turned into the resistance it means; two part when they differ by more than
 * their expanded uncertainty at the level, rectangular limits carried through the slopes;
 * of three, each pair is allowed a third of the doubt.
 * What module and volts agree on against the sensor is plug or wire: more ohms are in
 * series, fewer a leakage. Where sensor and module agree against the volts, these
 * were read from another ground, or the pull-up is another. Where sensor and volts agree
 * against the module, its curve is. With ohms and thermometer the sensor is judged as by
 * ohm_bath_check(). A value that never moves, or is a known substitute that
 * disagrees, is questioned first. r_ohm and t_c are as seen from the volts.
 *
 * Verdict  "within" they agree; "outside" they part; "undecided" it cannot be told.
 * Job      what parts them, as the same ohms in series or across (or as the same factor,
 *          of a curve), moves the start of the fan: "within" when that is limit_k at
 *          most whatever it could be at the level.
 *
 * In      module    how its input is made; NULL for all assumed, without volts
 *         reading, volts, reported, reference   NULL for what was not taken
 *         meter, pin   NULL for all assumed
 * Out     finding every field absent unless OHM_OK
 * Status  OHM_OK, also when undecided; OHM_NULL_ARGUMENT no sensor, no finding, or nothing was
 *         taken; OHM_BAD_ARGUMENT a member is NaN, infinite, of the wrong sign or no such
 *         constant, or volts come without a pull-up; OHM_OUT_OF_RANGE.
 * Source  JCGM 100:2008, clauses 4.3.7, 5.1 and 6.2.
 */
OHM_API ohm_status ohm_pin_check(const ohm_sensor *sensor, const ohm_module *module,
                                 const ohm_reading *reading, const ohm_meter *meter,
                                 const ohm_volts *volts, const ohm_reported *reported,
                                 const ohm_reference *reference, const ohm_pin *pin,
                                 ohm_finding *finding);

/* ---- substitute --------------------------------------------------------- */

/** How two resistors are joined. */
typedef enum ohm_joined {
  OHM_JOINED_NOT = 0, /**< "single" */
  OHM_JOINED_SERIES,  /**< "series" */
  OHM_JOINED_PARALLEL /**< "parallel" */
} ohm_joined;

/* Common practice: film resistors, and how far above the fan's start to aim. */
#define OHM_ASSUMED_RESISTOR_PERCENT     5.0
#define OHM_ASSUMED_RESISTOR_E96_PERCENT 1.0
#define OHM_ASSUMED_AIM_K                8.0

/** What is to stand in for the sensor. */
typedef struct ohm_substitute {
  size_t size;
  double aim_c;             /**< the module is to see this; 0: OHM_ASSUMED_AIM_K above fan_c */
  double fan_c;             /**< the fan is to start here; 0: OHM_ASSUMED_FAN_C */
  int series;               /**< an ohm_series; looked at when there is no drawer */
  double tolerance_percent; /**< of each resistor, under 50; 0: by the series */
  const double *drawer_ohm; /**< values at hand, each as often as it is there; or NULL */
  size_t drawer_count;      /**< 0 to 64 */
} ohm_substitute;

#define OHM_SUBSTITUTE_INIT                                                                        \
  { sizeof(ohm_substitute), 0.0, 0.0, OHM_SERIES_E12, 0.0, NULL, 0 }

/**
 * Ordinary resistors across the plug in place of the sensor, for a module to see a wanted
 * temperature: the single one nearest to it, and the pair, in series or across each other,
 * that comes nearest.
 *
 * Verdict  "within": with every tolerance it asks for the fan and looks like a sensor;
 *          "outside": it would look open or short, or never ask for the fan;
 *          "undecided": it depends on the tolerance.
 *
 * In      module  NULL when nothing is known of it: then limits are those of degrees that
 *         makers print, and the power that of the smallest pull-up printed
 *         substitute  NULL for all defaults
 * Out     single, pair   either may be NULL, not both; every field absent unless OHM_OK. Of
 *         a drawer of one value pair stays absent.
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE the sensor's curve
 *         does not reach what is asked for; OHM_TOO_LARGE the drawer.
 * Source  preferred values: IEC 60063.
 */
OHM_API ohm_status ohm_substitute_find(const ohm_sensor *sensor, const ohm_module *module,
                                       const ohm_substitute *substitute, ohm_finding *single,
                                       ohm_finding *pair);

/**
 * Resistance of plug and wires from two resistors fitted in place of the sensor and what
 * the module reported with each: R(t) = k (r + s) for both, so that what the module
 * multiplies by, k, is told apart from what is in series, s. Linear in the uncertainties.
 *
 * Verdict  "within": s is at most what makes the fan late by limit_k, with its uncertainty;
 *          "outside": it is more; else "undecided".
 *
 * In      readings  two, of the resistors, by an ohmmeter
 *         reported  two, what the module showed with them
 *         meter, pin   NULL for all assumed
 * Out     finding every field absent unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE a display without a
 *         number, or degrees the curve does not reach; OHM_BAD_DEFINITION the two are
 *         too near to each other to tell anything: one is to be half of the other at
 *         most.
 * Source  JCGM 100:2008, clause 5.1.
 */
OHM_API ohm_status ohm_loom_check(const ohm_sensor *sensor, const ohm_reading readings[2],
                                  const ohm_meter *meter, const ohm_reported reported[2],
                                  const ohm_pin *pin, ohm_finding *finding);

/* ---- fanpoint ----------------------------------------------------------- */

/** Series resistance asked about unless told; common practice. */
#define OHM_ASSUMED_HIDDEN_OHM 50.0

/**
 * What to expect where the fan starts and stops: ohms and volts, what a kelvin is worth
 * there, and how far a hidden series resistance moves both. The verdict is undecided, reason
 * "alone", for nothing was measured.
 *
 * In      on_c, off_c   where it starts and stops, off_c < on_c; off_c NaN when not known
 *         module  NULL, or without a pull-up: no volts
 *         hidden_ohm   0 to 1e6
 * Out     finding every field absent unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE.
 */
OHM_API ohm_status ohm_fanpoint_find(const ohm_sensor *sensor, double on_c, double off_c,
                                     const ohm_module *module, double hidden_ohm,
                                     ohm_finding *finding);

/* ---- isolation ---------------------------------------------------------- */

/**
 * Which part of a circuit is at fault, from what was seen so far, and which test to make
 * next. Nothing is kept between calls: the record is the whole state.
 *
 * A record is lines of NAME=OUTCOME, blank ones and those that begin with # aside:
 *
 *     fuse-look=good       of a test: good, bad, skip or a number
 *     battery-volts=12.4
 *     fuse-mv=12mV@ATO30   millivolts over a fuse of that rating
 *     sensor-pins=within   of a finding: within, outside, undecided
 *     fuse=renewed         a link that was renewed or repaired
 *     clamp=none           a tool that is not to be had
 *     ac-runs-fan=yes      a fact that the maker states
 *     fan=102C             where the fan is to start
 *     circuit=NAME         which circuit the record is of
 *
 * A good test clears links for certain; a bad one says that one of those it accuses is at
 * fault. What explains all of it with the fewest faults is suspect; a part is at fault
 * when a bad test leaves nothing else. The next test is the one that is expected to tell
 * most in a minute, among those the tools allow.
 *
 * In      record  length bytes; may be NULL when length is 0
 * Out     finding every field absent unless OHM_OK. Its state is
 *                 closed         the fan has started by itself: within
 *                 found          buy and repair say what: outside
 *                 not_asked      the fan was not really asked for: undecided
 *                 go_on          next is a test: undecided
 *                 no_test_left   none is left that tells anything: undecided
 *                 contradiction  tests that cannot all be right: undecided
 *                 too_hot        12 degrees above where the fan starts: engine off
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_NOT_FOUND a name that is none of
 *         the circuit's; OHM_BAD_DEFINITION the record is of another circuit;
 *         OHM_TOO_LARGE more than 512 lines.
 * Source  J. de Kleer and B. C. Williams, Artificial Intelligence 32 (1987) 97-130.
 */
OHM_API ohm_status ohm_isolation_judge(const ohm_circuit *circuit, const char *record,
                                       size_t length, ohm_finding *finding, ohm_error *error);

/**
 * What a finding on the sensor says to a circuit, as a line of its record: a sensor that
 * is within at its own pins leaves plug and wires open. Only what is good enough for the
 * fan as well is within.
 *
 * Return  length of the whole text, cut to fit when it is size or more; 0 when the
 *         finding says nothing to this circuit, or an argument is NULL.
 * Status  cannot fail.
 */
OHM_API size_t ohm_isolation_print_finding(const ohm_circuit *circuit, const ohm_finding *finding,
                                           char *buffer, size_t size);

/* ---- report ------------------------------------------------------------- */

/**
 * A finding in sentences for the person at the bench: caution first, then what was
 * read, what it means, what is allowed, the verdict, what it does not answer and
 * what to do next. Plain text, lines of at most 80 columns, each ended by a
 * newline.
 *
 * Return  length of the whole text, cut to fit when it is size or more; 0 when
 *         finding is NULL.
 * Status  cannot fail.
 */
OHM_API size_t ohm_report_print(const ohm_finding *finding, char *buffer, size_t size);

/**
 * The uncertainty of a finding by cause, so that it can be worked out again by hand.
 *
 * Return  as ohm_report_print()
 * Status  cannot fail.
 */
OHM_API size_t ohm_report_print_budget(const ohm_finding *finding, char *buffer, size_t size);

#ifdef __cplusplus
}
#endif

#endif
