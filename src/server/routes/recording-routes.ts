/** Recordings: send, see how they are understood, get their samples or the file as it came. */
import { randomUUID } from 'node:crypto';
import { Readable } from 'node:stream';
import { z } from 'zod';
import type { Job, RecordingEntry } from '../../jobs/record/job.ts';
import { type Mapping, mappingSchema } from '../../recording/mapping.ts';
import { jobParamsSchema } from '../contract/jobs.ts';
import { MAX_RECORDING_BYTES } from '../contract/paths.ts';
import {
  previewSchema,
  recordingParamsSchema,
  unreadableSchema,
  uploadedSchema,
  uploadFieldsSchema,
} from '../contract/recordings.ts';
import { FOREIGN_FILE_POLICY } from '../guards/safe-headers.ts';
import type { App, Parts } from '../parts.ts';
import { countsForFinding } from '../recordings/capture-facts.ts';
import { checkIsRecording, takeUpload } from '../recordings/take-upload.ts';
import { notFound, Refusal } from '../refusal.ts';
import { bytesOf, REFUSALS } from './answers.ts';
import { asAttachment } from './file-name.ts';

export function recordingOf(job: Job, rid: string): RecordingEntry {
  const entry = job.recordings.find(({ id }) => id === rid);
  if (entry === undefined) throw notFound('recording of that kind');
  return entry;
}

function fieldsOf(fields: Readonly<Record<string, string>>) {
  const parsed = uploadFieldsSchema.safeParse(fields);
  if (parsed.success) return parsed.data;
  const issue = parsed.error.issues[0];
  throw new Refusal('bad-request', 'A field beside the file does not fit.', {
    found: issue?.path.join('.') || Object.keys(fields).join(', '),
    ...(issue === undefined ? {} : { expected: issue.message }),
  });
}

function mappingFrom(text: string | undefined): Mapping | undefined {
  if (text === undefined || text === '') return undefined;
  try {
    return mappingSchema.parse(JSON.parse(text));
  } catch (error) {
    throw new Refusal('bad-request', 'The mapping that came with the file does not fit its format.', {
      expected:
        error instanceof z.ZodError ? `${error.issues[0]?.path.join('.')}: ${error.issues[0]?.message}` : 'JSON',
    });
  }
}

export function recordingRoutes(app: App, { store, readings, bell }: Parts): void {
  app.post(
    '/jobs/:id/recordings',
    {
      config: { needs: 'technician', upload: Object.keys(uploadFieldsSchema.shape) },
      schema: {
        summary: 'Add a recording (CSV or bus capture, plain or packed with gzip)',
        description:
          'A bus capture that holds codes or readiness and no samples is kept too; without a pressure of the vapour system it does not count for the finding.',
        params: jobParamsSchema,
        response: { 201: uploadedSchema, 422: unreadableSchema, ...REFUSALS },
      },
    },
    async (request, reply) => {
      const { id } = request.params;
      const { car } = await store.jobs.read(id);
      const { kept, fileName, fields } = await takeUpload(request, store.files, {
        maxBytes: MAX_RECORDING_BYTES,
        checkKind: checkIsRecording,
      });
      const { taken = 'before-repair', label, mapping: mappingText } = fieldsOf(fields);
      const mapping = mappingFrom(mappingText);
      const entry: RecordingEntry = {
        id: randomUUID(),
        label: (label ?? fileName).slice(0, 200),
        fileName,
        ...kept,
        receivedAt: new Date().toISOString(),
        useInFinding: true,
        taken,
        ...(mapping === undefined ? {} : { mapping }),
      };
      const preview = await readings.preview(readings.inputsOf(car, entry));
      if (preview.problem !== null && preview.capture === undefined) {
        const { code, message, ...facts } = preview.problem;
        throw new Refusal(code, message, facts, {
          head: { header: preview.header, rows: preview.rows },
          ...(preview.guessed === null ? {} : { guessed: preview.guessed }),
        });
      }
      const useInFinding = countsForFinding(preview);
      const job = await store.jobs.addRecording(id, request.who.actor, { ...entry, useInFinding });
      bell.jobChanged(job);
      return reply.code(201).send({ job, recordingId: entry.id });
    },
  );

  app.get(
    '/jobs/:id/recordings/:rid/raw',
    {
      config: { needs: 'reader' },
      schema: {
        summary: 'The file as it was sent, byte for byte',
        params: recordingParamsSchema,
        response: { 200: bytesOf('application/octet-stream', 'The file'), ...REFUSALS },
      },
    },
    async ({ params: { id, rid } }, reply) => {
      const { sha256, bytes, fileName } = recordingOf(await store.jobs.read(id), rid);
      return reply
        .header('content-type', 'application/octet-stream')
        .header('content-length', bytes)
        .header('content-disposition', asAttachment(fileName))
        .header('content-security-policy', FOREIGN_FILE_POLICY)
        .send(Readable.from(store.files.open(sha256)));
    },
  );

  app.get(
    '/jobs/:id/recordings/:rid/preview',
    {
      config: { needs: 'reader' },
      schema: {
        summary: 'How a recording is understood: first rows, mapping, remarks',
        params: recordingParamsSchema,
        response: { 200: previewSchema, ...REFUSALS },
      },
    },
    async ({ params: { id, rid } }) => {
      const job = await store.jobs.read(id);
      return readings.preview(readings.inputsOf(job.car, recordingOf(job, rid)));
    },
  );

  app.get(
    '/jobs/:id/recordings/:rid/samples',
    {
      config: { needs: 'reader' },
      schema: {
        summary: 'All samples in SI units',
        description:
          'Little-endian: "VWS1"; uint32 length of the head; the head as JSON, padded to a multiple of 8 bytes; then the columns at their offsets from there: time as float64 seconds, channels as float32; an absent sample is NaN.',
        params: recordingParamsSchema,
        response: { 200: bytesOf('application/octet-stream', 'Samples'), ...REFUSALS },
      },
    },
    async (request, reply) => {
      const { id, rid } = request.params;
      const job = await store.jobs.read(id);
      const answer = await readings.samples(job, recordingOf(job, rid));
      reply.header('etag', answer.tag).header('cache-control', 'private, no-cache');
      if (request.headers['if-none-match'] === answer.tag) return reply.code(304).send();
      return reply
        .header('content-type', 'application/octet-stream')
        .header('content-length', answer.bytes)
        .send(answer.body());
    },
  );
}
