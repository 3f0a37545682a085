import type { Kysely, Transaction } from 'kysely';
import type { Tables } from '../database/tables.ts';

export type Tx = Transaction<Tables>;
/** What reads may run on: the pool, or a transaction. */
export type Queries = Kysely<Tables> | Tx;
