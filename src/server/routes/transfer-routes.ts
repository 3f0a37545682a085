/** One job out and in as one file; everything out and in as a backup. */
import { Readable } from 'node:stream';
import type { MultipartFile } from '@fastify/multipart';
import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { jobSchema } from '../../jobs/record/job.ts';
import { jobFileSchema } from '../../jobs/record/job-file.ts';
import { jobParamsSchema } from '../contract/jobs.ts';
import { MAX_JOB_FILE_BYTES } from '../contract/paths.ts';
import { restoredSchema } from '../contract/transfer.ts';
import type { App, Parts } from '../parts.ts';
import { Refusal } from '../refusal.ts';
import { bytesOf, REFUSALS } from './answers.ts';
import { asAttachment } from './file-name.ts';

/** The stream of the one file in a form. */
async function fileOf(request: FastifyRequest, maxBytes: number): Promise<MultipartFile> {
  const part = request.isMultipart() ? await request.file({ limits: { fileSize: maxBytes, files: 1 } }) : undefined;
  if (part !== undefined) return part;
  throw new Refusal('bad-request', 'There is no file in this request.', {
    expected: 'multipart/form-data with a field "file"',
    advice: 'Choose a file and send it again.',
  });
}

async function jsonOf(pieces: AsyncIterable<Uint8Array>): Promise<unknown> {
  const all: Uint8Array[] = [];
  for await (const piece of pieces) all.push(piece);
  try {
    return JSON.parse(Buffer.concat(all).toString('utf8'));
  } catch (error) {
    throw new Refusal('unreadable', 'This file is not JSON.', {
      found: error instanceof Error ? error.message : String(error),
      expected: 'a job as it was exported',
      advice: 'Export the job again, and import that file.',
    });
  }
}

const day = (): string => new Date().toISOString().slice(0, 10);

export function transferRoutes(app: App, { store, people, bell }: Parts): void {
  app.get(
    '/jobs/:id/export',
    {
      config: { needs: 'reader' },
      schema: {
        summary: 'A job with its history and files as one JSON file',
        params: jobParamsSchema,
        response: {
          200: { description: 'The file', content: { 'application/json': { schema: jobFileSchema } } },
          ...REFUSALS,
        },
      },
    },
    async ({ params: { id } }, reply) => {
      const { number } = await store.jobs.read(id);
      return reply
        .header('content-type', 'application/json; charset=utf-8')
        .header('content-disposition', asAttachment(`job-${number}.vaporwright.json`))
        .send(Readable.from(store.exportJob(id), { objectMode: false }) as never); // text of that form, in pieces
    },
  );

  app.post(
    '/jobs/import',
    {
      bodyLimit: MAX_JOB_FILE_BYTES,
      config: { needs: 'technician', upload: [] },
      schema: {
        summary: 'Take in a job that was exported: the file in a form, or its JSON as the body',
        response: { 201: jobSchema, ...REFUSALS },
      },
    },
    async (request, reply) => {
      const value = request.isMultipart()
        ? await jsonOf((await fileOf(request, MAX_JOB_FILE_BYTES)).file)
        : request.body;
      const job = await store.importJob(request.who.actor, value);
      bell.jobChanged(job);
      return reply.code(201).header('location', `/jobs/${job.id}`).send(job);
    },
  );

  app.post(
    '/backup',
    {
      config: { needs: 'owner' },
      schema: {
        summary: 'Everything as one file, while the shop goes on working',
        body: z.unknown(),
        response: { 200: bytesOf('application/gzip', 'The backup'), ...REFUSALS },
      },
    },
    async ({ who, ip }, reply) => {
      await store.securityLog.write({ kind: 'backup', actor: who.actor.name, address: ip });
      return reply
        .header('content-type', 'application/gzip')
        .header('content-disposition', asAttachment(`vaporwright-${day()}.backup`))
        .send(Readable.from(store.backup(), { objectMode: false }));
    },
  );

  app.post(
    '/restore',
    {
      config: { needs: 'owner', upload: ['confirm'] },
      schema: {
        summary: 'Take in a backup: into an empty store, or in place of what is here with confirm=true before the file',
        response: { 200: restoredSchema, ...REFUSALS },
      },
    },
    async (request) => {
      const { file, fields } = await fileOf(request, Number.MAX_SAFE_INTEGER);
      const { confirm } = fields;
      const replace = confirm !== undefined && 'value' in confirm && confirm.value === 'true';
      const restored = await store.restore(file, { replace });
      await people.refresh();
      const { who, ip } = request;
      await store.securityLog.write({ kind: 'restored', actor: who.actor.name, address: ip, detail: restored });
      return restored;
    },
  );
}
