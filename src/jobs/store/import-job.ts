/** Takes in a job that was exported elsewhere, with its history. Its raw files must be kept already. */
import { randomUUID } from 'node:crypto';
import type { Actor, KeptFile } from '../job-store.ts';
import { type HistoryEntry, type Job, SECTION_NAMES } from '../record/job.ts';
import { insertFinding, insertHandOver } from './append-to-job.ts';
import { insertJobRow, nextNumber } from './create-job.ts';
import { filesOf, nameFiles } from './name-file.ts';
import { withOutdated } from './outdated.ts';
import type { Tx } from './queries.ts';
import type { StoreContext } from './store-context.ts';
import { writeHistory } from './write-history.ts';
import { writeSection } from './write-section.ts';

/** The given number when nobody has it, else the next one. */
async function freeNumber(tx: Tx, wanted: number): Promise<number> {
  const next = await nextNumber(tx);
  const taken = await tx.selectFrom('jobs').select('id').where('number', '=', wanted).executeTakeFirst();
  const number = taken === undefined ? wanted : next;
  // The counter stays at the highest number in use.
  await tx
    .updateTable('counters')
    .set({ value: taken === undefined ? Math.max(next - 1, wanted) : next })
    .where('name', '=', 'job')
    .execute();
  return number;
}

const isTaken = async (tx: Tx, table: 'jobs' | 'findings' | 'hand_overs', id: string): Promise<boolean> =>
  (await tx.selectFrom(table).select('id').where('id', '=', id).executeTakeFirst()) !== undefined;

export function importJob(
  context: StoreContext,
  actor: Actor,
  given: Job,
  history: readonly HistoryEntry[],
  moreFiles: readonly KeptFile[] = [],
): Promise<Job> {
  return context.transaction(async (tx) => {
    const at = context.now();
    const number = await freeNumber(tx, given.number);
    const id = (await isTaken(tx, 'jobs', given.id)) ? randomUUID() : given.id;
    const last = Math.max(given.version, ...history.map(({ version }) => version));
    const own = async <T extends { readonly id: string }>(table: 'findings' | 'hand_overs', entry: T): Promise<T> =>
      (await isTaken(tx, table, entry.id)) ? { ...entry, id: randomUUID() } : entry;
    const findings: Job['findings'] = [];
    for (const finding of given.findings) findings.push(await own('findings', finding));
    const handOvers: Job['handOvers'] = [];
    for (const handOver of given.handOvers) handOvers.push(await own('hand_overs', handOver));
    const job = withOutdated(
      { ...given, id, number, version: last + 1, changedAt: at.toISOString(), findings, handOvers },
      context.program,
    );
    await insertJobRow(tx, job);
    await nameFiles(context, tx, id, [...filesOf(job), ...moreFiles]);
    for (const section of SECTION_NAMES) await writeSection(tx, id, section, job[section]);
    for (const [position, finding] of findings.entries()) await insertFinding(tx, id, position, finding);
    for (const [position, handOver] of handOvers.entries()) await insertHandOver(context, tx, id, position, handOver);
    for (const { version, at: moment, by, ...event } of history) {
      await writeHistory(tx, { id, version }, { name: by }, new Date(moment), event);
    }
    await writeHistory(tx, job, actor, at, {
      what: 'imported',
      section: null,
      after: { id: given.id, number: given.number, version: given.version },
    });
    return job;
  });
}
