/**
 * The outcome graph: points by what was done and seen, however they were come by, opened one by one. Each opened point has an
 * edge for every step that can still be best, with a bound and a guess of what follows; the points that follow are made only
 * for edges that matter in some view.
 */
import { choose, type Edge, type PlanNode, settle, tally, VIEWS } from './node.ts';
import { type Laid, laid, PairBound } from './pair-bound.ts';
import { Policies } from './policies.ts';
import { costAt, type Policy } from './policy.ts';
import { cheapestEnd, type PlanProblem, type Situation, setupSums } from './problem.ts';
import { RepairOrders } from './repair-order.ts';
import { inSteps } from './two-causes.ts';

/** Outcomes and states rarer than this are left out; outcomes' probability goes to the others. */
const NEGLIGIBLE = 1e-9;
const LIVE = 1e-12;
/** Costs nearer than this fraction are equal. */
const EQUAL = 1e-9;
/** States less likely than this, together with an outcome, add too little to the pairs to be worth the time; leaving pairs out keeps the bound valid. */
const COUNTS = 3e-4;
/**
 * The best plan's likely cost lies between the bound and repairs alone: at GUESS of the way while that is short, never
 * more than GUESS times FAR above the bound when it is long, where checks help more. Set by trying several; it only guides the search.
 */
const GUESS = 0.45;
const FAR = 300;
/** Rounds for the bound from pairs of causes when it is made, and when it is made better. */
const FIRST_ROUNDS = 45;
const MORE_ROUNDS = 75;

const guessed = (low: number, stop: number, mass: number): number =>
  stop > low ? low + (GUESS * (stop - low)) / (1 + (stop - low) / (FAR * mass)) : low;

/** Outcomes of a step with what is known of each. */
interface Outcomes {
  readonly outcome: number[];
  readonly p: number[];
  readonly low: number[];
}

export class Graph {
  readonly problem: PlanProblem;
  readonly root: PlanNode;
  expansions = 0;
  private readonly orders: RepairOrders;
  private readonly policies: Policies;
  /** Absent until it is asked for: a first plan does not need it. */
  private bound: PairBound | undefined;
  private readonly sums: Float64Array;
  private readonly known = new Map<string, PlanNode>();
  /** Opened points by the number of steps that lead there. */
  private readonly layers: PlanNode[][] = [];
  private readonly prerequisites: ReadonlySet<number>;
  private readonly ownByPaid = new Map<number, Float64Array>();
  /** By check and outcome: logarithms in steps of the bound's grid, and square roots, of the chances. */
  private readonly logs: readonly (readonly Float64Array[])[];
  private readonly roots: readonly (readonly Float64Array[])[];
  private readonly linearNow = new Map<number, Float64Array>();
  /** Memory for those: it is asked for at every point, and lists are dear to make. */
  private readonly linearMemory: Float64Array[] = [];
  private readonly linear: Float64Array;
  private readonly here: Laid;
  private readonly after: Laid;
  private readonly weights: Float64Array;

  constructor(problem: PlanProblem, start: Situation) {
    this.problem = problem;
    this.orders = new RepairOrders(problem);
    this.policies = new Policies(problem);
    this.sums = setupSums(problem);
    this.prerequisites = new Set(problem.checks.flatMap((check) => check.after));
    this.logs = problem.checks.map(({ likelihood }) => likelihood.map((p) => p.map((x) => inSteps(Math.log(x)))));
    this.roots = problem.checks.map(({ likelihood }) => likelihood.map((p) => p.map((x) => Math.sqrt(x))));
    this.here = laid(problem.states);
    this.after = laid(problem.states);
    this.weights = new Float64Array(problem.states);
    this.linear = new Float64Array(problem.states);
    this.root = this.node(start, '', 0, Number.NEGATIVE_INFINITY);
    this.raiseRoot();
    this.known.set('', this.root);
  }

  /** Opens a point: its edges, and the points along those that matter. */
  expand(node: PlanNode): void {
    if (node.edges) return;
    this.expansions += 1;
    this.layers[node.depth] ??= [];
    this.layers[node.depth]!.push(node);
    this.lay(node.belief);
    const { checks, repairs } = this.problem;
    const edges: Edge[] = [];
    for (let action = 0; action < checks.length + repairs.length; action++) {
      if (node.done[action] !== 0) continue;
      const after = action < checks.length ? this.afterCheck(node, action) : this.afterRepair(node, action);
      if (!after) continue;
      const edge = this.edge(node, action, after);
      if (edge.lower < node.upper) edges.push(edge);
    }
    node.edges = edges;
    if (node.rest) this.lend(node, node.rest);
    this.update(node);
  }

  /** The plan in hand, whole. */
  plan(): Policy {
    return this.policies.ofNode(this.root, this.repairsAlone);
  }

  /** Takes the values of a point from its edges, and makes the points that follow where an edge came to matter. */
  update(node: PlanNode): void {
    const { edges } = node;
    if (!edges) return;
    for (;;) {
      for (const edge of edges) tally(edge);
      const value = choose(node, edges);
      const { likely, 'in hope': hopeful } = node.along;
      if (likely && !likely.isGuessed) {
        this.guess(node, likely);
        continue;
      }
      const bare = [hopeful, likely].filter((edge) => edge !== undefined && !edge.nodes);
      if (bare.length === 0) {
        settle(node, edges, value);
        return;
      }
      for (const edge of bare) if (edge && !edge.nodes) edge.nodes = edge.p.map((_, n) => this.next(node, edge, n));
    }
  }

  /**
   * Carries all values up, deepest first: points that were reached by another way count everywhere. Then parts of the plan in
   * hand are lent to points that have no better one.
   */
  refresh(): void {
    this.carryUp();
    this.policies.collect(this.root, this.repairsAlone);
    for (const node of this.known.values()) this.borrow(node);
    this.carryUp();
  }

  private carryUp(): void {
    for (let depth = this.layers.length - 1; depth >= 0; depth--) {
      for (const node of this.layers[depth] ?? []) this.update(node);
    }
  }

  private readonly repairsAlone = ({ belief, done, setups }: Situation): readonly number[] =>
    this.orders.order(belief, done, setups).order;

  private borrow(node: PlanNode): void {
    const than = node.upper - EQUAL * node.upper;
    if (than <= node.lower) return;
    const found = this.policies.cheapest(node, than);
    if (found) this.take(node, found.policy, found.cost);
  }

  private take(node: PlanNode, policy: Policy, cost: number): void {
    node.rest = policy;
    node.restCost = cost;
    node.upper = Math.min(node.upper, cost);
    node.likely = Math.min(node.upper, node.likely);
    if (node.edges) return;
    const width = node.upper - node.lower;
    for (const view of VIEWS) node.open[view] = width;
  }

  /** An opened point's borrowed plan goes on to the points that follow, which can then improve it. */
  private lend(node: PlanNode, { action, next }: Policy): void {
    const edge = node.edges?.find((one) => one.action === action);
    if (!edge) return;
    edge.nodes ??= edge.p.map((_, n) => this.next(node, edge, n));
    edge.nodes.forEach((child, n) => {
      const policy = next[edge.outcome[n]!];
      if (!policy) return;
      const cost = costAt(policy, child.belief);
      if (cost < child.upper - EQUAL * child.upper) this.take(child, policy, cost);
    });
  }

  /** Makes the bound from pairs of causes and uses it everywhere. */
  refine(): void {
    this.bound = new PairBound(this.problem, this.root, this.own(this.root.setups));
    this.bound.improve(FIRST_ROUNDS);
    for (const node of this.layers.flat()) {
      this.lay(node.belief);
      for (const edge of node.edges ?? []) {
        const isCheck = edge.action < this.problem.checks.length;
        const after = isCheck ? this.afterCheck(node, edge.action) : this.afterRepair(node, edge.action);
        if (!after) continue;
        after.low.forEach((low, n) => {
          edge.low[n] = Math.max(edge.low[n]!, low);
          const next = edge.nodes?.[n];
          if (!next || next.edges) return;
          next.lower = Math.min(next.upper, Math.max(next.lower, low));
          next.likely = Math.max(next.lower, next.likely);
        });
        this.sum(edge);
      }
    }
    this.raiseRoot();
    this.carryUp();
  }

  /** Makes that bound better, for the root and for what is opened from now on. */
  refineFurther(): void {
    this.bound?.improve(MORE_ROUNDS);
    this.raiseRoot();
  }

  private raiseRoot(): void {
    const { root } = this;
    this.lay(root.belief);
    const linear = this.linearBy(root, root.setups);
    const pairs = this.bound?.pairs(this.here) ?? 0;
    const low = root.belief.reduce((sum, b, s) => sum + b * linear[s]!, pairs);
    const own = root.belief.reduce((sum, b, s) => sum + b * this.own(root.setups)[s]!, 0);
    root.lower = Math.min(root.upper, Math.max(root.lower, low, own));
  }

  /** What each state costs someone who knows it: the cheapest repair with its set-ups, or the cheapest end. */
  private own(paid: number): Float64Array {
    let known = this.ownByPaid.get(paid);
    if (known) return known;
    known = new Float64Array(this.problem.states).fill(Number.POSITIVE_INFINITY);
    for (const { cost, setups, fixes } of this.problem.repairs) {
      const whole = cost + this.sums[setups & ~paid]!;
      for (let s = 0; s < known.length; s++) if (fixes[s] === 1 && whole < known[s]!) known[s] = whole;
    }
    for (const { cost } of this.problem.ends) {
      for (let s = 0; s < known.length; s++) if (cost[s]! < known[s]!) known[s] = cost[s]!;
    }
    this.ownByPaid.set(paid, known);
    return known;
  }

  /** Linear part of the bound after a step at the point now laid out, which pays set-ups at most; worked out once for each. */
  private linearBy({ done }: PlanNode, paid: number): Float64Array {
    let known = this.linearNow.get(paid);
    if (!known) {
      known = this.linearMemory[this.linearNow.size] ??= new Float64Array(this.problem.states);
      known.set(this.own(paid));
      this.bound?.toLinear(known, { done, setups: paid }, this.sums);
      this.linearNow.set(paid, known);
    }
    return known;
  }

  private lay(belief: Float64Array): void {
    const { here } = this;
    this.linearNow.clear();
    here.count = 0;
    for (let s = 0; s < belief.length; s++) {
      const b = belief[s]!;
      here.log[s] = inSteps(Math.log(b));
      here.root[s] = Math.sqrt(b);
      if (b > LIVE) here.live[here.count++] = s;
    }
  }

  /** Undefined for a check that cannot be done yet or that tells nothing here. */
  private afterCheck(node: PlanNode, k: number): Outcomes | undefined {
    const { here, after, weights } = this;
    const { likelihood, after: before, setups } = this.problem.checks[k]!;
    if (before.some((j) => node.done[j] === 0)) return undefined;
    if (!this.prerequisites.has(k) && !this.tells(likelihood)) return undefined;
    const paid = node.setups | setups;
    const own = this.own(paid);
    const { linear } = this;
    linear.set(this.linearBy(node, paid));
    if (this.bound) for (let s = 0; s < linear.length; s++) linear[s]! += this.bound.releasedBy(k, s);
    const out: Outcomes = { outcome: [], p: [], low: [] };
    for (let o = 0; o < likelihood.length; o++) {
      const given = likelihood[o]!;
      const log = this.logs[k]![o]!;
      const root = this.roots[k]![o]!;
      weights.fill(0);
      after.count = 0;
      for (let n = 0; n < here.count; n++) {
        const s = here.live[n]!;
        const w = node.belief[s]! * given[s]!;
        weights[s] = w;
        if (w < COUNTS) continue;
        after.live[after.count++] = s;
        after.log[s] = here.log[s]! + log[s]!;
        after.root[s] = here.root[s]! * root[s]!;
      }
      this.add(out, o, own, linear, after);
    }
    let total = 0;
    for (const p of out.p) total += p;
    for (let n = 0; n < out.p.length; n++) out.p[n]! /= total;
    return out;
  }

  /** Undefined for a repair that removes nothing that is believed. */
  private afterRepair(node: PlanNode, action: number): Outcomes | undefined {
    const { here, after, weights } = this;
    const { fixes, setups } = this.problem.repairs[action - this.problem.checks.length]!;
    let fixed = 0;
    weights.fill(0);
    after.count = 0;
    for (let n = 0; n < here.count; n++) {
      const s = here.live[n]!;
      if (fixes[s] === 1) {
        fixed += node.belief[s]!;
        continue;
      }
      weights[s] = node.belief[s]!;
      if (weights[s]! < COUNTS) continue;
      after.log[s] = here.log[s]!;
      after.root[s] = here.root[s]!;
      after.live[after.count++] = s;
    }
    if (fixed <= NEGLIGIBLE) return undefined;
    const paid = node.setups | setups;
    const own = this.own(paid);
    const linear = this.linearBy(node, paid);
    const out: Outcomes = { outcome: [], p: [], low: [] };
    this.add(out, 0, own, linear, after);
    return out;
  }

  /** One outcome with the weights as they now are: its chance, and what follows at least. */
  private add(out: Outcomes, outcome: number, own: Float64Array, linear: Float64Array, after: Laid): void {
    const { weights } = this;
    let p = 0;
    let base = 0;
    let line = 0;
    for (let s = 0; s < weights.length; s++) {
      const w = weights[s]!;
      p += w;
      base += w * own[s]!;
      line += w * linear[s]!;
    }
    if (p <= NEGLIGIBLE) return;
    const low = Math.max(base, this.bound ? line + this.bound.pairs(after) : base);
    out.outcome.push(outcome);
    out.p.push(p);
    out.low.push(low / p);
  }

  private edge(node: PlanNode, action: number, { outcome, p, low }: Outcomes): Edge {
    const { cost, setups } = this.stepOf(action);
    const whole = cost + this.sums[setups & ~node.setups]!;
    const edge = {
      action,
      cost: whole,
      outcome,
      p,
      low,
      lower: 0,
      likely: 0,
      isGuessed: false,
      upper: Number.POSITIVE_INFINITY,
    };
    this.sum(edge);
    return edge;
  }

  /** A check or a repair. */
  private stepOf(action: number): { readonly cost: number; readonly setups: number } {
    const { checks, repairs } = this.problem;
    return checks[action] ?? repairs[action - checks.length]!;
  }

  private sum(edge: Edge): void {
    edge.lower = edge.p.reduce((sum, p, n) => sum + p * edge.low[n]!, edge.cost);
    if (!edge.isGuessed) edge.likely = edge.lower;
  }

  /** What an edge will likely cost, as long as no points follow it. */
  private guess(node: PlanNode, edge: Edge): void {
    const { checks, repairs } = this.problem;
    const { action, outcome, p, low } = edge;
    const paid = node.setups | this.stepOf(action).setups;
    const { weights } = this;
    const wasDone = node.done[action]!;
    node.done[action] = 1;
    edge.likely = edge.cost;
    for (let n = 0; n < p.length; n++) {
      const given = checks[action]?.likelihood[outcome[n]!];
      const fixes = repairs[action - checks.length]?.fixes;
      for (let s = 0; s < weights.length; s++) {
        weights[s] = node.belief[s]! * (given ? given[s]! : 1 - fixes![s]!);
      }
      edge.likely += guessed(low[n]! * p[n]!, this.orders.cost(weights, node.done, paid), p[n]!);
    }
    node.done[action] = wasDone;
    edge.isGuessed = true;
  }

  /** The point after an outcome. */
  private next(node: PlanNode, { action, outcome, low }: Edge, n: number): PlanNode {
    const { checks, repairs } = this.problem;
    const o = outcome[n]!;
    const key = inserted(node.key, String.fromCharCode(action, o));
    const known = this.known.get(key);
    if (known) return known;
    const { setups } = this.stepOf(action);
    const belief = checks[action]
      ? node.belief.map((b, s) => b * checks[action]!.likelihood[o]![s]!)
      : node.belief.map((b, s) => (repairs[action - checks.length]!.fixes[s] === 1 ? 0 : b));
    const total = belief.reduce((a, b) => a + b, 0);
    for (let s = 0; s < belief.length; s++) belief[s]! /= total;
    const done = Uint8Array.from(node.done);
    done[action] = 1 + o;
    const made = this.node({ belief, done, setups: node.setups | setups }, key, node.depth + 1, low[n]!);
    this.known.set(key, made);
    return made;
  }

  private node(situation: Situation, key: string, depth: number, low: number): PlanNode {
    const { belief, done, setups } = situation;
    const alone = this.orders.cost(belief, done, setups);
    const borrowed = this.policies.cheapest(situation, alone);
    const restCost = borrowed?.cost ?? alone;
    const lower = Math.min(low, restCost);
    const width = restCost - lower;
    return {
      belief,
      done,
      setups,
      key,
      depth,
      lower,
      likely: guessed(lower, restCost, 1),
      upper: restCost,
      restCost,
      ...(borrowed ? { rest: borrowed.policy } : {}),
      endCost: cheapestEnd(this.problem, belief).cost,
      along: {},
      open: { 'in hand': width, 'in hope': width, likely: width },
    };
  }

  private tells(likelihood: readonly Float64Array[]): boolean {
    const { live, count } = this.here;
    return likelihood.some((p) => {
      let low = 1;
      let high = 0;
      for (let n = 0; n < count; n++) {
        low = Math.min(low, p[live[n]!]!);
        high = Math.max(high, p[live[n]!]!);
      }
      return high - low > NEGLIGIBLE;
    });
  }
}

/** A step put at its place among those of a key, two letters each. */
function inserted(key: string, step: string): string {
  let at = 0;
  while (at < key.length && key.slice(at, at + 2) < step) at += 2;
  return key.slice(0, at) + step + key.slice(at);
}
