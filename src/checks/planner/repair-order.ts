/**
 * Repairs alone, in the order of probability over cost, until the car is sound or stopping is cheaper. For independent
 * single faults and perfect verification this order is optimal among orders of repairs (Heckerman, Breese and
 * Rommelse 1995; Jensen et al. 2001); with checks beside it, it is a policy like another and bounds the optimum from above.
 */
import { type PlanProblem, setupSums } from './problem.ts';

/** Works out orders of repairs for one problem. Asked for at every point of the outcome graph, hence without new memory. */
export class RepairOrders {
  private readonly problem: PlanProblem;
  private readonly fixed: readonly Int32Array[];
  private readonly sums: Float64Array;
  private readonly price: Float64Array;
  private readonly bits: Int32Array;
  private readonly left: Float64Array;
  private readonly mass: Float64Array;
  private readonly open: Int32Array;
  private readonly tried: Int32Array;
  private readonly attempts: Float64Array;
  private readonly ends: Float64Array;
  /** No repair removes what another one removes: then masses need not be summed again after each. */
  private readonly areApart: boolean;
  private readonly endTotals: Float64Array;
  private length = 0;

  constructor(problem: PlanProblem) {
    this.problem = problem;
    const { repairs, states } = problem;
    this.fixed = repairs.map(({ fixes }) => Int32Array.from([...fixes.keys()].filter((s) => fixes[s] === 1)));
    this.sums = setupSums(problem);
    this.price = Float64Array.from(repairs, ({ cost }) => cost);
    this.bits = Int32Array.from(repairs, ({ setups }) => setups);
    this.left = new Float64Array(states);
    this.mass = new Float64Array(repairs.length);
    this.open = new Int32Array(repairs.length);
    this.tried = new Int32Array(repairs.length);
    this.attempts = new Float64Array(repairs.length);
    this.ends = new Float64Array(repairs.length + 1);
    this.endTotals = new Float64Array(problem.ends.length);
    this.areApart =
      this.fixed.reduce((sum, { length }) => sum + length, 0) === new Set(this.fixed.flatMap((f) => [...f])).size;
  }

  /** The order and its cost; as `cost`. */
  order(
    belief: Float64Array,
    done: Uint8Array,
    paid: number,
  ): { readonly order: readonly number[]; readonly cost: number } {
    const cost = this.cost(belief, done, paid);
    return { cost, order: [...this.tried.subarray(0, this.length)] };
  }

  /**
   * @param belief probability by state, need not sum to 1
   * @param done by action (checks first), as in a situation
   * @param paid bits of set-ups already paid
   */
  cost(belief: Float64Array, done: Uint8Array, paid: number): number {
    const { fixed, sums, price, bits, left, mass, open, tried, attempts, ends } = this;
    const before = this.problem.checks.length;
    left.set(belief);
    let total = 0;
    for (let s = 0; s < left.length; s++) total += left[s]!;
    let count = 0;
    for (let r = 0; r < fixed.length; r++) {
      if (done[before + r] !== 0) continue;
      mass[r] = massOf(fixed[r]!, left);
      if (mass[r]! > 0) open[count++] = r;
    }
    let setups = paid;
    let steps = 0;
    const { endTotals, areApart } = this;
    for (let e = 0; e < endTotals.length; e++) {
      const { cost } = this.problem.ends[e]!;
      let sum = 0;
      for (let s = 0; s < left.length; s++) sum += left[s]! * cost[s]!;
      endTotals[e] = sum;
    }
    ends[0] = leastOf(endTotals);
    while (count > 0) {
      let best = -1;
      let bestMass = 0;
      let bestCost = 0;
      for (let n = 0; n < count; n++) {
        const r = open[n]!;
        const m = areApart ? mass[r]! : massOf(fixed[r]!, left);
        if (m <= 0) continue;
        const cost = price[r]! + sums[bits[r]! & ~setups]!;
        // m / cost > bestMass / bestCost, without dividing
        if (best < 0 || m * bestCost > bestMass * cost) {
          best = n;
          bestMass = m;
          bestCost = cost;
        }
      }
      if (best < 0) break;
      const r = open[best]!;
      open[best] = open[--count]!;
      tried[steps] = r;
      attempts[steps++] = bestCost * total;
      setups |= bits[r]!;
      total -= this.remove(fixed[r]!);
      ends[steps] = leastOf(endTotals);
    }
    return this.stopWhereCheaper(steps);
  }

  /** Backwards: after how many repairs is stopping cheaper than going on. */
  private stopWhereCheaper(steps: number): number {
    let cost = this.ends[steps]!;
    this.length = steps;
    for (let j = steps - 1; j >= 0; j--) {
      cost += this.attempts[j]!;
      if (this.ends[j]! <= cost) {
        cost = this.ends[j]!;
        this.length = j;
      }
    }
    return cost;
  }

  /** Takes states out of what is left; their mass. */
  private remove(states: Int32Array): number {
    const { left, endTotals } = this;
    const { ends } = this.problem;
    let removed = 0;
    for (let n = 0; n < states.length; n++) {
      const s = states[n]!;
      const b = left[s]!;
      removed += b;
      for (let e = 0; e < endTotals.length; e++) endTotals[e]! -= b * ends[e]!.cost[s]!;
      left[s] = 0;
    }
    return removed;
  }
}

function massOf(states: Int32Array, left: Float64Array): number {
  let p = 0;
  for (let n = 0; n < states.length; n++) p += left[states[n]!]!;
  return p;
}

function leastOf(values: Float64Array): number {
  let least = Number.POSITIVE_INFINITY;
  for (let n = 0; n < values.length; n++) if (values[n]! < least) least = values[n]!;
  return least;
}
