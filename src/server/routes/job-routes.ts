/** Jobs as records: list, open, change, undo, close, history. */

import type { SectionChange } from '../../jobs/job-store.ts';
import { jobSchema } from '../../jobs/record/job.ts';
import {
  closedSchema,
  conflictSchema,
  historySchema,
  jobChangeSchema,
  jobListSchema,
  jobParamsSchema,
  listQuerySchema,
  newJobSchema,
  removedSchema,
  undoSchema,
} from '../contract/jobs.ts';
import type { App, Parts } from '../parts.ts';
import { REFUSALS } from './answers.ts';
import { checkFileEntries } from './file-entries.ts';

export function jobRoutes(app: App, { store: { jobs }, bell }: Parts): void {
  app.get(
    '/jobs',
    {
      config: { needs: 'reader' },
      schema: {
        summary: 'List of jobs, the last changed first',
        querystring: listQuerySchema,
        response: { 200: jobListSchema, ...REFUSALS },
      },
    },
    async ({ query: { closed, ...query } }) => ({
      jobs: await jobs.list({
        ...(query.words === undefined ? {} : { words: query.words }),
        ...(query.waitsFor === undefined ? {} : { waitsFor: query.waitsFor }),
        ...(query.before === undefined ? {} : { before: query.before }),
        ...(query.limit === undefined ? {} : { limit: query.limit }),
        ...(closed === undefined ? {} : { closed: closed === 'true' }),
      }),
    }),
  );

  app.post(
    '/jobs',
    {
      config: { needs: 'technician' },
      schema: {
        summary: 'Open a job',
        body: newJobSchema,
        response: { 201: jobSchema, ...REFUSALS },
      },
    },
    async ({ body, who }, reply) => {
      const job = await jobs.create(who.actor, { sections: body.sections ?? {} });
      return reply.code(201).header('location', `/jobs/${job.id}`).send(job);
    },
  );

  app.get(
    '/jobs/:id',
    {
      config: { needs: 'reader' },
      schema: { summary: 'A whole job', params: jobParamsSchema, response: { 200: jobSchema, ...REFUSALS } },
    },
    ({ params }) => jobs.read(params.id),
  );

  app.patch(
    '/jobs/:id',
    {
      config: { needs: 'technician' },
      schema: {
        summary: 'Replace one section of a job',
        params: jobParamsSchema,
        body: jobChangeSchema,
        response: { 200: jobSchema, 409: conflictSchema, ...REFUSALS },
      },
    },
    async ({ params: { id }, body: { version, change }, who }) => {
      if (change.section === 'recordings' || change.section === 'attachments') {
        checkFileEntries(await jobs.read(id), version, change);
      }
      const job = await jobs.change(id, who.actor, version, change as SectionChange);
      bell.jobChanged(job);
      return job;
    },
  );

  app.post(
    '/jobs/:id/undo',
    {
      config: { needs: 'technician' },
      schema: {
        summary: 'Take back the newest change that has not been taken back',
        params: jobParamsSchema,
        body: undoSchema,
        response: { 200: jobSchema, 409: conflictSchema, ...REFUSALS },
      },
    },
    async ({ params: { id }, body: { version }, who }) => {
      const job = await jobs.undo(id, who.actor, version);
      bell.jobChanged(job);
      return job;
    },
  );

  app.post(
    '/jobs/:id/closed',
    {
      config: { needs: 'technician' },
      schema: {
        summary: 'Close a job, or open it again',
        params: jobParamsSchema,
        body: closedSchema,
        response: { 200: jobSchema, 409: conflictSchema, ...REFUSALS },
      },
    },
    async ({ params: { id }, body: { version, closed }, who }) => {
      const job = await jobs.setClosed(id, who.actor, version, closed);
      bell.jobChanged(job);
      return job;
    },
  );

  app.get(
    '/jobs/:id/history',
    {
      config: { needs: 'reader' },
      schema: {
        summary: 'Who changed what, when',
        params: jobParamsSchema,
        response: { 200: historySchema, ...REFUSALS },
      },
    },
    async ({ params: { id } }) => ({ history: await jobs.history(id) }),
  );

  app.delete(
    '/demo',
    {
      config: { needs: 'owner' },
      schema: { summary: 'Remove all demo jobs', response: { 200: removedSchema, ...REFUSALS } },
    },
    async ({ who }) => ({ removed: await jobs.removeDemo(who.actor) }),
  );
}
