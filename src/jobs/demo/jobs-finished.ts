/** The jobs of the demo shop that have come to a repair or to a sound car. */
import { DEMO_TECHNICIAN, type DemoJob } from './demo-job.ts';

export const FINISHED_JOBS: readonly DemoJob[] = [
  {
    key: 'hatchback',
    openedAt: '2026-03-02T07:40:00.000Z',
    complaint: {
      words:
        'The yellow engine lamp came on two days after I filled up. It drives like always. My neighbour tightened the cap, but the lamp stays on.',
      types: [],
    },
    codes: [
      {
        code: 'P0442',
        status: 'stored',
        freezeFrame: [
          { name: 'engine speed', value: '1620', unit: '1/min' },
          { name: 'vehicle speed', value: '58', unit: 'km/h' },
          { name: 'coolant temperature', value: '84', unit: '°C' },
          { name: 'fuel level', value: '45', unit: '%' },
        ],
      },
    ],
    vehicle: { name: 'Red hatchback', registration: 'DEMO 1', modelYear: 2013, odometerKm: 128_400 },
    car: 'hatchback',
    recordings: [
      {
        name: 'hatchback-before',
        label: 'Leak self-test on arrival',
        taken: 'before-repair',
        receivedAt: '2026-03-02T08:05:00.000Z',
      },
      {
        name: 'hatchback-after',
        label: 'Leak self-test with new cap',
        taken: 'after-repair',
        receivedAt: '2026-03-02T10:20:00.000Z',
      },
    ],
    findings: [
      { taken: 'before-repair', madeAt: '2026-03-02T09:10:00.000Z' },
      { taken: 'after-repair', madeAt: '2026-03-02T10:24:00.000Z' },
    ],
    checks: [
      {
        at: '2026-03-02T08:30:00.000Z',
        by: DEMO_TECHNICIAN,
        what: 'Cap on the bench tester, with the adapter for this filler',
        result: 'Fails: flow past the seal, seal flattened on one side.',
        measured: { value: 95, unit: 'cm3/min' },
        speaksFor: ['leak'],
        speaksAgainst: [],
        strength: 'strong',
      },
      {
        at: '2026-03-02T08:45:00.000Z',
        by: DEMO_TECHNICIAN,
        what: 'Vent valve energised, canister side drawn to 2 kPa with the hand pump',
        result: 'Holds: less than 0.1 kPa lost in one minute.',
        measured: { value: 0.1, unit: 'kPa/min' },
        speaksFor: [],
        speaksAgainst: ['vent_leak'],
        strength: 'strong',
      },
      {
        at: '2026-03-02T09:25:00.000Z',
        by: DEMO_TECHNICIAN,
        what: 'Split the system in three',
        result: 'Tank and neck flow, the rest is tight.',
        speaksFor: [],
        speaksAgainst: [],
        strength: 'clear',
        checkId: 'T21',
        answer: {
          numbers: { 'purge side': '0.05 mm', 'canister and vent': '0.08 mm', 'tank and neck': '0.60 mm' },
        },
      },
      {
        at: '2026-03-02T10:05:00.000Z',
        by: DEMO_TECHNICIAN,
        what: 'Split the system in three, with the new cap',
        result: 'All three tight.',
        speaksFor: [],
        speaksAgainst: [],
        strength: 'clear',
        checkId: 'T21',
        answer: {
          numbers: { 'purge side': '0.05 mm', 'canister and vent': '0.08 mm', 'tank and neck': '0.06 mm' },
        },
      },
    ],
    repairs: [
      {
        at: '2026-03-02T09:40:00.000Z',
        by: DEMO_TECHNICIAN,
        what: 'Filler cap replaced; seal land of the neck cleaned and looked at, no rust. Codes not erased, so that the car decides.',
        parts: [{ name: 'filler cap', number: 'DEMO-CAP-01', price: 18.5 }],
        minutes: 10,
        addresses: ['leak'],
      },
    ],
    proof: {
      verdict: 'held',
      limit: { label: '0.020 in', diameterMm: 0.5 },
      words:
        'Same self-test at the same level and temperature, before and after; the three sections were measured again too.',
      missing: '',
    },
    notes: [
      {
        at: '2026-03-02T08:00:00.000Z',
        by: DEMO_TECHNICIAN,
        text: 'Customer fills to the brim after the first click. Asked not to.',
      },
    ],
    handOver: { madeAt: '2026-03-02T10:40:00.000Z', language: 'en' },
  },
  {
    key: 'pickup',
    openedAt: '2026-03-03T09:15:00.000Z',
    complaint: {
      words: 'I cannot fill it. The nozzle clicks off every few seconds, at every station, even with half a tank.',
      types: ['slow fill'],
    },
    codes: [],
    vehicle: { name: 'White pick-up', registration: 'DEMO 4', modelYear: 2011, odometerKm: 203_900 },
    car: 'pickup',
    recordings: [
      {
        name: 'pickup-filling',
        label: 'Filling, four tries',
        taken: 'before-repair',
        receivedAt: '2026-03-03T10:02:00.000Z',
        facts: { procedure: 'refuelling', fillFlowM3PerS: 632e-6 },
      },
    ],
    findings: [{ taken: 'before-repair', madeAt: '2026-03-03T11:20:00.000Z' }],
    checks: [
      {
        at: '2026-03-03T11:05:00.000Z',
        by: DEMO_TECHNICIAN,
        what: 'Filling with the vent hose off the canister, outdoors, nozzle bonded',
        result: 'Fills at full rate without clicking off.',
        speaksFor: ['vent_restricted', 'vent_stuck_closed'],
        speaksAgainst: ['path_blocked'],
        strength: 'strong',
      },
    ],
    repairs: [
      {
        at: '2026-03-03T13:30:00.000Z',
        by: DEMO_TECHNICIAN,
        what: 'Vent filter full of dust and spider web: filter replaced, hose to the canister blown through with nitrogen after taking it off the car.',
        parts: [{ name: 'vent filter', number: 'DEMO-VF-20', price: 31 }],
        minutes: 45,
        addresses: ['vent_restricted'],
      },
    ],
    proof: null,
    notes: [],
  },
  {
    key: 'coupe',
    openedAt: '2026-03-04T12:00:00.000Z',
    complaint: {
      words:
        'It failed inspection because the evaporative test had not run. No lamp. They said: drive it more. I did, for three weeks.',
      types: ['not ready'],
    },
    codes: [],
    vehicle: { name: 'Black coupé', registration: 'DEMO 5', modelYear: 2016, odometerKm: 88_150 },
    car: 'coupe',
    recordings: [
      {
        name: 'coupe-hot-fuel',
        label: 'Commanded self-test, hot day',
        taken: 'before-repair',
        receivedAt: '2026-03-04T12:40:00.000Z',
      },
    ],
    findings: [{ taken: 'before-repair', madeAt: '2026-03-04T12:44:00.000Z' }],
    checks: [],
    repairs: [],
    proof: null,
    readings: [
      {
        at: '2026-03-04T12:20:00.000Z',
        by: DEMO_TECHNICIAN,
        source: 'by-hand',
        taken: 'before-repair',
        status: {
          sinceClear: {
            scope: 'since-clear',
            lampOn: false,
            codeCount: 0,
            ignition: 'spark',
            monitors: [
              { name: 'misfire', supported: true, complete: true },
              { name: 'fuel system', supported: true, complete: true },
              { name: 'components', supported: true, complete: true },
              { name: 'catalyst', supported: true, complete: true },
              { name: 'evaporative system', supported: true, complete: false },
              { name: 'oxygen sensor', supported: true, complete: true },
              { name: 'oxygen sensor heater', supported: true, complete: false },
            ],
          },
          warmUpsSinceClear: 38,
          distanceSinceClearM: 1_140_000,
          inUse: { EVAPCOMP: 2, EVAPCOND: 41 },
        },
        codes: [],
        codesRead: ['confirmed', 'pending', 'permanent'],
        results: [],
      },
    ],
    notes: [
      {
        at: '2026-03-04T12:50:00.000Z',
        by: DEMO_TECHNICIAN,
        text: 'Parks in a heated garage and starts warm every morning. Asked to park outdoors for two nights.',
      },
    ],
  },
];
