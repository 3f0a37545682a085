/** Invented jobs for tests of the pages. */
import type { Job } from '../../src/jobs/record/job.ts';
import { EMPTY_MONITOR } from '../../src/jobs/record/monitor.ts';
import { sampleSheet } from './sample-sheet.ts';

const { limits: _, ...storedSheet } = sampleSheet;

export const SAMPLE_ID = '6d0f2a51-8a57-4c5e-9a80-6f0d5c1a2b01';

export const emptyJob = (id: string, number: number): Job => ({
  schema: 'vaporwright-job-1',
  id,
  number,
  version: 0,
  createdAt: '2026-11-25T08:00:00.000Z',
  changedAt: '2026-11-25T08:00:00.000Z',
  demo: false,
  closed: false,
  complaint: { words: '', types: [] },
  codes: [],
  vehicle: { name: '' },
  car: null,
  recordings: [],
  checks: [],
  repairs: [],
  proof: null,
  monitor: EMPTY_MONITOR,
  attachments: [],
  notes: [],
  findings: [],
  handOvers: [],
});

const RECORDING = '6d0f2a51-8a57-4c5e-9a80-6f0d5c1a2b11';

/** A job with something in every part. */
export const sampleJob: Job = {
  ...emptyJob(SAMPLE_ID, 14),
  demo: true,
  changedAt: '2026-11-25T09:30:00.000Z',
  complaint: { words: 'Light came on two days after filling up. Drives fine.', types: ['smell'] },
  codes: [
    {
      code: 'P0456',
      status: 'stored',
      freezeFrame: [
        { name: 'Fuel level', value: '41', unit: '%' },
        { name: 'Ambient temperature', value: '18', unit: '°C' },
      ],
    },
    { code: 'P0456', status: 'permanent' },
  ],
  vehicle: { name: 'Grey saloon, invented car no. 3', registration: 'XX 000', odometerKm: 84210 },
  car: storedSheet.car,
  recordings: [
    {
      id: RECORDING,
      label: 'Leak self-test',
      fileName: 'leak-self-test.csv',
      sha256: 'a'.repeat(64),
      bytes: 48211,
      receivedAt: '2026-11-25T09:12:00.000Z',
      useInFinding: true,
      taken: 'before-repair',
    },
  ],
  findings: [
    {
      id: '6d0f2a51-8a57-4c5e-9a80-6f0d5c1a2b21',
      madeAt: '2026-11-25T09:13:00.000Z',
      inputsSha256: 'b'.repeat(64),
      outdated: false,
      sheet: storedSheet as Job['findings'][number]['sheet'],
    },
  ],
  checks: [
    {
      id: '6d0f2a51-8a57-4c5e-9a80-6f0d5c1a2b31',
      at: '2026-11-25T09:20:00.000Z',
      by: 'R. (demo)',
      what: 'Purge valve, vacuum hold with the plug off',
      result: 'Lost 2 % in 30 s, holds.',
      measured: { value: 2, unit: '%' },
      speaksFor: [],
      speaksAgainst: ['purge_leak', 'purge_stuck_open'],
      strength: 'strong',
    },
  ],
  repairs: [
    {
      id: '6d0f2a51-8a57-4c5e-9a80-6f0d5c1a2b41',
      at: '2026-11-25T10:05:00.000Z',
      by: 'R. (demo)',
      what: 'Filler cap replaced, land of the neck cleaned.',
      parts: [{ name: 'Filler cap with seal', number: 'invented 17-3' }],
      minutes: 10,
      addresses: ['leak'],
    },
  ],
  proof: {
    before: [RECORDING],
    after: [],
    verdict: 'not-proven',
    words: '',
    missing: 'The same test has not been repeated yet.',
  },
  notes: [
    {
      id: '6d0f2a51-8a57-4c5e-9a80-6f0d5c1a2b51',
      at: '2026-11-25T10:10:00.000Z',
      by: 'R. (demo)',
      text: 'Owner tops off at the pump; told not to.',
    },
  ],
};

/** One that has hardly begun, and one that is done. */
export const otherJobs: readonly Job[] = [
  {
    ...emptyJob('6d0f2a51-8a57-4c5e-9a80-6f0d5c1a2b02', 15),
    complaint: { words: 'Nozzle clicks off, takes twenty minutes to fill.', types: ['slow fill'] },
    vehicle: { name: 'Blue estate, invented car no. 7' },
    car: { ...storedSheet.car, layout: 'sealed-tank' },
    changedAt: '2026-11-25T09:40:00.000Z',
  },
  {
    ...emptyJob('6d0f2a51-8a57-4c5e-9a80-6f0d5c1a2b03', 9),
    complaint: { words: 'Failed inspection, not ready.', types: ['not ready'] },
    codes: [{ code: 'P0442', status: 'pending' }],
    vehicle: { name: 'Red hatchback, invented car no. 1' },
    changedAt: '2026-11-20T15:00:00.000Z',
    closed: true,
  },
];
