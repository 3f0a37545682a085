/** People who may sign in. Passwords come hashed; this room never sees one. */
import { randomUUID } from 'node:crypto';
import { sql } from 'kysely';
import type { Tx } from '../store/queries.ts';
import { plainText } from '../store/search-text.ts';
import type { StoreContext } from '../store/store-context.ts';

export const ROLES = ['owner', 'technician', 'reader'] as const;
export type Role = (typeof ROLES)[number];

export interface User {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly isActive: boolean;
  readonly createdAt: string;
}

export interface NewUser {
  readonly name: string;
  readonly role: Role;
  readonly passwordHash: string;
}

export interface UserChange {
  readonly role?: Role;
  readonly isActive?: boolean;
  readonly passwordHash?: string;
}

export class NameTaken extends Error {
  constructor(name: string) {
    super(`There is an account named "${name}" already.`);
    this.name = 'NameTaken';
  }
}

/** A shop without an active owner could not be managed any more. */
export class LastOwner extends Error {
  constructor() {
    super('This is the last active owner: it stays an active owner until there is another one.');
    this.name = 'LastOwner';
  }
}

export class NotTheFirst extends Error {
  constructor() {
    super('There are accounts already: the first one has been made.');
    this.name = 'NotTheFirst';
  }
}

export interface UserStore {
  count(): Promise<number>;
  list(): Promise<readonly User[]>;
  read(id: string): Promise<User | undefined>;
  /** For signing in; a disabled account is not found. */
  findByName(name: string): Promise<{ readonly user: User; readonly passwordHash: string } | undefined>;
  /** @throws NameTaken */
  create(user: NewUser): Promise<User>;
  /** The owner, when nobody is there yet. @throws NotTheFirst */
  createFirst(user: Omit<NewUser, 'role'>): Promise<User>;
  /** A new password or an end of the account ends its sessions. undefined: no such account. @throws LastOwner */
  change(id: string, change: UserChange): Promise<User | undefined>;
}

const ACCOUNTS_LOCK = 7_203_313;
const nameKey = (name: string): string => plainText(name).normalize('NFKC').trim().toLowerCase();

interface Row {
  readonly id: string;
  readonly name: string;
  readonly role: string;
  readonly created_at: Date;
  readonly disabled_at: Date | null;
}

export const toUser = (row: Row): User => ({
  id: row.id,
  name: row.name,
  role: row.role as Role,
  isActive: row.disabled_at === null,
  createdAt: row.created_at.toISOString(),
});

async function insert(tx: Tx, user: NewUser, now: Date): Promise<User> {
  const row = await tx
    .insertInto('users')
    .values({
      id: randomUUID(),
      name: plainText(user.name).trim(),
      name_key: nameKey(user.name),
      role: user.role,
      password_hash: user.passwordHash,
      created_at: now,
      disabled_at: null,
    })
    .onConflict((conflict) => conflict.column('name_key').doNothing())
    .returningAll()
    .executeTakeFirst();
  if (row === undefined) throw new NameTaken(user.name);
  return toUser(row);
}

async function change(tx: Tx, id: string, change: UserChange, now: Date): Promise<User | undefined> {
  // One at a time: two owners who end each other at once would leave none.
  await sql`select pg_advisory_xact_lock(${ACCOUNTS_LOCK})`.execute(tx);
  const found = await tx.selectFrom('users').selectAll().where('id', '=', id).executeTakeFirst();
  if (found === undefined) return undefined;
  const isActive = change.isActive ?? found.disabled_at === null;
  const row = await tx
    .updateTable('users')
    .set({
      role: change.role ?? found.role,
      password_hash: change.passwordHash ?? found.password_hash,
      disabled_at: isActive ? null : (found.disabled_at ?? now),
    })
    .where('id', '=', id)
    .returningAll()
    .executeTakeFirstOrThrow();
  const owners = await tx
    .selectFrom('users')
    .select('id')
    .where('role', '=', 'owner')
    .where('disabled_at', 'is', null)
    .execute();
  const was = found.role === 'owner' && found.disabled_at === null;
  if (was && owners.length === 0) throw new LastOwner();
  if (!isActive || change.passwordHash !== undefined) {
    await tx.deleteFrom('sessions').where('user_id', '=', id).execute();
  }
  return toUser(row);
}

export function userStore(context: StoreContext): UserStore {
  return {
    count: async () => {
      const row = await context.run((db) =>
        db
          .selectFrom('users')
          .select((eb) => eb.fn.countAll<number>().as('count'))
          .executeTakeFirstOrThrow(),
      );
      return row.count;
    },
    list: async () => {
      const rows = await context.run((db) => db.selectFrom('users').selectAll().orderBy('name_key').execute());
      return rows.map(toUser);
    },
    read: async (id) => {
      const row = await context.run((db) => db.selectFrom('users').selectAll().where('id', '=', id).executeTakeFirst());
      return row === undefined ? undefined : toUser(row);
    },
    findByName: async (name) => {
      const row = await context.run((db) =>
        db
          .selectFrom('users')
          .selectAll()
          .where('name_key', '=', nameKey(name))
          .where('disabled_at', 'is', null)
          .executeTakeFirst(),
      );
      return row === undefined ? undefined : { user: toUser(row), passwordHash: row.password_hash };
    },
    create: (user) => context.transaction((tx) => insert(tx, user, context.now())),
    createFirst: (user) =>
      context.transaction(async (tx) => {
        await sql`select pg_advisory_xact_lock(${ACCOUNTS_LOCK})`.execute(tx);
        const anyone = await tx.selectFrom('users').select('id').limit(1).executeTakeFirst();
        if (anyone !== undefined) throw new NotTheFirst();
        return insert(tx, { ...user, role: 'owner' }, context.now());
      }),
    change: (id, given) => context.transaction((tx) => change(tx, id, given, context.now())),
  };
}
