import type { Phase, PhaseKind } from './recording.ts';

/**
 * Joins equal labels of neighbouring samples into phases. A phase starts at the first sample with its
 * label and ends where the next starts, so the phases cover the recording without gap or overlap.
 */
export function joinLabels(timeS: Float64Array, labels: readonly PhaseKind[]): Phase[] {
  const phases: Phase[] = [];
  let start = 0;
  for (let i = 1; i <= labels.length; i++) {
    if (i < labels.length && labels[i] === labels[start]) continue;
    phases.push({ kind: labels[start]!, fromS: timeS[start]!, toS: i < labels.length ? timeS[i]! : timeS[i - 1]! });
    start = i;
  }
  return phases;
}
