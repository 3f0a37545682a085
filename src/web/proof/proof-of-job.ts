/** The proof in numbers from a job's findings before and after its repair. Pure. */
import { figureValues } from '../../checks/figures.ts';
import type { JobState } from '../../checks/job-state.ts';
import { judgeProof, type Measured, type Proof } from '../../checks/proof/proof.ts';
import { rootCausesFromFinding } from '../../checks/root-cause-priors.ts';
import { findingCausesOf, ROOT_CAUSES, type RootCauseId } from '../../checks/root-causes.ts';
import type { Job, JobFinding, RecordingEntry } from '../../jobs/record/job.ts';
import { catalogueResults } from '../next-check/state-of-job.ts';

export interface JobProof {
  readonly before: JobFinding | undefined;
  readonly after: JobFinding | undefined;
  readonly proof: Proof;
}

/** The newest finding all of whose recordings were made on one side of the repair. */
export function newestFinding(job: Job, taken: RecordingEntry['taken']): JobFinding | undefined {
  const takenOf = new Map(job.recordings.map((entry) => [entry.sha256, entry.taken]));
  return job.findings.findLast(
    ({ sheet }) => sheet.recordings.length > 0 && sheet.recordings.every(({ sha256 }) => takenOf.get(sha256) === taken),
  );
}

/** Ids of the recordings that a finding was made from. */
export const recordingsOf = (job: Job, { sheet }: JobFinding): string[] =>
  job.recordings.filter((entry) => sheet.recordings.some(({ sha256 }) => sha256 === entry.sha256)).map(({ id }) => id);

function measured(finding: JobFinding | undefined): Measured | undefined {
  const diameterMm = finding?.sheet.finding.diameterMm;
  const recording = finding?.sheet.recordings[0];
  if (diameterMm === undefined || diameterMm === null || recording === undefined) return undefined;
  const { fuelLevel, ambientTemperatureK, fuelTemperatureK } = recording.conditions;
  return {
    diameterMm,
    conditions: {
      method: recording.procedure,
      ...(fuelLevel === undefined ? {} : { fuelLevel }),
      ...(ambientTemperatureK === undefined ? {} : { ambientTemperatureK }),
      ...(fuelTemperatureK === undefined ? {} : { fuelTemperatureK }),
    },
  };
}

/** The car's own test counts when it ran after the last repair. */
function selfTest(job: Job): Proof['selfTest'] {
  const repairedAt = job.repairs.map(({ at }) => at).reduce((a, b) => (a > b ? a : b), '');
  const ran = catalogueResults(job).findLast(({ checkId, at }) => checkId === 'T38' && at > repairedAt);
  if (ran === undefined || !('outcome' in ran.answer)) return 'not run';
  if (ran.answer.outcome === 'ran and passed') return 'passed';
  return ran.answer.outcome === 'ran and failed' ? 'failed' : 'not run';
}

function causesBefore(job: Job, finding: JobFinding | undefined): { id: RootCauseId; probability: number }[] {
  if (finding === undefined || job.car === null) return [];
  const told: Pick<JobState, 'layout' | 'complaints' | 'codes' | 'circumstances'> = {
    layout: job.car.layout,
    complaints: job.complaint.types,
    codes: job.codes.map(({ code }) => code),
    circumstances: [],
  };
  const weights = rootCausesFromFinding(finding.sheet.finding, told, figureValues());
  return ROOT_CAUSES.map(({ id }, i) => ({ id, probability: weights[i] ?? 0 }))
    .filter(({ id }) => id !== 'F20')
    .sort((a, b) => b.probability - a.probability);
}

export function proofOfJob(job: Job, limitMm: number): JobProof {
  const before = newestFinding(job, 'before-repair');
  const after = newestFinding(job, 'after-repair');
  const addressed = new Set(job.repairs.flatMap(({ addresses }) => addresses));
  const b = measured(before);
  const a = measured(after);
  const proof = judgeProof({
    ...(b === undefined ? {} : { before: b }),
    ...(a === undefined ? {} : { after: a }),
    limitMm,
    repaired: ROOT_CAUSES.filter(({ id }) => findingCausesOf(id).some((cause) => addressed.has(cause))).map(
      ({ id }) => id,
    ),
    causesBefore: causesBefore(job, before),
    selfTest: selfTest(job),
  });
  return { before, after, proof };
}
