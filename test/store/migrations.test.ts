import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import pg from 'pg';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { MIGRATIONS, NEWEST_SCHEMA } from '../../src/jobs/migrations/all.ts';
import { openStore } from '../../src/jobs/open-store.ts';
import { readShop } from './filled-shop.ts';
import { ANNA } from './samples.ts';
import { type TestServer, testServer } from './test-server.ts';

const folder = fileURLToPath(new URL('schemas/', import.meta.url));
const released = readdirSync(folder).flatMap((name) => (/^\d+\.sql$/.test(name) ? [Number.parseInt(name, 10)] : []));

let server: TestServer;
beforeAll(async () => {
  server = await testServer();
});
afterEach(() => server.afterTest());
afterAll(() => server?.leave());

async function run(databaseUrl: string, text: string): Promise<pg.QueryResult> {
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  try {
    return await client.query(text);
  } finally {
    await client.end();
  }
}

/** Everything that can be seen of a schema, for comparing before and after. */
const SHAPE = `select table_name, column_name, data_type, is_nullable, column_default
  from information_schema.columns where table_schema = 'vaporwright' order by table_name, column_name`;
const INDEXES = `select indexname, indexdef from pg_indexes where schemaname = 'vaporwright' order by indexname`;

test('the versions count up without gap, and each has its fixture', () => {
  expect(MIGRATIONS.map(({ version }) => version)).toEqual(MIGRATIONS.map((_, index) => index + 1));
  expect(released.sort((one, other) => one - other)).toEqual(MIGRATIONS.map(({ version }) => version));
  for (const version of released) expect(existsSync(`${folder}${version}.expected.json`)).toBe(true);
});

describe.each(released)('tables of version %i', (version) => {
  test('come to the newest form with everything that was in them', async () => {
    const databaseUrl = await server.emptyDatabase();
    await run(databaseUrl, readFileSync(`${folder}${version}.sql`, 'utf8'));
    const store = await openStore({ dataFolder: server.folder(), databaseUrl });
    const expected = JSON.parse(readFileSync(`${folder}${version}.expected.json`, 'utf8'));
    // Through JSON: absent and undefined are the same there.
    expect(JSON.parse(JSON.stringify(await readShop(store)))).toMatchObject(expected);
    expect((await store.jobs.create(ANNA, { sections: {} })).number).toBe(expected.list.length + 1);
    await store.close();
    const fresh = await server.freshDatabase();
    expect((await run(databaseUrl, SHAPE)).rows).toEqual((await run(fresh, SHAPE)).rows);
    expect((await run(databaseUrl, INDEXES)).rows).toEqual((await run(fresh, INDEXES)).rows);
  });
});

test('work that was interrupted before there was a table for it is told after as well', async () => {
  const databaseUrl = await server.emptyDatabase();
  await run(databaseUrl, readFileSync(`${folder}4.sql`, 'utf8'));
  const job = (await run(databaseUrl, 'select id from vaporwright.jobs order by number limit 1')).rows[0].id;
  const mark = { id: '0f3c1f5e-6d7a-4b57-9a53-0d6a1d9b8a10', kind: 'finding', startedAt: '2026-01-02T03:04:05.000Z' };
  const marks = [
    { ...mark, jobId: job, taken: 'after-repair' },
    // Of a job that has been removed since.
    { ...mark, id: '0f3c1f5e-6d7a-4b57-9a53-0d6a1d9b8a11', jobId: '0f3c1f5e-6d7a-4b57-9a53-0d6a1d9b8a12' },
  ];
  await run(
    databaseUrl,
    `insert into vaporwright.settings values ('open work', '${JSON.stringify(marks)}', now(), 'workbench')`,
  );
  const store = await openStore({ dataFolder: server.folder(), databaseUrl });
  expect(await store.openWork.ofOthers(1, { jobId: job })).toEqual([
    { ...mark, jobId: job, taken: 'after-repair', isAlive: false },
  ]);
  expect((await run(databaseUrl, 'select count(*) as n from vaporwright.open_work')).rows).toEqual([{ n: '1' }]);
  expect((await run(databaseUrl, "select from vaporwright.settings where name = 'open work'")).rowCount).toBe(0);
  await store.close();
});

test('tables of a newer version are refused and left as they are', async () => {
  const databaseUrl = await server.freshDatabase();
  await run(
    databaseUrl,
    `insert into vaporwright.schema_versions values (${NEWEST_SCHEMA + 1}, 'of tomorrow', now());
     create table vaporwright.of_tomorrow (a integer); insert into vaporwright.of_tomorrow values (7)`,
  );
  const before = await run(databaseUrl, SHAPE);
  await expect(openStore({ dataFolder: server.folder(), databaseUrl })).rejects.toMatchObject({
    name: 'StoreProblem',
    code: 'newer-data',
    message: expect.stringContaining(`version ${NEWEST_SCHEMA + 1}`),
  });
  expect((await run(databaseUrl, SHAPE)).rows).toEqual(before.rows);
  expect((await run(databaseUrl, 'select a from vaporwright.of_tomorrow')).rows).toEqual([{ a: 7 }]);
});

test('programs that start at once on an empty database migrate it once', async () => {
  const databaseUrl = await server.emptyDatabase();
  const stores = await Promise.all(
    Array.from({ length: 4 }, () => openStore({ dataFolder: server.folder(), databaseUrl })),
  );
  for (const store of stores) expect(await store.jobs.list({})).toEqual([]);
  expect((await run(databaseUrl, 'select count(*) as n from vaporwright.schema_versions')).rows).toEqual([
    { n: String(MIGRATIONS.length) },
  ]);
  for (const store of stores) await store.close();
});

test('a migration that fails leaves the version before', async () => {
  const databaseUrl = await server.emptyDatabase();
  await run(databaseUrl, readFileSync(`${folder}1.sql`, 'utf8'));
  // In the way of version 3, after version 2 has done its part.
  await run(databaseUrl, 'create table vaporwright.settings (mine integer)');
  const before = await run(databaseUrl, SHAPE);
  await expect(openStore({ dataFolder: server.folder(), databaseUrl })).rejects.toThrow(/settings/);
  expect((await run(databaseUrl, SHAPE)).rows).toEqual(before.rows);
  expect((await run(databaseUrl, 'select max(version) as v from vaporwright.schema_versions')).rows).toEqual([
    { v: 1 },
  ]);
});
