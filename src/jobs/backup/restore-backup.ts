/**
 * Takes a backup in. Everything goes into tables beside those in use, is checked, and only then takes their place in one
 * step: a restore that fails leaves what was there as it was.
 */
import { createHash } from 'node:crypto';
import { pipeline, Readable } from 'node:stream';
import { createGunzip } from 'node:zlib';
import type pg from 'pg';
import type { Database } from '../database/connect.ts';
import { databaseProblem } from '../database/database-problem.ts';
import type { FileStore } from '../job-store.ts';
import { NEWEST_SCHEMA } from '../migrations/all.ts';
import { migrateWithin, refuseNewer } from '../migrations/migrate.ts';
import { FILES_LOCK } from '../store/name-file.ts';
import { StoreProblem } from '../store-problem.ts';
import { BACKED_UP, type Beginning, beginningSchema, type End, endSchema } from './backup-format.ts';
import { insertRows } from './insert-rows.ts';
import { refuseWhenInUse, SIDE, takePlace } from './side-schema.ts';
import { readTar, type TarEntry } from './tar.ts';

const RESTORING_LOCK = 7_203_314;

export interface RestoreTarget {
  readonly database: Database;
  readonly files: FileStore;
  readonly now: () => Date;
}

export interface Restored {
  readonly madeAt: string;
  readonly jobs: number;
  readonly files: number;
}

const badFile = (what: string, cause?: unknown) =>
  new StoreProblem('bad-file', `The backup cannot be used: ${what}. Nothing was changed.`, {
    advice: 'Take another backup, or copy this one again from where it was kept.',
    cause,
  });

async function textOf(entry: TarEntry): Promise<string> {
  const parts: Uint8Array[] = [];
  for await (const part of entry.content) parts.push(part);
  return Buffer.concat(parts).toString('utf8');
}

function parse<T>(schema: { parse(value: unknown): T }, text: string, name: string): T {
  try {
    return schema.parse(JSON.parse(text));
  } catch (error) {
    throw badFile(`its part ${name} is not as expected`, error);
  }
}

interface Taken {
  readonly beginning: Beginning;
  readonly end: End;
  readonly rows: Readonly<Record<string, number>>;
  readonly rowsSha256: string;
  readonly files: ReadonlySet<string>;
}

async function takeIn(client: pg.ClientBase, target: RestoreTarget, backup: AsyncIterable<Uint8Array>): Promise<Taken> {
  let beginning: Beginning | undefined;
  let end: End | undefined;
  const rows: Record<string, number> = Object.fromEntries(BACKED_UP.map((table) => [table, 0]));
  const rowsHash = createHash('sha256');
  const files = new Set<string>();
  for await (const entry of readTar(backup)) {
    const [kind, name] = entry.name.split('/');
    if (entry.name === 'backup.json') {
      beginning = parse(beginningSchema, await textOf(entry), entry.name);
      refuseNewer(beginning.schemaVersion, 'the backup');
      await client.query(`create schema ${SIDE}`);
      await migrateWithin(client, SIDE, beginning.schemaVersion, target.now());
      await client.query(`delete from ${SIDE}.counters`);
    } else if (beginning === undefined) {
      throw badFile('it is not a backup of this program');
    } else if (kind === 'tables' && name !== undefined && name in rows) {
      const text = await textOf(entry);
      rowsHash.update(text);
      rows[name]! += await insertRows(client, SIDE, name, text);
    } else if (kind === 'files' && name !== undefined) {
      const kept = await target.files.keep(entry.content);
      if (kept.sha256 !== name) throw badFile(`the raw file ${name} in it has other content`);
      files.add(name);
    } else if (entry.name === 'end.json') {
      end = parse(endSchema, await textOf(entry), entry.name);
    } else throw badFile(`a part in it is not known: ${entry.name}`);
  }
  if (beginning === undefined) throw badFile('it is empty');
  if (end === undefined) throw badFile('its end is missing');
  return { beginning, end, rows, rowsSha256: rowsHash.digest('hex'), files };
}

function check({ end, rows, rowsSha256, files }: Taken): void {
  for (const [table, count] of Object.entries(end.rows)) {
    if (rows[table] !== count)
      throw badFile(`of table ${table} it should hold ${count} rows, ${rows[table] ?? 0} came`);
  }
  if (rowsSha256 !== end.rowsSha256) throw badFile('its rows are not those that were written');
  if (files.size !== end.files) throw badFile(`it should hold ${end.files} raw files, ${files.size} came`);
}

async function checkFiles(client: pg.ClientBase, files: ReadonlySet<string>): Promise<void> {
  const { rows } = await client.query<{ sha256: string }>(`select sha256 from ${SIDE}.files`);
  const missing = rows.find(({ sha256 }) => !files.has(sha256));
  if (missing !== undefined) throw badFile(`the raw file ${missing.sha256} is not in it`);
}

/** A transaction in which nothing is in use by others: the restore either is or is not. */
async function restoreWithin(
  client: pg.ClientBase,
  target: RestoreTarget,
  backup: AsyncIterable<Uint8Array>,
  replace: boolean,
): Promise<Restored> {
  await client.query('begin');
  try {
    await client.query('select pg_advisory_xact_lock($1)', [RESTORING_LOCK]);
    // Raw files that are taken in stay until the rows that name them are there.
    await client.query('select pg_advisory_xact_lock_shared($1)', [FILES_LOCK]);
    if (!replace) await refuseWhenInUse(client);
    const taken = await takeIn(client, target, backup);
    check(taken);
    await checkFiles(client, taken.files);
    await migrateWithin(client, SIDE, NEWEST_SCHEMA, target.now());
    await takePlace(client, replace);
    await client.query('commit');
    return { madeAt: taken.beginning.madeAt, jobs: taken.rows.jobs ?? 0, files: taken.files.size };
  } catch (error) {
    await client.query('rollback').catch(() => undefined);
    throw error;
  }
}

/** `replace`: somebody has confirmed that what is here gives way. @throws StoreProblem; then nothing was changed */
export async function restoreBackup(
  target: RestoreTarget,
  packed: AsyncIterable<Uint8Array>,
  { replace }: { readonly replace: boolean },
): Promise<Restored> {
  const unpacked = pipeline(Readable.from(packed, { objectMode: false }), createGunzip(), () => undefined);
  // It may fail when nobody is reading: whoever reads next is told.
  unpacked.on('error', () => undefined);
  const client = await target.database.pool.connect();
  try {
    return await restoreWithin(client, target, unpacked, replace);
  } catch (error) {
    const known = databaseProblem(error, target.database.where);
    if (known instanceof StoreProblem) throw known;
    throw badFile(error instanceof Error ? error.message : String(error), error);
  } finally {
    client.release();
  }
}
