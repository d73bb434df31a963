/* SPDX-License-Identifier: MIT */
#include "drive.h"

#include <string.h>

enum { TURNS = 40, MOTORS_MAX = OC_NETWORK_PORTS - OC_SETUP_ACROSS };

/* ---- one thing ---- */

/* What stands still while currents are found: which relays are in, which fuses have blown. */
struct moment {
  const struct oc_wiring *wiring;
  const struct oc_failure *failure;
  const struct oc_setup *setup;
  unsigned pulled;
  oc_set blown;
};

static bool fails(const struct moment *moment, size_t at, enum oc_failure_mode mode) {
  return moment->failure && moment->failure->thing == at && moment->failure->mode == mode;
}

static bool closes(const struct moment *moment, size_t at) {
  const struct oc_thing *thing = &moment->wiring->things[at];
  if (fails(moment, at, OC_FAILURE_CLOSED))
    return true;
  if (fails(moment, at, OC_FAILURE_NEVER))
    return false;
  switch (thing->kind) {
  case OC_THING_CONTACT:
    return moment->pulled >> thing->relay & 1;
  case OC_THING_REST:
    return !(moment->pulled >> thing->relay & 1);
  case OC_THING_OUTPUT:
  case OC_THING_SWITCH:
    return (thing->asked & moment->setup->asked) != 0;
  case OC_THING_CHAFE:
    return fails(moment, at, OC_FAILURE_RUBS);
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

/* INFINITY where it is open. */
static double ohm_of(const struct moment *moment, size_t at) {
  const struct oc_thing *thing = &moment->wiring->things[at];
  bool out = ((moment->setup->unplugged | moment->blown) & oc_set_of(at)) != 0 ||
             (thing->key && !moment->setup->key);
  if (out || !closes(moment, at))
    return INFINITY;
  bool more = fails(moment, at, OC_FAILURE_RESISTS) || fails(moment, at, OC_FAILURE_RUBS);
  return sound_ohm(thing) + (more ? moment->failure->size : 0);
}

/* ---- the net of one moment ---- */

static void join_all(struct oc_network *network, const struct moment *moment) {
  const struct oc_wiring *wiring = moment->wiring;
  oc_network_begin(network, wiring->point_count);
  for (size_t i = 0; i < wiring->thing_count; i++) {
    const struct oc_thing *thing = &wiring->things[i];
    if (thing->kind == OC_THING_BATTERY)
      oc_network_source(network, thing->from, thing->to, thing->value, ohm_of(moment, i));
    else if (thing->kind != OC_THING_MOTOR)
      oc_network_join(network, thing->from, thing->to, ohm_of(moment, i));
  }
  for (size_t i = 0; i < moment->setup->across_count; i++) {
    const struct oc_across *across = &moment->setup->across[i];
    if (across->watt == 0)
      oc_network_join(network, across->plus, across->minus, across->ohm);
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

static void add_load(struct loads *loads, size_t plus, size_t minus, oc_load load,
                     const void *context) {
  loads->port[loads->count] = (struct oc_port){plus, minus};
  loads->device[loads->count++] = (struct oc_device){load, context};
}

static struct oc_motor motor_of(const struct moment *moment, size_t at) {
  struct oc_motor motor = oc_motor_of(moment->wiring->things[at].value);
  if (fails(moment, at, OC_FAILURE_RESISTS))
    motor.winding_ohm += moment->failure->size;
  if (fails(moment, at, OC_FAILURE_DRAGS))
    motor.drag_a = moment->failure->size;
  return motor;
}

static void take_loads(struct loads *loads, const struct moment *moment) {
  const struct oc_wiring *wiring = moment->wiring;
  loads->count = loads->motor_count = 0;
  for (size_t i = 0; i < wiring->thing_count && loads->motor_count < MOTORS_MAX; i++) {
    if (wiring->things[i].kind != OC_THING_MOTOR || ohm_of(moment, i) == INFINITY)
      continue;
    struct oc_motor *motor = &loads->motor[loads->motor_count];
    *motor = motor_of(moment, i);
    loads->motor_at[loads->motor_count++] = i;
    add_load(loads, wiring->things[i].from, wiring->things[i].to, oc_motor_amperes, motor);
  }
  for (size_t i = 0; i < moment->setup->across_count; i++) {
    const struct oc_across *across = &moment->setup->across[i];
    if (across->watt > 0)
      add_load(loads, across->plus, across->minus, oc_bulb_amperes, &across->watt);
  }
}

static bool solve(struct oc_drive *drive, const struct moment *moment, struct loads *loads,
                  double *volts) {
  double at_port[OC_NETWORK_PORTS];
  double slope_s;
  join_all(&drive->network, moment);
  take_loads(loads, moment);
  if (!oc_network_solve(&drive->network))
    return false;
  oc_network_look(&drive->network, loads->port, loads->count, &drive->seen);
  if (!oc_ports_settle(&drive->seen, loads->device, at_port))
    return false;
  for (size_t i = 0; i < loads->count; i++)
    loads->ampere[i] = loads->device[i].load(loads->device[i].context, at_port[i], &slope_s);
  oc_network_load(&drive->network, loads->port, loads->ampere, loads->count, volts);
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
    unsigned relay = 1u << thing->relay;
    double ohm = ohm_of(moment, i);
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
    double load = fabs(across(thing, volts)) / ohm_of(moment, i) / thing->value;
    if (thing->kind == OC_THING_FUSE && load > most) {
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
    result->across_a[i] = one->watt > 0 ? loads->ampere[bulb++] : volts / one->ohm;
  }
}

/* A fuse takes longer to blow than a relay to move. */
bool oc_drive_run(struct oc_drive *drive, const struct oc_wiring *wiring,
                  const struct oc_failure *failure, const struct oc_setup *setup,
                  struct oc_drive_result *result) {
  struct moment moment = {.wiring = wiring, .failure = failure, .setup = setup};
  struct loads loads;
  memset(result, 0, sizeof *result);
  for (int turn = 0; turn < TURNS && !result->steady; turn++) {
    if (!solve(drive, &moment, &loads, result->volts))
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
  return true;
}
