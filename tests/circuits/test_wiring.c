/* SPDX-License-Identifier: MIT */
/* The circuits built in against their wiring, which is drawn here once more by hand: a lamp,
 * a bulb or a fan works when its two ends reach the battery's posts. Opening one link after
 * the other tells which links a test depends on; its row must clear no other, and accuse
 * just these. */
#include "../../lib/circuits/circuit.h"

#include "../support.h"

#include <stdio.h>
#include <string.h>

/* wires   LINK from to, ...; a contact that is open at rest is put in by a bridge
 * loads   TEST from to [+from=to bridged] [-LINK taken out] [!LINK has to work itself] */
struct drawing {
  const char *circuit;
  const char *wires;
  const char *loads;
};

#define ONE_FAN(n)                                                                                 \
  "fuse" n " rail out" n ", feed" n " out" n " c30" n ", wire" n " c87" n " plus" n ", motor" n    \
  " plus" n " minus" n ", ground" n " minus" n " point"
#define ONE_FAN_LOADS(n)                                                                           \
  "rail-bulb" n " rail neg, fuse-bulb" n " out" n " neg, feed-bulb" n " c30" n " neg, lamp-30" n   \
  " c30" n " neg, plus-bulb" n " plus" n " neg +c30" n "=c87" n " -motor" n ", minus-bulb" n       \
  " pos minus" n " -motor" n ", lit" n " plus" n " minus" n " +c30" n "=c87" n " -motor" n         \
  ", jump" n " plus" n " minus" n " +c30" n "=c87" n " -motor" n " !motor" n

static const struct drawing drawings[] = {
    {"module-relays",
     "battery src pos, rail pos rail, ground-point point neg, " ONE_FAN("-1") ", " ONE_FAN("-2"),
     "point-bulb pos point, " ONE_FAN_LOADS("-1") ", " ONE_FAN_LOADS("-2")},
    {"radiator-switch", "battery src pos, rail pos rail, ground-point point neg, " ONE_FAN(""),
     "point-bulb pos point, " ONE_FAN_LOADS("")},
    {"switch-direct",
     "battery src pos, rail pos rail, ground-point point neg, fuse rail out, feed out in, wire "
     "switched plus, motor plus minus, ground minus point",
     "point-bulb pos point, rail-bulb rail neg, fuse-bulb out neg, feed-bulb in neg, lamp-feed in "
     "neg, plus-bulb plus neg +in=switched -motor, minus-bulb pos minus -motor, lit plus minus "
     "+in=switched -motor, bridge plus minus +in=switched !motor"},
    {"pulse-width",
     "battery src pos, rail pos rail, fuse rail out, feed out plus, ground minus point, "
     "ground-point point neg",
     "rail-bulb rail neg, fuse-bulb out neg, plus-bulb plus neg, minus-bulb pos minus, point-bulb "
     "pos point, lit plus minus, supply-lamp plus neg, ground-lamp pos minus"},
    {"dropping-resistor",
     "battery src pos, rail pos rail, fuse rail out, feed out c30, resistor low mid, wire mid "
     "plus, "
     "motor plus minus, ground minus point, ground-point point neg",
     "rail-bulb rail neg, fuse-bulb out neg, feed-bulb c30 neg, lamp-30 c30 neg, plus-bulb plus "
     "neg "
     "+c30=mid -motor, minus-bulb pos minus -motor, point-bulb pos point, lit plus minus +c30=mid "
     "-motor, lit-low plus minus +c30=low -motor, jump-high plus minus +c30=mid -motor !motor, "
     "jump-low plus minus +c30=low -motor !motor"},
    {"series-parallel",
     "battery src pos, rail pos rail, fuse-1 rail out1, feed-1 out1 r1in, wire-1 r1out plus1, "
     "motor-1 plus1 minus1, link-wire minus1 r2in, rest r2in join, wire-2 join plus2, motor-2 "
     "plus2 "
     "minus2, ground-2 minus2 point, ground-1 r2out point, ground-point point neg, fuse-2 rail "
     "out2, feed-2 out2 r3in",
     "rail-bulb-1 rail neg, fuse-bulb-1 out1 neg, feed-bulb-1 r1in neg, lamp-30-1 r1in neg, "
     "plus-bulb-1 plus1 neg +r1in=r1out -motor-1, minus-bulb-1 pos r2out -rest, rail-bulb-2 rail "
     "neg, fuse-bulb-2 out2 neg, feed-bulb-2 r3in neg, lamp-30-3 r3in neg, plus-bulb-2 plus2 neg "
     "+r3in=join -motor-2 -rest, minus-bulb-2 pos minus2 -motor-2, point-bulb pos point, link-bulb "
     "r2in neg +r1in=r1out +plus1=minus1 -motor-1 -rest, lit-1 plus1 minus1 +r1in=r1out "
     "+r2in=r2out "
     "-motor-1 -rest, lit-2 plus2 minus2 +r3in=join -motor-2 -rest, jump-low plus1 minus1 "
     "+r1in=r1out -motor-1 !motor-1, jump-high-1 plus1 minus1 +r1in=r1out +r2in=r2out -motor-1 "
     "-rest !motor-1, jump-high-2 plus2 minus2 +r3in=join -motor-2 -rest !motor-2, bridged-1 plus2 "
     "minus2 +r1in=r1out +plus1=minus1 -motor-1 -motor-2 !motor-2, bridged-2 plus1 minus1 "
     "+r1in=r1out +plus2=minus2 -motor-2 -motor-1 !motor-1, lit-low-1 plus1 minus1 +r1in=r1out "
     "+plus2=minus2 -motor-1 -motor-2, lit-low-2 plus2 minus2 +r1in=r1out +plus1=minus1 -motor-1 "
     "-motor-2"},
};

enum { NODES_MAX = 40, WIRES_MAX = 64, NAME_SIZE = 32 };

struct wire {
  char link[NAME_SIZE];
  size_t from;
  size_t to;
};

static char nodes[NODES_MAX][NAME_SIZE];
static size_t node_count;
static struct wire wires[WIRES_MAX];
static size_t wire_count;

static size_t node(const char *name) {
  for (size_t i = 0; i < node_count; i++)
    if (strcmp(nodes[i], name) == 0)
      return i;
  ck_assert_uint_lt(node_count, NODES_MAX);
  strcpy(nodes[node_count], name);
  return node_count++;
}

/* The next of the texts apart by commas; NULL past the last. */
static const char *piece(const char *text, char *copy, size_t size) {
  text += strspn(text, ", ");
  size_t length = strcspn(text, ",");
  ck_assert_uint_lt(length, size);
  memcpy(copy, text, length);
  copy[length] = '\0';
  return length > 0 ? text + length : NULL;
}

static void draw(const struct drawing *drawing) {
  char copy[160];
  node_count = wire_count = 0;
  for (const char *at = drawing->wires; (at = piece(at, copy, sizeof copy));) {
    char from[NAME_SIZE];
    char to[NAME_SIZE];
    ck_assert_int_eq(sscanf(copy, "%31s %31s %31s", wires[wire_count].link, from, to), 3);
    wires[wire_count].from = node(from);
    wires[wire_count++].to = node(to);
  }
}

/* Nodes that reach each other have the smallest of their numbers. */
static void join(size_t *group, size_t one, size_t other) {
  size_t kept = group[one] < group[other] ? group[one] : group[other];
  size_t gone = group[one] < group[other] ? group[other] : group[one];
  for (size_t i = 0; i < node_count; i++)
    if (group[i] == gone)
      group[i] = kept;
}

/* Whether the load works with one link open. The words after its ends change the wiring. */
static bool works(const char *words, const char *open) {
  char from[NAME_SIZE];
  char to[NAME_SIZE];
  char word[NAME_SIZE];
  size_t group[NODES_MAX];
  bool taken[WIRES_MAX] = {false};
  bool sound = true;
  int used;
  ck_assert_int_eq(sscanf(words, "%*s %31s %31s%n", from, to, &used), 2);
  size_t ends[] = {node("src"), node("neg"), node(from), node(to)};
  for (size_t i = 0; i < node_count; i++)
    group[i] = i;
  for (words += used; sscanf(words, "%31s%n", word, &used) == 1; words += used) {
    char *sign = strchr(word, '=');
    if (word[0] == '+') {
      *sign = '\0';
      join(group, node(word + 1), node(sign + 1));
    }
    for (size_t i = 0; i < wire_count; i++)
      if (word[0] == '-' && strcmp(wires[i].link, word + 1) == 0)
        taken[i] = true;
    if (word[0] == '!' && strcmp(word + 1, open) == 0)
      sound = false;
  }
  for (size_t i = 0; i < wire_count; i++)
    if (!taken[i] && strcmp(wires[i].link, open) != 0)
      join(group, wires[i].from, wires[i].to);
  return sound && group[ends[0]] == group[ends[2]] && group[ends[1]] == group[ends[3]];
}

static void check_test(const ohm_circuit *circuit, const char *words) {
  char name[NAME_SIZE];
  ck_assert_int_eq(sscanf(words, "%31s", name), 1);
  size_t index = oc_circuit_test(circuit, name, strlen(name));
  ck_assert_msg(index != OC_NO_PLACE, "%s has no %s", ohm_circuit_name(circuit), name);
  const struct oc_test *test = &circuit->tests[index];
  ck_assert_msg(works(words, ""), "%s: %s does not work when all is sound",
                ohm_circuit_name(circuit), name);
  for (size_t i = 0; i < wire_count; i++) {
    const char *link = wires[i].link;
    oc_set place = oc_set_of(oc_circuit_link(circuit, link, strlen(link)));
    bool shows = !works(words, link);
    ck_assert_msg(shows || !(test->clears & place), "%s: %s clears %s, which it does not need",
                  ohm_circuit_name(circuit), name, link);
    ck_assert_msg(shows == ((test->accuses & place) != 0), "%s: %s %s %s",
                  ohm_circuit_name(circuit), name, shows ? "does not accuse" : "accuses", link);
  }
}

START_TEST(every_test_of_the_power_side_depends_on_what_its_row_says)
{
  const struct drawing *drawing = &drawings[_i];
  ohm_circuit *circuit = ohm_circuit_built_in_load(drawing->circuit, NULL);
  char copy[160];
  ck_assert_ptr_nonnull(circuit);
  draw(drawing);
  for (const char *at = drawing->loads; (at = piece(at, copy, sizeof copy));)
    check_test(circuit, copy);
  ohm_circuit_free(circuit);
}
END_TEST

int main(void) {
  return RUN_TESTS_FOR_EACH("wiring", sizeof drawings / sizeof drawings[0],
                            every_test_of_the_power_side_depends_on_what_its_row_says);
}
