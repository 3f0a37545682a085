/**
 * Simulated jobs to a proven repair: the planner against a fixed flow chart, against parts by probability over cost, and
 * against one who knows the fault; then the same with priors and error rates that are wrong by a factor of two.
 *
 *   node scripts/bench.mjs planner [JOBS] [MONEY WEIGHT]
 */

import { CHECKS } from '../../src/checks/catalogue/all.ts';
import type { Changes } from '../../src/checks/figure.ts';
import { checkKey, DEFAULT_FIGURES, figureValues } from '../../src/checks/figures.ts';
import { jobProblem } from '../../src/checks/job-problem.ts';
import { beliefOf, type JobState, NEW_JOB } from '../../src/checks/job-state.ts';
import { rootCausePriors } from '../../src/checks/root-cause-priors.ts';
import { COMPLAINTS, type Complaint } from '../../src/diagnosis/priors/root-causes.ts';
import { randomStream } from '../../src/simulation/random.ts';
import { FLOW_CHART } from './flow-chart.ts';
import { chartPolicy, clairvoyantPolicy, orderPolicy, type Policy, plannerPolicy } from './policies.ts';
import { type Bill, Car } from './world.ts';

/** How often each complaint brings a car; judgement, as in the finding's priors. */
const SHARE = [0.2, 0.22, 0.22, 0.08, 0.05, 0.07, 0.06, 0.03, 0.03, 0.02, 0.02];
/** Sending away is no way out here: every job goes on to a proven repair. */
const NEVER = 100_000;

const jobs = Number(process.argv[2] ?? 10_000);
const moneyWeight = Number(process.argv[3] ?? 1);
if (!Number.isInteger(jobs) || jobs < 1 || !(moneyWeight >= 0 && moneyWeight <= 1)) {
  process.stderr.write('vaporwright: give a number of jobs of 1 or more, and a money weight from 0 to 1\n');
  process.exit(2);
}

/** Priors, misses and false alarms, each doubled or halved by chance. */
function wrongByTwo(seed: number): Changes {
  const random = randomStream(seed, 7);
  const factor = () => (random.uniform() < 0.5 ? 0.5 : 2);
  const changes: Record<string, number> = {};
  for (const figure of DEFAULT_FIGURES) {
    if (figure.key.startsWith('prior.')) changes[figure.key] = Math.min(1, figure.value * factor());
  }
  const figure = figureValues();
  for (const { id } of CHECKS) {
    for (const what of ['sensitivity', 'specificity'] as const) {
      changes[checkKey(id, what)] = Math.min(0.999, Math.max(0.05, 1 - (1 - figure(checkKey(id, what))) * factor()));
    }
  }
  return changes;
}

const jobOf = (complaint: Complaint, changes: Changes): JobState => ({
  ...NEW_JOB,
  complaints: [complaint],
  leftOut: ['T01', 'T02'],
  goal: { moneyWeight },
  changes: { ...changes, 'shop.unproven': NEVER },
});

const WAYS = [
  'planner',
  'planner, wrong by two',
  'flow chart',
  'probability over cost',
  'order, wrong by two',
  'clairvoyant',
] as const;
type Way = (typeof WAYS)[number];
const bills: Record<Way, Bill[]> = Object.fromEntries(WAYS.map((way) => [way, [] as Bill[]])) as Record<Way, Bill[]>;
const rate = figureValues()('shop.rate');

const started = process.cpuUsage();
COMPLAINTS.forEach((complaint, c) => {
  const job = jobOf(complaint, {});
  const posed = jobProblem(job, beliefOf(job));
  const figure = figureValues();
  const wrongJob = jobOf(complaint, wrongByTwo(c + 1));
  const wrong = jobProblem(wrongJob, beliefOf(wrongJob));
  const policies: Record<Way, Policy> = {
    planner: plannerPolicy(job),
    'planner, wrong by two': plannerPolicy(wrongJob),
    'flow chart': chartPolicy(posed, FLOW_CHART[complaint]),
    'probability over cost': orderPolicy(posed),
    'order, wrong by two': orderPolicy(wrong),
    clairvoyant: clairvoyantPolicy(posed),
  };
  const priors = rootCausePriors(job, figure);
  const count = Math.round(jobs * SHARE[c]!);
  for (const way of WAYS) {
    for (let i = 0; i < count; i++) {
      // the same cars for every way of working
      const car = new Car(posed, priors, figure, 1_000_003 * (c + 1) + i);
      policies[way](car);
      bills[way].push(car.bill);
    }
  }
  process.stderr.write(`${complaint}: ${count} jobs\n`);
});
const cpuS = process.cpuUsage(started).user / 1e6;

const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
const p90 = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(0.9 * values.length)]!;
const rows = WAYS.map((way) => {
  const list = bills[way];
  const minutes = list.map((b) => b.minutes);
  const money = list.map((b) => (b.minutes * rate) / 60 + b.goods);
  return {
    way,
    minutesMean: mean(minutes),
    minutesP90: p90(minutes),
    moneyMean: mean(money),
    moneyP90: p90(money),
    waitMean: mean(list.map((b) => b.waitMinutes)),
    needlessParts: mean(list.map((b) => b.needlessParts)),
    needlessTanks: mean(list.map((b) => b.needlessTanks)),
  };
});
console.log(`${bills.planner.length} jobs, money weight ${moneyWeight}, shop rate ${rate}/h`);
console.log(
  `${'way of working'.padEnd(24)}${['min mean', 'min p90', 'money mean', 'money p90', 'wait min', 'parts', 'tanks'].map((h) => h.padStart(12)).join('')}`,
);
for (const r of rows) {
  const numbers = [r.minutesMean, r.minutesP90, r.moneyMean, r.moneyP90, r.waitMean].map((v) =>
    v.toFixed(0).padStart(12),
  );
  const counts = [r.needlessParts, r.needlessTanks].map((v) => v.toFixed(3).padStart(12));
  console.log(`${r.way.padEnd(24)}${[...numbers, ...counts].join('')}`);
}
console.log(JSON.stringify({ bench: 'planner', jobs: bills.planner.length, moneyWeight, cpuS, rows }));
