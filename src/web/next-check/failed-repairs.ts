/** Repairs that were done and after which the car was still not sound. Pure. */
import { checkById } from '../../checks/catalogue/all.ts';
import { readEntry } from '../../checks/read-entry.ts';
import { REPAIRS, type Repair, type RepairId } from '../../checks/repairs.ts';
import type { CheckResult, Job } from '../../jobs/record/job.ts';
import { isOpenAir } from '../../report/hole.ts';

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

/**
 * The check that proves a repair. One that names none of the catalogue is judged by what it was to remove: a hole by the flow,
 * anything else by the car's own test.
 */
export function proves({ repairId, addresses }: Done): Repair['verifiedBy'] {
  const repair = REPAIRS.find(({ id }) => id === repairId);
  if (repair !== undefined) return repair.verifiedBy;
  const isHole = addresses.length === 0 || addresses.some((cause) => isOpenAir(cause) || cause === 'purge_leak');
  return isHole ? 'T37' : 'T31';
}

function isVerifying({ checkId }: CheckResult, done: Done): boolean {
  if (checkId === undefined) return false;
  return checkById(checkId).verifies === true || checkId === proves(done);
}

/** The proof was not held, and it was measured after this repair, as far as its recordings tell. */
export function isDisproved({ proof, recordings }: Pick<Job, 'proof' | 'recordings'>, { at }: Done): boolean {
  if (proof?.verdict !== 'not-held') return false;
  const measured = recordings.filter(({ id }) => proof.after.includes(id)).map(({ receivedAt }) => receivedAt);
  return measured.length === 0 || measured.some((receivedAt) => receivedAt > at);
}

/** What the last verification between this repair and the next one says of it. */
export function verificationOf(
  { repairs, checks }: Pick<Job, 'repairs' | 'checks'>,
  done: Done,
): 'held' | 'not held' | undefined {
  const until = repairs
    .map(({ at }) => at)
    .filter((at) => at > done.at)
    .sort()[0];
  return checks
    .filter((check) => check.at > done.at && (until === undefined || check.at < until) && isVerifying(check, done))
    .sort((a, b) => (a.at < b.at ? -1 : 1))
    .map(saidBy)
    .findLast((one) => one !== undefined);
}

/**
 * Each repair is judged by the last verification between it and the next one. Where there is none, the proof judges: one that
 * was not held says so of every repair made by then, since one fault at a time is assumed. A repair that names none of the
 * catalogue tells the planner nothing.
 */
export function failedRepairs(job: Pick<Job, 'repairs' | 'checks' | 'proof' | 'recordings'>): readonly RepairId[] {
  const inOrder = [...job.repairs].sort((a, b) => (a.at < b.at ? -1 : 1));
  const failed = inOrder.flatMap((done): RepairId[] => {
    const repair = ofCatalogue(done);
    if (repair === undefined) return [];
    const said = verificationOf(job, done);
    const isFailed = said === undefined ? isDisproved(job, done) : said === 'not held';
    return isFailed ? [repair.id] : [];
  });
  return [...new Set(failed)];
}
