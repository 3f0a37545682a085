/** Compares a reopened store with what writers were told. */
import { expect } from 'vitest';
import type { Store } from '../../../src/jobs/open-store.ts';
import { EMPTY_SECTIONS, type Sections } from '../../../src/jobs/record/empty-job.ts';
import { waitsFor } from '../../../src/jobs/record/waits-for.ts';
import { type Acknowledged, digestOf } from './protocol.ts';

/** Replays the history: the state after each version, from what is written in it alone. */
function replay(history: Awaited<ReturnType<Store['jobs']['history']>>): ReadonlyMap<number, string> {
  let sections: Sections = EMPTY_SECTIONS;
  const digests = new Map<number, string>();
  for (const entry of history) {
    const given = entry.section === null ? (entry.after as object) : { [entry.section]: entry.after };
    sections = { ...sections, ...given };
    digests.set(entry.version, digestOf(sections));
  }
  return digests;
}

/** Every acknowledged change is there; what was under way is there as a whole or not at all. Returns how many were looked at. */
export async function checkJobs(store: Store, acknowledged: readonly Acknowledged[]): Promise<number> {
  const byJob = new Map<string, Acknowledged[]>();
  for (const each of acknowledged) byJob.set(each.id, [...(byJob.get(each.id) ?? []), each]);
  for (const [id, told] of byJob) {
    const job = await store.jobs.read(id);
    const history = await store.jobs.history(id);
    const digests = replay(history);
    for (const { version, digest } of told) expect(digests.get(version), `version ${version} of ${id}`).toBe(digest);
    // One more may have been written whose word did not come through.
    expect(job.version - told.at(-1)!.version).toBeLessThanOrEqual(1);
    expect(history.map(({ version }) => version)).toEqual(Array.from({ length: job.version }, (_, n) => n + 1));
    expect(digests.get(job.version)).toBe(digestOf(job));
    for (const { sha256, bytes } of job.recordings) expect(await sizeOf(store.files.open(sha256))).toBe(bytes);
  }
  return acknowledged.length;
}

async function sizeOf(pieces: AsyncIterable<Uint8Array>): Promise<number> {
  let bytes = 0;
  for await (const piece of pieces) bytes += piece.byteLength;
  return bytes;
}

/** Of the whole store: no row stands alone, and the list says what the jobs say. */
export async function checkWhole(store: Store): Promise<void> {
  const { sql } = store;
  const rows = await sql
    .selectFrom('jobs')
    .leftJoin('history', 'history.job_id', 'jobs.id')
    .select((eb) => [
      'jobs.id',
      'jobs.version',
      eb.fn.max('history.version').as('last'),
      eb.fn.count('history.version').as('entries'),
    ])
    .groupBy(['jobs.id', 'jobs.version'])
    .execute();
  for (const row of rows) expect(row).toMatchObject({ last: row.version, entries: row.version });
  for (const { sha256 } of await sql.selectFrom('files').select('sha256').execute()) {
    expect(await store.files.has(sha256)).toBe(true);
  }
  for (const summary of await store.jobs.list({ limit: 25 })) {
    const job = await store.jobs.read(summary.id);
    expect(summary).toMatchObject({ vehicle: job.vehicle.name, number: job.number, waitsFor: waitsFor(job) });
  }
  const numbers = (await sql.selectFrom('jobs').select('number').orderBy('number').execute()).map(
    ({ number }) => number,
  );
  expect(numbers).toEqual(numbers.map((_, n) => n + 1));
}
