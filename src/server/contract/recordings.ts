/** Requests and answers about recordings and attachments. */
import { z } from 'zod';
import { jobSchema } from '../../jobs/record/job.ts';
import {
  carStatusSchema,
  codeStatusSchema,
  freezeFrameSchema,
  readCodeSchema,
  testResultSchema,
} from '../../recording/bus/capture-format.ts';
import { mappingSchema } from '../../recording/mapping.ts';
import { procedureSchema } from '../../report/finding-format.ts';
import { errorFactsSchema } from './error.ts';

export const TAKEN = ['before-repair', 'after-repair'] as const;

export const recordingParamsSchema = z.object({ id: z.uuid(), rid: z.uuid() });
export const attachmentParamsSchema = z.object({ id: z.uuid(), aid: z.uuid() });

/** A multipart body: `file`, and these fields before it. */
export const uploadFieldsSchema = z.strictObject({
  taken: z.enum(TAKEN).optional(),
  label: z.string().max(200).optional().describe('What people call it; the file name when absent'),
  mapping: z.string().optional().describe('JSON of a mapping, where the guess was wrong or impossible'),
});

export const uploadedSchema = z.strictObject({ job: jobSchema, recordingId: z.uuid() });
export type Uploaded = z.infer<typeof uploadedSchema>;

/** The first lines of a file as a table, whatever could be understood of it. */
const headSchema = z.strictObject({
  header: z.array(z.string()).readonly(),
  rows: z.array(z.array(z.string()).readonly()).readonly().describe('The first 12'),
});

export const unreadableSchema = z
  .strictObject({
    error: errorFactsSchema,
    head: headSchema.exactOptional(),
    guessed: mappingSchema
      .exactOptional()
      .describe('As far as it could be guessed: correct it and send it with the file'),
  })
  .describe('A file that cannot be read as a recording; nothing was kept');
export type Unreadable = z.infer<typeof unreadableSchema>;

export const readSummarySchema = z.strictObject({
  samples: z.int().nonnegative(),
  linesRead: z.int().nonnegative(),
  durationS: z.number(),
  procedure: procedureSchema,
  quality: z.array(z.string()).readonly().describe('Remarks in words'),
  warnings: z.array(z.string()).readonly().describe('What was left out or guessed'),
  skipped: z
    .array(
      z.strictObject({ reason: z.string(), count: z.int().nonnegative(), firstLines: z.array(z.number()).readonly() }),
    )
    .readonly(),
});
export type ReadSummary = z.infer<typeof readSummarySchema>;

export const captureFactsSchema = z
  .strictObject({
    at: z.iso.datetime().exactOptional().describe('First stamp of the capture, UTC; absent where stamps are no dates'),
    status: carStatusSchema,
    codes: z.array(readCodeSchema).readonly(),
    codesRead: z.array(codeStatusSchema).readonly().describe('Lists that were asked for and given, empty or not'),
    freezeFrames: z.array(freezeFrameSchema).readonly(),
    results: z.array(testResultSchema).readonly().describe('Service $06'),
  })
  .describe('What the car said of itself in a bus capture');
export type CaptureFacts = z.infer<typeof captureFactsSchema>;

export const previewSchema = z
  .strictObject({
    ...headSchema.shape,
    mapping: mappingSchema.nullable().describe('In use: given by hand, or guessed; null when none could be'),
    guessed: mappingSchema.nullable().describe('What would be guessed without one given by hand'),
    isGiven: z.boolean().describe('The mapping in use was given by hand'),
    report: readSummarySchema.nullable().describe('null when the file cannot be read with the mapping in use'),
    problem: errorFactsSchema.nullable().describe('Why it cannot be read'),
    capture: captureFactsSchema
      .exactOptional()
      .describe('Codes, readiness and counters of a bus capture; it may hold these and no samples'),
  })
  .describe('How a recording is understood');
export type Preview = z.infer<typeof previewSchema>;
