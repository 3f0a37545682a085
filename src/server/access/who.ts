/** Who is asking, and what they may do. */
import type { Actor } from '../../jobs/job-store.ts';
import { ROLES, type Role, type User } from '../contract/accounts.ts';
import { Refusal } from '../refusal.ts';

export interface Who {
  readonly user: User | null;
  /** null: nobody has signed in and somebody must. */
  readonly role: Role | null;
  readonly actor: Actor;
  /** The secret in the cookie; every page token hangs on it. */
  readonly sessionToken: string | null;
}

/** `anybody`: also without signing in. */
export type Needs = Role | 'anybody';

const covers = (role: Role, needs: Role): boolean => ROLES.indexOf(role) <= ROLES.indexOf(needs);

export function requireRole({ role }: Pick<Who, 'role'>, needs: Needs): void {
  if (needs === 'anybody') return;
  if (role === null) {
    throw new Refusal('sign-in', 'Nobody is signed in here.', { advice: 'Sign in, then do it again.' });
  }
  if (covers(role, needs)) return;
  throw new Refusal('not-allowed', `This needs the role "${needs}"; yours is "${role}".`, {
    found: role,
    expected: needs,
    advice: 'Ask the owner of this workbench.',
  });
}
