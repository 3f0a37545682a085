import { useEffect, useState } from 'react';
import type { JobState } from '../../checks/job-state.ts';
import type { Plan } from '../../checks/plan.ts';
import type { PlannerAnswer } from './planner-worker.ts';

export interface Planned {
  /** The job state that this plan belongs to. */
  readonly key: string;
  readonly plan: Plan | null;
  readonly isLast: boolean;
  readonly error: string | null;
}

const NOTHING: Planned = { key: '', plan: null, isLast: false, error: null };

/** The plan for a job as it stands, better as it goes on; a new state ends what was being worked out for the old one. */
export function usePlan(job: JobState | null): Planned {
  const key = job === null ? '' : JSON.stringify(job);
  const [planned, setPlanned] = useState<Planned>(NOTHING);
  useEffect(() => {
    if (key === '') return;
    const worker = new Worker(new URL('./planner-worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<PlannerAnswer>) => {
      if ('error' in data) setPlanned({ key, plan: null, isLast: true, error: data.error });
      else setPlanned({ key, plan: data.plan, isLast: data.isLast, error: null });
    };
    worker.onerror = (event) => setPlanned({ key, plan: null, isLast: true, error: event.message });
    worker.postMessage(JSON.parse(key) as JobState);
    return () => worker.terminate();
  }, [key]);
  return planned.key === key ? planned : { ...NOTHING, key };
}
