/** Findings and the hand-over document of the demo shop, made as the server makes them. */
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { PROGRAM } from '../src/cli/version.ts';
import { recordingFile } from '../src/jobs/demo/demo-files.ts';
import { DEMO_TECHNICIAN, type DemoFinding, type DemoJob } from '../src/jobs/demo/demo-job.ts';
import { handOverOf } from '../src/jobs/hand-over/hand-over-of.ts';
import { canonicalJson } from '../src/jobs/record/finding-inputs.ts';
import type { Job } from '../src/jobs/record/job.ts';
import { PDF_FONT_FILES } from '../src/report/fonts.ts';
import { handOverPdf } from '../src/report/hand-over/pdf.ts';
import { REFERENCE_LIMITS } from '../src/report/limits.ts';
import type { StoredSheet } from '../src/report/sheet.ts';
import { handChecksFrom } from '../src/server/finding/hand-checks.ts';
import { makeSheetFrom } from '../src/server/finding/make-sheet.ts';
import { loadFonts } from '../src/server/hand-over/load-fonts.ts';
import { type ReadFile, readRecordingFile } from '../src/server/recordings/read-file.ts';

async function readsOf(folder: string, told: DemoJob, job: Job, { taken }: DemoFinding): Promise<readonly ReadFile[]> {
  const reads: ReadFile[] = [];
  for (const [i, entry] of job.recordings.entries()) {
    const use = told.recordings[i];
    if (entry.taken !== taken || use === undefined) continue;
    const read = await readRecordingFile(join(folder, recordingFile(use.name)), {
      fileName: entry.fileName,
      ...(job.car === null ? {} : { car: job.car }),
      ...(entry.facts === undefined ? {} : { notes: entry.facts }),
    });
    reads.push({ ...read, recording: { ...read.recording, label: entry.label } });
  }
  return reads;
}

export async function findingOf(folder: string, told: DemoJob, job: Job, made: DemoFinding): Promise<StoredSheet> {
  const { car } = job;
  if (car === null) throw new Error(`${told.key}: a finding needs a car.`);
  const reads = await readsOf(folder, told, job, made);
  // What was complained of, read and checked before a repair says nothing of the car after it.
  const isBefore = made.taken === 'before-repair';
  return makeSheetFrom({
    car,
    carSha256: createHash('sha256').update(canonicalJson(car)).digest('hex'),
    recordings: reads,
    phases: reads.map(() => []),
    complaints: isBefore ? job.complaint.types : [],
    codes: isBefore ? job.codes.map(({ code }) => code) : [],
    handChecks: isBefore ? handChecksFrom(job.checks) : [],
    program: PROGRAM,
    madeAt: made.madeAt,
  });
}

export async function handOverDocumentOf(job: Job, made: NonNullable<DemoJob['handOver']>): Promise<Uint8Array> {
  const handOver = handOverOf(job, [], {
    language: made.language,
    units: { pressure: 'kPa', length: 'mm', temperature: 'degC' },
    parts: ['customer', 'evidence'],
    shop: { name: 'Demo workshop', address: 'invented' },
    technician: DEMO_TECHNICIAN,
    limits: REFERENCE_LIMITS,
    program: PROGRAM,
    madeAt: made.madeAt,
  });
  return handOverPdf(handOver, loadFonts(PDF_FONT_FILES));
}
