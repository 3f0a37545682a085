/** What every query of the store needs. */
import type { Database, Sql } from '../database/connect.ts';
import { databaseProblem } from '../database/database-problem.ts';
import type { FileStore } from '../job-store.ts';
import type { Tx } from './queries.ts';
import { SheetCache } from './sheet-cache.ts';

export interface StoreContext {
  readonly sql: Sql;
  readonly files: FileStore;
  readonly sheets: SheetCache;
  readonly now: () => Date;
  /** Name and version that findings of today carry; undefined: a finding is not outdated by its program. */
  readonly program: string | undefined;
  /** Runs a query; a failure comes in words where there are some. */
  run<T>(work: (sql: Sql) => Promise<T>): Promise<T>;
  /** All or nothing. */
  transaction<T>(work: (tx: Tx) => Promise<T>): Promise<T>;
}

export function makeContext(
  database: Database,
  files: FileStore,
  now: () => Date,
  program: string | undefined,
): StoreContext {
  const { sql, where } = database;
  const inWords = <T>(work: Promise<T>): Promise<T> =>
    work.catch((error: unknown) => Promise.reject(databaseProblem(error, where)));
  return {
    sql,
    files,
    sheets: new SheetCache(),
    now,
    program,
    run: (work) => inWords(work(sql)),
    transaction: (work) => inWords(sql.transaction().execute(work)),
  };
}
