/** What the technician wrote down beside the recordings: for all of them, or for one by its file name. */
import { basename } from 'node:path';
import { z } from 'zod';
import { PROCEDURES, type RecordingNotes } from '../recording/recording.ts';

const noteFields = {
  procedure: z.enum(PROCEDURES).exactOptional().describe('Given by hand; found from the recording when absent'),
  drawTargetGaugePa: z.number().negative().exactOptional().describe('Gauge pressure that ends the draw, Pa'),
  drawTimeOutS: z.number().positive().exactOptional().describe('Longest draw, s'),
  fillFlowM3PerS: z.number().positive().exactOptional().describe('Refuelling: rate of the pump, m3/s of liquid'),
  shutOffTimesS: z.array(z.number()).readonly().exactOptional().describe("Nozzle shut-offs, s on the file's clock"),
  filledM3: z.number().positive().exactOptional().describe('Liquid delivered, m3'),
};

export const notesSchema = z
  .strictObject({
    schema: z.literal('vaporwright-notes-1').describe('Name and version of this format'),
    ...noteFields,
    recordings: z.record(z.string(), z.strictObject(noteFields)).exactOptional().describe('Notes by file name'),
  })
  .describe('What is known of recordings and stands in no channel');
export type Notes = z.infer<typeof notesSchema>;

/** The notes of one file: those for all, overridden by its own. */
export function notesFor(notes: Notes | undefined, path: string): RecordingNotes | undefined {
  if (notes === undefined) return undefined;
  const { schema: _, recordings, ...forAll } = notes;
  const own = recordings?.[basename(path)] ?? {};
  const merged = { ...forAll, ...own };
  return Object.keys(merged).length === 0 ? undefined : merged;
}
