import type { CounterName, InUseCounters } from '../recording/bus/vehicle-information.ts';

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

/** Monitors that are counted, bank by bank where they are; SO2S: the second oxygen sensors. */
const COUNTED = {
  EVAP: ['EVAPCOMP', 'EVAPCOND'],
  CAT1: ['CATCOMP1', 'CATCOND1'],
  CAT2: ['CATCOMP2', 'CATCOND2'],
  O2S1: ['O2SCOMP1', 'O2SCOND1'],
  O2S2: ['O2SCOMP2', 'O2SCOND2'],
  SO2S1: ['SO2SCOMP1', 'SO2SCOND1'],
  SO2S2: ['SO2SCOMP2', 'SO2SCOND2'],
  EGR: ['EGRCOMP', 'EGRCOND'],
  AIR: ['AIRCOMP', 'AIRCOND'],
} as const satisfies Record<string, readonly [completed: CounterName, eligible: CounterName]>;
export type Counted = keyof typeof COUNTED;

function ratioOf(counters: InUseCounters | undefined, of: Counted): InUseRatio | undefined {
  const [completed, eligible] = COUNTED[of].map((name) => counters?.[name]);
  if (completed === undefined || eligible === undefined) return undefined;
  return { completed, eligible, ...(eligible === 0 ? {} : { ratio: completed / eligible }) };
}

/** Counters and ratio of every monitor that is reported, the evaporative one first. */
export const inUseRatios = (counters: InUseCounters | undefined): readonly (InUseRatio & { readonly of: Counted })[] =>
  (Object.keys(COUNTED) as Counted[]).flatMap((of) => {
    const ratio = ratioOf(counters, of);
    return ratio === undefined ? [] : [{ of, ...ratio }];
  });

/** In-use ratio of the evaporative monitor; the counters are those of the 0.5 mm (0.020 in) monitor. Absent: not reported. */
export const evapInUseRatio = (counters: InUseCounters | undefined): InUseRatio | undefined =>
  ratioOf(counters, 'EVAP');
