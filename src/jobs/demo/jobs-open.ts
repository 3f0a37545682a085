/** The jobs of the demo shop that are under way, each waiting for something else. */
import { DEMO_TECHNICIAN, type DemoJob } from './demo-job.ts';

const NOTHING_YET = { recordings: [], findings: [], checks: [], repairs: [], proof: null, notes: [] } as const;

export const OPEN_JOBS: readonly DemoJob[] = [
  {
    ...NOTHING_YET,
    key: 'estate',
    openedAt: '2026-03-02T11:10:00.000Z',
    complaint: {
      words: 'After filling up it cranks for ages and stumbles for a minute, then it is fine until the next time.',
      types: ['rough after fill'],
    },
    codes: [{ code: 'P0442', status: 'pending' }],
    vehicle: { name: 'Grey estate, turbo', registration: 'DEMO 2', modelYear: 2017, odometerKm: 96_700 },
    car: 'estate',
    recordings: [
      {
        name: 'estate-seeping-purge',
        label: 'Leak self-test, warm engine',
        taken: 'before-repair',
        receivedAt: '2026-03-02T11:50:00.000Z',
      },
    ],
    findings: [{ taken: 'before-repair', madeAt: '2026-03-02T12:30:00.000Z' }],
    checks: [
      {
        at: '2026-03-02T12:20:00.000Z',
        by: DEMO_TECHNICIAN,
        what: 'Purge valve off the engine, unpowered, drawn to 40 kPa vacuum on the bench',
        result: 'Loses a third of it in 30 seconds.',
        measured: { value: 33, unit: '%' },
        speaksFor: ['purge_leak'],
        speaksAgainst: [],
        strength: 'strong',
      },
    ],
  },
  {
    ...NOTHING_YET,
    key: 'off-roader',
    openedAt: '2026-03-02T14:00:00.000Z',
    complaint: { words: 'Lamp on since the snow and salt. Nothing else.', types: [] },
    codes: [
      { code: 'P0455', status: 'stored' },
      { code: 'P0446', status: 'pending' },
    ],
    vehicle: { name: 'Green off-roader', registration: 'DEMO 3', modelYear: 2010, odometerKm: 241_000 },
    car: 'offRoader',
    recordings: [
      {
        name: 'off-roader-vent',
        label: 'Leak self-test, draw times out',
        taken: 'before-repair',
        receivedAt: '2026-03-02T14:35:00.000Z',
      },
    ],
    findings: [{ taken: 'before-repair', madeAt: '2026-03-02T14:38:00.000Z' }],
  },
  {
    ...NOTHING_YET,
    key: 'van',
    openedAt: '2026-03-05T08:20:00.000Z',
    complaint: { words: 'The lamp comes on every second morning, and goes out again after a week.', types: ['smell'] },
    codes: [{ code: 'P0456', status: 'stored' }],
    vehicle: { name: 'Yellow van', registration: 'DEMO 6', modelYear: 2015, odometerKm: 154_300 },
    car: 'van',
    recordings: [
      {
        name: 'van-pump-run',
        label: 'Pump module, commanded run',
        taken: 'before-repair',
        receivedAt: '2026-03-05T09:05:00.000Z',
      },
    ],
  },
  {
    ...NOTHING_YET,
    key: 'hybrid',
    openedAt: '2026-03-05T10:00:00.000Z',
    complaint: {
      words: 'It smells of petrol in the garage in the morning, most when the tank is full.',
      types: ['smell'],
    },
    codes: [{ code: 'P0456', status: 'stored' }],
    vehicle: { name: 'Silver plug-in hybrid', registration: 'DEMO 7', modelYear: 2019, odometerKm: 61_200 },
    car: 'hybrid',
    recordings: [
      {
        name: 'hybrid-hold',
        label: 'Sealed hold, release, canister side',
        taken: 'before-repair',
        receivedAt: '2026-03-05T10:50:00.000Z',
      },
    ],
    findings: [{ taken: 'before-repair', madeAt: '2026-03-05T11:30:00.000Z' }],
    checks: [
      {
        at: '2026-03-05T11:20:00.000Z',
        by: DEMO_TECHNICIAN,
        what: 'Hydrocarbon sniffer over the access hatch, tank released by the refuel request first',
        result: 'Rises at the sender flange, nowhere else.',
        measured: { value: 180, unit: 'ppm' },
        speaksFor: ['leak'],
        speaksAgainst: [],
        strength: 'clear',
      },
    ],
  },
  {
    ...NOTHING_YET,
    key: 'saloon',
    openedAt: '2026-03-06T07:30:00.000Z',
    complaint: { words: 'The third workshop now. Two new caps, the same lamp.', types: [] },
    codes: [
      { code: 'P0456', status: 'stored' },
      { code: 'P0456', status: 'permanent' },
    ],
    vehicle: { name: 'Blue saloon', registration: 'DEMO 8', modelYear: 2012, odometerKm: 176_800 },
    car: 'saloon',
    recordings: [
      {
        name: 'saloon-engine-off',
        label: 'Engine-off test after a drive',
        taken: 'before-repair',
        receivedAt: '2026-03-06T09:10:00.000Z',
      },
    ],
    findings: [{ taken: 'before-repair', madeAt: '2026-03-06T09:20:00.000Z' }],
  },
  {
    ...NOTHING_YET,
    key: 'roadster',
    openedAt: '2026-03-06T10:15:00.000Z',
    complaint: {
      words: 'It hisses hard when I open the cap, and once the tank made a bang.',
      types: ['hiss or collapse'],
    },
    codes: [{ code: 'P2422', status: 'pending' }],
    vehicle: { name: 'Old roadster', registration: 'DEMO 9', modelYear: 2004 },
    car: 'roadster',
  },
  {
    ...NOTHING_YET,
    key: 'city-car',
    openedAt: '2026-03-06T11:45:00.000Z',
    complaint: { words: 'Smells of petrol on hot days. Only outside, by the right rear wheel.', types: ['smell'] },
    codes: [],
    vehicle: { name: 'Small city car', registration: 'DEMO 10' },
    car: null,
  },
];
