/** T14, T17, T29, T30: after filling, while filling, and what filling has done to the canister. Judgement as elsewhere. */
import { type Check, check } from '../check.ts';

export const FILLING: readonly Check[] = [
  check('filling', {
    id: 'T14',
    minutes: 5,
    sensitivity: 0.85,
    specificity: 0.86,
    equipment: ['soft clamp'],
    setups: ['warm'],
    complaints: ['rough after fill', 'P0496'],
    risk: 1,
    cautions: ['hot and moving', 'module may act'],
    setupFaults: { 'clamp leaks': 'not cured' },
    outcomes: [
      { id: 'cannot tell', causes: [] },
      { id: 'cured', causes: ['F03'] },
      { id: 'not cured', causes: ['F08'] },
    ],
  }),
  check('filling', {
    id: 'T17',
    minutes: 15,
    sensitivity: 0.9,
    specificity: 0.89,
    equipment: ['approved container or pump'],
    // there must be room to fill (below 70 %: the trade's figure, judgement)
    level: { least: 0, most: 0.7 },
    complaints: ['slow fill', 'P0446/2422'],
    risk: 3,
    cautions: ['open fuel', 'outdoors', 'vapour'],
    outcomes: [
      { id: 'fills freely both ways', causes: [] },
      { id: 'free with the vent hose off', causes: ['F06v', 'F06f'] },
      { id: 'still clicks off', causes: ['F12f', 'F12c', 'F13'] },
    ],
  }),
  check('filling', {
    id: 'T29',
    minutes: 15,
    sensitivity: 0.775,
    specificity: 0.89,
    equipment: ['scale'],
    setups: ['lift'],
    risk: 1,
    cautions: ['lift', 'carbon', 'vapour'],
    outcomes: [
      { id: 'light and dry', causes: [] },
      { id: 'loaded or wet', causes: ['F08'] },
    ],
    numbers: {
      likelihood: 'canister weight',
      fields: [
        { id: 'weight', quantity: 'mass', unit: 'g', least: 0.2, most: 15 },
        { id: 'dry weight', quantity: 'mass', unit: 'g', least: 0.2, most: 15 },
        { id: 'working capacity', quantity: 'mass', unit: 'g', least: 0.01, most: 0.5, optional: true },
      ],
    },
  }),
  check('filling', {
    id: 'T30',
    minutes: 20,
    sensitivity: 0.775,
    specificity: 0.85,
    equipment: ['logger'],
    complaints: ['slow fill', 'P0446/2422', 'hiss or collapse'],
    risk: 2,
    cautions: ['open fuel', 'vapour'],
    outcomes: [
      { id: 'normal', causes: [] },
      { id: 'vent path holds back', causes: ['F06v', 'F06f', 'F08'] },
      { id: 'tank side holds back', causes: ['F12f', 'F13'] },
      { id: 'tank stays shut', causes: ['F18'] },
    ],
  }),
];
