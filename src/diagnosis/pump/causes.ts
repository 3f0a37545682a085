/** The causes that a pump run can show, each as changed priors of a few quantities. */

import { holePrior as hole } from '../priors/nuisances.ts';
import type { Prior, SingleRunCause } from '../single-run/prior.ts';
import { TIGHT_MM } from './priors.ts';
import { P } from './quantities.ts';

export const PUMP_CAUSES = [
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
  'canister_saturated',
  'sensor_bias',
  'sensor_gain',
  'sensor_stuck',
  'sensor_noisy',
  'pump_weak',
  'pump_dead',
  'orifice_dirty',
  'changeover_leak',
  'changeover_stuck',
] as const;
export type PumpCauseId = (typeof PUMP_CAUSES)[number];

/**
 * Causes that the pump run cannot part, as holes of the same size look alike with the engine off: only what is known
 * beside the run (codes, age, another recording) weighs them.
 */
export const PUMP_ALIKE: readonly (readonly PumpCauseId[])[] = [
  ['leak', 'purge_leak', 'vent_leak'],
  ['gross_leak', 'purge_stuck_open'],
  // all pressures scaled alike
  ['pump_weak', 'sensor_gain'],
  // nothing moves
  ['pump_dead', 'sensor_stuck'],
];

/** A hole elsewhere is the only one: two that share a flow could not be told apart. */
const NO_HOLE_IN_TANK = [[P.leakArea, hole(TIGHT_MM, 0).centre]] as const;
const SHUT = { centre: 1e-12, sd: 0.05 };
/** A sensor behind a blocked hose: its lag [s]. Judgement. */
const SLOW_SENSORS: readonly Prior[] = [
  { name: 'lag', slot: P.lag, kind: 'log', centre: 5, sd: 1 },
  { name: 'tankLag', slot: P.tankLag, kind: 'log', centre: 1, sd: 1.5 },
];
/** Vapour that a bed gives to its vent end when it holds no more, and how fast the pump clears that [-], [s]. Judgement. */
const VENT_VAPOUR: readonly Prior[] = [
  { name: 'ventVapour', slot: P.ventVapour, kind: 'linear', centre: 0.25, sd: 0.2 },
  { name: 'clearing', slot: P.clearing, kind: 'log', centre: 40, sd: 0.7 },
];
/** Of cars without another fault so many have a slow sensor. Judgement. */
const SLOW_SHARE = 0.05;
/** Where a frozen sensor stands [Pa], judgement. */
const FROZEN_MODULE: Prior = { name: 'level', slot: P.level, kind: 'linear', centre: 0, sd: 1500 };
const FROZEN_TANK: Prior = { name: 'tankLevel', slot: P.tankLevel, kind: 'linear', centre: 0, sd: 1500 };
/** Sizes are medians of equivalent diameters with the spread of their logarithm: judgement from common practice. */
export const PUMP_CAUSE_CATALOGUE: readonly SingleRunCause<PumpCauseId>[] = [
  { id: 'none', weight: 1 - SLOW_SHARE, changes: {}, starts: {}, key: 'leak', hole: 'leak', places: [] },
  {
    id: 'none',
    form: 'slow sensor',
    weight: SLOW_SHARE,
    changes: {},
    adds: SLOW_SENSORS,
    starts: {},
    key: 'lag',
    hole: 'leak',
    places: [],
  },
  {
    id: 'leak',
    changes: { leak: hole(0.7, 0.65) },
    starts: { leak: [-1, 0.5] },
    key: 'leak',
    hole: 'leak',
    places: ['cap and neck', 'tank top', 'vapour line'],
  },
  {
    id: 'leak',
    form: 'purge end',
    changes: {},
    adds: [{ name: 'purgeEnd', slot: P.purgeEndArea, kind: 'log', ...hole(0.7, 0.65) }],
    states: NO_HOLE_IN_TANK,
    starts: { purgeEnd: [-1, 0.5] },
    key: 'purgeEnd',
    hole: 'purgeEnd',
    places: ['canister', 'purge line'],
  },
  {
    id: 'leak',
    form: 'vent end',
    changes: {},
    adds: [{ name: 'ventEnd', slot: P.ventEndArea, kind: 'log', ...hole(0.7, 0.65) }],
    states: NO_HOLE_IN_TANK,
    starts: { ventEnd: [-1, 0.5] },
    key: 'ventEnd',
    hole: 'ventEnd',
    places: ['canister', 'vent side'],
  },
  {
    id: 'gross_leak',
    changes: { leak: hole(8, 0.5) },
    starts: { leak: [-1.5, 0] },
    key: 'leak',
    hole: 'leak',
    places: ['cap and neck', 'vapour line', 'purge line', 'canister'],
  },
  {
    id: 'purge_leak',
    sharesFitOf: 'purge end',
    changes: { purgeEnd: hole(0.5, 0.6) },
    starts: {},
    key: 'purgeEnd',
    hole: 'purgeEnd',
    places: ['purge valve'],
  },
  {
    id: 'purge_stuck_closed',
    changes: { purge: SHUT },
    starts: {},
    key: 'leak',
    hole: 'leak',
    places: ['purge valve', 'purge line'],
  },
  {
    id: 'purge_stuck_open',
    sharesFitOf: 'purge end',
    changes: { purgeEnd: hole(2, 0.45) },
    starts: {},
    key: 'purgeEnd',
    hole: 'purgeEnd',
    places: ['purge valve'],
  },
  {
    id: 'vent_leak',
    sharesFitOf: 'vent end',
    changes: { ventEnd: hole(1, 0.8) },
    starts: {},
    key: 'ventEnd',
    hole: 'ventEnd',
    places: ['pump module'],
  },
  {
    id: 'vent_stuck_closed',
    changes: { ventOpen: hole(0.12, 0.7) },
    starts: { ventOpen: [0] },
    key: 'ventOpen',
    hole: 'leak',
    places: ['vent side'],
  },
  {
    id: 'path_blocked',
    changes: {},
    adds: [{ name: 'path', slot: P.pathArea, kind: 'log', ...hole(0.5, 0.8) }],
    starts: { path: [-1, 0.8] },
    key: 'path',
    places: ['tank to canister', 'fill-limit valve'],
  },
  {
    id: 'canister_saturated',
    changes: { past: { centre: 0.6, sd: 0.4 }, slip: { centre: 0.15, sd: 0.8 } },
    adds: VENT_VAPOUR,
    starts: {},
    key: 'leak',
    hole: 'leak',
    places: ['canister'],
  },
  {
    id: 'canister_saturated',
    form: 'flooded',
    // a bed full of liquid or crumbled grains: some tens of times the resistance (judgement)
    changes: { past: { centre: 0.3, sd: 1 }, slip: { centre: 0.15, sd: 0.8 }, bed: { centre: 1.2e7, sd: 0.7 } },
    adds: VENT_VAPOUR,
    starts: { bed: [0] },
    key: 'leak',
    hole: 'leak',
    places: ['canister'],
  },
  {
    id: 'vent_restricted',
    changes: { ventOpen: hole(0.9, 0.5) },
    starts: { ventOpen: [0] },
    key: 'ventOpen',
    hole: 'leak',
    places: ['vent side'],
  },
  {
    id: 'sensor_bias',
    changes: { offset: { sd: 450 }, tankOffset: { sd: 450 } },
    starts: {},
    key: 'leak',
    hole: 'leak',
    places: ['pressure sensor'],
  },
  {
    id: 'sensor_gain',
    changes: { gain: { sd: 0.3 }, tankGain: { sd: 0.3 } },
    starts: {},
    key: 'gain',
    places: ['pressure sensor'],
  },
  {
    id: 'sensor_stuck',
    form: 'module sensor stuck',
    changes: {},
    adds: [FROZEN_MODULE],
    states: [[P.frozen, 1]],
    starts: {},
    key: 'level',
    places: ['pressure sensor'],
  },
  {
    id: 'sensor_stuck',
    form: 'tank sensor stuck',
    changes: {},
    adds: [FROZEN_TANK],
    states: [[P.tankFrozen, 1]],
    starts: {},
    key: 'tankLevel',
    hole: 'leak',
    places: ['pressure sensor'],
  },
  {
    id: 'sensor_stuck',
    form: 'both sensors stuck',
    changes: {},
    adds: [FROZEN_MODULE, FROZEN_TANK],
    states: [
      [P.frozen, 1],
      [P.tankFrozen, 1],
    ],
    starts: {},
    key: 'level',
    places: ['pressure sensor'],
  },
  {
    id: 'sensor_noisy',
    sharesFitOf: 'none',
    changes: {},
    starts: {},
    key: 'leak',
    hole: 'leak',
    places: ['pressure sensor'],
  },
  {
    id: 'pump_weak',
    changes: {},
    // 0.5 of its strength, battery included: judgement
    adds: [{ name: 'strength', slot: P.strength, kind: 'log', centre: 0.5, sd: 0.3 }],
    starts: { strength: [0] },
    key: 'strength',
    hole: 'leak',
    places: ['pump module'],
  },
  {
    id: 'pump_dead',
    changes: {},
    states: [[P.strength, 1e-4]],
    starts: {},
    key: 'leak',
    places: ['pump module'],
  },
  {
    id: 'orifice_dirty',
    changes: { orifice: hole(0.35, 0.2) },
    starts: { orifice: [0] },
    key: 'orifice',
    hole: 'leak',
    places: ['pump module'],
  },
  {
    id: 'changeover_leak',
    // what passes beside the orifice adds to its area
    changes: { orifice: hole(0.68, 0.15) },
    starts: { orifice: [0] },
    key: 'orifice',
    hole: 'leak',
    places: ['pump module'],
  },
  {
    id: 'changeover_stuck',
    changes: {},
    states: [[P.stuck, 1]],
    starts: {},
    key: 'orifice',
    places: ['pump module'],
  },
];
