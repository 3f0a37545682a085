/** Hand checks as the finding takes them: one log-likelihood for each cause that a check says something of. */
import type { HandCheck } from '../../diagnosis/diagnose.ts';
import { CAUSES, type CauseId } from '../../diagnosis/finding.ts';
import { CHECK_LIKELIHOOD_RATIO } from '../../jobs/record/check-weights.ts';
import type { CheckResult } from '../../jobs/record/job.ts';

type Weighed = Pick<CheckResult, 'speaksFor' | 'speaksAgainst' | 'strength'>;

/** Checks are taken as independent of each other, as a person who wrote each down meant them. */
export function handChecksFrom(checks: readonly Weighed[]): readonly HandCheck[] {
  const sums = new Map<CauseId, number>();
  const add = (cause: CauseId, value: number) => sums.set(cause, (sums.get(cause) ?? 0) + value);
  for (const { speaksFor, speaksAgainst, strength } of checks) {
    const weight = Math.log(CHECK_LIKELIHOOD_RATIO[strength]);
    for (const cause of new Set(speaksFor)) add(cause, weight);
    for (const cause of new Set(speaksAgainst)) add(cause, -weight);
  }
  return CAUSES.filter((cause) => (sums.get(cause) ?? 0) !== 0).map((cause) => ({
    cause,
    logLikelihood: sums.get(cause) ?? 0,
  }));
}
