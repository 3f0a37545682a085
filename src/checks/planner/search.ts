/**
 * Anytime search of the plan with the least expected cost. Every point of the outcome graph carries a lower bound (what no
 * plan can beat), an upper bound (what a known plan costs) and a guess between them. The search opens, by turns, the point
 * where the bounds differ most along the plan that will likely turn out best (which finds better plans), along the plan in
 * hand (which makes it better) and along the most hopeful one (which raises the bound).
 */
import { Graph } from './graph.ts';
import { type Edge, IN_HAND, IN_HOPE, LIKELY, type PlanNode, VIEWS, type View } from './node.ts';
import type { Policy } from './policy.ts';
import { checkProblem, type PlanProblem, type Situation } from './problem.ts';

export interface SearchBudget {
  /** Most points to open in all. */
  readonly expansions: number;
  /** Stop when the plan in hand is within this fraction of the lower bound. */
  readonly gap?: number;
  /** Asked after every opened point; true ends the search, which can be taken up again. */
  readonly shouldStop?: () => boolean;
}

/** By turns; a view that has no closed point left leaves its turn to the next. The plan in hand gains most. */
const TURNS: readonly View[] = [LIKELY, IN_HAND, IN_HAND];
/**
 * Every so many turns the most hopeful way: often while such turns raise the bound by more than others lower the plan's cost,
 * else seldom. What a turn gains is remembered with a weight that falls by this fraction from turn to turn.
 */
const HOPE_OFTEN = 2;
const HOPE_SELDOM = 12;
const FORGETTING = { hope: 0.1, other: 0.03 };
/** Openings that first go to the likely plan alone, with a rough bound; then the bound is refined. */
const FIRST_LIKELY = 40;
/** Openings until the bound is made better once more. */
const REFINED_FURTHER = 400;
/** Openings until bounds are first carried up everywhere; then each time so many times as many. */
const FIRST_REFRESH = 100;
const REFRESH_GROWTH = 1.5;
/** Costs nearer than this fraction of the root's are equal. */
const EQUAL = 1e-9;

export class PlanSearch {
  readonly problem: PlanProblem;
  readonly root: PlanNode;
  private readonly graph: Graph;
  private turn = 0;
  /** What a turn lately gained: along the most hopeful way for the bound, along the others for the plan in hand. */
  private gained = { hope: 0, other: 0 };
  private nextRefresh = FIRST_REFRESH;
  private isRefined = false;
  private isRefinedFurther = false;

  constructor(problem: PlanProblem, situation: Situation) {
    checkProblem(problem);
    this.problem = problem;
    this.graph = new Graph(problem, situation);
    this.root = this.graph.root;
  }

  get expansions(): number {
    return this.graph.expansions;
  }

  /** How far above the optimum the plan in hand can at most be, as a fraction of its own cost. */
  get gap(): number {
    const { lower, upper } = this.root;
    return upper - lower <= EQUAL * Math.abs(upper) ? 0 : (upper - lower) / Math.abs(upper);
  }

  /** Opens points until the budget is used, the gap is reached or `shouldStop` says so. */
  run({ expansions, gap = 0, shouldStop }: SearchBudget): void {
    while (this.graph.expansions < expansions && this.gap > gap) {
      if (!this.isRefined && this.graph.expansions >= FIRST_LIKELY) {
        this.isRefined = true;
        this.graph.refine();
      }
      if (!this.isRefinedFurther && this.graph.expansions >= REFINED_FURTHER) {
        this.isRefinedFurther = true;
        this.graph.refineFurther();
      }
      const view = this.isRefined ? this.nextView() : LIKELY;
      const { lower, upper } = this.root;
      if (!this.trial(view) && !VIEWS.some((other) => other !== view && this.trial(other))) {
        this.graph.refresh();
        if (!VIEWS.some((any) => this.trial(any))) return;
      }
      if (view === IN_HOPE) this.note('hope', this.root.lower - lower);
      else this.note('other', upper - this.root.upper);
      if (this.graph.expansions >= this.nextRefresh) {
        this.graph.refresh();
        this.nextRefresh *= REFRESH_GROWTH;
      }
      if (shouldStop?.()) return;
    }
  }

  /** The plan in hand: what to do now and after every outcome. */
  plan(): Policy {
    return this.graph.plan();
  }

  private nextView(): View {
    this.turn += 1;
    const { hope, other } = this.gained;
    const isHope = this.turn % (hope > other ? HOPE_OFTEN : HOPE_SELDOM) === 0;
    return isHope ? IN_HOPE : TURNS[this.turn % TURNS.length]!;
  }

  private note(kind: 'hope' | 'other', gain: number): void {
    this.gained[kind] += FORGETTING[kind] * (gain - this.gained[kind]);
  }

  /** One way down to a point that is not open yet; opens it and carries its values back up. */
  private trial(view: View): boolean {
    const path: PlanNode[] = [];
    let at = this.root;
    let least = EQUAL * Math.abs(this.root.upper);
    while (at.edges) {
      path.push(at);
      const edge = at.along[view];
      const n = edge ? widest(edge, view, least) : -1;
      if (!edge?.nodes || n < 0) break;
      least /= edge.p[n]!;
      at = edge.nodes[n]!;
    }
    const isOpened = !at.edges;
    if (isOpened) this.graph.expand(at);
    for (let i = path.length - 1; i >= 0; i--) this.graph.update(path[i]!);
    return isOpened;
  }
}

/** Place of the outcome with the widest gap at a closed point below it; -1: none is wider than the least. */
function widest({ nodes, p }: Edge, view: View, least: number): number {
  let found = -1;
  if (!nodes) return found;
  let width = least;
  for (let n = 0; n < nodes.length; n++) {
    const here = p[n]! * nodes[n]!.open[view]!;
    if (here <= width) continue;
    width = here;
    found = n;
  }
  return found;
}
