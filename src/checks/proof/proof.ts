/** Did the repair hold? Sizes before and after, the leak budget, what was compared, and a verdict. */
import type { Interval } from '../../diagnosis/finding.ts';
import { LEAKS, type RootCauseId } from '../root-causes.ts';
import { type ComparedCondition, compareConditions, type ProofConditions } from './conditions.ts';
import { type BudgetSide, type LeakBudget, leakBudget } from './leak-budget.ts';
import { atMost, quantilesOf, type SizeBelief, sizeBelief, smaller } from './size-belief.ts';

export interface Measured {
  /** Whole system, equivalent diameter (discharge coefficient 0.61), mm; absent where the test sizes no hole. */
  readonly diameterMm?: Interval;
  /** Probability that the limit is met, where the measurement has it more exactly than its interval says. */
  readonly limitMet?: number;
  readonly conditions: ProofConditions;
}

/** Sections of the system by name, as isolation gave them, mm. */
export type Sections = Readonly<Record<string, Interval>>;

export interface ProofInput {
  readonly before?: Measured;
  readonly after?: Measured;
  readonly sectionsBeforeMm?: Sections;
  readonly sectionsAfterMm?: Sections;
  /** Limit that the car is held to, mm. */
  readonly limitMm: number;
  /** What the repair was meant to remove. */
  readonly repaired: readonly RootCauseId[];
  /** Whether that is a hole, so that sizes judge it. */
  readonly repairsHole: boolean;
  /** Where it is a fault that no size shows: its probability in the findings before and after. */
  readonly otherFault?: { readonly before?: number; readonly after?: number };
  /** Size of the repaired leak alone, where isolation gave it, mm. */
  readonly repairedMm?: Interval;
  /** Root causes believed before the repair. */
  readonly causesBefore: readonly BelievedCause[];
  /** The car's own self-test since the repair. */
  readonly selfTest: SelfTest;
}

export interface BelievedCause {
  readonly id: RootCauseId;
  readonly probability: number;
}
export type SelfTest = 'passed' | 'failed' | 'not run';

export const PROOF_VERDICTS = ['held', 'not-held', 'not-proven'] as const;
export type ProofVerdict = (typeof PROOF_VERDICTS)[number];

/** What a proof lacks, with the figures that say so. */
export type Missing =
  | { readonly code: 'no measurement before' }
  | { readonly code: 'no measurement after' }
  | { readonly code: 'limit not certain'; readonly limitMet: number; readonly limitMm: number }
  | { readonly code: 'difference not certain'; readonly madeDifference: number }
  | { readonly code: 'fault not certain before'; readonly probability: number }
  | { readonly code: 'fault not certainly gone'; readonly probability: number }
  | { readonly code: 'another leak not excluded'; readonly anotherLeak: number }
  | { readonly code: 'conditions differ'; readonly which: readonly ComparedCondition[] }
  | { readonly code: 'conditions not known'; readonly which: readonly ComparedCondition[] }
  | { readonly code: 'self-test not run' }
  | { readonly code: 'causes not covered'; readonly causes: readonly BelievedCause[] };

/** What a verdict against the repair rests on. */
export type Against =
  | { readonly code: 'self-test failed' }
  | { readonly code: 'limit exceeded'; readonly limitMet: number; readonly limitMm: number }
  | { readonly code: 'no difference'; readonly madeDifference: number }
  | { readonly code: 'fault still there'; readonly probability: number };

export interface Proof {
  readonly verdict: ProofVerdict;
  readonly limitMm: number;
  /** Whole system, mm. */
  readonly beforeMm?: Interval;
  readonly afterMm?: Interval;
  readonly limitMet?: number;
  readonly madeDifference?: number;
  readonly anotherLeak?: number;
  /** Of the repaired fault, where no size shows it. */
  readonly otherFault?: NonNullable<ProofInput['otherFault']>;
  readonly budget: LeakBudget | null;
  readonly conditions: readonly ComparedCondition[];
  readonly notCovered: readonly BelievedCause[];
  readonly selfTest: SelfTest;
  readonly missing: readonly Missing[];
  readonly against: readonly Against[];
}

/** "Made a difference" means smaller by at least a tenth in diameter, a fifth in area. Judgement. */
const DIFFERENCE = 0.9;
/** Certainty asked for, and certainty of the contrary. */
const CERTAIN = 0.95;
/** A fault believed less than this before the repair cannot be shown to be gone after it. Judgement. */
const SHOWN = 0.5;
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
/**
 * Said beside a verdict without undoing it: only an inspector asks for the car's own test, and a condition that nobody
 * wrote down is no difference.
 */
const ONLY_SAID: ReadonlySet<Missing['code']> = new Set(['self-test not run', 'conditions not known']);

export function judgeProof(input: ProofInput): Proof {
  const { before, after, limitMm, selfTest } = input;
  const conditions = before && after ? compareConditions(before.conditions, after.conditions) : [];
  const sizeAfter = after?.diameterMm && sizeBelief(after.diameterMm);
  const sizeBefore = before?.diameterMm && sizeBelief(before.diameterMm);
  const figures = {
    ...(sizeAfter && { limitMet: after.limitMet ?? atMost(sizeAfter, limitMm), anotherLeak: secondLeak(sizeAfter) }),
    ...(sizeAfter && sizeBefore && { madeDifference: smaller(sizeAfter, sizeBefore, DIFFERENCE) }),
  };
  const notCovered = notCoveredBy(input);
  const missing = whatIsMissing(input, figures, conditions, notCovered);
  const against = whatSpeaksAgainst(input, figures);
  const side = {
    before: sideOf(before, input.sectionsBeforeMm),
    after: sideOf(after, input.sectionsAfterMm),
  };
  const isOpen = missing.some(({ code }) => !ONLY_SAID.has(code));
  return {
    verdict: against.length > 0 ? 'not-held' : isOpen ? 'not-proven' : 'held',
    limitMm,
    ...(before?.diameterMm && { beforeMm: before.diameterMm }),
    ...(after?.diameterMm && { afterMm: after.diameterMm }),
    ...figures,
    ...(input.otherFault && { otherFault: input.otherFault }),
    budget: leakBudget({
      ...(side.before && { before: side.before }),
      ...(side.after && { after: side.after }),
      ...(input.repairedMm && { repairedMm: input.repairedMm }),
    }),
    conditions,
    notCovered,
    selfTest,
    missing,
    against,
  };
}

type Figures = Pick<Proof, 'limitMet' | 'madeDifference' | 'anotherLeak'>;

function sideOf(measured: Measured | undefined, sectionsMm: Sections | undefined): BudgetSide | undefined {
  const wholeMm = measured?.diameterMm;
  if (wholeMm === undefined && sectionsMm === undefined) return undefined;
  return { ...(wholeMm && { wholeMm }), ...(sectionsMm && { sectionsMm }) };
}

/** A leak test says nothing about flow, circuits or sensors, unless the car's own test ran and passed. */
function notCoveredBy({ causesBefore, repaired, otherFault, selfTest }: ProofInput): readonly BelievedCause[] {
  if (selfTest === 'passed') return [];
  const covers = new Set<RootCauseId>([...LEAKS, ...(otherFault?.after === undefined ? [] : repaired)]);
  return causesBefore.filter(({ id, probability }) => probability >= SPOKEN_OF && !covers.has(id));
}

function whatIsMissing(
  input: ProofInput,
  figures: Figures,
  conditions: readonly ComparedCondition[],
  notCovered: readonly BelievedCause[],
): readonly Missing[] {
  const which = (alike: ComparedCondition['alike']) => conditions.filter((condition) => condition.alike === alike);
  const [differing, unknown] = [which('no'), which('unknown')];
  return [
    ...(input.repairsHole ? missingOfSize(input, figures) : missingOfFault(input)),
    ...(differing.length > 0 ? [{ code: 'conditions differ', which: differing } as const] : []),
    ...(unknown.length > 0 ? [{ code: 'conditions not known', which: unknown } as const] : []),
    ...(input.selfTest === 'not run' ? [{ code: 'self-test not run' } as const] : []),
    ...(notCovered.length > 0 ? [{ code: 'causes not covered', causes: notCovered } as const] : []),
  ];
}

function missingOfSize(
  { before, after, limitMm }: ProofInput,
  { limitMet, madeDifference, anotherLeak }: Figures,
): readonly Missing[] {
  const missing: Missing[] = [];
  if (before?.diameterMm === undefined) missing.push({ code: 'no measurement before' });
  if (after?.diameterMm === undefined) missing.push({ code: 'no measurement after' });
  if (limitMet !== undefined && limitMet < CERTAIN) missing.push({ code: 'limit not certain', limitMet, limitMm });
  if (madeDifference !== undefined && madeDifference < CERTAIN) {
    missing.push({ code: 'difference not certain', madeDifference });
  }
  if (anotherLeak !== undefined && anotherLeak > ANOTHER_ALLOWED) {
    missing.push({ code: 'another leak not excluded', anotherLeak });
  }
  return missing;
}

function missingOfFault({ otherFault }: ProofInput): readonly Missing[] {
  const { before, after } = otherFault ?? {};
  const missing: Missing[] = [];
  if (before === undefined) missing.push({ code: 'no measurement before' });
  else if (before < SHOWN) missing.push({ code: 'fault not certain before', probability: before });
  if (after === undefined) missing.push({ code: 'no measurement after' });
  else if (after > 1 - CERTAIN) missing.push({ code: 'fault not certainly gone', probability: after });
  return missing;
}

function whatSpeaksAgainst(
  { limitMm, selfTest, repairsHole, otherFault }: ProofInput,
  { limitMet, madeDifference }: Figures,
): readonly Against[] {
  const against: Against[] = [];
  if (selfTest === 'failed') against.push({ code: 'self-test failed' });
  const remains = otherFault?.after;
  if (!repairsHole) {
    if (remains !== undefined && remains >= CERTAIN) against.push({ code: 'fault still there', probability: remains });
    return against;
  }
  if (limitMet !== undefined && limitMet <= 1 - CERTAIN) against.push({ code: 'limit exceeded', limitMet, limitMm });
  if (madeDifference !== undefined && madeDifference <= 1 - CERTAIN && (limitMet ?? 0) < CERTAIN) {
    against.push({ code: 'no difference', madeDifference });
  }
  return against;
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
