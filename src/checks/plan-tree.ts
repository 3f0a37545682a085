/** The plan in hand as a tree of steps with what each costs. Rare branches are cut off: the whole has many thousands. */
import type { JobProblem, Price } from './job-problem.ts';
import type { Policy } from './planner/policy.ts';
import { checkOutcomes, type Situation, setupCost } from './planner/problem.ts';
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
  /** Answers, most probable first; a repair's "held" ends the job. None where the tree is cut off. */
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

/** Sending the car away: what it still costs, by what is believed. */
function sendAway({ problem, sentAway }: JobProblem, belief: Float64Array): TreeStep {
  const price = belief.reduce<Price>((sum, b, s) => added(sum, sentAway[s]!, b), NOTHING);
  const cost = belief.reduce((sum, b, s) => sum + b * problem.ends[0]!.cost[s]!, 0);
  return { kind: 'send away', id: 'send away', setups: [], ...price, cost };
}

/** A check, a repair or (below 0) sending away, with this belief and these set-ups paid. */
export function stepForAction(
  posed: JobProblem,
  action: number,
  { belief, setups: paid }: Pick<Situation, 'belief' | 'setups'>,
): TreeStep {
  if (action < 0) return sendAway(posed, belief);
  const { problem, checks, repairs, prices, setupPrices } = posed;
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

/** Where a plan has come to. */
type Point = Pick<Situation, 'belief' | 'setups'>;

/** Points less likely than this are shown with their step alone. */
const RARE = 1e-3;

/** @param reach chance of coming to this point */
export function planTree(posed: JobProblem, plan: Policy, from: Point, reach = 1): PlanTree {
  const step = stepForAction(posed, plan.action, from);
  const tree = { step, probability: reach, likeliest: likeliest(posed, from.belief) };
  if (reach < RARE) return { ...tree, answers: [] };
  const answers: PlanTree['answers'][number][] = [];
  let left = 1;
  for (const { name, p, plan: rest, point } of afterStep(posed, plan, from)) {
    left -= p;
    answers.push({ outcome: name, probability: p, next: planTree(posed, rest, point, reach * p) });
  }
  if (step.kind === 'repair') answers.push({ outcome: 'held', probability: Math.max(0, left), next: 'proven' });
  return { ...tree, answers: answers.sort((a, b) => b.probability - a.probability) };
}

/** What can follow the first step of a plan, with the rest of the plan. A repair that holds is not among it. */
export function afterStep(posed: JobProblem, plan: Policy, { belief, setups }: Point) {
  const { checks, repairs } = posed.problem;
  const { action, next } = plan;
  if (action < 0) return [];
  const check = checks[action];
  const repair = repairs[action - checks.length];
  const end: Policy = { ...plan, action: -1, next: [] };
  const outcomes = check ? checkOutcomes(check.likelihood, belief) : notHeld(repair!.fixes, belief);
  const paid = setups | (check ?? repair!).setups;
  return outcomes.map(({ outcome, p, belief: after }) => ({
    name: check ? posed.checks[action]!.outcomes[outcome]!.id : 'not held',
    p,
    // what could not come where the plan was worked out, but comes here, ends it
    plan: next[outcome] ?? end,
    point: { belief: after, setups: paid },
  }));
}

export function notHeld(fixes: Uint8Array, belief: Float64Array) {
  const left = belief.map((b, s) => (fixes[s] === 1 ? 0 : b));
  const p = left.reduce((a, b) => a + b, 0);
  return p > 1e-9 ? [{ outcome: 0, p, belief: left.map((b) => b / p) }] : [];
}

function likeliest(posed: JobProblem, belief: Float64Array): PlanTree['likeliest'] {
  let best = 0;
  for (let s = 1; s < belief.length; s++) if (belief[s]! > belief[best]!) best = s;
  return { id: posed.causes[best]!, probability: belief[best] ?? 0 };
}
