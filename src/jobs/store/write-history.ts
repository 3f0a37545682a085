/** The history: who, when, what, with the section before and after. */
import type { Actor } from '../job-store.ts';
import type { HistoryEntry, Job } from '../record/job.ts';
import type { Tx } from './queries.ts';
import { plainText } from './search-text.ts';

export interface Event {
  readonly what: HistoryEntry['what'];
  readonly section: string | null;
  readonly before?: unknown;
  readonly after?: unknown;
  /** The version whose change is taken back. */
  readonly undoes?: number;
}

const json = (value: unknown): string | null => (value === undefined ? null : JSON.stringify(value));

export async function writeHistory(
  tx: Tx,
  job: Pick<Job, 'id' | 'version'>,
  actor: Actor,
  at: Date,
  event: Event,
): Promise<void> {
  await tx
    .insertInto('history')
    .values({
      job_id: job.id,
      version: job.version,
      at,
      made_by: plainText(actor.name),
      user_id: actor.userId ?? null,
      what: event.what,
      section: event.section,
      before: json(event.before),
      after: json(event.after),
      undoes: event.undoes ?? null,
    })
    .execute();
}
