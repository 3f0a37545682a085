/** Long work: start it, watch it, cancel it, be told. */
import { z } from 'zod';
import { jobParamsSchema } from '../contract/jobs.ts';
import { TAKEN } from '../contract/recordings.ts';
import { workAnswerSchema, workListSchema, workParamsSchema } from '../contract/work.ts';
import { startFinding } from '../finding/start-finding.ts';
import { SAFE_HEADERS } from '../guards/safe-headers.ts';
import type { App, Parts } from '../parts.ts';
import { notFound } from '../refusal.ts';
import type { Ring } from '../work/bell.ts';
import { REFUSALS } from './answers.ts';

/** Lines that say nothing keep the connection open, and find out who has gone. */
const HEARTBEAT_MS = 20_000;

export function workRoutes(app: App, parts: Parts): void {
  const { store, board, bell, doorkeeper } = parts;
  const streams = new Set<() => void>();
  app.addHook('preClose', async () => {
    for (const end of streams) end();
  });

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
        summary: 'Work on this job that is under way',
        params: jobParamsSchema,
        response: { 200: workListSchema, ...REFUSALS },
      },
    },
    async ({ params: { id } }) => {
      await store.jobs.read(id);
      return { work: board.openOf(id) };
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
      const work = board.read(wid);
      if (work === undefined) throw notFound('work of that kind');
      return { work };
    },
  );

  app.delete(
    '/work/:wid',
    {
      config: { needs: 'technician' },
      schema: {
        summary: 'Cancel some work, and wait until it has ended',
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
      const { version } = await store.jobs.read(id);
      reply.hijack();
      const { raw } = reply;
      // Gone while the job was read: nothing would ever end what is begun below.
      if (raw.destroyed) return;
      raw.writeHead(200, {
        ...SAFE_HEADERS,
        'content-type': 'text/event-stream; charset=utf-8',
        'cache-control': 'no-store',
        connection: 'keep-alive',
        'x-accel-buffering': 'no',
      });
      const send = ({ event, data }: Ring) => raw.write(`event: ${event}\ndata: ${JSON.stringify(data)}\n\n`);
      // What happened while nobody listened.
      send({ event: 'job', data: { version } });
      for (const work of board.openOf(id)) send({ event: 'work', data: work });
      const stopListening = bell.listen(id, send);
      const heartbeat = setInterval(async () => {
        const { role } = await doorkeeper.whoIs(request).catch(() => request.who);
        if (role === null) raw.end();
        else raw.write(': still here\n\n');
      }, HEARTBEAT_MS);
      const end = () => raw.end();
      streams.add(end);
      raw.on('close', () => {
        streams.delete(end);
        clearInterval(heartbeat);
        stopListening();
      });
    },
  );
}
