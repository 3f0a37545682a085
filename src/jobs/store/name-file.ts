/** A row may name a raw file only when the file lies flushed on the disk. */
import { sql } from 'kysely';
import type { KeptFile } from '../job-store.ts';
import type { Job } from '../record/job.ts';
import { StoreProblem } from '../store-problem.ts';
import type { Tx } from './queries.ts';
import type { StoreContext } from './store-context.ts';

/** Held shared by those who name files, alone by those who clear unused ones away. */
export const FILES_LOCK = 7_203_312;

export async function nameFiles(
  context: StoreContext,
  tx: Tx,
  jobId: string,
  files: readonly KeptFile[],
): Promise<void> {
  if (files.length === 0) return;
  await sql`select pg_advisory_xact_lock_shared(${FILES_LOCK})`.execute(tx);
  for (const { sha256 } of files) {
    if (await context.files.has(sha256)) continue;
    throw new StoreProblem('missing-file', `A raw file is to be named that has not been kept: ${sha256}.`, {
      where: context.files.path(sha256),
      advice: 'Keep the file first, then name it.',
    });
  }
  const kept_at = context.now();
  await tx
    .insertInto('files')
    .values(files.map(({ sha256, bytes }) => ({ sha256, bytes, kept_at })))
    .onConflict((conflict) => conflict.column('sha256').doNothing())
    .execute();
  await tx
    .insertInto('job_files')
    .values(files.map(({ sha256 }) => ({ job_id: jobId, sha256 })))
    .onConflict((conflict) => conflict.columns(['job_id', 'sha256']).doNothing())
    .execute();
}

/** Raw files that the job's sections name. */
export function filesOf(job: Pick<Job, 'recordings' | 'attachments'>): readonly KeptFile[] {
  const files = new Map<string, KeptFile>();
  for (const { sha256, bytes } of [...job.recordings, ...job.attachments]) files.set(sha256, { sha256, bytes });
  return [...files.values()];
}
