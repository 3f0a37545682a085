/** T31 to T38: the car's own tests, long logs, and the verification of a repair. Judgement as elsewhere. */
import { type Check, check } from '../check.ts';
import { LEAKS } from '../root-causes.ts';
import { CONDITIONS } from './conditions.ts';

export const SELF_TESTS: readonly Check[] = [
  check('self-test', {
    id: 'T31',
    minutes: 15,
    // outside it modules abort their own test (15 to 85 %, common practice)
    level: { least: 0.15, most: 0.85 },
    sensitivity: 0.89,
    specificity: 0.89,
    equipment: ['tool that commands valves'],
    setups: ['tool', 'warm'],
    layouts: ['engine-vacuum', 'saddle-tank', 'two-path-purge', 'engine-off'],
    cautions: ['module may act'],
    outcomes: [
      { id: 'passes', causes: [] },
      { id: 'leaks', causes: LEAKS },
      { id: 'no vacuum', causes: ['F04', 'F15p'] },
      { id: 'does not release', causes: ['F06v', 'F06f', 'F13'] },
    ],
  }),
  check('self-test', {
    id: 'T32',
    minutes: 5,
    waitMinutes: 595,
    sensitivity: 0.86,
    specificity: 0.85,
    equipment: ['logger'],
    cautions: ['vapour'],
    outcomes: [
      { id: 'holds its vacuum', causes: [] },
      { id: 'stays at zero', causes: LEAKS },
    ],
  }),
  check('self-test', {
    id: 'T33',
    minutes: 20,
    sensitivity: 0.89,
    specificity: 0.885,
    equipment: ['tool that commands valves'],
    setups: ['tool'],
    layouts: ['pump-reference'],
    cautions: ['module may act'],
    outcomes: [
      { id: 'passes reference', causes: [] },
      { id: 'references disagree', causes: ['F17'] },
      { id: 'short of reference', causes: LEAKS },
    ],
    numbers: {
      likelihood: 'pump ratio',
      fields: [
        { id: 'reference before', quantity: 'pressure', unit: 'kPa', least: -8_000, most: 8_000 },
        { id: 'tank', quantity: 'pressure', unit: 'kPa', least: -8_000, most: 8_000 },
        { id: 'reference after', quantity: 'pressure', unit: 'kPa', least: -8_000, most: 8_000 },
      ],
    },
  }),
  check('self-test', {
    id: 'T34',
    minutes: 10,
    waitMinutes: 590,
    sensitivity: 0.89,
    specificity: 0.885,
    equipment: ['tool that commands valves', 'logger'],
    setups: ['tool'],
    layouts: ['sealed-tank'],
    risk: 2,
    cautions: ['sealed tank', 'vapour'],
    outcomes: [
      { id: 'holds and releases', causes: [] },
      { id: 'valve leaks or sticks', causes: ['F18'] },
      { id: 'tank side leaks', causes: ['F01', 'F02p', 'F02h', 'F10', 'F11'] },
    ],
  }),
  check('self-test', {
    id: 'T35',
    minutes: 30,
    sensitivity: 0.815,
    specificity: 0.85,
    equipment: ['logger', 'two people'],
    layouts: ['two-path-purge'],
    risk: 1,
    cautions: ['road'],
    outcomes: [
      { id: 'falls gently', causes: [] },
      { id: 'rises or flat', causes: ['F19'] },
    ],
  }),
  check('self-test', {
    id: 'T36',
    minutes: 10,
    sensitivity: 0.6,
    specificity: 0.775,
    outcomes: [
      { id: 'ordinary fuel', causes: [] },
      { id: 'volatile for the season', causes: ['F20'] },
    ],
  }),
  check('self-test', {
    id: 'T37',
    minutes: 8,
    sensitivity: 0.92,
    specificity: 0.89,
    equipment: ['the rig of the first measurement'],
    setups: ['rig', 'cool'],
    risk: 2,
    cautions: ['vapour', 'no shop air', 'pressure ceiling', 'open slowly', 'sealed tank'],
    verifies: true,
    setupFaults: { 'adaptor leaks': 'flows' },
    outcomes: [
      { id: 'tight', causes: [] },
      { id: 'flows', causes: LEAKS },
    ],
    numbers: {
      likelihood: 'flow',
      fields: [
        { id: 'flow', quantity: 'volume flow', unit: 'L/min', least: 0, most: 2e-3 },
        { id: 'pressure', quantity: 'pressure', unit: 'inH2O', least: 200, most: 4_000 },
        { id: 'blank flow', quantity: 'volume flow', unit: 'L/min', least: 0, most: 1e-4, optional: true },
        ...CONDITIONS,
      ],
    },
  }),
  check('self-test', {
    id: 'T38',
    minutes: 30,
    waitMinutes: 1440,
    sensitivity: 0.9,
    specificity: 0.9,
    equipment: ['code reader'],
    cautions: ['road'],
    verifies: true,
    outcomes: [
      { id: 'ran and passed', causes: [] },
      { id: 'ran and failed', causes: LEAKS },
    ],
  }),
];
