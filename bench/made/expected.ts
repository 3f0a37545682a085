/**
 * Which causes count as right for a fault, and which faults a recording cannot show. Physics decides: where a fault changes the
 * pressure as another one does, both are right.
 */
import type { CauseId } from '../../src/diagnosis/finding.ts';

export const RIGHT: Readonly<Record<string, readonly CauseId[]>> = {
  sound: ['none'],
  leak: ['leak', 'vent_leak', 'gross_leak'],
  'cap-missing': ['gross_leak'],
  'hose-off': ['gross_leak', 'leak', 'vent_leak'],
  'canister-cracked': ['leak', 'vent_leak'],
  'purge-seeping': ['purge_leak', 'purge_stuck_open'],
  'purge-stuck-open': ['purge_stuck_open', 'purge_leak'],
  'purge-stuck-shut': ['purge_stuck_closed'],
  'purge-circuit-open': ['purge_stuck_closed'],
  'vent-not-sealing': ['vent_leak', 'leak'],
  'vent-circuit-open': ['vent_leak', 'gross_leak'],
  'vent-stuck-shut': ['vent_stuck_closed'],
  'vent-choked': ['vent_restricted', 'vent_stuck_closed'],
  'vapour-line-blocked': ['path_blocked'],
  'fill-limit-stuck-shut': ['path_blocked'],
  'fill-limit-stuck-open': ['fill_valve_stuck_open', 'none'],
  'rollover-stuck-shut': ['path_blocked', 'none'],
  'canister-flooded': ['canister_saturated', 'vent_restricted', 'none'],
  'canister-saturated': ['canister_saturated', 'none'],
  'canister-aged': ['none', 'canister_saturated'],
  'sensor-offset': ['sensor_bias'],
  'sensor-gain': ['sensor_gain', 'none'],
  'sensor-stuck': ['sensor_stuck'],
  'sensor-slow': ['none'],
  'sensor-noisy': ['sensor_noisy'],
  'pump-weak': ['pump_weak'],
  'pump-dead': ['pump_dead'],
  'orifice-dirty': ['orifice_dirty'],
  'changeover-sticks': ['changeover_stuck'],
  'changeover-leaks': ['changeover_leak'],
  'isolation-leaks': ['isolation_leak'],
  'isolation-stuck-shut': ['isolation_stuck_shut'],
  'isolation-stuck-open': ['isolation_leak'],
};

const STANDING = ['purge-stuck-shut', 'purge-circuit-open', 'purge-seeping', 'purge-stuck-open', 'sensor-gain'];
const BREATHING = ['leak', 'canister-cracked', 'vent-not-sealing', 'vent-circuit-open', 'purge-seeping', 'sensor-gain'];

/** Faults that leave a procedure's pressure as it is, by procedure: these cars are left out. */
export const HIDDEN: Readonly<Record<string, readonly string[]>> = {
  'vacuum-draw': ['fill-limit-stuck-open', 'canister-aged', 'canister-flooded'],
  'engine-off': [...STANDING, 'fill-limit-stuck-open', 'canister-aged', 'canister-flooded'],
  'purge-drive': BREATHING,
  refuelling: [...BREATHING, ...STANDING, 'cap-missing', 'hose-off'],
  'pump-run': [],
  'sealed-hold': ['vent-not-sealing', 'vent-circuit-open', 'purge-seeping'],
};
