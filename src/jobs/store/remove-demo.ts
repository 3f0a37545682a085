/** Removes the invented jobs, and the raw files that nothing else names. */
import { rm } from 'node:fs/promises';
import { sql } from 'kysely';
import { FILES_LOCK } from './name-file.ts';
import type { StoreContext } from './store-context.ts';

export async function removeDemoJobs(context: StoreContext): Promise<number> {
  const { removed, unused } = await context.transaction(async (tx) => {
    await sql`select pg_advisory_xact_lock(${FILES_LOCK})`.execute(tx);
    const gone = await tx.deleteFrom('jobs').where('demo', '=', true).returning('id').execute();
    const files = await tx
      .deleteFrom('files')
      .where(({ not, exists, selectFrom }) =>
        not(exists(selectFrom('job_files').select('job_id').whereRef('job_files.sha256', '=', 'files.sha256'))),
      )
      .returning('sha256')
      .execute();
    return { removed: gone.length, unused: files.map(({ sha256 }) => sha256) };
  });
  // Only after the rows are gone for good: a file without a row is waste, a row without a file is loss.
  for (const sha256 of unused) await removeUnused(context, sha256);
  return removed;
}

/** Nobody may begin to name the file while it is looked at and taken away. */
function removeUnused(context: StoreContext, sha256: string): Promise<void> {
  return context.transaction(async (tx) => {
    await sql`select pg_advisory_xact_lock(${FILES_LOCK})`.execute(tx);
    const named = await tx.selectFrom('files').select('sha256').where('sha256', '=', sha256).executeTakeFirst();
    if (named === undefined) await rm(context.files.path(sha256), { force: true });
  });
}
