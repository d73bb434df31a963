/* SPDX-License-Identifier: MIT */
/* The list of settings, and the one way to read each kind of them. */
#include "setting.h"

#include <string.h>

#include "../evidence/meter.h"
#include "../evidence/module.h"
#include "../evidence/reference.h"
#include "../ground/number.h"
#include "../ground/status.h"
#include "../ground/text.h"
#include "../ground/words.h"
#include "finding.h"
#include "notation.h"

struct setting {
  int number;
  const char *name;
  ohm_setting_kind kind;
  const char *without;
  const char *allowed;
  const char *example;
  const char *verbs;
  const char *meaning;
};

static const struct setting settings[] = {
#define SETTING(number, constant, name, kind, without, allowed, example, verbs, meaning)           \
  {number, #name, OHM_SETTING_KIND_##kind, without, allowed, example, verbs, meaning},
    OHM_SETTINGS(SETTING)
#undef SETTING
};

enum { COUNT = sizeof settings / sizeof settings[0] };

static const struct setting *find(int number) {
  for (size_t i = 0; i < COUNT; i++)
    if (settings[i].number == number)
      return &settings[i];
  return NULL;
}

/* ---- the list ---- */

size_t ohm_setting_count(void) {
  return COUNT;
}

int ohm_setting_at(size_t index) {
  return index < COUNT ? settings[index].number : 0;
}

static char plain(char c) {
  if (c == '-')
    return '_';
  return 'A' <= c && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

static bool is_same_word(const char *a, size_t length, const char *b) {
  for (size_t i = 0; i < length; i++)
    if (plain(a[i]) != plain(b[i]) || b[i] == '\0')
      return false;
  return b[length] == '\0';
}

int ohm_setting_named(const char *name) {
  for (size_t i = 0; name && i < COUNT; i++)
    if (is_same_word(name, strlen(name), settings[i].name))
      return settings[i].number;
  return 0;
}

const char *ohm_setting_name(int setting) {
  const struct setting *found = find(setting);
  return found ? found->name : NULL;
}

int ohm_setting_kind_of(int setting) {
  const struct setting *found = find(setting);
  return found ? (int)found->kind : 0;
}

const char *ohm_setting_default(int setting) {
  const struct setting *found = find(setting);
  return found ? found->without : NULL;
}

const char *ohm_setting_example(int setting) {
  const struct setting *found = find(setting);
  return found ? found->example : NULL;
}

const char *ohm_setting_meaning(int setting) {
  const struct setting *found = find(setting);
  return found ? found->meaning : NULL;
}

int ohm_setting_is_of(int setting, ohm_verb verb) {
  const struct setting *found = find(setting);
  const char *name = oc_field_word(OHM_FIELD_ABOUT, (int)verb);
  if (!found || !name)
    return 0;
  size_t length = strlen(name);
  for (const char *at = found->verbs; (at = strstr(at, name)) != NULL; at += length)
    if ((at == found->verbs || at[-1] == ' ') && (at[length] == ' ' || at[length] == '\0'))
      return 1;
  return 0;
}

/* ---- what is allowed ---- */

/* "(0, 100]": above 0, up to 100. */
struct interval {
  double low;
  double high;
  bool above;
  bool below;
};

static bool interval_of(const struct setting *setting, struct interval *interval) {
  const char *text = setting->allowed;
  struct oc_words words = {text + 1, strlen(text) - 1};
  interval->above = text[0] == '(';
  if ((text[0] != '(' && text[0] != '[') || !oc_words_number(&words, &interval->low) ||
      !oc_words_take(&words, ",") || !oc_words_number(&words, &interval->high))
    return false;
  interval->below = words.length > 0 && words.text[0] == ')';
  return true;
}

static const char *unit_of(ohm_setting_kind kind) {
  switch (kind) {
  case OHM_SETTING_KIND_TEMPERATURE:
  case OHM_SETTING_KIND_DIFFERENCE:
  case OHM_SETTING_KIND_REFERENCE:
  case OHM_SETTING_KIND_AIR:
  case OHM_SETTING_KIND_STOP:
    return "C";
  case OHM_SETTING_KIND_PERCENT:
    return "%";
  case OHM_SETTING_KIND_CURRENT:
    return "mA";
  case OHM_SETTING_KIND_HOURS:
    return "h";
  case OHM_SETTING_KIND_VOLTS:
  case OHM_SETTING_KIND_SUPPLY:
    return "V";
  default:
    return "";
  }
}

static void add_amount(struct oc_text *out, double value, ohm_setting_kind kind) {
  char number[OHM_NUMBER_SIZE];
  ohm_number_print(value, number, sizeof number);
  oc_text_add(out, number);
  oc_text_add(out, unit_of(kind));
}

static void add_allowed(struct oc_text *out, const struct setting *setting) {
  struct interval interval;
  if (!interval_of(setting, &interval)) {
    oc_text_add(out, setting->allowed);
    return;
  }
  oc_text_add(out, interval.above ? "above " : "from ");
  add_amount(out, interval.low, setting->kind);
  oc_text_add(out, interval.below ? " and below " : " up to ");
  add_amount(out, interval.high, setting->kind);
}

size_t ohm_setting_allowed(int setting, char *buffer, size_t size) {
  const struct setting *found = find(setting);
  struct oc_text out = oc_text_begin(buffer, size);
  if (found)
    add_allowed(&out, found);
  return out.length;
}

static ohm_status refuse(const struct setting *setting, ohm_status status, const char *given,
                         ohm_error *error) {
  char allowed[200];
  char quoted[80];
  ohm_setting_allowed(setting->number, allowed, sizeof allowed);
  struct oc_text text = oc_text_begin(quoted, sizeof quoted);
  oc_text_add_quoted(&text, given, strlen(given));
  return oc_fail(error, status, setting->name, ": \"", quoted, "\" cannot be used: write ", allowed,
                 ", such as ", setting->example, (const char *)NULL);
}

static ohm_status refuse_unknown(int number, ohm_error *error) {
  char text[OHM_NUMBER_SIZE];
  ohm_number_print(number, text, sizeof text);
  return oc_fail(error, OHM_NOT_FOUND, "there is no setting ", text,
                 ": pass an OHM_SETTING_ constant of the header", (const char *)NULL);
}

static bool is_allowed(const struct setting *setting, double number) {
  struct interval interval;
  if (!interval_of(setting, &interval))
    return true;
  bool above = interval.above ? interval.low < number : interval.low <= number;
  bool below = interval.below ? number < interval.high : number <= interval.high;
  return above && below;
}

/* ---- words ---- */

/* Words of what is allowed stand with commas between. */
static double word_number(const char *allowed, const char *text) {
  size_t length = strlen(text);
  double number = 1;
  for (const char *at = allowed; *at; number++) {
    size_t span = strcspn(at, ",");
    if (span == length) {
      char word[16];
      memcpy(word, at, span < sizeof word ? span : 0);
      word[span < sizeof word ? span : 0] = '\0';
      if (is_same_word(text, length, word))
        return number;
    }
    at += span;
    at += strspn(at, ", ");
  }
  return NAN;
}

static size_t word_at(const char *allowed, double number, char *word, size_t size) {
  const char *at = allowed;
  for (; *at && number > 1; number--) {
    at += strcspn(at, ",");
    at += strspn(at, ", ");
  }
  size_t span = strcspn(at, ",");
  if (!*at || span >= size || number != 1)
    return 0;
  memcpy(word, at, span);
  word[span] = '\0';
  return span;
}

/* ---- one kind after the other ---- */

/* A notation with a room of its own says itself what is wrong. */
static ohm_status read_notation(ohm_setting_kind kind, const char *text, double *number,
                                ohm_error *error) {
  oc_meter meter = OC_METER_INIT;
  oc_module module = OC_MODULE_INIT;
  oc_reference reference;
  struct oc_span tau;
  struct oc_drawer drawer;
  *number = NAN;
  switch (kind) {
  case OHM_SETTING_KIND_REFERENCE:
    return oc_reference_read(text, &reference, error);
  case OHM_SETTING_KIND_AIR:
  case OHM_SETTING_KIND_STOP:
    return oc_notation_thermometer(text, &reference, error);
  case OHM_SETTING_KIND_METER:
    return oc_meter_read(text, &meter, error);
  case OHM_SETTING_KIND_LEADS:
    return oc_leads_read(text, &meter, error);
  case OHM_SETTING_KIND_PULL_UP:
    return oc_pull_up_read(text, &module, error);
  case OHM_SETTING_KIND_SUPPLY:
    return oc_supply_read(text, &module, error);
  case OHM_SETTING_KIND_TAU:
    return oc_notation_tau(text, &tau, error);
  case OHM_SETTING_KIND_DRAWER:
    return oc_notation_drawer(text, &drawer, error);
  default:
    return OHM_OK;
  }
}

/* The number of an amount, or of a word; NaN when the text is neither. */
static double amount_of(const struct setting *setting, const char *text) {
  double number;
  switch (setting->kind) {
  case OHM_SETTING_KIND_TEMPERATURE:
    return ohm_temperature_read(text, &number, NULL) == OHM_OK ? number : NAN;
  case OHM_SETTING_KIND_RESISTANCE:
    return ohm_resistance_read(text, &number, NULL) == OHM_OK ? number : NAN;
  case OHM_SETTING_KIND_PROBABILITY:
    return ohm_number_read(text, strlen(text), &number) == OHM_OK ? number : NAN;
  case OHM_SETTING_KIND_DIFFERENCE:
  case OHM_SETTING_KIND_PERCENT:
  case OHM_SETTING_KIND_CURRENT:
  case OHM_SETTING_KIND_HOURS:
  case OHM_SETTING_KIND_VOLTS:
    return oc_notation_amount(setting->kind, text);
  case OHM_SETTING_KIND_FLAG:
    return 2 - word_number(setting->allowed, text);
  default:
    return word_number(setting->allowed, text);
  }
}

static bool has_notation(ohm_setting_kind kind) {
  return kind >= OHM_SETTING_KIND_REFERENCE;
}

ohm_status oc_setting_read(int setting, const char *text, double *number, ohm_error *error) {
  const struct setting *found = find(setting);
  *number = NAN;
  oc_error_clear(error);
  if (!found)
    return refuse_unknown(setting, error);
  if (found->kind == OHM_SETTING_KIND_TEXT)
    return *text && !strpbrk(text, "\r\n") ? OHM_OK : refuse(found, OHM_BAD_SYNTAX, text, error);
  if (has_notation(found->kind))
    return read_notation(found->kind, text, number, error);
  double value = amount_of(found, text);
  if (isnan(value))
    return refuse(found, OHM_BAD_SYNTAX, text, error);
  if (!is_allowed(found, value))
    return refuse(found, OHM_OUT_OF_RANGE, text, error);
  *number = value;
  return OHM_OK;
}

static ohm_status print_word(const struct setting *setting, double number, char *text,
                             ohm_error *error) {
  char given[OHM_NUMBER_SIZE];
  double place = setting->kind == OHM_SETTING_KIND_FLAG ? (number != 0 ? 1 : 2) : number;
  if (word_at(setting->allowed, place, text, OC_SETTING_TEXT_SIZE) > 0)
    return OHM_OK;
  ohm_number_print(number, given, sizeof given);
  return refuse(setting, OHM_OUT_OF_RANGE, given, error);
}

ohm_status oc_setting_print(int setting, double number, char text[OC_SETTING_TEXT_SIZE],
                            ohm_error *error) {
  const struct setting *found = find(setting);
  oc_error_clear(error);
  if (!found)
    return refuse_unknown(setting, error);
  if (found->kind == OHM_SETTING_KIND_TEXT || found->kind == OHM_SETTING_KIND_METER ||
      found->kind == OHM_SETTING_KIND_TAU || found->kind == OHM_SETTING_KIND_DRAWER)
    return oc_fail(error, OHM_BAD_ARGUMENT, found->name, ": a number says too little of it: set ",
                   "it as text, such as ", found->example, (const char *)NULL);
  struct oc_text out = oc_text_begin(text, OC_SETTING_TEXT_SIZE);
  if (!isfinite(number)) {
    char given[OHM_NUMBER_SIZE];
    ohm_number_print(number, given, sizeof given);
    return refuse(found, OHM_BAD_ARGUMENT, given, error);
  }
  if (OHM_SETTING_KIND_FLAG <= found->kind && found->kind <= OHM_SETTING_KIND_SERIES)
    return print_word(found, number, text, error);
  add_amount(&out, number, found->kind);
  return OHM_OK;
}
