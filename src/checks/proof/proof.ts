/** Did the repair hold? Sizes before and after, the leak budget, what was compared, and a verdict. */
import type { Interval } from '../../diagnosis/finding.ts';
import { LEAKS, type RootCauseId } from '../root-causes.ts';
import { type ComparedCondition, compareConditions, type ProofConditions } from './conditions.ts';
import { atMost, quantilesOf, type SizeBelief, sizeBelief, smaller } from './size-belief.ts';

export interface Measured {
  /** Whole system, equivalent diameter (discharge coefficient 0.61), mm. */
  readonly diameterMm: Interval;
  readonly conditions: ProofConditions;
  /** Sections by name, where they were measured. */
  readonly sectionsMm?: Readonly<Record<string, Interval>>;
}

export interface ProofInput {
  readonly before?: Measured;
  readonly after?: Measured;
  /** Limit that the car is held to, mm. */
  readonly limitMm: number;
  /** What the repair was meant to remove. */
  readonly repaired: readonly RootCauseId[];
  /** Size of the repaired leak alone, where isolation gave it, mm. */
  readonly repairedMm?: Interval;
  /** Root causes believed before the repair. */
  readonly causesBefore: readonly { readonly id: RootCauseId; readonly probability: number }[];
  /** The car's own self-test since the repair. */
  readonly selfTest: 'passed' | 'failed' | 'not run';
}

export const PROOF_VERDICTS = ['held', 'not-held', 'not-proven'] as const;
export type ProofVerdict = (typeof PROOF_VERDICTS)[number];

export const MISSING = [
  'no measurement before',
  'no measurement after',
  'limit not certain',
  'difference not certain',
  'another leak not excluded',
  'conditions differ',
  'self-test not run',
  'causes not covered',
] as const;
export type MissingId = (typeof MISSING)[number];

export interface LeakBudget {
  /** What should remain when the repaired leak is taken from the total by area, mm. */
  readonly expectedRestMm: Interval;
  /** What was measured after, mm. */
  readonly measuredRestMm: Interval;
}

export interface Proof {
  readonly verdict: ProofVerdict;
  readonly limitMet?: number;
  readonly madeDifference?: number;
  readonly anotherLeak?: number;
  readonly budget?: LeakBudget;
  /** The same sections before and after, where both were measured. */
  readonly sections: readonly { readonly name: string; readonly beforeMm: Interval; readonly afterMm: Interval }[];
  readonly conditions: readonly ComparedCondition[];
  readonly notCovered: readonly { readonly id: RootCauseId; readonly probability: number }[];
  readonly selfTest: ProofInput['selfTest'];
  readonly missing: readonly MissingId[];
}

/** "Made a difference" means smaller by at least a tenth in diameter, a fifth in area. Judgement. */
const DIFFERENCE = 0.9;
/** Certainty asked for, and certainty of the contrary. */
const CERTAIN = 0.95;
/** Probability of a second leak that may remain in a proof. Judgement. */
const ANOTHER_ALLOWED = 0.1;
/** Cars that have a second leak beside the repaired one. Judgement. */
const SECOND_LEAK = 0.1;
/** Sizes as in the likelihoods: a second leak's ln mm, a tight car's seep. Judgement. */
const LEAK = { ln: Math.log(0.75), sd: 0.9 };
const TIGHT_MM = 0.13;
/** A cause believed less than this before need not be spoken of. */
const SPOKEN_OF = 0.03;
const STEPS = 60;

export function judgeProof(input: ProofInput): Proof {
  const { before, after, limitMm, repaired, causesBefore, selfTest } = input;
  const missing: MissingId[] = [];
  const conditions = before && after ? compareConditions(before.conditions, after.conditions) : [];
  const sizeAfter = after && sizeBelief(after.diameterMm);
  const sizeBefore = before && sizeBelief(before.diameterMm);
  const limitMet = sizeAfter && atMost(sizeAfter, limitMm);
  const madeDifference = sizeAfter && sizeBefore && smaller(sizeAfter, sizeBefore, DIFFERENCE);
  const anotherLeak = sizeAfter && secondLeak(sizeAfter);
  // a leak test says nothing about flow, circuits or sensors, unless the car's own test ran and passed
  const covers = new Set<RootCauseId>(selfTest === 'passed' ? causesBefore.map(({ id }) => id) : LEAKS);
  const notCovered = causesBefore.filter(
    ({ id, probability }) => probability >= SPOKEN_OF && !covers.has(id) && !repaired.includes(id),
  );

  if (!before) missing.push('no measurement before');
  if (!after) missing.push('no measurement after');
  if (limitMet !== undefined && limitMet < CERTAIN) missing.push('limit not certain');
  if (madeDifference !== undefined && madeDifference < CERTAIN) missing.push('difference not certain');
  if (anotherLeak !== undefined && anotherLeak > ANOTHER_ALLOWED) missing.push('another leak not excluded');
  if (conditions.some(({ alike }) => alike === 'no')) missing.push('conditions differ');
  if (selfTest === 'not run') missing.push('self-test not run');
  if (notCovered.length > 0) missing.push('causes not covered');

  return {
    verdict: verdictOf(missing, limitMet, madeDifference, selfTest),
    ...(limitMet === undefined ? {} : { limitMet }),
    ...(madeDifference === undefined ? {} : { madeDifference }),
    ...(anotherLeak === undefined ? {} : { anotherLeak }),
    ...(before && after && input.repairedMm
      ? { budget: leakBudget(before.diameterMm, input.repairedMm, after.diameterMm) }
      : {}),
    sections: sectionsOf(before, after),
    conditions,
    notCovered,
    selfTest,
    missing,
  };
}

function verdictOf(
  missing: readonly MissingId[],
  limitMet: number | undefined,
  madeDifference: number | undefined,
  selfTest: ProofInput['selfTest'],
): ProofVerdict {
  if (selfTest === 'failed') return 'not-held';
  if (limitMet !== undefined && limitMet <= 1 - CERTAIN) return 'not-held';
  if (madeDifference !== undefined && madeDifference <= 1 - CERTAIN && (limitMet ?? 0) < CERTAIN) return 'not-held';
  // the self-test may still be to come: the sheet says so beside the verdict, since only an inspector asks for it
  const open = missing.filter((id) => id !== 'self-test not run');
  return open.length === 0 ? 'held' : 'not-proven';
}

/** Probability that the rest measured is a leak of its own and not a tight car's seep. */
function secondLeak(after: SizeBelief): number {
  let leak = 0;
  let tight = 0;
  for (const mm of quantilesOf(after, STEPS)) {
    const ln = Math.log(mm);
    leak += Math.exp(-0.5 * ((ln - LEAK.ln) / LEAK.sd) ** 2) / LEAK.sd;
    tight += (2 * mm * Math.exp(-0.5 * (mm / TIGHT_MM) ** 2)) / TIGHT_MM;
  }
  const odds = (SECOND_LEAK * leak) / Math.max(1e-300, (1 - SECOND_LEAK) * tight);
  return odds / (1 + odds);
}

/** Measured total minus repaired: areas subtract, diameters do not. */
export function leakBudget(before: Interval, repaired: Interval, after: Interval): LeakBudget {
  const rests: number[] = [];
  const parts = quantilesOf(sizeBelief(repaired), STEPS);
  for (const total of quantilesOf(sizeBelief(before), STEPS)) {
    for (const part of parts) rests.push(Math.sqrt(Math.max(0, total * total - part * part)));
  }
  rests.sort((a, b) => a - b);
  const at = (q: number): number => rests[Math.min(rests.length - 1, Math.floor(q * rests.length))]!;
  return { expectedRestMm: { median: at(0.5), lo90: at(0.05), hi90: at(0.95) }, measuredRestMm: after };
}

function sectionsOf(before: Measured | undefined, after: Measured | undefined): Proof['sections'] {
  return Object.entries(before?.sectionsMm ?? {}).flatMap(([name, beforeMm]) => {
    const afterMm = after?.sectionsMm?.[name];
    return afterMm === undefined ? [] : [{ name, beforeMm, afterMm }];
  });
}
