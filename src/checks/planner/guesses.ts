/** What the best plan will likely cost, guessed from its bounds: no bound, it only guides the search. */
import type { Edge, PlanNode } from './node.ts';
import type { PlanProblem } from './problem.ts';
import type { RepairOrders } from './repair-order.ts';

/**
 * The likely cost lies between the bound and repairs alone: at GUESS of the way while that is short, never more than GUESS
 * times FAR above the bound when it is long, where checks help more. Set by trying several on eight complaints.
 */
const GUESS = 0.8;
const FAR = 160;

/**
 * @param low bound of the cost, times the chance of coming there
 * @param stop cost of repairs alone, times the same chance
 * @param chance that chance
 */
export const likelyCost = (low: number, stop: number, chance: number): number =>
  stop > low ? low + (GUESS * (stop - low)) / (1 + (stop - low) / (FAR * chance)) : low;

export class Guesses {
  private readonly problem: PlanProblem;
  private readonly orders: RepairOrders;
  private readonly weights: Float64Array;

  constructor(problem: PlanProblem, orders: RepairOrders) {
    this.problem = problem;
    this.orders = orders;
    this.weights = new Float64Array(problem.states);
  }

  /** Guesses what one more outcome of an edge will likely cost, as long as no points follow it. */
  more({ belief, done, setups }: PlanNode, edge: Edge): void {
    const { weights } = this;
    const { checks, repairs } = this.problem;
    const { action, outcome, p, low, guessed: n } = edge;
    const check = checks[action];
    const step = check ?? repairs[action - checks.length]!;
    if (check) {
      const given = check.likelihood[outcome[n]!]!;
      for (let s = 0; s < weights.length; s++) weights[s] = belief[s]! * given[s]!;
    } else {
      const { fixes } = repairs[action - checks.length]!;
      for (let s = 0; s < weights.length; s++) weights[s] = fixes[s] === 1 ? 0 : belief[s]!;
    }
    const wasDone = done[action]!;
    done[action] = 1;
    const alone = this.orders.cost(weights, done, setups | step.setups);
    done[action] = wasDone;
    edge.guesses += likelyCost(low[n]! * p[n]!, alone, p[n]!);
    edge.guessed = n + 1;
    let likely = edge.guesses;
    for (let m = n + 1; m < p.length; m++) likely += p[m]! * low[m]!;
    edge.likely = likely;
  }
}
