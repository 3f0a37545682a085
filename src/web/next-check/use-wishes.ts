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

const MISSING = 'vaporwright.not-at-hand';

/** Equipment that the shop has not: kept on this device for all jobs. */
export function useMissing(): [readonly string[], (missing: readonly string[]) => void] {
  const [missing, setMissing] = useState<readonly string[]>(() => {
    try {
      const kept: unknown = JSON.parse(readKept(MISSING) ?? '[]');
      return Array.isArray(kept) ? kept.filter((name) => typeof name === 'string') : [];
    } catch {
      return [];
    }
  });
  const change = (next: readonly string[]): void => {
    keep(MISSING, JSON.stringify(next));
    setMissing(next);
  };
  return [missing, change];
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
