import { z } from 'zod';
import type { CarStatus, ReadCode } from '../recording/bus/capture-reading.ts';
import { CONTINUOUS_MONITORS, MONITORS } from '../recording/bus/monitor-status.ts';

/** Inspection rules as dated data. Those of a place are added or edited by the user. */
export const inspectionRuleSchema = z
  .strictObject({
    schema: z.literal('vaporwright-inspection-1').describe('Name and version of this format'),
    id: z.string().min(1),
    name: z.string().min(1),
    asOf: z.iso.date().describe('Date of the text that this was taken from'),
    source: z.string().min(1),
    mark: z.enum(['confirmed', 'secondary source', 'from memory', 'given by the user']),
    firstModelYear: z.int().describe('Older cars have no inspection of this kind'),
    allowances: z
      .array(
        z.strictObject({
          fromYear: z.int(),
          toYear: z.int().exactOptional(),
          mostIncomplete: z.int().nonnegative(),
          only: z.array(z.enum(MONITORS)).exactOptional().describe('Only these may be incomplete'),
        }),
      )
      .min(1),
    countContinuous: z.boolean().describe('Count misfire, fuel system and components too'),
    permanentCodes: z
      .strictObject({
        fromYear: z.int(),
        ignoredAfter: z
          .strictObject({ warmUps: z.int().nonnegative(), distanceM: z.number().nonnegative() })
          .exactOptional()
          .describe('Both reached since codes were cleared'),
      })
      .exactOptional()
      .describe('A permanent code fails the car'),
  })
  .describe('When a car passes the on-board part of an inspection');
export type InspectionRule = z.infer<typeof inspectionRuleSchema>;

const MILE_M = 1609.344;

export const FEDERAL_RULE: InspectionRule = {
  schema: 'vaporwright-inspection-1',
  id: 'us-federal',
  name: 'United States, federal on-board check',
  asOf: '2001-04-05',
  source: '40 CFR 85.2207 and 85.2222(c) as amended by 66 FR 18156; allowance as a state programme repeats it',
  mark: 'secondary source',
  firstModelYear: 1996,
  allowances: [
    { fromYear: 1996, toYear: 2000, mostIncomplete: 2 },
    { fromYear: 2001, mostIncomplete: 1 },
  ],
  countContinuous: false,
};

export const EVAP_ONLY_RULE: InspectionRule = {
  schema: 'vaporwright-inspection-1',
  id: 'us-evap-only',
  name: 'California, petrol',
  asOf: '2019-07-01',
  source: '16 CCR 3340.42.2(c) and station pages; allowances and the 15 warm-ups and 200 miles are not confirmed',
  mark: 'from memory',
  firstModelYear: 1996,
  allowances: [
    { fromYear: 1996, toYear: 1999, mostIncomplete: 1 },
    { fromYear: 2000, mostIncomplete: 1, only: ['evaporative system'] },
  ],
  countContinuous: false,
  permanentCodes: { fromYear: 2010, ignoredAfter: { warmUps: 15, distanceM: 200 * MILE_M } },
};

export const INSPECTION_RULES: readonly InspectionRule[] = [FEDERAL_RULE, EVAP_ONLY_RULE];

export type InspectionVerdict = 'pass' | 'fail' | 'reject' | 'no-test' | 'cannot-tell';

export interface Inspection {
  readonly verdict: InspectionVerdict;
  readonly incomplete: readonly string[];
  readonly allowed?: number;
  readonly reasons: readonly string[];
  /** What was not read and is needed. */
  readonly missing: readonly string[];
}

/**
 * Holds a car's own word against a rule. `fail`: lamp commanded on for a code, or a permanent code that counts. `reject`:
 * too many monitors have not run. Lamp and connector are looked at by the inspector and not judged here.
 */
export function inspect(
  rule: InspectionRule,
  modelYear: number,
  status: CarStatus,
  codes: readonly ReadCode[],
  permanentRead: boolean,
): Inspection {
  if (modelYear < rule.firstModelYear)
    return {
      verdict: 'no-test',
      incomplete: [],
      reasons: [`model year ${modelYear} is before ${rule.firstModelYear}: no on-board inspection by this rule`],
      missing: [],
    };
  const { sinceClear } = status;
  const allowance = rule.allowances.find(
    ({ fromYear, toYear }) => modelYear >= fromYear && (toYear === undefined || modelYear <= toYear),
  );
  const missing: string[] = [];
  if (sinceClear === undefined) missing.push('monitor status (service $01 item $01)');
  if (allowance === undefined) missing.push(`an allowance for model year ${modelYear} in the rule`);
  const permanent = codes.filter((code) => code.status === 'permanent').map(({ code }) => code);
  const permanentCounts = rule.permanentCodes !== undefined && modelYear >= rule.permanentCodes.fromYear;
  if (permanentCounts && !permanentRead) missing.push('permanent codes (service $0A)');
  const incomplete = (sinceClear?.monitors ?? [])
    .filter(
      ({ name, supported, complete }) =>
        supported && !complete && (rule.countContinuous || !CONTINUOUS_MONITORS.includes(name)),
    )
    .map(({ name }) => name);
  const reasons: string[] = [];
  let verdict: InspectionVerdict = 'pass';

  if (sinceClear !== undefined && sinceClear.ignition !== 'spark') {
    missing.push('monitors of a spark-ignition car: this one reports compression ignition');
  }
  if (sinceClear?.lampOn === true && (sinceClear.codeCount ?? 0) > 0) {
    verdict = 'fail';
    reasons.push(`the lamp is commanded on for ${sinceClear.codeCount} code${sinceClear.codeCount === 1 ? '' : 's'}`);
  }
  if (permanentCounts && permanent.length > 0) {
    const waived = permanentWaiver(rule, status, missing);
    if (waived === undefined) {
      // Not known: said under what is missing.
    } else if (waived)
      reasons.push(
        `permanent ${permanent.join(', ')} does not count any more: enough warm-ups and distance since clear`,
      );
    else {
      verdict = 'fail';
      reasons.push(`permanent ${permanent.join(', ')} is stored and goes only after its monitor has run and passed`);
    }
  }
  if (allowance !== undefined && sinceClear !== undefined) {
    const forbidden = allowance.only === undefined ? [] : incomplete.filter((name) => !allowance.only!.includes(name));
    if (incomplete.length > allowance.mostIncomplete || forbidden.length > 0) {
      if (verdict === 'pass') verdict = 'reject';
      reasons.push(
        `${incomplete.length} monitor${incomplete.length === 1 ? ' has' : 's have'} not run (${incomplete.join(', ')}), ${
          allowance.only === undefined
            ? `${allowance.mostIncomplete} allowed`
            : `only ${allowance.only.join(', ')} may be open`
        }`,
      );
    } else if (verdict === 'pass')
      reasons.push(
        incomplete.length === 0
          ? 'every supported monitor has run'
          : `${incomplete.join(', ')} not run, within the ${allowance.mostIncomplete} allowed`,
      );
  }
  if (missing.length > 0 && verdict === 'pass') verdict = 'cannot-tell';
  return {
    verdict,
    incomplete,
    ...(allowance === undefined ? {} : { allowed: allowance.mostIncomplete }),
    reasons,
    missing,
  };
}

/** True when a permanent code no longer counts, false when it does, absent when the counts since clear were not read. */
function permanentWaiver(rule: InspectionRule, status: CarStatus, missing: string[]): boolean | undefined {
  const after = rule.permanentCodes?.ignoredAfter;
  if (after === undefined) return false;
  const { warmUpsSinceClear, distanceSinceClearM } = status;
  if (warmUpsSinceClear === undefined || distanceSinceClearM === undefined) {
    missing.push('warm-ups and distance since clear (items $30, $31)');
    return undefined;
  }
  return warmUpsSinceClear >= after.warmUps && distanceSinceClearM >= after.distanceM;
}
