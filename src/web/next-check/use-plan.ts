import { useEffect, useState } from 'react';
import type { Plan } from '../../checks/plan.ts';
import type { PlannerAnswer, PlannerQuestion, PlayedRecordings } from './planner-worker.ts';

export interface Planned {
  /** The question that this plan belongs to. */
  readonly key: string;
  readonly plan: Plan | null;
  readonly isLast: boolean;
  /** Recordings that could be made; absent where none are played. */
  readonly played: PlayedRecordings | null;
  readonly error: string | null;
}

const NOTHING: Planned = { key: '', plan: null, isLast: false, played: null, error: null };

/** The plan for a job as it stands, better as it goes on; a new state ends what was being worked out for the old one. */
export function usePlan(question: PlannerQuestion | null): Planned {
  const key = question === null ? '' : JSON.stringify(question);
  const [planned, setPlanned] = useState<Planned>(NOTHING);
  useEffect(() => {
    if (key === '') return;
    const worker = new Worker(new URL('./planner-worker.ts', import.meta.url), { type: 'module' });
    const take = (change: Partial<Planned>): void =>
      setPlanned((before) => ({ ...(before.key === key ? before : NOTHING), ...change, key }));
    worker.onmessage = ({ data }: MessageEvent<PlannerAnswer>) => {
      if ('error' in data) take({ isLast: true, error: data.error });
      else if ('played' in data) take({ played: data.played });
      else take({ plan: data.plan, isLast: data.isLast });
    };
    worker.onerror = (event) => take({ isLast: true, error: event.message });
    worker.postMessage(JSON.parse(key) as PlannerQuestion);
    return () => worker.terminate();
  }, [key]);
  return planned.key === key ? planned : { ...NOTHING, key };
}
