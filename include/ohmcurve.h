/* SPDX-License-Identifier: MIT */
/*
 * ohmcurve: from the reading of an ohmmeter to a verdict on a temperature
 * sensor.
 *
 *   ohm_bench   what is set and what was read
 *   ohm_answer  what a verb says of it: ohm_bench_check() and its like
 *   ohm_finding one result, read by field
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
 * Memory    Only functions named ..._new, ..._load, ..._parse and ..._fit allocate, and
 *           those that return an ohm_answer *; what they return is the caller's, to be
 *           given to the matching ..._free. Texts returned by other functions belong to
 *           the object they were asked of and live as long as it does. Functions that
 *           write a text fill the caller's buffer, end it with NUL when size is not 0,
 *           and return the length the whole text needs without that NUL.
 * Stack     No call needs more than 48 kB of it.
 * Threads   No global state, no locale. What is reached through a const pointer may be
 *           used by many threads at once; any other object by one thread at a time.
 * Growth    What can grow is opaque (ohm_bench, ohm_answer, ohm_finding, ohm_sensor,
 *           ohm_circuit and so on) or a list whose numbers are never used again
 *           (OHM_SETTINGS, OHM_FIELDS, the lists of words). A program built with this
 *           header runs with a later library of the same soname, and passes over numbers
 *           it does not know. Frozen are the structs ohm_error, ohm_estimate,
 *           ohm_conformance, ohm_sensor_row, ohm_fit_point, ohm_fit_request and
 *           ohm_suspect.
 */
#ifndef OHMCURVE_H
#define OHMCURVE_H

#include <stddef.h>

#define OHM_VERSION_MAJOR 0
#define OHM_VERSION_MINOR 2
#define OHM_VERSION_PATCH 0
#define OHM_VERSION       "0.2.0"

#if defined(__GNUC__) && !defined(SWIG)
#define OHM_API __attribute__((visibility("default")))
#else
#define OHM_API
#endif

#ifdef __cplusplus
extern "C" {
#endif

/* ---- status ------------------------------------------------------------ */

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
  OHM_TOO_LARGE,      /**< more than 16 MiB, 4096 rows or a list that is full */
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
 * Version of the library that is running, "0.2.0".
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

/* ---- number ------------------------------------------------------------ */

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

/**
 * Read a resistance: 2310, 2.31k, 2k31 (IEC 60062), 2.31 kohm, 0R47.
 *
 * Out     r_ohm   ohm; NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX no number, or a display without
 *         one; OHM_OUT_OF_RANGE below 0 or above 1e12 ohm.
 */
OHM_API ohm_status ohm_resistance_read(const char *text, double *r_ohm, ohm_error *error);

/**
 * Read a temperature with its unit: 21.5C, -10C, 70F, 294.7K.
 *
 * Out     t_c     degrees Celsius; NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE.
 */
OHM_API ohm_status ohm_temperature_read(const char *text, double *t_c, ohm_error *error);

/* ---- nearest ----------------------------------------------------------- */

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

/* ---- decision ---------------------------------------------------------- */

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

/* ---- water ------------------------------------------------------------- */

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

/* ---- divider ----------------------------------------------------------- */

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

/* ---- preferred --------------------------------------------------------- */

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

/* ---- curve ------------------------------------------------------------- */

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
 * ohm_curve_temperature() for an array. A value that cannot be converted gives NaN in
 * its place and the rest go on. In and out may be the same array.
 *
 * In      r_ohm   count resistances; NULL only when count is 0
 *         r_stride, t_stride  bytes from one to the next, sizeof(double) where they are
 *                 side by side, more in an array of structs
 * Out     t_c     count temperatures, degrees Celsius
 *         failed  how many are NaN; may be NULL
 * Status  OHM_OK, whatever failed; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT a stride below
 *         sizeof(double), or one at which a double cannot lie.
 */
OHM_API ohm_status ohm_curve_temperatures(const ohm_curve *curve, const double *r_ohm,
                                          size_t r_stride, double *t_c, size_t t_stride,
                                          size_t count, size_t *failed);

/**
 * ohm_curve_resistance() for an array, in the same manner.
 *
 * In      t_c     count temperatures; NULL only when count is 0
 *         t_stride, r_stride  as of ohm_curve_temperatures()
 * Out     r_ohm   count resistances, ohm
 *         failed  how many are NaN; may be NULL
 * Status  OHM_OK, whatever failed; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT.
 */
OHM_API ohm_status ohm_curve_resistances(const ohm_curve *curve, const double *t_c, size_t t_stride,
                                         double *r_ohm, size_t r_stride, size_t count,
                                         size_t *failed);

/* ---- audit ------------------------------------------------------------- */

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

/** One suspect figure. Its texts belong to the audit. Frozen. */
typedef struct ohm_suspect {
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

/* ---- sensor ------------------------------------------------------------ */

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

/* ---- fit --------------------------------------------------------------- */

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

/** What to fit. Frozen. */
typedef struct ohm_fit_request {
  int model;        /**< an ohm_fit_model */
  double r_ref_ohm; /**< Rref of the four-term form; 0: that of the point nearest to 25 C */
  double low_c;     /**< range the curve is to have; both 0: the span of the points */
  double high_c;
} ohm_fit_request;

#define OHM_FIT_REQUEST_INIT                                                                       \
  { OHM_FIT_BETA, 0.0, 0.0, 0.0 }

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
 *         177-190.
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

/* ---- module ------------------------------------------------------------ */
/**
 * What a module reports of a temperature: whole degrees from -40 to 215, one byte.
 *
 * In      t_c       above -273.15, up to 1000
 *         cut     not 0: cut off to the next below; 0: rounded to the nearest
 * Out     shown_c   degrees Celsius; NaN unless OHM_OK
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT NaN;
 *         OHM_OUT_OF_RANGE.
 * Source  SAE J1979, service 01: A - 40.
 */
OHM_API ohm_status ohm_reported_of(double t_c, int cut, double *shown_c);

/* ---- cooling ----------------------------------------------------------- */

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

/* ---- history ----------------------------------------------------------- */

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

/* ---- circuit ----------------------------------------------------------- */

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
  X(ROLE, role, "symptom, condition, proof or blank")                                              \
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
 * In place of links a file may have a wiring, a row a thing, with the columns
 *
 *     link    its name
 *     kind    battery wire splice strap rail ground fuse relay output switch
 *             resistor motor sensor
 *     from    a point: what is written alike is joined; + and - are the posts
 *             of the battery
 *     to      another; a relay and a sensor have none, a relay's points are
 *             NAME.30 .87 .87a .85 .86
 *     value   volts of the battery, amperes of a fuse or motor, ohms of a coil
 *             or resistor
 *     by      of a wire where it can rub through to; of a fuse key, if it is
 *             live with the key on alone; of an output or switch what closes
 *             it: hot high ac unplugged commanded, with a ? behind what the
 *             maker has to state first; of a switch also what opens it, cold
 *
 * and part, action, renew, odds and standing where the usual does not do. Its
 * links and tests, and what each test tells, are worked out of it: direct
 * currents with one thing failed in every way and size, and what would be seen.
 *
 * In      text    UTF-8, length bytes; need not end in NUL
 *         name    used for the circuit when the text gives none, and in sentences
 * Return  the circuit, or NULL with the error filled in.
 * Status  OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_BAD_DEFINITION no link, no symptom, two
 *         of one name, no currents can be worked out; OHM_TOO_LARGE also above 64 links;
 *         OHM_NO_MEMORY.
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

/* ---- words ------------------------------------------------------------- */

/* The words of a finding, each list: number, constant, word, meaning. A number is never
 * used again, and a list may grow. */

/** The verdicts, in the order of a command's exit status. */
#define OHM_VERDICTS(X)                                                                            \
  X(0, WITHIN, within, "inside what is allowed")                                                   \
  X(1, OUTSIDE, outside, "not inside it")                                                          \
  X(2, UNDECIDED, undecided, "it cannot be told yet")
#define OHM_CONSTANT(number, constant, word, meaning) OHM_##constant = number,
typedef enum ohm_verdict { OHM_VERDICTS(OHM_CONSTANT) } ohm_verdict;
#undef OHM_CONSTANT

/** Why the verdict is what it is. */
#define OHM_REASONS(X)                                                                             \
  X(0, CONFORMS, conforms, "inside what is allowed")                                               \
  X(1, LOW, low, "below what is allowed")                                                          \
  X(2, HIGH, high, "above what is allowed")                                                        \
  X(3, OPEN, open, "no circuit")                                                                   \
  X(4, OVER_RANGE, over_range, "the meter showed no number")                                       \
  X(5, NO_TOLERANCE, no_tolerance, "nothing says what is allowed")                                 \
  X(6, OUTSIDE_BAND, outside_band, "nothing says so at this temperature")                          \
  X(7, UNCERTAIN, uncertain, "the measurement is too coarse to decide")                            \
  X(8, PLUG_ON, plug_on, "it fits a good sensor with the plug left on")                            \
  X(9, MISSING_K, missing_k, "a thousand times as much was probably read")                         \
  X(10, LONE_ONE, lone_one, "over-range, or 1 ohm")                                                \
  X(11, MOVING, moving, "the last two readings differ, wait")                                      \
  X(12, SHORTED, shorted, "0 ohm, or nearly")                                                      \
  X(13, ONE, one, "one answer fits the readings")                                                  \
  X(14, ALIKE, alike, "several do, that no reading could tell apart")                              \
  X(15, SEVERAL, several, "a further reading tells them apart")                                    \
  X(16, NONE, none, "nothing compared fits")                                                       \
  X(17, WARM, warm, "warmer than a soak explains, but sun, a heater, a garage or a move would")    \
  X(18, SERIES, series, "ohms in plug or wire")                                                    \
  X(19, LEAKAGE, leakage, "a path across the sensor, in plug or wire")                             \
  X(20, GROUND, ground, "the volts were read from another ground")                                 \
  X(21, PULL_UP, pull_up, "not the pull-up or the supply that was told")                           \
  X(22, CURVE, curve, "the module makes other degrees of the same volts")                          \
  X(23, BETWEEN, between, "they part, and more than one thing could be it")                        \
  X(24, STUCK, stuck, "the reported value never moves")                                            \
  X(25, STAND_IN, stand_in, "the reported value is a known substitute")                            \
  X(26, RANGE, range, "which of two pull-ups is in use is not known")                              \
  X(27, ALONE, alone, "there is nothing to hold it against")                                       \
  X(28, COLD, cold, "the module would not ask for the fan")                                        \
  X(29, ANOTHER_BAND, another_band, "beyond what one maker allows, and inside another's limits")   \
  X(30, FAN_SWITCH, fan_switch, "no sensor: a switch that is open cold and closed hot")            \
  X(31, FAHRENHEIT, fahrenheit, "the degrees were probably Fahrenheit")
#define OHM_CONSTANT(number, constant, word, meaning) OHM_REASON_##constant = number,
typedef enum ohm_reason { OHM_REASONS(OHM_CONSTANT) } ohm_reason;
#undef OHM_CONSTANT

/** Why the sensor is or is not good enough for the fan. */
#define OHM_JOB_REASONS(X)                                                                         \
  X(0, CONFORMS, conforms, "neither late nor early, whatever could hide")                          \
  X(1, LATE, late, "at the least the fan starts too late")                                         \
  X(2, EARLY, early, "at the least it starts too early")                                           \
  X(3, HIDDEN, hidden, "what could still hide would be too much")                                  \
  X(4, UNCERTAIN, uncertain, "the measurement is too coarse to say")                               \
  X(5, COLD, cold, "read too far below the fan's temperature to say")
#define OHM_CONSTANT(number, constant, word, meaning) OHM_JOB_##constant = number,
typedef enum ohm_job_reason { OHM_JOB_REASONS(OHM_CONSTANT) } ohm_job_reason;
#undef OHM_CONSTANT

/** What may be wrong with what was read. */
#define OHM_EXPLANATIONS(X)                                                                        \
  X(0, HEALTHY, healthy, "a sound sensor")                                                         \
  X(1, SERIES, series, "resistance in the plug, the pins or a wire")                               \
  X(2, LEAKAGE, leakage, "something conducts across the sensor")                                   \
  X(3, DRIFT, drift, "more or fewer ohms, by the same part everywhere")                            \
  X(4, BETA_DRIFT, beta, "right near 25 C, and too steep or too flat")                             \
  X(5, OTHER_PART, other_part, "it is another sensor")                                             \
  X(6, OPEN, open, "no circuit")                                                                   \
  X(7, SHORT, short, "0 ohm, or nearly")                                                           \
  X(8, PLUG_ON, plug_on, "a good one with the plug left on")                                       \
  X(9, WRONG_RANGE, wrong_range, "a thousand times as much or as little was read")                 \
  X(10, FAHRENHEIT, fahrenheit, "a good one, at as many degrees Fahrenheit")
#define OHM_CONSTANT(number, constant, word, meaning) OHM_EXPLANATION_##constant = number,
typedef enum ohm_explanation { OHM_EXPLANATIONS(OHM_CONSTANT) } ohm_explanation;
#undef OHM_CONSTANT

/** Where the probes were. */
#define OHM_PLACES(X)                                                                              \
  X(0, NOT_TOLD, not_told, "nobody said")                                                          \
  X(1, SENSOR, sensor, "at its own pins, plug off")                                                \
  X(2, PLUG_ON, plug_on, "back-probed with the plug on")                                           \
  X(3, MODULE, module, "at the module's end of the wires, module unplugged, sensor plugged in")
#define OHM_CONSTANT(number, constant, word, meaning) OHM_PLACE_##constant = number,
typedef enum ohm_place { OHM_PLACES(OHM_CONSTANT) } ohm_place;
#undef OHM_CONSTANT

/** Where the negative lead of the voltmeter was. */
#define OHM_NEGATIVES(X)                                                                           \
  X(0, NOT_TOLD, not_told, "nobody said")                                                          \
  X(1, PIN, pin, "the module's own pin for the sensor's ground")                                   \
  X(2, SENSOR, sensor, "the ground terminal at the sensor")                                        \
  X(3, BODY, body, "engine, body or battery")
#define OHM_CONSTANT(number, constant, word, meaning) OHM_NEGATIVE_##constant = number,
typedef enum ohm_negative { OHM_NEGATIVES(OHM_CONSTANT) } ohm_negative;
#undef OHM_CONSTANT

/** What lies between two pins. */
#define OHM_ROLES(X)                                                                               \
  X(0, NONE, none, "no circuit")                                                                   \
  X(1, MODULE, module, "an element that feeds a module")                                           \
  X(2, GAUGE, gauge, "one that feeds an instrument")                                               \
  X(3, EITHER, either, "one that may feed either")                                                 \
  X(4, UNKNOWN, unknown, "one that goes with no sensor compared")                                  \
  X(5, BOTH, both, "two elements in series, the wrong pair")                                       \
  X(6, JOINED, joined, "a wire, next to 0 ohm")                                                    \
  X(7, GROUND, ground, "the same element by way of the engine and its ground")                     \
  X(8, ASK, ask, "the display showed no number, and not that it is open")
#define OHM_CONSTANT(number, constant, word, meaning) OHM_ROLE_##constant = number,
typedef enum ohm_role { OHM_ROLES(OHM_CONSTANT) } ohm_role;
#undef OHM_CONSTANT

/** A sensor of a car that stood. */
#define OHM_SOAKED_SENSORS(X)                                                                      \
  X(0, COOLANT, coolant, "the coolant")                                                            \
  X(1, INTAKE, intake, "the air that goes into the engine")                                        \
  X(2, OIL, oil, "the oil")                                                                        \
  X(3, AMBIENT, ambient, "the air in front of the car")
#define OHM_CONSTANT(number, constant, word, meaning) OHM_SOAKED_##constant = number,
typedef enum ohm_soaked { OHM_SOAKED_SENSORS(OHM_CONSTANT) } ohm_soaked;
#undef OHM_CONSTANT

/** How two resistors are joined. */
#define OHM_JOINTS(X)                                                                              \
  X(0, NOT, single, "there is one")                                                                \
  X(1, SERIES, series, "one behind the other")                                                     \
  X(2, PARALLEL, parallel, "across each other")
#define OHM_CONSTANT(number, constant, word, meaning) OHM_JOINED_##constant = number,
typedef enum ohm_joined { OHM_JOINTS(OHM_CONSTANT) } ohm_joined;
#undef OHM_CONSTANT

/** What a test made on a circuit showed. */
#define OHM_OUTCOMES(X)                                                                            \
  X(0, GOOD, good, "as it should be")                                                              \
  X(1, BAD, bad, "not as it should be")                                                            \
  X(2, UNSURE, unsure, "too near a limit to tell, or it contradicts another")                      \
  X(3, SKIPPED, skipped, "it was left out")
#define OHM_CONSTANT(number, constant, word, meaning) OHM_OUTCOME_##constant = number,
typedef enum ohm_outcome { OHM_OUTCOMES(OHM_CONSTANT) } ohm_outcome;
#undef OHM_CONSTANT

/** What several sensors of one car say of each other. */
#define OHM_AGREEMENTS(X)                                                                          \
  X(0, CONSISTENT, consistent, "they agree")                                                       \
  X(1, ODD, odd, "one does not agree with the others")                                             \
  X(2, DISAGREE, disagree, "nobody can say which one is off")
#define OHM_CONSTANT(number, constant, word, meaning) OHM_AGREEMENT_##constant = number,
typedef enum ohm_agreement { OHM_AGREEMENTS(OHM_CONSTANT) } ohm_agreement;
#undef OHM_CONSTANT

/** What says how warm the sensor is. */
#define OHM_REFERENCES(X)                                                                          \
  X(0, THERMOMETER, thermometer, "a thermometer beside it")                                        \
  X(1, ICE, ice, "crushed ice and water, stirred: 0 degrees C")                                    \
  X(2, BOIL, boil, "boiling water, near sea level")                                                \
  X(3, BOIL_ALTITUDE, boil_altitude, "boiling water at an altitude")                               \
  X(4, BOIL_PRESSURE, boil_pressure, "boiling water at a pressure")                                \
  X(5, INFRARED, infrared, "an infrared thermometer aimed at it")
#define OHM_CONSTANT(number, constant, word, meaning) OHM_REFERENCE_##constant = number,
typedef enum ohm_reference_kind { OHM_REFERENCES(OHM_CONSTANT) } ohm_reference_kind;
#undef OHM_CONSTANT

/** What can be asked of a bench. */
#define OHM_VERBS(X)                                                                               \
  X(0, CHECK, check, "is a sensor at a known temperature what its maker allows")                   \
  X(1, IDENTIFY, identify, "which sensor readings were taken of")                                  \
  X(2, PINS, pins, "which pins of a body are which element")                                       \
  X(3, EXPLAIN, explain, "what would explain the readings of a sensor")                            \
  X(4, SOAK, soak, "is a coolant sensor right after the car stood")                                \
  X(5, SIGNAL, signal, "where the way from the sensor to what the module reports parts")           \
  X(6, SUBSTITUTE, substitute, "which resistors ask for the fan in the place of the sensor")       \
  X(7, LOOM, loom, "the ohms in plug and wires, by two resistors in the place of the sensor")      \
  X(8, FANPOINT, fanpoint, "ohms and volts where the fan starts and stops")                        \
  X(9, CIRCUIT, circuit, "which part of a fan circuit is at fault, and what to test next")         \
  X(10, MEASURE, measure, "what readings say of a resistance, with no sensor")                     \
  X(11, EXPECT, expect, "what a good sensor shows at a temperature, before it is measured")
#define OHM_CONSTANT(number, constant, word, meaning) OHM_VERB_##constant = number,
typedef enum ohm_verb { OHM_VERBS(OHM_CONSTANT) } ohm_verb;
#undef OHM_CONSTANT

/* ---- settings ---------------------------------------------------------- */

/** How the text of a setting is written, and what its number is; those without one take
 *  text alone. */
typedef enum ohm_setting_kind {
  OHM_SETTING_KIND_PROBABILITY = 1, /**< "0.95"; number */
  OHM_SETTING_KIND_TEMPERATURE,     /**< "97C", "207F", "370K"; number in degrees Celsius */
  OHM_SETTING_KIND_DIFFERENCE,      /**< "5", "5K", "5C", "9F"; number in kelvin */
  OHM_SETTING_KIND_PERCENT,         /**< "5%"; number */
  OHM_SETTING_KIND_RESISTANCE,      /**< "50", "1.2k"; number in ohm */
  OHM_SETTING_KIND_CURRENT,         /**< "1mA", "100uA"; number in milliampere */
  OHM_SETTING_KIND_HOURS,           /**< "7", "7h"; number */
  OHM_SETTING_KIND_VOLTS,           /**< "4.9", "4.9V", "100mV"; number in volt */
  OHM_SETTING_KIND_FLAG,            /**< "yes", "no"; number, 0 is no */
  OHM_SETTING_KIND_TEXT,            /**< any text */
  OHM_SETTING_KIND_PLACE,           /**< a word of OHM_PLACES; its number */
  OHM_SETTING_KIND_NEGATIVE,        /**< a word of OHM_NEGATIVES; its number */
  OHM_SETTING_KIND_RANGE,           /**< "cold": the larger one, "hot" */
  OHM_SETTING_KIND_MOVES,           /**< "yes", "no": the same cold and hot */
  OHM_SETTING_KIND_ROUNDING,        /**< "rounded" to the nearest, "cut" to the next below */
  OHM_SETTING_KIND_SERIES,          /**< "E12", "E24", "E96" */
  OHM_SETTING_KIND_REFERENCE,       /**< see ohm_bench_read(); number in degrees Celsius, its limit
                                         assumed */
  OHM_SETTING_KIND_METER,           /**< "0.8%+3": percent of reading plus counts of the last digit;
                                         "0.8%+3x10": a count is 10 ohm; "0.8%+3@2000": a display of 2000
                                         counts; "@2000"; "exact" */
  OHM_SETTING_KIND_LEADS,   /**< "0.4", within 0.1; "0.4+-0.1"; "exact": none to take off; number
                                 in ohm */
  OHM_SETTING_KIND_AIR,     /**< "9C", "9C+-2"; number in degrees Celsius */
  OHM_SETTING_KIND_STOP,    /**< "92C", "92C+-3"; number in degrees Celsius */
  OHM_SETTING_KIND_TAU,     /**< "1h-4h" */
  OHM_SETTING_KIND_PULL_UP, /**< "1k", "1k+-1%", "10k,1k@50C"; number in ohm */
  OHM_SETTING_KIND_SUPPLY,  /**< "5V", "5.02V+-0.01"; number in volt */
  OHM_SETTING_KIND_DRAWER   /**< "100,220,330,1k" */
} ohm_setting_kind;

/**
 * What can be asked, one list: number, constant, name (with its unit), kind, what holds
 * without it, what is allowed (an interval, words, or a description), an example, the
 * verbs that look at it, meaning. The options of the command and the keywords of Python
 * are these names. A number is never used again.
 */
#define OHM_SETTINGS(X)                                                                            \
  X(1, LEVEL, level, PROBABILITY, "0.95", "(0.5, 1)", "0.95",                                      \
    "check identify pins explain soak signal substitute loom circuit measure expect",              \
    "how probable a verdict must be before it is given")                                           \
  X(2, FAN_C, fan_c, TEMPERATURE, "97C", "(0, 130)", "97C",                                        \
    "check identify pins explain soak signal substitute loom fanpoint circuit",                    \
    "the temperature at which the fan is to start")                                                \
  X(3, LIMIT_K, limit_k, DIFFERENCE, "5C", "(0, 100]", "5C", "check soak signal loom",             \
    "how late or early the fan may start")                                                         \
  X(4, BAND, band, TEXT, "the widest of those printed for the temperature",                        \
    "a band of the sensor", "kawasaki-z750", "check explain expect",                               \
    "the maker's band to judge by")                                                                \
  X(5, TOLERANCE_PERCENT, tolerance_percent, PERCENT, "what the makers printed", "(0, 100)", "5%", \
    "check identify pins explain expect",                                                          \
    "what is allowed either side of nominal, percent of resistance")                               \
  X(6, PLACE, place, PLACE, "not told", "sensor, plug_on, module", "sensor", "check explain soak", \
    "where the probes were, of readings that do not say")                                          \
  X(7, AT, at, REFERENCE, "each reading carries its own", "a temperature, ice, boil",              \
    "21.5C+-0.5", "check identify pins explain signal measure expect",                             \
    "the temperature the sensor really has, of readings that carry none")                          \
  X(8, U_AT_K, u_at_k, DIFFERENCE, "none", "(0, 1000]", "0.2C",                                    \
    "check identify pins explain signal expect",                                                   \
    "standard uncertainty of those temperatures beside their limit, normal")                       \
  X(9, METER, meter, METER, "1%+3", "an accuracy as meter makers print it", "0.8%+3@2000",         \
    "check identify pins explain soak signal loom measure expect",                                 \
    "what the maker of the ohmmeter states of its accuracy")                                       \
  X(10, LEADS, leads, LEADS, "0.3+-0.2", "0 to 1000 ohm, with a limit or not", "0.4+-0.1",         \
    "check identify pins explain soak signal loom measure expect",                                 \
    "resistance of the leads, taken off the reading")                                              \
  X(11, CURRENT_MA, current_ma, CURRENT, "up to 1mA, less on higher ranges", "(0, 1000]", "1mA",   \
    "check identify pins explain soak expect",                                                     \
    "what the ohmmeter sends through the sensor; it warms one whose dissipation factor is known")  \
  X(12, AIR, air, AIR, "that of the history, within 2C", "a temperature, with a limit or not",     \
    "9C+-2", "soak",                                                                               \
    "the air the car stood in; with a history its limit alone counts, as common to all of it")     \
  X(13, U_AIR_K, u_air_k, DIFFERENCE, "none", "(0, 1000]", "0.5C", "soak",                         \
    "standard uncertainty of each point of the air, normal, each its own")                         \
  X(14, AFTER_H, after_h, HOURS, "up to the last point of the history", "(0, 1000]", "7h", "soak", \
    "how long ago the engine was stopped")                                                         \
  X(15, STOP, stop, STOP, "90C+-15C", "a temperature, with a limit or not", "92C+-3", "soak",      \
    "temperature of the coolant when the engine was stopped")                                      \
  X(16, TAU, tau, TAU, "1h-4h", "the least and the greatest, above 0h, up to 1000h", "1h-4h",      \
    "soak", "time constant of the coolant, in which the difference to the air falls by 63 %")      \
  X(17, ALLOW_K, allow_k, DIFFERENCE, "6C", "(0, 100]", "6C", "soak",                              \
    "how far the sensor may be off after a soak; makers print 5.6 to 15")                          \
  X(18, UNDISTURBED, undisturbed, FLAG, "no", "yes, no", "yes", "soak",                            \
    "no sun, block heater or warm garage, and the car was not moved")                              \
  X(19, EXTEND, extend, FLAG, "no", "yes, no", "yes", "soak",                                      \
    "after the last point of the history the air stayed as it was")                                \
  X(20, PULL_UP, pull_up, PULL_UP, "not known", "1 to 1e7 ohm, one or two and where they change",  \
    "1k+-1%", "signal substitute fanpoint",                                                        \
    "the resistor in the module from the pin to its supply")                                       \
  X(21, SUPPLY, supply, SUPPLY, "5V+-2%", "0.5 to 30 V, with a limit or not", "5.02V+-0.01",       \
    "signal substitute fanpoint", "the supply of the pull-up, the volts at the open plug")         \
  X(22, NEGATIVE, negative, NEGATIVE, "not told", "pin, sensor, body", "pin", "signal",            \
    "where the voltmeter's negative lead was, of readings that do not say")                        \
  X(23, RANGE, range, RANGE, "what the other readings say", "cold, hot", "hot", "signal",          \
    "which of two pull-ups was in use")                                                            \
  X(24, MOVES, moves, MOVES, "not told", "yes, no", "yes", "signal loom",                          \
    "whether the reported value follows the engine")                                               \
  X(25, ROUNDING, rounding, ROUNDING, "either", "rounded, cut", "cut", "signal substitute loom",   \
    "how the module makes whole degrees")                                                          \
  X(26, OPEN_VOLT, open_volt, VOLTS, "0.98 of the supply", "(0, 30]", "4.9V", "signal substitute", \
    "from here up the module sees no circuit")                                                     \
  X(27, SHORT_VOLT, short_volt, VOLTS, "0.02 of the supply", "(0, 30]", "0.1V",                    \
    "signal substitute", "from here down it sees a short")                                         \
  X(28, MOVED_K, moved_k, DIFFERENCE, "1C", "[0, 20]", "1C", "check signal loom",                  \
    "how far the sensor cooled or warmed between the readings")                                    \
  X(29, AIM_C, aim_c, TEMPERATURE, "8C above the start of the fan", "(0, 300]", "105C",            \
    "substitute", "the temperature the module is to see")                                          \
  X(30, SERIES, series, SERIES, "E12", "E12, E24, E96", "E24", "substitute",                       \
    "preferred values to choose from")                                                             \
  X(31, DRAWER, drawer, DRAWER, "the series", "up to 64 resistances, commas between",              \
    "100,220,330,1k", "substitute", "values at hand instead, each as often as it is there")        \
  X(32, RESISTOR_PERCENT, resistor_percent, PERCENT, "5%, of E96 1%", "(0, 50)", "5%",             \
    "substitute", "tolerance of each resistor")                                                    \
  X(33, OFF_C, off_c, TEMPERATURE, "not known", "(0, 130)", "92C", "fanpoint",                     \
    "where the fan stops")                                                                         \
  X(34, HIDDEN_OHM, hidden_ohm, RESISTANCE, "50", "[0, 1e6]", "50", "fanpoint",                    \
    "the ohms in plug or wire to ask about")                                                       \
  X(35, RANGES_ALIKE, ranges_alike, FLAG, "not known: what both allow", "yes, no", "yes", "check", \
    "the ohmmeter errs alike on all its ranges; no: on each its own way")

#define OHM_SETTING_CONSTANT(number, constant, name, kind, without, allowed, example, verbs,       \
                             meaning)                                                              \
  OHM_SETTING_##constant = number,
/** A setting, OHM_SETTING_FAN_C and so on. */
typedef enum ohm_setting { OHM_SETTINGS(OHM_SETTING_CONSTANT) } ohm_setting;
#undef OHM_SETTING_CONSTANT

/** How many settings there are. Status  cannot fail. */
OHM_API size_t ohm_setting_count(void);

/** Number of a setting, in the order of the list; 0 past the last. Status  cannot fail. */
OHM_API int ohm_setting_at(size_t index);

/** Number of the setting of that name, case and - for _ aside; 0 when there is none, or
 *  name is NULL. Status  cannot fail. */
OHM_API int ohm_setting_named(const char *name);

/** Name of a setting, "fan_c"; NULL when there is none. Status  cannot fail. */
OHM_API const char *ohm_setting_name(int setting);

/** An ohm_setting_kind; 0 when there is no such setting. Status  cannot fail. */
OHM_API int ohm_setting_kind_of(int setting);

/** What holds without it, "97C", "the widest of those printed for the temperature"; NULL
 *  when there is no such setting. Status  cannot fail. */
OHM_API const char *ohm_setting_default(int setting);

/** What is allowed, "above 0C and below 130C"; written and returned like every text; 0
 *  when there is no such setting. Status  cannot fail. */
OHM_API size_t ohm_setting_allowed(int setting, char *buffer, size_t size);

/** How it is written, "97C"; NULL when there is no such setting. Status  cannot fail. */
OHM_API const char *ohm_setting_example(int setting);

/** What it is; NULL when there is no such setting. Status  cannot fail. */
OHM_API const char *ohm_setting_meaning(int setting);

/** Whether a verb looks at a setting: 1 or 0. Status  cannot fail. */
OHM_API int ohm_setting_is_of(int setting, ohm_verb verb);

/* ---- finding ----------------------------------------------------------- */

/** How a field is read. */
typedef enum ohm_field_kind {
  OHM_KIND_NUMBER = 1, /**< ohm_finding_number(); NaN when absent */
  OHM_KIND_TEXT,       /**< ohm_finding_text(), index 0; NULL when absent */
  OHM_KIND_WORD,       /**< likewise, or its number by ohm_finding_word(); -1 when absent */
  OHM_KIND_LIST        /**< ohm_finding_text(), index 0, 1, ... until NULL */
} ohm_field_kind;

/**
 * What is answered, one list: number, constant, name (with its unit), kind, meaning. The
 * JSON keys of the command and the attributes of the Python class are these names. A
 * number is never used again.
 */
#define OHM_FIELDS(X)                                                                              \
  X(1, VERDICT, verdict, WORD, "is it what is allowed; see OHM_VERDICTS")                          \
  X(2, REASON, reason, WORD, "one word for why; see OHM_REASONS")                                  \
  X(3, P_LOW, p_low, NUMBER, "probability that the resistance lies below what is allowed")         \
  X(4, P_WITHIN, p_within, NUMBER, "probability that it lies within")                              \
  X(5, P_HIGH, p_high, NUMBER, "probability that it lies above")                                   \
  X(6, LEVEL, level, NUMBER, "probability asked for before anything is decided")                   \
  X(7, JOB, job, WORD, "is it good enough for the fan; see OHM_VERDICTS")                          \
  X(8, JOB_REASON, job_reason, WORD, "one word for why; see OHM_JOB_REASONS")                      \
  X(9, FAN_C, fan_c, NUMBER, "temperature at which the fan is to start")                           \
  X(10, LIMIT_K, limit_k, NUMBER, "how late or early it may start, kelvin")                        \
  X(11, LATE_K, late_k, NUMBER,                                                                    \
    "latest it could start after fan_c, kelvin; absent when never up to 130 C")                    \
  X(12, EARLY_K, early_k, NUMBER, "earliest it could start before fan_c, kelvin")                  \
  X(13, SERIES_OHM, series_ohm, NUMBER, "largest series resistance that could hide")               \
  X(14, SERIES_LATE_K, series_late_k, NUMBER,                                                      \
    "how late it makes the fan; negative: early; absent: never")                                   \
  X(15, SERIES_SOUND_LATE_K, series_sound_late_k, NUMBER,                                          \
    "the same in series with a nominal sensor")                                                    \
  X(16, LEAKAGE_OHM, leakage_ohm, NUMBER, "smallest leakage across that could hide; absent: none") \
  X(17, LEAKAGE_EARLY_K, leakage_early_k, NUMBER, "how early it makes the fan; negative: late")    \
  X(18, LEAKAGE_SOUND_EARLY_K, leakage_sound_early_k, NUMBER, "the same across a nominal sensor")  \
  X(19, FIFTY_LATE_K, fifty_late_k, NUMBER,                                                        \
    "how late 50 ohm in series make a nominal sensor; absent: never")                              \
  X(20, PLACE, place, WORD, "where the probes were; see OHM_PLACES")                               \
  X(21, R_OHM, r_ohm, NUMBER, "resistance at the probes' tips, leads taken off")                   \
  X(22, U_R_OHM, u_r_ohm, NUMBER, "its standard uncertainty")                                      \
  X(23, EXPANDED_R_OHM, expanded_r_ohm, NUMBER, "its expanded uncertainty at the level")           \
  X(24, SUGGESTED_OHM, suggested_ohm, NUMBER,                                                      \
    "what was probably meant, when a k seems to be missing")                                       \
  X(25, RANGE_OHM, range_ohm, NUMBER, "range on which the display was over")                       \
  X(26, T_C, t_c, NUMBER, "temperature that resistance means on the nominal curve")                \
  X(27, U_T_C, u_t_c, NUMBER, "its standard uncertainty from the reading, kelvin")                 \
  X(28, EXPANDED_T_K, expanded_t_k, NUMBER, "its expanded uncertainty at the level")               \
  X(29, AT_C, at_c, NUMBER, "temperature the sensor really has")                                   \
  X(30, U_AT_C, u_at_c, NUMBER, "its standard uncertainty, kelvin")                                \
  X(31, EXPANDED_AT_K, expanded_at_k, NUMBER, "its expanded uncertainty at the level")             \
  X(32, EXPECTED_OHM, expected_ohm, NUMBER, "nominal resistance at that temperature")              \
  X(33, LOW_OHM, low_ohm, NUMBER, "least resistance allowed there")                                \
  X(34, HIGH_OHM, high_ohm, NUMBER, "greatest resistance allowed there")                           \
  X(35, TOLERANCE_PERCENT, tolerance_percent, NUMBER, "half-width of what is allowed there")       \
  X(36, ACCEPT_LOW_OHM, accept_low_ohm, NUMBER,                                                    \
    "least reading that would pass; absent: none would")                                           \
  X(37, ACCEPT_HIGH_OHM, accept_high_ohm, NUMBER,                                                  \
    "greatest reading that would pass; absent: none would")                                        \
  X(38, NEEDED_K, needed_k, NUMBER, "limit of a thermometer with which a reading could pass")      \
  X(39, CM, cm, NUMBER,                                                                            \
    "measurement capability index, allowed width over four standard uncertainties")                \
  X(40, ALPHA_PER_K, alpha_per_k, NUMBER, "relative slope of the nominal curve there, per kelvin") \
  X(41, U_COMBINED_OHM, u_combined_ohm, NUMBER,                                                    \
    "reading and temperature together, standard uncertainty")                                      \
  X(42, METER_LIMIT_OHM, meter_limit_ohm, NUMBER, "limit of error of the meter, rectangular")      \
  X(43, LEAD_OHM, lead_ohm, NUMBER, "resistance of the leads, taken off")                          \
  X(44, LEAD_LIMIT_OHM, lead_limit_ohm, NUMBER, "limit of error of that, rectangular")             \
  X(45, REFERENCE_LIMIT_K, reference_limit_k, NUMBER,                                              \
    "limit of error of the reference, rectangular")                                                \
  X(46, REFERENCE_U_K, reference_u_k, NUMBER,                                                      \
    "further standard uncertainty of the reference, normal")                                       \
  X(47, HEATING_K, heating_k, NUMBER,                                                              \
    "element warmer than the bath by the test current, middle value")                              \
  X(48, HEATING_LIMIT_K, heating_limit_k, NUMBER, "limit of error of that, rectangular")           \
  X(49, READINGS, readings, NUMBER, "how many readings the finding rests on")                      \
  X(50, MOVED_OHM, moved_ohm, NUMBER, "what the last two readings of one temperature differ by")   \
  X(51, P_SENSOR, p_sensor, NUMBER, "probability that it is this sensor, of those compared")       \
  X(52, P_FIT, p_fit, NUMBER, "probability that a good one gives readings that fit it no better")  \
  X(53, LEADING, leading, NUMBER, "1: it fits, and none is ten times as probable; else 0")         \
  X(54, SENSOR_INDEX, sensor_index, NUMBER, "its place among the sensors compared, from 0")        \
  X(55, SENSOR_KIND, sensor_kind, TEXT, "module, gauge or probe: what it feeds")                   \
  X(56, COMPARED, compared, NUMBER, "how many sensors the readings were compared with")            \
  X(57, NOT_COMPARED, not_compared, NUMBER, "how many whose curves do not reach a temperature")    \
  X(58, CANDIDATES, candidates, LIST, "what the readings do not tell apart, the likeliest first")  \
  X(59, GAUGES, gauges, NUMBER, "how many of those drive a gauge")                                 \
  X(60, SEPARATING_C, separating_c, NUMBER, "temperature at which a further reading tells most")   \
  X(61, SEPARATING_OHM, separating_ohm, NUMBER,                                                    \
    "what it would read there; of all, what one would")                                            \
  X(62, SEPARATING_OTHER_OHM, separating_other_ohm, NUMBER, "and what another would")              \
  X(63, FIFTY_LEAST_LATE_K, fifty_least_late_k, NUMBER, "least of fifty_late_k of the candidates") \
  X(64, EXPLANATION, explanation, WORD, "what may be wrong; see OHM_EXPLANATIONS")                 \
  X(65, P_CHANCE, p_chance, NUMBER, "probability that a sound sensor looks so faulty by chance")   \
  X(66, FAULT_OHM, fault_ohm, NUMBER, "series resistance, or leakage; absent: none")               \
  X(67, FAULT_LOW_OHM, fault_low_ohm, NUMBER, "least it may be at the level")                      \
  X(68, FAULT_HIGH_OHM, fault_high_ohm, NUMBER, "greatest it may be; absent: no bound")            \
  X(69, FAULT_PERCENT, fault_percent, NUMBER, "drift of the resistance, or of beta")               \
  X(70, FAULT_LOW_PERCENT, fault_low_percent, NUMBER, "least it may be at the level")              \
  X(71, FAULT_HIGH_PERCENT, fault_high_percent, NUMBER, "greatest it may be")                      \
  X(72, FAULT_LATE_K, fault_late_k, NUMBER,                                                        \
    "how late a fault of that size makes the fan; negative: early; absent: never")                 \
  X(73, AFTER_H, after_h, NUMBER, "hours the car stood")                                           \
  X(74, STOP_C, stop_c, NUMBER, "temperature of the coolant when the engine was stopped")          \
  X(75, STOP_LIMIT_K, stop_limit_k, NUMBER, "limit of error of that, rectangular")                 \
  X(76, TAU_LOW_H, tau_low_h, NUMBER, "least time constant of the coolant, hours")                 \
  X(77, TAU_HIGH_H, tau_high_h, NUMBER, "greatest time constant of the coolant, hours")            \
  X(78, AIR_C, air_c, NUMBER, "temperature of the air at the end of the soak")                     \
  X(79, AIR_LIMIT_K, air_limit_k, NUMBER, "limit of error of the air, rectangular")                \
  X(80, COLDEST_C, coldest_c, NUMBER, "coldest the air can have been")                             \
  X(81, COOLANT_LOW_C, coolant_low_c, NUMBER,                                                      \
    "lower end of where the coolant has come to, at the level")                                    \
  X(82, COOLANT_HIGH_C, coolant_high_c, NUMBER, "upper end of it")                                 \
  X(83, ALLOW_K, allow_k, NUMBER, "how far the sensor may be off after a soak, kelvin")            \
  X(84, P_COLD, p_cold, NUMBER, "probability that it reads colder than it is by more than that")   \
  X(85, P_WARM, p_warm, NUMBER, "probability that it reads warmer than it is by more than that")   \
  X(86, MISSED_COLD_K, missed_cold_k, NUMBER,                                                      \
    "largest error to the cold side that could be missed, kelvin")                                 \
  X(87, DECIDABLE_H, decidable_h, NUMBER,                                                          \
    "hours after which one in the middle of what is left would pass; absent: never up to 72")      \
  X(88, AGREEMENT, agreement, WORD, "what the sensors say of each other; see OHM_AGREEMENTS")      \
  X(89, ODD, odd, WORD, "which one does not agree with the others; see OHM_SOAKED_SENSORS")        \
  X(90, ODD_OFF_K, odd_off_k, NUMBER, "how far it is off from what the others say, kelvin")        \
  X(91, P_AGREE, p_agree, NUMBER, "probability that chance alone makes them differ more")          \
  X(92, PAIR, pair, TEXT, "pins it was read across; of all, those of the module's element")        \
  X(93, ROLE, role, WORD, "what lies between those pins; see OHM_ROLES")                           \
  X(94, GAUGE_PAIR, gauge_pair, TEXT, "pins of the gauge's element")                               \
  X(95, GROUND_OHM, ground_ohm, NUMBER, "resistance between the body and battery negative")        \
  X(96, GROUND_LIMIT_OHM, ground_limit_ohm, NUMBER, "limit of error of that, rectangular")         \
  X(97, ABOUT, about, WORD, "the verb that was asked; see OHM_VERBS")                              \
  X(98, V_VOLT, v_volt, NUMBER, "volts at the module's pin")                                       \
  X(99, SUPPLY_VOLT, supply_volt, NUMBER, "supply of the pull-up")                                 \
  X(100, PULL_UP_OHM, pull_up_ohm, NUMBER, "pull-up in use")                                       \
  X(101, OTHER_PULL_UP_OHM, other_pull_up_ohm, NUMBER, "the other one that these volts would fit") \
  X(102, OTHER_R_OHM, other_r_ohm, NUMBER, "resistance that would be seen through that")           \
  X(103, OTHER_T_C, other_t_c, NUMBER, "temperature that would mean")                              \
  X(104, NEGATIVE, negative, WORD, "where the negative lead was; see OHM_NEGATIVES")               \
  X(105, SENSOR_OHM, sensor_ohm, NUMBER, "resistance at the sensor's own pins, leads taken off")   \
  X(106, EXPANDED_SENSOR_OHM, expanded_sensor_ohm, NUMBER,                                         \
    "its expanded uncertainty at the level")                                                       \
  X(107, SENSOR_C, sensor_c, NUMBER, "temperature that means")                                     \
  X(108, REPORTED_C, reported_c, NUMBER, "temperature the module reports")                         \
  X(109, REPORTED_OHM, reported_ohm, NUMBER, "resistance that means, whole degrees allowed for")   \
  X(110, BETWEEN_OHM, between_ohm, NUMBER, "what the module sees less what the sensor has")        \
  X(111, U_BETWEEN_OHM, u_between_ohm, NUMBER, "its standard uncertainty")                         \
  X(112, EXPANDED_BETWEEN_OHM, expanded_between_ohm, NUMBER,                                       \
    "its expanded uncertainty at the level")                                                       \
  X(113, SHUNT_OHM, shunt_ohm, NUMBER, "leakage across the sensor that would explain it")          \
  X(114, OFFSET_VOLT, offset_volt, NUMBER, "rise of the ground that would explain it")             \
  X(115, FITS_PULL_UP_OHM, fits_pull_up_ohm, NUMBER, "pull-up that would explain it")              \
  X(116, PARTED_K, parted_k, NUMBER, "degrees the module is off what the sensor has")              \
  X(117, START_C, start_c, NUMBER,                                                                 \
    "true temperature at which the fan starts; absent: never to 130 C")                            \
  X(118, START_LOW_C, start_low_c, NUMBER,                                                         \
    "least it could be at the level; absent: it always runs")                                      \
  X(119, START_HIGH_C, start_high_c, NUMBER, "greatest it could be; absent: never up to 130 C")    \
  X(120, AIM_C, aim_c, NUMBER, "temperature the module is to see")                                 \
  X(121, FIRST_OHM, first_ohm, NUMBER, "resistor to fit")                                          \
  X(122, SECOND_OHM, second_ohm, NUMBER, "second resistor to fit; absent: none")                   \
  X(123, JOINED, joined, WORD, "how two are joined; see OHM_JOINTS")                               \
  X(124, SEEN_LOW_C, seen_low_c, NUMBER, "least temperature the module could see")                 \
  X(125, SEEN_HIGH_C, seen_high_c, NUMBER, "greatest temperature the module could see")            \
  X(126, SHOWN_C, shown_c, NUMBER, "whole degrees a module then reports")                          \
  X(127, POWER_MW, power_mw, NUMBER, "most that one resistor has to bear, milliwatt")              \
  X(128, FACTOR, factor, NUMBER, "what the module multiplies every resistance by; 1 is right")     \
  X(129, EXPANDED_FACTOR, expanded_factor, NUMBER, "its expanded uncertainty at the level")        \
  X(130, ON_C, on_c, NUMBER, "temperature at which the fan starts")                                \
  X(131, OFF_C, off_c, NUMBER, "temperature at which it stops")                                    \
  X(132, ON_OHM, on_ohm, NUMBER, "nominal resistance at on_c")                                     \
  X(133, OFF_OHM, off_ohm, NUMBER, "nominal resistance at off_c")                                  \
  X(134, ON_VOLT, on_volt, NUMBER, "volts at the module's pin at on_c")                            \
  X(135, OFF_VOLT, off_volt, NUMBER, "volts at the module's pin at off_c")                         \
  X(136, OHM_PER_K, ohm_per_k, NUMBER, "what a kelvin is worth at on_c, ohm")                      \
  X(137, VOLT_PER_K, volt_per_k, NUMBER, "what a kelvin is worth at on_c, volt")                   \
  X(138, HIDDEN_OHM, hidden_ohm, NUMBER, "series resistance asked about")                          \
  X(139, FAN_STOP_C, fan_stop_c, NUMBER,                                                           \
    "true temperature at which the fan then stops; absent: never started")                         \
  X(140, TESTS, tests, NUMBER, "how many tests were made on a circuit")                            \
  X(141, MINUTES, minutes, NUMBER, "about how long they took")                                     \
  X(142, NEXT_MINUTES, next_minutes, NUMBER, "about how long the next one takes")                  \
  X(143, NEXT_BITS, next_bits, NUMBER, "what it is expected to tell, in bits")                     \
  X(144, FUSE_AMPERES, fuse_amperes, NUMBER, "current that the millivolts over a fuse mean")       \
  X(145, CIRCUIT, circuit, TEXT, "name of the circuit")                                            \
  X(146, STATE, state, TEXT, "what stands now; see ohm_bench_isolate()")                           \
  X(147, BUY, buy, LIST, "parts at fault that are bought, and what renewing them involves")        \
  X(148, REPAIR, repair, LIST, "parts at fault that are repaired, likewise")                       \
  X(149, AGAIN, again, LIST, "tests to make again after that, and what to expect of them")         \
  X(150, RENEWED, renewed, LIST, "links that were renewed")                                        \
  X(151, LAST, last, TEXT, "the last test and its outcome")                                        \
  X(152, SKIPPED, skipped, LIST, "tests that were skipped")                                        \
  X(153, CONTRADICTION, contradiction, LIST, "tests that cannot all be right")                     \
  X(154, NEXT, next, TEXT, "the test to make next")                                                \
  X(155, NEXT_WHAT, next_what, TEXT, "what is done or measured, and what is good")                 \
  X(156, NEXT_POINTS, next_points, TEXT, "where, between which points")                            \
  X(157, NEXT_CONDITION, next_condition, TEXT, "under which condition")                            \
  X(158, NEXT_TOOLS, next_tools, TEXT, "tools it takes, apart by spaces")                          \
  X(159, NEXT_CAUTION, next_caution, TEXT, "what could hurt")                                      \
  X(160, NEXT_SOURCE, next_source, TEXT, "where it was printed")                                   \
  X(161, NEXT_GOOD, next_good, TEXT, "the number that is good")                                    \
  X(162, NEXT_WHY, next_why, TEXT, "what it is for")                                               \
  X(163, FAULTY, faulty, LIST, "links at fault")                                                   \
  X(164, SUSPECTS, suspects, LIST, "links that could be at fault, the most probable first")        \
  X(165, CLEARED, cleared, LIST, "links that are not at fault")                                    \
  X(166, SENSOR, sensor, TEXT, "name of the sensor")                                               \
  X(167, SOURCE, source, TEXT, "where its figures were printed")                                   \
  X(168, BAND, band, TEXT, "name of the maker's band judged by; absent: the sensor's own limits")  \
  X(169, BAND_SOURCE, band_source, TEXT, "where that band was printed")                            \
  X(170, OTHER_BANDS, other_bands, LIST, "what other makers allow there")                          \
  X(171, READ, read, TEXT, "the reading as displayed")                                             \
  X(172, REFERENCE, reference, WORD, "what said how warm it is; see OHM_REFERENCES")               \
  X(173, ASSUMED, assumed, LIST, "what was not told and therefore assumed")                        \
  X(174, NOT_TESTED, not_tested, LIST, "what lies outside the probes")                             \
  X(175, VERSION, version, TEXT, "version of the library")                                         \
  X(176, TABLES_VERSION, tables_version, TEXT, "version of the tables built in")                   \
  X(177, TEST, test, TEXT, "name of a test made on a circuit")                                     \
  X(178, MEASURED, measured, NUMBER, "number that was read at it, in its unit; absent: a word")    \
  X(179, OUTCOME, outcome, WORD, "what it showed; see OHM_OUTCOMES")                               \
  X(180, ALLOWED_BY, allowed_by, TEXT, "another maker, whose limits it is not beyond")             \
  X(181, IN_BAND, in_band, NUMBER,                                                                 \
    "place in the band by all readings: 0 its middle, -1 and 1 its limits")                        \
  X(182, IN_BAND_LOW, in_band_low, NUMBER, "least of what holds it at the level")                  \
  X(183, IN_BAND_HIGH, in_band_high, NUMBER, "greatest of that")                                   \
  X(184, BEYOND_AT_C, beyond_at_c, NUMBER,                                                         \
    "of several readings, where the part is beyond what is allowed")                               \
  X(185, BETWEEN_LATE_K, between_late_k, NUMBER,                                                   \
    "how late those ohms make the fan, before a sound sensor; absent: never to 130 C")             \
  X(186, BETWEEN_MOST_LATE_K, between_most_late_k, NUMBER,                                         \
    "and the most they could be; absent: never to 130 C")                                          \
  X(187, WIRES, wires, WORD, "whether plug and wires are good for the fan; see OHM_VERDICTS")      \
  X(188, P_NONE, p_none, NUMBER, "probability that it is none of those compared")                  \
  X(189, PASSES_H, passes_h, NUMBER,                                                               \
    "hours from which on the same reading would pass a soak; absent: never up to 72")              \
  X(190, UNLIMITED, unlimited, NUMBER,                                                             \
    "of several readings, those left out, their temperatures having no printed limits")

#define OHM_FIELD_CONSTANT(number, constant, name, kind, meaning) OHM_FIELD_##constant = number,
/** A field, OHM_FIELD_VERDICT and so on. */
typedef enum ohm_field { OHM_FIELDS(OHM_FIELD_CONSTANT) } ohm_field;
#undef OHM_FIELD_CONSTANT

/** How many fields there are. Status  cannot fail. */
OHM_API size_t ohm_field_count(void);

/** Number of a field, in the order of the list; 0 past the last. Status  cannot fail. */
OHM_API int ohm_field_at(size_t index);

/** Number of the field of that name; 0 when there is none, or name is NULL.
 *  Status  cannot fail. */
OHM_API int ohm_field_named(const char *name);

/** Name of a field, "r_ohm"; NULL when there is no such field. Status  cannot fail. */
OHM_API const char *ohm_field_name(int field);

/** What a field means; NULL when there is no such field. Status  cannot fail. */
OHM_API const char *ohm_field_meaning(int field);

/** An ohm_field_kind; 0 when there is no such field. Status  cannot fail. */
OHM_API int ohm_field_kind_of(int field);

/** A result of an answer, owned by it. */
typedef struct ohm_finding ohm_finding;

/** A number of a finding; NaN when it is absent or no number. Status  cannot fail. */
OHM_API double ohm_finding_number(const ohm_finding *finding, int field);

/** A text of a finding, as long as it is; NULL when it is absent, past the last, or no
 *  text.  Status  cannot fail. */
OHM_API const char *ohm_finding_text(const ohm_finding *finding, int field, size_t index);

/** The number of a word of a finding, as OHM_REASON_LOW; -1 when it is absent or no word.
 *  Status  cannot fail. */
OHM_API int ohm_finding_word(const ohm_finding *finding, int field);

/** The verdict; OHM_UNDECIDED when finding is NULL. Status  cannot fail. */
OHM_API ohm_verdict ohm_finding_verdict(const ohm_finding *finding);

/** The verdict for the fan, likewise. Status  cannot fail. */
OHM_API ohm_verdict ohm_finding_job(const ohm_finding *finding);

/* ---- bench ------------------------------------------------------------- */

/**
 * What was set and what was read. Settings and readings are copied; sensors, a history and
 * a circuit are borrowed: they have to live as long as the bench uses them. A mistake is
 * one sentence with what was given and what is allowed, and the bench stays as it was;
 * what is wrong between settings, such as a band that this sensor has not, is told by the
 * verb. It may be used by one thread at a time.
 *
 * A check:
 *
 *     ohm_error error;
 *     ohm_sensor *sensor =
 *         ohm_sensor_built_in_load("ntc-2k45-20c", &error);
 *     ohm_bench *bench = ohm_bench_new(&error);
 *     ohm_bench_use_sensor(bench, sensor);
 *     if (ohm_bench_read(bench, "2.31k@21.5C", NULL, &error) != OHM_OK)
 *       puts(error.message);
 *     ohm_answer *answer = ohm_bench_check(bench, &error);
 *     const ohm_finding *finding = ohm_answer_finding(answer);
 *     if (finding)
 *       puts(ohm_finding_text(finding, OHM_FIELD_VERDICT, 0));
 */
typedef struct ohm_bench ohm_bench;

/** An empty bench, or NULL with the error filled in. Status  OHM_NO_MEMORY. */
OHM_API ohm_bench *ohm_bench_new(ohm_error *error);

/** A copy of a bench that borrows what it borrows, or NULL with the error filled in.
 *  Status  OHM_NULL_ARGUMENT; OHM_NO_MEMORY. */
OHM_API ohm_bench *ohm_bench_copy_new(const ohm_bench *bench, ohm_error *error);

/** Give a bench back. NULL is allowed. Status  cannot fail. */
OHM_API void ohm_bench_free(ohm_bench *bench);

/** Forget every setting, every reading and what is borrowed. NULL is allowed.
 *  Status  cannot fail. */
OHM_API void ohm_bench_clear(ohm_bench *bench);

/**
 * Set what is asked, by its notation.
 *
 * In      setting  an ohm_setting
 *         text     in the notation of its kind; NULL unsets it
 * Status  OHM_OK; OHM_NULL_ARGUMENT no bench; OHM_NOT_FOUND no such setting;
 *         OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE; OHM_NO_MEMORY.
 */
OHM_API ohm_status ohm_bench_set(ohm_bench *bench, int setting, const char *text, ohm_error *error);

/**
 * Set what is asked, by its number.
 *
 * In      setting  an ohm_setting whose kind has a number
 *         value    in the unit of its name, or a word's number
 * Status  OHM_OK; OHM_NULL_ARGUMENT no bench; OHM_NOT_FOUND no such setting;
 *         OHM_BAD_ARGUMENT not finite, or the setting takes text alone; OHM_OUT_OF_RANGE;
 *         OHM_NO_MEMORY.
 */
OHM_API ohm_status ohm_bench_set_number(ohm_bench *bench, int setting, double value,
                                        ohm_error *error);

/** What a setting was set to, in its notation; NULL when it is not set, there is no such
 *  setting, or bench is NULL. Good until the bench changes. Status  cannot fail. */
OHM_API const char *ohm_bench_setting(const ohm_bench *bench, int setting);

/** The sensor to ask about, borrowed; NULL for none.
 *  Status  OHM_OK; OHM_NULL_ARGUMENT no bench. */
OHM_API ohm_status ohm_bench_use_sensor(ohm_bench *bench, const ohm_sensor *sensor);

/**
 * One more sensor to compare with, borrowed: what it may be instead.
 *
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_TOO_LARGE more than 4096; OHM_NO_MEMORY.
 */
OHM_API ohm_status ohm_bench_compare(ohm_bench *bench, const ohm_sensor *sensor, ohm_error *error);

/** What the air did while the car stood, borrowed; NULL for none.
 *  Status  OHM_OK; OHM_NULL_ARGUMENT no bench. */
OHM_API ohm_status ohm_bench_use_history(ohm_bench *bench, const ohm_history *history);

/** The circuit to ask about, borrowed; NULL for none.
 *  Status  OHM_OK; OHM_NULL_ARGUMENT no bench. */
OHM_API ohm_status ohm_bench_use_circuit(ohm_bench *bench, const ohm_circuit *circuit);

/**
 * Put a reading down, in the one notation of all verbs:
 *
 *     2.31k              ohms as the display showed them, all digits; 2310, 2k31, OL,
 *                        OL@20k (over range on 20k), 1 (a lone 1), open
 *     2.31k@21.5C        at that temperature: 21.5C, 70F, 294.7K, ice, boil, boil@1200m,
 *                        boil@870hPa, infrared@80C; each may end in +-1, its limit
 *     2.31k@21.5C,sensor at that place: sensor, plug_on, module
 *     =2310.4            ohms, every digit known, as a program has them
 *     1-2=480            across two pins, 1 to 9, A to H, body or minus
 *     0.97V              volts at the module's pin; 970mV, 0.97V+-0.02; 0.97V,body says
 *                        where the negative lead was: pin, sensor, body
 *     91C                degrees that the module reports; 196F, 91C+-2
 *     intake=10.5C       degrees that another sensor of the car shows: intake, oil, ambient
 *     fuse-look=good     what was seen of a circuit; see ohm_bench_isolate()
 *
 * Out     index   its place, counted from 0; may be NULL
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_SYNTAX; OHM_OUT_OF_RANGE; OHM_NOT_FOUND a
 *         name that is none of the circuit's; OHM_TOO_LARGE more than 512 readings;
 *         OHM_NO_MEMORY.
 */
OHM_API ohm_status ohm_bench_read(ohm_bench *bench, const char *text, size_t *index,
                                  ohm_error *error);

/** What a number is a reading of. */
typedef enum ohm_quantity {
  OHM_QUANTITY_OHMS = 1, /**< ohm, 0 to 1e12, every digit known */
  OHM_QUANTITY_VOLTS,    /**< volt at the module's pin, 0 to 30 */
  OHM_QUANTITY_REPORTED  /**< degrees Celsius that the module reports, -60 to 300 */
} ohm_quantity;

/**
 * Put a reading down by its number, for loops.
 *
 * In      quantity  an ohm_quantity
 *         at_c    temperature of the sensor, degrees Celsius, above -273.15, up to 1000, of
 *                 ohms; NaN when it carries none
 * Out     index   its place, counted from 0; may be NULL
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_BAD_ARGUMENT no such quantity, or a value that is
 *         not finite; OHM_OUT_OF_RANGE; OHM_TOO_LARGE; OHM_NO_MEMORY.
 */
OHM_API ohm_status ohm_bench_read_number(ohm_bench *bench, int quantity, double value, double at_c,
                                         size_t *index, ohm_error *error);

/**
 * Read a record: lines of readings, of settings as "# fan_c: 97C", of remarks that begin
 * with #, and blank ones. All of it is taken, or nothing.
 *
 * In      text    UTF-8, length bytes; may be NULL when length is 0
 * Status  OHM_OK; OHM_NULL_ARGUMENT; with the line of the first mistake OHM_BAD_SYNTAX,
 *         OHM_OUT_OF_RANGE, OHM_NOT_FOUND, OHM_TOO_LARGE; OHM_NO_MEMORY.
 */
OHM_API ohm_status ohm_bench_read_record(ohm_bench *bench, const char *text, size_t length,
                                         ohm_error *error);

/** How many readings lie on it; 0 when bench is NULL. Status  cannot fail. */
OHM_API size_t ohm_bench_count(const ohm_bench *bench);

/** A reading in its notation; NULL past the last. Good until the bench changes.
 *  Status  cannot fail. */
OHM_API const char *ohm_bench_reading(const ohm_bench *bench, size_t index);

/**
 * Forget a reading; those behind it move up by one.
 *
 * Status  OHM_OK; OHM_NULL_ARGUMENT; OHM_NOT_FOUND no such reading.
 */
OHM_API ohm_status ohm_bench_forget(ohm_bench *bench, size_t index);

/**
 * Write the record: settings and readings, a line each, as ohm_bench_read_record() takes
 * them; read back it gives an equal bench, what is borrowed aside.
 *
 * Return  length of the whole text, cut to fit when it is size or more; 0 when bench is
 *         NULL.
 * Status  cannot fail.
 */
OHM_API size_t ohm_bench_print(const ohm_bench *bench, char *buffer, size_t size);

/* ---- answer ------------------------------------------------------------- */

/** What a verb says of a bench: a finding of the whole and findings in groups. It never
 *  changes, outlives the bench and the sensors, and may be used by many threads. */
typedef struct ohm_answer ohm_answer;

/** Groups of findings; a list that may grow. */
typedef enum ohm_group {
  OHM_GROUP_READINGS = 1, /**< one for each reading, in their order */
  OHM_GROUP_CANDIDATES,   /**< sensors compared, the likeliest first */
  OHM_GROUP_EXPLANATIONS, /**< one for each of OHM_EXPLANATIONS */
  OHM_GROUP_TESTS,        /**< tests made on a circuit, in the order of their last outcomes;
                               not one that a renewal opened again */
  OHM_GROUP_RESISTORS     /**< what could be fitted: the single one, then the pair */
} ohm_group;

/** Give an answer back. NULL is allowed. Status  cannot fail. */
OHM_API void ohm_answer_free(ohm_answer *answer);

/** The finding of the whole; NULL when answer is. Status  cannot fail. */
OHM_API const ohm_finding *ohm_answer_finding(const ohm_answer *answer);

/** How many findings a group has; 0 when there is none. Status  cannot fail. */
OHM_API size_t ohm_answer_count(const ohm_answer *answer, int group);

/** A finding of a group; NULL past the last. Status  cannot fail. */
OHM_API const ohm_finding *ohm_answer_member(const ohm_answer *answer, int group, size_t index);

/**
 * The answer in sentences for the person at the bench: caution first, then what was read,
 * what it means, what is allowed, the verdict, what it does not answer and what to do
 * next. Plain text, lines of at most 80 columns, each ended by a newline.
 *
 * Return  length of the whole text, cut to fit when it is size or more; 0 when answer is
 *         NULL.
 * Status  cannot fail.
 */
OHM_API size_t ohm_answer_print_report(const ohm_answer *answer, char *buffer, size_t size);

/**
 * The uncertainty of a check by cause, so that it can be worked out again by hand; of
 * several readings each by itself.
 *
 * Return  as ohm_answer_print_report()
 * Status  cannot fail.
 */
OHM_API size_t ohm_answer_print_budget(const ohm_answer *answer, char *buffer, size_t size);

/** The lines about one finding, as ohm_answer_print_report() has them. Status  cannot fail. */
OHM_API size_t ohm_finding_print_report(const ohm_finding *finding, char *buffer, size_t size);

/** The uncertainty of one finding, as ohm_answer_print_budget() has it. Status  cannot fail. */
OHM_API size_t ohm_finding_print_budget(const ohm_finding *finding, char *buffer, size_t size);

/* ---- verbs -------------------------------------------------------------- */

/*
 * Every verb has the same shape: it looks at the settings that are its own and at the
 * readings of its kinds, and returns the answer, or NULL with the error filled in:
 * OHM_NOT_FOUND when what it needs is not on the bench (a sensor, a reading, a circuit), or
 * the sensor has no band of that name; OHM_BAD_ARGUMENT when settings exclude each other,
 * readings were taken at different places, or are more than it can take together;
 * OHM_OUT_OF_RANGE when the curve, or the history, does not reach what is asked for;
 * OHM_TOO_LARGE above 16 readings of ohms.
 */

/**
 * Judge a sensor that lies at known temperatures: a bath, a room, the open air. Two
 * verdicts.
 *
 * Part   is it inside what its maker allows? Of one reading "within" when p_within reaches
 *        the level, "outside" when p_low or p_high does, else "undecided"; over the errors
 *        of reading and temperature together. A temperature beyond the last printed row
 *        by less than its own standard uncertainty is judged there. What is beyond the
 *        widest limits printed there but not beyond those of another maker is undecided,
 *        reason "another_band", unless a band or a tolerance was set.
 * Job    is it good enough for the fan, with all that could still hide? The largest
 *        series resistance that could hide is the level-quantile of
 *        max(0, R - low(T)), the smallest leakage that of max(0, 1/R - 1/high(T)); a
 *        sensor at that limit with that fault is what the fan is started by. A curve that
 *        ends before the fan's temperature leaves a tenth of the way open besides.
 *        "within" when neither that nor plain drift makes it late or early by more
 *        than limit_k, and it was read no further below fan_c than 5 K / 0.3 = 16.7 K: from
 *        there a beta 30 % off, more than which is another part's, moves it by 5 K. "outside"
 *        when whatever could stand behind the reading does: with Rf the nominal resistance
 *        where the fan is to start, tl = fan_c + limit_k and B = 4600 K, the steepest usual
 *        beta, it is late when R exp(-B max(0, 1/T - 1/Tl)) > Rf with a probability of the
 *        level, early by the mirror of that; only a reading no further below fan_c than
 *        5 K / (4600/3000 - 1) = 9.4 K says so. Else "undecided".
 *
 * Several readings are of one part; where limits are printed at some of the temperatures only,
 * the readings there judge it. With T the temperature, m and h middle and half-width
 * of what is allowed there, as logarithms of resistance,
 *
 *     ln R read = m(T + d) + h z + s + g + l + e
 *
 * z is the place in the band, one for all readings and any as probable as any other; of a
 * tolerance on resistance and beta there are two, h z = r z1 + b ln(R/R0) z2. s is what the
 * part differs from the printed curve at one temperature, normal, the smaller of 0.5 % and
 * a fifth of h (common practice; 0 for what does not fall). d is the error of one thermometer, g
 * that of the meter's percent, l of the leads: rectangular and alike in all readings, but g may be
 * another on each range: unless ranges_alike is set, both are taken and the milder counts.
 * e is each reading's own, its counts and its bath, taken as normal. Readings that no place
 * explains (chi-square above 7 times what it should be) have more s, so much that chi-square is
 * what it should be. The part is low, or high, where s + h z lies below -h, or above h. "outside"
 * when that is so at one temperature with a probability of 1 - (1 - level)/d, d the number of
 * places but no more than that of readings, and reason "another_band" as above; "within" when it is
 * inside at all temperatures with a probability of the level. in_band is z, where both
 * meters are taken the mean of the two, and in_band_low to in_band_high holds it with a probability
 * of the level. p_low and p_high are the greatest of any reading. The fields of one temperature,
 * and the job, are those of the reading nearest to fan_c.
 *
 * Readings in a row with equal temperatures are repeats: the last one counts, unless it
 * still differs from the one before by more than a count.
 *
 * Readings may be at the sensor's own pins and at the module's end: the part is judged by
 * the former, and between_ohm is what a reading at the module has more than the sensor at
 * that temperature; of all pairs the surest. It errs by the percent of one range alike, or of
 * all with ranges_alike, by counts each, by what the sensor moved meanwhile (moved_k), and at
 * two temperatures by what r and b ln(R/R0), else h, and the slope of the curve differ, by u_at_k
 * each and by 0.5 % each, less below 15 K apart. One thermometer is one that is told to be good to
 * one limit; two references err each its own way. wires says whether that is good for the fan.
 *
 * Needs   a sensor; readings of ohms with a temperature, at one place, or at both ends
 * Group   readings
 * Status  OHM_NULL_ARGUMENT; OHM_NOT_FOUND; OHM_BAD_ARGUMENT; OHM_TOO_LARGE;
 *         OHM_NO_MEMORY.
 * Source  JCGM 106:2012, clause 7; JCGM 100:2008, clauses 4.3.7 and 5.1.
 */
OHM_API ohm_answer *ohm_bench_check(const ohm_bench *bench, ohm_error *error);

/**
 * What a good sensor shows at a temperature, before it is measured: expected_ohm by its curve,
 * low_ohm to high_ohm as its maker allows, and accept_low_ohm to accept_high_ohm, what
 * ohm_bench_check() would call good with this meter and this thermometer, lead_ohm taken off the
 * display; needed_k when none would. Where the meter's counts are not told a display of 2000 is
 * taken. The verdict is undecided, reason "alone", for nothing was measured.
 *
 * Needs   a sensor; the setting at
 * Status  OHM_NULL_ARGUMENT; OHM_NOT_FOUND; OHM_BAD_ARGUMENT band and tolerance together;
 *         OHM_OUT_OF_RANGE the curve does not reach the temperature; OHM_NO_MEMORY.
 * Source  JCGM 106:2012, clause 8 (acceptance intervals).
 */
OHM_API ohm_answer *ohm_bench_expect(const ohm_bench *bench, ohm_error *error);

/**
 * Which sensor it is. Each is as probable as any other beforehand; what is not known
 * is drawn over: where in its band this one part lies (the same in every reading; 5 %
 * where nothing says), the errors of the meter, the leads and one thermometer, alike in
 * all readings, and what each bath errs by on its own. A part is taken to follow its
 * curve to 0.5 % at any one temperature (common practice).
 *
 * Beside those compared stands any other thermistor, one in four beforehand: every R25 from
 * 50 ohm to 500 kohm alike by its logarithm, every beta from 3000 to 4600 K; p_none is what
 * that comes to. p_sensor is of those compared.
 *
 * "within"     reason "fan_switch" when what is cold shows no
 *              circuit and what is hotter next to 0 ohm; "one" when
 *              a single sensor leads, "alike" when no reading from
 *              0 C to 100 C by such instruments tells apart those
 *              that lead
 * "undecided"  "several": separating_c says where a further reading tells them apart;
 *              "missing_k", or what a display without a number says
 * "outside"    "none": the readings go with no sensor that was compared
 *
 * A sensor leads when p_fit is at least 1 - level and none that fits is ten times as
 * probable. What was identified by readings is not checked by the same readings.
 *
 * Needs   sensors to compare with; readings of ohms with a temperature
 * Group   candidates, those whose curves reach; sensor_index counts as they were given
 * Status  OHM_NULL_ARGUMENT; OHM_NOT_FOUND; OHM_BAD_ARGUMENT; OHM_TOO_LARGE;
 *         OHM_NO_MEMORY.
 * Source  Bayes' theorem with equal priors; factor of ten: Jeffreys, Theory of Probability,
 *         3rd ed., appendix B ("strong"). p_fit: Rosenblatt, Ann. Math. Stat. 23 (1952)
 *         470-472.
 */
OHM_API ohm_answer *ohm_bench_identify(const ohm_bench *bench, ohm_error *error);

/**
 * Which pins of a body with several are the module's element, and which the gauge's. A
 * pair that reads as much as two others on the way between its ends is across both. An
 * element is identified as by ohm_bench_identify(), with sensors for modules and for gauges.
 * What reads the same to the body and to battery negative is grounded through its thread;
 * what reads more to battery negative tells the resistance of that ground.
 *
 * "within"     "one" element is the module's
 * "undecided"  "several": more than one element could be; "over_range", "lone_one": a
 *              display is to be read again first
 * "outside"    "none" goes with a module's sensor; "open" there is no circuit at all
 *
 * Needs   sensors to compare with; readings across pins, 1 to 16, no pair twice; the
 *         setting at, the temperature of all
 * Group   readings, one a pair
 * Status  OHM_NULL_ARGUMENT; OHM_NOT_FOUND; OHM_BAD_ARGUMENT a pair twice; OHM_TOO_LARGE;
 *         OHM_NO_MEMORY.
 * Source  bodies with a gauge's and a module's element: Audi A4 1997, coolant sensor G62
 *         (four pins); Kawasaki Z750 service manual, 16-76 (three, gauge to body).
 */
OHM_API ohm_answer *ohm_bench_pins(const ohm_bench *bench, ohm_error *error);

/**
 * What is wrong with a sensor that was measured. Every kind of fault is asked how large
 * it would have to be, everything else drawn over as by ohm_bench_identify(), and whether
 * the readings would then go together.
 *
 * "within"     "conforms": the readings go with a healthy sensor, and no fault goes
 *              markedly better with them
 * "outside"    not with a healthy one: "one" fault explains them, "several" do, "none"
 *              does; "open", "shorted"
 * "undecided"  "several": healthy or a fault; "plug_on", "missing_k", "over_range",
 *              "lone_one", "fahrenheit": a question to be answered first
 *
 * fault_late_k is when the fan starts with that explanation, by the hottest reading: the element
 * behind the fault lies in its band where that reading puts it, and there elsewhere; start_low_c
 * to start_high_c is that over the interval of the size and two standard uncertainties of the
 * reading, of the whole over all that lead, where it was read no further below fan_c than 16.7 K
 * (as for ohm_bench_check()). An end that is absent: it always runs, or never starts.
 *
 * A fault with a size explains as many readings as one, whatever they are: one reading
 * never ranks them. separating_c says where a further one tells most of them.
 *
 * Needs   a sensor; readings of ohms with a temperature, all at one place; sensors to
 *         compare with are what it may be instead
 * Group   explanations; the whole has the figures of the only one that leads
 * Status  OHM_NULL_ARGUMENT; OHM_NOT_FOUND; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE;
 *         OHM_TOO_LARGE; OHM_NO_MEMORY.
 * Source  a size that cannot be negative: Chernoff, Ann. Math. Stat. 25 (1954) 573-578.
 */
OHM_API ohm_answer *ohm_bench_explain(const ohm_bench *bench, ohm_error *error);

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
 * Other sensors of the car are held against each other with the error of the air
 * eliminated: "consistent", or one is "odd", or they "disagree" and nobody can say which
 * one is off. One is odd when the others agree without it and do not without any other; of
 * two, none is; and none that is warm unless undisturbed.
 *
 * Needs   a sensor; one reading of ohms; the setting air, or a history; after_h, or a
 *         history. Up to 8 other sensors, "intake=10.5C"
 * Status  OHM_NULL_ARGUMENT; OHM_NOT_FOUND; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE;
 *         OHM_TOO_LARGE; OHM_NO_MEMORY.
 * Source  chi-square: Pearson, Philos. Mag. 50 (1900) 157-175. The time constant is
 *         inferred: no measured one was found in print.
 */
OHM_API ohm_answer *ohm_bench_soak(const ohm_bench *bench, ohm_error *error);

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
 * ohm_bench_check(). A value that never moves, or is a known substitute that
 * disagrees, is questioned first. r_ohm and t_c are as seen from the volts.
 *
 * Verdict  "within" they agree; "outside" they part; "undecided" it cannot be told.
 * Job      what parts them, as the same ohms in series or across (or as the same factor,
 *          of a curve), moves the start of the fan: "within" when that is limit_k at
 *          most whatever it could be at the level.
 *
 * Needs   a sensor; at most one reading each of ohms, volts and degrees reported, one at
 *         the least; volts need the setting pull_up
 * Status  OHM_NULL_ARGUMENT; OHM_NOT_FOUND; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE;
 *         OHM_NO_MEMORY.
 * Source  JCGM 100:2008, clauses 4.3.7, 5.1 and 6.2.
 */
OHM_API ohm_answer *ohm_bench_signal(const ohm_bench *bench, ohm_error *error);

/**
 * Ordinary resistors across the plug in place of the sensor, for a module to see a wanted
 * temperature: the single one nearest to it, and the pair, in series or across each other,
 * that comes nearest.
 *
 * Verdict  "within": with every tolerance it asks for the fan and looks like a sensor;
 *          "outside": it would look open or short, or never ask for the fan;
 *          "undecided": it depends on the tolerance.
 *
 * Without a pull_up, limits are those of degrees that makers print, and the power that of
 * the smallest pull-up printed.
 *
 * Needs   a sensor
 * Group   resistors; the whole is the single one. Of a drawer of one value there is no pair
 * Status  OHM_NULL_ARGUMENT; OHM_NOT_FOUND; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE;
 *         OHM_NO_MEMORY.
 * Source  preferred values: IEC 60063.
 */
OHM_API ohm_answer *ohm_bench_substitute(const ohm_bench *bench, ohm_error *error);

/**
 * Resistance of plug and wires from two resistors fitted in place of the sensor and what
 * the module reported with each: R(t) = k (r + s) for both, so that what the module
 * multiplies by, k, is told apart from what is in series, s. Linear in the uncertainties.
 *
 * Verdict  "within": s is at most what makes the fan late by limit_k, with its uncertainty;
 *          "outside": it is more; else "undecided".
 *
 * Needs   a sensor; two readings as "179.4@93C", each with what the module reported
 * Status  OHM_NULL_ARGUMENT; OHM_NOT_FOUND; OHM_OUT_OF_RANGE; OHM_NO_MEMORY; OHM_BAD_DEFINITION
 *         the two are too near to each other to tell anything: one is to be half of the
 *         other at most.
 * Source  JCGM 100:2008, clause 5.1.
 */
OHM_API ohm_answer *ohm_bench_loom(const ohm_bench *bench, ohm_error *error);

/**
 * What to expect where the fan starts (fan_c) and stops (off_c): ohms and volts, what a
 * kelvin is worth there, and how far a hidden series resistance moves both. The verdict is
 * undecided, reason "alone", for nothing was measured.
 *
 * Needs   a sensor
 * Status  OHM_NULL_ARGUMENT; OHM_NOT_FOUND; OHM_BAD_ARGUMENT; OHM_OUT_OF_RANGE;
 *         OHM_NO_MEMORY.
 */
OHM_API ohm_answer *ohm_bench_fanpoint(const ohm_bench *bench, ohm_error *error);

/**
 * Which part of a circuit is at fault, from what was seen so far, and which test to make
 * next. What was seen is a reading each:
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
 * most in a minute, among those the tools allow. The state is
 *
 *     closed         the fan has started by itself: within
 *     found          buy and repair say what: outside
 *     not_asked      the fan was not really asked for: undecided
 *     go_on          next is a test: undecided
 *     no_test_left   none is left that tells anything: undecided
 *     contradiction  tests that cannot all be right: undecided
 *     too_hot        12 degrees above where the fan starts: engine off
 *
 * Needs   a circuit
 * Group   tests, those made
 * Status  OHM_NULL_ARGUMENT; OHM_NOT_FOUND also a name that is none of the circuit's;
 *         OHM_BAD_SYNTAX; OHM_BAD_DEFINITION the record is of another circuit; OHM_NO_MEMORY.
 * Source  J. de Kleer and B. C. Williams, Artificial Intelligence 32 (1987) 97-130.
 */
OHM_API ohm_answer *ohm_bench_isolate(const ohm_bench *bench, ohm_error *error);

/**
 * What readings say of the resistance at the probes' tips, with no sensor: leads taken
 * off, every cause counted.
 *
 * Needs   readings of ohms
 * Group   readings; the whole is the last of them
 * Status  OHM_NULL_ARGUMENT; OHM_NOT_FOUND; OHM_TOO_LARGE; OHM_NO_MEMORY.
 */
OHM_API ohm_answer *ohm_bench_measure(const ohm_bench *bench, ohm_error *error);

/**
 * What the answer on a sensor says to a circuit, as a reading for its bench: a sensor that
 * is within at its own pins leaves plug and wires open. Only what is good enough for the
 * fan as well is within.
 *
 * Return  length of the whole text, cut to fit when it is size or more; 0 when the
 *         answer says nothing to this circuit, or an argument is NULL.
 * Status  cannot fail.
 */
OHM_API size_t ohm_circuit_print_answer(const ohm_circuit *circuit, const ohm_answer *answer,
                                        char *buffer, size_t size);

#ifdef __cplusplus
}
#endif

#endif
