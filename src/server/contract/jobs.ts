/** Requests and answers about jobs as records. */
import { z } from 'zod';
import {
  complaintSchema,
  historyEntrySchema,
  jobSchema,
  jobSummarySchema,
  SECTIONS,
  type SectionName,
  vehicleSchema,
  WAITING,
} from '../../jobs/record/job.ts';
import { errorFactsSchema } from './error.ts';

export const jobParamsSchema = z.object({ id: z.uuid() });

export const listQuerySchema = z.object({
  words: z.string().max(200).optional().describe('All must occur in number, vehicle, registration, complaint or codes'),
  waitsFor: z.enum(WAITING).optional(),
  closed: z.enum(['true', 'false']).optional(),
  before: z.iso.datetime().optional().describe('Next page: changedAt of the last row of the page before'),
  limit: z.coerce.number().int().min(1).max(200).optional(),
});
export type ListQuery = z.input<typeof listQuerySchema>;

export const jobListSchema = z.strictObject({ jobs: z.array(jobSummarySchema).readonly() });

export const newJobSchema = z
  .strictObject({
    sections: z
      .strictObject({
        complaint: complaintSchema.exactOptional(),
        codes: SECTIONS.codes.exactOptional(),
        vehicle: vehicleSchema.exactOptional(),
        car: SECTIONS.car.exactOptional(),
      })
      .exactOptional(),
  })
  .describe('A new job; all of it may be filled in later');
export type NewJobRequest = z.infer<typeof newJobSchema>;

const version = z.int().nonnegative().describe('The version of the job that the change was made on');

const changeOf = <Name extends SectionName>(section: Name) =>
  z.strictObject({ section: z.literal(section), value: SECTIONS[section] });

export const sectionChangeSchema = z.discriminatedUnion('section', [
  changeOf('complaint'),
  changeOf('codes'),
  changeOf('vehicle'),
  changeOf('car'),
  changeOf('recordings'),
  changeOf('checks'),
  changeOf('repairs'),
  changeOf('proof'),
  changeOf('monitor'),
  changeOf('attachments'),
  changeOf('notes'),
]);
export type SectionChangeRequest = z.infer<typeof sectionChangeSchema>;

export const jobChangeSchema = z.strictObject({ version, change: sectionChangeSchema });

export const undoSchema = z.strictObject({ version });
export const closedSchema = z.strictObject({ version, closed: z.boolean() });

export const conflictSchema = z
  .strictObject({ error: errorFactsSchema, current: jobSchema })
  .describe('Somebody else changed the job since that version: nothing was written');

export const historySchema = z.strictObject({ history: z.array(historyEntrySchema).readonly() });

export const removedSchema = z.strictObject({ removed: z.int().nonnegative() });
