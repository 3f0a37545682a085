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
  /** Repairs not in the order yet; for each of these places its probability, its cost now and the one over the other. */
  private readonly open: Int32Array;
  private readonly mass: Float64Array;
  private readonly costNow: Float64Array;
  private readonly worth: Float64Array;
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
    this.open = new Int32Array(repairs.length);
    this.mass = new Float64Array(repairs.length);
    this.costNow = new Float64Array(repairs.length);
    this.worth = new Float64Array(repairs.length);
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
    const { fixed, sums, price, bits, left, open, mass, costNow, worth, tried, attempts, ends, endTotals } = this;
    const before = this.problem.checks.length;
    let total = 0;
    for (let s = 0; s < left.length; s++) {
      left[s] = belief[s]!;
      total += left[s]!;
    }
    let count = 0;
    for (let r = 0; r < fixed.length; r++) {
      if (done[before + r] !== 0) continue;
      const m = massOf(fixed[r]!, left);
      if (m <= 0) continue;
      const cost = price[r]! + sums[bits[r]! & ~paid]!;
      open[count] = r;
      mass[count] = m;
      costNow[count] = cost;
      worth[count++] = m / cost;
    }
    for (let e = 0; e < endTotals.length; e++) {
      const { cost } = this.problem.ends[e]!;
      let sum = 0;
      for (let s = 0; s < left.length; s++) sum += left[s]! * cost[s]!;
      endTotals[e] = sum;
    }
    ends[0] = leastOf(endTotals);
    let setups = paid;
    let steps = 0;
    while (count > 0) {
      let best = 0;
      let most = worth[0]!;
      for (let n = 1; n < count; n++) {
        if (worth[n]! <= most) continue;
        most = worth[n]!;
        best = n;
      }
      const r = open[best]!;
      tried[steps] = r;
      attempts[steps++] = costNow[best]! * total;
      total -= this.remove(fixed[r]!);
      ends[steps] = leastOf(endTotals);
      count -= 1;
      open[best] = open[count]!;
      mass[best] = mass[count]!;
      costNow[best] = costNow[count]!;
      worth[best] = worth[count]!;
      const newly = bits[r]! & ~setups;
      setups |= newly;
      if (!this.areApart) count = this.weighAgain(count, setups);
      else if (newly !== 0) {
        for (let n = 0; n < count; n++) {
          const other = open[n]!;
          if ((bits[other]! & newly) === 0) continue;
          costNow[n] = price[other]! + sums[bits[other]! & ~setups]!;
          worth[n] = mass[n]! / costNow[n]!;
        }
      }
    }
    return this.stopWhereCheaper(steps);
  }

  /** What open repairs remove and cost after one that removed some of it; how many of them still remove something. */
  private weighAgain(count: number, setups: number): number {
    const { fixed, left, open, mass, costNow, worth, price, bits, sums } = this;
    let kept = 0;
    for (let n = 0; n < count; n++) {
      const r = open[n]!;
      const m = massOf(fixed[r]!, left);
      if (m <= 0) continue;
      open[kept] = r;
      mass[kept] = m;
      costNow[kept] = price[r]! + sums[bits[r]! & ~setups]!;
      worth[kept] = m / costNow[kept]!;
      kept += 1;
    }
    return kept;
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
