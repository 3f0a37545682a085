/** Writes a backup while the shop goes on working: one transaction sees one moment. */
import { createHash } from 'node:crypto';
import { pipeline, Readable } from 'node:stream';
import { createGzip } from 'node:zlib';
import pg from 'pg';
import { type Database, SCHEMA } from '../database/connect.ts';
import { databaseProblem } from '../database/database-problem.ts';
import type { FileStore } from '../job-store.ts';
import { schemaVersion } from '../migrations/migrate.ts';
import { FILES_LOCK } from '../store/name-file.ts';
import { BACKED_UP, BACKUP_FORMAT, type Beginning, type End } from './backup-format.ts';
import { columnsOf } from './columns.ts';
import { TAR_END, tarHeader, tarPadding } from './tar.ts';

const ROWS_AT_A_TIME = 20;
/** A part of a table in the archive is about this long, so that neither side holds more at a time. */
const PART_CHARACTERS = 1_000_000;

export interface BackupSource {
  readonly database: Database;
  readonly files: FileStore;
  readonly now: () => Date;
  readonly program: string | undefined;
}

/** Rows of one table as lines of JSON, in parts. Columns of JSON are in it as text, to the letter. */
async function* partsOf(client: pg.ClientBase, table: string): AsyncGenerator<readonly string[]> {
  const columns = await columnsOf(client, SCHEMA, table);
  const list = columns.map(({ name, isJson }) => {
    const quoted = pg.escapeIdentifier(name);
    return isJson ? `${quoted}::text as ${quoted}` : quoted;
  });
  await client.query(
    `declare backup_rows no scroll cursor for select row_to_json(r)::text as line from (select ${list.join(', ')} from ${pg.escapeIdentifier(table)}) r`,
  );
  let part: string[] = [];
  let length = 0;
  for (;;) {
    const { rows } = await client.query<{ line: string }>(`fetch ${ROWS_AT_A_TIME} from backup_rows`);
    for (const { line } of rows) {
      part.push(line);
      length += line.length;
    }
    if (part.length > 0 && (rows.length === 0 || length > PART_CHARACTERS)) {
      yield part;
      part = [];
      length = 0;
    }
    if (rows.length === 0) break;
  }
  await client.query('close backup_rows');
}

async function* entries(source: BackupSource, client: pg.ClientBase): AsyncGenerator<Uint8Array> {
  const now = source.now();
  function* whole(name: string, text: string): Generator<Uint8Array> {
    const bytes = Buffer.from(text, 'utf8');
    yield tarHeader(name, bytes.byteLength, now);
    yield bytes;
    yield tarPadding(bytes.byteLength);
  }
  const beginning: Beginning = {
    format: BACKUP_FORMAT,
    program: source.program ?? null,
    madeAt: now.toISOString(),
    schemaVersion: await schemaVersion(client, SCHEMA),
  };
  yield* whole('backup.json', `${JSON.stringify(beginning, null, 2)}\n`);

  const rows: Record<string, number> = {};
  const rowsHash = createHash('sha256');
  for (const table of BACKED_UP) {
    rows[table] = 0;
    let part = 0;
    for await (const lines of partsOf(client, table)) {
      const text = lines.map((line) => `${line}\n`).join('');
      rowsHash.update(text);
      rows[table] += lines.length;
      yield* whole(`tables/${table}/${String(++part).padStart(6, '0')}.jsonl`, text);
    }
  }
  const named = await client.query<{ sha256: string; bytes: number }>(
    'select sha256, bytes from files order by sha256',
  );
  for (const { sha256, bytes } of named.rows) {
    yield tarHeader(`files/${sha256}`, bytes, now);
    // Checked against its hash on the way: a backup of a damaged file would be no backup.
    yield* source.files.open(sha256);
    yield tarPadding(bytes);
  }
  const end: End = { rows, rowsSha256: rowsHash.digest('hex'), files: named.rows.length };
  yield* whole('end.json', `${JSON.stringify(end, null, 2)}\n`);
  yield TAR_END;
}

async function* archive(source: BackupSource): AsyncGenerator<Uint8Array> {
  const client = await source.database.pool.connect();
  let broken: Error | undefined;
  try {
    await client.query('begin isolation level repeatable read read only');
    // Nobody clears away a raw file that is still to be copied.
    await client.query('select pg_advisory_xact_lock_shared($1)', [FILES_LOCK]);
    yield* entries(source, client);
    await client.query('commit');
  } catch (error) {
    broken = error instanceof Error ? error : new Error(String(error));
    throw databaseProblem(error, source.database.where);
  } finally {
    await client.query('rollback').catch(() => undefined);
    client.release(broken);
  }
}

/** The backup as a stream of bytes. A failure ends the stream with an error: what came before is no backup. */
export function writeBackup(source: BackupSource): AsyncIterable<Uint8Array> {
  const packed = createGzip({ level: 6 });
  // What fails is told to whoever reads the packed stream.
  packed.on('error', () => undefined);
  return pipeline(Readable.from(archive(source), { objectMode: false }), packed, () => undefined);
}
