/** The plan in hand as a tree of steps, with expected minutes and money; short enough at the top to print on a page. */
import type { JobProblem, Price } from './job-problem.ts';
import type { PlanNode } from './planner/node.ts';
import { setupCost } from './planner/problem.ts';
import type { RootCauseId } from './root-causes.ts';
import { SETUPS, type SetupId } from './setups.ts';

/** One step with what it costs here, set-ups included. */
export interface TreeStep extends Price {
  readonly kind: 'check' | 'repair' | 'send away';
  /** Number of the check or name of the repair. */
  readonly id: string;
  /** Set-ups that this step has to pay for. */
  readonly setups: readonly SetupId[];
  /** In the goal's unit. */
  readonly cost: number;
}

export interface PlanTree {
  readonly step: TreeStep;
  /** Chance of coming here. */
  readonly probability: number;
  /** Most probable cause here. */
  readonly likeliest: { readonly id: RootCauseId; readonly probability: number };
  /** Answers, most probable first; a repair's "held" ends the job. */
  readonly answers: readonly {
    readonly outcome: string;
    readonly probability: number;
    readonly next: PlanTree | 'proven';
  }[];
}

const NOTHING: Price = { minutes: 0, waitMinutes: 0, goods: 0 };
const added = (a: Price, b: Price, share = 1): Price => ({
  minutes: a.minutes + share * b.minutes,
  waitMinutes: a.waitMinutes + share * b.waitMinutes,
  goods: a.goods + share * b.goods,
});

/** A step for an action at a point where these set-ups are paid; action -1 is sending away. */
export function stepForAction(posed: JobProblem, action: number, paid: number): TreeStep {
  const { problem, checks, repairs, prices, setupPrices } = posed;
  if (action < 0) {
    const minutes = posed.unprovenMinutes;
    return { kind: 'send away', id: 'send away', setups: [], minutes, waitMinutes: 0, goods: 0, cost: minutes };
  }
  const isCheck = action < checks.length;
  const own = isCheck ? problem.checks[action]! : problem.repairs[action - checks.length]!;
  const open = own.setups & ~paid;
  const setups = SETUPS.filter((_, bit) => ((open >>> bit) & 1) === 1);
  const price = setups.reduce<Price>((sum, id) => added(sum, setupPrices[SETUPS.indexOf(id)]!), prices[action]!);
  return {
    kind: isCheck ? 'check' : 'repair',
    id: isCheck ? checks[action]!.id : repairs[action - checks.length]!.id,
    setups,
    ...price,
    cost: own.cost + setupCost(problem, own.setups, paid),
  };
}

const chosen = (posed: JobProblem, node: PlanNode): number =>
  node.best?.action ?? (node.stop.order.length > 0 ? posed.checks.length + node.stop.order[0]! : -1);

export const stepOf = (posed: JobProblem, node: PlanNode): TreeStep =>
  stepForAction(posed, chosen(posed, node), node.setups);

interface Walked {
  readonly tree: PlanTree;
  readonly expected: Price;
}

/** Walks the whole plan below a point. `unprovenStates`: probability by state of being sent away. */
export function planTree(posed: JobProblem, root: PlanNode): Walked & { readonly unprovenStates: Float64Array } {
  const unprovenStates = new Float64Array(posed.problem.states);
  const walked = walkNode(posed, root, 1, unprovenStates);
  return { ...walked, unprovenStates };
}

function likeliest(posed: JobProblem, belief: Float64Array): PlanTree['likeliest'] {
  let best = 0;
  for (let s = 1; s < belief.length; s++) if (belief[s]! > belief[best]!) best = s;
  return { id: posed.causes[best]!, probability: belief[best] ?? 0 };
}

function walkNode(posed: JobProblem, node: PlanNode, reach: number, unproven: Float64Array): Walked {
  const { best } = node;
  if (!best) return walkOrder(posed, node.stop.order, 0, node.belief, node.setups, reach, unproven);
  const step = stepForAction(posed, best.action, node.setups);
  let expected: Price = step;
  const isCheck = best.action < posed.checks.length;
  const answers: PlanTree['answers'][number][] = [];
  let left = 1;
  for (const { outcome, p, node: child } of best.branches) {
    const below = walkNode(posed, child, reach * p, unproven);
    expected = added(expected, below.expected, p);
    left -= p;
    const name = isCheck ? posed.checks[best.action]!.outcomes[outcome]!.id : 'not held';
    answers.push({ outcome: name, probability: p, next: below.tree });
  }
  if (!isCheck) answers.push({ outcome: 'held', probability: Math.max(0, left), next: 'proven' });
  answers.sort((a, b) => b.probability - a.probability);
  return {
    tree: { step, probability: reach, likeliest: likeliest(posed, node.belief), answers },
    expected: priceOf(expected),
  };
}

/** Repairs one after the other, then sending away. */
function walkOrder(
  posed: JobProblem,
  order: readonly number[],
  from: number,
  belief: Float64Array,
  paid: number,
  reach: number,
  unproven: Float64Array,
): Walked {
  const r = order[from];
  const action = r === undefined ? -1 : posed.checks.length + r;
  const step = stepForAction(posed, action, paid);
  const seen = likeliest(posed, belief);
  if (r === undefined) {
    belief.forEach((b, s) => {
      unproven[s]! += reach * b;
    });
    return { tree: { step, probability: reach, likeliest: seen, answers: [] }, expected: priceOf(step) };
  }
  const { fixes, setups } = posed.problem.repairs[r]!;
  const left = Float64Array.from(belief, (b, s) => (fixes[s] === 1 ? 0 : b));
  const p = left.reduce((a, b) => a + b, 0);
  const answers: PlanTree['answers'][number][] = [{ outcome: 'held', probability: 1 - p, next: 'proven' }];
  let expected: Price = step;
  if (p > 1e-9) {
    const rest = left.map((b) => b / p);
    const below = walkOrder(posed, order, from + 1, rest, paid | setups, reach * p, unproven);
    expected = added(expected, below.expected, p);
    answers.push({ outcome: 'not held', probability: p, next: below.tree });
  }
  answers.sort((a, b) => b.probability - a.probability);
  return { tree: { step, probability: reach, likeliest: seen, answers }, expected: priceOf(expected) };
}

const priceOf = (price: Price): Price => added(NOTHING, price);
