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
  nodes?: readonly PlanNode[];
  lower: number;
  /** The lower bound until it is looked at in earnest. */
  likely: number;
  isGuessed: boolean;
  /** Infinite while no points follow yet. */
  upper: number;
}

/** Ways of going down the graph: along the plan in hand, the most hopeful one, and the one that will likely turn out best. */
export const VIEWS = ['in hand', 'in hope', 'likely'] as const;
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
  rest?: Policy;
  readonly endCost: number;
  edges?: readonly Edge[];
  /** Edge that gives the value in each view; absent: what it costs without one, or an end. */
  readonly along: Partial<Record<View, Edge>>;
  /** In each view, the widest gap between the bounds at a point still closed below here, times the chance of coming there. */
  readonly open: Record<View, number>;
}

/** Edge of the plan in hand; absent: a borrowed plan, or repairs alone. */
export const bestEdge = (node: PlanNode): Edge | undefined => node.along['in hand'];

/** Takes an edge's values from the points that follow. */
export function tally(edge: Edge): void {
  const { nodes } = edge;
  if (!nodes) return;
  let { cost: lower, cost: likely, cost: upper } = edge;
  for (let n = 0; n < nodes.length; n++) {
    const node = nodes[n]!;
    const p = edge.p[n]!;
    lower += p * Math.max(edge.low[n]!, node.lower);
    likely += p * node.likely;
    upper += p * node.upper;
  }
  edge.lower = Math.min(lower, upper);
  edge.likely = likely;
  edge.isGuessed = true;
  edge.upper = upper;
}

/** Chooses the edge of each view; the values that go with them. */
export function choose(node: PlanNode, edges: readonly Edge[]): Record<View, number> {
  const value: Record<View, number> = { 'in hand': node.restCost, 'in hope': node.endCost, likely: node.restCost };
  const { along } = node;
  delete along['in hand'];
  delete along['in hope'];
  delete along.likely;
  for (const edge of edges) {
    if (edge.upper < value['in hand']) {
      value['in hand'] = edge.upper;
      along['in hand'] = edge;
    }
    if (edge.lower < value['in hope']) {
      value['in hope'] = edge.lower;
      along['in hope'] = edge;
    }
    if (edge.likely < value.likely) {
      value.likely = edge.likely;
      along.likely = edge;
    }
  }
  return value;
}

/** After the edges were chosen: bounds, edges that can no longer be best dropped, and where it is open below. */
export function settle(node: PlanNode, edges: readonly Edge[], value: Readonly<Record<View, number>>): void {
  const { along, open } = node;
  node.upper = value['in hand'];
  node.lower = Math.min(node.upper, Math.max(node.lower, value['in hope']));
  node.likely = Math.max(node.lower, Math.min(node.upper, value.likely));
  const isKept = (edge: Edge): boolean => edge.lower < node.upper || VIEWS.some((view) => along[view] === edge);
  node.edges = edges.every(isKept) ? edges : edges.filter(isKept);
  for (const view of VIEWS) {
    let widest = 0;
    const edge = along[view];
    edge?.nodes?.forEach((next, n) => {
      widest = Math.max(widest, edge.p[n]! * next.open[view]);
    });
    open[view] = widest;
  }
}
