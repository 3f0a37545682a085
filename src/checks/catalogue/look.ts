/** T01 to T06: reading, asking, looking. Figures are judgement: middles of the trade's ranges. */
import { type Check, check } from '../check.ts';

export const LOOK: readonly Check[] = [
  check('look', {
    id: 'T01',
    minutes: 6,
    sensitivity: 0.8,
    specificity: 0.7,
    equipment: ['code reader'],
    outcomes: [
      { id: 'nothing telling', causes: [] },
      { id: 'circuit', causes: ['F14', 'F15p', 'F15v', 'F16'] },
      { id: 'flow', causes: ['F04', 'F06v', 'F06f', 'F08', 'F12f', 'F13', 'F19'] },
      { id: 'leak', causes: ['F01', 'F02p', 'F02h', 'F03', 'F05', 'F07', 'F09v', 'F09p', 'F10', 'F11'] },
    ],
  }),
  check('look', {
    id: 'T02',
    minutes: 5,
    sensitivity: 0.48,
    specificity: 0.83,
    outcomes: [
      { id: 'nothing telling', causes: [] },
      { id: 'cap or refuelling', causes: ['F01'] },
      { id: 'topping off', causes: ['F08'] },
      { id: 'tank work', causes: ['F10'] },
      { id: 'weather only', causes: ['F20'] },
    ],
  }),
  check('look', {
    id: 'T03',
    minutes: 3,
    sensitivity: 0.55,
    specificity: 0.9,
    equipment: ['torch'],
    cautions: ['open slowly'],
    outcomes: [
      { id: 'clean', causes: [] },
      { id: 'cap damaged', causes: ['F01'] },
      { id: 'neck damaged', causes: ['F02p'] },
    ],
  }),
  check('look', {
    id: 'T04',
    minutes: 5,
    sensitivity: 0.935,
    specificity: 0.95,
    equipment: ['cap tester with adapter'],
    cautions: ['open slowly'],
    setupFaults: { 'adaptor leaks': 'fails' },
    outcomes: [
      { id: 'passes', causes: [] },
      { id: 'fails', causes: ['F01'] },
    ],
  }),
  check('look', {
    id: 'T05',
    minutes: 8,
    sensitivity: 0.85,
    specificity: 0.885,
    equipment: ['known good correct cap', 'flow meter'],
    setups: ['rig'],
    after: ['T20'],
    risk: 2,
    cautions: ['vapour', 'no shop air', 'pressure ceiling'],
    outcomes: [
      { id: 'no change', causes: [] },
      { id: 'smaller with the good cap', causes: ['F01'] },
    ],
    numbers: {
      likelihood: 'size change',
      fields: [
        { id: 'before', quantity: 'length', unit: 'mm', least: 0, most: 0.02 },
        { id: 'after', quantity: 'length', unit: 'mm', least: 0, most: 0.02 },
      ],
    },
  }),
  check('look', {
    id: 'T06',
    minutes: 8,
    sensitivity: 0.55,
    specificity: 0.9,
    equipment: ['torch', 'mirror'],
    setups: ['lift'],
    risk: 1,
    cautions: ['lift', 'hot and moving'],
    outcomes: [
      { id: 'clean', causes: [] },
      { id: 'inlet blocked', causes: ['F06f'] },
      { id: 'canister damaged', causes: ['F07'] },
      { id: 'wet or dusty', causes: ['F08'] },
    ],
  }),
];
