/** What happened to accounts, logins and links: written, read, never edited. */
import { plainText } from '../store/search-text.ts';
import type { StoreContext } from '../store/store-context.ts';

export interface SecurityEvent {
  /** A word, for instance `signed-in`. */
  readonly kind: string;
  readonly actor?: string;
  /** Network address it came from. */
  readonly address?: string;
  readonly detail?: unknown;
}

export interface LoggedEvent extends SecurityEvent {
  readonly id: number;
  readonly at: string;
}

export interface SecurityLog {
  write(event: SecurityEvent): Promise<void>;
  /** Newest first; `before`: only events older than the one of this id. */
  read(query?: { readonly before?: number; readonly limit?: number }): Promise<readonly LoggedEvent[]>;
}

const USUAL_LIMIT = 200;

export function securityLog(context: StoreContext): SecurityLog {
  return {
    write: async ({ kind, actor, address, detail }) => {
      await context.run((db) =>
        db
          .insertInto('security_log')
          .values({
            at: context.now(),
            kind,
            actor: actor === undefined ? null : plainText(actor),
            address: address ?? null,
            detail: detail === undefined ? null : JSON.stringify(detail),
          })
          .execute(),
      );
    },
    read: async ({ before, limit = USUAL_LIMIT } = {}) => {
      let query = context.sql.selectFrom('security_log').selectAll().orderBy('id', 'desc').limit(limit);
      if (before !== undefined) query = query.where('id', '<', before);
      const rows = await context.run(() => query.execute());
      return rows.map(({ id, at, kind, actor, address, detail }) => ({
        id,
        at: at.toISOString(),
        kind,
        ...(actor === null ? {} : { actor }),
        ...(address === null ? {} : { address }),
        ...(detail === null ? {} : { detail }),
      }));
    },
  };
}
