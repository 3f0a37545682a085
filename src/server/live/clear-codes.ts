/**
 * Clearing codes (service $04). First everything that the car has said goes into the job: its codes with their freeze frames,
 * a note with readiness and counts, and the capture so far; only then is the car asked.
 */
import { randomUUID } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { type Actor, VersionConflict } from '../../jobs/job-store.ts';
import type { Job } from '../../jobs/record/job.ts';
import { takenCodes } from '../../jobs/record/taken-codes.ts';
import type { Cleared } from '../contract/live.ts';
import type { Parts } from '../parts.ts';
import { Refusal } from '../refusal.ts';
import type { LiveRecording } from './live-recording.ts';
import { afterClearing, beforeClearing, type NoteLanguage } from './said-words.ts';

const MOST_TRIES = 5;

/** Changes a section as it stands at the moment; somebody else may be at work on the job. */
export async function changeNow<Name extends 'codes' | 'notes'>(
  store: Parts['store'],
  jobId: string,
  actor: Actor,
  section: Name,
  next: (job: Job) => Job[Name],
): Promise<Job> {
  for (let tries = 1; ; tries++) {
    const job = await store.jobs.read(jobId);
    const value = next(job);
    if (value === job[section]) return job;
    try {
      return await store.jobs.change(jobId, actor, job.version, { section, value } as never);
    } catch (error) {
      if (!(error instanceof VersionConflict) || tries >= MOST_TRIES) throw error;
    }
  }
}

const addNote = (store: Parts['store'], jobId: string, actor: Actor, text: string): Promise<Job> =>
  changeNow(store, jobId, actor, 'notes', ({ notes }) => [
    ...notes,
    { id: randomUUID(), at: new Date().toISOString(), by: actor.name, text: text.slice(0, 8000) },
  ]);

const clockWords = (language: NoteLanguage): string =>
  new Date().toLocaleString(language === 'de' ? 'de-DE' : 'en-GB', { dateStyle: 'medium', timeStyle: 'short' });

export async function clearCodes(
  { store }: Pick<Parts, 'store'>,
  live: LiveRecording,
  actor: Actor,
  language: NoteLanguage,
): Promise<Cleared> {
  const { jobId, state, said } = live.status();
  if (state !== 'sampling' || said === null)
    throw new Refusal('not-possible', 'The car is not connected, so nothing was cleared.', {
      found: `the state ${state}`,
      expected: 'a car that answers, with codes and readiness read',
      advice: 'Wait until it records again.',
    });
  await changeNow(store, jobId, actor, 'codes', ({ codes }) => takenCodes(codes, said, 'before-repair').next);
  const kept = await store.files.keep(createReadStream(live.capturePath));
  const at = new Date().toISOString();
  await store.jobs.addAttachment(jobId, actor, {
    id: randomUUID(),
    fileName: `before-clearing-codes-${at.slice(0, 19).replace(/[T:]/g, '-')}.log`,
    mediaType: 'text/plain',
    ...kept,
    at,
    caption: '',
  });
  await addNote(store, jobId, actor, beforeClearing(said, clockWords(language), language));
  let units: readonly string[];
  try {
    units = await live.clearCodes();
  } catch (error) {
    throw new Refusal('not-possible', 'The car went away; nothing was cleared as far as is known.', {
      ...(error instanceof Error ? { found: error.message } : {}),
      advice: 'What it had said is in the job. Read the codes again when it is back.',
    });
  }
  const job = await addNote(store, jobId, actor, afterClearing(units, clockWords(language), language));
  return { cleared: units.length > 0, units, job };
}
