/** Brings the tables of one schema to the newest version, all in one transaction. */
import pg from 'pg';
import { StoreProblem } from '../store-problem.ts';
import { MIGRATIONS, NEWEST_SCHEMA } from './all.ts';

/** Any number that nobody else uses as an advisory lock in this database. */
const MIGRATING_LOCK = 7_203_311;

/** 0: no tables yet. */
export async function schemaVersion(client: pg.ClientBase, schema: string): Promise<number> {
  const table = `${pg.escapeIdentifier(schema)}.schema_versions`;
  const { rows } = await client.query<{ there: boolean }>('select to_regclass($1) is not null as there', [table]);
  if (!rows[0]?.there) return 0;
  const found = await client.query<{ version: number | null }>(`select max(version) as version from ${table}`);
  return found.rows[0]?.version ?? 0;
}

export function refuseNewer(version: number, where: string): void {
  if (version <= NEWEST_SCHEMA) return;
  throw new StoreProblem(
    'newer-data',
    `The data was written by a newer version of this program (tables of version ${version}; this program knows up to ${NEWEST_SCHEMA}): ${where}. It was left as it is.`,
    { where, advice: 'Use the newer version of the program.' },
  );
}

/** Migrates inside the transaction that the caller has opened. */
export async function migrateWithin(client: pg.ClientBase, schema: string, upTo: number, now: Date): Promise<void> {
  const name = pg.escapeIdentifier(schema);
  await client.query(`create schema if not exists ${name}`);
  await client.query(`set local search_path to ${name}`);
  await client.query(`
    create table if not exists schema_versions (
      version integer primary key, name text not null, applied_at timestamptz(3) not null
    )`);
  const from = await schemaVersion(client, schema);
  for (const { version, name, sql } of MIGRATIONS) {
    if (version <= from || version > upTo) continue;
    await client.query(sql);
    await client.query('insert into schema_versions (version, name, applied_at) values ($1, $2, $3)', [
      version,
      name,
      now,
    ]);
  }
}

/** Two programs that start at once migrate once. */
export async function migrate(client: pg.ClientBase, schema: string, where: string, now: Date): Promise<void> {
  if ((await schemaVersion(client, schema)) === NEWEST_SCHEMA) return;
  await client.query('begin');
  try {
    await client.query('select pg_advisory_xact_lock($1)', [MIGRATING_LOCK]);
    refuseNewer(await schemaVersion(client, schema), where);
    await migrateWithin(client, schema, NEWEST_SCHEMA, now);
    await client.query('commit');
  } catch (error) {
    await client.query('rollback').catch(() => undefined);
    throw error;
  }
}
