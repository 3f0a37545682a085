/** A point of the outcome graph: what is known, what is done, and how cheap the rest can at best and at worst be. */
import type { Policy } from './policy.ts';
import type { Situation } from './problem.ts';

/** A step and its outcomes. Lists go by outcome; those that cannot come are left out. */
export interface Edge {
  /** Checks first, then repairs. */
  readonly action: number;
  /** With the set-ups that it has to pay. */
  readonly cost: number;
  /** Outcome's number; a repair's only open one is 0, "not fixed". */
  readonly outcome: readonly number[];
  readonly p: readonly number[];
  /** Bound of what follows, from the belief after the outcome alone. */
  readonly low: number[];
  /** Points that follow; made when the step is first looked at in earnest. */
  nodes: readonly PlanNode[] | undefined;
  lower: number;
  /** The lower bound until it is looked at in earnest; while some outcomes are guessed, with the bound of the others. */
  likely: number;
  /** Outcomes whose likely cost is guessed, and the sum of those guesses with the step's own cost. */
  guessed: number;
  guesses: number;
  /** Infinite while no points follow yet. */
  upper: number;
}

/** Ways of going down the graph: along the plan in hand, the most hopeful one, and the one that will likely turn out best. */
export const IN_HAND = 0;
export const IN_HOPE = 1;
export const LIKELY = 2;
export const VIEWS = [IN_HAND, IN_HOPE, LIKELY] as const;
export type View = (typeof VIEWS)[number];

export interface PlanNode extends Situation {
  /** Steps done and seen, in a fixed order. */
  readonly key: string;
  /** Steps that led here. */
  readonly depth: number;
  lower: number;
  /** What the best plan will likely cost: no bound. */
  likely: number;
  upper: number;
  /** What it costs without an edge: by a plan borrowed from another point, or by repairs alone. */
  restCost: number;
  /** The plan borrowed; absent: repairs alone. */
  rest: Policy | undefined;
  /** Repairs alone as a plan, and the plan in hand by an edge: as they were when last asked for. */
  alone: Policy | undefined;
  inHand: Policy | undefined;
  readonly endCost: number;
  edges: readonly Edge[] | undefined;
  /** By view, the edge that gives the value; absent: what it costs without one, or an end. */
  readonly along: (Edge | undefined)[];
  /** By view, the widest gap between the bounds at a point still closed below here, times the chance of coming there. */
  readonly open: number[];
}

/** Edge of the plan in hand; absent: a borrowed plan, or repairs alone. */
export const bestEdge = (node: PlanNode): Edge | undefined => node.along[IN_HAND];

/** Takes an edge's values from the points that follow. */
export function tally(edge: Edge): void {
  const { nodes, p, low } = edge;
  if (!nodes) return;
  let { cost: lower, cost: likely, cost: upper } = edge;
  for (let n = 0; n < nodes.length; n++) {
    const node = nodes[n]!;
    const chance = p[n]!;
    lower += chance * Math.max(low[n]!, node.lower);
    likely += chance * node.likely;
    upper += chance * node.upper;
  }
  edge.lower = Math.min(lower, upper);
  edge.likely = likely;
  edge.guessed = nodes.length;
  edge.upper = upper;
}

/** Chooses the edges of the plan in hand and of the most hopeful one. */
export function choose(node: PlanNode, edges: readonly Edge[]): void {
  let inHand: Edge | undefined;
  let hopeful: Edge | undefined;
  let upper = node.restCost;
  let lower = node.endCost;
  for (let n = 0; n < edges.length; n++) {
    const edge = edges[n]!;
    if (edge.upper < upper) {
      upper = edge.upper;
      inHand = edge;
    }
    if (edge.lower < lower) {
      lower = edge.lower;
      hopeful = edge;
    }
  }
  node.along[IN_HAND] = inHand;
  node.along[IN_HOPE] = hopeful;
}

/** Chooses the edge that will likely turn out best, as far as outcomes are guessed; absent: what it costs without one. */
export function chooseLikely(node: PlanNode, edges: readonly Edge[]): Edge | undefined {
  let found: Edge | undefined;
  let least = node.restCost;
  for (let n = 0; n < edges.length; n++) {
    const edge = edges[n]!;
    if (edge.likely < least) {
      least = edge.likely;
      found = edge;
    }
  }
  node.along[LIKELY] = found;
  return found;
}

/** After the edges were chosen: bounds, edges that can no longer be best dropped, and where it is open below. */
export function settle(node: PlanNode, edges: readonly Edge[]): void {
  const { along, open } = node;
  const [inHand, hopeful, likely] = along;
  const upper = inHand ? inHand.upper : node.restCost;
  node.upper = upper;
  node.lower = Math.min(upper, Math.max(node.lower, hopeful ? hopeful.lower : node.endCost));
  node.likely = Math.max(node.lower, Math.min(upper, likely ? likely.likely : node.restCost));
  for (let n = 0; n < edges.length; n++) {
    const edge = edges[n]!;
    if (edge.lower < upper || edge === inHand || edge === hopeful || edge === likely) continue;
    node.edges = edges.filter((e) => e.lower < upper || e === inHand || e === hopeful || e === likely);
    break;
  }
  for (const view of VIEWS) {
    const edge = along[view];
    let widest = 0;
    if (edge?.nodes) {
      const { nodes, p } = edge;
      for (let n = 0; n < nodes.length; n++) widest = Math.max(widest, p[n]! * nodes[n]!.open[view]!);
    }
    open[view] = widest;
  }
}
