/* SPDX-License-Identifier: MIT */
#include "car.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "draw.h"

/* ---- names ---- */

/* A name and what follows it; those of a file are short. */
static void join_names(char *to, const char *name, const char *end) {
  size_t length = strlen(name);
  size_t more = strlen(end);
  if (length + more >= CAR_NAME)
    abort();
  memcpy(to, name, length);
  memcpy(to + length, end, more + 1);
}

static void copy(char *to, const char *from) {
  join_names(to, from, "");
}

int car_node(struct car *car, const char *name) {
  for (int i = 0; i < car->node_count; i++)
    if (strcmp(car->nodes[i], name) == 0)
      return i;
  if (car->node_count == CAR_NODES)
    abort();
  copy(car->nodes[car->node_count], name);
  return car->node_count++;
}

struct car_part *car_find(struct car *car, const char *name) {
  for (int i = 0; i < car->part_count; i++)
    if (strcmp(car->parts[i].name, name) == 0)
      return &car->parts[i];
  return NULL;
}

/* ---- what is drawn ---- */

static double between(struct car *car, double low, double high) {
  return draw_between(&car->draws, low, high);
}

/* By factors, as ohms scatter. */
static double about(struct car *car, double value, double factor) {
  return value * exp(between(car, -1, 1) * log(factor));
}

static struct car_part *add(struct car *car, const char *name, const char *end, enum car_kind kind,
                            int from, int to, double ohm) {
  if (car->part_count == CAR_PARTS)
    abort();
  struct car_part *part = &car->parts[car->part_count++];
  memset(part, 0, sizeof *part);
  join_names(part->name, name, end);
  copy(part->owner, name);
  part->kind = kind;
  part->from = from;
  part->to = to;
  part->ohm = about(car, ohm, 2);
  return part;
}

static int behind(struct car *car, const char *name, const char *end) {
  char terminal[CAR_NAME];
  char node[CAR_NAME];
  join_names(terminal, name, end);
  join_names(node, terminal, "'");
  return car_node(car, node);
}

/* ---- rows ---- */

enum { COLUMNS = 6, CELL = 64 };

static const char *take_cells(const char *line, char cells[COLUMNS][CELL]) {
  memset(cells, 0, COLUMNS * CELL);
  for (int i = 0;; i++) {
    size_t length = strcspn(line, ",\n");
    if (i < COLUMNS)
      snprintf(cells[i], CELL, "%.*s", (int)length, line);
    line += length;
    if (*line != ',')
      break;
    line++;
  }
  return *line ? line + 1 : line;
}

static unsigned way_of(const char *word) {
  static const char *const words[] = {"hot", "high", "ac", "unplugged", "commanded"};
  for (int i = 0; i < 5; i++)
    if (strncmp(word, words[i], strlen(words[i])) == 0)
      return 1u << i;
  return 0;
}

static void take_ways(struct car *car, struct car_part *part, char *cell) {
  for (char *word = strtok(cell, " "); word; word = strtok(NULL, " ")) {
    unsigned way = way_of(word);
    part->closes |= way;
    if (strcmp(word, "cold") == 0)
      part->opens |= CAR_HOT | CAR_HIGH;
    if (strchr(word, '?'))
      car->unsure_ways |= way;
  }
}

/* Its two pins, and what is between them. */
static struct car_part *add_plugged(struct car *car, const char *name, enum car_kind kind, int from,
                                    int to, double ohm) {
  int plus = behind(car, name, ".1");
  int minus = behind(car, name, ".2");
  add(car, name, ".1", CAR_JOINS, from, plus, 0.002);
  add(car, name, ".2", CAR_JOINS, to, minus, 0.002);
  return add(car, name, "", kind, plus, minus, ohm);
}

static void add_relay(struct car *car, const char *name, double coil_ohm) {
  static const char *const ends[] = {".30", ".87", ".87a", ".85", ".86"};
  int inner[5];
  for (int i = 0; i < 5; i++) {
    char outer[CAR_NAME];
    int at = -1;
    join_names(outer, name, ends[i]);
    for (int k = 0; k < car->node_count; k++)
      if (strcmp(car->nodes[k], outer) == 0)
        at = k;
    inner[i] = at < 0 ? -1 : behind(car, name, ends[i]);
    if (at >= 0)
      add(car, name, ends[i], CAR_JOINS, at, inner[i], 0.002);
  }
  if (inner[0] >= 0 && inner[1] >= 0)
    add(car, name, ".contact", CAR_MAKES, inner[0], inner[1], 0.01);
  if (inner[0] >= 0 && inner[2] >= 0)
    add(car, name, ".rest", CAR_RESTS, inner[0], inner[2], 0.01);
  if (inner[3] >= 0 && inner[4] >= 0)
    add(car, name, ".coil", CAR_COIL, inner[3], inner[4], 1)->ohm =
        coil_ohm * between(car, 0.85, 1.15);
}

static void add_asker(struct car *car, const char *name, const char *end, unsigned needs) {
  add(car, name, end, CAR_ASKER, 0, 0, 1)->closes = needs;
}

static void add_motor(struct car *car, const char *name, int from, int to, double ampere) {
  struct car_part *motor = add_plugged(car, name, CAR_MOTOR, from, to, 1);
  /* Fans of one car are of one kind. */
  motor->value = ampere * car->fan_size * between(car, 0.9, 1.1);
  motor->ohm = 12 / (car->stall_ratio * motor->value);
  add(car, name, ".blade", CAR_BLADE, 0, 0, 1);
}

static void take_row(struct car *car, char cells[COLUMNS][CELL]) {
  const char *name = cells[0];
  const char *kind = cells[1];
  double value = atof(cells[4]);
  if (strcmp(kind, "sensor") == 0) {
    add_asker(car, name, "", CAR_HOT | CAR_HIGH);
    add_asker(car, name, ".plug", CAR_HOT | CAR_HIGH);
    add_asker(car, name, ".wires", CAR_HOT | CAR_HIGH);
    add_asker(car, name, ".reading", CAR_HOT | CAR_HIGH | CAR_UNPLUGGED);
    return;
  }
  if (strcmp(kind, "relay") == 0)
    return;
  int from = car_node(car, cells[2]);
  int to = car_node(car, cells[3]);
  if (strcmp(kind, "battery") == 0) {
    add(car, name, "", CAR_BATTERY, from, to, 0.015);
  } else if (strcmp(kind, "fuse") == 0) {
    int inner = behind(car, name, ".clips");
    add(car, name, ".clips", CAR_JOINS, from, inner, 0.002);
    struct car_part *fuse = add(car, name, "", CAR_FUSE, inner, to, 0.003);
    fuse->value = value;
    fuse->key = strcmp(cells[5], "key") == 0;
  } else if (strcmp(kind, "output") == 0) {
    take_ways(car, add(car, name, "", CAR_OUTPUT, from, to, 1), cells[5]);
  } else if (strcmp(kind, "switch") == 0) {
    take_ways(car, add_plugged(car, name, CAR_SWITCH, from, to, 0.01), cells[5]);
  } else if (strcmp(kind, "resistor") == 0) {
    add(car, name, "", CAR_RESISTOR, from, to, 1)->ohm = value * between(car, 0.9, 1.1);
  } else if (strcmp(kind, "motor") == 0) {
    add_motor(car, name, from, to, value);
  } else {
    add(car, name, "", CAR_JOINS, from, to, 0.002);
    if (cells[5][0])
      add(car, name, ".chafe", CAR_RUB, to, car_node(car, cells[5]), 1);
  }
}

void car_build(struct car *car, const char *text, uint64_t seed) {
  char cells[COLUMNS][CELL];
  memset(car, 0, sizeof *car);
  car->draws = seed;
  car->rest_v = between(car, 12.2, 12.8);
  car->running_v = between(car, 13.5, 14.4);
  car->pulls_in_v = between(car, 5.5, 8);
  car->lets_go_v = between(car, 1.5, 3.5);
  car->fan_power = between(car, 1.8, 2.2);
  car->fan_size = exp(between(car, log(10 / 15.0), log(25 / 15.0)));
  car->stall_ratio = between(car, 4.5, 6.5);
  car->fuse_heat = between(car, 8, 20);
  car_node(car, "-");
  car_node(car, "+");
  for (int pass = 0; pass < 2; pass++)
    for (const char *line = text; *line;) {
      bool is_row = line[0] != '#' && strncmp(line, "link,", 5) != 0;
      const char *next = take_cells(line, cells);
      bool is_relay = is_row && strcmp(cells[1], "relay") == 0;
      if (is_row && pass == 0)
        take_row(car, cells);
      if (is_relay && pass == 1)
        add_relay(car, cells[0], cells[4][0] ? atof(cells[4]) : 90);
      line = next;
    }
  add_asker(car, "coolant", "", CAR_HOT | CAR_HIGH);
  add_asker(car, "thermostat", "", CAR_HOT | CAR_HIGH);
  add_asker(car, "pump", "", CAR_HOT | CAR_HIGH);
  car->ways = 31;
  for (unsigned way = 1; way < 32; way <<= 1)
    if (car->unsure_ways & way && draw_share(&car->draws) < 0.5)
      car->ways &= ~way;
}

void car_put_right(struct car *car) {
  for (int i = 0; i < car->part_count; i++) {
    car->parts[i].out = car->parts[i].spare = false;
    car->parts[i].speed = car->parts[i].heat = 0;
    car->parts[i].closed = false;
  }
  car->key = car->running = false;
  car->asked = 0;
  car->extra_count = 0;
}

int car_across(struct car *car, int plus, int minus, double ohm, double watt) {
  if (car->extra_count == CAR_EXTRAS)
    abort();
  car->extras[car->extra_count] =
      (struct car_extra){.plus = plus, .minus = minus, .ohm = ohm, .watt = watt, .kelvin = 300};
  return car->extra_count++;
}

/* ---- at one moment ---- */

static unsigned asked_now(const struct car *car) {
  unsigned asked = car->asked & car->ways;
  for (int i = 0; i < car->part_count; i++)
    if (car->parts[i].kind == CAR_ASKER && car->parts[i].silent)
      asked &= ~car->parts[i].closes;
  return asked;
}

/* Of a part as it is; negative: open. */
static double ohm_now(const struct car *car, const struct car_part *part, unsigned asked) {
  bool sound = part->spare;
  bool open = part->out || (part->key && !car->key) || (part->blown && !sound);
  switch (part->kind) {
  case CAR_MAKES:
    open |= !part->closed || (part->never && !sound);
    break;
  case CAR_RESTS:
    open |= part->closed || (part->never && !sound);
    break;
  case CAR_OUTPUT:
  case CAR_SWITCH:
    open |= !((part->closes & asked) || (part->opens && !(part->opens & asked))) || part->never;
    break;
  case CAR_RUB:
    return part->rub_ohm > 0 ? part->rub_ohm : -1;
  case CAR_BLADE:
  case CAR_ASKER:
    return -1;
  default:
    break;
  }
  double ohm = part->ohm + (sound ? 0 : part->more_ohm);
  return open || isinf(ohm) ? -1 : ohm;
}

static double bulb_ohm(const struct car_extra *bulb) {
  /* Tungsten at its working 2700 K has 144 V^2 over its watts, and goes with T^1.2. */
  return 144 / bulb->watt * pow(bulb->kelvin / 2700, 1.2);
}

struct net {
  int n;
  double g[CAR_NODES][CAR_NODES + 1];
};

static void join(struct net *net, int a, int b, double siemens, double ampere) {
  net->g[a][a] += siemens;
  net->g[b][b] += siemens;
  net->g[a][b] -= siemens;
  net->g[b][a] -= siemens;
  net->g[a][CAR_NODES] += ampere;
  net->g[b][CAR_NODES] -= ampere;
}

/* Gauss with the greatest pivot; node 0 is 0 V. */
static void eliminate(struct net *net, double *volt) {
  int n = net->n;
  for (int k = 1; k < n; k++) {
    int pivot = k;
    for (int i = k + 1; i < n; i++)
      if (fabs(net->g[i][k]) > fabs(net->g[pivot][k]))
        pivot = i;
    for (int j = 1; j <= CAR_NODES; j = j == n - 1 ? CAR_NODES : j + 1) {
      double kept = net->g[k][j];
      net->g[k][j] = net->g[pivot][j];
      net->g[pivot][j] = kept;
    }
    for (int i = k + 1; i < n; i++) {
      double share = net->g[i][k] / net->g[k][k];
      if (share == 0)
        continue;
      for (int j = k; j < n; j++)
        net->g[i][j] -= share * net->g[k][j];
      net->g[i][CAR_NODES] -= share * net->g[k][CAR_NODES];
    }
  }
  volt[0] = 0;
  for (int k = n - 1; k > 0; k--) {
    double sum = net->g[k][CAR_NODES];
    for (int j = k + 1; j < n; j++)
      sum -= net->g[k][j] * volt[j];
    volt[k] = sum / net->g[k][k];
  }
}

static double back_volt(const struct car *car, const struct car_part *motor) {
  return (12 - 12 / car->stall_ratio) * motor->speed;
}

static void solve(struct car *car, unsigned asked) {
  static struct net net;
  net.n = car->node_count;
  for (int i = 0; i < net.n; i++)
    memset(net.g[i], 0, sizeof net.g[i]);
  for (int i = 0; i < net.n; i++)
    net.g[i][i] = 1e-9;
  for (int i = 0; i < car->part_count; i++) {
    const struct car_part *part = &car->parts[i];
    double ohm = ohm_now(car, part, asked);
    double volt = part->kind == CAR_BATTERY
                      ? (car->running ? car->running_v : car->rest_v) - part->lacks_v
                  : part->kind == CAR_MOTOR ? back_volt(car, part)
                                            : 0;
    if (ohm >= 0)
      join(&net, part->from, part->to, 1 / ohm, volt / ohm);
  }
  for (int i = 0; i < car->extra_count; i++) {
    const struct car_extra *extra = &car->extras[i];
    join(&net, extra->plus, extra->minus, 1 / (extra->watt > 0 ? bulb_ohm(extra) : extra->ohm), 0);
  }
  eliminate(&net, car->volt);
}

/* ---- from moment to moment ---- */

static const double step_s = 0.01;
static const double spin_up_s = 0.5;

static double drag_of(struct car *car, const struct car_part *motor) {
  char blade[CAR_NAME];
  join_names(blade, motor->name, ".blade");
  const struct car_part *its = car_find(car, blade);
  return motor->drag_a + (its ? its->drag_a : 0);
}

/* Return  how much it changed */
static double turn(struct car *car, struct car_part *motor) {
  double drag_a = drag_of(car, motor);
  double left_a = motor->ampere - motor->value * pow(fabs(motor->speed), car->fan_power) *
                                      (motor->speed < 0 ? -1 : 1);
  double before = motor->speed;
  if (motor->speed == 0 && fabs(left_a) <= drag_a)
    return 0;
  left_a -= (motor->speed != 0 ? motor->speed : left_a) > 0 ? drag_a : -drag_a;
  motor->speed += step_s / spin_up_s * left_a / motor->value;
  if (before * motor->speed < 0 || isinf(drag_a))
    motor->speed = 0;
  return fabs(motor->speed - before);
}

static double melt(struct car *car, struct car_part *fuse) {
  double load = fuse->ampere / fuse->value;
  double rise = load * load - 1.8;
  fuse->heat = fmax(0, fuse->heat + step_s * rise);
  if (fuse->heat > car->fuse_heat && !fuse->blown) {
    fuse->blown = true;
    fuse->spare = false;
    return 1;
  }
  return rise > 0 && !fuse->blown ? 1 : 0;
}

static double move_relays(struct car *car) {
  double moved = 0;
  for (int i = 0; i < car->part_count; i++) {
    const struct car_part *coil = &car->parts[i];
    if (coil->kind != CAR_COIL)
      continue;
    double volt = fabs(coil->ampere) * coil->ohm;
    for (int k = 0; k < car->part_count; k++) {
      struct car_part *contact = &car->parts[k];
      if ((contact->kind != CAR_MAKES && contact->kind != CAR_RESTS) ||
          strcmp(contact->owner, coil->owner) != 0)
        continue;
      bool in = volt >= (contact->closed ? car->lets_go_v : car->pulls_in_v);
      moved += in != contact->closed;
      contact->closed = in;
    }
  }
  return moved;
}

static double glow(struct car_extra *bulb, double volt) {
  double watt = volt * volt / bulb_ohm(bulb);
  double wanted = fmax(300, 2700 * pow(watt / bulb->watt, 0.25));
  double before = bulb->kelvin;
  bulb->kelvin += 0.5 * (wanted - bulb->kelvin);
  return fabs(bulb->kelvin - before) / 300;
}

void car_run(struct car *car) {
  enum { STEPS_MAX = 1500, QUIET = 20 };
  unsigned asked = asked_now(car);
  int quiet = 0;
  for (int step = 0; step < STEPS_MAX && quiet < QUIET; step++) {
    double change = 0;
    solve(car, asked);
    for (int i = 0; i < car->part_count; i++) {
      struct car_part *part = &car->parts[i];
      double ohm = ohm_now(car, part, asked);
      double volt = car->volt[part->from] - car->volt[part->to];
      part->ampere = ohm < 0                   ? 0
                     : part->kind == CAR_MOTOR ? (volt - back_volt(car, part)) / ohm
                                               : volt / ohm;
      if (part->kind == CAR_MOTOR)
        change += turn(car, part);
      if (part->kind == CAR_FUSE)
        change += melt(car, part);
    }
    change += move_relays(car);
    for (int i = 0; i < car->extra_count; i++) {
      struct car_extra *extra = &car->extras[i];
      extra->volt = car->volt[extra->plus] - car->volt[extra->minus];
      if (extra->watt > 0)
        change += glow(extra, extra->volt);
    }
    quiet = change < 1e-4 ? quiet + 1 : 0;
  }
}
