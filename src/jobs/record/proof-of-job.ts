/** The proof in numbers of a job: from its findings before and after the repair, and from what was measured by hand. Pure. */
import { type Belief, causeProbabilities } from '../../checks/belief.ts';
import { checkById } from '../../checks/catalogue/all.ts';
import { CIRCUMSTANCE_IDS, type CircumstanceId } from '../../checks/circumstances.ts';
import { beliefOf, type JobState, NEW_JOB, type Step } from '../../checks/job-state.ts';
import { sumByArea } from '../../checks/proof/leak-budget.ts';
import { type BelievedCause, judgeProof, type Measured, type Proof, type Sections } from '../../checks/proof/proof.ts';
import { type ReadEntry, readEntry } from '../../checks/read-entry.ts';
import { findingCausesOf, ROOT_CAUSES, type RootCauseId } from '../../checks/root-causes.ts';
import type { Interval } from '../../diagnosis/finding.ts';
import { isOpenAir } from '../../report/hole.ts';
import { exceedsLimit } from '../../report/limits.ts';
import type { Car } from '../../system/car.ts';
import type { CheckResult, Job, JobFinding, RecordingEntry } from './job.ts';

export interface JobProof {
  /** Findings that the sizes come from, or that would have given them; both sides where there are both. */
  readonly before: JobFinding | undefined;
  readonly after: JobFinding | undefined;
  readonly proof: Proof;
}

type Side = 'before' | 'after';
const TAKEN = { before: 'before-repair', after: 'after-repair' } as const satisfies Record<Side, string>;

/** The newest finding all of whose recordings were made on one side of the repair. */
export function newestFinding(job: Job, taken: RecordingEntry['taken']): JobFinding | undefined {
  const takenOf = new Map(job.recordings.map((entry) => [entry.sha256, entry.taken]));
  return job.findings.findLast(
    ({ sheet }) => sheet.recordings.length > 0 && sheet.recordings.every(({ sha256 }) => takenOf.get(sha256) === taken),
  );
}

const fuelOf = (car: Car | null): Pick<Measured['conditions'], 'reidVapourPressurePa'> => {
  const range = car?.fuel?.reidVapourPressurePa;
  return range === undefined ? {} : { reidVapourPressurePa: range };
};

/** With the conditions of the recording that the other side has its like of. */
function sizedBy(
  finding: JobFinding | undefined,
  other: JobFinding | undefined,
  limitMm: number,
): Measured | undefined {
  if (finding === undefined) return undefined;
  const { recordings, car } = finding.sheet;
  const { diameterMm, exceeds } = finding.sheet.finding;
  const above = exceedsLimit({ diameterMm, exceeds }, limitMm);
  const kinds = new Set(other?.sheet.recordings.map(({ procedure }) => procedure));
  const recording = recordings.find(({ procedure }) => kinds.has(procedure)) ?? recordings[0];
  if (recording === undefined) return undefined;
  const { fuelLevel, ambientTemperatureK, fuelTemperatureK } = recording.conditions;
  return {
    ...(diameterMm === null ? {} : { diameterMm }),
    ...(above === null ? {} : { limitMet: 1 - above }),
    conditions: {
      method: recording.procedure,
      ...fuelOf(car),
      ...(fuelLevel === undefined ? {} : { fuelLevel }),
      ...(ambientTemperatureK === undefined ? {} : { ambientTemperatureK }),
      ...(fuelTemperatureK === undefined ? {} : { fuelTemperatureK }),
    },
  };
}

/** Before the first repair, or since the last one; between two repairs is neither. */
function checksOf({ checks, repairs }: Job, side: Side): readonly CheckResult[] {
  const times = repairs.map(({ at }) => at).sort();
  const [first, last] = [times[0], times.at(-1)];
  if (side === 'before') return first === undefined ? checks : checks.filter(({ at }) => at < first);
  return last === undefined ? [] : checks.filter(({ at }) => at > last);
}

type Read = Extract<ReadEntry, { ok: true }>;

/** The newest result of one of these checks, as it was read; one that cannot be read any more counts as none. */
function newestRead(checks: readonly CheckResult[], ids: readonly string[]): Read | undefined {
  const found = checks.findLast(({ checkId, answer }) => answer !== undefined && ids.includes(checkId ?? ''));
  if (found?.answer === undefined || found.checkId === undefined) return undefined;
  const read = readEntry(found.checkId, found.answer);
  return read.ok ? read : undefined;
}

const SECTION_CHECK = 'T21';
/** Checks that size the whole system; the flow repeated after a repair is the flow before it. */
const WHOLE_CHECKS: Readonly<Record<string, readonly string[]>> = { T20: ['T20', 'T37'], T19: ['T19'] };

const sectionsOf = (checks: readonly CheckResult[]): Sections | undefined =>
  newestRead(checks, [SECTION_CHECK])?.meaning?.diametersMm;

/** The conditions that were entered with the numbers of a check. */
function conditionsOf(read: Read | undefined): Omit<Measured['conditions'], 'method'> {
  const {
    'fuel level': fuelLevel,
    'ambient temperature': ambientTemperatureK,
    'fuel temperature': fuelTemperatureK,
  } = read?.readings ?? {};
  return {
    ...(fuelLevel === undefined ? {} : { fuelLevel }),
    ...(ambientTemperatureK === undefined ? {} : { ambientTemperatureK }),
    ...(fuelTemperatureK === undefined ? {} : { fuelTemperatureK }),
  };
}

/** Sizes of the whole system that were measured by hand, by the check that gave them. */
function sizedByHand(job: Job, checks: readonly CheckResult[]): ReadonlyMap<string, Measured> {
  const sized = (method: string, ids: readonly string[], sizeOf: (read: Read) => Interval | undefined) => {
    const read = newestRead(checks, ids);
    const diameterMm = read && sizeOf(read);
    if (diameterMm === undefined) return [];
    const conditions = { method, ...fuelOf(job.car), ...conditionsOf(read) };
    return [[method, { diameterMm, conditions }] as const];
  };
  return new Map([
    ...Object.entries(WHOLE_CHECKS).flatMap(([method, ids]) =>
      sized(method, ids, ({ meaning }) => meaning?.diametersMm?.whole),
    ),
    ...sized(SECTION_CHECK, [SECTION_CHECK], ({ meaning }) => sumByArea(Object.values(meaning?.diametersMm ?? {}))),
  ]);
}

interface MeasuredSides {
  readonly before?: Measured | undefined;
  readonly after?: Measured | undefined;
  /** Both sizes were measured by hand, where a valve's seep counts like any hole. */
  readonly isByHand: boolean;
}

/** Findings on both sides come first, then one check on both sides; two kinds of test are compared only where nothing else is there. */
function measuredOn(
  job: Job,
  before: JobFinding | undefined,
  after: JobFinding | undefined,
  limitMm: number,
): MeasuredSides {
  const found = { before: sizedBy(before, after, limitMm), after: sizedBy(after, before, limitMm) };
  if (found.before?.diameterMm !== undefined && found.after?.diameterMm !== undefined) {
    return { ...found, isByHand: false };
  }
  const hand = { before: sizedByHand(job, checksOf(job, 'before')), after: sizedByHand(job, checksOf(job, 'after')) };
  const both = [...hand.before.keys()].find((method) => hand.after.has(method));
  if (both !== undefined) return { before: hand.before.get(both), after: hand.after.get(both), isByHand: true };
  // Two findings that size no hole still compare what they say of the fault.
  if (found.before !== undefined && found.after !== undefined) return { ...found, isByHand: false };
  return {
    before: found.before ?? [...hand.before.values()][0],
    after: found.after ?? [...hand.after.values()][0],
    isByHand: false,
  };
}

/** A section that flows less than this may be tight, mm; as the likelihoods take a tight car's seep. Judgement. */
const TIGHT_MM = 0.13;

/** Isolation gives the repaired leak its size where all that was repaired lies in one section, or in the one that leaks. */
function repairedSize(sections: Sections | undefined, repaired: readonly RootCauseId[]): Interval | undefined {
  if (sections === undefined) return undefined;
  const holding = checkById(SECTION_CHECK)
    .outcomes.filter(({ causes }) => causes.some((id) => repaired.includes(id)))
    .flatMap(({ id }) => (sections[id] === undefined ? [] : [sections[id]]));
  const leaking = holding.length === 1 ? holding : holding.filter(({ lo90 }) => lo90 > TIGHT_MM);
  return leaking.length === 1 ? leaking[0] : undefined;
}

/** The car's own test counts when it ran after the last repair. */
function selfTest(job: Job): Proof['selfTest'] {
  const ran = checksOf(job, 'after').findLast(({ checkId }) => checkId === 'T38')?.answer;
  if (ran === undefined || !('outcome' in ran)) return 'not run';
  if (ran.outcome === 'ran and passed') return 'passed';
  return ran.outcome === 'ran and failed' ? 'failed' : 'not run';
}

/** The newest answer of each check of the catalogue that was done before the first repair. */
function answersBefore(job: Job): readonly Step[] {
  const newest = new Map<string, Step>();
  for (const { checkId, answer } of checksOf(job, 'before')) {
    if (checkId === undefined || answer === undefined || checkById(checkId).verifies === true) continue;
    newest.set(checkId, { kind: 'check', id: checkId, entry: answer });
  }
  return [...newest.values()];
}

const isCircumstance = (name: string): name is CircumstanceId => CIRCUMSTANCE_IDS.some((id) => id === name);

/** What was believed before the repair: of the finding where there is one, else of complaint and codes; and of the checks. */
function causesBefore(job: Job, finding: JobFinding | undefined): readonly BelievedCause[] {
  if (job.car === null) return [];
  const told: JobState = {
    ...NEW_JOB,
    layout: job.car.layout,
    complaints: job.complaint.types,
    codes: job.codes.map(({ code }) => code),
    circumstances: (job.complaint.circumstances ?? []).filter(isCircumstance),
    ...(finding === undefined ? {} : { finding: finding.sheet.finding }),
  };
  return causeProbabilities(believed(told, answersBefore(job)))
    .filter(({ id }) => id !== 'F20')
    .sort((a, b) => b.probability - a.probability);
}

/** Answers that cannot be read any more, or that rule everything out, leave the rest. */
function believed(told: JobState, steps: readonly Step[]): Belief {
  try {
    return beliefOf({ ...told, steps });
  } catch (error) {
    if (error instanceof RangeError) return beliefOf(told);
    throw error;
  }
}

/** Root causes that the job's repairs are meant to remove. */
function repairedBy(job: Job): readonly RootCauseId[] {
  const addressed = new Set(job.repairs.flatMap(({ addresses }) => addresses));
  return ROOT_CAUSES.filter(({ id }) => findingCausesOf(id).some((cause) => addressed.has(cause))).map(({ id }) => id);
}

/** Whether sizes judge the repair; where nothing is said of what it removes, it is taken for a hole. */
function repairsHole({ repairs }: Job, isByHand: boolean): boolean {
  const addressed = repairs.flatMap(({ addresses }) => addresses);
  return addressed.length === 0 || addressed.some((cause) => isOpenAir(cause) || (isByHand && cause === 'purge_leak'));
}

/** What the findings say of the causes that the repairs are meant to remove, all together. */
function otherFault({ repairs }: Job, before: JobFinding | undefined, after: JobFinding | undefined) {
  const addressed = new Set(repairs.flatMap(({ addresses }) => addresses));
  const share = (finding: JobFinding | undefined): number | undefined =>
    finding?.sheet.finding.causes.reduce((sum, { id, probability }) => sum + (addressed.has(id) ? probability : 0), 0);
  const [b, a] = [share(before), share(after)];
  return { ...(b === undefined ? {} : { before: b }), ...(a === undefined ? {} : { after: a }) };
}

/** @param limitMm the limit that the car is held to, equivalent diameter in mm */
export function proofOfJob(job: Job, limitMm: number): JobProof {
  const before = newestFinding(job, TAKEN.before);
  const after = newestFinding(job, TAKEN.after);
  const measured = measuredOn(job, before, after, limitMm);
  const sections = { before: sectionsOf(checksOf(job, 'before')), after: sectionsOf(checksOf(job, 'after')) };
  const repaired = repairedBy(job);
  const repairedMm = repairedSize(sections.before, repaired);
  const isHole = repairsHole(job, measured.isByHand);
  const proof = judgeProof({
    ...(measured.before && { before: measured.before }),
    ...(measured.after && { after: measured.after }),
    ...(sections.before && { sectionsBeforeMm: sections.before }),
    ...(sections.after && { sectionsAfterMm: sections.after }),
    ...(repairedMm && { repairedMm }),
    limitMm,
    repaired,
    repairsHole: isHole,
    ...(isHole ? {} : { otherFault: otherFault(job, before, after) }),
    causesBefore: causesBefore(job, before),
    selfTest: selfTest(job),
  });
  return { before, after, proof };
}
