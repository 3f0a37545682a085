/**
 * A fixed flow chart, as a careful shop works without probabilities: look, prove the sensor, measure, split the system,
 * locate, then repair what the last step points at; when all steps are through, parts in the usual order until the car is
 * sound. Written out from the trade's usual order of steps (common practice, no source).
 */

import type { RepairId } from '../../src/checks/repairs.ts';
import type { Complaint } from '../../src/diagnosis/priors/root-causes.ts';

/** One step: a check, and for outcomes that point somewhere the repairs or further steps to do at once. */
export interface ChartStep {
  readonly check: string;
  readonly on: Readonly<Record<string, readonly (RepairId | ChartStep)[]>>;
}

export interface Chart {
  readonly steps: readonly ChartStep[];
  /** When the steps are through. */
  readonly parts: readonly RepairId[];
}

const EVERY_PART: readonly RepairId[] = [
  'cap',
  'purge valve',
  'vent valve',
  'vent filter',
  'purge line',
  'filler hose',
  'vapour line',
  'canister',
  'pressure sensor',
  'purge circuit',
  'vent circuit',
  'filler pipe',
  'sender seal',
  'calibration',
  'level sender',
  'inlet check valve',
  'fill-limit valve',
  'tank',
];
const first = (...parts: readonly RepairId[]): readonly RepairId[] => [
  ...parts,
  ...EVERY_PART.filter((part) => !parts.includes(part)),
];

const LOOK: readonly ChartStep[] = [
  { check: 'T03', on: { 'cap damaged': ['cap'], 'neck damaged': ['filler pipe'] } },
  {
    check: 'T06',
    on: { 'inlet blocked': ['vent filter'], 'canister damaged': ['canister'], 'wet or dusty': ['canister'] },
  },
];
const SENSOR: ChartStep = { check: 'T07', on: { 'reads off zero': ['pressure sensor'] } };
const COILS: ChartStep = {
  check: 'T10',
  on: { 'purge coil out': ['purge circuit'], 'vent coil out': ['vent circuit'] },
};
const PURGE_SEAT: ChartStep = { check: 'T12', on: { falls: ['purge valve'] } };
const VENT: ChartStep = {
  check: 'T16',
  on: { 'does not seal': ['vent valve', 'vent circuit'], 'does not open': ['vent valve', 'vent filter'] },
};
const CAP_BENCH: ChartStep = { check: 'T04', on: { fails: ['cap'] } };
const SMOKE: ChartStep = {
  check: 'T23',
  on: {
    'cap or neck': ['cap', 'filler pipe'],
    'filler hose': ['filler hose'],
    'purge valve': ['purge valve'],
    'vent valve': ['vent valve', 'vent circuit'],
    canister: ['canister'],
    'vapour line': ['vapour line'],
    'purge line': ['purge line'],
    'tank top': ['sender seal'],
    'tank shell': ['tank'],
  },
};
const SECTIONS: ChartStep = {
  check: 'T21',
  on: {
    'purge side': [PURGE_SEAT, 'purge line'],
    'canister and vent': [VENT, 'canister'],
    'tank and neck': [CAP_BENCH],
  },
};
const TRACER: ChartStep = {
  check: 'T25',
  on: {
    'filler pipe or hose': ['filler pipe', 'filler hose'],
    canister: ['canister'],
    line: ['vapour line', 'purge line'],
    'tank top': ['sender seal'],
    'tank shell': ['tank'],
  },
};

const LEAK: Chart = {
  steps: [...LOOK, SENSOR, { check: 'T20', on: {} }, SECTIONS, PURGE_SEAT, VENT, SMOKE, TRACER],
  parts: first('cap', 'purge valve', 'vent valve'),
};
const PURGE_FLOW: Chart = {
  steps: [
    COILS,
    {
      check: 'T15',
      on: {
        'nothing moves': ['purge valve', 'purge circuit'],
        'rich for long': ['canister'],
        'lean, tank does not move': ['purge line'],
      },
    },
    PURGE_SEAT,
    SENSOR,
    VENT,
    ...LOOK,
  ],
  parts: first('purge valve', 'purge circuit', 'purge line', 'vent filter'),
};
const PURGING_ALWAYS: Chart = {
  steps: [
    PURGE_SEAT,
    { check: 'T13', on: { suction: ['purge valve'] } },
    SENSOR,
    { check: 'T29', on: { 'loaded or wet': ['canister'] } },
    ...LOOK,
  ],
  parts: first('purge valve', 'canister', 'pressure sensor'),
};
const VENT_PATH: Chart = {
  steps: [
    ...LOOK,
    COILS,
    VENT,
    { check: 'T18', on: { choked: ['vent filter', 'vent valve', 'canister'] } },
    {
      check: 'T30',
      on: {
        'vent path holds back': ['vent filter', 'vent valve', 'canister'],
        'tank side holds back': ['vapour line', 'fill-limit valve'],
      },
    },
    SENSOR,
  ],
  parts: first('vent valve', 'vent filter', 'canister', 'vapour line'),
};
const SLOW_FILL: Chart = {
  steps: [
    {
      check: 'T17',
      on: {
        'free with the vent hose off': [
          { check: 'T06', on: { 'inlet blocked': ['vent filter'] } },
          'vent filter',
          'vent valve',
        ],
        'still clicks off': ['vapour line', 'inlet check valve', 'fill-limit valve'],
      },
    },
    ...VENT_PATH.steps,
  ],
  parts: first('vent filter', 'vent valve', 'canister', 'vapour line', 'fill-limit valve'),
};
const NOT_READY: Chart = {
  steps: [
    { check: 'T09', on: { 'not plausible': ['level sender'] } },
    SENSOR,
    COILS,
    {
      check: 'T31',
      on: {
        leaks: [SMOKE],
        'no vacuum': ['purge valve', 'purge circuit'],
        'does not release': ['vent filter', 'vent valve'],
      },
    },
  ],
  parts: first('calibration', 'pressure sensor', 'purge valve'),
};

export const FLOW_CHART: Readonly<Record<Complaint, Chart>> = {
  'P0455/57': LEAK,
  P0442: LEAK,
  P0456: LEAK,
  smell: LEAK,
  'P0441/0497': PURGE_FLOW,
  P0496: PURGING_ALWAYS,
  'rough after fill': PURGING_ALWAYS,
  'P0446/2422': VENT_PATH,
  'hiss or collapse': VENT_PATH,
  'slow fill': SLOW_FILL,
  'not ready': NOT_READY,
};
