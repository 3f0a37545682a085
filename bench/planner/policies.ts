/** Ways of working through a job: the planner, the flow chart, parts by probability over cost, and one who knows. */
import { afterFailedRepair, afterResult, type Belief, causeProbabilities } from '../../src/checks/belief.ts';
import { figureValues } from '../../src/checks/figures.ts';
import { type JobProblem, jobProblem } from '../../src/checks/job-problem.ts';
import { beliefOf, type JobState, type Step } from '../../src/checks/job-state.ts';
import type { Policy as Plan } from '../../src/checks/planner/policy.ts';
import { checkOutcomes } from '../../src/checks/planner/problem.ts';
import { RepairOrders } from '../../src/checks/planner/repair-order.ts';
import { PlanSearch } from '../../src/checks/planner/search.ts';
import { SETUPS, type SetupId } from '../../src/checks/setups.ts';
import type { Chart, ChartStep } from './flow-chart.ts';
import type { Car } from './world.ts';

export type Policy = (car: Car) => void;

/** Points opened at the start of a complaint, and where a job is planned anew. */
const FIRST_EXPANSIONS = 3000;
const LATER_EXPANSIONS = 300;
/** Shift of belief, beside what the plan foresaw, from which it is planned anew: a set-up that is under suspicion. */
const SHIFT = 0.04;

interface Planned {
  readonly posed: JobProblem;
  readonly plan: Plan;
}

/**
 * Works as the pages do: takes the next step of the plan, updates causes and set-up together, and plans anew where the
 * belief has moved from what the plan foresaw, and where the plan says no more than which part to try next. Plans are kept by
 * what was done and seen.
 */
export function plannerPolicy(job: JobState): Policy {
  const figure = figureValues(job.changes);
  const plans = new Map<string, Planned>();
  const planFrom = (steps: readonly Step[], setupsDone: readonly SetupId[], belief: Belief): Planned => {
    const key = JSON.stringify(steps);
    let known = plans.get(key);
    if (!known) {
      const posed = jobProblem({ ...job, steps, setupsDone }, belief);
      const search = new PlanSearch(posed.problem, posed.situation);
      search.run({ expansions: steps.length === 0 ? FIRST_EXPANSIONS : LATER_EXPANSIONS, gap: 0.01 });
      known = { posed, plan: search.plan() };
      plans.set(key, known);
    }
    return known;
  };
  return (car) => {
    let steps: readonly Step[] = [];
    let belief: Belief | undefined = beliefOf(job);
    let setups: readonly SetupId[] = [];
    let { posed, plan } = planFrom(steps, setups, belief);
    let foreseen = posed.situation.belief;
    while (!car.proven && plan.action >= 0) {
      const { action } = plan;
      const isCheck = action < posed.checks.length;
      const { setups: needed } = isCheck
        ? posed.problem.checks[action]!
        : posed.problem.repairs[action - posed.checks.length]!;
      setups = SETUPS.filter((id, bit) => setups.includes(id) || ((needed >>> bit) & 1) === 1);
      let next: Plan | undefined;
      if (isCheck) {
        const check = posed.checks[action]!;
        const outcome = car.check(check.id);
        steps = [...steps, { kind: 'check', id: check.id, entry: { outcome: check.outcomes[outcome]!.id } }];
        const byOutcome = check.outcomes.map((_, o) => (o === outcome ? 1 : 0));
        belief = afterResult(belief, check, { byOutcome }, figure);
        const after = checkOutcomes(posed.problem.checks[action]!.likelihood, foreseen);
        foreseen = after.find((one) => one.outcome === outcome)?.belief ?? foreseen;
        next = plan.next[outcome];
      } else {
        const { id } = posed.repairs[action - posed.checks.length]!;
        if (car.repair(id)) return;
        steps = [...steps, { kind: 'repair', id }];
        belief = afterFailedRepair(belief, id);
        next = undefined;
      }
      if (belief === undefined) break;
      if (next && shift(posed, foreseen, belief) < SHIFT) plan = next;
      else {
        ({ posed, plan } = planFrom(steps, setups, belief));
        foreseen = posed.situation.belief;
      }
    }
    // nothing that is believed is left: what was not tried yet, cheapest first
    for (const repair of [...posed.repairs].sort((a, b) => a.minutes - b.minutes))
      if (car.proven || car.repair(repair.id)) return;
  };
}

/** Half the sum of differences between what the plan foresaw and what is believed. */
function shift(posed: JobProblem, foreseen: Float64Array, belief: Belief): number {
  const believed = causeProbabilities(belief);
  let sum = 0;
  posed.causes.forEach((id, s) => {
    sum += Math.abs(foreseen[s]! - believed.find((cause) => cause.id === id)!.probability);
  });
  return sum / 2;
}

/** Parts alone, by probability over cost. */
export function orderPolicy(posed: JobProblem): Policy {
  const { belief, done, setups } = posed.situation;
  const { order } = new RepairOrders(posed.problem).order(belief, done, setups);
  const rest = posed.repairs.map((_, r) => r).filter((r) => !order.includes(r));
  return (car) => {
    for (const r of [...order, ...rest]) if (car.repair(posed.repairs[r]!.id)) return;
  };
}

export function chartPolicy(posed: JobProblem, chart: Chart): Policy {
  return (car) => {
    const done = new Set<string>();
    const follow = (step: ChartStep): void => {
      if (done.has(step.check) || !posed.checks.some((check) => check.id === step.check)) return;
      done.add(step.check);
      const outcome = posed.checks.find((check) => check.id === step.check)!.outcomes[car.check(step.check)]!.id;
      for (const next of step.on[outcome] ?? []) {
        if (car.proven) return;
        if (typeof next === 'string') car.repair(next);
        else follow(next);
      }
    };
    for (const step of chart.steps) {
      if (car.proven) return;
      follow(step);
    }
    for (const part of chart.parts) if (car.proven || car.repair(part)) return;
    if (!car.proven) throw new Error(`the flow chart ends before a car with ${car.cause} is sound`);
  };
}

/** Knows the cause and does the cheapest repair that removes it. */
export const clairvoyantPolicy =
  (posed: JobProblem): Policy =>
  (car) => {
    car.repair(posed.repairs.find((repair) => repair.fixes.includes(car.cause))!.id);
  };
