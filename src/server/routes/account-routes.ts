/** Accounts, for the owner. */
import {
  accountChangeSchema,
  accountListSchema,
  accountParamsSchema,
  accountSchema,
  newAccountSchema,
} from '../contract/accounts.ts';
import type { App, Parts } from '../parts.ts';
import { REFUSALS } from './answers.ts';

export function accountRoutes(app: App, { people, store }: Parts): void {
  app.get(
    '/accounts',
    {
      config: { needs: 'owner' },
      schema: { summary: 'All accounts', response: { 200: accountListSchema, ...REFUSALS } },
    },
    async () => ({ accounts: await people.accounts() }),
  );

  app.post(
    '/accounts',
    {
      config: { needs: 'owner' },
      schema: {
        summary: 'Add an account; from the first one on everybody signs in',
        body: newAccountSchema,
        response: { 201: accountSchema, ...REFUSALS },
      },
    },
    async ({ body: { name, role, password }, who, ip }, reply) => {
      const account = await people.addAccount(name, role, password);
      const detail = { account: account.name, role: account.role };
      await store.securityLog.write({ kind: 'account-added', actor: who.actor.name, address: ip, detail });
      return reply.code(201).send(account);
    },
  );

  app.patch(
    '/accounts/:uid',
    {
      config: { needs: 'owner' },
      schema: {
        summary: 'Change role, password or whether it may be used',
        params: accountParamsSchema,
        body: accountChangeSchema,
        response: { 200: accountSchema, ...REFUSALS },
      },
    },
    async ({ params: { uid }, body, who, ip }) => {
      const account = await people.change(uid, body);
      const detail = { account: account.name, changed: Object.keys(body) };
      await store.securityLog.write({ kind: 'account-changed', actor: who.actor.name, address: ip, detail });
      return account;
    },
  );
}
