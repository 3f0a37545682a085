/** What the technician wrote down beside the recordings: for all of them, or for one by its file name. */
import { basename } from 'node:path';
import { z } from 'zod';
import { PHASES, type Phase, PROCEDURES, type RecordingNotes } from '../recording/recording.ts';

const noteFields = {
  procedure: z.enum(PROCEDURES).exactOptional().describe('Given by hand; found from the recording when absent'),
  drawTargetGaugePa: z.number().negative().exactOptional().describe('Gauge pressure that ends the draw, Pa'),
  drawTimeOutS: z.number().positive().exactOptional().describe('Longest draw, s'),
  fillFlowM3PerS: z.number().positive().exactOptional().describe('Refuelling: rate of the pump, m3/s of liquid'),
  shutOffTimesS: z.array(z.number()).readonly().exactOptional().describe("Nozzle shut-offs, s on the file's clock"),
  filledM3: z.number().positive().exactOptional().describe('Liquid delivered, m3'),
  ventShutS: z
    .array(z.strictObject({ fromS: z.number(), toS: z.number().exactOptional() }))
    .readonly()
    .exactOptional()
    .describe(
      "When the vent valve was shut, s on the file's clock, where no column tells; without an end: to the last sample",
    ),
  phases: z
    .array(z.strictObject({ kind: z.enum(PHASES), fromS: z.number(), toS: z.number() }))
    .readonly()
    .exactOptional()
    .describe('Phases corrected by hand, s from the first sample; where they leave time open the found ones stand'),
};

export const notesSchema = z
  .strictObject({
    schema: z.literal('vaporwright-notes-1').describe('Name and version of this format'),
    ...noteFields,
    recordings: z.record(z.string(), z.strictObject(noteFields)).exactOptional().describe('Notes by file name'),
  })
  .describe('What is known of recordings and stands in no channel');
export type Notes = z.infer<typeof notesSchema>;

function merged(notes: Notes, path: string): RecordingNotes & { readonly phases?: readonly Phase[] } {
  const { schema: _, recordings, ...forAll } = notes;
  return { ...forAll, ...(recordings?.[basename(path)] ?? {}) };
}

/** The notes of one file: those for all, overridden by its own. */
export function notesFor(notes: Notes | undefined, path: string): RecordingNotes | undefined {
  if (notes === undefined) return undefined;
  const { phases: _, ...facts } = merged(notes, path);
  return Object.keys(facts).length === 0 ? undefined : facts;
}

/** Phases of one file that were corrected by hand. */
export const phasesFor = (notes: Notes | undefined, path: string): readonly Phase[] =>
  notes === undefined ? [] : (merged(notes, path).phases ?? []);
