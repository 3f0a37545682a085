/** One change of a job: locked, checked against the version, written with its history in one transaction. */
import { type Actor, NoSuchJob, VersionConflict } from '../job-store.ts';
import type { Job } from '../record/job.ts';
import { summaryColumns } from './job-summary.ts';
import { withOutdated } from './outdated.ts';
import type { Tx } from './queries.ts';
import { checkJobId, readJob } from './read-job.ts';
import type { StoreContext } from './store-context.ts';
import { type Event, writeHistory } from './write-history.ts';

/** The job as it shall be, and what the history says of it. */
export interface Change extends Event {
  readonly job: Job;
}

/** `version` undefined: the change loses nothing of others', so it is made to the job as it stands. */
export async function changeJob(
  context: StoreContext,
  id: string,
  actor: Actor,
  version: number | undefined,
  make: (tx: Tx, job: Job) => Promise<Change>,
): Promise<Job> {
  checkJobId(id);
  return context.transaction(async (tx) => {
    // First the lock, then the reading: what is read is what stands until the end.
    const locked = await tx.selectFrom('jobs').select('version').where('id', '=', id).forUpdate().executeTakeFirst();
    if (locked === undefined) throw new NoSuchJob(id);
    const job = await readJob(tx, id, context.sheets, context.program);
    if (version !== undefined && job.version !== version) throw new VersionConflict(job);
    const at = context.now();
    const change = await make(tx, job);
    const changed = withOutdated(
      { ...change.job, version: job.version + 1, changedAt: at.toISOString() },
      context.program,
    );
    await writeHistory(tx, changed, actor, at, change);
    await tx
      .updateTable('jobs')
      .set({ version: changed.version, changed_at: at, closed: changed.closed, ...summaryColumns(changed) })
      .where('id', '=', id)
      .execute();
    return changed;
  });
}
