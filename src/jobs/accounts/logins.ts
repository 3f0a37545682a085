/** Who is signed in. Of the secret in the cookie only a hash is kept. */
import type { StoreContext } from '../store/store-context.ts';
import { toUser, type User } from './users.ts';

export interface Login {
  readonly user: User;
  readonly createdAt: string;
  readonly expiresAt: string;
}

export interface LoginStore {
  start(userId: string, tokenSha256: string, expiresAt: Date): Promise<void>;
  /** undefined: never there, ended, run out, or the account is disabled. */
  find(tokenSha256: string): Promise<Login | undefined>;
  end(tokenSha256: string): Promise<void>;
  /** All of one person, for instance on every other machine. */
  endAll(userId: string): Promise<void>;
  /** Takes out those that have run out. */
  sweep(): Promise<void>;
}

/** Being seen is written down this often at most: a page asks many times a minute. */
const SEEN_EVERY_MS = 60_000;

export function loginStore(context: StoreContext): LoginStore {
  const seen = async (tokenSha256: string, seenAt: Date): Promise<void> => {
    const now = context.now();
    if (now.getTime() - seenAt.getTime() < SEEN_EVERY_MS) return;
    await context.run((db) =>
      db.updateTable('sessions').set({ seen_at: now }).where('token_sha256', '=', tokenSha256).execute(),
    );
  };
  return {
    start: async (userId, tokenSha256, expiresAt) => {
      const now = context.now();
      await context.run((db) =>
        db
          .insertInto('sessions')
          .values({ token_sha256: tokenSha256, user_id: userId, created_at: now, seen_at: now, expires_at: expiresAt })
          .execute(),
      );
    },
    find: async (tokenSha256) => {
      const row = await context.run((db) =>
        db
          .selectFrom('sessions')
          .innerJoin('users', 'users.id', 'sessions.user_id')
          .selectAll('users')
          .select(['sessions.created_at as started_at', 'sessions.expires_at', 'sessions.seen_at'])
          .where('sessions.token_sha256', '=', tokenSha256)
          .where('sessions.expires_at', '>', context.now())
          .where('users.disabled_at', 'is', null)
          .executeTakeFirst(),
      );
      if (row === undefined) return undefined;
      await seen(tokenSha256, row.seen_at);
      return { user: toUser(row), createdAt: row.started_at.toISOString(), expiresAt: row.expires_at.toISOString() };
    },
    end: async (tokenSha256) => {
      await context.run((db) => db.deleteFrom('sessions').where('token_sha256', '=', tokenSha256).execute());
    },
    endAll: async (userId) => {
      await context.run((db) => db.deleteFrom('sessions').where('user_id', '=', userId).execute());
    },
    sweep: async () => {
      await context.run((db) => db.deleteFrom('sessions').where('expires_at', '<=', context.now()).execute());
    },
  };
}
