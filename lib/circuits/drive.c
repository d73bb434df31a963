/* SPDX-License-Identifier: MIT */
#include "drive.h"

#include <string.h>

enum { TURNS = 40, MOTORS_MAX = OC_NETWORK_PORTS - OC_SETUP_ACROSS };

/* Below it is what nodes leak. */
static const double NOTHING_A = 1e-7;

/* ---- one thing ---- */

/* What stands still while currents are found: which relays are in, which fuses have blown, and the
 * ohms that all things have then, INFINITY where they are open. */
struct moment {
  const struct oc_wiring *wiring;
  const struct oc_setup *setup;
  struct oc_failures failures;
  unsigned asked;
  unsigned pulled;
  oc_set blown;
  double ohm[OC_WIRING_THINGS];
};

/* The failure of a thing in that mode; NULL when it has none. */
static const struct oc_failure *fails(const struct moment *moment, size_t at,
                                      enum oc_failure_mode mode) {
  for (size_t i = 0; i < moment->failures.count; i++) {
    const struct oc_failure *failure = &moment->failures.failure[i];
    if (failure->thing == at && failure->mode == mode)
      return failure;
  }
  return NULL;
}

static unsigned asked_of(const struct moment *moment) {
  unsigned asked = moment->setup->asked;
  for (size_t i = 0; i < moment->failures.count; i++)
    if (moment->failures.failure[i].mode == OC_FAILURE_ASKS)
      asked |= moment->failures.failure[i].ways;
  for (size_t i = 0; i < moment->failures.count; i++)
    if (moment->failures.failure[i].mode == OC_FAILURE_SILENT)
      asked &= ~moment->failures.failure[i].ways;
  return asked;
}

/* Were it sound. */
static bool closes(const struct moment *moment, const struct oc_thing *thing) {
  switch (thing->kind) {
  case OC_THING_CONTACT:
    return moment->pulled >> thing->of & 1;
  case OC_THING_REST:
    return !(moment->pulled >> thing->of & 1);
  case OC_THING_OUTPUT:
  case OC_THING_SWITCH:
    return (thing->asked & moment->asked) != 0 ||
           (thing->opens != 0 && (thing->opens & moment->asked) == 0);
  case OC_THING_CHAFE:
    return false;
  default:
    return true;
  }
}

static double sound_ohm(const struct oc_thing *thing) {
  switch (thing->kind) {
  case OC_THING_BATTERY:
    return OC_SOUND_BATTERY_OHM;
  case OC_THING_FUSE:
    return OC_SOUND_FUSE_OHM;
  case OC_THING_CONTACT:
  case OC_THING_REST:
  case OC_THING_SWITCH:
    return OC_SOUND_CONTACT_OHM;
  case OC_THING_OUTPUT:
    return OC_SOUND_OUTPUT_OHM;
  case OC_THING_COIL:
  case OC_THING_RESISTOR:
    return thing->value;
  case OC_THING_CHAFE:
    return 0;
  default:
    return OC_SOUND_CONDUCTOR_OHM;
  }
}

static void fail_one(struct moment *moment, const struct oc_failure *failure) {
  double *ohm = &moment->ohm[failure->thing];
  double sound = sound_ohm(&moment->wiring->things[failure->thing]);
  if (failure->mode == OC_FAILURE_RESISTS)
    *ohm += failure->size;
  else if (failure->mode == OC_FAILURE_NEVER)
    *ohm = INFINITY;
  else if (failure->mode == OC_FAILURE_CLOSED)
    *ohm = sound;
  else if (failure->mode == OC_FAILURE_RUBS)
    *ohm = failure->size;
}

static bool is_spare(const struct moment *moment, size_t at) {
  return (moment->setup->spare & oc_set_of(at)) != 0;
}

static void find_ohms(struct moment *moment) {
  for (size_t i = 0; i < moment->wiring->thing_count; i++) {
    const struct oc_thing *thing = &moment->wiring->things[i];
    moment->ohm[i] = closes(moment, thing) ? sound_ohm(thing) : INFINITY;
  }
  for (size_t i = 0; i < moment->failures.count; i++)
    if (!is_spare(moment, moment->failures.failure[i].thing))
      fail_one(moment, &moment->failures.failure[i]);
  for (size_t i = 0; i < moment->wiring->thing_count; i++)
    if (((moment->setup->unplugged | moment->blown) & oc_set_of(i)) != 0 ||
        (moment->wiring->things[i].key && !moment->setup->key))
      moment->ohm[i] = INFINITY;
}

/* ---- the net of one moment ---- */

static double chain_ohm(const struct oc_drive *drive, const struct moment *moment,
                        const struct oc_chain *chain) {
  double ohm = 0;
  for (size_t i = 0; i < chain->count; i++)
    ohm += moment->ohm[drive->chains.thing[chain->first + i]];
  return ohm;
}

static void join_all(struct oc_drive *drive, const struct moment *moment) {
  struct oc_network *network = &drive->network;
  const struct oc_wiring *wiring = moment->wiring;
  const size_t *node_of = drive->node_of;
  for (size_t i = 0; i < drive->chains.count; i++) {
    const struct oc_chain *chain = &drive->chains.chain[i];
    if (chain->from != chain->to)
      oc_network_join(network, node_of[chain->from], node_of[chain->to],
                      chain_ohm(drive, moment, chain));
  }
  for (size_t i = 0; i < wiring->thing_count; i++) {
    const struct oc_thing *thing = &wiring->things[i];
    if (thing->kind != OC_THING_BATTERY)
      continue;
    const struct oc_failure *flat = fails(moment, i, OC_FAILURE_FLAT);
    oc_network_source(network, node_of[thing->from], node_of[thing->to],
                      thing->value - (flat ? flat->size : 0), moment->ohm[i]);
  }
  for (size_t i = 0; i < moment->setup->across_count; i++) {
    const struct oc_across *across = &moment->setup->across[i];
    if (across->watt == 0)
      oc_network_source(network, node_of[across->plus], node_of[across->minus], across->volts,
                        across->ohm);
  }
}

/* What is no resistance, at a port each. */
struct loads {
  size_t count;
  struct oc_port port[OC_NETWORK_PORTS];
  struct oc_device device[OC_NETWORK_PORTS];
  double ampere[OC_NETWORK_PORTS];
  size_t motor_count;
  size_t motor_at[MOTORS_MAX];
  struct oc_motor motor[MOTORS_MAX];
};

static void add_load(struct loads *loads, const struct oc_drive *drive, size_t plus, size_t minus,
                     struct oc_device device) {
  loads->port[loads->count] = (struct oc_port){drive->node_of[plus], drive->node_of[minus]};
  loads->device[loads->count++] = device;
}

static struct oc_motor motor_of(const struct moment *moment, size_t at) {
  struct oc_motor motor = oc_motor_of(moment->wiring->things[at].value);
  const struct oc_failure *brushes = fails(moment, at, OC_FAILURE_RESISTS);
  motor.winding_ohm += brushes ? brushes->size : 0;
  for (size_t i = 0; i < moment->failures.count; i++) {
    const struct oc_failure *failure = &moment->failures.failure[i];
    bool is_its_blade = moment->wiring->things[failure->thing].kind == OC_THING_BLADE &&
                        moment->wiring->things[failure->thing].of == at;
    if (failure->mode == OC_FAILURE_DRAGS && (failure->thing == at || is_its_blade))
      motor.drag_a += failure->size;
  }
  return motor;
}

static void take_loads(struct loads *loads, const struct oc_drive *drive,
                       const struct moment *moment) {
  const struct oc_wiring *wiring = moment->wiring;
  loads->count = loads->motor_count = 0;
  for (size_t i = 0; i < wiring->thing_count && loads->motor_count < MOTORS_MAX; i++) {
    if (wiring->things[i].kind != OC_THING_MOTOR || moment->ohm[i] == INFINITY)
      continue;
    struct oc_motor *motor = &loads->motor[loads->motor_count];
    *motor = motor_of(moment, i);
    loads->motor_at[loads->motor_count++] = i;
    add_load(loads, drive, wiring->things[i].from, wiring->things[i].to,
             (struct oc_device){oc_motor_amperes, motor});
  }
  for (size_t i = 0; i < moment->setup->across_count; i++) {
    const struct oc_across *across = &moment->setup->across[i];
    if (across->watt > 0)
      add_load(loads, drive, across->plus, across->minus,
               (struct oc_device){oc_bulb_amperes, &across->watt});
  }
}

/* Of the things of a chain: what is between two that are open hangs free.  Return  amperes */
static double tell_inside(const struct oc_drive *drive, const struct moment *moment,
                          const struct oc_chain *chain, double *volts) {
  double ohm = chain_ohm(drive, moment, chain);
  double ampere = ohm < INFINITY ? (volts[chain->from] - volts[chain->to]) / ohm : 0;
  size_t point = chain->from;
  double here = volts[chain->from];
  for (size_t i = 0; i + 1 < chain->count; i++) {
    size_t thing = drive->chains.thing[chain->first + i];
    double its_ohm = moment->ohm[thing];
    point = oc_chain_beyond(&moment->wiring->things[thing], point);
    here = its_ohm < INFINITY ? here - ampere * its_ohm : 0;
    volts[point] = here;
  }
  point = chain->to;
  here = volts[chain->to];
  for (size_t i = chain->count; i-- > 1 && ohm == INFINITY;) {
    size_t thing = drive->chains.thing[chain->first + i];
    if (moment->ohm[thing] == INFINITY)
      break;
    point = oc_chain_beyond(&moment->wiring->things[thing], point);
    volts[point] = here;
  }
  return ampere;
}

static void tell_chains(const struct oc_drive *drive, const struct moment *moment,
                        const double *node_volts, struct oc_drive_result *result) {
  for (size_t i = 0; i < moment->wiring->point_count; i++)
    result->volts[i] = drive->chains.meets[i] ? node_volts[drive->node_of[i]] : 0;
  for (size_t i = 0; i < drive->chains.count; i++) {
    const struct oc_chain *chain = &drive->chains.chain[i];
    if (chain->from == chain->to)
      continue;
    result->chain_a[i] = tell_inside(drive, moment, chain, result->volts);
    result->carried |= fabs(result->chain_a[i]) > NOTHING_A ? oc_set_of(i) : 0;
  }
}

static void feed(struct oc_drive_result *result, size_t a, size_t b, bool *more) {
  if (result->fed[a] == result->fed[b])
    return;
  result->fed[a] = result->fed[b] = true;
  *more = true;
}

/* From the posts through whatever is not open. */
static void find_fed(const struct oc_drive *drive, const struct moment *moment,
                     struct oc_drive_result *result) {
  const struct oc_wiring *wiring = moment->wiring;
  result->fed[OC_POINT_MINUS] = result->fed[OC_POINT_PLUS] = true;
  for (bool more = true; more;) {
    more = false;
    for (size_t i = 0; i < wiring->thing_count; i++)
      if (moment->ohm[i] < INFINITY)
        feed(result, wiring->things[i].from, wiring->things[i].to, &more);
    for (size_t i = 0; i < drive->setup->across_count; i++)
      feed(result, drive->setup->across[i].plus, drive->setup->across[i].minus, &more);
  }
}

static bool solve(struct oc_drive *drive, const struct moment *moment, struct loads *loads,
                  struct oc_drive_result *result) {
  double at_port[OC_NETWORK_PORTS];
  double node_volts[OC_NETWORK_NODES];
  double slope_s;
  oc_network_begin(&drive->network, drive->network.nodes);
  join_all(drive, moment);
  take_loads(loads, drive, moment);
  if (!oc_network_solve(&drive->network))
    return false;
  oc_network_look(&drive->network, loads->port, loads->count, &drive->seen);
  if (!oc_ports_settle(&drive->seen, loads->device, at_port))
    return false;
  for (size_t i = 0; i < loads->count; i++)
    loads->ampere[i] = loads->device[i].load(loads->device[i].context, at_port[i], &slope_s);
  oc_network_load(&drive->network, loads->port, loads->ampere, loads->count, node_volts);
  tell_chains(drive, moment, node_volts, result);
  return true;
}

/* ---- from moment to moment ---- */

static double across(const struct oc_thing *thing, const double *volts) {
  return volts[thing->from] - volts[thing->to];
}

static unsigned pulled_by(const struct moment *moment, const double *volts) {
  unsigned pulled = 0;
  for (size_t i = 0; i < moment->wiring->thing_count; i++) {
    const struct oc_thing *thing = &moment->wiring->things[i];
    if (thing->kind != OC_THING_COIL)
      continue;
    unsigned relay = 1u << thing->of;
    double ohm = moment->ohm[i];
    /* What a coil does not have, ohms before it take. */
    double coil_v = fabs(across(thing, volts)) * thing->value / ohm;
    if (coil_v >= (moment->pulled & relay ? OC_RELAY_LETS_GO_V : OC_RELAY_PULLS_IN_V))
      pulled |= relay;
  }
  return pulled;
}

/* The fuse that is most over what it stands; OC_WIRING_THINGS when all hold. */
static size_t overloaded(const struct moment *moment, const double *volts) {
  size_t worst = OC_WIRING_THINGS;
  double most = OC_FUSE_BLOWS_AT;
  for (size_t i = 0; i < moment->wiring->thing_count; i++) {
    const struct oc_thing *thing = &moment->wiring->things[i];
    if (thing->kind != OC_THING_FUSE)
      continue;
    double load = fabs(across(thing, volts)) / moment->ohm[i] / thing->value;
    if (load > most) {
      most = load;
      worst = i;
    }
  }
  return worst;
}

static void tell(struct oc_drive_result *result, const struct moment *moment,
                 const struct loads *loads) {
  const struct oc_setup *setup = moment->setup;
  result->pulled = moment->pulled;
  result->blown = moment->blown;
  for (size_t i = 0; i < loads->motor_count; i++) {
    size_t at = loads->motor_at[i];
    result->motor_a[at] = loads->ampere[i];
    result->motor_speed[at] =
        oc_motor_speed(&loads->motor[i], across(&moment->wiring->things[at], result->volts));
  }
  size_t bulb = loads->motor_count;
  for (size_t i = 0; i < setup->across_count; i++) {
    const struct oc_across *one = &setup->across[i];
    double volts = result->volts[one->plus] - result->volts[one->minus];
    result->across_a[i] = one->watt > 0 ? loads->ampere[bulb++] : (volts - one->volts) / one->ohm;
  }
}

void oc_drive_begin(struct oc_drive *drive, const struct oc_wiring *wiring,
                    const struct oc_setup *setup) {
  bool meets[OC_WIRING_POINTS] = {false};
  size_t nodes = 0;
  for (size_t i = 0; i < setup->across_count; i++)
    meets[setup->across[i].plus] = meets[setup->across[i].minus] = true;
  drive->wiring = wiring;
  drive->setup = setup;
  oc_chains_find(&drive->chains, wiring, meets);
  for (size_t i = 0; i < wiring->point_count; i++)
    drive->node_of[i] = drive->chains.meets[i] ? nodes++ : 0;
  oc_network_begin(&drive->network, nodes);
}

/* A fuse takes longer to blow than a relay to move. */
bool oc_drive_run(struct oc_drive *drive, struct oc_failures failures,
                  struct oc_drive_result *result) {
  struct moment moment = {.wiring = drive->wiring, .setup = drive->setup, .failures = failures};
  struct loads loads;
  memset(result, 0, sizeof *result);
  moment.asked = asked_of(&moment);
  moment.blown = failures.blown & ~drive->setup->spare;
  for (int turn = 0; turn < TURNS && !result->steady; turn++) {
    find_ohms(&moment);
    if (!solve(drive, &moment, &loads, result))
      return false;
    unsigned pulled = pulled_by(&moment, result->volts);
    size_t fuse = overloaded(&moment, result->volts);
    result->steady = pulled == moment.pulled && fuse == OC_WIRING_THINGS;
    if (pulled != moment.pulled)
      moment.pulled = pulled;
    else if (fuse != OC_WIRING_THINGS)
      moment.blown |= oc_set_of(fuse);
  }
  tell(result, &moment, &loads);
  find_fed(drive, &moment, result);
  return true;
}

bool oc_drive_sound(struct oc_drive *drive, const struct oc_wiring *wiring,
                    const struct oc_setup *setup, struct oc_drive_result *result) {
  oc_drive_begin(drive, wiring, setup);
  return oc_drive_run(drive, (struct oc_failures){0, NULL, 0}, result);
}
