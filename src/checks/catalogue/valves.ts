/** T12, T13, T15, T16, T18: purge valve, vent valve and vent path. Figures are judgement: middles of the trade's ranges. */
import { type Check, check } from '../check.ts';

export const VALVES: readonly Check[] = [
  check('valves', {
    id: 'T12',
    minutes: 5,
    sensitivity: 0.935,
    specificity: 0.945,
    equipment: ['hand vacuum pump'],
    risk: 1,
    cautions: ['hot and moving', 'vapour'],
    setupFaults: { 'clamp leaks': 'falls' },
    outcomes: [
      { id: 'holds', causes: [] },
      { id: 'falls', causes: ['F03'] },
    ],
    numbers: {
      likelihood: 'seat loss',
      fields: [
        { id: 'start', quantity: 'pressure', unit: 'inHg', least: -95_000, most: -2_000 },
        { id: 'after 30 s', quantity: 'pressure', unit: 'inHg', least: -95_000, most: 0 },
      ],
    },
  }),
  check('valves', {
    id: 'T13',
    minutes: 2,
    sensitivity: 0.85,
    specificity: 0.85,
    setups: ['warm'],
    risk: 1,
    cautions: ['hot and moving', 'module may act'],
    outcomes: [
      { id: 'no suction', causes: [] },
      { id: 'suction', causes: ['F03'] },
    ],
  }),
  check('valves', {
    id: 'T15',
    minutes: 8,
    sensitivity: 0.815,
    specificity: 0.85,
    equipment: ['tool that commands valves'],
    setups: ['tool', 'warm'],
    risk: 1,
    cautions: ['hot and moving', 'module may act'],
    outcomes: [
      { id: 'trim and pressure follow', causes: [] },
      { id: 'nothing moves', causes: ['F04', 'F15p', 'F19'] },
      { id: 'rich for long', causes: ['F08'] },
      { id: 'lean, tank does not move', causes: ['F09p'] },
    ],
  }),
  check('valves', {
    id: 'T16',
    minutes: 8,
    sensitivity: 0.86,
    specificity: 0.89,
    equipment: ['tool that commands valves', 'gauge 0 to 15 inH2O', 'hand pump'],
    setups: ['tool', 'lift'],
    risk: 1,
    cautions: ['lift', 'pressure ceiling', 'module may act'],
    setupFaults: { 'valve not energised': 'does not seal', 'clamp leaks': 'does not seal' },
    outcomes: [
      { id: 'seals and opens', causes: [] },
      { id: 'does not seal', causes: ['F05', 'F15v'] },
      { id: 'does not open', causes: ['F06v', 'F06f'] },
    ],
  }),
  check('valves', {
    id: 'T18',
    minutes: 10,
    sensitivity: 0.895,
    specificity: 0.915,
    equipment: ['flow source', 'gauge 0 to 15 inH2O'],
    setups: ['lift'],
    risk: 1,
    cautions: ['lift', 'no shop air', 'carbon'],
    outcomes: [
      { id: 'free', causes: [] },
      { id: 'choked', causes: ['F06v', 'F06f', 'F08'] },
    ],
    numbers: {
      likelihood: 'vent drop',
      fields: [
        { id: 'flow', quantity: 'volume flow', unit: 'L/min', least: 1e-5, most: 2e-3 },
        { id: 'drop', quantity: 'pressure', unit: 'inH2O', least: 0, most: 10_000 },
      ],
    },
  }),
];
