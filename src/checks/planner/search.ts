/**
 * Anytime search of the plan with the least expected cost. Every point of the outcome graph carries a lower bound (what no
 * plan can beat) and an upper bound (what a known plan costs); the search opens the point where the two differ most, by
 * turns along the plan in hand (which makes it better) and along the most hopeful one (which raises the bound).
 */
import { InformationBound } from './information-bound.ts';
import { type Branch, Graph, type PlanNode, update } from './node.ts';
import { checkProblem, type PlanProblem, type Situation } from './problem.ts';

export interface SearchBudget {
  /** Most points to open in all. */
  readonly expansions: number;
  /** Stop when the plan in hand is within this fraction of the lower bound. */
  readonly gap?: number;
  /** Asked after every opened point; true ends the search, which can be taken up again. */
  readonly shouldStop?: () => boolean;
}

type View = 'in hand' | 'in hope';
/** By turns; a plan in hand that has no closed point left leaves the turn to hope. */
const TURNS: readonly View[] = ['in hand', 'in hope'];
/** Openings that first go to the plan in hand alone. */
const FIRST_IN_HAND = 60;
/** Openings until bounds are first carried up everywhere; then each time twice as many. */
const FIRST_REFRESH = 100;
/** Costs nearer than this fraction of the root's are equal. */
const EQUAL = 1e-9;

export class PlanSearch {
  readonly problem: PlanProblem;
  readonly root: PlanNode;
  private readonly graph: Graph;
  private turn = 0;
  private nextRefresh = FIRST_REFRESH;

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
    while (this.graph.expansions < expansions && this.gap > gap) {
      const view = this.graph.expansions < FIRST_IN_HAND ? 'in hand' : TURNS[this.turn++ % TURNS.length]!;
      if (!this.trial(view) && !this.trial(view === 'in hand' ? 'in hope' : 'in hand')) {
        this.graph.refresh();
        if (!this.trial('in hope') && !this.trial('in hand')) return;
      }
      if (this.graph.expansions >= this.nextRefresh) {
        this.graph.refresh();
        this.nextRefresh *= 2;
      }
      if (shouldStop?.()) return;
    }
  }

  /** One way down to a point that is not open yet; opens it and carries its bounds back up. */
  private trial(view: View): boolean {
    const path: PlanNode[] = [];
    let at = this.root;
    const least = EQUAL * Math.abs(this.root.upper);
    while (at.edges) {
      path.push(at);
      const next = widest(at, view, least);
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

/** The branch with the widest gap at a closed point below it. */
function widest(node: PlanNode, view: View, least: number): Branch | undefined {
  let found: Branch | undefined;
  let width = least;
  for (const branch of (view === 'in hand' ? node.best : node.hopeful)?.branches ?? []) {
    const here = branch.p * (view === 'in hand' ? branch.node.openInHand : branch.node.openInHope);
    if (here > width) {
      width = here;
      found = branch;
    }
  }
  return found;
}
