/** Ways of working through a job: the planner, the flow chart, parts by probability over cost, and one who knows. */
import type { JobProblem } from '../../src/checks/job-problem.ts';
import { checkOutcomes, type PlanNode } from '../../src/checks/planner/node.ts';
import type { Situation } from '../../src/checks/planner/problem.ts';
import { repairOrder } from '../../src/checks/planner/repair-order.ts';
import { PlanSearch } from '../../src/checks/planner/search.ts';
import type { Chart, ChartStep } from './flow-chart.ts';
import type { Car } from './world.ts';

export type Policy = (car: Car) => void;

/** Points opened at the start of a complaint, and where a job leaves the plan. */
const FIRST_EXPANSIONS = 600;
const LATER_EXPANSIONS = 120;

/** Follows the plan; where it ends or a result leaves it, plans anew. Plans are kept by what was done and seen. */
export function plannerPolicy(posed: JobProblem): Policy {
  const plans = new Map<string, PlanNode>();
  const planFrom = (situation: Situation): PlanNode => {
    const key = String.fromCharCode(...situation.done);
    let known = plans.get(key);
    if (!known) {
      const search = new PlanSearch(posed.problem, situation);
      search.run({ expansions: plans.size === 0 ? FIRST_EXPANSIONS : LATER_EXPANSIONS, gap: 0.01 });
      known = search.root;
      plans.set(key, known);
    }
    return known;
  };
  return (car) => {
    let node = planFrom(posed.situation);
    while (!car.proven) {
      if (!node.best && node.stop.order.length > 0 && !node.edges) node = planFrom(node);
      const action = node.best?.action ?? posed.checks.length + (node.stop.order[0] ?? Number.NaN);
      if (!Number.isInteger(action)) throw new Error('the plan ends before the car is sound');
      if (action >= posed.checks.length) {
        if (car.repair(posed.repairs[action - posed.checks.length]!.id)) return;
        const after = node.best?.branches[0]?.node;
        node = after ?? planFrom(failedSituation(posed, node, action));
      } else {
        const outcome = car.check(posed.checks[action]!.id);
        const branch = node.best!.branches.find((b) => b.outcome === outcome);
        node = branch?.node ?? planFrom(seenSituation(posed, node, action, outcome));
      }
    }
  };
}

function failedSituation(posed: JobProblem, at: Situation, action: number): Situation {
  const { fixes, setups } = posed.problem.repairs[action - posed.checks.length]!;
  const left = Float64Array.from(at.belief, (b, s) => (fixes[s] === 1 ? 0 : b));
  const p = left.reduce((a, b) => a + b, 0);
  const done = Uint8Array.from(at.done);
  done[action] = 1;
  // nothing left that is believed: every cause not tried is as likely again
  const belief = p > 1e-12 ? left.map((b) => b / p) : evenOver(posed, done);
  return { belief, done, setups: at.setups | setups };
}

function seenSituation(posed: JobProblem, at: Situation, action: number, outcome: number): Situation {
  const check = posed.problem.checks[action]!;
  const done = Uint8Array.from(at.done);
  done[action] = 1 + outcome;
  const seen = checkOutcomes(check.likelihood, at.belief).find((o) => o.outcome === outcome);
  return { belief: seen?.belief ?? at.belief, done, setups: at.setups | check.setups };
}

function evenOver(posed: JobProblem, done: Uint8Array): Float64Array {
  const open = Float64Array.from({ length: posed.problem.states }, (_, s) =>
    posed.problem.repairs.some((repair, r) => repair.fixes[s] === 1 && done[posed.checks.length + r] === 0) ? 1 : 0,
  );
  const total = open.reduce((a, b) => a + b, 0);
  return open.map((x) => x / total);
}

/** Parts alone, by probability over cost. */
export function orderPolicy(posed: JobProblem): Policy {
  const { order } = repairOrder(posed.problem, posed.situation.belief, () => true, posed.situation.setups);
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
