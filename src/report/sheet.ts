/** Everything that a report shows, as data: made from the inputs by the command line, kept as a file, drawn here. */
import { z } from 'zod';
import type { Finding } from '../diagnosis/finding.ts';
import { carSchema } from '../system/car.ts';
import { findingSchema, phaseKindSchema, procedureSchema } from './finding-format.ts';
import type { Limit } from './limits.ts';

export const sheetRecordingSchema = z.object({
  label: z.string().describe('File name'),
  sha256: z.string().describe('Hash of the file as read'),
  samples: z.number().int().nonnegative(),
  durationS: z.number().nonnegative(),
  procedure: procedureSchema,
  phases: z.array(z.object({ kind: phaseKindSchema, fromS: z.number(), toS: z.number() })).readonly(),
  quality: z.array(z.string()).readonly().describe('Remarks on the recording, in words'),
  warnings: z.array(z.string()).readonly().describe('What was left out or guessed in reading it'),
  conditions: z.object({
    fuelLevel: z.number().exactOptional().describe('fraction 0..1'),
    ambientTemperatureK: z.number().exactOptional(),
    fuelTemperatureK: z.number().exactOptional(),
    barometricPa: z.number().exactOptional(),
  }),
  commands: z.object({
    timeS: z.array(z.number()).readonly().describe('Times at which a command changed, and the ends'),
    purgeDuty: z.array(z.number()).readonly().exactOptional(),
    ventClosed: z.array(z.number()).readonly().exactOptional(),
  }),
});
export type SheetRecording = z.infer<typeof sheetRecordingSchema>;

export const storedSheetSchema = z
  .object({
    schema: z.literal('vaporwright-finding-1').describe('Name and version of this format'),
    program: z.string().describe('Program and version that made the finding'),
    madeAt: z.iso.datetime().describe('UTC'),
    car: carSchema,
    carSha256: z.string(),
    complaint: z.string().exactOptional(),
    codes: z.array(z.string()).readonly(),
    recordings: z.array(sheetRecordingSchema).readonly(),
    finding: findingSchema,
  })
  .describe('A finding with what it was made from');
export type StoredSheet = z.infer<typeof storedSheetSchema>;

export interface Sheet extends Omit<StoredSheet, 'finding'> {
  readonly finding: Finding;
  readonly limits: readonly Limit[];
}
