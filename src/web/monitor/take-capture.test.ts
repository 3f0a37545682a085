import { expect, test } from 'vitest';
import type { RecordingEntry } from '../../jobs/record/job.ts';
import { SECTIONS } from '../../jobs/record/job.ts';
import type { CaptureFacts } from '../../server/contract/recordings.ts';
import { readingFrom } from './take-capture.ts';

const ENTRY: RecordingEntry = {
  id: '6d0f2a51-8a57-4c5e-9a80-6f0d5c1a2b77',
  label: 'drive',
  fileName: 'drive.log',
  sha256: 'a'.repeat(64),
  bytes: 1,
  receivedAt: '2026-03-04T09:00:00.000Z',
  useInFinding: true,
  taken: 'before-repair',
};
const SAID: CaptureFacts = {
  status: { warmUpsSinceClear: 3 },
  codes: [
    { code: 'P0456', status: 'confirmed', unit: '7E8' },
    { code: 'P0456', status: 'confirmed', unit: '7EA' },
    { code: 'P0456', status: 'permanent', unit: '7E8' },
  ],
  codesRead: ['confirmed', 'permanent'],
  freezeFrames: [
    {
      unit: '7E8',
      number: 0,
      code: 'P0456',
      items: [
        { id: 0x05, name: 'coolant temperature', value: 363.15, unit: 'K' },
        { id: 0x2f, name: 'fuel level', value: 0.6, unit: '1' },
        { id: 0x0d, name: 'vehicle speed', value: 10, unit: 'm/s' },
        { id: 0x32, name: 'tank pressure, gauge', value: -124.5, unit: 'Pa' },
      ],
    },
  ],
  results: [
    { monitorId: 1, testId: 1, scalingId: 1, unit: 'V', value: 1, lowest: 0, highest: 2, passed: true },
    {
      monitorId: 60,
      monitor: 'leak',
      testId: 129,
      scalingId: 254,
      unit: 'Pa',
      value: -12,
      lowest: -50,
      highest: 0,
      passed: true,
    },
  ],
};
test('a reading keeps the evaporative results alone, and its time is that of the capture where it says so', () => {
  const made = { id: '6d0f2a51-8a57-4c5e-9a80-6f0d5c1a2b78', by: 'Anna' };
  const reading = readingFrom(SAID, ENTRY, made);
  expect(reading.results.map(({ monitorId }) => monitorId)).toEqual([60]);
  expect(reading.at).toBe(ENTRY.receivedAt);
  expect(readingFrom({ ...SAID, at: '2026-03-03T09:00:00.000Z' }, ENTRY, made).at).toBe('2026-03-03T09:00:00.000Z');
  const monitor = { readings: [reading], conditions: null, parkedBeforeS: {}, plan: { routine: [] } };
  expect(SECTIONS.monitor.safeParse(monitor).success).toBe(true);
});
