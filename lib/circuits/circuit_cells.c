/* SPDX-License-Identifier: MIT */
#include "circuit_cells.h"

#include <stdlib.h>
#include <string.h>

#include "../ground/number.h"

enum { NAME_MAX = 40, MINUTES_MAX = 600 };

static struct oc_spot spot_of(int line, const char *cell) {
  return (struct oc_spot){.line = line, .text = cell, .length = strlen(cell)};
}

/* ---- words ---- */

static size_t word_place(const char *cell, const char *const *words, size_t count) {
  for (size_t i = 0; i < count; i++)
    if (strcmp(cell, words[i]) == 0)
      return i;
  return OC_NO_PLACE;
}

#define PLACE_OF(cell, words) word_place(cell, words, sizeof words / sizeof words[0])

static const char *const kind_words[OHM_LINK_KINDS] = {
    "power", "motor", "battery", "control", "electronics", "sensing", "cooling"};
static const char *const role_words[] = {"", "symptom", "condition", "proof"};
static const char *const load_words[OC_LOADS] = {"none", "lights", "bulb", "fan"};
static const char *const unit_words[OC_UNITS] = {
    "", "V", "A", "ohm", "C", "V/A", "mV-fuse", "finding:sensor", "finding:module"};

#define LETTERS "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"

static bool is_name(const char *text) {
  size_t length = strlen(text);
  return 0 < length && length <= NAME_MAX && strspn(text, LETTERS) > 0 &&
         strspn(text, LETTERS "0123456789-_.") == length && strcmp(text, "circuit") != 0;
}

/* ---- links ---- */

static void fail_link(struct oc_complaints *complaints, ohm_status status,
                      const struct oc_link *link, const char *what, ohm_link_column column,
                      const char *advice) {
  oc_complaints_fail(complaints, status, spot_of(link->line, link->cells[column]), what, advice);
}

static void read_odds(struct oc_link *link, struct oc_complaints *complaints) {
  const char *odds = link->cells[OHM_LINK_ODDS];
  link->odds = NAN;
  if (!odds[0])
    return;
  bool told = ohm_number_read(odds, strlen(odds), &link->odds) == OHM_OK && link->odds > 0 &&
              link->odds < 1 && link->cells[OHM_LINK_STANDING][0];
  if (told)
    return;
  oc_complaints_note(complaints, spot_of(link->line, odds), "odds are ",
                     "; write a number above 0 and below 1, and in standing where it comes "
                     "from (left out)");
  link->odds = NAN;
  link->cells[OHM_LINK_ODDS][0] = '\0';
}

static void understand_link(struct ohm_circuit *circuit, size_t index,
                            struct oc_complaints *complaints) {
  struct oc_link *link = &circuit->links[index];
  const char *name = link->cells[OHM_LINK_LINK];
  const char *action = link->cells[OHM_LINK_ACTION];
  size_t kind = PLACE_OF(link->cells[OHM_LINK_KIND], kind_words);
  if (!is_name(name))
    fail_link(complaints, OHM_BAD_DEFINITION, link, "no link can be called ", OHM_LINK_LINK,
              "; write a word of letters, 0-9, -, _ and ., a letter first, not circuit");
  else if (oc_circuit_link(circuit, name, strlen(name)) != index)
    fail_link(complaints, OHM_BAD_DEFINITION, link, "there are two links called ", OHM_LINK_LINK,
              "; name one of them otherwise");
  else if (kind == OC_NO_PLACE)
    fail_link(complaints, OHM_BAD_SYNTAX, link, "kind is ", OHM_LINK_KIND,
              "; it may be power, motor, battery, control, electronics, sensing or cooling");
  else if (!link->cells[OHM_LINK_PART][0])
    fail_link(complaints, OHM_BAD_DEFINITION, link, "no part is renewed for ", OHM_LINK_LINK,
              "; write in part what is bought or repaired");
  else if (strcmp(action, "buy") != 0 && strcmp(action, "repair") != 0)
    fail_link(complaints, OHM_BAD_SYNTAX, link, "action is ", OHM_LINK_ACTION,
              "; it may be buy or repair");
  link->kind = kind == OC_NO_PLACE ? OHM_LINK_POWER : (enum oc_link_kind)kind;
  read_odds(link, complaints);
}

/* ---- tests, each by itself ---- */

static bool read_limit(const char *cell, struct oc_test_limit *limit) {
  *limit = (struct oc_test_limit){NAN, false};
  if (!cell[0])
    return true;
  limit->over_fan = strncmp(cell, "fan", 3) == 0;
  if (limit->over_fan)
    cell += 3;
  if (limit->over_fan && !cell[0]) {
    limit->value = 0;
    return true;
  }
  if (limit->over_fan && cell[0] == '+')
    cell++;
  return ohm_number_read(cell, strlen(cell), &limit->value) == OHM_OK;
}

/* "1%+0.02", "4" */
static bool read_error(const char *cell, double *percent, double *error) {
  const char *sign = strchr(cell, '%');
  *percent = 0;
  if (sign) {
    if (ohm_number_read(cell, (size_t)(sign - cell), percent) != OHM_OK || sign[1] != '+')
      return false;
    cell = sign + 2;
  }
  return ohm_number_read(cell, strlen(cell), error) == OHM_OK && *percent >= 0 && *percent <= 100 &&
         *error >= 0;
}

/* Links by name, all of them for *; false at a name that is none. */
static bool read_links(const struct ohm_circuit *circuit, const char *cell, oc_set *links) {
  const char *word;
  size_t length;
  *links = 0;
  while (oc_circuit_word(&cell, &word, &length)) {
    size_t link = oc_circuit_link(circuit, word, length);
    if (oc_circuit_is(word, length, "*"))
      for (size_t i = 0; i < circuit->link_count; i++)
        *links |= oc_set_of(i);
    else if (link == OC_NO_PLACE)
      return false;
    else
      *links |= oc_set_of(link);
  }
  return true;
}

static bool clears_unloaded(const struct ohm_circuit *circuit, const struct oc_test *test) {
  for (size_t i = 0; i < circuit->link_count; i++) {
    enum oc_link_kind kind = circuit->links[i].kind;
    bool carries = kind == OHM_LINK_POWER || kind == OHM_LINK_MOTOR;
    enum oc_test_load least = carries                    ? OC_LOAD_BULB
                              : kind == OHM_LINK_BATTERY ? OC_LOAD_LIGHTS
                                                         : OC_LOAD_NONE;
    if (test->clears & oc_set_of(i) && test->load < least)
      return true;
  }
  return false;
}

static bool feeds_no_motor(const struct ohm_circuit *circuit, const struct oc_test *test) {
  const char *feeds = test->cells[OHM_TEST_FEEDS];
  size_t link = oc_circuit_link(circuit, feeds, strlen(feeds));
  return feeds[0] && (link == OC_NO_PLACE || circuit->links[link].kind != OHM_LINK_MOTOR);
}

static bool lacks_limits(const struct oc_test *test) {
  bool judged = OC_UNIT_VOLT <= test->unit && test->unit <= OC_UNIT_DROP;
  return judged && isnan(test->low.value) && isnan(test->high.value);
}

/* The column that cannot be used and why; NULL when all can. */
static const char *fault_of_test(const struct ohm_circuit *circuit, struct oc_test *test,
                                 ohm_test_column *column) {
  char **cells = test->cells;
  size_t role = PLACE_OF(cells[OHM_TEST_ROLE], role_words);
  size_t load = PLACE_OF(cells[OHM_TEST_LOAD], load_words);
  size_t unit = PLACE_OF(cells[OHM_TEST_UNIT], unit_words);
#define FAULT(is_wrong, at, why)                                                                   \
  if (is_wrong) {                                                                                  \
    *column = (at);                                                                                \
    return (why);                                                                                  \
  }
  FAULT(!is_name(cells[OHM_TEST_TEST]) || strcmp(cells[OHM_TEST_TEST], "fan") == 0, OHM_TEST_TEST,
        "; write a word of letters, 0-9, -, _ and ., a letter first, not fan or circuit")
  FAULT(role == OC_NO_PLACE, OHM_TEST_ROLE, "; it may be symptom, condition, proof or blank")
  FAULT(load == OC_NO_PLACE, OHM_TEST_LOAD, "; it may be none, lights, bulb or fan")
  FAULT(unit == OC_NO_PLACE, OHM_TEST_UNIT,
        "; it may be blank, V, A, ohm, C, V/A, mV-fuse, finding:sensor or finding:module")
  test->role = (enum oc_test_role)role;
  test->load = (enum oc_test_load)load;
  test->unit = (enum oc_test_unit)unit;
  FAULT(!cells[OHM_TEST_WHAT][0], OHM_TEST_WHAT, "; say what is done, and what is good")
  FAULT(ohm_number_read(cells[OHM_TEST_MINUTES], strlen(cells[OHM_TEST_MINUTES]), &test->minutes) !=
                OHM_OK ||
            !(0 < test->minutes && test->minutes <= MINUTES_MAX),
        OHM_TEST_MINUTES, "; write minutes above 0 and up to 600")
  FAULT(!read_limit(cells[OHM_TEST_LOW], &test->low), OHM_TEST_LOW,
        "; write a plain number, fan or fan+5")
  FAULT(!read_limit(cells[OHM_TEST_HIGH], &test->high), OHM_TEST_HIGH,
        "; write a plain number, fan or fan+5")
  FAULT(lacks_limits(test), OHM_TEST_HIGH, "; a number needs low, high or both to be judged by")
  FAULT(test->low.over_fan == test->high.over_fan && test->low.value > test->high.value,
        OHM_TEST_HIGH, "; it lies below low, exchange them")
  FAULT(test->unit != OC_UNIT_WORD && test->unit < OC_UNIT_FUSE &&
            !read_error(cells[OHM_TEST_ERROR], &test->error_percent, &test->error),
        OHM_TEST_ERROR, "; write what the instrument may err by, 1%+0.02 or 4")
  FAULT(!cells[OHM_TEST_SOURCE][0], OHM_TEST_SOURCE,
        "; say where it was printed, or common practice")
  FAULT(!read_links(circuit, cells[OHM_TEST_CLEARS], &test->clears), OHM_TEST_CLEARS,
        "; write names of links, apart by spaces, or *")
  FAULT(!read_links(circuit, cells[OHM_TEST_ACCUSES], &test->accuses), OHM_TEST_ACCUSES,
        "; write names of links, apart by spaces, or *")
  FAULT(test->accuses && test->clears & ~test->accuses, OHM_TEST_CLEARS,
        "; it holds a link that is not in accuses, so that a fault there would not show")
  FAULT(!test->is_usual && clears_unloaded(circuit, test), OHM_TEST_CLEARS,
        "; without load nothing is cleared that carries the fan's current: write bulb or fan as "
        "load, or leave it out of clears")
  FAULT(feeds_no_motor(circuit, test), OHM_TEST_FEEDS,
        "; only a link of kind motor is ever fed from the battery, never electronics")
  FAULT(test->role == OC_ROLE_SYMPTOM && (test->unit != OC_UNIT_WORD || !test->accuses),
        OHM_TEST_ROLE, "; a symptom is good or bad, and accuses the links it takes to be good")
#undef FAULT
  return NULL;
}

/* ---- tests, as they refer to each other ---- */

static size_t test_of(const struct ohm_circuit *circuit, const char *cell) {
  return oc_circuit_test(circuit, cell, strlen(cell));
}

/* "engine-heat=good fuse=renewed": something that can be seen, and how. */
static bool needs_are_known(const struct ohm_circuit *circuit, const char *cell) {
  static const char *const of_tests[] = {"good", "bad"};
  const char *word;
  size_t length;
  while (oc_circuit_word(&cell, &word, &length)) {
    const char *sign = memchr(word, '=', length);
    if (!sign)
      return false;
    size_t name = (size_t)(sign - word);
    size_t rest = length - name - 1;
    bool seen = false;
    for (size_t i = 0; i < 2; i++)
      seen |= oc_circuit_is(sign + 1, rest, of_tests[i]);
    if (!(seen && oc_circuit_test(circuit, word, name) != OC_NO_PLACE) &&
        !(oc_circuit_is(sign + 1, rest, "renewed") &&
          oc_circuit_link(circuit, word, name) != OC_NO_PLACE) &&
        !(oc_circuit_is(sign + 1, rest, "yes") &&
          oc_circuit_fact(circuit, word, name) != OC_NO_PLACE))
      return false;
  }
  return true;
}

/* One or two tests that tell the current. */
static bool read_amperes(const struct ohm_circuit *circuit, const char *cell, size_t amperes[2]) {
  const char *word;
  size_t length;
  amperes[0] = amperes[1] = OC_NO_PLACE;
  for (size_t count = 0; oc_circuit_word(&cell, &word, &length); count++) {
    size_t test = oc_circuit_test(circuit, word, length);
    if (count == 2 || test == OC_NO_PLACE ||
        (circuit->tests[test].unit != OC_UNIT_AMPERE && circuit->tests[test].unit != OC_UNIT_FUSE))
      return false;
    amperes[count] = test;
  }
  return true;
}

static const char *fault_of_references(const struct ohm_circuit *circuit, size_t index,
                                       ohm_test_column *column) {
  const struct oc_test *test = &circuit->tests[index];
  char *const *cells = test->cells;
  const char *name = cells[OHM_TEST_TEST];
  const char *fact = cells[OHM_TEST_ONLY_IF];
  size_t amperes[2];
  *column = OHM_TEST_TEST;
  if (test_of(circuit, name) != index ||
      oc_circuit_link(circuit, name, strlen(name)) < OC_NO_PLACE ||
      oc_circuit_fact(circuit, name, strlen(name)) < OC_NO_PLACE ||
      oc_circuit_has_tool(circuit, name, strlen(name)))
    return "; a link, test, fact or tool is called so already, name it otherwise";
  *column = OHM_TEST_ONLY_IF;
  if (fact[0] && oc_circuit_fact(circuit, fact, strlen(fact)) == OC_NO_PLACE)
    return "; write the name of a line \"# fact NAME: ...\"";
  *column = OHM_TEST_AMPERES;
  if (!read_amperes(circuit, cells[OHM_TEST_AMPERES], amperes))
    return "; write one or two tests whose unit is A or mV-fuse";
  *column = OHM_TEST_NEEDS;
  if (!needs_are_known(circuit, cells[OHM_TEST_NEEDS]))
    return "; write NAME=good or NAME=bad of a test, NAME=renewed of a link, NAME=yes of a fact";
  return NULL;
}

static void leave_out(struct ohm_circuit *circuit, size_t index, ohm_test_column column,
                      const char *why, struct oc_complaints *complaints) {
  struct oc_test *test = &circuit->tests[index];
  char buffer[80];
  struct oc_text what = oc_text_begin(buffer, sizeof buffer);
  oc_text_add(&what, "test left out: ");
  oc_text_add(&what, oc_test_columns[column]);
  oc_text_add(&what, " is ");
  oc_complaints_note(complaints, spot_of(test->line, test->cells[column]), buffer, why);
  oc_test_free(test);
  circuit->test_count--;
  memmove(test, test + 1, (circuit->test_count - index) * sizeof *test);
}

static void understand_tests(struct ohm_circuit *circuit, struct oc_complaints *complaints) {
  ohm_test_column column = OHM_TEST_TEST;
  for (size_t i = 0; i < circuit->test_count && oc_goes_on(complaints);) {
    const char *why = fault_of_test(circuit, &circuit->tests[i], &column);
    if (why)
      leave_out(circuit, i, column, why, complaints);
    else
      i++;
  }
  /* What is left out may have been referred to. */
  for (size_t i = 0; i < circuit->test_count && oc_goes_on(complaints);) {
    const char *why = fault_of_references(circuit, i, &column);
    if (why)
      leave_out(circuit, i, column, why, complaints);
    i = why ? 0 : i + 1;
  }
  for (size_t i = 0; i < circuit->test_count; i++) {
    struct oc_test *test = &circuit->tests[i];
    const char *fact = test->cells[OHM_TEST_ONLY_IF];
    test->only_if = oc_circuit_fact(circuit, fact, strlen(fact));
    read_amperes(circuit, test->cells[OHM_TEST_AMPERES], test->amperes);
  }
}

/* ---- balances ---- */

/* "battery = feed-drop + motor-volts + ground-drop", all of them volts. */
static bool read_balance(const struct ohm_circuit *circuit, struct oc_balance *balance) {
  const char *text = balance->text;
  const char *word;
  size_t length;
  size_t count = 0;
  while (oc_circuit_word(&text, &word, &length)) {
    bool is_sign = count % 2 == 1;
    size_t test = oc_circuit_test(circuit, word, length);
    enum oc_test_unit unit = test == OC_NO_PLACE ? OC_UNIT_WORD : circuit->tests[test].unit;
    size_t part = count / 2;
    count++;
    if (is_sign && !oc_circuit_is(word, length, count == 2 ? "=" : "+"))
      return false;
    if (is_sign)
      continue;
    if ((unit != OC_UNIT_VOLT && unit != OC_UNIT_DROP) || part > 4)
      return false;
    if (part == 0)
      balance->whole = test;
    else
      balance->parts[part - 1] = test;
    balance->part_count = part;
  }
  return count % 2 == 1 && balance->part_count > 0;
}

static void understand_balances(struct ohm_circuit *circuit, struct oc_complaints *complaints) {
  size_t kept = 0;
  for (size_t i = 0; i < circuit->balance_count; i++) {
    struct oc_balance balance = circuit->balances[i];
    if (read_balance(circuit, &balance)) {
      circuit->balances[kept++] = balance;
      continue;
    }
    if (oc_goes_on(complaints))
      oc_complaints_note(complaints, spot_of(0, balance.text), "balance is ",
                         "; write tests of V or V/A as WHOLE = PART + PART (left out)");
    free(balance.text);
  }
  circuit->balance_count = kept;
}

/* ---- what is foretold ---- */

/* A link of which no way to fail is known has one, that matters. */
static void name_failings(struct ohm_circuit *circuit, struct oc_complaints *complaints) {
  circuit->failings = calloc(circuit->link_count + 1, sizeof *circuit->failings);
  if (!circuit->failings) {
    oc_complaints_fail_memory(complaints);
    return;
  }
  circuit->failing_count = circuit->link_count;
  for (size_t i = 0; i < circuit->link_count; i++)
    circuit->failings[i] = (struct oc_failing){(unsigned char)i, true, NAN, 1};
}

/* A good test says that what it clears is sound; what it accuses besides may look either way. */
static oc_outcomes foretell(const struct oc_test *test, size_t link) {
  oc_outcomes good = oc_test_good(test);
  oc_outcomes any = oc_test_any(test);
  if (test->clears & oc_set_of(link))
    return (oc_outcomes)(any & ~good);
  return test->accuses & oc_set_of(link) ? any : good;
}

static void foretell_all(struct ohm_circuit *circuit, struct oc_complaints *complaints) {
  for (size_t i = 0; i < circuit->test_count; i++) {
    struct oc_test *test = &circuit->tests[i];
    if (test->foretold)
      continue;
    test->foretold = malloc(circuit->failing_count + 1);
    if (!test->foretold) {
      oc_complaints_fail_memory(complaints);
      return;
    }
    for (size_t k = 0; k < circuit->failing_count; k++)
      test->foretold[k] = foretell(test, circuit->failings[k].link);
  }
}

void oc_circuit_cells_understand(struct ohm_circuit *circuit, struct oc_complaints *complaints) {
  for (size_t i = 0; i < circuit->link_count && oc_goes_on(complaints); i++)
    understand_link(circuit, i, complaints);
  if (oc_goes_on(complaints))
    understand_tests(circuit, complaints);
  understand_balances(circuit, complaints);
  if (oc_goes_on(complaints) && !circuit->failings)
    name_failings(circuit, complaints);
  if (oc_goes_on(complaints))
    foretell_all(circuit, complaints);
  bool has_symptom = false;
  for (size_t i = 0; i < circuit->test_count; i++)
    has_symptom |= circuit->tests[i].role == OC_ROLE_SYMPTOM;
  if (oc_goes_on(complaints) && !has_symptom)
    oc_complaints_fail(complaints, OHM_BAD_DEFINITION, (struct oc_spot){0},
                       "no test that can be used has the role symptom",
                       "; a circuit needs one that says whether the fan starts by itself");
}
