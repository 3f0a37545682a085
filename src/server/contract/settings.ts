/** What the shop sets once. */
import { z } from 'zod';
import { inspectionRuleSchema } from '../../readiness/inspection.ts';
import { limitsSchema, REFERENCE_LIMITS } from '../../report/limits.ts';

const line = (most: number) => z.string().max(most);

export const settingsSchema = z
  .strictObject({
    limits: limitsSchema.shape.limits.describe('Reference sizes that findings are compared with'),
    shop: z
      .strictObject({
        name: line(120),
        address: line(400),
        telephone: line(40).exactOptional(),
        email: line(120).exactOptional(),
      })
      .describe('Head of the hand-over sheet'),
    technician: line(120).describe('Who works here when nobody signs in; written into the history').exactOptional(),
    inspectionRules: z
      .array(inspectionRuleSchema)
      .max(24)
      .describe('Inspection rules of the place, beside those that ship')
      .exactOptional(),
    inspectionRule: line(120).describe('Id of the rule that jobs are held against; absent: the first').exactOptional(),
    figures: z
      .record(line(120), z.number())
      .describe('Minutes, costs and probabilities of the planner that the shop has changed, by key')
      .exactOptional(),
  })
  .describe('Settings of the shop');
export type Settings = z.infer<typeof settingsSchema>;

export const FIRST_SETTINGS: Settings = { limits: [...REFERENCE_LIMITS], shop: { name: '', address: '' } };
