/** A capture that has ended becomes a recording of the job like a file that was sent, or one of its files. */
import { randomUUID } from 'node:crypto';
import { createReadStream } from 'node:fs';
import type { Actor } from '../../jobs/job-store.ts';
import type { Job, RecordingEntry } from '../../jobs/record/job.ts';
import type { LiveKeep } from '../contract/live.ts';
import type { Parts } from '../parts.ts';
import { countsForFinding } from '../recordings/capture-facts.ts';
import { Refusal } from '../refusal.ts';
import type { EndedCapture } from './live-board.ts';

export interface Kept {
  readonly job: Job;
  readonly recordingId: string | null;
}

const captureName = (startedAt: string): string => `car-${startedAt.slice(0, 19).replace(/[T:]/g, '-')}.log`;

/** @throws Refusal when it holds no recording; the capture stays where it is then */
export async function keepCapture(
  { store, readings }: Pick<Parts, 'store' | 'readings'>,
  { about, path }: EndedCapture,
  { procedure, label, as }: LiveKeep,
  actor: Actor,
): Promise<Kept> {
  const { jobId, taken, ventShutS, startedAt } = about;
  const { car } = await store.jobs.read(jobId);
  const kept = await store.files.keep(createReadStream(path));
  const at = new Date().toISOString();
  const fileName = captureName(startedAt);
  if (as === 'file') {
    const caption = label ?? '';
    const file = { id: randomUUID(), fileName, mediaType: 'text/plain', ...kept, at, caption };
    return { job: await store.jobs.addAttachment(jobId, actor, file), recordingId: null };
  }
  const facts = {
    ...(procedure === null ? {} : { procedure }),
    ...(ventShutS.length === 0 ? {} : { ventShutS }),
  };
  const entry: RecordingEntry = {
    id: randomUUID(),
    label: label === undefined || label.trim() === '' ? fileName : label.trim(),
    fileName,
    ...kept,
    receivedAt: at,
    useInFinding: true,
    taken,
    ...(Object.keys(facts).length === 0 ? {} : { facts }),
  };
  const preview = await readings.preview(readings.inputsOf(car, entry));
  if (preview.problem !== null && preview.capture === undefined) {
    const { code, message, ...more } = preview.problem;
    throw new Refusal(code, message, more);
  }
  const job = await store.jobs.addRecording(jobId, actor, { ...entry, useInFinding: countsForFinding(preview) });
  return { job, recordingId: entry.id };
}
