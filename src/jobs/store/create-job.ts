import { randomUUID } from 'node:crypto';
import type { Actor, NewJob } from '../job-store.ts';
import { EMPTY_SECTIONS } from '../record/empty-job.ts';
import type { Job, SectionName } from '../record/job.ts';
import { summaryColumns } from './job-summary.ts';
import { filesOf, nameFiles } from './name-file.ts';
import type { Tx } from './queries.ts';
import type { StoreContext } from './store-context.ts';
import { writeHistory } from './write-history.ts';
import { writeSection } from './write-section.ts';

/** The next number of the shop; who takes it holds the counter until the job is written, so none is left out. */
export async function nextNumber(tx: Tx): Promise<number> {
  const { value } = await tx
    .updateTable('counters')
    .set((eb) => ({ value: eb('value', '+', 1) }))
    .where('name', '=', 'job')
    .returning('value')
    .executeTakeFirstOrThrow();
  return value;
}

export async function insertJobRow(tx: Tx, job: Job): Promise<void> {
  await tx
    .insertInto('jobs')
    .values({
      id: job.id,
      number: job.number,
      version: job.version,
      created_at: new Date(job.createdAt),
      changed_at: new Date(job.changedAt),
      demo: job.demo,
      closed: job.closed,
      ...summaryColumns(job),
    })
    .execute();
}

export function createJob(context: StoreContext, actor: Actor, given: NewJob): Promise<Job> {
  return context.transaction(async (tx) => {
    const at = context.now();
    const job: Job = {
      schema: 'vaporwright-job-1',
      id: randomUUID(),
      number: await nextNumber(tx),
      version: 1,
      createdAt: at.toISOString(),
      changedAt: at.toISOString(),
      demo: given.demo ?? false,
      closed: false,
      ...EMPTY_SECTIONS,
      ...given.sections,
      findings: [],
      handOvers: [],
    };
    await insertJobRow(tx, job);
    await nameFiles(context, tx, job.id, filesOf(job));
    for (const [section, value] of Object.entries(given.sections)) {
      await writeSection(tx, job.id, section as SectionName, value);
    }
    await writeHistory(tx, job, actor, at, { what: 'created', section: null, after: given.sections });
    return job;
  });
}
