/** What a link to a single job shows: that job, for reading, to whoever has the link. */
import { z } from 'zod';
import { type Job, jobSchema } from '../../jobs/record/job.ts';
import { ruleOfJob } from '../../jobs/record/monitor-of-job.ts';
import { inspectionRuleSchema } from '../../readiness/inspection.ts';
import { hashOf } from '../access/secret.ts';
import { sharedParamsSchema } from '../contract/accounts.ts';
import { previewSchema } from '../contract/recordings.ts';
import type { App, Parts } from '../parts.ts';
import { Refusal } from '../refusal.ts';
import { bytesOf, REFUSALS } from './answers.ts';
import { sendAttachment } from './attachment-routes.ts';
import { sendHandOver } from './hand-over-routes.ts';
import { recordingOf } from './recording-routes.ts';
import { readSettings } from './settings-routes.ts';

const uuid = z.uuid();
const MINUTE_MS = 60_000;

export function sharedRoutes(app: App, { store, readings }: Parts): void {
  // Secrets of 256 bits cannot be guessed; this keeps the log and the database from being filled by trying.
  const limited = app.rateLimit({ max: 240, timeWindow: MINUTE_MS });
  const guest = { config: { needs: 'anybody' }, preHandler: limited } as const;

  const open = async (token: string): Promise<Job> => {
    const share = await store.shares.open(hashOf(token));
    if (share !== undefined) return store.jobs.read(share.jobId);
    throw new Refusal('not-found', 'This link does not open anything (any more).', {
      advice: 'Ask the shop for a new one.',
    });
  };

  app.get(
    '/shared/:token',
    {
      ...guest,
      schema: {
        summary: 'The job of a link, for reading',
        params: sharedParamsSchema,
        response: { 200: jobSchema, ...REFUSALS },
      },
    },
    ({ params: { token } }) => open(token),
  );

  app.get(
    '/shared/:token/recordings/:rid/samples',
    {
      ...guest,
      schema: {
        summary: 'Samples of a recording of the job of a link',
        params: sharedParamsSchema.extend({ rid: uuid }),
        response: { 200: bytesOf('application/octet-stream', 'Samples'), ...REFUSALS },
      },
    },
    async ({ params }, reply) => {
      const job = await open(params.token);
      const answer = await readings.samples(job, recordingOf(job, params.rid));
      return reply
        .header('content-type', 'application/octet-stream')
        .header('content-length', answer.bytes)
        .send(answer.body());
    },
  );

  app.get(
    '/shared/:token/recordings/:rid/preview',
    {
      ...guest,
      schema: {
        summary: 'How a recording of the job of a link is understood',
        params: sharedParamsSchema.extend({ rid: uuid }),
        response: { 200: previewSchema, ...REFUSALS },
      },
    },
    async ({ params }) => {
      const job = await open(params.token);
      return readings.preview(readings.inputsOf(job.car, recordingOf(job, params.rid)));
    },
  );

  app.get(
    '/shared/:token/inspection-rule',
    {
      ...guest,
      schema: {
        summary: 'The inspection rule that the job of a link is held against',
        params: sharedParamsSchema,
        response: { 200: inspectionRuleSchema, ...REFUSALS },
      },
    },
    async ({ params }) => {
      const job = await open(params.token);
      const { inspectionRules, inspectionRule } = await readSettings(store.settings);
      return ruleOfJob(job, {
        ...(inspectionRules === undefined ? {} : { inspectionRules }),
        ...(inspectionRule === undefined ? {} : { inspectionRule }),
      });
    },
  );

  app.get(
    '/shared/:token/attachments/:aid',
    {
      ...guest,
      schema: {
        summary: 'A photo or document of the job of a link',
        params: sharedParamsSchema.extend({ aid: uuid }),
        response: { 200: bytesOf('application/octet-stream', 'The file'), ...REFUSALS },
      },
    },
    async ({ params }, reply) => sendAttachment(reply, store.files, await open(params.token), params.aid),
  );

  app.get(
    '/shared/:token/hand-overs/:hid/pdf',
    {
      ...guest,
      schema: {
        summary: 'A hand-over document of the job of a link',
        params: sharedParamsSchema.extend({ hid: uuid }),
        response: { 200: bytesOf('application/pdf', 'PDF'), ...REFUSALS },
      },
    },
    async ({ params }, reply) => sendHandOver(reply, store.files, await open(params.token), params.hid),
  );
}
