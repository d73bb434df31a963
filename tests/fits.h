/* SPDX-License-Identifier: MIT */
/* Points to fit, and short ways to ask a fit. */
#ifndef OHM_TESTS_FITS_H
#define OHM_TESTS_FITS_H

#include "support.h"

enum { MGH10 = 16 };

/** NIST Statistical Reference Datasets, nonlinear regression, MGH10 (Meyer 1970). */
extern const ohm_fit_point mgh10[MGH10];

/** EPCOS B57861S data sheet, page 6, characteristic 8016, times 10 kohm. */
extern const ohm_fit_point three_rows[3];

/** A, B and C of the 10K3MCD1 element, Campbell Scientific 109SS manual, section 6. */
extern const double abc[3];

/** The fit over the span of the points; the test fails when there is none. */
ohm_fit *fit_or_fail(int model, const ohm_fit_point *points, size_t count);

double parameter(const ohm_fit *fit, size_t index);
double u_of_parameter(const ohm_fit *fit, size_t index);
double correlation(const ohm_fit *fit, size_t i, size_t j);

/** Of the fitted curve; NaN outside. */
double temperature(const ohm_fit *fit, double r_ohm);

void check_relative(double got, double want, double part);

/** Points of the Steinhart-Hart curve of abc, but with another c, evenly spread. */
void spread(double c, double low_c, double high_c, ohm_fit_point *points, size_t count);

/** Reproducible chance. */
void seed(unsigned long value);
double uniform(void);
double normal(void);

#endif
