/* SPDX-License-Identifier: MIT */
/* What the cells of links and tests mean, and what the trade does not allow in them. */
#include "circuit_draft.h"

#include <stdlib.h>
#include <string.h>

#include "../sensors/draft.h"
#include "../ground/number.h"
#include "../ground/status.h"

enum { NOTES_MAX = 100, NAME_MAX = 40, MINUTES_MAX = 600 };

bool oc_circuit_draft_goes_on(const struct oc_circuit_draft *draft) {
  return draft->status == OHM_OK;
}

/* ---- faults and notes ---- */

static void say(ohm_error *error, ohm_status status, const struct oc_circuit_draft *draft, int line,
                int column, const char *what, const char *given, size_t length,
                const char *advice) {
  char quoted[64];
  struct oc_text text = oc_text_begin(quoted, sizeof quoted);
  if (given) {
    oc_text_add(&text, "\"");
    oc_text_add_quoted(&text, given, length);
    oc_text_add(&text, "\"");
  }
  oc_fail_at(error, status, draft->place, line, column, what, quoted, advice, (const char *)NULL);
}

void oc_circuit_draft_note(struct oc_circuit_draft *draft, int line, int column, const char *what,
                           const char *given, size_t length, const char *advice) {
  struct ohm_circuit *circuit = draft->circuit;
  ohm_error sentence;
  if (circuit->note_count >= NOTES_MAX)
    return;
  say(&sentence, OHM_BAD_SYNTAX, draft, line, column, what, given, length,
      circuit->note_count + 1 < NOTES_MAX ? advice : "; further notes are left out");
  char **notes = realloc(circuit->notes, (circuit->note_count + 1) * sizeof *notes);
  if (notes)
    circuit->notes = notes;
  char *copy = notes ? oc_draft_copy(sentence.message, strlen(sentence.message)) : NULL;
  if (copy)
    circuit->notes[circuit->note_count++] = copy;
  else
    draft->status = oc_fail_memory(draft->error);
}

void oc_circuit_draft_fail(struct oc_circuit_draft *draft, ohm_status status, int line, int column,
                           const char *what, const char *given, size_t length, const char *advice) {
  draft->status = status;
  if (draft->error)
    say(draft->error, status, draft, line, column, what, given, length, advice);
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
static const char *const role_words[] = {"", "symptom", "condition"};
static const char *const load_words[OC_LOADS] = {"none", "lights", "bulb", "fan"};
static const char *const unit_words[OC_UNITS] = {
    "", "V", "A", "ohm", "C", "V/A", "mV-fuse", "finding:sensor", "finding:module"};

static bool is_name(const char *text) {
  size_t length = strlen(text);
  return 0 < length && length <= NAME_MAX && 'a' <= text[0] && text[0] <= 'z' &&
         strspn(text, "abcdefghijklmnopqrstuvwxyz0123456789-") == length &&
         strcmp(text, "fan") != 0 && strcmp(text, "circuit") != 0;
}

/* ---- links ---- */

static void understand_link(struct oc_circuit_draft *draft, size_t index) {
  struct ohm_circuit *circuit = draft->circuit;
  struct oc_link *link = &circuit->links[index];
  int line = draft->link_lines[index];
  const char *name = link->cells[OHM_LINK_LINK];
  const char *kind = link->cells[OHM_LINK_KIND];
  const char *action = link->cells[OHM_LINK_ACTION];
  const char *odds = link->cells[OHM_LINK_ODDS];
  size_t place = PLACE_OF(kind, kind_words);
  if (!is_name(name))
    oc_circuit_draft_fail(draft, OHM_BAD_DEFINITION, line, 0, "no link can be called ", name,
                          strlen(name),
                          "; write a word of a-z, 0-9 and -, a letter first, not fan or circuit");
  else if (oc_circuit_link(circuit, name, strlen(name)) != index)
    oc_circuit_draft_fail(draft, OHM_BAD_DEFINITION, line, 0, "there are two links called ", name,
                          strlen(name), "; name one of them otherwise");
  else if (place == OC_NO_PLACE)
    oc_circuit_draft_fail(draft, OHM_BAD_SYNTAX, line, 0, "kind is ", kind, strlen(kind),
                          "; it may be power, motor, battery, control, electronics, sensing or "
                          "cooling");
  else if (!link->cells[OHM_LINK_PART][0])
    oc_circuit_draft_fail(draft, OHM_BAD_DEFINITION, line, 0, "no part is renewed for ", name,
                          strlen(name), "; write in part what is bought or repaired");
  else if (strcmp(action, "buy") != 0 && strcmp(action, "repair") != 0)
    oc_circuit_draft_fail(draft, OHM_BAD_SYNTAX, line, 0, "action is ", action, strlen(action),
                          "; it may be buy or repair");
  link->kind = place == OC_NO_PLACE ? OHM_LINK_POWER : (enum oc_link_kind)place;
  link->odds = NAN;
  if (!odds[0])
    return;
  bool told = ohm_number_read(odds, strlen(odds), &link->odds) == OHM_OK && link->odds > 0 &&
              link->odds < 1 && link->cells[OHM_LINK_STANDING][0];
  if (told)
    return;
  oc_circuit_draft_note(draft, line, 0, "odds are ", odds, strlen(odds),
                        "; write a number above 0 and below 1, and in standing where it comes "
                        "from (left out)");
  link->odds = NAN;
  link->cells[OHM_LINK_ODDS][0] = '\0';
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
  FAULT(!is_name(cells[OHM_TEST_TEST]), OHM_TEST_TEST,
        "; write a word of a-z, 0-9 and -, a letter first, not fan or circuit")
  FAULT(role == OC_NO_PLACE, OHM_TEST_ROLE, "; it may be symptom, condition or blank")
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
  FAULT(clears_unloaded(circuit, test), OHM_TEST_CLEARS,
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

static void leave_out(struct oc_circuit_draft *draft, size_t index, ohm_test_column column,
                      const char *why) {
  struct ohm_circuit *circuit = draft->circuit;
  struct oc_test *test = &circuit->tests[index];
  const char *cell = test->cells[column];
  char buffer[80];
  struct oc_text what = oc_text_begin(buffer, sizeof buffer);
  oc_text_add(&what, "test left out: ");
  oc_text_add(&what, ohm_test_column_name((int)column));
  oc_text_add(&what, " is ");
  oc_circuit_draft_note(draft, draft->test_lines[index], 0, what.buffer, cell, strlen(cell), why);
  for (int i = 0; i < OHM_TEST_COLUMN_COUNT; i++)
    free(test->cells[i]);
  circuit->test_count--;
  size_t after = circuit->test_count - index;
  memmove(test, test + 1, after * sizeof *test);
  memmove(&draft->test_lines[index], &draft->test_lines[index + 1],
          after * sizeof draft->test_lines[0]);
}

static void understand_tests(struct oc_circuit_draft *draft) {
  struct ohm_circuit *circuit = draft->circuit;
  ohm_test_column column = OHM_TEST_TEST;
  for (size_t i = 0; i < circuit->test_count && oc_circuit_draft_goes_on(draft);) {
    const char *why = fault_of_test(circuit, &circuit->tests[i], &column);
    if (why)
      leave_out(draft, i, column, why);
    else
      i++;
  }
  /* What is left out may have been referred to. */
  for (size_t i = 0; i < circuit->test_count && oc_circuit_draft_goes_on(draft);) {
    const char *why = fault_of_references(circuit, i, &column);
    if (why)
      leave_out(draft, i, column, why);
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

static void understand_balances(struct oc_circuit_draft *draft) {
  struct ohm_circuit *circuit = draft->circuit;
  size_t kept = 0;
  for (size_t i = 0; i < circuit->balance_count; i++) {
    struct oc_balance balance = circuit->balances[i];
    if (read_balance(circuit, &balance)) {
      circuit->balances[kept++] = balance;
      continue;
    }
    if (oc_circuit_draft_goes_on(draft))
      oc_circuit_draft_note(draft, 0, 0, "balance is ", balance.text, strlen(balance.text),
                            "; write tests of V or V/A as WHOLE = PART + PART (left out)");
    free(balance.text);
  }
  circuit->balance_count = kept;
}

void oc_circuit_draft_understand(struct oc_circuit_draft *draft) {
  struct ohm_circuit *circuit = draft->circuit;
  for (size_t i = 0; i < circuit->link_count && oc_circuit_draft_goes_on(draft); i++)
    understand_link(draft, i);
  if (oc_circuit_draft_goes_on(draft))
    understand_tests(draft);
  understand_balances(draft);
  bool has_symptom = false;
  for (size_t i = 0; i < circuit->test_count; i++)
    has_symptom |= circuit->tests[i].role == OC_ROLE_SYMPTOM;
  if (oc_circuit_draft_goes_on(draft) && !has_symptom)
    oc_circuit_draft_fail(draft, OHM_BAD_DEFINITION, 0, 0,
                          "no test that can be used has the role symptom", NULL, 0,
                          "; a circuit needs one that says whether the fan starts by itself");
}
