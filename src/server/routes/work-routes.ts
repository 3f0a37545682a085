/** Long work: start it, watch it, cancel it, be told. */
import { z } from 'zod';
import { jobParamsSchema } from '../contract/jobs.ts';
import { TAKEN } from '../contract/recordings.ts';
import { workAnswerSchema, workListSchema, workParamsSchema } from '../contract/work.ts';
import { startFinding } from '../finding/start-finding.ts';
import type { App, Parts } from '../parts.ts';
import { notFound } from '../refusal.ts';
import type { Ring } from '../work/bell.ts';
import { REFUSALS } from './answers.ts';
import { eventStreams } from './event-stream.ts';

export function workRoutes(app: App, parts: Parts): void {
  const { store, board, bell, doorkeeper } = parts;
  const streams = eventStreams(app, doorkeeper);

  app.post(
    '/jobs/:id/findings',
    {
      config: { needs: 'technician' },
      schema: {
        summary: 'Make a finding of the job as it stands; the same that runs already is not started twice',
        params: jobParamsSchema,
        body: z
          .strictObject({ taken: z.enum(TAKEN).exactOptional().describe('Recordings from before or after the repair') })
          .nullish(),
        response: { 202: workAnswerSchema, ...REFUSALS },
      },
    },
    async (request, reply) => {
      const job = await store.jobs.read(request.params.id);
      const onFault = (error: unknown) => request.log.error(error);
      const work = startFinding(parts, job, request.who.actor, request.body?.taken, onFault);
      return reply.code(202).send({ work });
    },
  );

  app.get(
    '/jobs/:id/work',
    {
      config: { needs: 'reader' },
      schema: {
        summary: 'Work on this job that is under way, on this server or another, or was when its server ended',
        params: jobParamsSchema,
        response: { 200: workListSchema, ...REFUSALS },
      },
    },
    async ({ params: { id } }) => {
      await store.jobs.read(id);
      return { work: await board.ofJob(id) };
    },
  );

  app.get(
    '/work/:wid',
    {
      config: { needs: 'reader' },
      schema: {
        summary: 'How far some work is, or what became of it',
        params: workParamsSchema,
        response: { 200: workAnswerSchema, ...REFUSALS },
      },
    },
    async ({ params: { wid } }) => {
      const work = await board.read(wid);
      if (work === undefined) throw notFound('work of that kind');
      return { work };
    },
  );

  app.delete(
    '/work/:wid',
    {
      config: { needs: 'technician' },
      schema: {
        summary: 'Cancel some work, and wait until it has ended; interrupted work is not told again',
        params: workParamsSchema,
        response: { 200: workAnswerSchema, ...REFUSALS },
      },
    },
    async ({ params: { wid } }) => {
      const work = await board.cancel(wid);
      if (work === undefined) throw notFound('work of that kind');
      return { work };
    },
  );

  app.get(
    '/jobs/:id/events',
    {
      config: { needs: 'reader' },
      schema: {
        summary: 'Server-sent events: "job" with the new version, "work" with its state',
        params: jobParamsSchema,
        response: { 200: { content: { 'text/event-stream': { schema: z.string() } } }, ...REFUSALS },
      },
    },
    async (request, reply) => {
      const { id } = request.params;
      const open = await board.ofJob(id);
      // Last, since the page asks for open work itself once it listens, but not for the version.
      const { version } = await store.jobs.read(id);
      streams.open(request, reply, (stream) => {
        const send = ({ event, data }: Ring) => stream.send(event, data);
        // What happened while nobody listened.
        send({ event: 'job', data: { version } });
        for (const work of open) send({ event: 'work', data: work });
        return bell.listen(id, send);
      });
    },
  );
}
