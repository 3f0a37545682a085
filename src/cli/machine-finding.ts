/** The finding as machines read it: the contract of `diagnose --json`, docs/schemas/diagnose.schema.json. */
import { z } from 'zod';
import {
  causeIdSchema,
  exceedsSchema,
  intervalSchema,
  placeSchema,
  procedureSchema,
  reasonSchema,
  verdictSchema,
} from '../report/finding-format.ts';
import type { StoredSheet } from '../report/sheet.ts';
import { likeliestPlaces } from '../report/words.ts';

const probability = z.number().min(0).max(1);

export const machineFindingSchema = z
  .object({
    schema: z.literal('vaporwright-diagnose-1'),
    program: z.string(),
    verdict: verdictSchema,
    causes: z
      .array(
        z.object({
          id: causeIdSchema,
          placeGroup: z
            .array(placeSchema)
            .nullable()
            .describe('The likeliest places; those in one group cannot be told apart; null where the cause has none'),
          probability: probability.describe('Of the cause, over all its places'),
          places: z.array(z.object({ group: z.array(placeSchema), probability })).describe('All groups of places'),
          diameterMm: intervalSchema.nullable(),
        }),
      )
      .describe('Each cause once, most probable first; probabilities sum to 1'),
    pairs: z.array(z.object({ ids: z.tuple([causeIdSchema, causeIdSchema]), probability })),
    diameterMm: intervalSchema.nullable().describe('Total hole to ambient; null where it cannot be sized'),
    exceeds: exceedsSchema,
    reasons: z.array(reasonSchema),
    warnings: z.array(z.string()),
    procedures: z.array(procedureSchema).describe('One for each recording, in the order given'),
    inputs: z.object({
      carSha256: z.string(),
      recordings: z.array(z.object({ file: z.string(), sha256: z.string() })),
    }),
  })
  .describe('What "diagnose --json" prints');

export function machineFinding(sheet: StoredSheet): z.infer<typeof machineFindingSchema> {
  const { finding } = sheet;
  return {
    schema: 'vaporwright-diagnose-1',
    program: sheet.program,
    verdict: finding.verdict,
    causes: finding.causes.map((cause) => {
      const likeliest = likeliestPlaces(cause);
      return {
        id: cause.id,
        placeGroup: likeliest === null ? null : [...likeliest],
        probability: cause.probability,
        places: cause.places.map((place) => ({ group: [...place.group], probability: place.probability })),
        diameterMm: cause.diameterMm ?? null,
      };
    }),
    pairs: finding.pairs.map((pair) => ({ ids: [pair.ids[0], pair.ids[1]], probability: pair.probability })),
    diameterMm: finding.diameterMm,
    exceeds: finding.exceeds,
    reasons: [...finding.reasons],
    warnings: [
      ...finding.warnings,
      ...sheet.recordings.flatMap(({ label, warnings }) => warnings.map((text) => `${label}: ${text}`)),
    ],
    procedures: [...finding.procedures],
    inputs: {
      carSha256: sheet.carSha256,
      recordings: sheet.recordings.map(({ label, sha256 }) => ({ file: label, sha256 })),
    },
  };
}
