/** What `plan --json` and `result --json` print. */
import { z } from 'zod';
import { jobStateSchema } from '../checks/job-format.ts';
import { DERIVED_IDS } from '../checks/likelihood/derived.ts';
import { ROOT_CAUSE_IDS } from '../checks/root-causes.ts';
import { SETUP_FAULTS, SETUPS } from '../checks/setups.ts';

const probability = z.number().min(0).max(1);
const price = {
  minutes: z.number().describe('Working minutes'),
  waitMinutes: z.number().describe('Minutes that the car merely stands'),
  goods: z.number().describe('Parts and consumables, in the money of the shop’s rate'),
};
const step = z.object({
  kind: z.enum(['check', 'repair', 'send away']),
  id: z.string(),
  setups: z.array(z.enum(SETUPS)).describe('Set-ups that this step has to pay for'),
  ...price,
  cost: z.number().describe('Minutes, weighed as the goal says'),
});
const cause = z.object({ id: z.enum(ROOT_CAUSE_IDS), probability });

interface TreeFormat {
  readonly step: z.infer<typeof step>;
  readonly probability: number;
  readonly likeliest: z.infer<typeof cause>;
  readonly answers: readonly {
    readonly outcome: string;
    readonly probability: number;
    readonly next: TreeFormat | 'proven';
  }[];
}
const tree: z.ZodType<TreeFormat> = z.lazy(() =>
  z.object({
    step,
    probability,
    likeliest: cause,
    answers: z.array(z.object({ outcome: z.string(), probability, next: z.union([tree, z.literal('proven')]) })),
  }),
);

export const planResultSchema = z
  .object({
    schema: z.literal('vaporwright-plan-1'),
    next: step,
    name: z.string(),
    cautions: z.array(z.string()),
    steps: z.array(z.string()).nullable().describe('For someone at the car; null until the cautions are acknowledged'),
    fields: z
      .array(z.object({ id: z.string(), unit: z.string(), optional: z.boolean() }))
      .describe('Numbers that the check asks for; empty where it asks for an outcome'),
    outcomes: z.array(z.string()),
    expected: z.object({ ...price, cost: z.number() }),
    leastCost: z.number().describe('No plan can cost less'),
    gap: z.number().describe('How far above the optimum the plan can at most be, as a fraction of its cost'),
    causes: z.array(cause),
    setupFaults: z.array(z.object({ id: z.enum(SETUP_FAULTS), probability })),
    answers: z.array(
      z.object({
        outcome: z.string(),
        probability,
        causes: z.array(cause),
        next: step,
        expected: z.object(price),
      }),
    ),
    instead: z
      .array(z.object({ step, probability, extra: z.number(), expected: z.object(price) }))
      .describe('What one would do by reflex, and how much dearer a plan that starts with it is'),
    tree,
    unproven: z.object({ probability, causes: z.array(cause) }),
    entered: z
      .array(
        z.union([
          z.object({
            kind: z.literal('diameter'),
            id: z.string(),
            sizeMm: z.object({ median: z.number(), lo90: z.number(), hi90: z.number() }),
          }),
          z.object({
            kind: z.enum(['length', 'resistance', 'pressure', 'fraction', 'number']),
            id: z.enum(DERIVED_IDS as [(typeof DERIVED_IDS)[number]]),
            value: z.number().describe('SI'),
          }),
        ]),
      )
      .describe('What the numbers of the result come to; empty for "plan" and for a choice'),
    state: jobStateSchema,
  })
  .describe('What "plan --json" and "result --json" print');
