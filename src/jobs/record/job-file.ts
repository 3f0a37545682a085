/** One job in one file: plain JSON that a person can read, with its history and its raw files inside. */
import { z } from 'zod';
import { historyEntrySchema, jobSchema } from './job.ts';

export const JOB_FILE_FORMAT = 'vaporwright-job-file-1';

export const enclosedFileSchema = z.strictObject({
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  bytes: z.int().nonnegative(),
  encoding: z.enum(['utf-8', 'base64']).describe('utf-8: the content is the text itself; base64: anything else'),
  content: z.string(),
});

export const jobFileSchema = z
  .strictObject({
    schema: z.literal(JOB_FILE_FORMAT).describe('Name and version of this format'),
    program: z.string().nullable().describe('Program and version that wrote the file'),
    exportedAt: z.iso.datetime().describe('UTC'),
    job: jobSchema,
    history: z.array(historyEntrySchema).describe('Oldest first'),
    files: z.array(enclosedFileSchema).describe('Recordings, attachments and documents, byte for byte'),
  })
  .describe('A whole job to take elsewhere');
export type JobFile = z.infer<typeof jobFileSchema>;
export type EnclosedFile = z.infer<typeof enclosedFileSchema>;
