/** Two servers on one database: neither takes the other's work for its own, and both tell the same. */
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { connect } from '../../src/jobs/database/connect.ts';
import { appear } from '../../src/jobs/database/presence.ts';
import type { Job } from '../../src/jobs/record/job.ts';
import type { Session } from '../../src/server/contract/accounts.ts';
import type { Work } from '../../src/server/contract/work.ts';
import type { Ring } from '../../src/server/work/bell.ts';
import { type TestServer, testServer } from '../store/test-server.ts';
import { type Bench, CAR, type Client, LEAK_CSV, openBench, type Place } from './bench.ts';

let server: TestServer;
let place: Place;
let one: Bench;
let other: Bench;
let here: Client;
let there: Client;
beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server?.leave());
beforeEach(async () => {
  place = { dataFolder: server.folder(), databaseUrl: await server.freshDatabase() };
  one = await openBench(server, { place });
  other = await openBench(server, { place });
  here = one.client();
  there = other.client();
});
afterEach(async () => {
  await Promise.all([one.close(), other.close()]);
  expect([...one.faults, ...other.faults]).toEqual([]);
});

async function until<T>(read: () => Promise<T> | T, holds: (value: T) => boolean): Promise<T> {
  for (;;) {
    const value = await read();
    if (holds(value)) return value;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}

const readyJob = async (): Promise<Job> => {
  const job = await here.newJob({ car: CAR });
  await here.send(job.id, { name: 'leak.csv', content: LEAK_CSV });
  return job;
};
const find = async (client: Client, id: string): Promise<Work> =>
  (await client.ask<{ work: Work }>('POST', `/jobs/${id}/findings`, { json: { taken: 'before-repair' } })).body.work;
const workOf = async (client: Client, id: string): Promise<Work[]> =>
  (await client.ask<{ work: Work[] }>('GET', `/jobs/${id}/work`)).body.work;
const read = async (client: Client, id: string): Promise<Work> =>
  (await client.ask<{ work: Work }>('GET', `/work/${id}`)).body.work;

test('work of a living server is told as running by the other, moves there, and ends there', async () => {
  const job = await readyJob();
  const rings: Ring[] = [];
  other.parts.bell.listen(job.id, (ring) => rings.push(ring));
  const work = await find(here, job.id);
  expect(
    await until(
      () => workOf(there, job.id),
      (all) => all.length > 0,
    ),
  ).toMatchObject([
    {
      id: work.id,
      kind: 'finding',
      jobId: job.id,
      taken: 'before-repair',
      state: expect.stringMatching(/waiting|running/),
    },
  ]);
  const over = await there.untilOver(work.id);
  expect(over).toMatchObject({ state: 'done', fraction: 1 });
  const now = (await there.ask<Job>('GET', `/jobs/${job.id}`)).body;
  expect(now.findings.map(({ id }) => id)).toEqual([over.resultId]);
  expect(await workOf(there, job.id)).toEqual([]);
  const fractions = rings.flatMap((ring) => (ring.event === 'work' ? [ring.data.fraction] : []));
  expect(fractions.length).toBeGreaterThan(3);
  expect(rings).toContainEqual({ event: 'job', data: { version: now.version } });
});

test('both at work at once: neither mark is lost, and each is told by whoever is left', async () => {
  const [mine, theirs] = [await readyJob(), await readyJob()];
  const [work, elsewhere] = await Promise.all([find(here, mine.id), find(there, theirs.id)]);
  await until(
    () => workOf(here, theirs.id),
    (all) => all.length > 0,
  );
  expect((await workOf(here, theirs.id)).map(({ state }) => state)).not.toContain('interrupted');
  await other.close();
  expect(await workOf(here, theirs.id)).toEqual([
    { ...elsewhere, state: 'interrupted', fraction: 0, words: 'interrupted' },
  ]);
  expect((await here.untilOver(work.id)).state).toBe('done');
  // Put aside at one, it is gone for a third.
  expect((await here.ask<{ work: Work }>('DELETE', `/work/${elsewhere.id}`)).body.work.state).toBe('cancelled');
  other = await openBench(server, { place });
  expect(await workOf(other.client(), theirs.id)).toEqual([]);
});

test('work is cancelled from the other server, and kept nowhere', async () => {
  const job = await readyJob();
  const work = await find(here, job.id);
  await until(
    () => workOf(there, job.id),
    (all) => all.length > 0,
  );
  expect((await there.ask<{ work: Work }>('DELETE', `/work/${work.id}`)).body.work.state).toBe('cancelled');
  expect((await read(here, work.id)).state).toBe('cancelled');
  expect((await here.ask<Job>('GET', `/jobs/${job.id}`)).body.findings).toEqual([]);
  await until(
    () => workOf(there, job.id),
    (all) => all.length === 0,
  );
});

test('a server whose connection breaks is not taken for gone once it is back; one that is killed is', async () => {
  const { id: jobId } = await readyJob();
  const database = await connect({ connectionString: place.databaseUrl }, 'here', () => new Date());
  const lost = await appear(database.pool);
  const store = one.parts.store;
  const startedAt = '2026-01-02T03:04:05.000Z';
  const id = '0f3c1f5e-6d7a-4b57-9a53-0d6a1d9b8a10';
  await store.openWork.begin(lost.program, { id, jobId, kind: 'finding', taken: null, startedAt });
  const state = async (): Promise<string | undefined> => (await workOf(here, jobId)).at(0)?.state;
  expect(await state()).toBe('running');
  const { rows } = await database.pool.query<{ pid: number }>(
    `select pid from pg_locks where locktype = 'advisory' and objid = ${lost.program}`,
  );
  await database.pool.query('select pg_terminate_backend($1)', [rows[0]?.pid]);
  await until(state, (now) => now === 'interrupted');
  await until(state, (now) => now === 'running');
  // As the end of a process ends them: without a word.
  await lost.close();
  await until(state, (now) => now === 'interrupted');
  await database.close();
});

test('the first account that is made at one server closes the other as well', async () => {
  expect((await there.session()).role).toBe('owner');
  const json = { name: 'Anna', role: 'owner', password: 'a long enough phrase' };
  expect((await here.ask('POST', '/accounts', { json })).status).toBe(201);
  await until(
    async () => (await other.client().raw<Session>('GET', '/session')).body.role,
    (role) => role === null,
  );
  expect((await other.client().raw('GET', '/jobs')).status).toBe(401);
});
