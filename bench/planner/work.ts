/** One piece of the benchmark: one way of working through all jobs of one complaint. Runs in processes of its own. */
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

export const WAYS = [
  'planner',
  'planner, wrong by two',
  'flow chart',
  'probability over cost',
  'order, wrong by two',
  'clairvoyant',
] as const;
export type Way = (typeof WAYS)[number];

export interface Piece {
  readonly way: Way;
  /** Place among the complaints. */
  readonly complaint: number;
  readonly jobs: number;
  readonly moneyWeight: number;
}

/** Sending away is no way out here: every job goes on to a proven repair. */
const NEVER = 100_000;

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

const jobOf = (complaint: Complaint, moneyWeight: number, changes: Changes): JobState => ({
  ...NEW_JOB,
  complaints: [complaint],
  leftOut: ['T01', 'T02'],
  goal: { moneyWeight },
  changes: { ...changes, 'shop.unproven': NEVER },
});

/** The bills of all jobs, in the order of the cars: the same cars for every way of working. */
export function bills({ way, complaint, jobs, moneyWeight }: Piece): readonly Bill[] {
  const name = COMPLAINTS[complaint]!;
  const job = jobOf(name, moneyWeight, {});
  const posed = jobProblem(job, beliefOf(job));
  const wrong = jobOf(name, moneyWeight, wrongByTwo(complaint + 1));
  const policies: Record<Way, () => Policy> = {
    planner: () => plannerPolicy(job),
    'planner, wrong by two': () => plannerPolicy(wrong),
    'flow chart': () => chartPolicy(posed, FLOW_CHART[name]),
    'probability over cost': () => orderPolicy(posed),
    'order, wrong by two': () => orderPolicy(jobProblem(wrong, beliefOf(wrong))),
    clairvoyant: () => clairvoyantPolicy(posed),
  };
  const figure = figureValues();
  const priors = rootCausePriors(job, figure);
  const work = policies[way]();
  return Array.from({ length: jobs }, (_, i) => {
    const car = new Car(posed, priors, figure, 1_000_003 * (complaint + 1) + i);
    work(car);
    return car.bill;
  });
}

// in a process of its own: one piece after the other, as they are asked for
if (process.send) process.on('message', (piece: Piece) => process.send?.(bills(piece)));
