/** The finding as a file: its published format, parsed once when a saved finding is read back. */
import { z } from 'zod';
import { CAUSES, type Finding, PLACES } from '../diagnosis/finding.ts';
import { PHASES, PROCEDURES } from '../recording/recording.ts';

const probability = z.number().min(0).max(1);
export const causeIdSchema = z.enum(CAUSES);
export const placeSchema = z.enum(PLACES);
export const phaseKindSchema = z.enum(PHASES);
export const procedureSchema = z.enum([...PROCEDURES, 'unknown']);

export const intervalSchema = z
  .object({
    median: z.number().nonnegative(),
    lo90: z.number().nonnegative().describe('Lower end of the 90 % interval'),
    hi90: z.number().nonnegative().describe('Upper end of the 90 % interval'),
  })
  .describe('Equivalent diameter, mm: thin sharp-edged hole, discharge coefficient 0.61');

const causeSchema = z.object({
  id: causeIdSchema,
  probability,
  places: z.array(z.object({ group: z.array(placeSchema).readonly(), probability })).readonly(),
  diameterMm: intervalSchema.exactOptional(),
  relativeLogEvidence: z
    .number()
    .nullable()
    .describe('Natural log, relative to the best cause, prior not counted; null where the cause is impossible'),
  byPhase: z
    .array(z.object({ recording: z.number().int().nonnegative(), phase: phaseKindSchema, logEvidence: z.number() }))
    .readonly(),
});

const overlaySchema = z.object({
  recording: z.number().int().nonnegative().describe('Index of the recording, from 0'),
  cause: causeIdSchema,
  timeS: z.array(z.number()).readonly(),
  recordedGaugePa: z.array(z.number().nullable()).readonly().describe('null where the source gave no sample'),
  modelledGaugePa: z.array(z.number().nullable()).readonly(),
  bandPa: z.array(z.number().nullable()).readonly().describe('Half-width of the 90 % band of the model'),
});

export const verdictSchema = z.enum(['fault', 'no-fault-seen', 'cannot-tell']);

export const reasonSchema = z.object({
  kind: z.enum(['for', 'against', 'limits', 'next-recording']),
  text: z.string(),
});

export const exceedsSchema = z
  .object({ mm0_5: probability.nullable(), mm1_0: probability.nullable() })
  .describe('Probability that the total hole exceeds 0.5 mm (0.020 in) and 1.0 mm (0.040 in); null where unknown');

/** As a file holds it: numbers that are not finite are null, since JSON has no other word for them. */
export const findingSchema = z
  .object({
    verdict: verdictSchema,
    procedures: z.array(procedureSchema).readonly(),
    causes: z.array(causeSchema).readonly(),
    pairs: z.array(z.object({ ids: z.tuple([causeIdSchema, causeIdSchema]).readonly(), probability })).readonly(),
    diameterMm: intervalSchema.nullable(),
    exceeds: exceedsSchema,
    reasons: z.array(reasonSchema).readonly(),
    warnings: z.array(z.string()).readonly(),
    overlays: z.array(overlaySchema).readonly(),
  })
  .describe('What the recordings say about the car');

type StoredFinding = z.infer<typeof findingSchema>;

const numbers = (stored: readonly (number | null)[]): number[] => stored.map((value) => value ?? Number.NaN);

/** From the file's form to the form the program works with. */
export const findingFromStored = (stored: StoredFinding): Finding => ({
  ...stored,
  causes: stored.causes.map((cause) => ({
    ...cause,
    relativeLogEvidence: cause.relativeLogEvidence ?? Number.NEGATIVE_INFINITY,
  })),
  overlays: stored.overlays.map((overlay) => ({
    ...overlay,
    recordedGaugePa: numbers(overlay.recordedGaugePa),
    modelledGaugePa: numbers(overlay.modelledGaugePa),
    bandPa: numbers(overlay.bandPa),
  })),
});
