/** The next step of a job, the plan behind it, and why: plain data for pages, reports and machines. */
import { type Belief, causeProbabilities, setupFaultProbabilities } from './belief.ts';
import { type JobProblem, jobProblem, type Price } from './job-problem.ts';
import { beliefOf, type JobState } from './job-state.ts';
import { PlanPrices } from './plan-price.ts';
import { afterStep, notHeld, type PlanTree, planTree, stepForAction, type TreeStep } from './plan-tree.ts';
import type { Policy } from './planner/policy.ts';
import { checkOutcomes } from './planner/problem.ts';
import { PlanSearch } from './planner/search.ts';
import type { RootCauseId } from './root-causes.ts';
import type { SetupFaultId } from './setups.ts';

export interface ProbableCause {
  readonly id: RootCauseId;
  readonly probability: number;
}

/** What one answer to the next step would change. */
export interface AnswerEffect {
  readonly outcome: string;
  readonly probability: number;
  /** Most probable causes after it. */
  readonly causes: readonly ProbableCause[];
  readonly next: TreeStep;
  /** Expected rest after it. */
  readonly expected: Price;
}

/** The next step against a step that one would take by reflex. */
export interface Comparison {
  readonly step: TreeStep;
  /** Chance that it settles the job: that the part is the right one, or that the check shows something. */
  readonly probability: number;
  /** By how much the plan that starts with it is dearer, in cost units (minutes weighed as the goal says). */
  readonly extra: number;
  readonly expected: Price;
}

export interface Plan {
  readonly next: TreeStep;
  /** Expected from here to a proven repair (or to sending away). */
  readonly expected: Price & { readonly cost: number };
  /** No plan can cost less than this. */
  readonly leastCost: number;
  /** How far above the optimum this plan can at most be, as a fraction of its cost. */
  readonly gap: number;
  readonly causes: readonly ProbableCause[];
  readonly setupFaults: readonly { readonly id: SetupFaultId; readonly probability: number }[];
  readonly answers: readonly AnswerEffect[];
  readonly instead: readonly Comparison[];
  readonly tree: PlanTree;
  /** Chance that the plan ends with sending the car away unproven, and what would then be left. */
  readonly unproven: { readonly probability: number; readonly causes: readonly ProbableCause[] };
  readonly expansions: number;
}

export interface PlanOptions {
  /** Most points of the outcome graph to open. */
  readonly expansions?: number;
  /** Stop when the plan is known to be this near the optimum, as a fraction. */
  readonly gap?: number;
  /** Asked between points; true ends the search with the best plan so far. */
  readonly shouldStop?: () => boolean;
}

const DEFAULT_EXPANSIONS = 1500;
const DEFAULT_GAP = 0.02;
/** Points opened before each answer that is handed out. */
const ANSWERS_AT = [20, 60, 250, 1000];
/**
 * Points opened at most for a step that one would take by reflex, shared out over its outcomes. It is searched as long as the
 * plan was, since a plan that is looked for less looks dearer than it is; beyond this many neither changes by a minute.
 */
const REFLEX_EXPANSIONS = 1000;
/** Chance that smoke leaves through a valve that was not proven to seal, whatever else leaks. Judgement. */
const UNSEALED = 0.25;
const SHOWN_CAUSES = 5;
const SHOWN_PROBABILITY = 0.01;

/**
 * Improving plans, the first after a few points. Synchronous and without a clock: the caller stops by budget or callback.
 *
 * @param job where the job stands
 * @returns each better plan as it is found; the last one as the generator's value
 */
export function* planNext(job: JobState, options: PlanOptions = {}): Generator<Plan, Plan> {
  const { expansions = DEFAULT_EXPANSIONS, gap = DEFAULT_GAP, shouldStop } = options;
  const belief = beliefOf(job);
  const posed = jobProblem(job, belief);
  const search = new PlanSearch(posed.problem, posed.situation);
  let stopped = false;
  const asked = () => {
    stopped ||= shouldStop?.() ?? false;
    return stopped;
  };
  for (const at of [...ANSWERS_AT.filter((n) => n < expansions), expansions]) {
    search.run({ expansions: at, gap, shouldStop: asked });
    if (stopped || search.gap <= gap || at === expansions) break;
    yield describe(posed, belief, search, []);
  }
  // what the reflex would cost takes as long again: the plan does not wait for it
  yield describe(posed, belief, search, []);
  return describe(posed, belief, search, reflexes(posed, search));
}

/** The best plan within the budget. */
export function plan(job: JobState, options: PlanOptions = {}): Plan {
  const answers = planNext(job, options);
  for (;;) {
    const { done, value } = answers.next();
    if (done) return value;
  }
}

function probable(posed: JobProblem, weights: Float64Array): ProbableCause[] {
  const total = weights.reduce((a, b) => a + b, 0);
  return posed.causes
    .map((id, s) => ({ id, probability: total > 0 ? weights[s]! / total : 0 }))
    .sort((a, b) => b.probability - a.probability)
    .slice(0, SHOWN_CAUSES)
    .filter(({ probability }) => probability >= SHOWN_PROBABILITY);
}

function describe(posed: JobProblem, belief: Belief, search: PlanSearch, instead: readonly Comparison[]): Plan {
  const { root } = search;
  const inHand = search.plan();
  const prices = new PlanPrices(posed);
  const { belief: now } = posed.situation;
  const tree = planTree(posed, inHand, posed.situation);
  const unprovenStates = prices.byState(inHand).unproven.map((p, s) => p * now[s]!);
  const unproven = unprovenStates.reduce((a, b) => a + b, 0);
  return {
    next: tree.step,
    expected: { ...prices.expected(inHand, now), cost: root.upper },
    leastCost: root.lower,
    gap: search.gap,
    causes: causeProbabilities(belief)
      .filter(({ probability }) => probability >= SHOWN_PROBABILITY)
      .sort((a, b) => b.probability - a.probability),
    setupFaults: setupFaultProbabilities(belief),
    answers: answersOf(posed, inHand, prices),
    instead,
    tree,
    unproven: { probability: unproven, causes: unproven > 0 ? probable(posed, unprovenStates) : [] },
    expansions: search.expansions,
  };
}

function answersOf(posed: JobProblem, inHand: Policy, prices: PlanPrices): AnswerEffect[] {
  return afterStep(posed, inHand, posed.situation).map(({ name, p, plan: rest, point }) => ({
    outcome: name,
    probability: p,
    causes: probable(posed, point.belief),
    next: stepForAction(posed, rest.action, point),
    expected: prices.expected(rest, point.belief),
  }));
}

/** What one does by reflex: fit the likeliest part, or make smoke; each with the best plan after it. */
function reflexes(posed: JobProblem, search: PlanSearch): Comparison[] {
  const { problem, situation } = posed;
  const chosen = search.plan().action;
  const likeliest = problem.repairs
    .map((repair, r) => ({
      action: problem.checks.length + r,
      p: situation.belief.reduce((sum, b, s) => sum + (repair.fixes[s] === 1 ? b : 0), 0),
    }))
    .filter(({ action }) => situation.done[action] === 0)
    .sort((a, b) => b.p - a.p)[0];
  const smoke = posed.checks.findIndex((check) => check.id === 'T23');
  const actions = [likeliest?.action ?? -1, smoke].filter((a) => a >= 0 && a !== chosen && situation.done[a] === 0);
  return actions.map((action) => reflex(posed, search, action));
}

function reflex(posed: JobProblem, search: PlanSearch, action: number): Comparison {
  const { problem, situation } = posed;
  const isCheck = action < problem.checks.length;
  const setups = isCheck ? problem.checks[action]!.setups : problem.repairs[action - problem.checks.length]!.setups;
  const step = stepForAction(posed, action, situation);
  const outcomes = isCheck
    ? checkOutcomes(likelihoodNow(posed, action), situation.belief)
    : notHeld(problem.repairs[action - problem.checks.length]!.fixes, situation.belief);
  let cost = 0;
  const expected = { minutes: step.minutes, waitMinutes: step.waitMinutes, goods: step.goods };
  for (const { outcome, p, belief } of outcomes) {
    const done = Uint8Array.from(situation.done);
    done[action] = 1 + outcome;
    const after = { belief, done, setups: situation.setups | setups };
    const rest = new PlanSearch(problem, after);
    rest.run({ expansions: Math.ceil(Math.min(search.expansions, REFLEX_EXPANSIONS) * p), gap: search.gap });
    cost += p * rest.root.upper;
    const then = new PlanPrices(posed).expected(rest.plan(), belief);
    expected.minutes += p * then.minutes;
    expected.waitMinutes += p * then.waitMinutes;
    expected.goods += p * then.goods;
  }
  cost += step.cost;
  const missed = outcomes.find(({ outcome }) => outcome === 0)?.p ?? 0;
  return { step, probability: 1 - missed, extra: cost - search.root.upper, expected };
}

/** Smoke before the valves are proven to seal leaves through them now and then. */
function likelihoodNow({ problem, checks, situation }: JobProblem, k: number): readonly Float64Array[] {
  const { likelihood, after } = problem.checks[k]!;
  if (after.every((j) => situation.done[j] !== 0)) return likelihood;
  const leaving = checks[k]!.outcomes.findIndex((outcome) => outcome.id === 'vent valve');
  return likelihood.map((p, o) => p.map((x) => (1 - UNSEALED) * x + (o === leaving ? UNSEALED : 0)));
}
