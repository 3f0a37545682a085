/** Long work: a finding or a document in the making. */
import { z } from 'zod';
import { errorFactsSchema } from './error.ts';
import { TAKEN } from './recordings.ts';

export const WORK_KINDS = ['finding', 'hand-over'] as const;
export const WORK_STATES = ['waiting', 'running', 'done', 'failed', 'cancelled', 'interrupted'] as const;

export const workSchema = z
  .strictObject({
    id: z.uuid(),
    kind: z.enum(WORK_KINDS),
    jobId: z.uuid(),
    state: z.enum(WORK_STATES).describe('interrupted: the server ended before the work did; nothing of it was kept'),
    fraction: z.number().min(0).max(1),
    words: z.string().describe('What is being done'),
    error: errorFactsSchema.exactOptional().describe('Present when it failed'),
    resultId: z.uuid().exactOptional().describe('Of the finding or hand-over that it made'),
    startedAt: z.iso.datetime(),
    taken: z.enum(TAKEN).exactOptional().describe('Of a finding: of which recordings, as it was asked for'),
  })
  .describe('Long work on one job');
export type Work = z.infer<typeof workSchema>;

export const workAnswerSchema = z.strictObject({ work: workSchema });
export const workListSchema = z.strictObject({ work: z.array(workSchema).readonly() });
export const workParamsSchema = z.object({ wid: z.uuid() });

export const isOver = (work: Pick<Work, 'state'>): boolean => work.state !== 'waiting' && work.state !== 'running';

/** Server-sent events of one job: `event: job` and `event: work`, each with one JSON object as data. */
export const jobEventSchema = z.strictObject({
  version: z.int().nonnegative().describe('The job has changed and is now at this version'),
});
export type JobEvent = z.infer<typeof jobEventSchema>;
