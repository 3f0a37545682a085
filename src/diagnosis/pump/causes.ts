/** The causes that a pump run can show, each as changed priors of a few quantities. */
import type { SingleRunCause } from '../single-run/prior.ts';
import { hole } from './priors.ts';
import { P } from './quantities.ts';

export const PUMP_CAUSES = [
  'none',
  'leak',
  'gross_leak',
  'purge_leak',
  'purge_stuck_closed',
  'purge_stuck_open',
  'vent_leak',
  'vent_restricted',
  'sensor_bias',
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
];

const SHUT = { centre: 1e-12, sd: 0.05 };
/** Sizes are medians of equivalent diameters with the spread of their logarithm: judgement from common practice. */
export const PUMP_CAUSE_CATALOGUE: readonly SingleRunCause<PumpCauseId>[] = [
  { id: 'none', changes: {}, starts: {}, key: 'leak', hole: 'leak', places: [] },
  {
    id: 'leak',
    changes: { leak: hole(0.7, 0.65) },
    starts: { leak: [-1.2, 0, 1.2] },
    key: 'leak',
    hole: 'leak',
    places: ['cap and neck', 'tank top', 'vapour line', 'canister', 'vent side', 'purge line'],
  },
  {
    id: 'gross_leak',
    changes: { leak: hole(8, 0.5) },
    starts: { leak: [-1.5, 0.5] },
    key: 'leak',
    hole: 'leak',
    places: ['cap and neck', 'vapour line', 'purge line', 'canister'],
  },
  {
    id: 'purge_leak',
    changes: { seep: hole(0.5, 0.6) },
    starts: { seep: [-0.8, 0.8] },
    key: 'seep',
    hole: 'seep',
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
    changes: { seep: hole(2, 0.45), purge: SHUT },
    starts: { seep: [-0.8, 0.8] },
    key: 'seep',
    hole: 'seep',
    places: ['purge valve'],
  },
  {
    id: 'vent_leak',
    changes: { ventShut: hole(1, 0.9) },
    starts: { ventShut: [-0.8, 0.8] },
    key: 'ventShut',
    hole: 'ventShut',
    places: ['change-over valve'],
  },
  {
    id: 'vent_restricted',
    changes: { ventOpen: hole(0.9, 0.5) },
    starts: { ventOpen: [-1, 0.5] },
    key: 'ventOpen',
    hole: 'leak',
    places: ['vent filter', 'vent side'],
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
    id: 'pump_weak',
    changes: { strength: { centre: 0.5, sd: 0.3 } },
    starts: { strength: [-1, 0.5] },
    key: 'strength',
    hole: 'leak',
    places: ['pump module'],
  },
  {
    id: 'pump_dead',
    changes: { strength: { centre: 1e-4, sd: 0.05 } },
    starts: {},
    key: 'strength',
    places: ['pump module'],
  },
  {
    id: 'orifice_dirty',
    changes: { orifice: hole(0.35, 0.2) },
    starts: { orifice: [-0.7, 0.7] },
    key: 'orifice',
    hole: 'leak',
    places: ['reference orifice'],
  },
  {
    id: 'changeover_leak',
    changes: { bypass: hole(0.4, 0.5) },
    starts: { bypass: [-0.7, 0.7] },
    key: 'bypass',
    hole: 'leak',
    places: ['change-over valve'],
  },
  {
    id: 'changeover_stuck',
    changes: {},
    states: [[P.stuck, 1]],
    starts: {},
    key: 'orifice',
    places: ['change-over valve'],
  },
];
