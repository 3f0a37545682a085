/**
 * A troubleshooting problem in numbers: hidden states, checks with noisy outcomes, repairs that remove states, ways to
 * end. All costs are in one unit, which the caller chooses (minutes, money or a weighting).
 */

/** Something to find out. Done at most once: a repeat would see the same error again. */
export interface PlanCheck {
  readonly id: string;
  readonly cost: number;
  /** Bits of set-ups that it needs; each is paid once. */
  readonly setups: number;
  /** Indices of checks that must be done before. */
  readonly after: readonly number[];
  /** Probability of each outcome under each state; for every state they sum to 1. */
  readonly likelihood: readonly Float64Array[];
}

/** A repair with its verification, which tells for certain whether the car is now sound. */
export interface PlanRepair {
  readonly id: string;
  readonly cost: number;
  readonly setups: number;
  /** By state: 1 when it removes it, else 0. */
  readonly fixes: Uint8Array;
}

/** A way to stop, as sending the car away unproven, with its cost under each state. */
export interface PlanEnd {
  readonly id: string;
  readonly cost: Float64Array;
}

export interface PlanProblem {
  readonly states: number;
  readonly checks: readonly PlanCheck[];
  readonly repairs: readonly PlanRepair[];
  readonly ends: readonly PlanEnd[];
  /** Cost of each set-up bit. */
  readonly setupCosts: readonly number[];
}

/** Where a job stands. */
export interface Situation {
  /** Probability by state; sums to 1. */
  readonly belief: Float64Array;
  /** By action (checks first, then repairs): 0 open, 1 + outcome when done; a repair has the one outcome "not fixed". */
  readonly done: Uint8Array;
  /** Set-ups that are already paid. */
  readonly setups: number;
}

export const startOf = (problem: PlanProblem, belief: Float64Array, setups = 0): Situation => ({
  belief,
  done: new Uint8Array(problem.checks.length + problem.repairs.length),
  setups,
});

/** Cost of the set-ups in `needed` that are not yet in `paid`. */
export function setupCost(problem: PlanProblem, needed: number, paid: number): number {
  let open = needed & ~paid;
  let sum = 0;
  for (let bit = 0; open !== 0; bit++, open >>>= 1) if ((open & 1) === 1) sum += problem.setupCosts[bit] ?? 0;
  return sum;
}

/** Cost of every combination of set-ups, by its bits. */
export function setupSums({ setupCosts }: PlanProblem): Float64Array {
  const sums = new Float64Array(2 ** setupCosts.length);
  for (let bits = 1; bits < sums.length; bits++) {
    for (let bit = 0; bit < setupCosts.length; bit++) if (((bits >>> bit) & 1) === 1) sums[bits]! += setupCosts[bit]!;
  }
  return sums;
}

/** The way to end that costs least under a belief. */
export function cheapestEnd(
  { ends }: PlanProblem,
  belief: Float64Array,
): { readonly end: number; readonly cost: number } {
  let end = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let e = 0; e < ends.length; e++) {
    const costs = ends[e]!.cost;
    let cost = 0;
    for (let s = 0; s < belief.length; s++) cost += belief[s]! * costs[s]!;
    if (cost < least) {
      least = cost;
      end = e;
    }
  }
  return { end, cost: least };
}

/** Outcomes rarer than this cannot come; their probability goes to the others. */
const NEGLIGIBLE = 1e-9;

/** Outcomes of a check that can come, with the beliefs after them. */
export function checkOutcomes(likelihood: readonly Float64Array[], belief: Float64Array) {
  const outcomes = likelihood.flatMap((given, outcome) => {
    const joint = belief.map((b, s) => b * given[s]!);
    const p = joint.reduce((a, b) => a + b, 0);
    return p > NEGLIGIBLE ? [{ outcome, p, belief: joint.map((b) => b / p) }] : [];
  });
  const total = outcomes.reduce((sum, { p }) => sum + p, 0);
  return outcomes.map((o) => ({ ...o, p: o.p / total }));
}

/** Throws where the numbers cannot be a problem, naming what is wrong. */
export function checkProblem(problem: PlanProblem): void {
  for (const check of problem.checks) {
    for (let s = 0; s < problem.states; s++) {
      const sum = check.likelihood.reduce((total, outcome) => total + (outcome[s] ?? Number.NaN), 0);
      if (!(Math.abs(sum - 1) < 1e-6)) {
        throw new Error(`check ${check.id}: outcome probabilities under state ${s} sum to ${sum}, expected 1`);
      }
    }
    if (!(check.cost >= 0)) throw new Error(`check ${check.id}: cost is ${check.cost}, expected 0 or more`);
  }
  for (const repair of problem.repairs) {
    if (!(repair.cost >= 0)) throw new Error(`repair ${repair.id}: cost is ${repair.cost}, expected 0 or more`);
  }
  if (problem.ends.length === 0) throw new Error('a problem needs at least one way to end');
}
