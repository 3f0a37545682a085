/** Repairs that were done and after which the car was still not sound. Pure. */
import { checkById } from '../../checks/catalogue/all.ts';
import { readEntry } from '../../checks/read-entry.ts';
import { REPAIRS, type Repair, type RepairId } from '../../checks/repairs.ts';
import type { CheckResult, Job } from '../../jobs/record/job.ts';

type Done = Job['repairs'][number];

/** How much likelier a number must be under one outcome before a verification counts for it. Judgement. */
const CLEARLY = 3;

/** What a verification says of the repair before it: its clean outcome stands first. */
function saidBy({ checkId, answer }: CheckResult): 'held' | 'not held' | undefined {
  if (checkId === undefined || answer === undefined) return undefined;
  const read = readEntry(checkId, answer);
  if (!read.ok) return undefined;
  const [clean = 0, ...others] = read.weights.byOutcome;
  const worst = Math.max(...others);
  if (clean > CLEARLY * worst) return 'held';
  return worst > CLEARLY * clean ? 'not held' : undefined;
}

const ofCatalogue = ({ repairId }: Done): Repair | undefined => REPAIRS.find(({ id }) => id === repairId);

function isVerifying({ checkId }: CheckResult, repair: Repair | undefined): boolean {
  if (checkId === undefined) return false;
  return checkById(checkId).verifies === true || checkId === repair?.verifiedBy;
}

/** The proof was not held, and it was measured after this repair, as far as its recordings tell. */
function isDisproved({ proof, recordings }: Pick<Job, 'proof' | 'recordings'>, { at }: Done): boolean {
  if (proof?.verdict !== 'not-held') return false;
  const measured = recordings.filter(({ id }) => proof.after.includes(id)).map(({ receivedAt }) => receivedAt);
  return measured.length === 0 || measured.some((receivedAt) => receivedAt > at);
}

/**
 * Each repair is judged by the last verification between it and the next one. Where there is none, the proof judges: one that
 * was not held says so of every repair made by then, since one fault at a time is assumed. A repair that names none of the
 * catalogue tells the planner nothing.
 */
export function failedRepairs(job: Pick<Job, 'repairs' | 'checks' | 'proof' | 'recordings'>): readonly RepairId[] {
  const { repairs, checks } = job;
  const inOrder = [...repairs].sort((a, b) => (a.at < b.at ? -1 : 1));
  const failed = inOrder.flatMap((done, n): RepairId[] => {
    const repair = ofCatalogue(done);
    if (repair === undefined) return [];
    const until = inOrder[n + 1]?.at;
    const said = checks
      .filter((check) => check.at > done.at && (until === undefined || check.at < until) && isVerifying(check, repair))
      .sort((a, b) => (a.at < b.at ? -1 : 1))
      .map(saidBy)
      .findLast((one) => one !== undefined);
    const isFailed = said === undefined ? isDisproved(job, done) : said === 'not held';
    return isFailed ? [repair.id] : [];
  });
  return [...new Set(failed)];
}
