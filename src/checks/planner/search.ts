/**
 * Anytime search of the plan with the least expected cost. Every point of the outcome graph carries a lower bound (what no
 * plan can beat) and an upper bound (what a known plan costs); the search opens points where the two differ most along the
 * plan in hand (makes it better), along the most hopeful one (makes the bound better), and in between.
 */
import { InformationBound } from './information-bound.ts';
import { Graph, type PlanNode, update } from './node.ts';
import { checkProblem, type PlanProblem, type Situation } from './problem.ts';

export interface SearchBudget {
  /** Most points to open in all. */
  readonly expansions: number;
  /** Stop when the plan in hand is within this fraction of the lower bound. */
  readonly gap?: number;
  /** Asked after every opened point; true ends the search, which can be taken up again. */
  readonly shouldStop?: () => boolean;
}

/** How an edge is judged on the way down: 1 by what is known to be reached, 0 by what may be. */
const VIEWS = [1, 0, 1, 0.5] as const;
/** Openings that first go to the plan in hand alone. */
const FIRST_BEST = 60;
/** Costs nearer than this fraction of the root's are equal. */
const EQUAL = 1e-9;

export class PlanSearch {
  readonly problem: PlanProblem;
  readonly root: PlanNode;
  private readonly graph: Graph;
  private turn = 0;

  constructor(problem: PlanProblem, situation: Situation) {
    checkProblem(problem);
    this.problem = problem;
    this.graph = new Graph(problem, new InformationBound(problem));
    this.root = this.graph.canonical(this.graph.root(situation));
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
    let idle = 0;
    while (this.graph.expansions < expansions && this.gap > gap && idle < VIEWS.length) {
      const before = this.graph.expansions;
      const view = before < FIRST_BEST ? 1 : VIEWS[this.turn++ % VIEWS.length]!;
      if (!this.trial(view) && !this.trial(0)) idle += 1;
      else idle = 0;
      if (shouldStop?.()) return;
    }
  }

  /** One way down to a point that is not open yet; opens it and carries its bounds back up. */
  private trial(view: number): boolean {
    const path: PlanNode[] = [];
    let at = this.root;
    const least = EQUAL * Math.abs(this.root.upper);
    while (at.edges) {
      path.push(at);
      const next = choose(at, view, least);
      if (!next) break;
      next.node = this.graph.canonical(next.node);
      at = next.node;
    }
    const opened = !at.edges;
    if (opened) this.graph.expand(at);
    for (let i = path.length - 1; i >= 0; i--) update(path[i]!);
    return opened;
  }
}

/** The branch that matters most on the edge that looks best in this view. */
function choose(node: PlanNode, view: number, least: number) {
  let bestScore = Number.POSITIVE_INFINITY;
  let bestBranch: NonNullable<PlanNode['edges']>[number]['branches'][number] | undefined;
  for (const edge of node.edges!) {
    const score = edge.lower + view * (edge.upper - edge.lower);
    if (score >= bestScore) continue;
    let widest = least;
    let widestBranch: typeof bestBranch;
    for (const branch of edge.branches) {
      const width = branch.p * (branch.node.upper - branch.node.lower);
      if (width > widest) {
        widest = width;
        widestBranch = branch;
      }
    }
    // an edge with nothing open under it is settled; another may still be worth a look
    if (!widestBranch) continue;
    bestScore = score;
    bestBranch = widestBranch;
  }
  return bestBranch;
}
