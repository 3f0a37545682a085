/** Read-only links to one job. Of the secret in the link only a hash is kept. */
import { randomUUID } from 'node:crypto';
import type { Actor } from '../job-store.ts';
import { plainText } from '../store/search-text.ts';
import type { StoreContext } from '../store/store-context.ts';

export interface Share {
  readonly id: string;
  readonly jobId: string;
  /** Whom it is for. */
  readonly label: string;
  readonly madeBy: string;
  readonly createdAt: string;
  readonly expiresAt: string | null;
  readonly revokedAt: string | null;
}

export interface NewShare {
  readonly jobId: string;
  readonly tokenSha256: string;
  readonly label: string;
  readonly expiresAt?: Date;
}

export interface ShareStore {
  make(actor: Actor, share: NewShare): Promise<Share>;
  /** Newest first, those that were revoked or have run out among them. */
  list(jobId: string): Promise<readonly Share[]>;
  /** False: there is no such link to this job. */
  revoke(actor: Actor, jobId: string, id: string): Promise<boolean>;
  /** The link that opens with this secret; undefined: never there, revoked or run out. */
  open(tokenSha256: string): Promise<Share | undefined>;
}

interface Row {
  readonly id: string;
  readonly job_id: string;
  readonly label: string;
  readonly made_by: string;
  readonly created_at: Date;
  readonly expires_at: Date | null;
  readonly revoked_at: Date | null;
}

const toShare = (row: Row): Share => ({
  id: row.id,
  jobId: row.job_id,
  label: row.label,
  madeBy: row.made_by,
  createdAt: row.created_at.toISOString(),
  expiresAt: row.expires_at?.toISOString() ?? null,
  revokedAt: row.revoked_at?.toISOString() ?? null,
});

export function shareStore(context: StoreContext): ShareStore {
  return {
    make: async (actor, { jobId, tokenSha256, label, expiresAt }) => {
      const row = await context.run((db) =>
        db
          .insertInto('shares')
          .values({
            id: randomUUID(),
            job_id: jobId,
            token_sha256: tokenSha256,
            label: plainText(label),
            made_by: plainText(actor.name),
            created_at: context.now(),
            expires_at: expiresAt ?? null,
            revoked_at: null,
            revoked_by: null,
          })
          .returningAll()
          .executeTakeFirstOrThrow(),
      );
      return toShare(row);
    },
    list: async (jobId) => {
      const rows = await context.run((db) =>
        db.selectFrom('shares').selectAll().where('job_id', '=', jobId).orderBy('created_at', 'desc').execute(),
      );
      return rows.map(toShare);
    },
    revoke: async (actor, jobId, id) => {
      const found = await context.run((db) =>
        db
          .updateTable('shares')
          .set((eb) => ({
            // Whoever came first stays the one who did it.
            revoked_at: eb.fn.coalesce('revoked_at', eb.val(context.now())),
            revoked_by: eb.fn.coalesce('revoked_by', eb.val(plainText(actor.name))),
          }))
          .where('job_id', '=', jobId)
          .where('id', '=', id)
          .returning('id')
          .execute(),
      );
      return found.length > 0;
    },
    open: async (tokenSha256) => {
      const row = await context.run((db) =>
        db
          .selectFrom('shares')
          .selectAll()
          .where('token_sha256', '=', tokenSha256)
          .where('revoked_at', 'is', null)
          .where(({ or, eb }) => or([eb('expires_at', 'is', null), eb('expires_at', '>', context.now())]))
          .executeTakeFirst(),
      );
      return row === undefined ? undefined : toShare(row);
    },
  };
}
