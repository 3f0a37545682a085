/** Tables beside those in use: filled there, then put in their place in one step. */
import pg from 'pg';
import { SCHEMA } from '../database/connect.ts';
import { StoreProblem } from '../store-problem.ts';
import { BACKED_UP, OF_THE_MOMENT } from './backup-format.ts';

export const SIDE = `${SCHEMA}_restoring`;
/** What was there before the last restore; kept until the next one. */
export const BEFORE = `${SCHEMA}_before_restore`;

/** @throws StoreProblem when there is more here than demo jobs */
export async function refuseWhenInUse(client: pg.ClientBase): Promise<void> {
  const { rows } = await client.query<{ jobs: number; users: number }>(
    `select (select count(*) from ${SCHEMA}.jobs where not demo) as jobs, (select count(*) from ${SCHEMA}.users) as users`,
  );
  const { jobs, users } = rows[0]!;
  if (jobs === 0 && users === 0) return;
  throw new StoreProblem('not-empty', `Jobs here already: ${jobs}; accounts: ${users}. Nothing was changed.`, {
    advice: 'Restore into a new data folder, or confirm that what is here shall be replaced.',
  });
}

/** Call inside the transaction that has filled the side tables. */
export async function takePlace(client: pg.ClientBase, replace: boolean): Promise<void> {
  const numbered = await client.query<{ sequence: string | null }>(
    `select pg_get_serial_sequence('${SIDE}.security_log', 'id') as sequence`,
  );
  const sequence = numbered.rows[0]?.sequence;
  if (sequence) {
    await client.query(`select setval($1, greatest(1, (select max(id) from ${SIDE}.security_log)))`, [sequence]);
  }
  // Who is writing into the old tables comes first; who comes later finds the new ones under the same names.
  const inUse = [...BACKED_UP, ...OF_THE_MOMENT].map((table) => `${SCHEMA}.${pg.escapeIdentifier(table)}`);
  await client.query(`lock table ${inUse.join(', ')} in access exclusive mode`);
  if (!replace) await refuseWhenInUse(client);
  await client.query(`drop schema if exists ${BEFORE} cascade`);
  await client.query(`alter schema ${SCHEMA} rename to ${BEFORE}`);
  await client.query(`alter schema ${SIDE} rename to ${SCHEMA}`);
}
