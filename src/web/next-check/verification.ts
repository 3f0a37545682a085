/** What a repair on record still waits for. Pure. */
import { checkById } from '../../checks/catalogue/all.ts';
import type { Job } from '../../jobs/record/job.ts';
import { newestFinding } from '../../jobs/record/proof-of-job.ts';
import type { LayoutId } from '../../system/car.ts';
import { isDisproved, proves, verificationOf } from './failed-repairs.ts';

export type Verification =
  /** Nothing speaks of the last repair yet: this check would. */
  { readonly kind: 'open'; readonly checkId: string; readonly what: string } | { readonly kind: 'held' };

/** Works on every car where the one that the repair names does not. */
const ANYWHERE = 'T38';

function checkFor(done: Job['repairs'][number], layout: LayoutId): string {
  const { id, layouts } = checkById(proves(done));
  return layouts === undefined || layouts.includes(layout) ? id : ANYWHERE;
}

/**
 * Undefined where the plan is to go on: nothing was repaired, the last repair did not hold, or a finding from recordings
 * after it speaks of the car as it is now.
 */
export function verificationFor(job: Job, layout: LayoutId): Verification | undefined {
  const last = [...job.repairs].sort((a, b) => (a.at < b.at ? -1 : 1)).at(-1);
  if (last === undefined) return undefined;
  const said = verificationOf(job, last);
  if (said === 'not held' || (said === undefined && isDisproved(job, last))) return undefined;
  if (said === 'held' || job.proof?.verdict === 'held') return { kind: 'held' };
  const found = newestFinding(job, 'after-repair');
  if (found !== undefined && found.madeAt > last.at) return undefined;
  return { kind: 'open', checkId: checkFor(last, layout), what: last.what };
}
