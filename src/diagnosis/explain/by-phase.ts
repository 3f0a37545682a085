/** Which phase speaks for a cause: the misfit that its rival has there and it has not. */
import type { PhaseEvidence } from '../finding.ts';
import type { Prepared } from '../prepare.ts';
import type { Weighed } from '../weighing/weighed.ts';

/**
 * @param cause the cause in question
 * @param rival what it is held against
 * @param prepared the fitted recordings
 * @param indices their place in the list that the user gave
 * @returns gain in log likelihood by recording and phase, positive for the cause
 */
export function evidenceByPhase(
  cause: Weighed,
  rival: Weighed,
  prepared: readonly Prepared[],
  indices: readonly number[],
): PhaseEvidence[] {
  const list: PhaseEvidence[] = [];
  let at = 0;
  prepared.forEach((p, r) => {
    const sums = new Map<PhaseEvidence['phase'], number>();
    p.observations.phase.forEach((phase, k) => {
      const own = cause.fit.residuals[at + k]!;
      const other = rival.fit.residuals[at + k]!;
      sums.set(phase, (sums.get(phase) ?? 0) + 0.5 * (other * other - own * own));
    });
    for (const [phase, logEvidence] of sums) list.push({ recording: indices[r]!, phase, logEvidence });
    at += p.observations.phase.length;
  });
  return list;
}
