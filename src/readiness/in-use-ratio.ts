import type { InUseCounters } from '../recording/bus/vehicle-information.ts';

/**
 * Least ratio of the 0.5 mm (0.020 in) monitor, 13 CCR 1968.2(d)(3.2.1), from memory; never shown without that mark. The 0.520
 * of purge flow and the 1.0 mm (0.040 in) monitor is not what the counters report.
 */
export const LEAST_RATIO_SMALL_LEAK = 0.26;

export interface InUseRatio {
  readonly completed: number;
  readonly eligible: number;
  /** Absent when the denominator is zero: no data. */
  readonly ratio?: number;
}

/** In-use ratio of the evaporative monitor; the counters are those of the 0.5 mm (0.020 in) monitor. Absent: not reported. */
export function evapInUseRatio(counters: InUseCounters | undefined): InUseRatio | undefined {
  const completed = counters?.EVAPCOMP;
  const eligible = counters?.EVAPCOND;
  if (completed === undefined || eligible === undefined) return undefined;
  return { completed, eligible, ...(eligible === 0 ? {} : { ratio: completed / eligible }) };
}
