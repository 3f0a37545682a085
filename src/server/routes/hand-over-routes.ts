/** The hand-over document: made as long work, then given as it was made. */
import { createHash, randomUUID } from 'node:crypto';
import { Readable } from 'node:stream';
import type { FastifyReply } from 'fastify';
import type { FileStore } from '../../jobs/job-store.ts';
import type { Job } from '../../jobs/record/job.ts';
import {
  HAND_OVER_PARTS,
  handOverPageQuerySchema,
  handOverParamsSchema,
  handOverRequestSchema,
  type Units,
} from '../contract/hand-over.ts';
import { jobParamsSchema } from '../contract/jobs.ts';
import { workAnswerSchema } from '../contract/work.ts';
import { FOREIGN_FILE_POLICY } from '../guards/safe-headers.ts';
import { handOverInputs, handOverKey } from '../hand-over/hand-over-inputs.ts';
import type { App, Parts } from '../parts.ts';
import { notFound } from '../refusal.ts';
import { bytesOf, REFUSALS } from './answers.ts';
import { inlineNamed } from './file-name.ts';

export function sendHandOver(reply: FastifyReply, files: FileStore, job: Job, hid: string): FastifyReply {
  const handOver = job.handOvers.find(({ id }) => id === hid);
  if (handOver === undefined) throw notFound('hand-over document of that kind');
  const day = handOver.madeAt.slice(0, 10);
  return reply
    .header('content-type', 'application/pdf')
    .header('content-disposition', inlineNamed(`job-${job.number}-${day}-${handOver.language}.pdf`))
    .header('content-security-policy', FOREIGN_FILE_POLICY)
    .header('cache-control', 'private, max-age=31536000, immutable')
    .send(Readable.from(files.open(handOver.pdfSha256)));
}

async function* once(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}

/** The page brings its own style and fonts inside: exactly these and lengths of bars are let through, and nothing that runs. */
function pagePolicy(html: string): string {
  const hashes = [...html.matchAll(/<style>([\s\S]*?)<\/style>/g)].map(
    ([, style = '']) => `'sha256-${createHash('sha256').update(style).digest('base64')}'`,
  );
  return `default-src 'none'; style-src-elem ${hashes.join(' ') || "'none'"}; style-src-attr 'unsafe-inline'; font-src data:; img-src data:; frame-ancestors 'self'; base-uri 'none'; form-action 'none'`;
}

const USUAL_UNITS: Units = { pressure: 'kPa', length: 'mm', temperature: 'degC' };

export function handOverRoutes(app: App, parts: Parts): void {
  const { store, board, bell, workshop } = parts;
  app.post(
    '/jobs/:id/hand-overs',
    {
      config: { needs: 'technician' },
      schema: {
        summary: 'Make a hand-over document; what runs already is not started twice',
        params: jobParamsSchema,
        body: handOverRequestSchema,
        response: { 202: workAnswerSchema, ...REFUSALS },
      },
    },
    async (request, reply) => {
      const job = await store.jobs.read(request.params.id);
      const { actor } = request.who;
      const { body } = request;
      const work = board.start({
        kind: 'hand-over',
        jobId: job.id,
        inputsSha256: handOverKey(job, body),
        onFault: (error) => request.log.error(error),
        run: async (signal, onProgress) => {
          const inputs = await handOverInputs(parts, job, body);
          const pdf = await workshop.run('handOver', { inputs, form: 'pdf' }, { signal, onProgress });
          const { sha256 } = await store.files.keep(once(pdf));
          const id = randomUUID();
          const { madeAt } = inputs.settings;
          const handOver = { id, madeAt, by: actor.name, pdfSha256: sha256, language: body.language };
          bell.jobChanged(await store.jobs.addHandOver(job.id, actor, handOver));
          return id;
        },
      });
      return reply.code(202).send({ work });
    },
  );

  app.get(
    '/jobs/:id/hand-over.html',
    {
      config: { needs: 'reader' },
      schema: {
        summary: 'The hand-over of the job as it stands, as a page',
        params: jobParamsSchema,
        querystring: handOverPageQuerySchema,
        response: { 200: bytesOf('text/html', 'The page'), ...REFUSALS },
      },
    },
    async ({ params: { id }, query: { language = 'en', parts: wanted, ...units } }, reply) => {
      const given = Object.fromEntries(Object.entries(units).filter(([, unit]) => unit !== undefined));
      const inputs = await handOverInputs(parts, await store.jobs.read(id), {
        language,
        units: { ...USUAL_UNITS, ...given },
        parts: wanted === undefined ? [...HAND_OVER_PARTS] : [wanted],
      });
      const html = Buffer.from(await workshop.run('handOver', { inputs, form: 'html' })).toString('utf8');
      return (
        reply
          .header('content-type', 'text/html; charset=utf-8')
          .header('content-security-policy', pagePolicy(html))
          // Our own pages show it in a frame; nobody else may.
          .header('x-frame-options', 'SAMEORIGIN')
          .send(html)
      );
    },
  );

  app.get(
    '/jobs/:id/hand-overs/:hid/pdf',
    {
      config: { needs: 'reader' },
      schema: {
        summary: 'A hand-over document as it was made',
        params: handOverParamsSchema,
        response: { 200: bytesOf('application/pdf', 'PDF'), ...REFUSALS },
      },
    },
    async ({ params: { id, hid } }, reply) => sendHandOver(reply, store.files, await store.jobs.read(id), hid),
  );
}
