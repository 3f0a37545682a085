import { z } from 'zod';
import type { CarStatus, ReadCode } from '../recording/bus/capture-reading.ts';
import { CONTINUOUS_MONITORS, MONITORS, type MonitorName } from '../recording/bus/monitor-status.ts';

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

/** A code as the car states it, whichever unit says so. */
export type StatedCode = Pick<ReadCode, 'code' | 'status'>;

export type InspectionVerdict = 'pass' | 'fail' | 'reject' | 'no-test' | 'cannot-tell';

export type InspectionReason =
  | { readonly kind: 'too-old'; readonly modelYear: number; readonly firstModelYear: number }
  | { readonly kind: 'lamp'; readonly codeCount?: number }
  | { readonly kind: 'permanent' | 'permanent-waived'; readonly codes: readonly string[] }
  | { readonly kind: 'not-run'; readonly monitors: readonly MonitorName[]; readonly allowed: number }
  /** Others than these have not run. */
  | {
      readonly kind: 'wrong-one-open';
      readonly monitors: readonly MonitorName[];
      readonly only: readonly MonitorName[];
    }
  | { readonly kind: 'within-allowance'; readonly monitors: readonly MonitorName[]; readonly allowed: number }
  | { readonly kind: 'all-run' };

/** What was not read, or the rule does not say, and is needed. */
export type InspectionGap =
  | { readonly kind: 'monitor-status' | 'permanent-codes' | 'counts-since-clear' | 'spark-ignition' }
  | { readonly kind: 'allowance'; readonly modelYear: number };

export interface Inspection {
  readonly verdict: InspectionVerdict;
  readonly incomplete: readonly MonitorName[];
  readonly allowed?: number;
  readonly reasons: readonly InspectionReason[];
  readonly missing: readonly InspectionGap[];
}

/**
 * Holds a car's own word against a rule. `fail`: lamp commanded on for a code, or a permanent code that counts. `reject`:
 * too many monitors have not run. Lamp and connector are looked at by the inspector and not judged here.
 */
export function inspect(
  rule: InspectionRule,
  modelYear: number,
  status: CarStatus,
  codes: readonly StatedCode[],
  permanentRead: boolean,
): Inspection {
  if (modelYear < rule.firstModelYear)
    return {
      verdict: 'no-test',
      incomplete: [],
      reasons: [{ kind: 'too-old', modelYear, firstModelYear: rule.firstModelYear }],
      missing: [],
    };
  const { sinceClear } = status;
  const allowance = rule.allowances.find(
    ({ fromYear, toYear }) => modelYear >= fromYear && (toYear === undefined || modelYear <= toYear),
  );
  const missing: InspectionGap[] = [];
  if (sinceClear === undefined) missing.push({ kind: 'monitor-status' });
  if (allowance === undefined) missing.push({ kind: 'allowance', modelYear });
  const permanent = codes.filter((code) => code.status === 'permanent').map(({ code }) => code);
  const permanentCounts = rule.permanentCodes !== undefined && modelYear >= rule.permanentCodes.fromYear;
  if (permanentCounts && !permanentRead) missing.push({ kind: 'permanent-codes' });
  const incomplete = (sinceClear?.monitors ?? [])
    .filter(
      ({ name, supported, complete }) =>
        supported && !complete && (rule.countContinuous || !CONTINUOUS_MONITORS.includes(name)),
    )
    .map(({ name }) => name);
  const reasons: InspectionReason[] = [];
  let verdict: InspectionVerdict = 'pass';

  const isSpark = sinceClear?.ignition === 'spark';
  if (sinceClear !== undefined && !isSpark) missing.push({ kind: 'spark-ignition' });
  if (sinceClear?.lampOn === true && sinceClear.codeCount !== 0) {
    const { codeCount } = sinceClear;
    verdict = 'fail';
    reasons.push({ kind: 'lamp', ...(codeCount === undefined ? {} : { codeCount }) });
  }
  if (permanentCounts && permanent.length > 0) {
    const waived = permanentWaiver(rule, status, missing);
    if (waived === undefined) {
      // Not known: said under what is missing.
    } else {
      reasons.push({ kind: waived ? 'permanent-waived' : 'permanent', codes: permanent });
      if (!waived) verdict = 'fail';
    }
  }
  if (allowance !== undefined && isSpark) {
    const { only, mostIncomplete: allowed } = allowance;
    const isForbidden = only !== undefined && incomplete.some((name) => !only.includes(name));
    if (incomplete.length > allowed || isForbidden) {
      if (verdict === 'pass') verdict = 'reject';
      reasons.push(
        only === undefined
          ? { kind: 'not-run', monitors: incomplete, allowed }
          : { kind: 'wrong-one-open', monitors: incomplete, only },
      );
    } else if (verdict === 'pass')
      reasons.push(
        incomplete.length === 0 ? { kind: 'all-run' } : { kind: 'within-allowance', monitors: incomplete, allowed },
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
function permanentWaiver(rule: InspectionRule, status: CarStatus, missing: InspectionGap[]): boolean | undefined {
  const after = rule.permanentCodes?.ignoredAfter;
  if (after === undefined) return false;
  const { warmUpsSinceClear, distanceSinceClearM } = status;
  if (warmUpsSinceClear === undefined || distanceSinceClearM === undefined) {
    missing.push({ kind: 'counts-since-clear' });
    return undefined;
  }
  return warmUpsSinceClear >= after.warmUps && distanceSinceClearM >= after.distanceM;
}
