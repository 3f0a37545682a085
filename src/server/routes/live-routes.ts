/** Recording a car live: ports, start, what comes, marks, keep or discard, codes. */
import { z } from 'zod';
import { findPorts } from '../../capture/find-ports.ts';
import { jobSchema } from '../../jobs/record/job.ts';
import { takenCodes } from '../../jobs/record/taken-codes.ts';
import { jobParamsSchema } from '../contract/jobs.ts';
import {
  clearedSchema,
  clearRequestSchema,
  type LiveEvents,
  liveAnswerSchema,
  liveChangeSchema,
  liveKeepSchema,
  liveKeptSchema,
  liveOfJobSchema,
  liveParamsSchema,
  type livePortSchema,
  liveStartSchema,
  portsSchema,
} from '../contract/live.ts';
import { changeNow, clearCodes } from '../live/clear-codes.ts';
import { keepCapture } from '../live/keep-capture.ts';
import type { LiveRecording } from '../live/live-recording.ts';
import type { App, Parts } from '../parts.ts';
import { Refusal } from '../refusal.ts';
import { NOTHING, REFUSALS } from './answers.ts';
import { type EventStream, eventStreams } from './event-stream.ts';

const STREAM = { 200: { content: { 'text/event-stream': { schema: z.string() } } } } as const;
const portInWords = (port: z.infer<typeof livePortSchema>): string =>
  port.kind === 'adapter' ? port.address : `simulated ${port.layout}`;

export function liveRoutes(app: App, parts: Parts): void {
  const { store, live: board, bell, doorkeeper } = parts;
  const streams = eventStreams(app, doorkeeper);
  const log = (kind: string, request: { who: { actor: { name: string } }; ip: string }, detail: unknown) =>
    store.securityLog.write({ kind, actor: request.who.actor.name, address: request.ip, detail });

  app.get(
    '/live/ports',
    {
      config: { needs: 'technician' },
      schema: { summary: 'Adapters that were found on this machine', response: { 200: portsSchema, ...REFUSALS } },
    },
    async () => findPorts(),
  );

  app.get(
    '/jobs/:id/live',
    {
      config: { needs: 'reader' },
      schema: {
        summary: 'The recording of this job that runs, and captures that were left by a program that ended',
        params: jobParamsSchema,
        response: { 200: liveOfJobSchema, ...REFUSALS },
      },
    },
    async ({ params: { id } }) => {
      await store.jobs.read(id);
      return { live: board.of(id)?.status() ?? null, left: board.leftOf(id) };
    },
  );

  app.post(
    '/jobs/:id/live',
    {
      config: { needs: 'technician' },
      schema: {
        summary: 'Begin to record from a car; requests to the car only read',
        params: jobParamsSchema,
        body: liveStartSchema,
        response: { 201: liveAnswerSchema, ...REFUSALS },
      },
    },
    async (request, reply) => {
      const job = await store.jobs.read(request.params.id);
      const live = board.begin(request.body, {
        job,
        actor: request.who.actor,
        onFault: (error) => request.log.error(error),
      });
      await log('live-begun', request, { job: job.number, port: portInWords(request.body.port) });
      return reply.code(201).send({ live: live.status() });
    },
  );

  app.patch(
    '/jobs/:id/live',
    {
      config: { needs: 'technician' },
      schema: {
        summary: 'Say what is done with the car, or mark the vent valve',
        params: jobParamsSchema,
        body: liveChangeSchema,
        response: { 200: liveAnswerSchema, ...REFUSALS },
      },
    },
    async ({ params: { id }, body }) => {
      const live = board.need(id);
      live.change(body);
      return { live: live.status() };
    },
  );

  app.get(
    '/jobs/:id/live/events',
    {
      config: { needs: 'reader' },
      schema: {
        summary: 'Server-sent events: "status", "rows" (their id is the number of rows so far), "follow", "over"',
        description: 'Rows come from the header last-event-id, or the query "after", on.',
        params: jobParamsSchema,
        querystring: z.object({ after: z.coerce.number().int().nonnegative().optional() }),
        headers: z.looseObject({ 'last-event-id': z.coerce.number().int().nonnegative().optional() }),
        response: { ...STREAM, ...REFUSALS },
      },
    },
    async (request, reply) => {
      const live = board.need(request.params.id);
      const from = request.headers['last-event-id'] ?? request.query.after ?? 0;
      streams.open(request, reply, (stream) => listenTo(live, stream, from));
    },
  );

  app.post(
    '/jobs/:id/live/:lid/keep',
    {
      config: { needs: 'technician' },
      schema: {
        summary: 'Stop it if it runs, and take what was recorded into the job like a file that was sent',
        params: liveParamsSchema,
        body: liveKeepSchema,
        response: { 201: liveKeptSchema, ...REFUSALS },
      },
    },
    async (request, reply) => {
      const { id, lid } = request.params;
      const kept = await board.decide(id, lid, async (ended) => {
        const made = await keepCapture(parts, ended, request.body, request.who.actor);
        board.release(id, lid, 'kept', made.recordingId);
        await log('live-kept', request, { job: made.job.number, port: portInWords(ended.about.port) });
        return made;
      });
      bell.jobChanged(kept.job);
      return reply.code(201).send(kept);
    },
  );

  app.delete(
    '/jobs/:id/live/:lid',
    {
      config: { needs: 'technician' },
      schema: {
        summary: 'Stop it if it runs, and throw away what was recorded',
        params: liveParamsSchema,
        response: { 204: NOTHING, ...REFUSALS },
      },
    },
    async (request, reply) => {
      const { id, lid } = request.params;
      const { number } = await store.jobs.read(id);
      await board.decide(id, lid, async ({ about: { port, startedAt } }) => {
        board.release(id, lid, 'discarded');
        await log('live-discarded', request, { job: number, port: portInWords(port), startedAt });
      });
      return reply.code(204).send(null);
    },
  );

  app.post(
    '/jobs/:id/live/codes',
    {
      config: { needs: 'technician' },
      schema: {
        summary: 'Take the codes that the car gave into the job, with their freeze frames',
        params: jobParamsSchema,
        response: { 200: jobSchema, ...REFUSALS },
      },
    },
    async (request) => {
      const { id } = request.params;
      const { said } = board.need(id).status();
      if (said === null) throw new Refusal('not-possible', 'No codes have been read yet.');
      const job = await changeNow(
        store,
        id,
        request.who.actor,
        'codes',
        ({ codes }) => takenCodes(codes, said, 'before-repair').next,
      );
      bell.jobChanged(job);
      return job;
    },
  );

  app.post(
    '/jobs/:id/live/codes/clear',
    {
      config: { needs: 'technician' },
      schema: {
        summary: 'Clear the codes of the car (service $04), after everything that it said was saved into the job',
        params: jobParamsSchema,
        body: clearRequestSchema,
        response: { 200: clearedSchema, ...REFUSALS },
      },
    },
    async (request) => {
      const live = board.need(request.params.id);
      const { port } = live.about;
      const cleared = await clearCodes(parts, live, request.who.actor, request.body.language);
      await log('codes-cleared', request, {
        job: cleared.job.number,
        port: portInWords(port),
        confirmed: cleared.units,
      });
      bell.jobChanged(cleared.job);
      return cleared;
    },
  );
}

/** Tells a page what there is, then what comes; rows in pieces that a page can take. */
function listenTo(live: LiveRecording, stream: EventStream, from: number): () => unknown {
  const send = <Name extends keyof LiveEvents>(event: Name, data: LiveEvents[Name], id?: number): void =>
    stream.send(event, data, id);
  let next = from;
  const sendRows = (): void => {
    for (let rows = live.rowsAfter(next); rows !== undefined; rows = live.rowsAfter(next)) {
      next = rows.from + rows.timeS.length;
      send('rows', rows, next);
    }
  };
  send('status', live.status());
  sendRows();
  if (live.follow !== undefined) send('follow', live.follow);
  const { events } = live;
  const sendStatus = (status: LiveEvents['status']): void => send('status', status);
  const sendFollow = (follow: LiveEvents['follow']): void => send('follow', follow);
  const sendOver = (over: LiveEvents['over']): void => {
    sendRows();
    send('over', over);
    stream.end();
  };
  events.on('rows', sendRows).on('status', sendStatus).on('follow', sendFollow).on('over', sendOver);
  return () => events.off('rows', sendRows).off('status', sendStatus).off('follow', sendFollow).off('over', sendOver);
}
