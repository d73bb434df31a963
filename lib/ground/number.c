/* SPDX-License-Identifier: MIT */
#include "number.h"

#include <float.h>
#include <stdint.h>
#include <string.h>

#include "bigint.h"

#if FLT_RADIX != 2 || DBL_MANT_DIG != 53 || DBL_MIN_EXP != -1021 || DBL_MAX_EXP != 1024
#error "ohmcurve reads and writes numbers as IEEE 754 binary64: double must be that"
#endif

enum {
  MANTISSA_BITS = 53,
  LEAST_EXPONENT = -1074, /* of the last bit of a subnormal */
  /* The point halfway between two doubles has at most 768 significant digits, so
   * of the digits past this many it only matters whether one is not 0. */
  DIGITS_MAX = 800,
  /* Whole numbers of this many digits are exact, and no two of them with the same
   * power of ten read as the same double. */
  EXACT_DIGITS = 15,
  EXACT_POWER = 22,
  POINT_MAX = 310, /* beyond the largest double */
  POINT_MIN = -324 /* anything smaller is nearer to 0 than to the least double */
};

/* Products and quotients of two doubles are rounded once. */
#if FLT_EVAL_METHOD == 0 || FLT_EVAL_METHOD == 1
static const bool rounds_once = true;
#else
static const bool rounds_once = false;
#endif

static const double powers[EXACT_POWER + 1] = {1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,
                                               1e8,  1e9,  1e10, 1e11, 1e12, 1e13, 1e14, 1e15,
                                               1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};

/* 0.DDD * 10^point; zero has no digits. */
struct decimal {
  long long point;
  int count;
  bool more; /* digits that are not all 0 were left out after the last */
  char digits[DIGITS_MAX];
};

/* ---- reading ---- */

static bool is_digit(char c) {
  return '0' <= c && c <= '9';
}

static struct decimal *decimal_clear(struct decimal *decimal) {
  decimal->point = 0;
  decimal->count = 0;
  decimal->more = false;
  return decimal;
}

/* Take the digits at the beginning of text; those of a fraction stand after the
 * decimal point. Returns how many there are. */
static size_t take_digits(struct decimal *decimal, const char *text, size_t length, bool fraction) {
  size_t i = 0;
  for (; i < length && is_digit(text[i]); i++) {
    bool leading = decimal->count == 0 && text[i] == '0';
    decimal->point += (leading ? 0 : 1) - (fraction ? 1 : 0);
    if (leading)
      continue;
    if (decimal->count < DIGITS_MAX)
      decimal->digits[decimal->count++] = text[i];
    else if (text[i] != '0')
      decimal->more = true;
  }
  return i;
}

/* The power of ten at the beginning of text: e, a sign, digits. Returns its length,
 * 0 for none. */
static size_t take_exponent(const char *text, size_t length, long long *exponent) {
  const long long enough = 1000000000000000000;
  *exponent = 0;
  if (length == 0 || (text[0] != 'e' && text[0] != 'E'))
    return 0;
  size_t i = 1;
  bool negative = i < length && text[i] == '-';
  if (negative || (i < length && text[i] == '+'))
    i++;
  size_t first = i;
  for (; i < length && is_digit(text[i]); i++)
    if (*exponent < enough / 10)
      *exponent = *exponent * 10 + (text[i] - '0');
    else
      *exponent = enough;
  if (negative)
    *exponent = -*exponent;
  return i > first ? i : 0;
}

static uint64_t whole(const char *digits, int count) {
  uint64_t value = 0;
  for (int i = 0; i < count; i++)
    value = value * 10 + (uint64_t)(digits[i] - '0');
  return value;
}

/* significand * 2^exponent rounded to nearest even; more: there is something after
 * its last bit. Its top or second bit is set. Infinite when too great. */
static double round_binary(uint64_t significand, int exponent, bool more) {
  int drop = significand >> 63 ? 64 - MANTISSA_BITS : 63 - MANTISSA_BITS;
  if (exponent + drop < LEAST_EXPONENT)
    drop = LEAST_EXPONENT - exponent;
  if (drop > 64)
    return 0.0;
  uint64_t kept = drop < 64 ? significand >> drop : 0;
  uint64_t half = (uint64_t)1 << (drop - 1);
  uint64_t rest = significand - (drop < 64 ? kept << drop : 0);
  if (rest > half || (rest == half && (more || (kept & 1) == 1)))
    kept++;
  return ldexp((double)kept, exponent + drop);
}

static void set_digits(struct oc_bigint *a, const struct decimal *decimal) {
  enum { CHUNK = 9 };
  oc_bigint_set(a, 0);
  for (int i = 0; i < decimal->count; i += CHUNK) {
    int count = decimal->count - i < CHUNK ? decimal->count - i : CHUNK;
    oc_bigint_multiply(a, (uint32_t)powers[count], (uint32_t)whole(decimal->digits + i, count));
  }
}

/* Exact, by whole numbers: the digits, times or over a power of five, times a power
 * of two. 5^1124, of 800 digits and the least point, has 2610 bits, 800 digits have
 * 2658, and the numerator is brought to at most 96 bits more than the divisor. */
static double read_exactly(const struct decimal *decimal) {
  struct oc_bigint a, b;
  int power = (int)decimal->point - decimal->count;
  set_digits(&a, decimal);
  oc_bigint_set(&b, 1);
  oc_bigint_multiply_fives(power < 0 ? &b : &a, power < 0 ? -power : power);

  int excess = oc_bigint_bits(&a) - oc_bigint_bits(&b) - 31;
  oc_bigint_shift(excess < 0 ? &a : &b, excess < 0 ? -excess : excess);
  int slack = oc_bigint_slack(&b);
  oc_bigint_shift(&a, slack);
  oc_bigint_shift(&b, slack);
  uint64_t quotient = (uint64_t)oc_bigint_divide(&a, &b) << 32;
  oc_bigint_shift(&a, 32);
  quotient |= oc_bigint_divide(&a, &b);
  return round_binary(quotient, power + excess - 32, a.count > 0 || decimal->more);
}

static double read_decimal(const struct decimal *decimal) {
  if (decimal->count == 0 || decimal->point < POINT_MIN)
    return 0.0;
  if (decimal->point > POINT_MAX)
    return INFINITY;
  int power = (int)decimal->point - decimal->count;
  if (rounds_once && decimal->count <= EXACT_DIGITS && -EXACT_POWER <= power &&
      power <= EXACT_POWER) {
    double digits = (double)whole(decimal->digits, decimal->count);
    return power < 0 ? digits / powers[-power] : digits * powers[power];
  }
  return read_exactly(decimal);
}

static double power_of_ten(long long power) {
  struct decimal one;
  decimal_clear(&one)->point = power + 1;
  one.digits[one.count++] = '1';
  return read_decimal(&one);
}

/* A number whose digits were taken; places: how many stood after the point, less
 * the power of ten. */
static ohm_status conclude(struct decimal *decimal, bool negative, long long places, double *value,
                           double *quantum) {
  double magnitude = read_decimal(decimal);
  double step = quantum ? power_of_ten(-places) : 0.0;
  if (isinf(magnitude) || isinf(step))
    return OHM_OUT_OF_RANGE;
  *value = negative ? -magnitude : magnitude;
  if (quantum)
    *quantum = step;
  return OHM_OK;
}

static void no_number(size_t *used, double *value, double *quantum) {
  *used = 0;
  *value = NAN;
  if (quantum)
    *quantum = NAN;
}

ohm_status oc_number_scan(const char *text, size_t length, size_t *used, double *value,
                          double *quantum) {
  struct decimal decimal;
  decimal_clear(&decimal);
  no_number(used, value, quantum);
  bool negative = length > 0 && text[0] == '-';
  size_t at = negative || (length > 0 && text[0] == '+') ? 1 : 0;
  size_t before = take_digits(&decimal, text + at, length - at, false);
  size_t after = 0;
  at += before;
  if (at < length && text[at] == '.') {
    after = take_digits(&decimal, text + at + 1, length - at - 1, true);
    at += 1 + after;
  }
  if (before + after == 0)
    return OHM_BAD_SYNTAX;
  long long exponent;
  *used = at + take_exponent(text + at, length - at, &exponent);
  decimal.point += exponent;
  return conclude(&decimal, negative, (long long)after - exponent, value, quantum);
}

/* The power of ten that a letter stands for. */
static bool rkm_power(char letter, int *power) {
  static const struct {
    char letter;
    int power;
  } letters[] = {{'L', -3}, {'R', 0}, {'k', 3}, {'K', 3}, {'M', 6}, {'G', 9}};
  for (size_t i = 0; i < sizeof letters / sizeof letters[0]; i++)
    if (letters[i].letter == letter) {
      *power = letters[i].power;
      return true;
    }
  return false;
}

ohm_status oc_rkm_scan(const char *text, size_t length, size_t *used, double *value,
                       double *quantum) {
  struct decimal decimal;
  decimal_clear(&decimal);
  no_number(used, value, quantum);
  size_t before = take_digits(&decimal, text, length, false);
  int power;
  if (before == length || !rkm_power(text[before], &power))
    return OHM_BAD_SYNTAX;
  size_t after = take_digits(&decimal, text + before + 1, length - before - 1, true);
  if (before + after == 0)
    return OHM_BAD_SYNTAX;
  *used = before + 1 + after;
  decimal.point += power;
  return conclude(&decimal, false, (long long)after - power, value, quantum);
}

ohm_status ohm_number_read(const char *text, size_t length, double *value) {
  if (!value)
    return OHM_NULL_ARGUMENT;
  *value = NAN;
  if (!text)
    return OHM_NULL_ARGUMENT;
  size_t used;
  double number;
  ohm_status status = oc_number_scan(text, length, &used, &number, NULL);
  if (used < length || status == OHM_BAD_SYNTAX)
    return OHM_BAD_SYNTAX;
  *value = number;
  return status;
}

/* ---- the digits of a number ---- */

/* value = numerator / divisor * 10^point. A decimal within margin_low below and
 * margin_high above, in the numerator's unit, reads as the same double; one just on
 * the margin does when inclusive. None of these passes 1000 bits. */
struct ratio {
  struct oc_bigint numerator, divisor, margin_low, margin_high;
  bool inclusive;
  int point;
};

static bool reaches_next(const struct ratio *ratio) {
  struct oc_bigint sum;
  oc_bigint_add(&ratio->numerator, &ratio->margin_high, &sum);
  int sign = oc_bigint_compare(&sum, &ratio->divisor);
  return sign > 0 || (sign == 0 && ratio->inclusive);
}

static bool reaches_this(const struct ratio *ratio) {
  int sign = oc_bigint_compare(&ratio->numerator, &ratio->margin_low);
  return sign < 0 || (sign == 0 && ratio->inclusive);
}

static void ratio_multiply_fives(struct ratio *ratio, int power) {
  oc_bigint_multiply_fives(&ratio->numerator, power);
  oc_bigint_multiply_fives(&ratio->margin_high, power);
  oc_bigint_multiply_fives(&ratio->margin_low, power);
}

static void ratio_shift(struct ratio *ratio, int bits) {
  oc_bigint_shift(&ratio->numerator, bits);
  oc_bigint_shift(&ratio->margin_high, bits);
  oc_bigint_shift(&ratio->margin_low, bits);
}

/* mantissa * 2^exponent. Four times each, so that half of the narrower gap below a
 * power of two is whole. */
static void ratio_set(struct ratio *ratio, uint64_t mantissa, int exponent, bool margins) {
  bool narrow = mantissa == (uint64_t)1 << (MANTISSA_BITS - 1) && exponent > LEAST_EXPONENT;
  oc_bigint_set(&ratio->numerator, mantissa * 4);
  oc_bigint_set(&ratio->divisor, 4);
  oc_bigint_set(&ratio->margin_high, margins ? 2 : 0);
  oc_bigint_set(&ratio->margin_low, margins ? (narrow ? 1 : 2) : 0);
  ratio->inclusive = !margins || (mantissa & 1) == 0;
  if (ratio->point < 0)
    ratio_multiply_fives(ratio, -ratio->point);
  else
    oc_bigint_multiply_fives(&ratio->divisor, ratio->point);
  if (exponent < ratio->point)
    oc_bigint_shift(&ratio->divisor, ratio->point - exponent);
  else
    ratio_shift(ratio, exponent - ratio->point);
}

/* Begin at the first digit of a magnitude above 0. */
static void ratio_begin(struct ratio *ratio, double magnitude, bool margins) {
  int bits;
  double fraction = frexp(magnitude, &bits);
  int exponent = bits - MANTISSA_BITS;
  if (exponent < LEAST_EXPONENT)
    exponent = LEAST_EXPONENT;
  uint64_t mantissa = (uint64_t)ldexp(fraction, bits - exponent);
  /* At most one less than it must be. */
  ratio->point = (int)floor((bits - 1) * 0.30102999566398120) + 1;
  ratio_set(ratio, mantissa, exponent, margins);
  if (reaches_next(ratio)) {
    oc_bigint_multiply(&ratio->divisor, 10, 0);
    ratio->point++;
  }
  int slack = oc_bigint_slack(&ratio->divisor);
  ratio_shift(ratio, slack);
  oc_bigint_shift(&ratio->divisor, slack);
}

static char next_digit(struct ratio *ratio) {
  oc_bigint_multiply(&ratio->numerator, 10, 0);
  oc_bigint_multiply(&ratio->margin_high, 10, 0);
  oc_bigint_multiply(&ratio->margin_low, 10, 0);
  return (char)('0' + oc_bigint_divide(&ratio->numerator, &ratio->divisor));
}

/* Whether what is left is nearer to one more of the last digit; a tie goes to even. */
static bool rounds_up(const struct ratio *ratio, char last) {
  struct oc_bigint twice;
  oc_bigint_add(&ratio->numerator, &ratio->numerator, &twice);
  int sign = oc_bigint_compare(&twice, &ratio->divisor);
  return sign > 0 || (sign == 0 && (last - '0') % 2 == 1);
}

/* Free-format conversion, exact: the first digit after which the rest may be left
 * out, or rounded up, is the last. */
static void shortest_exactly(double magnitude, struct decimal *decimal) {
  struct ratio ratio;
  ratio_begin(&ratio, magnitude, true);
  decimal_clear(decimal)->point = ratio.point;
  bool down, up;
  do {
    decimal->digits[decimal->count++] = next_digit(&ratio);
    down = reaches_this(&ratio);
    up = reaches_next(&ratio);
  } while (!down && !up);
  char *last = &decimal->digits[decimal->count - 1];
  if (down && up)
    down = !rounds_up(&ratio, *last);
  if (!down)
    ++*last;
}

static void drop_zeros(struct decimal *decimal) {
  while (decimal->count > 0 && decimal->digits[decimal->count - 1] == '0')
    decimal->count--;
}

/* A decimal of 15 digits that reads back equal is the only one, so if there is one
 * it is, less its zeros, the shortest. */
static bool shortest_quickly(double magnitude, struct decimal *decimal) {
  int places = EXACT_POWER;
  while (places > 0 && magnitude * powers[places] >= powers[EXACT_DIGITS])
    places--;
  double scaled = magnitude * powers[places];
  if (!rounds_once || !(scaled < powers[EXACT_DIGITS] - 1))
    return false;
  uint64_t digits = (uint64_t)(scaled + 0.5);
  if ((double)digits / powers[places] != magnitude)
    return false;
  decimal_clear(decimal)->count = EXACT_DIGITS;
  decimal->point = EXACT_DIGITS - places;
  for (int i = EXACT_DIGITS - 1; i >= 0; i--, digits /= 10)
    decimal->digits[i] = (char)('0' + digits % 10);
  int zeros = 0;
  while (decimal->digits[zeros] == '0')
    zeros++;
  memmove(decimal->digits, decimal->digits + zeros, (size_t)(EXACT_DIGITS - zeros));
  decimal->count -= zeros;
  decimal->point -= zeros;
  drop_zeros(decimal);
  return true;
}

static void add_one(struct decimal *decimal) {
  int i = decimal->count - 1;
  for (; i >= 0 && decimal->digits[i] == '9'; i--)
    decimal->digits[i] = '0';
  if (i >= 0) {
    decimal->digits[i]++;
    return;
  }
  memmove(decimal->digits + 1, decimal->digits, (size_t)decimal->count);
  decimal->digits[0] = '1';
  decimal->count++;
  decimal->point++;
}

/* The first count digits of what was begun, correctly rounded; one more, a 0, when
 * rounding carried past the first. */
static void round_digits(struct ratio *ratio, int count, struct decimal *decimal) {
  decimal_clear(decimal)->point = ratio->point;
  char last = '0';
  while (decimal->count < count)
    decimal->digits[decimal->count++] = last = next_digit(ratio);
  if (rounds_up(ratio, last))
    add_one(decimal);
}

/* ---- writing ---- */

static void add_zeros(struct oc_text *text, long long count) {
  for (; count > 0; count--)
    oc_text_add_bytes(text, "0", 1);
}

/* The digits, all of them, with the point in its place. */
static void add_plain(struct oc_text *text, const struct decimal *decimal) {
  int whole_digits = decimal->point < 0                ? 0
                     : decimal->point < decimal->count ? (int)decimal->point
                                                       : decimal->count;
  oc_text_add_bytes(text, decimal->digits, (size_t)whole_digits);
  add_zeros(text, decimal->point > 0 ? decimal->point - whole_digits : 1);
  if (decimal->count <= decimal->point)
    return;
  oc_text_add(text, ".");
  add_zeros(text, -decimal->point);
  oc_text_add_bytes(text, decimal->digits + whole_digits, (size_t)(decimal->count - whole_digits));
}

static void add_scientific(struct oc_text *text, const struct decimal *decimal) {
  long long exponent = decimal->point - 1;
  oc_text_add_bytes(text, decimal->digits, 1);
  if (decimal->count > 1)
    oc_text_add(text, ".");
  oc_text_add_bytes(text, decimal->digits + 1, (size_t)(decimal->count - 1));
  oc_text_add(text, exponent < 0 ? "e-" : "e");
  oc_text_add_count(text, (size_t)(exponent < 0 ? -exponent : exponent));
}

static size_t print_special(double value, struct oc_text *text) {
  oc_text_add(text, isnan(value) ? "nan" : value < 0 ? "-inf" : "inf");
  return text->length;
}

size_t ohm_number_print(double value, char *buffer, size_t size) {
  struct oc_text text = oc_text_begin(buffer, size);
  if (!isfinite(value))
    return print_special(value, &text);
  if (signbit(value))
    oc_text_add(&text, "-");
  double magnitude = fabs(value);
  struct decimal decimal;
  decimal_clear(&decimal);
  if (magnitude > 0 && !shortest_quickly(magnitude, &decimal))
    shortest_exactly(magnitude, &decimal);
  if (-4 <= decimal.point && decimal.point <= 17)
    add_plain(&text, &decimal);
  else
    add_scientific(&text, &decimal);
  return text.length;
}

static int clamp(int low, int x, int high) {
  return x < low ? low : x > high ? high : x;
}

size_t ohm_number_print_fixed(double value, int decimals, char *buffer, size_t size) {
  struct oc_text text = oc_text_begin(buffer, size);
  if (!isfinite(value))
    return print_special(value, &text);
  decimals = clamp(0, decimals, 20);
  if (signbit(value))
    oc_text_add(&text, "-");
  struct decimal decimal;
  decimal_clear(&decimal)->point = -decimals;
  if (fabs(value) > 0) {
    struct ratio ratio;
    ratio_begin(&ratio, fabs(value), false);
    if (ratio.point + decimals >= 0)
      round_digits(&ratio, ratio.point + decimals, &decimal);
  }
  add_plain(&text, &decimal);
  return text.length;
}

size_t ohm_resistance_print(double r_ohm, int digits, char *buffer, size_t size) {
  struct oc_text text = oc_text_begin(buffer, size);
  if (!isfinite(r_ohm))
    return print_special(r_ohm, &text);
  digits = clamp(1, digits, 17);
  if (r_ohm < 0)
    oc_text_add(&text, "-");
  struct decimal decimal;
  decimal_clear(&decimal)->point = 1 - digits;
  if (fabs(r_ohm) > 0) {
    struct ratio ratio;
    ratio_begin(&ratio, fabs(r_ohm), false);
    round_digits(&ratio, digits, &decimal);
    decimal.count = digits;
  }
  int unit = decimal.point > 6 ? 6 : decimal.point > 3 ? 3 : 0;
  decimal.point -= unit;
  add_plain(&text, &decimal);
  oc_text_add(&text, unit == 6 ? " M" : unit == 3 ? " k" : " ohm");
  return text.length;
}

void oc_text_add_number(struct oc_text *text, double value) {
  char digits[OHM_NUMBER_SIZE];
  ohm_number_print(value, digits, sizeof digits);
  oc_text_add(text, digits);
}
