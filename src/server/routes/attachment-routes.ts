/** Photos and documents of a job. */
import { randomUUID } from 'node:crypto';
import { Readable } from 'node:stream';
import type { FastifyReply } from 'fastify';
import type { FileStore } from '../../jobs/job-store.ts';
import { type Job, jobSchema } from '../../jobs/record/job.ts';
import { jobParamsSchema } from '../contract/jobs.ts';
import { MAX_ATTACHMENT_BYTES } from '../contract/paths.ts';
import { attachmentParamsSchema } from '../contract/recordings.ts';
import { FOREIGN_FILE_POLICY } from '../guards/safe-headers.ts';
import type { App, Parts } from '../parts.ts';
import { takeUpload } from '../recordings/take-upload.ts';
import { notFound } from '../refusal.ts';
import { bytesOf, REFUSALS } from './answers.ts';
import { asAttachment, inlineNamed } from './file-name.ts';
import { mediaTypeOf, SHOWN_TYPES } from './media-type.ts';

export function sendAttachment(reply: FastifyReply, files: FileStore, job: Job, aid: string): FastifyReply {
  const entry = job.attachments.find(({ id }) => id === aid);
  if (entry === undefined) throw notFound('file of that kind');
  const isShown = SHOWN_TYPES.includes(entry.mediaType);
  return reply
    .header('content-type', isShown ? entry.mediaType : 'application/octet-stream')
    .header('content-length', entry.bytes)
    .header('content-disposition', isShown ? inlineNamed(entry.fileName) : asAttachment(entry.fileName))
    .header('content-security-policy', FOREIGN_FILE_POLICY)
    .header('cache-control', 'private, max-age=31536000, immutable')
    .send(Readable.from(files.open(entry.sha256)));
}

export function attachmentRoutes(app: App, { store, bell }: Parts): void {
  app.post(
    '/jobs/:id/attachments',
    {
      config: { needs: 'technician', upload: ['caption'] },
      schema: {
        summary: 'Add a photo or document',
        params: jobParamsSchema,
        response: { 201: jobSchema, ...REFUSALS },
      },
    },
    async (request, reply) => {
      const { id } = request.params;
      await store.jobs.read(id);
      const upload = await takeUpload(request, store.files, { maxBytes: MAX_ATTACHMENT_BYTES, checkKind: () => {} });
      const job = await store.jobs.addAttachment(id, request.who.actor, {
        id: randomUUID(),
        fileName: upload.fileName,
        mediaType: mediaTypeOf(upload.firstBytes),
        ...upload.kept,
        at: new Date().toISOString(),
        caption: (upload.fields.caption ?? '').slice(0, 1000),
      });
      bell.jobChanged(job);
      return reply.code(201).send(job);
    },
  );

  app.get(
    '/jobs/:id/attachments/:aid',
    {
      config: { needs: 'reader' },
      schema: {
        summary: 'A photo or document',
        params: attachmentParamsSchema,
        response: { 200: bytesOf('application/octet-stream', 'The file'), ...REFUSALS },
      },
    },
    async ({ params: { id, aid } }, reply) => sendAttachment(reply, store.files, await store.jobs.read(id), aid),
  );
}
