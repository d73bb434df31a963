/* SPDX-License-Identifier: MIT */
#include "json.h"

#include <math.h>
#include <stddef.h>
#include <stdio.h>
#include <string.h>

#include <ohmcurve.h>

/* Raised when a key is renamed or changes its meaning. */
enum { KEYS_VERSION = 1 };

static bool is_between(const unsigned char *byte, unsigned low, unsigned high) {
  return low <= *byte && *byte <= high;
}

/* Length of the well-formed UTF-8 character at text, 0 when none is there
 * (The Unicode Standard, table 3-7). A NUL never continues one. */
static size_t character_at(const unsigned char *text) {
  if (text[0] < 0x80)
    return 1;
  if (is_between(text, 0xC2, 0xDF))
    return is_between(text + 1, 0x80, 0xBF) ? 2 : 0;
  unsigned low = text[0] == 0xE0 ? 0xA0 : text[0] == 0xF0 ? 0x90 : 0x80;
  unsigned high = text[0] == 0xED ? 0x9F : text[0] == 0xF4 ? 0x8F : 0xBF;
  if (!is_between(text, 0xE0, 0xF4) || !is_between(text + 1, low, high) ||
      !is_between(text + 2, 0x80, 0xBF))
    return 0;
  if (text[0] < 0xF0)
    return 3;
  return is_between(text + 3, 0x80, 0xBF) ? 4 : 0;
}

static void write_ascii(unsigned char byte) {
  static const char named[] = "\"\"\\\\\bb\ff\nn\rr\tt";
  for (const char *pair = named; *pair; pair += 2)
    if ((unsigned char)pair[0] == byte) {
      printf("\\%c", pair[1]);
      return;
    }
  if (byte < 0x20)
    printf("\\u%04x", byte);
  else
    putchar(byte);
}

static void write_string(const char *string) {
  const unsigned char *text = (const unsigned char *)string;
  putchar('"');
  while (*text) {
    size_t length = character_at(text);
    if (length == 1)
      write_ascii(*text);
    else if (length == 0)
      fputs("\xEF\xBF\xBD", stdout);
    else
      fwrite(text, 1, length, stdout);
    text += length > 0 ? length : 1;
  }
  putchar('"');
}

static void write_comma(struct shell_json *json) {
  if (json->started)
    putchar(',');
  json->started = true;
}

static void write_key(struct shell_json *json, const char *key) {
  write_comma(json);
  write_string(key);
  putchar(':');
}

void shell_json_number(struct shell_json *json, const char *key, double value) {
  if (!isfinite(value))
    return;
  char digits[OHM_NUMBER_SIZE];
  ohm_number_print(value, digits, sizeof digits);
  write_key(json, key);
  fputs(digits, stdout);
}

void shell_json_text(struct shell_json *json, const char *key, const char *text) {
  if (!text)
    return;
  write_key(json, key);
  write_string(text);
}

void shell_json_begin(struct shell_json *json, const char *record) {
  putchar('{');
  json->started = false;
  shell_json_text(json, "record", record);
  shell_json_number(json, "json", KEYS_VERSION);
}

void shell_json_list_begin(struct shell_json *json, const char *key) {
  write_key(json, key);
  putchar('[');
  json->started = false;
}

void shell_json_list_text(struct shell_json *json, const char *text) {
  write_comma(json);
  write_string(text);
}

void shell_json_list_number(struct shell_json *json, double value) {
  char digits[OHM_NUMBER_SIZE];
  ohm_number_print(value, digits, sizeof digits);
  write_comma(json);
  fputs(isfinite(value) ? digits : "null", stdout);
}

void shell_json_list_end(struct shell_json *json) {
  putchar(']');
  json->started = true;
}

void shell_json_end(struct shell_json *json) {
  fputs("}\n", stdout);
  json->started = false;
}
