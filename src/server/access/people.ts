/** Signing in and out, accounts, and the one-time link that makes the first of them. */
import { timingSafeEqual } from 'node:crypto';
import type { LoginStore } from '../../jobs/accounts/logins.ts';
import { LastOwner, NameTaken, NotTheFirst, type UserStore } from '../../jobs/accounts/users.ts';
import type { Account, Role, User } from '../contract/accounts.ts';
import { Refusal } from '../refusal.ts';
import { hashPassword, isPassword } from './password.ts';
import { hashOf, newSecret } from './secret.ts';

const HOUR_MS = 3_600_000;
/** A working day with its breaks; then one signs in again (judgement). */
const SESSION_MS = 16 * HOUR_MS;
const FIRST_LINK_MS = HOUR_MS;

export const asUser = ({ id, name, role }: User): User => ({ id, name, role });

const usedUp = (): Refusal =>
  new Refusal('not-allowed', 'This link has been used or is too old.', {
    advice: 'While there is no account, the server prints a new link each time it starts.',
  });

/** What the store refuses, in the words of an answer. */
function inWords(error: unknown): never {
  if (error instanceof NameTaken) throw new Refusal('not-possible', error.message, { advice: 'Take another name.' });
  if (error instanceof LastOwner) {
    throw new Refusal('not-possible', error.message, { advice: 'Make somebody else an owner first.' });
  }
  if (error instanceof NotTheFirst) throw usedUp();
  throw error;
}

export interface PeopleOptions {
  readonly users: UserStore;
  readonly logins: LoginStore;
  readonly now?: () => number;
  /** Told when there are accounts now or none any more, so that other servers learn of it. */
  readonly onAccounts?: () => void;
}

export class People {
  readonly #users: UserStore;
  readonly #logins: LoginStore;
  readonly #now: () => number;
  readonly #onAccounts: () => void;
  #hasAccounts: boolean;
  #first: { readonly hash: string; readonly until: number } | undefined;

  private constructor({ users, logins, now = Date.now, onAccounts = () => {} }: PeopleOptions, hasAccounts: boolean) {
    this.#users = users;
    this.#logins = logins;
    this.#now = now;
    this.#onAccounts = onAccounts;
    this.#hasAccounts = hasAccounts;
  }

  static async open(options: PeopleOptions): Promise<People> {
    await options.logins.sweep();
    return new People(options, (await options.users.count()) > 0);
  }

  /** After other data has taken the place of what was there. */
  async refresh(): Promise<void> {
    await this.heard();
    this.#onAccounts();
  }

  /** Another server has told of accounts. */
  async heard(): Promise<void> {
    this.#hasAccounts = (await this.#users.count()) > 0;
  }

  get hasAccounts(): boolean {
    return this.#hasAccounts;
  }

  /** The secret of the link that makes the first account; a new one makes the one before void. */
  offerFirstAccount(): string {
    const secret = newSecret();
    this.#first = { hash: hashOf(secret), until: this.#now() + FIRST_LINK_MS };
    return secret;
  }

  async takeFirstAccount(secret: string, name: string, password: string): Promise<User> {
    const first = this.#first;
    const isRight =
      first !== undefined &&
      this.#now() < first.until &&
      timingSafeEqual(Buffer.from(first.hash), Buffer.from(hashOf(secret)));
    if (!isRight) throw usedUp();
    // Used up before anything else happens, so that two at once cannot both have it.
    this.#first = undefined;
    return this.#addFirst(name, password);
  }

  async addAccount(name: string, role: Role, password: string): Promise<Account> {
    if (this.#hasAccounts) {
      const passwordHash = await hashPassword(password);
      return this.#users.create({ name, role, passwordHash }).catch(inWords);
    }
    if (role === 'owner') return this.#addFirst(name, password);
    throw new Refusal('not-possible', 'The first account must be an owner’s: somebody has to be able to add others.', {
      found: role,
      expected: 'owner',
    });
  }

  async #addFirst(name: string, password: string): Promise<Account> {
    const passwordHash = await hashPassword(password);
    const user = await this.#users.createFirst({ name, passwordHash }).catch(inWords);
    this.#hasAccounts = true;
    this.#onAccounts();
    return user;
  }

  /** undefined: name or password is wrong; which of the two is not told. */
  async check(name: string, password: string): Promise<User | undefined> {
    const known = await this.#users.findByName(name);
    const isRight = await isPassword(known?.passwordHash, password);
    return known !== undefined && isRight ? asUser(known.user) : undefined;
  }

  /** A new secret for every signing in: one that was planted before is worth nothing. */
  async signIn(user: User): Promise<string> {
    const secret = newSecret();
    await this.#logins.start(user.id, hashOf(secret), new Date(this.#now() + SESSION_MS));
    return secret;
  }

  signOut(secret: string): Promise<void> {
    return this.#logins.end(hashOf(secret));
  }

  async userOf(secret: string): Promise<User | undefined> {
    const login = await this.#logins.find(hashOf(secret));
    return login === undefined ? undefined : asUser(login.user);
  }

  accounts(): Promise<readonly Account[]> {
    return this.#users.list();
  }

  async change(
    id: string,
    { password, ...rest }: { readonly role?: Role; readonly isActive?: boolean; readonly password?: string },
  ): Promise<Account> {
    const passwordHash = password === undefined ? {} : { passwordHash: await hashPassword(password) };
    const changed = await this.#users.change(id, { ...rest, ...passwordHash }).catch(inWords);
    if (changed === undefined) throw new Refusal('not-found', 'There is no such account.');
    return changed;
  }
}
