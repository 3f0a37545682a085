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
  const left = Float64Array.from(belief);
  const open: number[] = [];
  problem.repairs.forEach((_, r) => {
    if (isOpen(r)) open.push(r);
  });
  const order: number[] = [];
  const attemptCosts: number[] = [];
  const ends: { end: number; cost: number }[] = [cheapestEnd(problem, left)];
  let setups = paid;
  let mass = sum(left);
  while (open.length > 0) {
    let best = -1;
    let bestRatio = 0;
    let bestCost = 0;
    for (let i = 0; i < open.length; i++) {
      const repair = problem.repairs[open[i]!]!;
      const p = fixedMass(repair.fixes, left);
      if (p <= 0) continue;
      const cost = repair.cost + setupCost(problem, repair.setups, setups);
      const ratio = cost > 0 ? p / cost : Number.POSITIVE_INFINITY;
      if (best < 0 || ratio > bestRatio) {
        best = i;
        bestRatio = ratio;
        bestCost = cost;
      }
    }
    if (best < 0) break;
    const r = open.splice(best, 1)[0]!;
    const { fixes, setups: needed } = problem.repairs[r]!;
    attemptCosts.push(bestCost * mass);
    order.push(r);
    setups |= needed;
    for (let s = 0; s < left.length; s++) if (fixes[s] === 1) left[s] = 0;
    mass = sum(left);
    ends.push(mass <= 0 ? { end: 0, cost: 0 } : cheapestEnd(problem, left));
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

function fixedMass(fixes: Uint8Array, left: Float64Array): number {
  let p = 0;
  for (let s = 0; s < left.length; s++) if (fixes[s] === 1) p += left[s]!;
  return p;
}

function sum(values: Float64Array): number {
  let total = 0;
  for (let s = 0; s < values.length; s++) total += values[s]!;
  return total;
}

/** The way to end that costs least under a belief. */
export function cheapestEnd(problem: PlanProblem, belief: Float64Array): { end: number; cost: number } {
  let best = { end: 0, cost: Number.POSITIVE_INFINITY };
  problem.ends.forEach((end, e) => {
    let cost = 0;
    for (let s = 0; s < belief.length; s++) cost += belief[s]! * end.cost[s]!;
    if (cost < best.cost) best = { end: e, cost };
  });
  return best;
}
