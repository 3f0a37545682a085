import { useState } from 'react';
import { keep, readKept } from '../text/language.ts';
import { FIRST_WISHES, type PlanWishes } from './state-of-job.ts';

const keyOf = (jobId: string): string => `vaporwright.plan.${jobId}`;

function kept(jobId: string): PlanWishes {
  try {
    return { ...FIRST_WISHES, ...(JSON.parse(readKept(keyOf(jobId)) ?? '{}') as Partial<PlanWishes>) };
  } catch {
    return FIRST_WISHES;
  }
}

/** What counts for this job and what cannot be done here: kept on this device, it is no fact of the car. */
export function useWishes(jobId: string): [PlanWishes, (change: Partial<PlanWishes>) => void] {
  const [wishes, setWishes] = useState(() => kept(jobId));
  const change = (part: Partial<PlanWishes>): void => {
    const next = { ...wishes, ...part };
    keep(keyOf(jobId), JSON.stringify(next));
    setWishes(next);
  };
  return [wishes, change];
}
