import type { RecordingEntry } from '../../jobs/record/job.ts';
import type { SamplesHead } from '../../server/contract/samples.ts';
import type { PhaseRow } from './chart/boundaries.ts';

/** Phases by hand that leave no gap stand as they are; else the server has filled them up. */
export function phasesInUse({ phases }: RecordingEntry, head: SamplesHead, timeS: Float64Array): PhaseRow {
  if (phases === undefined) return head.foundPhases;
  const isWhole =
    phases.length > 0 &&
    phases.every((phase, k) => k === 0 || phase.fromS === phases[k - 1]!.toS) &&
    phases[0]!.fromS <= (timeS[0] ?? 0) &&
    phases.at(-1)!.toS >= (timeS.at(-1) ?? 0);
  return isWhole ? phases : head.phases;
}
