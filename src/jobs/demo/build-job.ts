/** A demo job as a whole job record, from what is told and the files that ship with it. */
import { inputsSha256 } from '../inputs-hash.ts';
import type { Job, JobFinding, RecordingEntry } from '../record/job.ts';
import { EMPTY_MONITOR } from '../record/monitor.ts';
import { DEMO_CARS } from './cars.ts';
import {
  findingsFile,
  handOverFile,
  recordingFile,
  type ShippedFile,
  shippedFile,
  shippedFindings,
} from './demo-files.ts';
import { demoId } from './demo-id.ts';
import { DEMO_TECHNICIAN, type DemoJob } from './demo-job.ts';

export interface BuiltJob {
  readonly job: Job;
  /** Files that the job names: to be kept before the job is. */
  readonly files: readonly ShippedFile[];
}

const withId = <Entry extends object>(key: string, kind: string, entries: readonly Entry[]) =>
  entries.map((entry, i) => ({ id: demoId(`${key} ${kind} ${i}`), ...entry }));

async function recordingsOf(folder: string, told: DemoJob) {
  const files: ShippedFile[] = [];
  const entries: RecordingEntry[] = [];
  for (const { name, label, taken, receivedAt, facts } of told.recordings) {
    const file = await shippedFile(folder, recordingFile(name));
    files.push(file);
    entries.push({
      id: demoId(`recording ${name}`),
      label,
      fileName: file.name,
      sha256: file.sha256,
      bytes: file.bytes.length,
      receivedAt,
      useInFinding: true,
      taken,
      ...(facts === undefined ? {} : { facts }),
    });
  }
  return { files, entries };
}

/** The job with its recordings and all that was typed in, before any finding or document. */
export async function toldJob(folder: string, told: DemoJob, number: number): Promise<BuiltJob> {
  const { key, openedAt, complaint, codes, vehicle, proof } = told;
  const { files, entries } = await recordingsOf(folder, told);
  const ids = (taken: RecordingEntry['taken']) => entries.filter((entry) => entry.taken === taken).map(({ id }) => id);
  const job: Job = {
    schema: 'vaporwright-job-1',
    id: demoId(`job ${key}`),
    number,
    version: 1,
    createdAt: openedAt,
    changedAt: openedAt,
    demo: true,
    closed: false,
    complaint,
    codes,
    vehicle,
    car: told.car === null ? null : DEMO_CARS[told.car],
    recordings: entries,
    checks: withId(key, 'check', told.checks),
    repairs: withId(key, 'repair', told.repairs),
    proof: proof === null ? null : { before: ids('before-repair'), after: ids('after-repair'), ...proof },
    monitor: { ...EMPTY_MONITOR, readings: withId(key, 'reading', told.readings ?? []) },
    attachments: [],
    notes: withId(key, 'note', told.notes),
    findings: [],
    handOvers: [],
  };
  return { job, files };
}

/** The same with the findings that ship with it. */
export async function foundJob(folder: string, told: DemoJob, number: number): Promise<BuiltJob> {
  const { job, files } = await toldJob(folder, told, number);
  if (told.findings.length === 0) return { job, files };
  const sheets = await shippedFindings(folder, told.key);
  if (sheets.length !== told.findings.length) {
    throw new Error(
      `${findingsFile(told.key)} holds ${sheets.length} findings, expected ${told.findings.length}: make the demo shop anew.`,
    );
  }
  const inputs = inputsSha256(job);
  const findings = sheets.map(
    (sheet, i): JobFinding => ({
      id: demoId(`${told.key} finding ${i}`),
      madeAt: sheet.madeAt,
      inputsSha256: inputs,
      // The store knows the running program and decides.
      outdated: false,
      sheet,
    }),
  );
  return { job: { ...job, findings }, files };
}

/** The whole job, with its hand-over document where one ships. */
export async function buildJob(folder: string, told: DemoJob, number: number): Promise<BuiltJob> {
  const { job, files } = await foundJob(folder, told, number);
  const { handOver } = told;
  if (handOver === undefined) return { job, files };
  const document = await shippedFile(folder, handOverFile(told.key));
  const entry: Job['handOvers'][number] = {
    id: demoId(`${told.key} hand-over`),
    by: DEMO_TECHNICIAN,
    pdfSha256: document.sha256,
    ...handOver,
  };
  return { job: { ...job, handOvers: [entry] }, files: [...files, document] };
}
