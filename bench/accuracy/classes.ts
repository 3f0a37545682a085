/** The names of the causes in the order of the practice format, which settles ties as its scoring does. */
import type { CauseId } from '../../src/diagnosis/finding.ts';

export const CLASSES: readonly CauseId[] = [
  'none',
  'leak',
  'gross_leak',
  'purge_leak',
  'purge_stuck_closed',
  'purge_stuck_open',
  'vent_leak',
  'vent_stuck_closed',
  'vent_restricted',
  'path_blocked',
  'fill_valve_stuck_open',
  'sensor_bias',
  'sensor_stuck',
  'sensor_noisy',
  'sensor_gain',
  'canister_saturated',
];
