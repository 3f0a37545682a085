/**
 * Which long work has begun and not ended, and which program does it. What a program left that is gone is told as
 * interrupted, with the way to start it again, in place of vanishing.
 */
import { lives } from '../database/presence.ts';
import type { StoreContext } from './store-context.ts';

export interface OpenWork {
  readonly id: string;
  readonly jobId: string;
  readonly kind: string;
  readonly taken: string | null;
  readonly startedAt: string;
}

export interface FoundWork extends OpenWork {
  /** False: the program that did it is gone. */
  readonly isAlive: boolean;
}

export interface OpenWorkStore {
  /** Takes the place of what was interrupted of the same kind. `program`: number of the one that does it. */
  begin(program: number, work: OpenWork): Promise<void>;
  end(id: string): Promise<void>;
  /** Of all programs but this one. */
  ofOthers(program: number, where: { readonly jobId: string } | { readonly id: string }): Promise<readonly FoundWork[]>;
  /** Whoever has read of interrupted work need not read of it again; undefined: there is none, or somebody is at it. */
  dismiss(program: number, id: string): Promise<OpenWork | undefined>;
}

interface Row {
  readonly id: string;
  readonly job_id: string;
  readonly kind: string;
  readonly taken: string | null;
  readonly started_at: Date;
}

const toWork = ({ id, job_id, kind, taken, started_at }: Row): OpenWork => ({
  id,
  jobId: job_id,
  kind,
  taken,
  startedAt: started_at.toISOString(),
});

const isAlive = lives('open_work.program');

export function openWorkStore(context: StoreContext): OpenWorkStore {
  return {
    begin: (program, { id, jobId, kind, taken, startedAt }) =>
      context.transaction(async (tx) => {
        await tx
          .deleteFrom('open_work')
          .where('job_id', '=', jobId)
          .where('kind', '=', kind)
          .where('program', '<>', program)
          .where(({ not }) => not(isAlive))
          .execute();
        await tx
          .insertInto('open_work')
          .values({ id, job_id: jobId, kind, taken, started_at: new Date(startedAt), program })
          .execute();
      }),
    end: async (id) => {
      await context.run((db) => db.deleteFrom('open_work').where('id', '=', id).execute());
    },
    ofOthers: async (program, where) => {
      const rows = await context.run((db) =>
        db
          .selectFrom('open_work')
          .selectAll()
          .select(isAlive.as('is_alive'))
          .where('program', '<>', program)
          .where((eb) => ('id' in where ? eb('id', '=', where.id) : eb('job_id', '=', where.jobId)))
          .orderBy('started_at')
          .execute(),
      );
      return rows.map((row) => ({ ...toWork(row), isAlive: row.is_alive }));
    },
    dismiss: async (program, id) => {
      const row = await context.run((db) =>
        db
          .deleteFrom('open_work')
          .where('id', '=', id)
          .where('program', '<>', program)
          .where(({ not }) => not(isAlive))
          .returningAll()
          .executeTakeFirst(),
      );
      return row && toWork(row);
    },
  };
}
