/**
 * A lower bound on what any plan costs, from pairs of causes.
 *
 * Under each state a plan pays for its checks, its repairs in vain, its set-ups and its end, besides what the state costs
 * someone who knows it. Let every such cost under a state be shared out among the other states. The plan's expected cost is
 * then a sum over pairs of states: what the plan costs where only these two are possible, at the shares. No plan costs a pair
 * less than the pair's own optimum (`two-causes.ts`), so the sum of these optima bounds every plan from below, whatever the
 * shares (Lagrangean decomposition, as in Guignard and Kim, Mathematical Programming 39, 1987; from memory). Besides:
 *   - a pair may repeat a check, a plan may not: `once` adds to a check's cost and is taken off once for each state;
 *   - a check that must follow another is done no more often than that one: it may bear a part of its cost. Once the earlier
 *     one is done this part is taken off again;
 *   - a set-up is paid once however many steps use it: its cost is shared out among the steps with parts that sum to 1,
 *     under states whose own repair does not need it (there it is in the state's own cost);
 *   - a set-up paid since the bound was made is taken off in full.
 * The bound holds for this situation and for all that can follow it.
 */
import { CostSplit } from './cost-split.ts';
import type { PlanProblem, Situation } from './problem.ts';
import { BEND, EVEN, solve, WIDTH } from './two-causes.ts';

/** Sweeps from zero for values that count, and the change at which they stop. */
const SWEEPS = 40;
const ENOUGH = 2e-3;

/** What is needed of a belief: by state its logarithm in steps of the grid and its square root, and which states live. */
export interface Laid {
  readonly log: Float64Array;
  readonly root: Float64Array;
  readonly live: Int32Array;
  count: number;
}

export const laid = (states: number): Laid => ({
  log: new Float64Array(states),
  root: new Float64Array(states),
  live: new Int32Array(states),
  count: 0,
});

export class PairBound {
  private readonly at: Situation;
  private readonly problem: PlanProblem;
  private readonly split: CostSplit;
  /** By state: bits of set-ups that are unpaid and that no repair of it needs. */
  private readonly foreign: Int32Array;
  /** By two states: number of their pair, or -1. */
  private readonly pairOf: Int32Array;
  private readonly tables: Float64Array;
  /** By check and state, what comes back when the check is done: as prices were when the tables were made. */
  private readonly released: Float64Array;
  private readonly once: Float64Array;

  constructor(problem: PlanProblem, at: Situation, own: Float64Array) {
    this.problem = problem;
    this.at = at;
    const { states, repairs, setupCosts } = problem;
    const all = (1 << setupCosts.length) - 1;
    this.foreign = Int32Array.from(
      { length: states },
      (_, s) => all & ~repairs.reduce((bits, r) => (r.fixes[s] === 1 ? bits | r.setups : bits), at.setups),
    );
    this.split = new CostSplit(problem, at, own, this.foreign);
    this.pairOf = new Int32Array(states * states).fill(-1);
    this.split.pairs.forEach(({ i, j }, n) => {
      this.pairOf[i * states + j] = n;
      this.pairOf[j * states + i] = n;
    });
    this.tables = new Float64Array(this.split.pairs.length * WIDTH);
    this.once = new Float64Array(problem.checks.length * states);
    this.released = new Float64Array(problem.checks.length * states);
  }

  /** Spends so many rounds on better shares and makes the tables anew. */
  improve(rounds: number): void {
    const { split } = this;
    split.improve(rounds);
    const { costs, once, borne } = split.mean;
    split.pairs.forEach((pair, n) => {
      const warm = pair.table.slice();
      pair.table.fill(0);
      solve(pair, costs, SWEEPS, ENOUGH);
      this.tables.set(pair.table, n * WIDTH);
      pair.table.set(warm);
    });
    this.once.set(once);
    this.released.set(once);
    const { states } = this.problem;
    split.followings.forEach(({ before }, f) => {
      for (let s = 0; s < states; s++) this.released[before * states + s]! -= borne[f]![s]!;
    });
  }

  /** Sum of the pairs' optima for a belief, which need not sum to 1. */
  pairs({ log, root, live, count }: Laid): number {
    const { pairOf, tables } = this;
    const states = log.length;
    const last = WIDTH - 1;
    const even = EVEN;
    const bend = BEND;
    let sum = 0;
    for (let a = 0; a < count; a++) {
      const i = live[a]!;
      const row = i * states;
      const place = log[i]! + even;
      let part = 0;
      for (let b = a + 1; b < count; b++) {
        const j = live[b]!;
        const n = pairOf[row + j]!;
        if (n < 0) continue;
        const t = place - log[j]!;
        if (!(t > 0 && t < last)) continue;
        const q = t | 0;
        const f = t - q;
        const g = 1 - f;
        const z = n * (last + 1) + q;
        part += root[j]! * (g * (1 + (g * g - 1) * bend) * tables[z]! + f * (1 + (f * f - 1) * bend) * tables[z + 1]!);
      }
      sum += part * root[i]!;
    }
    return sum;
  }

  /**
   * Turns own costs into the part that is linear in the belief, by state: less set-ups paid since and the prices of open checks.
   *
   * @param costs what each state costs someone who knows it, at these set-ups; changed in place
   * @param sums cost of set-ups by their bits
   */
  toLinear(costs: Float64Array, { done, setups }: Pick<Situation, 'done' | 'setups'>, sums: Float64Array): void {
    const newly = setups & ~this.at.setups;
    const states = costs.length;
    for (let s = 0; s < states; s++) costs[s]! -= sums[this.foreign[s]! & newly]!;
    for (let k = 0; k < this.problem.checks.length; k++) {
      if (this.at.done[k] !== 0) continue;
      for (let s = 0; s < states; s++) costs[s]! -= this.once[k * states + s]!;
      if (done[k] !== 0) for (let s = 0; s < states; s++) costs[s]! += this.released[k * states + s]!;
    }
  }

  /** What comes back under a state when a check is done. */
  releasedBy(check: number, state: number): number {
    return this.released[check * this.problem.states + state]!;
  }
}
