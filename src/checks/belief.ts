/** What is believed of a job: root causes together with what may be wrong with the shop's own set-up. */
import { checkById } from './catalogue/all.ts';
import type { Check } from './check.ts';
import { outcomeChances } from './outcome-table.ts';
import { REPAIRS, type RepairId } from './repairs.ts';
import { ROOT_CAUSES, type RootCauseId } from './root-causes.ts';
import { SETUP_FAULTS, type SetupFaultId, setupFaultKey } from './setups.ts';

/** First nothing wrong with the set-up, then each of its faults. */
const SETUP_STATES: readonly (SetupFaultId | undefined)[] = [undefined, ...SETUP_FAULTS];
const WIDTH = SETUP_STATES.length;

export interface Belief {
  /** Joint probability by root cause and state of the set-up; sums to 1. */
  readonly joint: Float64Array;
}

/** Weight of a result under each outcome: 1 for the one chosen, densities for numbers. */
export interface ResultWeights {
  readonly byOutcome: readonly number[];
  /** Further factor where a set-up fault explains the numbers better or worse; absent = 1. */
  readonly bySetupFault?: Readonly<Partial<Record<SetupFaultId, number>>>;
}

export function startBelief(causes: Float64Array, figure: (key: string) => number): Belief {
  const faults = SETUP_FAULTS.map((id) => figure(setupFaultKey(id)));
  const good = Math.max(0, 1 - faults.reduce((a, b) => a + b, 0));
  const share = [good, ...faults];
  const total = share.reduce((a, b) => a + b, 0);
  return {
    joint: Float64Array.from(
      { length: causes.length * WIDTH },
      (_, i) => (causes[Math.floor(i / WIDTH)]! * share[i % WIDTH]!) / total,
    ),
  };
}

function reweighed(belief: Belief, factor: (cause: number, setup: number) => number): Belief | undefined {
  const joint = Float64Array.from(belief.joint, (p, i) => p * factor(Math.floor(i / WIDTH), i % WIDTH));
  const total = joint.reduce((a, b) => a + b, 0);
  if (!(total > 0)) return undefined;
  return { joint: joint.map((p) => p / total) };
}

/** After a check's result. Undefined where the result cannot be under anything believed. */
export function afterResult(
  belief: Belief,
  check: Check,
  weights: ResultWeights,
  figure: (key: string) => number,
): Belief | undefined {
  return reweighed(belief, (cause, setup) => {
    const fault = SETUP_STATES[setup];
    const chances = outcomeChances(check, ROOT_CAUSES[cause]!.id, fault, figure);
    const factor = fault === undefined ? 1 : (weights.bySetupFault?.[fault] ?? 1);
    return factor * chances.reduce((sum, p, o) => sum + p * weights.byOutcome[o]!, 0);
  });
}

/** After a repair that did not make the car sound. */
export function afterFailedRepair(belief: Belief, id: RepairId): Belief | undefined {
  const { fixes } = REPAIRS.find((repair) => repair.id === id)!;
  return reweighed(belief, (cause) => (fixes.includes(ROOT_CAUSES[cause]!.id) ? 0 : 1));
}

export function causeProbabilities(belief: Belief): { readonly id: RootCauseId; readonly probability: number }[] {
  return ROOT_CAUSES.map(({ id }, c) => {
    let probability = 0;
    for (let s = 0; s < WIDTH; s++) probability += belief.joint[c * WIDTH + s]!;
    return { id, probability };
  });
}

export function setupFaultProbabilities(belief: Belief): { readonly id: SetupFaultId; readonly probability: number }[] {
  return SETUP_FAULTS.map((id, f) => {
    let probability = 0;
    for (let c = 0; c < ROOT_CAUSES.length; c++) probability += belief.joint[c * WIDTH + f + 1]!;
    return { id, probability };
  });
}

/** Chance of each outcome under one root cause, over what is believed of the set-up. */
export function expectedChances(
  belief: Belief,
  check: Check,
  cause: number,
  figure: (key: string) => number,
): number[] {
  const out = check.outcomes.map(() => 0);
  let total = 0;
  for (let s = 0; s < WIDTH; s++) {
    const p = belief.joint[cause * WIDTH + s]!;
    if (p <= 0) continue;
    total += p;
    outcomeChances(check, ROOT_CAUSES[cause]!.id, SETUP_STATES[s], figure).forEach((x, o) => {
      out[o]! += p * x;
    });
  }
  return total > 0 ? out.map((x) => x / total) : outcomeChances(check, ROOT_CAUSES[cause]!.id, undefined, figure);
}

/** Weights of a result that is a choice among outcomes. Throws on one that the check does not have. */
export function choiceWeights(checkId: string, outcome: string): ResultWeights {
  const { outcomes } = checkById(checkId);
  if (!outcomes.some((o) => o.id === outcome)) {
    throw new RangeError(
      `${checkId}: found outcome "${outcome}", expected one of ${outcomes.map((o) => o.id).join(', ')}`,
    );
  }
  return { byOutcome: outcomes.map((o) => (o.id === outcome ? 1 : 0)) };
}
