/** The causes that a sealed tank's run can show, each as changed priors of a few quantities. */

import { holePrior as hole } from '../priors/nuisances.ts';
import type { SingleRunCause } from '../single-run/prior.ts';
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
  'sensor_bias',
  'isolation_leak',
  'isolation_stuck_shut',
] as const;
/** `leak` is a hole in the tank side, `canister_leak` one beyond the isolation valve. */
export type SealedCauseId = (typeof SEALED_CAUSES)[number];

/** Causes that this run cannot part: only what is known beside the run weighs them. */
export const SEALED_ALIKE: readonly (readonly SealedCauseId[])[] = [
  ['canister_leak', 'vent_leak'],
  ['purge_leak', 'purge_stuck_open'],
];

const SHUT = { centre: 1e-12, sd: 0.05 };
/** Sizes are medians of equivalent diameters with the spread of their logarithm: judgement from common practice. */
export const SEALED_CAUSE_CATALOGUE: readonly SingleRunCause<SealedCauseId>[] = [
  { id: 'none', changes: {}, starts: {}, key: 'tankHole', hole: 'tankHole', places: [] },
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
    changes: { sideHole: hole(0.7, 0.65) },
    starts: { sideHole: [-1, 0.5] },
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
    changes: { sideHole: hole(8, 0.5) },
    starts: { sideHole: [-1, 0] },
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
    sharesFitOf: 'canister_leak',
    changes: { sideHole: hole(1.5, 0.9) },
    starts: {},
    key: 'sideHole',
    hole: 'sideHole',
    places: ['vent valve'],
  },
  {
    id: 'vent_stuck_closed',
    changes: { ventOpen: hole(0.15, 0.7) },
    starts: { ventOpen: [0] },
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
    id: 'sensor_bias',
    changes: { offset: { sd: 900 }, canisterOffset: { sd: 450 }, initial: { sd: 1000 } },
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
