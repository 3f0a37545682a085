/** Invented parts of jobs for tests of the store. */
import { createHash, randomUUID } from 'node:crypto';
import type { FileStore, KeptFile } from '../../src/jobs/job-store.ts';
import type { Job, JobFinding, RecordingEntry } from '../../src/jobs/record/job.ts';
import { storedSheetSchema } from '../../src/report/sheet.ts';
import { sampleSheet } from '../e2e/sample-sheet.ts';

export const ANNA = { name: 'Anna' } as const;
export const BERT = { name: 'Bert' } as const;
export const MOMENT = '2026-03-01T08:30:00.000Z';

export const sampleCar = sampleSheet.car;
export const sampleProgram = sampleSheet.program;

export async function* piecesOf(content: string | Uint8Array): AsyncGenerator<Uint8Array> {
  const bytes = typeof content === 'string' ? Buffer.from(content, 'utf8') : content;
  const middle = Math.floor(bytes.byteLength / 2);
  yield bytes.subarray(0, middle);
  yield bytes.subarray(middle);
}

export async function bytesOf(pieces: AsyncIterable<Uint8Array>): Promise<Buffer> {
  const parts: Uint8Array[] = [];
  for await (const piece of pieces) parts.push(piece);
  return Buffer.concat(parts);
}

export const sha256Of = (content: string | Uint8Array): string => createHash('sha256').update(content).digest('hex');

export function recording(kept: KeptFile, label = 'idle test'): RecordingEntry {
  return {
    id: randomUUID(),
    label,
    fileName: `${label}.csv`,
    ...kept,
    receivedAt: MOMENT,
    useInFinding: true,
    taken: 'before-repair',
  };
}

export async function keptRecording(files: FileStore, content: string | Uint8Array, label?: string) {
  return recording(await files.keep(piecesOf(content)), label);
}

export function finding(inputsSha256: string, program = sampleProgram): Omit<JobFinding, 'outdated'> {
  // As it comes from a worker or a file: JSON knows no -0.
  const sheet = storedSheetSchema.parse(JSON.parse(JSON.stringify({ ...sampleSheet, program })));
  return { id: randomUUID(), madeAt: MOMENT, inputsSha256, sheet };
}

export const sampleCheck: Job['checks'][number] = {
  id: '3f0e6a52-2f7c-4a1f-8d8e-0f9f53a0b111',
  at: MOMENT,
  by: 'Anna',
  what: 'Clamped the purge line at the valve',
  result: 'The vacuum held after the clamp',
  measured: { value: 1.25, unit: 'kPa' },
  speaksFor: ['purge_leak'],
  speaksAgainst: ['leak', 'vent_leak'],
  strength: 'clear',
};

export const sampleRepair: Job['repairs'][number] = {
  id: '3f0e6a52-2f7c-4a1f-8d8e-0f9f53a0b222',
  at: MOMENT,
  by: 'Bert',
  what: 'Purge valve renewed',
  parts: [{ name: 'purge valve', number: 'X-1', price: 48.5 }],
  minutes: 35,
  addresses: ['purge_leak'],
};

/** What a capture of `recordingId` said, and all else that the section can hold. */
export const sampleMonitor = (recordingId: string): Job['monitor'] => ({
  readings: [
    {
      id: '3f0e6a52-2f7c-4a1f-8d8e-0f9f53a0b444',
      at: MOMENT,
      by: 'Anna',
      source: 'capture',
      fileName: 'drive.log',
      recordingId,
      taken: 'before-repair',
      status: {
        sinceClear: {
          scope: 'since-clear',
          lampOn: true,
          codeCount: 1,
          ignition: 'spark',
          monitors: [{ name: 'evaporative system', supported: true, complete: false }],
        },
        warmUpsSinceClear: 255,
        distanceSinceClearM: 1_609_344,
        inUse: { EVAPCOMP: 16, EVAPCOND: 50 },
        vin: '1M8GDM9AXKP042788',
      },
      codes: [{ code: 'P0456', status: 'permanent' }],
      codesRead: ['confirmed', 'permanent'],
      results: [
        {
          monitorId: 60,
          monitor: 'leak, 0.5 mm (0.020 in)',
          testId: 129,
          scalingId: 254,
          unit: 'Pa',
          value: -12.5,
          lowest: -50,
          highest: 0,
          passed: true,
        },
      ],
    },
  ],
  conditions: {
    schema: 'vaporwright-monitor-1',
    label: 'of this car',
    conditions: [{ id: 'key off', kind: 'parked-after', leastS: 2700, mark: 'given by hand' }],
  },
  parkedBeforeS: { [recordingId]: 0.1 + 0.2 },
  plan: {
    forecast: { text: '06:00 4,5\n07:00 5', unit: 'C', typedAt: MOMENT, zone: 'Europe/Berlin' },
    fuelLevel: 0.45,
    routine: [{ hour: 7, minute: 30, lengthS: 1800, weekdays: [1, 2, 3, 4, 5] }],
    inspectionAt: MOMENT,
  },
  engineOff: { fuelTemperatureK: 301.15 },
  ruleId: 'us-federal',
});
