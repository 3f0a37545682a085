/** Prior probability of each cause from complaint and codes. */
import type { LayoutId } from '../../system/car.ts';
import { CAUSES, type CauseId } from '../finding.ts';
import { COMPLAINTS, type Complaint, columnsOf, ROOT_CAUSE_PERCENT } from './root-causes.ts';

/** What a root cause looks like to gas, valves and sensor, as shares of it. Judgement. */
const LOOKS: Readonly<Record<string, Partial<Record<CauseId, number>>>> = {
  F01: { leak: 0.6, gross_leak: 0.4 },
  F02: { leak: 0.75, gross_leak: 0.25 },
  F03: { purge_leak: 0.55, purge_stuck_open: 0.45 },
  F04: { purge_stuck_closed: 1 },
  F05: { vent_leak: 1 },
  F06: { vent_stuck_closed: 0.45, vent_restricted: 0.55 },
  F07: { leak: 0.8, gross_leak: 0.2 },
  F08: { canister_saturated: 0.8, vent_restricted: 0.2 },
  F09: { leak: 0.5, gross_leak: 0.3, path_blocked: 0.2 },
  F10: { leak: 0.9, gross_leak: 0.1 },
  F11: { leak: 1 },
  F12: { path_blocked: 0.6, fill_valve_stuck_open: 0.4 },
  F13: { path_blocked: 1 },
  F14: { sensor_bias: 0.4, sensor_stuck: 0.25, sensor_gain: 0.2, sensor_noisy: 0.15 },
  F15: { purge_stuck_closed: 0.5, vent_leak: 0.5 },
  F16: { none: 1 },
  F17: { none: 1 },
  F18: { none: 1 },
  F19: { purge_stuck_closed: 0.5, none: 0.5 },
  F20: { none: 1 },
};

/** The same for parts that only some layouts have; other cars take these root causes as no fault. Judgement. */
const LOOKS_BY_LAYOUT: Readonly<Partial<Record<LayoutId, Readonly<Record<string, Partial<Record<CauseId, number>>>>>>> =
  {
    'pump-reference': {
      F17: { pump_weak: 0.35, pump_dead: 0.15, orifice_dirty: 0.2, changeover_leak: 0.15, changeover_stuck: 0.15 },
    },
    'sealed-tank': { F18: { isolation_leak: 0.5, isolation_stuck_shut: 0.5 } },
  };
const LAYOUT_CAUSES: readonly CauseId[] = [
  'pump_weak',
  'pump_dead',
  'orifice_dirty',
  'changeover_leak',
  'changeover_stuck',
  'isolation_leak',
  'isolation_stuck_shut',
];

/**
 * How often each column is what brings the car, in the order of `COMPLAINTS`, for a recording that came without a word:
 * the leak codes are by far the most frequent (public code collection: P0442 and P0456 second and third of all codes).
 * Judgement.
 */
const COLUMN_SHARE = [0.2, 0.22, 0.22, 0.08, 0.05, 0.07, 0.06, 0.03, 0.03, 0.02, 0.02];

/** Share of the prior that is spread over all causes alike: no table knows every car. Judgement. */
const OPEN_MIND = 0.3;
/** Of cars without complaint or code that a recording is made of, the share taken as sound. Judgement. */
const SOUND_SHARE = 0.2;

/**
 * @param complaints complaint types of the table; empty for none
 * @param codes trouble codes
 * @param layout of the car, for the parts that only it has
 * @returns probability by cause, summing to 1
 */
export function causePriors(
  complaints: readonly Complaint[],
  codes: readonly string[],
  layout: LayoutId = 'engine-vacuum',
): Record<CauseId, number> {
  const own = LOOKS_BY_LAYOUT[layout] ?? {};
  const possible = CAUSES.filter((c) => !LAYOUT_CAUSES.includes(c) || Object.values(own).some((looks) => c in looks));
  const columns = columnsOf(complaints, codes).map((column) => COMPLAINTS.indexOf(column));
  const told = columns.length > 0;
  const chosen = told ? columns : COMPLAINTS.map((_, i) => i);
  const p = Object.fromEntries(CAUSES.map((c) => [c, 0])) as Record<CauseId, number>;
  for (const [root, percents] of Object.entries(ROOT_CAUSE_PERCENT)) {
    const weights = chosen.map((i) => (told ? 1 : COLUMN_SHARE[i]!));
    const all = weights.reduce((s, w) => s + w, 0);
    const share = chosen.reduce((s, i, k) => s + weights[k]! * Math.max(0.3, percents[i] ?? 0), 0) / all;
    for (const [cause, part] of Object.entries(own[root] ?? LOOKS[root] ?? {})) p[cause as CauseId] += share * part;
  }
  if (!told) {
    const others = CAUSES.reduce((s, c) => s + (c === 'none' ? 0 : p[c]), 0);
    p.none = (SOUND_SHARE / (1 - SOUND_SHARE)) * others;
  }
  const total = CAUSES.reduce((s, c) => s + p[c], 0);
  for (const c of possible) p[c] = (1 - OPEN_MIND) * (p[c] / total) + OPEN_MIND / possible.length;
  return p;
}
