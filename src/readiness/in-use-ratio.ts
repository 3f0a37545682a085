import type { InUseCounters } from '../recording/bus/vehicle-information.ts';

/** Least ratios of 13 CCR 1968.2(d)(3.2.1), from memory; never a limit shown without that mark. */
export const LEAST_RATIO_SMALL_LEAK = 0.26;
export const LEAST_RATIO_PURGE_AND_LARGE_LEAK = 0.52;

export interface InUseRatio {
  readonly completed: number;
  readonly eligible: number;
  /** Absent when the denominator is zero: no data. */
  readonly ratio?: number;
  readonly words: string;
}

/** In-use ratio of the evaporative monitor; the counters are those of the 0.5 mm (0.020 in) monitor. Absent: not reported. */
export function evapInUseRatio(counters: InUseCounters | undefined): InUseRatio | undefined {
  const completed = counters?.EVAPCOMP;
  const eligible = counters?.EVAPCOND;
  if (completed === undefined || eligible === undefined) return undefined;
  if (eligible === 0)
    return { completed, eligible, words: `no data: ${completed} completed, and no drive yet that counts` };
  const ratio = completed / eligible;
  return {
    completed,
    eligible,
    ratio,
    words: `${completed} of ${eligible} drives that count: ${ratio.toFixed(3)} (the rule asks ${LEAST_RATIO_SMALL_LEAK.toFixed(3)} of the 0.5 mm (0.020 in) monitor, from memory); healthy cars too test on some drives only`,
  };
}
