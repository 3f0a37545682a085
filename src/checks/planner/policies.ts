/** Plans that are at hand: the one in hand at any point, and parts of it that other points may borrow. */
import { bestEdge, type PlanNode } from './node.ts';
import type { Bits, Policy } from './policy.ts';
import { type Found, Shelf } from './policy-shelf.ts';
import { cheapestEnd, type PlanProblem, type Situation, setupCost } from './problem.ts';

const none = (words: number): number[] => new Array<number>(words).fill(0);
const has = (bits: Bits, action: number): boolean => ((bits[action >>> 5]! >>> (action & 31)) & 1) === 1;
const add = (bits: number[], action: number): void => {
  bits[action >>> 5]! |= 1 << (action & 31);
};

export class Policies {
  private readonly problem: PlanProblem;
  private readonly words: number;
  private readonly ends: readonly Policy[];
  /** All plans that may be borrowed, and those among them that were not there at the last collection. */
  private known: Shelf;
  private fresh: Shelf;

  constructor(problem: PlanProblem) {
    this.problem = problem;
    this.words = Math.ceil((problem.checks.length + problem.repairs.length) / 32);
    this.ends = problem.ends.map(({ cost }) => ({
      action: -1,
      next: [],
      cost,
      uses: none(this.words),
      needs: none(this.words),
      setups: 0,
      paid: 0,
    }));
    this.known = new Shelf([], problem);
    this.fresh = this.known;
  }

  /** Takes the plan in hand and all its parts as what other points may borrow; earlier ones are forgotten. */
  collect(root: PlanNode, repairsAlone: (at: Situation) => readonly number[]): void {
    const made = new Map<PlanNode, Policy>();
    this.ofNode(root, repairsAlone, made);
    const before = new Set(this.known.policies);
    const now = [...made].flatMap(([node, policy]) => (bestEdge(node) ? [policy] : []));
    this.known = new Shelf(now, this.problem);
    this.fresh = new Shelf(
      now.filter((policy) => !before.has(policy)),
      this.problem,
    );
  }

  /** The known plan that costs least at a point, if it costs less than this. */
  cheapest(at: Situation, than: number): Found | undefined {
    return this.known.cheapest(at, than);
  }

  /** The same among plans that are new since the last collection: enough for a point that was compared with the others. */
  cheapestFresh(at: Situation, than: number): Found | undefined {
    return this.fresh.cheapest(at, than);
  }

  /** What is done from a point on, along the plan in hand. */
  ofNode(
    node: PlanNode,
    repairsAlone: (at: Situation) => readonly number[],
    made: Map<PlanNode, Policy> = new Map(),
  ): Policy {
    const known = made.get(node);
    if (known) return known;
    const edge = bestEdge(node);
    let policy: Policy;
    if (edge) {
      const next: (Policy | undefined)[] = [];
      edge.nodes?.forEach((child, n) => {
        next[edge.outcome[n]!] = this.ofNode(child, repairsAlone, made);
      });
      const last = node.inHand;
      const isAsLast = last?.action === edge.action && next.every((after, o) => after === last.next[o]);
      policy = isAsLast ? last : this.step(edge.action, next, node.setups, this.end(node.belief));
      node.inHand = policy;
    } else {
      if (!node.rest) node.alone ??= this.inOrder(node, repairsAlone(node));
      policy = node.rest ?? node.alone!;
    }
    made.set(node, policy);
    return policy;
  }

  /** Repairs one after the other, then an end. */
  private inOrder({ belief, setups }: Situation, order: readonly number[]): Policy {
    const { checks, repairs } = this.problem;
    const left = Float64Array.from(belief);
    const paid: number[] = [];
    let bits = setups;
    for (const r of order) {
      paid.push(bits);
      bits |= repairs[r]!.setups;
      for (let s = 0; s < left.length; s++) if (repairs[r]!.fixes[s] === 1) left[s] = 0;
    }
    return order.reduceRight((rest, r, n) => this.step(checks.length + r, [rest], paid[n]!, rest), this.end(left));
  }

  private end(belief: Float64Array): Policy {
    return this.ends[cheapestEnd(this.problem, belief).end]!;
  }

  private step(action: number, next: readonly (Policy | undefined)[], paid: number, otherwise: Policy): Policy {
    const { checks, repairs } = this.problem;
    const check = checks[action];
    const { cost: price, setups: own } = check ?? repairs[action - checks.length]!;
    const whole = price + setupCost(this.problem, own, paid);
    const cost = new Float64Array(this.problem.states).fill(whole);
    if (check) {
      check.likelihood.forEach((given, o) => {
        const after = (next[o] ?? otherwise).cost;
        for (let s = 0; s < cost.length; s++) cost[s]! += given[s]! * after[s]!;
      });
    } else {
      const { fixes } = repairs[action - checks.length]!;
      const after = (next[0] ?? otherwise).cost;
      for (let s = 0; s < cost.length; s++) if (fixes[s] !== 1) cost[s]! += after[s]!;
    }
    const uses = none(this.words);
    const needs = none(this.words);
    let setups = own;
    for (const after of next) {
      if (!after) continue;
      setups |= after.setups;
      for (let w = 0; w < this.words; w++) {
        uses[w]! |= after.uses[w]!;
        needs[w]! |= after.needs[w]!;
      }
    }
    add(uses, action);
    if (has(needs, action)) needs[action >>> 5]! &= ~(1 << (action & 31));
    for (const before of check?.after ?? []) add(needs, before);
    return { action, next, cost, uses, needs, setups, paid: paid & setups };
  }
}
