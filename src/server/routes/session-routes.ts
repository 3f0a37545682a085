/** Who is asking; signing in and out; the first account. */
import { Tries } from '../access/tries.ts';
import {
  firstAccountSchema,
  type Session,
  securityLogSchema,
  sessionSchema,
  signInSchema,
  type User,
} from '../contract/accounts.ts';
import type { App, Parts } from '../parts.ts';
import { Refusal } from '../refusal.ts';
import { NOTHING, REFUSALS } from './answers.ts';

const MINUTE_MS = 60_000;
/** Tries from one address in a quarter of an hour (judgement). */
const TRIES_PER_ADDRESS = 40;

export function sessionRoutes(app: App, { people, doorkeeper, store }: Parts): void {
  const session = (who: { readonly user: User | null; readonly role: Session['role'] }, csrf: string): Session => ({
    user: who.user,
    role: who.role,
    needsLogin: doorkeeper.needsLogin && who.role === null,
    needsFirst: doorkeeper.needsLogin && !people.hasAccounts,
    csrf,
  });

  app.get(
    '/session',
    {
      config: { needs: 'anybody' },
      schema: { summary: 'Who is asking, and the token for changes', response: { 200: sessionSchema, ...REFUSALS } },
    },
    async (request, reply) => session(request.who, doorkeeper.tokenFor(request, reply)),
  );

  const window = 15 * MINUTE_MS;
  const perAddress = app.rateLimit({ max: TRIES_PER_ADDRESS, timeWindow: window });
  const tries = new Tries();

  app.post(
    '/session',
    {
      config: { needs: 'anybody' },
      preHandler: perAddress,
      schema: { summary: 'Sign in', body: signInSchema, response: { 200: sessionSchema, ...REFUSALS } },
    },
    async (request, reply) => {
      const { name, password } = request.body;
      tries.check(name);
      const user = await people.check(name, password);
      if (user === undefined) {
        tries.failed(name);
        await store.securityLog.write({ kind: 'sign-in-refused', actor: name, address: request.ip });
        throw new Refusal('wrong-password', 'Name or password is wrong.', {
          advice: 'Check both, also capital letters.',
        });
      }
      tries.succeeded(name);
      const secret = doorkeeper.giveCookie(reply, await people.signIn(user));
      await store.securityLog.write({ kind: 'signed-in', actor: user.name, address: request.ip });
      return session({ user, role: user.role }, doorkeeper.pageTokenOf(secret));
    },
  );

  app.delete(
    '/session',
    {
      config: { needs: 'anybody' },
      schema: { summary: 'Sign out', response: { 204: NOTHING, ...REFUSALS } },
    },
    async (request, reply) => {
      const { user, sessionToken } = request.who;
      if (user !== null && sessionToken !== null) {
        await people.signOut(sessionToken);
        await store.securityLog.write({ kind: 'signed-out', actor: user.name, address: request.ip });
      }
      doorkeeper.takeCookie(reply);
      return reply.code(204).send(null);
    },
  );

  app.post(
    '/accounts/first',
    {
      config: { needs: 'anybody' },
      preHandler: perAddress,
      schema: {
        summary: 'Make the owner’s account with the link that the server printed',
        body: firstAccountSchema,
        response: { 201: sessionSchema, ...REFUSALS },
      },
    },
    async (request, reply) => {
      const { token, name, password } = request.body;
      const user = await people.takeFirstAccount(token, name, password).catch(async (error: unknown) => {
        await store.securityLog.write({ kind: 'first-account-refused', actor: name, address: request.ip });
        throw error;
      });
      await store.securityLog.write({ kind: 'first-account', actor: user.name, address: request.ip });
      const secret = doorkeeper.giveCookie(reply, await people.signIn(user));
      return reply
        .code(201)
        .send(
          session(
            { user: { id: user.id, name: user.name, role: user.role }, role: user.role },
            doorkeeper.pageTokenOf(secret),
          ),
        );
    },
  );

  app.get(
    '/security-log',
    {
      config: { needs: 'owner' },
      schema: {
        summary: 'What happened to accounts, sessions and links',
        response: { 200: securityLogSchema, ...REFUSALS },
      },
    },
    async () => {
      const events = await store.securityLog.read();
      return {
        events: events.map(({ at, kind, actor, address }) => ({
          at,
          what: kind,
          who: actor ?? null,
          from: address ?? '',
        })),
      };
    },
  );
}
