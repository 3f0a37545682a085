/** Where a job stands for the planner, as plain data that can be stored; and what is believed from it. */
import type { CauseProbability, Interval } from '../diagnosis/finding.ts';
import type { Complaint } from '../diagnosis/priors/root-causes.ts';
import type { LayoutId } from '../system/car.ts';
import { afterFailedRepair, afterResult, type Belief, startBelief } from './belief.ts';
import { checkById } from './catalogue/all.ts';
import type { CircumstanceId } from './circumstances.ts';
import type { Changes } from './figure.ts';
import { jobFigures } from './job-figures.ts';
import { type CheckEntry, readEntry } from './read-entry.ts';
import type { RepairId } from './repairs.ts';
import { rootCausePriors, rootCausesFromFinding } from './root-cause-priors.ts';
import type { SetupId } from './setups.ts';
import type { SimulatedRecording } from './simulated/simulate-recordings.ts';

/** How time and money are weighed. */
export interface Goal {
  /** 0: working minutes alone count; 1: the whole bill, labour and parts, as minutes at the shop's rate. */
  readonly moneyWeight: number;
}

export type Step =
  | { readonly kind: 'check'; readonly id: string; readonly entry: CheckEntry }
  /** A repair whose verification failed. */
  | { readonly kind: 'repair'; readonly id: RepairId };

/** What the planner needs of a finding; a whole finding fits. */
export interface FoundCauses {
  readonly causes: readonly Pick<CauseProbability, 'id' | 'probability' | 'places'>[];
  /** Equivalent diameter of the hole, mm; null or absent where no hole is sized. */
  readonly diameterMm?: Interval | null;
}

/** The hole as far as the finding sizes it, mm. */
export const holeOfJob = ({ finding }: Pick<JobState, 'finding'>): Interval | undefined =>
  finding?.diameterMm ?? undefined;

export interface JobState {
  readonly layout: LayoutId;
  readonly complaints: readonly Complaint[];
  readonly codes: readonly string[];
  readonly circumstances: readonly CircumstanceId[];
  /** Made without the results in `steps`, which would count twice. Absent: no recording yet, the priors alone. */
  readonly finding?: FoundCauses;
  /** Done so far, in order. */
  readonly steps: readonly Step[];
  /** Checks that the shop cannot do or that are already in the finding. */
  readonly leftOut: readonly string[];
  readonly setupsDone: readonly SetupId[];
  /** Recordings that could be made, as simulated for this job; they are not stored with it. */
  readonly recordings?: readonly SimulatedRecording[];
  readonly goal: Goal;
  readonly changes: Changes;
}

export const NEW_JOB: JobState = {
  layout: 'engine-vacuum',
  complaints: [],
  codes: [],
  circumstances: [],
  steps: [],
  leftOut: [],
  setupsDone: [],
  goal: { moneyWeight: 1 },
  changes: {},
};

/** Belief after all steps. Throws, naming the step, on a result that cannot be read or that nothing believed can give. */
export function beliefOf(job: JobState): Belief {
  const figure = jobFigures(job.changes, holeOfJob(job));
  const causes = job.finding ? rootCausesFromFinding(job.finding, job, figure) : rootCausePriors(job, figure);
  let belief = startBelief(causes, figure);
  job.steps.forEach((step, i) => {
    let next: Belief | undefined;
    if (step.kind === 'repair') next = afterFailedRepair(belief, step.id);
    else {
      const read = readEntry(step.id, step.entry);
      if (!read.ok) {
        throw new RangeError(`step ${i + 1}, ${step.id}: ${read.problems.map((problem) => problem.text).join('; ')}`);
      }
      next = afterResult(belief, checkById(step.id), read.weights, figure);
    }
    if (next === undefined) {
      throw new RangeError(
        `step ${i + 1}, ${step.id}: after this nothing that the planner knows can be wrong with the car; look for a second fault or a mistaken result`,
      );
    }
    belief = next;
  });
  return belief;
}
