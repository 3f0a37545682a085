/** The store of jobs over any PostgreSQL. */
import type { Actor, JobStore, SectionChange } from '../job-store.ts';
import type { Job } from '../record/job.ts';
import { addFinding, addHandOver, addUploaded } from './append-to-job.ts';
import { changeJob } from './change-job.ts';
import { createJob } from './create-job.ts';
import { importJob } from './import-job.ts';
import { listJobs } from './list-jobs.ts';
import { filesOf, nameFiles } from './name-file.ts';
import { readHistory } from './read-history.ts';
import { readJob } from './read-job.ts';
import { removeDemoJobs } from './remove-demo.ts';
import type { StoreContext } from './store-context.ts';
import { undoJob } from './undo-job.ts';
import { writeSection } from './write-section.ts';

function changeSection(
  context: StoreContext,
  id: string,
  actor: Actor,
  version: number,
  { section, value }: SectionChange,
): Promise<Job> {
  return changeJob(context, id, actor, version, async (tx, job) => {
    const changed = { ...job, [section]: value };
    await nameFiles(context, tx, id, filesOf(changed));
    await writeSection(tx, id, section, value);
    return { job: changed, what: 'changed', section, before: job[section], after: value };
  });
}

function setClosed(context: StoreContext, id: string, actor: Actor, version: number, closed: boolean): Promise<Job> {
  return changeJob(context, id, actor, version, async (_tx, job) => ({
    job: { ...job, closed },
    what: closed ? 'closed' : 'reopened',
    section: null,
  }));
}

export function postgresJobStore(context: StoreContext): JobStore {
  return {
    list: (query) => listJobs(context, query),
    create: (actor, job) => createJob(context, actor, job),
    read: (id) => context.run((sql) => readJob(sql, id, context.sheets, context.program)),
    change: (id, actor, version, change) => changeSection(context, id, actor, version, change),
    undo: (id, actor, version) => undoJob(context, id, actor, version),
    setClosed: (id, actor, version, closed) => setClosed(context, id, actor, version, closed),
    addRecording: (id, actor, entry) => addUploaded(context, id, actor, { section: 'recordings', entry }),
    addAttachment: (id, actor, entry) => addUploaded(context, id, actor, { section: 'attachments', entry }),
    addFinding: (id, actor, finding) => addFinding(context, id, actor, finding),
    addHandOver: (id, actor, handOver) => addHandOver(context, id, actor, handOver),
    history: (id) => readHistory(context, id),
    import: (actor, job, history, files) => importJob(context, actor, job, history, files),
    removeDemo: () => removeDemoJobs(context),
  };
}
