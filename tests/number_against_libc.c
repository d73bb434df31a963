/* SPDX-License-Identifier: MIT */
/*
 * Numbers read and written by the library against the C library under its "C"
 * locale, both ways, over many values. The count of values is the argument.
 */
#include <math.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <ohmcurve.h>

enum { TEXT_SIZE = 1200 };

static struct { unsigned long printed, read, fixed, differences; } counts;

static uint64_t state = 20120601;

/* splitmix64 */
static uint64_t next_random(void) {
  uint64_t z = (state += 0x9E3779B97F4A7C15u);
  z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9u;
  z = (z ^ (z >> 27)) * 0x94D049BB133111EBu;
  return z ^ (z >> 31);
}

static int below(int bound) {
  return (int)(next_random() % (unsigned)bound);
}

static uint64_t bits_of(double x) {
  uint64_t bits;
  memcpy(&bits, &x, sizeof bits);
  return bits;
}

static double of_bits(uint64_t bits) {
  double x;
  memcpy(&x, &bits, sizeof x);
  return x;
}

static bool identical(double a, double b) {
  return bits_of(a) == bits_of(b);
}

static void differ(const char *what, double value, const char *ours, const char *theirs) {
  if (counts.differences++ < 20)
    printf("%s of %a: \"%s\", the C library: \"%s\"\n", what, value, ours, theirs);
}

/* ---- reading ---- */

static void check_read(const char *text) {
  double theirs = strtod(text, NULL), ours;
  ohm_status status = ohm_number_read(text, strlen(text), &ours);
  bool same = isinf(theirs) ? status == OHM_OUT_OF_RANGE && isnan(ours)
                            : status == OHM_OK && identical(ours, theirs);
  counts.read++;
  if (!same) {
    char shown[64];
    snprintf(shown, sizeof shown, "%a, status %d", ours, (int)status);
    differ("reading", theirs, shown, text);
  }
}

/* In turn with enough digits, with too many, and with too few. */
static void check_read_of(double value, unsigned long turn) {
  char text[64];
  if (turn % 3 == 0)
    snprintf(text, sizeof text, "%.17g", value);
  else if (turn % 3 == 1)
    snprintf(text, sizeof text, "%.25e", value);
  else
    snprintf(text, sizeof text, "%.*g", 1 + below(6), value);
  check_read(text);
}

static void check_read_of_random_digits(void) {
  char text[64];
  int length = 0, digits = 1 + below(40), point = below(digits + 1);
  for (int i = 0; i < digits; i++) {
    if (i == point)
      text[length++] = '.';
    text[length++] = (char)('0' + below(10));
  }
  snprintf(text + length, sizeof text - (size_t)length, "e%d", below(680) - 355);
  check_read(text);
}

/* The point halfway to the next double in full, a hair above it, and cut short.
 * Where long double is no wider than double it is that double itself. */
static void check_read_of_halfway(double value) {
  long double middle = ((long double)value + (long double)nextafter(value, INFINITY)) / 2;
  char text[TEXT_SIZE], above[TEXT_SIZE];
  snprintf(text, sizeof text, "%.800Le", middle);
  check_read(text);
  const char *exponent = strchr(text, 'e');
  if (exponent) {
    snprintf(above, sizeof above, "%.*s1%s", (int)(exponent - text), text, exponent);
    check_read(above);
  }
  snprintf(text, sizeof text, "%.*Le", 18 + below(40), middle);
  check_read(text);
}

/* ---- printing ---- */

/* Significant digits of a text, without leading and trailing zeros. */
static int digits_of(const char *text, char *digits) {
  int count = 0, kept = 0;
  for (; *text && *text != 'e'; text++)
    if ('0' <= *text && *text <= '9' && (count > 0 || *text != '0')) {
      digits[count++] = *text;
      if (*text != '0')
        kept = count;
    }
  digits[kept] = '\0';
  return kept;
}

static bool reads_back(double value, int digits, char *text, size_t size) {
  snprintf(text, size, "%.*e", digits - 1, value);
  return identical(strtod(text, NULL), value);
}

static bool is_power_of_two(double value) {
  return (bits_of(value) & 0xFFFFFFFFFFFFFu) == 0;
}

/* Digits as a whole number, filled with zeros at the end up to count of them. */
static long long whole(const char *digits, int count) {
  long long value = strtoll(digits, NULL, 10);
  for (int i = (int)strlen(digits); i < count; i++)
    value *= 10;
  return value;
}

/* The nearest text of as many digits is the C library's. Only at a power of two,
 * where the doubles below lie closer, may that read as another double; then ours
 * must be the neighbour on its other side. */
static bool is_nearest(double value, int count, const char *digits) {
  char text[64], theirs[64];
  bool back = reads_back(value, count, text, sizeof text);
  digits_of(text, theirs);
  if (back)
    return strcmp(digits, theirs) == 0;
  return is_power_of_two(value) && whole(digits, count) - whole(theirs, count) == 1;
}

static void check_print(double value) {
  char ours[OHM_NUMBER_SIZE], digits[64], text[64] = "";
  size_t length = ohm_number_print(value, ours, sizeof ours);
  counts.printed++;
  if (length >= sizeof ours || length != strlen(ours) || !identical(strtod(ours, NULL), value)) {
    differ("printing", value, ours, "reads as another number");
    return;
  }
  check_read(ours);
  int count = digits_of(ours, digits);
  if (count == 0)
    return;
  int shortest = is_power_of_two(value) ? 1 : count - 1;
  for (int fewer = shortest; 0 < fewer && fewer < count; fewer++)
    if (reads_back(value, fewer, text, sizeof text))
      differ("shortest", value, ours, text);
  if (!is_nearest(value, count, digits)) {
    reads_back(value, count, text, sizeof text);
    differ("nearest", value, ours, text);
  }
}

static void check_fixed(double value) {
  char ours[TEXT_SIZE], theirs[TEXT_SIZE];
  int decimals = below(21);
  ohm_number_print_fixed(value, decimals, ours, sizeof ours);
  snprintf(theirs, sizeof theirs, "%.*f", decimals, value);
  counts.fixed++;
  if (strcmp(ours, theirs) != 0)
    differ("fixed printing", value, ours, theirs);
}

/* ---- values ---- */

static double power_of_ten(int power) {
  double result = 1;
  while (power-- > 0)
    result *= 10;
  return result;
}

static double any_double(void) {
  double value;
  do
    value = of_bits(next_random());
  while (!isfinite(value));
  return value;
}

static double resistance(void) {
  int digits = below(99999) + 1;
  int power = below(12) - 4;
  return power < 0 ? digits / power_of_ten(-power) : digits * power_of_ten(power);
}

static double temperature(void) {
  int decimals = below(5);
  return (below((int)power_of_ten(decimals) * 1000) - 273 * power_of_ten(decimals)) /
         power_of_ten(decimals);
}

static double subnormal(void) {
  uint64_t bits = next_random();
  return of_bits((bits & 0xFFFFFFFFFFFFFu) >> (bits >> 58));
}

static double beside_power_of_two(void) {
  uint64_t bits = ((uint64_t)below(2046) + 1) << 52;
  return of_bits(bits + (uint64_t)below(5) - 2);
}

/* One that ends in few binary places, so that rounding often ties. */
static double short_binary(void) {
  int places = below(24);
  return ldexp(below(1 << 30) - (1 << 29), -places);
}

static double computed(void) {
  int exponent = below(60) - 80;
  return ldexp((double)(next_random() >> 11), exponent);
}

static double next_value(unsigned long i) {
  static double (*const kinds[])(void) = {any_double,   resistance, temperature,
                                          computed,     subnormal,  beside_power_of_two,
                                          short_binary, any_double};
  return kinds[i % (sizeof kinds / sizeof kinds[0])]();
}

static void check_value(unsigned long i) {
  double value = next_value(i);
  check_print(value);
  check_read_of(value, i / 8);
  if (fabs(value) < 1e25 || i % 16 == 0)
    check_fixed(value);
  if (i % 4 == 0)
    check_read_of_random_digits();
  if (i / 8 % 256 == 0)
    check_read_of_halfway(value);
}

int main(int argc, char **argv) {
  static const double ends[] = {0.0, -0.0, 5e-324, 0x1p-1022, 0x1.fffffffffffffp1023, 1e22, 1e23};
  unsigned long values = argc > 1 ? strtoul(argv[1], NULL, 10) : 10000000ul;
  for (size_t i = 0; i < sizeof ends / sizeof ends[0]; i++) {
    check_print(ends[i]);
    for (unsigned long turn = 0; turn < 3; turn++)
      check_read_of(ends[i], turn);
    check_fixed(ends[i]);
  }
  for (unsigned long i = 0; i < values; i++)
    check_value(i);
  printf("numbers against the C library: %lu values; %lu printed, %lu printed with fixed decimals, "
         "%lu texts read; %lu differences\n",
         values, counts.printed, counts.fixed, counts.read, counts.differences);
  return counts.differences > 0;
}
