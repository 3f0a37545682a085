/** The hand-over document: made as long work, then given as it was made. */
import { Readable } from 'node:stream';
import type { FastifyReply } from 'fastify';
import type { FileStore } from '../../jobs/job-store.ts';
import type { Job } from '../../jobs/record/job.ts';
import { handOverParamsSchema } from '../contract/hand-over.ts';
import { FOREIGN_FILE_POLICY } from '../guards/safe-headers.ts';
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

export function handOverRoutes(app: App, { store }: Parts): void {
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
