/** A point of the outcome graph: what is known, what is done, and how cheap the rest can at best and at worst be. */
import type { BitPrice, InformationBound } from './information-bound.ts';
import { type PlanProblem, type Situation, setupCost } from './problem.ts';
import { cheapestEnd, type RepairOrder, repairOrder } from './repair-order.ts';

export interface Branch {
  /** Outcome's number; a repair's only open branch is "not fixed". */
  readonly outcome: number;
  readonly p: number;
  node: PlanNode;
}

export interface Edge {
  /** Checks first, then repairs. */
  readonly action: number;
  /** With the set-ups that it has to pay. */
  readonly cost: number;
  readonly branches: readonly Branch[];
  lower: number;
  upper: number;
}

export interface PlanNode extends Situation {
  lower: number;
  upper: number;
  /** Price of a bit that gave the best lower bound. */
  lambda: number;
  /** What costs `upper` when no edge does: repairs alone. */
  readonly stop: RepairOrder;
  readonly endCost: number;
  edges?: Edge[];
  /** Edge that gives `upper`; absent: `stop`. */
  best?: Edge;
  /** Edge that gives `lower`; absent: an end. */
  hopeful?: Edge;
  /** Widest gap between the bounds at a point still closed below here, times the chance of coming there: */
  /** along the plan in hand, */
  openInHand: number;
  /** and along the most hopeful plan. */
  openInHope: number;
}

/** Outcomes rarer than this are left out of the graph; their probability goes to the others. */
const NEGLIGIBLE = 1e-9;
/** Besides the parent's best price, one a little above or below is tried in turn. */
const PRICE_STEP = 1.5;
/** Prices tried at the start, as multiples of the cheapest check. */
const FIRST_PRICES = [0.3, 0.7, 1.5, 3, 5, 8, 12, 18, 27, 40, 60, 100, 180];

export class Graph {
  readonly problem: PlanProblem;
  readonly bound: InformationBound;
  expansions = 0;
  private readonly known = new Map<string, PlanNode>();
  /** Open points by the number of steps that lead there. */
  private readonly open: PlanNode[][] = [];
  private readonly prerequisites: ReadonlySet<number>;

  constructor(problem: PlanProblem, bound: InformationBound) {
    this.problem = problem;
    this.bound = bound;
    this.prerequisites = new Set(problem.checks.flatMap((check) => check.after));
  }

  root(situation: Situation): PlanNode {
    const unit = Math.max(1e-9, Math.min(...this.problem.checks.map((c) => c.cost).filter((c) => c > 0), 1e3));
    let best = { lower: Number.NEGATIVE_INFINITY, lambda: unit };
    const bits = this.bound.entropy(situation.belief);
    for (const ratio of FIRST_PRICES) {
      const made = this.priceAt(situation, ratio * unit);
      const lower = this.bound.lower(made, situation.belief, -1, situation.setups, bits);
      if (lower > best.lower) best = { lower, lambda: ratio * unit };
    }
    return this.node(situation, best.lower, best.lambda);
  }

  /** One node for one set of results, however they were come by. */
  canonical(node: PlanNode): PlanNode {
    const key = String.fromCharCode(...node.done);
    const known = this.known.get(key);
    if (known) return known;
    this.known.set(key, node);
    return node;
  }

  expand(node: PlanNode): void {
    if (node.edges) return;
    this.expansions += 1;
    const steps = node.done.reduce((n, d) => n + (d === 0 ? 0 : 1), 0);
    this.open[steps] ??= [];
    this.open[steps].push(node);
    const other = node.lambda * (this.expansions % 2 === 0 ? PRICE_STEP : 1 / PRICE_STEP);
    const prices = [this.priceAt(node, node.lambda), this.priceAt(node, other)];
    const bits = this.bound.entropy(node.belief);
    for (const made of prices) {
      const lower = this.bound.lower(made, node.belief, -1, node.setups, bits);
      if (lower > node.lower) {
        node.lower = lower;
        node.lambda = made.lambda;
      }
    }
    node.edges = [];
    const { checks, repairs } = this.problem;
    for (let k = 0; k < checks.length; k++) {
      const check = checks[k]!;
      if (node.done[k] !== 0 || check.after.some((j) => node.done[j] === 0)) continue;
      if (!this.prerequisites.has(k) && !tellsAnything(check.likelihood, node.belief)) continue;
      this.addEdge(node, k, check.cost, check.setups, prices, checkOutcomes(check.likelihood, node.belief));
    }
    for (let r = 0; r < repairs.length; r++) {
      const repair = repairs[r]!;
      if (node.done[checks.length + r] !== 0) continue;
      const left = Float64Array.from(node.belief, (b, s) => (repair.fixes[s] === 1 ? 0 : b));
      const p = left.reduce((a, b) => a + b, 0);
      if (p >= 1 - NEGLIGIBLE) continue;
      const outcomes = p > NEGLIGIBLE ? [{ outcome: 0, p, belief: left.map((b) => b / p) }] : [];
      this.addEdge(node, checks.length + r, repair.cost, repair.setups, prices, outcomes);
    }
    update(node);
  }

  /** Carries all bounds up, deepest first: points that were reached by another way count everywhere. */
  refresh(): void {
    for (let steps = this.open.length - 1; steps >= 0; steps--) {
      for (const node of this.open[steps] ?? []) {
        for (const edge of node.edges ?? []) {
          for (const branch of edge.branches) {
            if (branch.node.edges) continue;
            branch.node = this.known.get(String.fromCharCode(...branch.node.done)) ?? branch.node;
          }
        }
        update(node);
      }
    }
  }

  private priceAt(at: Situation, lambda: number): BitPrice {
    return this.bound.price(lambda, at.belief, (k) => at.done[k] === 0, at.setups);
  }

  private node(situation: Situation, lower: number, lambda: number): PlanNode {
    const { problem } = this;
    const stop = repairOrder(
      problem,
      situation.belief,
      (r) => situation.done[problem.checks.length + r] === 0,
      situation.setups,
    );
    const endCost = cheapestEnd(problem, situation.belief).cost;
    const least = Math.min(lower, stop.cost);
    const width = stop.cost - least;
    return {
      ...situation,
      lower: least,
      upper: stop.cost,
      lambda,
      stop,
      endCost,
      openInHand: width,
      openInHope: width,
    };
  }

  private addEdge(
    node: PlanNode,
    action: number,
    ownCost: number,
    setups: number,
    prices: readonly BitPrice[],
    outcomes: readonly { outcome: number; p: number; belief: Float64Array }[],
  ): void {
    const { problem, bound } = this;
    const cost = ownCost + setupCost(problem, setups, node.setups);
    const paid = node.setups | setups;
    const without = action < problem.checks.length ? action : -1;
    const bounds = outcomes.map(({ belief }) => {
      let lower = Number.NEGATIVE_INFINITY;
      let lambda = node.lambda;
      const bits = bound.entropy(belief);
      for (const made of prices) {
        const l = bound.lower(made, belief, without, paid, bits);
        if (l > lower) {
          lower = l;
          lambda = made.lambda;
        }
      }
      return { lower, lambda };
    });
    const least = outcomes.reduce((sum, { p }, i) => sum + p * bounds[i]!.lower, cost);
    if (least >= node.upper) return;
    const branches = outcomes.map(({ outcome, p, belief }, i) => {
      const done = Uint8Array.from(node.done);
      done[action] = 1 + outcome;
      return { outcome, p, node: this.node({ belief, done, setups: paid }, bounds[i]!.lower, bounds[i]!.lambda) };
    });
    node.edges!.push({ action, cost, branches, lower: 0, upper: 0 });
  }
}

/** Takes the bounds of a node from its edges; edges that can no longer be best are dropped. */
export function update(node: PlanNode): void {
  if (!node.edges) return;
  let lower = node.endCost;
  let upper = node.stop.cost;
  delete node.best;
  delete node.hopeful;
  for (const edge of node.edges) {
    edge.lower = edge.cost;
    edge.upper = edge.cost;
    for (const { p, node: child } of edge.branches) {
      edge.lower += p * child.lower;
      edge.upper += p * child.upper;
    }
    if (edge.lower < lower) {
      lower = edge.lower;
      node.hopeful = edge;
    }
    if (edge.upper < upper) {
      upper = edge.upper;
      node.best = edge;
    }
  }
  node.upper = upper;
  node.lower = Math.min(upper, Math.max(node.lower, lower));
  node.edges = node.edges.filter((edge) => edge === node.best || edge.lower < upper);
  node.openInHand = 0;
  node.openInHope = 0;
  for (const { p, node: child } of node.best?.branches ?? []) {
    node.openInHand = Math.max(node.openInHand, p * child.openInHand);
  }
  for (const { p, node: child } of node.hopeful?.branches ?? []) {
    node.openInHope = Math.max(node.openInHope, p * child.openInHope);
  }
}

function tellsAnything(likelihood: readonly Float64Array[], belief: Float64Array): boolean {
  return likelihood.some((p) => {
    let low = 1;
    let high = 0;
    for (let s = 0; s < belief.length; s++) {
      if (belief[s]! <= NEGLIGIBLE) continue;
      low = Math.min(low, p[s]!);
      high = Math.max(high, p[s]!);
    }
    return high - low > 1e-9;
  });
}

export function checkOutcomes(likelihood: readonly Float64Array[], belief: Float64Array) {
  const outcomes: { outcome: number; p: number; belief: Float64Array }[] = [];
  let total = 0;
  likelihood.forEach((given, outcome) => {
    let p = 0;
    const joint = new Float64Array(belief.length);
    for (let s = 0; s < belief.length; s++) {
      const x = belief[s]! * given[s]!;
      joint[s] = x;
      p += x;
    }
    if (p <= NEGLIGIBLE) return;
    for (let s = 0; s < joint.length; s++) joint[s]! /= p;
    total += p;
    outcomes.push({ outcome, p, belief: joint });
  });
  return outcomes.map((o) => ({ ...o, p: o.p / total }));
}
