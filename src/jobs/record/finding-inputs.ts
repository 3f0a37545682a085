/** What a finding is made from: when any of this changes, an old finding is outdated. */
import type { Job } from './job.ts';

type Sources = Pick<Job, 'complaint' | 'codes' | 'car' | 'recordings' | 'checks'>;

/** The parts of a job that can move a probability; words, names and prices cannot. */
export function findingInputs(job: Sources): unknown {
  return {
    complaint: [...job.complaint.types].sort(),
    codes: job.codes.map(({ code, status }) => `${code} ${status}`).sort(),
    car: job.car,
    recordings: job.recordings
      .filter((entry) => entry.useInFinding)
      .map(({ sha256, taken, mapping, phases, facts }) => ({ sha256, taken, mapping, phases, facts })),
    // a result of a catalogue check is weighed by the planner, beside the finding
    checks: job.checks.filter(isWeighedHere).map(({ speaksFor, speaksAgainst, strength }) => ({
      speaksFor: [...speaksFor].sort(),
      speaksAgainst: [...speaksAgainst].sort(),
      strength,
    })),
  };
}

const isWeighedHere = ({ checkId, speaksFor, speaksAgainst }: Job['checks'][number]): boolean =>
  checkId === undefined || speaksFor.length > 0 || speaksAgainst.length > 0;

/** JSON with names in order and absent values left out, so that equal data gives equal text. */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  const entries = Object.entries(value).filter(([, inner]) => inner !== undefined);
  entries.sort(([one], [other]) => (one < other ? -1 : 1));
  return `{${entries.map(([name, inner]) => `${JSON.stringify(name)}:${canonicalJson(inner)}`).join(',')}}`;
}
