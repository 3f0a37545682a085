/** What the checks done so far say of the finding's own causes, so that the finding can take them in. */
import { CAUSES, type CauseId } from '../diagnosis/finding.ts';
import { causeProbabilities } from './belief.ts';
import { beliefOf, type JobState } from './job-state.ts';
import { ROOT_CAUSES } from './root-causes.ts';

export interface FindingFactor {
  readonly cause: CauseId;
  /** Natural log of how much more the results are to be expected under this cause than on the whole. */
  readonly logLikelihood: number;
}

/** A result never rules a cause of the finding out for good: what it looks like to the recordings may have another root. */
const LEAST_FACTOR = 0.01;

export function findingFactors(job: JobState): readonly FindingFactor[] {
  const before = causeProbabilities(beliefOf({ ...job, steps: [] }));
  const after = causeProbabilities(beliefOf(job));
  return CAUSES.flatMap((cause): FindingFactor[] => {
    let prior = 0;
    let posterior = 0;
    ROOT_CAUSES.forEach(({ looks }, i) => {
      const share = looks[cause] ?? 0;
      prior += before[i]!.probability * share;
      posterior += after[i]!.probability * share;
    });
    if (prior <= 0) return [];
    return [{ cause, logLikelihood: Math.log(Math.max(LEAST_FACTOR, posterior / prior)) }];
  });
}
