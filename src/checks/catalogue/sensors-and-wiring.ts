/** T07 to T11: sensors and circuits. Figures are judgement: middles of the trade's ranges. */
import { type Check, check } from '../check.ts';

const GAUGE = { quantity: 'pressure', least: -10_000, most: 10_000 } as const;

export const SENSORS_AND_WIRING: readonly Check[] = [
  check('sensor and wiring', {
    id: 'T07',
    minutes: 3,
    sensitivity: 0.825,
    specificity: 0.915,
    equipment: ['live data or multimeter'],
    cautions: ['open slowly'],
    outcomes: [
      { id: 'reads zero', causes: [] },
      { id: 'reads off zero', causes: ['F14'] },
    ],
    numbers: {
      likelihood: 'sensor zero',
      fields: [{ id: 'reading', unit: 'Pa', ...GAUGE }],
    },
  }),
  check('sensor and wiring', {
    id: 'T08',
    minutes: 10,
    sensitivity: 0.935,
    specificity: 0.955,
    equipment: ['hand pump', 'reference gauge 0 to 15 inH2O'],
    risk: 1,
    cautions: ['pressure ceiling', 'vacuum ceiling'],
    setupFaults: { 'gauge reads wrong': 'reads wrong' },
    outcomes: [
      { id: 'reads right', causes: [] },
      { id: 'reads wrong', causes: ['F14'] },
    ],
    numbers: {
      likelihood: 'two readings',
      fields: [
        { id: 'first applied', unit: 'inH2O', ...GAUGE },
        { id: 'first reading', unit: 'inH2O', ...GAUGE },
        { id: 'second applied', unit: 'inH2O', ...GAUGE },
        { id: 'second reading', unit: 'inH2O', ...GAUGE },
      ],
    },
  }),
  check('sensor and wiring', {
    id: 'T09',
    minutes: 10,
    sensitivity: 0.8,
    specificity: 0.9,
    equipment: ['live data'],
    setups: ['cool'],
    outcomes: [
      { id: 'plausible', causes: [] },
      { id: 'not plausible', causes: ['F16'] },
    ],
  }),
  check('sensor and wiring', {
    id: 'T10',
    minutes: 6,
    sensitivity: 0.775,
    specificity: 0.925,
    equipment: ['multimeter'],
    setups: ['cool'],
    cautions: ['electrical'],
    outcomes: [
      { id: 'both in range', causes: [] },
      { id: 'purge coil out', causes: ['F15p'] },
      { id: 'vent coil out', causes: ['F15v'] },
    ],
    numbers: {
      likelihood: 'coils',
      fields: [
        { id: 'purge coil', quantity: 'resistance', unit: 'ohm', least: 0, most: 1e7 },
        { id: 'vent coil', quantity: 'resistance', unit: 'ohm', least: 0, most: 1e7 },
        { id: 'coil temperature', quantity: 'temperature', unit: '°C', least: 223, most: 423 },
      ],
    },
  }),
  check('sensor and wiring', {
    id: 'T11',
    minutes: 15,
    sensitivity: 0.8,
    specificity: 0.885,
    equipment: ['multimeter', 'lamp load'],
    cautions: ['electrical', 'module may act'],
    outcomes: [
      { id: 'no event', causes: [] },
      { id: 'purge circuit drops', causes: ['F15p'] },
      { id: 'vent circuit drops', causes: ['F15v'] },
    ],
  }),
];
