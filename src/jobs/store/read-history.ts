import { NoSuchJob } from '../job-store.ts';
import type { HistoryEntry } from '../record/job.ts';
import { checkJobId } from './read-job.ts';
import type { StoreContext } from './store-context.ts';

/** Oldest first. @throws NoSuchJob */
export async function readHistory(context: StoreContext, id: string): Promise<readonly HistoryEntry[]> {
  checkJobId(id);
  const rows = await context.run((sql) =>
    sql.selectFrom('history').selectAll().where('job_id', '=', id).orderBy('version').execute(),
  );
  // Every job has at least the entry of its making.
  if (rows.length === 0) throw new NoSuchJob(id);
  return rows.map((row) => ({
    version: row.version,
    at: row.at.toISOString(),
    by: row.made_by,
    what: row.what as HistoryEntry['what'],
    section: row.section,
    before: row.before,
    after: row.after,
    ...(row.undoes === null ? {} : { undoes: row.undoes }),
  }));
}
