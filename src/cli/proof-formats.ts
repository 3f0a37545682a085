/** What `proof --json` prints. */
import { z } from 'zod';
import { PROOF_VERDICTS } from '../checks/proof/proof.ts';
import { ROOT_CAUSE_IDS } from '../checks/root-causes.ts';

const probability = z.number().min(0).max(1);
const size = z.object({ median: z.number(), lo90: z.number(), hi90: z.number() }).describe('mm, 90 % interval');
const cause = z.object({ id: z.enum(ROOT_CAUSE_IDS), probability });
const row = { beforeMm: size.optional(), afterMm: size.optional(), removedMm: size.optional() };
const condition = z.object({
  what: z.enum(['method', 'fuel temperature', 'ambient temperature', 'fuel level', 'volatility']),
  before: z.unknown().optional().describe('K, a fraction, a range in Pa, or the name of the test'),
  after: z.unknown().optional(),
  alike: z.enum(['yes', 'no', 'unknown']),
  isSameFill: z.boolean().optional(),
});

export const proofResultSchema = z
  .object({
    schema: z.literal('vaporwright-proof-1'),
    job: z.number().int(),
    verdict: z.enum(PROOF_VERDICTS),
    limitMm: z.number(),
    beforeMm: size.optional(),
    afterMm: size.optional(),
    limitMet: probability.optional(),
    madeDifference: probability.optional().describe('That the openings are smaller by at least a tenth in diameter'),
    anotherLeak: probability.optional(),
    otherFault: z
      .object({ before: probability.optional(), after: probability.optional() })
      .optional()
      .describe('Probability of a repaired fault that no size shows'),
    budget: z
      .object({
        whole: z.object(row),
        sections: z.array(z.object({ name: z.string(), ...row })),
        sum: z.object(row).optional(),
        repairedMm: size.optional(),
        expectedRestMm: size.optional(),
        rest: z.enum(['as expected', 'more than expected', 'less than expected']).optional(),
      })
      .nullable(),
    conditions: z.array(condition),
    notCovered: z.array(cause).describe('Believed before the repair, and not tested by this proof'),
    selfTest: z.enum(['passed', 'failed', 'not run']),
    missing: z
      .array(z.looseObject({ code: z.string() }))
      .describe('What the proof lacks, with the figures that say so'),
    against: z.array(z.looseObject({ code: z.string() })).describe('What a verdict against the repair rests on'),
  })
  .describe('What "proof --json" prints');
