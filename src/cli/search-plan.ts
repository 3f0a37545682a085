/** The search for a plan, as long as it may take; recordings that could be made are played before it. */
import { causeProbabilities } from '../checks/belief.ts';
import { beliefOf, type JobState } from '../checks/job-state.ts';
import { type Plan, plan } from '../checks/plan.ts';
import { simulateRecordings } from '../checks/simulated/simulate-recordings.ts';
import type { ThreadTasks } from './thread-tasks.ts';

/** Far more points than any search opens in the time that a person waits. */
const MOST_EXPANSIONS = 100_000;

/** Plays what could be recorded next; some seconds of work. */
function withRecordings(state: JobState): JobState {
  const causes = [...causeProbabilities(beliefOf(state))].sort((a, b) => b.probability - a.probability);
  return { ...state, recordings: [...simulateRecordings({ layout: state.layout, causes })] };
}

export function searchPlan({ state, seconds, recordings }: ThreadTasks['plan']['task']): Plan {
  const asked = recordings ? withRecordings(state) : state;
  const until = performance.now() + seconds * 1000;
  return plan(asked, { expansions: MOST_EXPANSIONS, shouldStop: () => performance.now() > until });
}
