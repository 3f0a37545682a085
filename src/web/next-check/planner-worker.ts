/** Plans in the browser's own worker thread; each better plan is told as it is found. */
import type { JobState } from '../../checks/job-state.ts';
import { type Plan, planNext } from '../../checks/plan.ts';

export type PlannerAnswer = { readonly plan: Plan; readonly isLast: boolean } | { readonly error: string };

interface Port {
  onmessage: ((event: { readonly data: JobState }) => void) | null;
  postMessage(answer: PlannerAnswer): void;
}
const port = self as unknown as Port;

/** Time after which the plan in hand is the answer. */
const PATIENCE_MS = 2000;
const EXPANSIONS = 6000;

port.onmessage = ({ data: job }) => {
  const end = performance.now() + PATIENCE_MS;
  try {
    const answers = planNext(job, { expansions: EXPANSIONS, shouldStop: () => performance.now() > end });
    for (;;) {
      const { done, value } = answers.next();
      port.postMessage({ plan: value, isLast: done === true });
      if (done) return;
    }
  } catch (error) {
    port.postMessage({ error: error instanceof Error ? error.message : String(error) });
  }
};
