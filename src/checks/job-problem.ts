/** A job as a troubleshooting problem in numbers, with the way back to names, minutes and money. */
import { columnsOf } from '../diagnosis/priors/root-causes.ts';
import { type Belief, causeProbabilities, expectedChances } from './belief.ts';
import { CHECKS, checkById } from './catalogue/all.ts';
import type { Check } from './check.ts';
import { checkKey } from './figures.ts';
import { jobFigures } from './job-figures.ts';
import { holeOfJob, type JobState } from './job-state.ts';
import type { PlanCheck, PlanProblem, PlanRepair, Situation } from './planner/problem.ts';
import { startOf } from './planner/problem.ts';
import { REPAIRS, type Repair, repairMinutesKey, repairPartsKey, VERIFY_SETUPS } from './repairs.ts';
import { ROOT_CAUSES, type RootCauseId } from './root-causes.ts';
import { SETUPS, setupBits, setupKey } from './setups.ts';
import type { SimulatedRecording } from './simulated/simulate-recordings.ts';

/** Working minutes and bought goods of a step or a plan. */
export interface Price {
  readonly minutes: number;
  /** Minutes that the car merely stands. */
  readonly waitMinutes: number;
  /** Parts and consumables. */
  readonly goods: number;
}

export interface JobProblem {
  readonly problem: PlanProblem;
  readonly situation: Situation;
  /** Root cause of each state. */
  readonly causes: readonly RootCauseId[];
  readonly checks: readonly Check[];
  readonly repairs: readonly Repair[];
  /** By action, checks first; set-ups not counted. */
  readonly prices: readonly Price[];
  readonly setupPrices: readonly Price[];
  readonly ratePerMinute: number;
  /** By state, what a car sent away with it still costs: its repair with all set-ups, and the price of being unproven. */
  readonly sentAway: readonly Price[];
}

/** Root causes less likely than this are left to the send-away; together they are a few hours' thousandths. */
const NEGLIGIBLE = 1e-5;

/** Why a check is not offered, or nothing. */
export function notOffered(
  check: Check,
  job: JobState,
): 'verifies' | 'left out' | 'layout' | 'complaint' | 'known' | undefined {
  if (check.verifies) return 'verifies';
  if (job.leftOut.includes(check.id)) return 'left out';
  if (check.layouts && !check.layouts.includes(job.layout)) return 'layout';
  const told = columnsOf(job.complaints, job.codes);
  if (check.complaints && !check.complaints.some((c) => told.includes(c))) return 'complaint';
  // codes that are known have been read, and complaint or circumstances have been asked for
  if (check.id === 'T01' && job.codes.length > 0) return 'known';
  if (check.id === 'T02' && (job.circumstances.length > 0 || job.complaints.length > 0)) return 'known';
  return undefined;
}

/** A cause that was not played may show anything. */
const simulatedChances = ({ chances, outcomes }: SimulatedRecording, cause: RootCauseId): readonly number[] =>
  chances[cause] ?? outcomes.map(() => 1 / outcomes.length);

/**
 * A car sent away unproven has not got rid of its fault: it comes back for the repair, from the beginning, and costs besides
 * what the shop pays for having sent it away.
 */
function stillToPay(cause: RootCauseId, repairPrices: readonly Price[], figure: (key: string) => number): Price {
  const whole = REPAIRS.flatMap((repair, r): Price[] => {
    if (!repair.fixes.includes(cause)) return [];
    const setups = new Set([...repair.setups, ...VERIFY_SETUPS[repair.verifiedBy]]);
    const setupMinutes = [...setups].reduce((sum, id) => sum + figure(setupKey(id)), 0);
    const { minutes, waitMinutes, goods } = repairPrices[r]!;
    return [{ minutes: figure('shop.unproven') + minutes + setupMinutes, waitMinutes, goods }];
  });
  return whole.reduce((a, b) => (b.minutes < a.minutes ? b : a));
}

export function jobProblem(job: JobState, belief: Belief): JobProblem {
  const figure = jobFigures(job.changes, holeOfJob(job));
  const ratePerMinute = figure('shop.rate') / 60;
  const waiting = figure('shop.waiting');
  const cost = (price: Price): number =>
    price.minutes + waiting * price.waitMinutes + (job.goal.moneyWeight * price.goods) / ratePerMinute;

  const believed = causeProbabilities(belief);
  const states = believed.flatMap(({ probability }, i) => (probability > NEGLIGIBLE ? [i] : []));
  const total = states.reduce((sum, i) => sum + believed[i]!.probability, 0);
  const causes = states.map((i) => ROOT_CAUSES[i]!.id);

  const doneChecks = new Set(job.steps.flatMap((step) => (step.kind === 'check' ? [step.id] : [])));
  const doneRepairs = new Set(job.steps.flatMap((step) => (step.kind === 'repair' ? [step.id as string] : [])));
  const checks = CHECKS.filter((check) => doneChecks.has(check.id) || notOffered(check, job) === undefined);
  const simulated = job.recordings ?? [];
  checks.push(
    ...simulated
      .filter(({ id }) => !job.leftOut.includes(id))
      .map(({ id, outcomes }) => ({ ...checkById(id), outcomes })),
  );
  const prices: Price[] = [];

  const planChecks = checks.map((check): PlanCheck => {
    const price: Price = {
      minutes: figure(checkKey(check.id, 'minutes')),
      waitMinutes: figure(checkKey(check.id, 'wait')),
      goods: figure(checkKey(check.id, 'consumables')) * figure('shop.rate'),
    };
    prices.push(price);
    const played = simulated.find(({ id }) => id === check.id);
    const chances = states.map((i) =>
      played ? simulatedChances(played, ROOT_CAUSES[i]!.id) : expectedChances(belief, check, i, figure),
    );
    return {
      id: check.id,
      cost: cost(price),
      setups: setupBits(check.setups),
      // a check that is left out cannot be waited for
      after: check.after.flatMap((id) => {
        const j = checks.findIndex((other) => other.id === id);
        return j < 0 ? [] : [j];
      }),
      likelihood: check.outcomes.map((_, o) => Float64Array.from(chances, (p) => p[o]!)),
    };
  });
  const planRepairs = REPAIRS.map((repair): PlanRepair => {
    const price: Price = {
      minutes: figure(repairMinutesKey(repair.id)) + figure(checkKey(repair.verifiedBy, 'minutes')),
      waitMinutes: 0,
      goods: figure(repairPartsKey(repair.id)) * figure('shop.rate'),
    };
    prices.push(price);
    return {
      id: repair.id,
      cost: cost(price),
      setups: setupBits([...repair.setups, ...VERIFY_SETUPS[repair.verifiedBy]]),
      fixes: Uint8Array.from(causes, (id) => (repair.fixes.includes(id) ? 1 : 0)),
    };
  });
  const sentAway = causes.map((cause) => stillToPay(cause, prices.slice(planChecks.length), figure));
  const problem: PlanProblem = {
    states: states.length,
    checks: planChecks,
    repairs: planRepairs,
    ends: [{ id: 'send away unproven', cost: Float64Array.from(sentAway, cost) }],
    setupCosts: SETUPS.map((id) => figure(setupKey(id))),
  };
  const situation = startOf(
    problem,
    Float64Array.from(states, (i) => believed[i]!.probability / total),
    setupBits(job.setupsDone),
  );
  planChecks.forEach((check, k) => {
    if (doneChecks.has(check.id)) situation.done[k] = 1;
  });
  planRepairs.forEach((repair, r) => {
    if (doneRepairs.has(repair.id)) situation.done[planChecks.length + r] = 1;
  });
  return {
    problem,
    situation,
    causes,
    checks,
    repairs: REPAIRS,
    prices,
    setupPrices: SETUPS.map((id) => ({ minutes: figure(setupKey(id)), waitMinutes: 0, goods: 0 })),
    ratePerMinute,
    sentAway,
  };
}
