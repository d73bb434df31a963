/* SPDX-License-Identifier: MIT */
/*
 * Points to a curve: linear least squares of 1/T in functions of ln R, each row divided by
 * its standard uncertainty. That of a resistance is carried to 1/T by the slope of the fit
 * before ("effective variance", Orear, Am. J. Phys. 50 (1982) 912-916).
 */
#include "fit.h"

#include <float.h>
#include <stdlib.h>

#include "../arithmetic/distribution.h"
#include "../ground/number.h"
#include "../ground/status.h"

/* Beyond these the digits of a double run out before those of a reading do. */
static const double CONDITION_MAX = 1e6;
static const double LN_R_SPAN_MIN = 1e-6;
/* How far two points may contradict each other before no chance explains it. */
static const double CONTRADICTION_U = 4;
/* The slope settles to a part in a million in three. */
enum { PASSES = 5 };

static const struct {
  enum oc_model model;
  size_t columns;
  const char *needs;
} forms[] = {
    [OHM_FIT_BETA] = {OC_MODEL_BETA, 2, "beta needs points at two temperatures or more"},
    [OHM_FIT_STEINHART_HART] = {OC_MODEL_STEINHART_HART, 3,
                                "steinhart-hart needs points at three temperatures or more"},
    [OHM_FIT_FOUR_TERM] = {OC_MODEL_FOUR_TERM, 4,
                           "four-term needs points at four temperatures or more"},
};

/* ---- points that can be fitted ---- */

/* A point and its place in the caller's order. */
struct placed {
  ohm_fit_point point;
  size_t place;
};

static void add_point(struct oc_text *text, const struct placed *placed) {
  oc_text_add(text, "point ");
  oc_text_add_count(text, placed->place + 1);
  oc_text_add(text, " (");
  oc_text_add_number(text, placed->point.t_c);
  oc_text_add(text, " C, ");
  oc_text_add_number(text, placed->point.r_ohm);
  oc_text_add(text, " ohm)");
}

static ohm_status fail_points(ohm_error *error, ohm_status status, const struct placed *one,
                              const char *what, const struct placed *other, const char *advice) {
  char first[120];
  char second[120];
  struct oc_text text = oc_text_begin(first, sizeof first);
  add_point(&text, one);
  text = oc_text_begin(second, sizeof second);
  if (other)
    add_point(&text, other);
  return oc_fail(error, status, first, what, second, advice, (const char *)NULL);
}

static double known_u(const ohm_fit_point *point) {
  return hypot(point->u_t_k, point->u_r_ohm / point->r_ohm);
}

static ohm_status check_point(const struct placed *placed, bool known, ohm_error *error) {
  const ohm_fit_point *point = &placed->point;
  if (!(OC_ZERO_C < point->t_c && point->t_c <= OC_HOTTEST_C && 0 < point->r_ohm &&
        point->r_ohm <= DBL_MAX))
    return fail_points(error, OHM_BAD_ARGUMENT, placed, " cannot be used", NULL,
                       ": give a temperature above -273.15 C and up to 1000 C, and a resistance "
                       "above 0");
  if (!(oc_inside(0, point->u_t_k, DBL_MAX) && oc_inside(0, point->u_r_ohm, DBL_MAX)))
    return fail_points(error, OHM_BAD_ARGUMENT, placed, " has an uncertainty that is no number",
                       NULL, " from 0 on: give it, or 0 when it is not known");
  if ((known_u(point) > 0) != known)
    return fail_points(error, OHM_BAD_DEFINITION, placed,
                       known ? " has no uncertainty and others have"
                             : " has an uncertainty and others have none",
                       NULL, ": give one to every point, or to none");
  return OHM_OK;
}

/* By rising temperature; repeats of one by falling resistance. */
static int by_temperature(const void *left, const void *right) {
  const struct placed *a = left;
  const struct placed *b = right;
  if (a->point.t_c != b->point.t_c)
    return a->point.t_c < b->point.t_c ? -1 : 1;
  if (a->point.r_ohm != b->point.r_ohm)
    return a->point.r_ohm > b->point.r_ohm ? -1 : 1;
  return a->place < b->place ? -1 : 1;
}

/* Whether resistance does not fall from one to the other, and no chance explains it. */
static bool contradict(const ohm_fit_point *cold, const ohm_fit_point *hot) {
  return cold->t_c < hot->t_c && cold->r_ohm <= hot->r_ohm &&
         hot->t_c - cold->t_c >= CONTRADICTION_U * hypot(cold->u_t_k, hot->u_t_k) &&
         hot->r_ohm - cold->r_ohm >= CONTRADICTION_U * hypot(cold->u_r_ohm, hot->u_r_ohm);
}

static ohm_status check_order(const struct placed *sorted, size_t count, ohm_error *error) {
  for (size_t i = 1; i < count; i++)
    if (contradict(&sorted[i - 1].point, &sorted[i].point))
      return fail_points(error, OHM_BAD_DEFINITION, &sorted[i - 1], " and ", &sorted[i],
                         " contradict each other: resistance must fall as temperature rises; "
                         "look both up again");
  return OHM_OK;
}

static ohm_status check_count(const struct placed *sorted, size_t count, int form,
                              ohm_error *error) {
  size_t temperatures = 1;
  for (size_t i = 1; i < count; i++)
    temperatures += sorted[i - 1].point.t_c < sorted[i].point.t_c;
  if (count > 0 && temperatures >= forms[form].columns)
    return OHM_OK;
  char given[OHM_NUMBER_SIZE];
  ohm_number_print(count > 0 ? (double)temperatures : 0, given, sizeof given);
  return oc_fail(error, OHM_BAD_DEFINITION, forms[form].needs, "; ", given,
                 temperatures == 1 && count > 0 ? " was given" : " were given", (const char *)NULL);
}

static ohm_status check_request(const ohm_fit_request *request, size_t count, ohm_error *error) {
  if (!oc_inside(OHM_FIT_BETA, request->model, OHM_FIT_FOUR_TERM))
    return oc_fail(error, OHM_BAD_ARGUMENT, "the request is none: begin with ",
                   "OHM_FIT_REQUEST_INIT and give a model that can be fitted", (const char *)NULL);
  if (!(oc_inside(0, request->r_ref_ohm, DBL_MAX)))
    return oc_fail(error, OHM_BAD_ARGUMENT, "r_ref_ohm must be a resistance above 0, ",
                   "or 0 for that of the point nearest to 25 C", (const char *)NULL);
  if (count > OC_POINTS_MAX)
    return oc_fail(error, OHM_TOO_LARGE, "a fit takes at most 4096 points: leave some out",
                   (const char *)NULL);
  return OHM_OK;
}

/* ---- the rows ---- */

static double nearest_to_25_ohm(const struct placed *sorted, size_t count) {
  const ohm_fit_point *nearest = &sorted[0].point;
  for (size_t i = 1; i < count; i++)
    if (fabs(sorted[i].point.t_c - 25) < fabs(nearest->t_c - 25))
      nearest = &sorted[i].point;
  return nearest->r_ohm;
}

static void centre(ohm_fit *fit, const struct placed *sorted, size_t count) {
  fit->low_ohm = fit->high_ohm = sorted[0].point.r_ohm;
  for (size_t i = 1; i < count; i++) {
    fit->low_ohm = fmin(fit->low_ohm, sorted[i].point.r_ohm);
    fit->high_ohm = fmax(fit->high_ohm, sorted[i].point.r_ohm);
  }
  fit->half = (log(fit->high_ohm) - log(fit->low_ohm)) / 2;
  fit->middle = log(fit->low_ohm) + fit->half;
}

/* Standard uncertainty of the temperature at a point, kelvin; 1 when it is not known, so
 * that all scatter alike in temperature. slope is d(1/T)/d(ln R) of the fit before. */
static double u_k_of(const ohm_fit *fit, const ohm_fit_point *point, const double *slope) {
  if (fit->basis != OHM_FIT_KNOWN)
    return 1;
  double t_k = oc_kelvin(point->t_c);
  return hypot(point->u_t_k, t_k * t_k * *slope * point->u_r_ohm / point->r_ohm);
}

static double slope_at(const ohm_fit *fit, const ohm_fit_point *point) {
  return oc_ntc_piece_slope(&fit->piece, log(point->r_ohm));
}

/* A beta of 3500 K, until a fit says better. */
static const double FIRST_SLOPE = 1.0 / 3500;

static void fill_rows(const ohm_fit *fit, const struct placed *sorted, bool first, double *rows) {
  size_t stride = fit->core.columns + 1;
  for (size_t i = 0; i < fit->count; i++) {
    const ohm_fit_point *point = &sorted[i].point;
    double slope = first ? FIRST_SLOPE : slope_at(fit, point);
    double t_k = oc_kelvin(point->t_c);
    double weight = t_k * t_k / u_k_of(fit, point, &slope);
    double *row = &rows[i * stride];
    oc_fit_basis_at(fit, log(point->r_ohm), row);
    row[stride - 1] = 1 / t_k;
    for (size_t j = 0; j < stride; j++)
      row[j] *= weight;
  }
}

static ohm_status fail_close(ohm_error *error) {
  return oc_fail(error, OHM_BAD_DEFINITION, "the points lie too close, or too unevenly, to tell ",
                 "the coefficients apart: spread them over the range, or fit a model with fewer",
                 (const char *)NULL);
}

static ohm_status solve(ohm_fit *fit, const struct placed *sorted, double *rows, ohm_error *error) {
  int passes = fit->basis == OHM_FIT_KNOWN ? PASSES : 1;
  if (!(2 * fit->half >= LN_R_SPAN_MIN))
    return fail_close(error);
  for (int pass = 0; pass < passes; pass++) {
    fill_rows(fit, sorted, pass == 0, rows);
    oc_least_squares_solve(rows, fit->count, fit->core.columns, &fit->core);
    if (!(fit->core.condition <= CONDITION_MAX))
      return fail_close(error);
    oc_fit_form(fit);
  }
  return OHM_OK;
}

/* ---- what is left ---- */

static double residual_of(const ohm_fit *fit, const ohm_fit_point *point) {
  double y = oc_ntc_piece_y(&fit->piece, log(point->r_ohm));
  double t_k = oc_kelvin(point->t_c);
  return (1 / t_k - y) * t_k / y;
}

/* The moment estimator of DerSimonian and Laird, Control. Clin. Trials 7 (1986) 177-188:
 * a further variance m^2 at every point raises the expectation of chi-square by
 * m^2 sum((1 - h)/u^2), h the leverage. */
static double misfit_of(const ohm_fit *fit, const struct placed *sorted) {
  double rise = 0;
  for (size_t i = 0; i < fit->count; i++) {
    double basis[OC_COLUMNS_MAX];
    double slope = slope_at(fit, &sorted[i].point);
    double u_k = u_k_of(fit, &sorted[i].point, &slope);
    double t_k = oc_kelvin(sorted[i].point.t_c);
    oc_fit_basis_at(fit, log(sorted[i].point.r_ohm), basis);
    double leverage = oc_least_squares_u(&fit->core, basis) * t_k * t_k / u_k;
    rise += (1 - leverage * leverage) / (u_k * u_k);
  }
  double excess = fit->chi_square - (double)fit->degrees;
  return excess > 0 ? sqrt(excess / rise) : 0;
}

static void judge(ohm_fit *fit, const struct placed *sorted) {
  for (size_t i = 0; i < fit->count; i++)
    fit->residual_k[sorted[i].place] = residual_of(fit, &sorted[i].point);
  fit->scale = NAN;
  if (fit->basis == OHM_FIT_KNOWN) {
    fit->scale = 1;
    fit->covariance.degrees = INFINITY;
    if (fit->degrees > 0) {
      fit->chi_square = fit->core.residual_square;
      fit->misfit_k = misfit_of(fit, sorted);
    }
  } else if (fit->degrees > 0) {
    fit->basis = OHM_FIT_SCATTER;
    fit->scatter_k = sqrt(fit->core.residual_square / (double)fit->degrees);
    fit->scale = fit->scatter_k;
    fit->covariance.degrees = (double)fit->degrees;
  }
  oc_fit_form(fit);
}

/* ---- making ---- */

static ohm_fit *fit_new(const ohm_fit_request *request, size_t count, bool known,
                        ohm_error *error) {
  ohm_fit *fit = calloc(1, sizeof *fit);
  double *residual_k = malloc(count * sizeof *residual_k);
  if (!fit || !residual_k) {
    free(fit);
    free(residual_k);
    oc_fail_memory(error);
    return NULL;
  }
  fit->model = forms[request->model].model;
  fit->basis = known ? OHM_FIT_KNOWN : OHM_FIT_NO_INTERVAL;
  fit->count = count;
  fit->residual_k = residual_k;
  fit->core.columns = forms[request->model].columns;
  fit->degrees = count - fit->core.columns;
  fit->chi_square = fit->scatter_k = fit->misfit_k = fit->scale = NAN;
  return fit;
}

void ohm_fit_free(ohm_fit *fit) {
  if (!fit)
    return;
  ohm_curve_free(fit->curve);
  free(fit->residual_k);
  free(fit);
}

/* A cubic may pass through every point and turn between them, and the curve of the range
 * may lie on another side of a turn than the points. */
static ohm_status check_turn(const ohm_fit *fit, ohm_error *error) {
  double from = log(fmin(fit->low_ohm, fit->curve->hot.r_ohm));
  double to = log(fmax(fit->high_ohm, fit->curve->cold.r_ohm));
  double turn;
  if (oc_ntc_piece_rises(&fit->piece, from, to, &turn))
    return OHM_OK;
  char text[OHM_NUMBER_SIZE];
  ohm_resistance_print(exp(turn), 4, text, sizeof text);
  return oc_fail(error, OHM_BAD_DEFINITION, "the fit to these points turns at ", text,
                 ", among them or inside the range: look the points up again, narrow the "
                 "range, or fit a model with fewer coefficients",
                 (const char *)NULL);
}

static ohm_status build_curve(ohm_fit *fit, double low_c, double high_c, ohm_error *error) {
  ohm_error why;
  fit->curve = oc_curve_of_model(fit->model, fit->parameters, low_c, high_c, &why);
  if (fit->curve)
    return check_turn(fit, error);
  if (why.status == OHM_NO_MEMORY)
    return oc_fail_memory(error);
  return oc_fail(error, (ohm_status)why.status,
                 "the fit to these points is no curve: ", why.message, (const char *)NULL);
}

static ohm_status build(ohm_fit *fit, const struct placed *sorted, const ohm_fit_request *request,
                        ohm_error *error) {
  double *rows = malloc(fit->count * (fit->core.columns + 1) * sizeof *rows);
  if (!rows)
    return oc_fail_memory(error);
  fit->r_ref_ohm =
      request->r_ref_ohm > 0 ? request->r_ref_ohm : nearest_to_25_ohm(sorted, fit->count);
  centre(fit, sorted, fit->count);
  ohm_status status = solve(fit, sorted, rows, error);
  free(rows);
  if (status != OHM_OK)
    return status;
  judge(fit, sorted);
  if (request->low_c == 0 && request->high_c == 0)
    return build_curve(fit, sorted[0].point.t_c, sorted[fit->count - 1].point.t_c, error);
  return build_curve(fit, request->low_c, request->high_c, error);
}

static ohm_status check(struct placed *placed, size_t count, int form, ohm_error *error) {
  bool known = count > 0 && known_u(&placed[0].point) > 0;
  for (size_t i = 0; i < count; i++) {
    ohm_status status = check_point(&placed[i], known, error);
    if (status != OHM_OK)
      return status;
  }
  if (count > 0)
    qsort(placed, count, sizeof *placed, by_temperature);
  ohm_status status = check_count(placed, count, form, error);
  return status == OHM_OK ? check_order(placed, count, error) : status;
}

static ohm_fit *fit_placed(struct placed *placed, size_t count, const ohm_fit_request *request,
                           ohm_error *error) {
  if (check(placed, count, request->model, error) != OHM_OK)
    return NULL;
  ohm_fit *fit = fit_new(request, count, known_u(&placed[0].point) > 0, error);
  if (!fit || build(fit, placed, request, error) == OHM_OK)
    return fit;
  ohm_fit_free(fit);
  return NULL;
}

ohm_fit *ohm_curve_fit(const ohm_fit_point *points, size_t count, const ohm_fit_request *request,
                       ohm_error *error) {
  oc_error_clear(error);
  if (!request || (!points && count > 0)) {
    oc_fail_null(error);
    return NULL;
  }
  if (check_request(request, count, error) != OHM_OK)
    return NULL;
  struct placed *placed = malloc((count + 1) * sizeof *placed);
  if (!placed) {
    oc_fail_memory(error);
    return NULL;
  }
  for (size_t i = 0; i < count; i++)
    placed[i] = (struct placed){points[i], i};
  ohm_fit *fit = fit_placed(placed, count, request, error);
  free(placed);
  return fit;
}
