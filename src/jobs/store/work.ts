/** Long work on a job, kept so that a page finds it again and a restart does not forget it. */
import { randomUUID } from 'node:crypto';
import type { StoreContext } from './store-context.ts';

export interface WorkRow {
  readonly id: string;
  readonly kind: string;
  readonly jobId: string;
  readonly inputsSha256: string;
  readonly state: 'waiting' | 'running' | 'done' | 'failed' | 'cancelled';
  readonly fraction: number;
  readonly words: string;
  readonly error: unknown;
  readonly result: unknown;
  readonly startedAt: string;
}

type Ended = Extract<WorkRow['state'], 'done' | 'failed' | 'cancelled'>;

export interface WorkStore {
  /** New work, or the one on the same inputs that is under way. */
  begin(
    work: Pick<WorkRow, 'kind' | 'jobId' | 'inputsSha256'>,
  ): Promise<{ readonly work: WorkRow; readonly isNew: boolean }>;
  /** How far it is; also shows that whoever does it lives. Ignored once it has ended. */
  progress(id: string, fraction: number, words: string): Promise<void>;
  /** The first end counts. */
  end(
    id: string,
    state: Ended,
    how?: { readonly words?: string; readonly error?: unknown; readonly result?: unknown },
  ): Promise<void>;
  read(id: string): Promise<WorkRow | undefined>;
  open(jobId: string): Promise<readonly WorkRow[]>;
  /** Work of a program that has ended without saying so: nothing was heard of it since `silentSince`. Returns how many. */
  failSilent(silentSince: Date, words: string): Promise<number>;
}

const OPEN = ['waiting', 'running'] as const;

interface Row {
  readonly id: string;
  readonly kind: string;
  readonly job_id: string;
  readonly inputs_sha256: string;
  readonly state: string;
  readonly fraction: number;
  readonly words: string;
  readonly error: unknown;
  readonly result: unknown;
  readonly started_at: Date;
}

const toWork = (row: Row): WorkRow => ({
  id: row.id,
  kind: row.kind,
  jobId: row.job_id,
  inputsSha256: row.inputs_sha256,
  state: row.state as WorkRow['state'],
  fraction: row.fraction,
  words: row.words,
  error: row.error,
  result: row.result,
  startedAt: row.started_at.toISOString(),
});

const json = (value: unknown): string | null => (value === undefined ? null : JSON.stringify(value));

export function workStore(context: StoreContext): WorkStore {
  return {
    begin: ({ kind, jobId, inputsSha256 }) =>
      context.transaction(async (tx) => {
        const now = context.now();
        const id = randomUUID();
        const made = await tx
          .insertInto('work')
          .values({
            id,
            kind,
            job_id: jobId,
            inputs_sha256: inputsSha256,
            state: 'waiting',
            fraction: 0,
            words: '',
            started_at: now,
            beat_at: now,
          })
          .onConflict((conflict) =>
            conflict
              .columns(['job_id', 'kind', 'inputs_sha256'])
              .where('state', 'in', OPEN)
              .doUpdateSet({ beat_at: now }),
          )
          .returningAll()
          .executeTakeFirstOrThrow();
        return { work: toWork(made), isNew: made.id === id };
      }),
    progress: async (id, fraction, words) => {
      await context.run((db) =>
        db
          .updateTable('work')
          .set({ state: 'running', fraction, words, beat_at: context.now() })
          .where('id', '=', id)
          .where('state', 'in', OPEN)
          .execute(),
      );
    },
    end: async (id, state, { words, error, result } = {}) => {
      const now = context.now();
      await context.run((db) =>
        db
          .updateTable('work')
          .set({
            state,
            ...(state === 'done' ? { fraction: 1 } : {}),
            ...(words === undefined ? {} : { words }),
            error: json(error),
            result: json(result),
            beat_at: now,
            ended_at: now,
          })
          .where('id', '=', id)
          .where('state', 'in', OPEN)
          .execute(),
      );
    },
    read: async (id) => {
      const row = await context.run((db) => db.selectFrom('work').selectAll().where('id', '=', id).executeTakeFirst());
      return row === undefined ? undefined : toWork(row);
    },
    open: async (jobId) => {
      const rows = await context.run((db) =>
        db
          .selectFrom('work')
          .selectAll()
          .where('job_id', '=', jobId)
          .where('state', 'in', OPEN)
          .orderBy('started_at')
          .execute(),
      );
      return rows.map(toWork);
    },
    failSilent: async (silentSince, words) => {
      const now = context.now();
      const rows = await context.run((db) =>
        db
          .updateTable('work')
          .set({ state: 'failed', words, ended_at: now })
          .where('state', 'in', OPEN)
          .where('beat_at', '<', silentSince)
          .returning('id')
          .execute(),
      );
      return rows.length;
    },
  };
}
