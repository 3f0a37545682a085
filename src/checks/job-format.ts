/** Where a job stands for the planner, as a file and over HTTP; parsed once where it comes in. */
import { z } from 'zod';
import { CAUSES, PLACES } from '../diagnosis/finding.ts';
import { COMPLAINTS } from '../diagnosis/priors/root-causes.ts';
import { LAYOUTS } from '../system/car.ts';
import { CHECKS } from './catalogue/all.ts';
import { CIRCUMSTANCE_IDS } from './circumstances.ts';
import type { JobState } from './job-state.ts';
import { REPAIR_IDS } from './repairs.ts';
import { SETUPS } from './setups.ts';

const probability = z.number().min(0).max(1);
const checkId = z.enum(CHECKS.map(({ id }) => id) as [string, ...string[]]);

export const checkEntrySchema = z.union([
  z.strictObject({ outcome: z.string() }),
  z.strictObject({ numbers: z.record(z.string(), z.string()).describe('By field: number with unit, as "0.46 L/min"') }),
]);

export const stepSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('check'), id: checkId, entry: checkEntrySchema }),
  z.strictObject({ kind: z.literal('repair'), id: z.enum(REPAIR_IDS) }).describe('A repair that did not hold'),
]);

export const jobStateSchema = z
  .strictObject({
    schema: z.literal('vaporwright-troubleshooting-1').describe('Name and version of this format'),
    layout: z.enum(LAYOUTS),
    complaints: z.array(z.enum(COMPLAINTS)),
    codes: z.array(z.string().regex(/^[PCBU][0-3][0-9A-F]{3}$/)),
    circumstances: z.array(z.enum(CIRCUMSTANCE_IDS as [(typeof CIRCUMSTANCE_IDS)[number]])),
    finding: z
      .object({
        causes: z.array(
          z.object({
            id: z.enum(CAUSES),
            probability,
            places: z.array(z.object({ group: z.array(z.enum(PLACES)), probability })),
          }),
        ),
        diameterMm: z
          .object({ median: z.number().positive(), lo90: z.number().positive(), hi90: z.number().positive() })
          .nullable()
          .exactOptional()
          .describe('Equivalent diameter of the hole; null or absent where none is sized'),
      })
      .exactOptional()
      .describe('Made without the results in steps; absent: complaint and codes alone'),
    steps: z.array(stepSchema).describe('What was done, in order'),
    leftOut: z.array(checkId).describe('Checks that the shop cannot do'),
    setupsDone: z.array(z.enum(SETUPS)),
    goal: z.strictObject({
      moneyWeight: probability.describe('0: working minutes alone; 1: the whole bill at the shop’s rate'),
    }),
    changes: z.record(z.string(), z.number()).describe('Figures that the shop has changed, by key'),
  })
  .describe('Where the troubleshooting of a job stands');
export type StoredJobState = z.infer<typeof jobStateSchema>;

export function jobStateFromStored({ schema: _, ...state }: StoredJobState): JobState {
  return state;
}

/** Keeps of the finding what the planner needs. */
export function storedJobState(state: JobState): StoredJobState {
  const { finding, recordings: _, ...rest } = state;
  return {
    schema: 'vaporwright-troubleshooting-1',
    layout: rest.layout,
    complaints: [...rest.complaints],
    codes: [...rest.codes],
    circumstances: [...rest.circumstances],
    ...(finding === undefined
      ? {}
      : {
          finding: {
            causes: finding.causes.map(({ id, probability: p, places }) => ({
              id,
              probability: p,
              places: places.map(({ group, probability: share }) => ({ group: [...group], probability: share })),
            })),
            ...(finding.diameterMm ? { diameterMm: { ...finding.diameterMm } } : {}),
          },
        }),
    steps: rest.steps.map((step) => (step.kind === 'repair' ? { ...step } : { ...step, entry: copyOf(step.entry) })),
    leftOut: [...rest.leftOut],
    setupsDone: [...rest.setupsDone],
    goal: { ...rest.goal },
    changes: { ...rest.changes },
  };
}

const copyOf = (entry: z.infer<typeof checkEntrySchema>): z.infer<typeof checkEntrySchema> =>
  'outcome' in entry ? { outcome: entry.outcome } : { numbers: { ...entry.numbers } };
