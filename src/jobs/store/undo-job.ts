/** Takes changes back, newest first; each undoing is a change of its own, so nothing is ever lost. */
import { type Actor, NothingToUndo } from '../job-store.ts';
import type { Job, SectionName } from '../record/job.ts';
import { changeJob } from './change-job.ts';
import type { Tx } from './queries.ts';
import type { StoreContext } from './store-context.ts';
import { writeSection } from './write-section.ts';

async function newestStanding(tx: Tx, jobId: string) {
  return tx
    .selectFrom('history as change')
    .select(['change.version', 'change.section', 'change.before'])
    .where('change.job_id', '=', jobId)
    .where('change.what', 'in', ['changed', 'uploaded'])
    .where(({ not, exists, selectFrom }) =>
      not(
        exists(
          selectFrom('history as undoing')
            .select('undoing.version')
            .whereRef('undoing.job_id', '=', 'change.job_id')
            .whereRef('undoing.undoes', '=', 'change.version'),
        ),
      ),
    )
    .orderBy('change.version', 'desc')
    .limit(1)
    .executeTakeFirst();
}

export function undoJob(context: StoreContext, id: string, actor: Actor, version: number): Promise<Job> {
  return changeJob(context, id, actor, version, async (tx, job) => {
    const change = await newestStanding(tx, id);
    if (change === undefined) throw new NothingToUndo(job);
    const section = change.section as SectionName;
    await writeSection(tx, id, section, change.before);
    return {
      job: { ...job, [section]: change.before },
      what: 'undone',
      section,
      before: job[section],
      after: change.before,
      undoes: change.version,
    };
  });
}
