/**
 * Plans at hand, laid out for the question that every point asks: which of hundreds of them could serve here, and what would
 * the cheapest cost? For everything that can be done or paid there are two rows of bits, one bit for each plan: whom it shuts
 * out when it is so, and whom when it is not.
 */
import type { Policy } from './policy.ts';
import type { PlanProblem, Situation } from './problem.ts';

export interface Found {
  readonly policy: Policy;
  readonly cost: number;
}

export class Shelf {
  readonly policies: readonly Policy[];
  private readonly actions: number;
  /** Actions, then set-ups; without a row nobody is shut out. */
  private readonly whereDone: (Int32Array | undefined)[] = [];
  private readonly whereOpen: (Int32Array | undefined)[] = [];
  /** Rows that count at a point. */
  private readonly rows: Int32Array[] = [];
  /** By plan and state. */
  private readonly costs: Float64Array;
  private readonly blocks: number;

  constructor(policies: readonly Policy[], { states, checks, repairs, setupCosts }: PlanProblem) {
    this.policies = policies;
    this.actions = checks.length + repairs.length;
    this.blocks = Math.ceil(policies.length / 32);
    this.costs = new Float64Array(policies.length * states);
    const put = (rows: (Int32Array | undefined)[], row: number, policy: number): void => {
      rows[row] ??= new Int32Array(this.blocks);
      rows[row]![policy >>> 5]! |= 1 << (policy & 31);
    };
    policies.forEach(({ setups, paid, uses, needs, cost }, n) => {
      this.costs.set(cost, n * states);
      for (let a = 0; a < this.actions; a++) {
        if (((uses[a >>> 5]! >>> (a & 31)) & 1) === 1) put(this.whereDone, a, n);
        if (((needs[a >>> 5]! >>> (a & 31)) & 1) === 1) put(this.whereOpen, a, n);
      }
      setupCosts.forEach((_, bit) => {
        if (((setups >>> bit) & 1) === 0) return;
        put(((paid >>> bit) & 1) === 1 ? this.whereOpen : this.whereDone, this.actions + bit, n);
      });
    });
    this.whereDone.length = this.actions + setupCosts.length;
    this.whereOpen.length = this.whereDone.length;
  }

  /** The plan that costs least at a point, if it costs less than this. */
  cheapest({ belief, done, setups }: Situation, than: number): Found | undefined {
    const { policies, actions, whereDone, whereOpen, rows, costs, blocks } = this;
    const states = belief.length;
    let count = 0;
    for (let a = 0; a < whereDone.length; a++) {
      const isSo = a < actions ? done[a] !== 0 : ((setups >>> (a - actions)) & 1) === 1;
      const row = isSo ? whereDone[a] : whereOpen[a];
      if (row) rows[count++] = row;
    }
    let least = than;
    let found = -1;
    for (let block = 0; block < blocks; block++) {
      let shut = 0;
      for (let r = 0; r < count && shut !== -1; r++) shut |= rows[r]![block]!;
      for (let fit = ~shut; fit !== 0; fit &= fit - 1) {
        const n = 32 * block + 31 - Math.clz32(fit & -fit);
        if (n >= policies.length) break;
        const row = n * states;
        let cost = 0;
        for (let s = 0; s < states && cost < least; s++) cost += belief[s]! * costs[row + s]!;
        if (cost < least) {
          least = cost;
          found = n;
        }
      }
    }
    return found < 0 ? undefined : { policy: policies[found]!, cost: least };
  }
}
