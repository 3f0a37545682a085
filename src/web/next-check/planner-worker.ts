/**
 * Plans in the browser's own worker thread; each better plan is told as it is found. Then the recordings that could be made
 * are played through on the simulator, one after the other, and join the plan as checks.
 */
import { causeProbabilities } from '../../checks/belief.ts';
import { beliefOf, type JobState } from '../../checks/job-state.ts';
import { type Plan, planNext } from '../../checks/plan.ts';
import { DRAWN_LAYOUTS } from '../../checks/simulated/candidates.ts';
import { type SimulatedRecording, simulateRecordings } from '../../checks/simulated/simulate-recordings.ts';
import { type RecordingWorth, worthOf } from '../../checks/simulated/worth.ts';
import type { Interval } from '../../diagnosis/finding.ts';

export interface PlannerQuestion {
  readonly job: JobState;
  /** Size of the hole as the finding has it, equivalent diameter in mm. */
  readonly diameterMm?: Interval;
}

/** How far the recordings are, and what each would settle. */
export interface PlayedRecordings {
  readonly done: number;
  /** Absent until the first is done: how many there are depends on the layout. */
  readonly isLast: boolean;
  readonly worth: readonly RecordingWorth[];
}

export type PlannerAnswer =
  | { readonly plan: Plan; readonly isLast: boolean }
  | { readonly played: PlayedRecordings }
  | { readonly error: string };

interface Port {
  onmessage: ((event: { readonly data: PlannerQuestion }) => void) | null;
  postMessage(answer: PlannerAnswer): void;
}
const port = self as unknown as Port;

/** Time after which the plan in hand is the answer. */
const PATIENCE_MS = 2000;
const EXPANSIONS = 20_000;

function answersWithin(job: JobState): Generator<Plan, Plan> {
  const end = performance.now() + PATIENCE_MS;
  return planNext(job, { expansions: EXPANSIONS, shouldStop: () => performance.now() > end });
}

function planAtOnce(job: JobState): void {
  const answers = answersWithin(job);
  for (;;) {
    const { done, value } = answers.next();
    port.postMessage({ plan: value, isLast: done === true });
    if (done) return;
  }
}

function withRecordings({ job, diameterMm }: PlannerQuestion): void {
  if (!DRAWN_LAYOUTS.includes(job.layout)) return;
  const causes = [...causeProbabilities(beliefOf(job))].sort((a, b) => b.probability - a.probability);
  const question = { layout: job.layout, causes, ...(diameterMm === undefined ? {} : { diameterMm }) };
  const recordings: SimulatedRecording[] = [];
  port.postMessage({ played: { done: 0, isLast: false, worth: [] } });
  for (const recording of simulateRecordings(question)) {
    recordings.push(recording);
    port.postMessage({ played: { done: recordings.length, isLast: false, worth: worthOf(recordings, causes) } });
  }
  if (recordings.length > 0) {
    const answers = answersWithin({ ...job, recordings });
    let answer = answers.next();
    while (!answer.done) answer = answers.next();
    port.postMessage({ plan: answer.value, isLast: true });
  }
  port.postMessage({ played: { done: recordings.length, isLast: true, worth: worthOf(recordings, causes) } });
}

port.onmessage = ({ data }) => {
  try {
    planAtOnce(data.job);
    withRecordings(data);
  } catch (error) {
    port.postMessage({ error: error instanceof Error ? error.message : String(error) });
  }
};
