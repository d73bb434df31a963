/* SPDX-License-Identifier: MIT */
#include "reading.h"

#include <string.h>

#include "../ground/status.h"
#include "../ground/words.h"
#include "finding.h"
#include "notation.h"

enum { PART_SIZE = 200 };

/* A copy of a part of the text, ended by NUL; false when it is longer than any reading. */
static bool copy_part(char part[PART_SIZE], const char *text, size_t length) {
  while (length > 0 && text[length - 1] == ' ')
    length--;
  while (length > 0 && *text == ' ') {
    text++;
    length--;
  }
  if (length >= PART_SIZE)
    return false;
  memcpy(part, text, length);
  part[length] = '\0';
  return true;
}

/* ---- ohms, perhaps at a temperature ---- */

/* Where the temperature of a reading begins. An @ may stand inside of both: OL@20k,
 * boil@1200m. What is a reading as a whole has none. */
static char *temperature_in(char *text, oc_reference *reference) {
  oc_reading whole;
  if (oc_reading_read(text, &whole, NULL) == OHM_OK)
    return NULL;
  for (char *at = strchr(text, '@'); at; at = strchr(at + 1, '@'))
    if (oc_reference_read(at + 1, reference, NULL) == OHM_OK)
      return at;
  return NULL;
}

/* The last @ with a reading before it: what follows was meant as a temperature. */
static char *bad_temperature_in(char *text) {
  char *found = NULL;
  for (char *at = strchr(text, '@'); at; at = strchr(at + 1, '@')) {
    oc_reading before;
    *at = '\0';
    if (oc_reading_read(text, &before, NULL) == OHM_OK)
      found = at;
    *at = '@';
  }
  return found;
}

static ohm_status refuse_ohms(char *text, ohm_error *error) {
  oc_reading reading;
  oc_reference reference;
  char *at = bad_temperature_in(text);
  if (!at)
    return oc_reading_read(text, &reading, error);
  ohm_status status = oc_reference_read(at + 1, &reference, error);
  if (status != OHM_OK)
    return status;
  return oc_words_fail(error, OHM_BAD_SYNTAX, text, " has two temperatures; ",
                       "write the one that the sensor had, such as 2.31k@21.5C");
}

static ohm_status read_ohms(char *text, struct oc_bench_reading *reading, ohm_error *error) {
  bool every_digit = text[0] == '=';
  text += every_digit;
  char *at = temperature_in(text, &reading->at);
  reading->has_at = at != NULL;
  if (at)
    *at = '\0';
  if (oc_reading_read(text, &reading->ohms, NULL) != OHM_OK)
    return refuse_ohms(text, error);
  if (every_digit && reading->ohms.display == OC_DISPLAY_VALUE)
    reading->ohms = (oc_reading){.display = OC_DISPLAY_VALUE, .r_ohm = reading->ohms.r_ohm};
  return OHM_OK;
}

/* ---- what is named ---- */

static bool companion_of(const char *name, ohm_soaked *companion) {
  const char *known;
  for (int i = 0; (known = oc_field_word(OHM_FIELD_ODD, i)) != NULL; i++)
    if (strcmp(name, known) == 0) {
      *companion = (ohm_soaked)i;
      return true;
    }
  return false;
}

static bool is_name(const char *text) {
  for (; *text; text++)
    if ((unsigned char)*text <= ' ' || *text == '@' || *text == ',')
      return false;
  return true;
}

static ohm_status read_named(const char *text, const char *equals, struct oc_bench_reading *reading,
                             ohm_error *error) {
  char name[PART_SIZE];
  if (!copy_part(name, text, (size_t)(equals - text)) || !is_name(name) || equals[1] == '\0')
    return oc_words_fail(error, OHM_BAD_SYNTAX, text, " is no reading; ",
                         "before the = belongs a pair of pins, another sensor of the car or a test "
                         "of a circuit, as in 1-2=480, intake=10.5C or fuse-look=good");
  if (oc_pair_read(text, &reading->pair, NULL) == OHM_OK || oc_pair_is_meant(name)) {
    reading->kind = OC_READING_PAIR;
    return oc_pair_read(text, &reading->pair, error);
  }
  reading->kind = OC_READING_OUTCOME;
  if (!companion_of(name, &reading->companion) ||
      oc_reference_read(equals + 1, &reading->at, NULL) != OHM_OK)
    return OHM_OK;
  reading->kind = OC_READING_COMPANION;
  return oc_notation_thermometer(equals + 1, &reading->at, error);
}

/* ---- places ---- */

/* The number of a place, from 1; 0, not told, of any other word. */
static int place_of(const char *word, ohm_field places) {
  const char *known;
  for (int i = 1; (known = oc_field_word(places, i)) != NULL; i++) {
    const char *at = word;
    while (*at && (*at == *known || (*at == '-' && *known == '_'))) {
      at++;
      known++;
    }
    if (*at == '\0' && *known == '\0')
      return i;
  }
  return 0;
}

/* A word behind the last comma is a place; a figure there is a comma for a point. */
static char *place_in(char *text) {
  char *comma = strrchr(text, ',');
  if (!comma)
    return NULL;
  char first = comma[1 + strspn(comma + 1, " ")];
  return ('a' <= first && first <= 'z') || ('A' <= first && first <= 'Z') ? comma : NULL;
}

static ohm_status take_place(const char *text, const char *word, struct oc_bench_reading *reading,
                             ohm_error *error) {
  word += strspn(word, " ");
  if (reading->kind == OC_READING_VOLTS) {
    reading->volts.negative = place_of(word, OHM_FIELD_NEGATIVE);
    if (reading->volts.negative > 0)
      return OHM_OK;
    return oc_words_fail(error, OHM_BAD_SYNTAX, text, " has a place that is none of volts; ",
                         "behind the comma write pin, sensor or body, where the negative lead was");
  }
  reading->place = (ohm_place)place_of(word, OHM_FIELD_PLACE);
  if (reading->kind == OC_READING_OHMS && reading->place != OHM_PLACE_NOT_TOLD)
    return OHM_OK;
  if (reading->kind == OC_READING_REPORTED)
    return oc_words_fail(error, OHM_BAD_SYNTAX, text, " has a place, and what a module reports ",
                         "has none: leave out the comma and what follows it");
  return oc_words_fail(error, OHM_BAD_SYNTAX, text, " has a place that is none of ohms; ",
                       "behind the comma write sensor, plug_on or module");
}

/* ---- any of them ---- */

static ohm_status read_unnamed(char *part, struct oc_bench_reading *reading, ohm_error *error) {
  bool at = strchr(part, '@') != NULL;
  if (strchr(part, 'V')) {
    bool every_digit = part[0] == '=';
    reading->kind = OC_READING_VOLTS;
    ohm_status status = oc_volts_read(part + every_digit, &reading->volts, error);
    if (every_digit && status == OHM_OK)
      reading->volts.resolution_volt = 0;
    return status;
  }
  if (!at && oc_reported_read(part, &reading->reported, error) == OHM_OK) {
    reading->kind = OC_READING_REPORTED;
    return OHM_OK;
  }
  if (!at && error && error->status == OHM_OUT_OF_RANGE)
    return OHM_OUT_OF_RANGE;
  reading->kind = OC_READING_OHMS;
  return read_ohms(part, reading, error);
}

ohm_status oc_bench_reading_read(const char *text, struct oc_bench_reading *reading,
                                 ohm_error *error) {
  char part[PART_SIZE];
  oc_error_clear(error);
  *reading = (struct oc_bench_reading){.ohms = OC_READING_INIT,
                                       .at = OC_REFERENCE_INIT,
                                       .volts = OC_VOLTS_INIT,
                                       .reported = OC_REPORTED_INIT};
  if (!copy_part(part, text, strlen(text)))
    return oc_words_fail(error, OHM_BAD_SYNTAX, text, " is too long for a reading; ",
                         "write one such as 2.31k@21.5C");
  const char *equals = strchr(part, '=');
  if (equals && equals > part)
    return read_named(part, equals, reading, error);
  ohm_error own;
  char *comma = place_in(part);
  if (comma)
    *comma = '\0';
  ohm_status status = read_unnamed(part, reading, &own);
  if (status == OHM_OK && comma)
    status = take_place(text, comma + 1, reading, &own);
  if (error && status != OHM_OK)
    *error = own;
  return status;
}
