/** Read-only links to a single job. */
import type { Share as KeptShare } from '../../jobs/accounts/shares.ts';
import { hashOf, newSecret } from '../access/secret.ts';
import {
  newShareAnswerSchema,
  newShareSchema,
  type Share,
  shareListSchema,
  shareParamsSchema,
} from '../contract/accounts.ts';
import { jobParamsSchema } from '../contract/jobs.ts';
import type { App, Parts } from '../parts.ts';
import { notFound } from '../refusal.ts';
import { NOTHING, REFUSALS } from './answers.ts';

const DAY_MS = 24 * 3_600_000;
const USUAL_DAYS = 30;

const asShare = ({ id, label, createdAt, expiresAt }: KeptShare): Share => ({
  id,
  label,
  createdAt,
  expiresAt: expiresAt ?? new Date(Date.parse(createdAt) + USUAL_DAYS * DAY_MS).toISOString(),
});

const isOpen = ({ revokedAt, expiresAt }: KeptShare): boolean =>
  revokedAt === null && (expiresAt === null || Date.parse(expiresAt) > Date.now());

export function shareRoutes(app: App, { store, publicAddress }: Parts): void {
  app.post(
    '/jobs/:id/shares',
    {
      config: { needs: 'technician' },
      schema: {
        summary: 'Make a link that shows this job and nothing else, for reading',
        params: jobParamsSchema,
        body: newShareSchema.optional(),
        response: { 201: newShareAnswerSchema, ...REFUSALS },
      },
    },
    async ({ params: { id }, body, who, ip }, reply) => {
      const job = await store.jobs.read(id);
      const secret = newSecret();
      const share = await store.shares.make(who.actor, {
        jobId: id,
        tokenSha256: hashOf(secret),
        label: body?.label ?? '',
        expiresAt: new Date(Date.now() + (body?.days ?? USUAL_DAYS) * DAY_MS),
      });
      const detail = { job: job.number, share: share.id };
      await store.securityLog.write({ kind: 'link-made', actor: who.actor.name, address: ip, detail });
      return reply.code(201).send({ share: asShare(share), url: `${publicAddress()}/shared/${secret}` });
    },
  );

  app.get(
    '/jobs/:id/shares',
    {
      config: { needs: 'technician' },
      schema: {
        summary: 'Links to this job that still open',
        params: jobParamsSchema,
        response: { 200: shareListSchema, ...REFUSALS },
      },
    },
    async ({ params: { id } }) => {
      await store.jobs.read(id);
      return { shares: (await store.shares.list(id)).filter(isOpen).map(asShare) };
    },
  );

  app.delete(
    '/jobs/:id/shares/:sid',
    {
      config: { needs: 'technician' },
      schema: { summary: 'Revoke a link', params: shareParamsSchema, response: { 204: NOTHING, ...REFUSALS } },
    },
    async ({ params: { id, sid }, who, ip }, reply) => {
      if (!(await store.shares.revoke(who.actor, id, sid))) throw notFound('link of that kind');
      const detail = { job: id, share: sid };
      await store.securityLog.write({ kind: 'link-revoked', actor: who.actor.name, address: ip, detail });
      return reply.code(204).send(null);
    },
  );
}
