/**
 * The outcome graph: points by what was done and seen, however they were come by, opened one by one. Each opened point has an
 * edge for every step that can still be best, with a bound and a guess of what follows; the points that follow are made only
 * for edges that matter in some view.
 */
import { Guesses, likelyCost } from './guesses.ts';
import { choose, chooseLikely, type Edge, IN_HOPE, LIKELY, type PlanNode, settle, tally, VIEWS } from './node.ts';
import { Outcomes } from './outcomes.ts';
import { Policies } from './policies.ts';
import { costAt, type Policy } from './policy.ts';
import { cheapestEnd, type PlanProblem, type Situation } from './problem.ts';
import { RepairOrders } from './repair-order.ts';

/** Costs nearer than this fraction are equal. */
const EQUAL = 1e-9;
/** Rounds for the bound from pairs of causes when it is made, and when it is made better. */
const FIRST_ROUNDS = 45;
const MORE_ROUNDS = 120;

export class Graph {
  readonly problem: PlanProblem;
  readonly root: PlanNode;
  expansions = 0;
  private readonly orders: RepairOrders;
  private readonly policies: Policies;
  private readonly outcomes: Outcomes;
  private readonly known = new Map<string, PlanNode>();
  /** Opened points by the number of steps that lead there. */
  private readonly layers: PlanNode[][] = [];
  private readonly guesses: Guesses;
  private isRefined = false;

  constructor(problem: PlanProblem, start: Situation) {
    this.problem = problem;
    this.orders = new RepairOrders(problem);
    this.policies = new Policies(problem);
    this.outcomes = new Outcomes(problem);
    this.guesses = new Guesses(problem, this.orders);
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
    this.outcomes.lay(node);
    const edges: Edge[] = [];
    for (let action = 0; action < node.done.length; action++) {
      if (node.done[action] !== 0 || !this.outcomes.look(node, action, node.upper)) continue;
      const edge = this.edge(action);
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
    const { edges, along } = node;
    if (!edges) return;
    for (let n = 0; n < edges.length; n++) tally(edges[n]!);
    for (;;) {
      choose(node, edges);
      let likely = chooseLikely(node, edges);
      while (likely && likely.guessed < likely.p.length) {
        // before there is a bound an edge is guessed whole: it would be taken as more hopeful than it is later on
        do this.guesses.more(node, likely);
        while (!this.isRefined && likely.guessed < likely.p.length);
        likely = chooseLikely(node, edges);
      }
      const isHopeMade = this.makeNext(node, along[IN_HOPE]);
      const isLikelyMade = this.makeNext(node, along[LIKELY]);
      if (!isHopeMade && !isLikelyMade) break;
    }
    settle(node, edges);
  }

  /** Makes the points that follow an edge; false where they are there. */
  private makeNext(node: PlanNode, edge: Edge | undefined): boolean {
    if (!edge || edge.nodes) return false;
    edge.nodes = edge.p.map((_, n) => this.next(node, edge, n));
    tally(edge);
    return true;
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

  /** Older plans at hand were compared with when the point was made, or at an earlier refresh. */
  private borrow(node: PlanNode): void {
    const than = node.upper - EQUAL * node.upper;
    if (than <= node.lower) return;
    const found = this.policies.cheapestFresh(node, than);
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
    const { outcomes } = this;
    this.isRefined = true;
    outcomes.improveBound(this.root, FIRST_ROUNDS);
    for (const node of this.layers.flat()) {
      outcomes.lay(node);
      for (const edge of node.edges ?? []) {
        if (!outcomes.look(node, edge.action, Number.POSITIVE_INFINITY)) continue;
        edge.low.forEach((before, n) => {
          const low = outcomes.low[n]!;
          edge.low[n] = Math.max(before, low);
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
    this.outcomes.improveBound(this.root, MORE_ROUNDS);
    this.raiseRoot();
  }

  private raiseRoot(): void {
    const { root } = this;
    root.lower = Math.min(root.upper, Math.max(root.lower, this.outcomes.least(root)));
  }

  /** An edge for the step last looked at. */
  private edge(action: number): Edge {
    const { outcome, p, low, count, cost } = this.outcomes;
    const edge: Edge = {
      action,
      cost,
      outcome: outcome.slice(0, count),
      p: p.slice(0, count),
      low: low.slice(0, count),
      nodes: undefined,
      lower: 0,
      likely: 0,
      guessed: 0,
      guesses: 0,
      upper: Number.POSITIVE_INFINITY,
    };
    this.sum(edge);
    return edge;
  }

  /** Bound from those of the outcomes; what is guessed in part is guessed anew. */
  private sum(edge: Edge): void {
    const { p, low, cost } = edge;
    let lower = cost;
    for (let n = 0; n < p.length; n++) lower += p[n]! * low[n]!;
    edge.lower = lower;
    if (edge.guessed > 0 && edge.guessed === p.length) return;
    edge.guessed = 0;
    edge.guesses = cost;
    edge.likely = lower;
  }

  /** Set-ups that a check or a repair needs. */
  private setupsOf(action: number): number {
    const { checks, repairs } = this.problem;
    return (checks[action] ?? repairs[action - checks.length]!).setups;
  }

  /** The point after an outcome. */
  private next(node: PlanNode, { action, outcome, low }: Edge, n: number): PlanNode {
    const { checks, repairs } = this.problem;
    const o = outcome[n]!;
    const key = inserted(node.key, String.fromCharCode(action, o));
    const known = this.known.get(key);
    if (known) return known;
    const belief = Float64Array.from(node.belief);
    let total = 0;
    const given = checks[action]?.likelihood[o];
    const fixes = repairs[action - checks.length]?.fixes;
    for (let s = 0; s < belief.length; s++) {
      if (given) belief[s]! *= given[s]!;
      else if (fixes![s] === 1) belief[s] = 0;
      total += belief[s]!;
    }
    for (let s = 0; s < belief.length; s++) belief[s]! /= total;
    const done = Uint8Array.from(node.done);
    done[action] = 1 + o;
    const made = this.node({ belief, done, setups: node.setups | this.setupsOf(action) }, key, node.depth + 1, low[n]!);
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
      likely: likelyCost(lower, restCost, 1),
      upper: restCost,
      restCost,
      rest: borrowed?.policy,
      alone: undefined,
      inHand: undefined,
      endCost: cheapestEnd(this.problem, belief).cost,
      edges: undefined,
      along: [undefined, undefined, undefined],
      open: [width, width, width],
    };
  }
}

/** A step put at its place among those of a key, two letters each. */
function inserted(key: string, step: string): string {
  let at = 0;
  while (at < key.length && key.slice(at, at + 2) < step) at += 2;
  return key.slice(0, at) + step + key.slice(at);
}
