/**
 * Repairs alone, in the order of probability over cost, until the car is sound or stopping is cheaper. For independent
 * single faults and perfect verification this order is optimal among orders of repairs (Heckerman, Breese and
 * Rommelse 1995; Jensen et al. 2001); with checks beside it, it is a policy like another and bounds the optimum from above.
 */
import { type PlanProblem, setupCost } from './problem.ts';

export interface RepairOrder {
  readonly cost: number;
  /** Indices of repairs, first to last. */
  readonly order: readonly number[];
  /** Index of the end that closes it. */
  readonly end: number;
}

/** Problems' states by repair, worked out once. */
const FIXED = new WeakMap<PlanProblem, readonly Int32Array[]>();

function fixedStates(problem: PlanProblem): readonly Int32Array[] {
  let known = FIXED.get(problem);
  if (!known) {
    known = problem.repairs.map(({ fixes }) => Int32Array.from([...fixes.keys()].filter((s) => fixes[s] === 1)));
    FIXED.set(problem, known);
  }
  return known;
}

/**
 * @param belief probability by state, need not sum to 1
 * @param isOpen whether a repair can still be tried
 * @param paid set-ups already paid
 */
export function repairOrder(
  problem: PlanProblem,
  belief: Float64Array,
  isOpen: (repair: number) => boolean,
  paid: number,
): RepairOrder {
  const { repairs } = problem;
  const fixed = fixedStates(problem);
  const left = Float64Array.from(belief);
  const open: number[] = [];
  for (let r = 0; r < repairs.length; r++) if (isOpen(r) && massOf(fixed[r]!, left) > 0) open.push(r);
  const order: number[] = [];
  const attemptCosts: number[] = [];
  const ends: { end: number; cost: number }[] = [cheapestEnd(problem, left)];
  let setups = paid;
  let mass = 0;
  for (let s = 0; s < left.length; s++) mass += left[s]!;
  while (open.length > 0) {
    let best = -1;
    let bestRatio = 0;
    let bestCost = 0;
    let bestMass = 0;
    for (let i = 0; i < open.length; i++) {
      const r = open[i]!;
      const p = massOf(fixed[r]!, left);
      const repair = repairs[r]!;
      const cost = repair.cost + setupCost(problem, repair.setups, setups);
      const ratio = cost > 0 ? p / cost : Number.POSITIVE_INFINITY;
      if (p > 0 && (best < 0 || ratio > bestRatio)) {
        best = i;
        bestRatio = ratio;
        bestCost = cost;
        bestMass = p;
      }
    }
    if (best < 0) break;
    const r = open[best]!;
    open.splice(best, 1);
    attemptCosts.push(bestCost * mass);
    order.push(r);
    setups |= repairs[r]!.setups;
    for (const s of fixed[r]!) left[s] = 0;
    mass = open.length === 0 ? left.reduce((a, b) => a + b, 0) : Math.max(0, mass - bestMass);
    ends.push(cheapestEnd(problem, left));
  }
  // backwards: after how many repairs is stopping cheaper than going on
  let cost = ends[order.length]!.cost;
  let stop = order.length;
  for (let j = order.length - 1; j >= 0; j--) {
    cost += attemptCosts[j]!;
    if (ends[j]!.cost <= cost) {
      cost = ends[j]!.cost;
      stop = j;
    }
  }
  return { cost, order: order.slice(0, stop), end: ends[stop]!.end };
}

function massOf(states: Int32Array, left: Float64Array): number {
  let p = 0;
  for (let i = 0; i < states.length; i++) p += left[states[i]!]!;
  return p;
}

/** The way to end that costs least under a belief. */
export function cheapestEnd(problem: PlanProblem, belief: Float64Array): { end: number; cost: number } {
  let end = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let e = 0; e < problem.ends.length; e++) {
    const costs = problem.ends[e]!.cost;
    let cost = 0;
    for (let s = 0; s < belief.length; s++) cost += belief[s]! * costs[s]!;
    if (cost < least) {
      least = cost;
      end = e;
    }
  }
  return { end, cost: least };
}
