/**
 * One program among those that have the same database open: a number that no other living one has, and a channel to the
 * others. The number is an advisory lock on a connection of its own; PostgreSQL lets it go with the connection, however the
 * program ends, so that what a program left behind is told from what it is still doing.
 */
import { randomInt } from 'node:crypto';
import { type RawBuilder, sql } from 'kysely';
import type pg from 'pg';

/** First half of the lock; the second is the program's number. */
const PRESENCE_LOCK = 7_203_315;
const CHANNEL = 'vaporwright';
/** PostgreSQL takes notices of less than 8000 bytes. */
export const MOST_NOTICE_BYTES = 7900;
const AGAIN_AFTER_MS = 1000;

export interface Presence {
  readonly program: number;
  /** Told of every notice of the others, while the connection stands. */
  hear(listener: (notice: string) => void): void;
  /** To all others; nobody promises that it arrives. `notice`: at most `MOST_NOTICE_BYTES`. */
  tell(notice: string): void;
  close(): Promise<void>;
}

/** True in a query where the program of this number lives. */
export const lives = (column: string): RawBuilder<boolean> => sql<boolean>`exists (
  select from pg_locks
  where locktype = 'advisory' and granted and objsubid = 2
    and database = (select oid from pg_database where datname = current_database())
    and classid = ${sql.lit(PRESENCE_LOCK)}::oid and objid = ${sql.ref(column)}::oid
)`;

class HeldPresence implements Presence {
  readonly #pool: pg.Pool;
  readonly #listeners: ((notice: string) => void)[] = [];
  #client: pg.PoolClient | undefined;
  #isClosed = false;
  program = 0;

  constructor(pool: pg.Pool) {
    this.#pool = pool;
  }

  async open(): Promise<this> {
    const client = await this.#connect();
    for (;;) {
      this.program = randomInt(1, 2 ** 31);
      const { rows } = await client.query<{ mine: boolean }>('select pg_try_advisory_lock($1, $2) as mine', [
        PRESENCE_LOCK,
        this.program,
      ]);
      if (rows[0]?.mine) return this;
    }
  }

  hear(listener: (notice: string) => void): void {
    this.#listeners.push(listener);
  }

  tell(notice: string): void {
    this.#client?.query('select pg_notify($1, $2)', [CHANNEL, `${this.program} ${notice}`]).catch(() => undefined);
  }

  async close(): Promise<void> {
    this.#isClosed = true;
    this.#client?.release(true);
    this.#client = undefined;
  }

  async #connect(): Promise<pg.PoolClient> {
    const client = await this.#pool.connect();
    try {
      // A notice that is lost with the database's machine is worth no wait for the disk; a machine that has gone is missed in a minute.
      await client.query(`set synchronous_commit = off; set tcp_keepalives_idle = 30; set tcp_keepalives_interval = 10;
        set tcp_keepalives_count = 3; listen ${CHANNEL}`);
    } catch (error) {
      client.release(true);
      throw error;
    }
    client.on('notification', ({ payload = '' }) => {
      const end = payload.indexOf(' ');
      if (Number(payload.slice(0, end)) === this.program) return;
      for (const listener of this.#listeners) listener(payload.slice(end + 1));
    });
    client.on('error', () => this.#lost(client));
    this.#client = client;
    return client;
  }

  /** The database was restarted, or the network broke: the same number again, as soon as there is a connection. */
  #lost(client: pg.PoolClient): void {
    if (this.#client !== client) return;
    this.#client = undefined;
    client.release(true);
    void this.#again();
  }

  async #again(): Promise<void> {
    while (!this.#isClosed) {
      await new Promise((resolve) => setTimeout(resolve, AGAIN_AFTER_MS).unref());
      try {
        if (this.#isClosed) return;
        const client = await this.#connect();
        if (this.#isClosed) return await this.close();
        // Waits where the database has not yet noticed that the connection before is gone: until then that one holds it.
        await client.query('select pg_advisory_lock($1, $2)', [PRESENCE_LOCK, this.program]);
        return;
      } catch {
        this.#client = undefined;
      }
    }
  }
}

export const appear = (pool: pg.Pool): Promise<Presence> => new HeldPresence(pool).open();
