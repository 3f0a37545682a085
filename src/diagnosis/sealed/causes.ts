/** The causes that a sealed tank's run can show, each as changed priors of a few quantities. */

import { holePrior as hole } from '../priors/nuisances.ts';
import type { Prior, SingleRunCause } from '../single-run/prior.ts';
import { S } from './quantities.ts';

export const SEALED_CAUSES = [
  'none',
  'leak',
  'canister_leak',
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
  'isolation_leak',
  'isolation_stuck_shut',
] as const;
/** `leak` is a hole in the tank side, `canister_leak` one beyond the isolation valve. */
export type SealedCauseId = (typeof SEALED_CAUSES)[number];

/** Causes that this run cannot part: only what is known beside the run weighs them. */
export const SEALED_ALIKE: readonly (readonly SealedCauseId[])[] = [
  ['canister_leak', 'vent_leak'],
  ['purge_leak', 'purge_stuck_open'],
  ['path_blocked', 'isolation_stuck_shut'],
];

const SHUT = { centre: 1e-12, sd: 0.05 };
/** A sensor behind a blocked hose: its lag [s], and what it shows at the start of what is there [-]. Judgement. */
const SLOW_SENSOR: readonly Prior[] = [
  { name: 'lag', slot: S.lag, kind: 'log', centre: 5, sd: 1 },
  { name: 'woken', slot: S.woken, kind: 'linear', centre: 0.5, sd: 0.5 },
];
const SLOW_SIDE: Prior = { name: 'canisterLag', slot: S.canisterLag, kind: 'log', centre: 1, sd: 1.5 };
/** Of cars without another fault so many have a slow sensor. Judgement. */
const SLOW_SHARE = 0.05;
/** Where a frozen sensor stands: anywhere in its range, mostly near ambient [Pa]. Judgement. */
const FROZEN_TANK: Prior = { name: 'level', slot: S.level, kind: 'linear', centre: 0, sd: 5000 };
const FROZEN_SIDE: Prior = { name: 'canisterLevel', slot: S.canisterLevel, kind: 'linear', centre: 0, sd: 1500 };
/** The first reading says nothing of the pressure [Pa]: as sealed tanks stand. */
const UNSHOWN_START = { centre: 0, sd: 9000 };
/** Sizes are medians of equivalent diameters with the spread of their logarithm: judgement from common practice. */
export const SEALED_CAUSE_CATALOGUE: readonly SingleRunCause<SealedCauseId>[] = [
  {
    id: 'none',
    weight: 1 - SLOW_SHARE,
    changes: {},
    starts: {},
    key: 'tankHole',
    hole: 'tankHole',
    places: [],
  },
  {
    id: 'none',
    form: 'slow sensor',
    weight: SLOW_SHARE,
    changes: { initial: { sd: 9000 } },
    adds: [...SLOW_SENSOR, SLOW_SIDE],
    starts: {},
    key: 'lag',
    places: [],
  },
  {
    id: 'leak',
    changes: { tankHole: hole(0.7, 0.65) },
    starts: { tankHole: [-1, 0.5] },
    key: 'tankHole',
    hole: 'tankHole',
    places: ['cap and neck', 'tank top', 'vapour line'],
  },
  {
    id: 'canister_leak',
    sharesFitOf: 'vent_leak',
    changes: { sideHole: hole(0.7, 0.65) },
    starts: {},
    key: 'sideHole',
    hole: 'sideHole',
    places: ['canister', 'vent side', 'purge line'],
  },
  {
    id: 'gross_leak',
    changes: { tankHole: hole(8, 0.5) },
    starts: { tankHole: [-1, 0] },
    key: 'tankHole',
    hole: 'tankHole',
    places: ['cap and neck', 'vapour line'],
  },
  {
    id: 'gross_leak',
    form: 'gross, canister side',
    sharesFitOf: 'vent_leak',
    changes: { sideHole: hole(8, 0.5) },
    starts: {},
    key: 'sideHole',
    hole: 'sideHole',
    places: ['canister', 'purge line'],
  },
  {
    id: 'purge_leak',
    changes: { seep: hole(0.5, 0.6) },
    starts: { seep: [-0.5, 0.8, 2.2] },
    key: 'seep',
    hole: 'tankHole',
    places: ['purge valve'],
  },
  {
    id: 'purge_stuck_closed',
    changes: { purge: SHUT },
    starts: {},
    key: 'tankHole',
    hole: 'tankHole',
    places: ['purge valve', 'purge line'],
  },
  {
    id: 'purge_stuck_open',
    sharesFitOf: 'purge_leak',
    changes: { seep: hole(2, 0.45) },
    starts: {},
    key: 'seep',
    places: ['purge valve'],
  },
  {
    id: 'vent_leak',
    changes: { sideHole: hole(1.5, 0.9) },
    starts: { sideHole: [-1, 0.5] },
    key: 'sideHole',
    hole: 'sideHole',
    places: ['vent valve'],
  },
  {
    id: 'vent_leak',
    form: 'vent never shuts',
    weight: 0.5,
    changes: {},
    states: [[S.ventStays, 1]],
    starts: {},
    key: 'ventOpen',
    places: ['vent valve'],
  },
  {
    id: 'vent_stuck_closed',
    changes: { ventOpen: hole(0.15, 0.7) },
    starts: { ventOpen: [-0.6] },
    key: 'ventOpen',
    hole: 'tankHole',
    places: ['vent valve'],
  },
  {
    id: 'vent_restricted',
    changes: { ventOpen: hole(1.3, 0.5) },
    starts: { ventOpen: [0] },
    key: 'ventOpen',
    hole: 'tankHole',
    places: ['vent side'],
  },
  {
    id: 'path_blocked',
    // a pinched line as well as a fill-limit valve that leaves the rollover's way
    changes: { isolationOpen: hole(0.5, 0.8) },
    starts: { isolationOpen: [-1, 0.8] },
    key: 'isolationOpen',
    places: ['tank to canister', 'fill-limit valve'],
  },
  {
    id: 'canister_saturated',
    changes: { past: { centre: 0.7, sd: 0.4 } },
    starts: {},
    key: 'tankHole',
    hole: 'tankHole',
    places: ['canister'],
  },
  {
    id: 'canister_saturated',
    form: 'flooded',
    // a bed full of liquid or crumbled grains: some tens of times the resistance of a sound one (judgement)
    changes: { past: { centre: 0.3, sd: 1 }, bed: { centre: 1.2e7, sd: 0.7 } },
    starts: {},
    key: 'tankHole',
    hole: 'tankHole',
    places: ['canister'],
  },
  {
    id: 'sensor_bias',
    changes: { offset: { sd: 900 }, canisterOffset: { sd: 450 } },
    starts: {},
    key: 'tankHole',
    hole: 'tankHole',
    places: ['pressure sensor'],
  },
  {
    id: 'sensor_gain',
    changes: { gain: { sd: 0.3 }, canisterGain: { sd: 0.3 } },
    starts: {},
    key: 'gain',
    places: ['pressure sensor'],
  },
  {
    id: 'sensor_stuck',
    form: 'tank sensor stuck',
    changes: { initial: UNSHOWN_START },
    adds: [FROZEN_TANK],
    states: [[S.frozen, 1]],
    starts: {},
    key: 'level',
    places: ['pressure sensor'],
  },
  {
    id: 'sensor_stuck',
    form: 'canister sensor stuck',
    weight: 0.5,
    changes: {},
    adds: [FROZEN_SIDE],
    states: [[S.canisterFrozen, 1]],
    starts: {},
    key: 'canisterLevel',
    places: ['pressure sensor'],
  },
  {
    id: 'sensor_stuck',
    form: 'both sensors stuck',
    weight: 0.5,
    changes: { initial: UNSHOWN_START },
    adds: [FROZEN_TANK, FROZEN_SIDE],
    states: [
      [S.frozen, 1],
      [S.canisterFrozen, 1],
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
    key: 'tankHole',
    hole: 'tankHole',
    places: ['pressure sensor'],
  },
  {
    id: 'isolation_leak',
    changes: { isolationShut: hole(0.6, 0.8) },
    starts: { isolationShut: [-0.8, 0.5] },
    key: 'isolationShut',
    hole: 'tankHole',
    places: ['isolation valve'],
  },
  {
    id: 'isolation_leak',
    form: 'isolation stuck open',
    changes: { isolationShut: hole(5, 0.4) },
    starts: {},
    key: 'isolationShut',
    hole: 'tankHole',
    places: ['isolation valve'],
  },
  {
    id: 'isolation_stuck_shut',
    changes: {},
    states: [[S.stuckShut, 1]],
    starts: {},
    key: 'tankHole',
    hole: 'tankHole',
    places: ['isolation valve'],
  },
];
