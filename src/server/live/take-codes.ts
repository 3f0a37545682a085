/** The codes that a car gave, taken into the job beside those that stand there. */
import type { Job } from '../../jobs/record/job.ts';
import type { CaptureFacts } from '../contract/recordings.ts';

type Code = Job['codes'][number];
const MOST_CODES = 64;
const FIGURES = 6;

/** As the job calls it. */
const statusOf = (status: CaptureFacts['codes'][number]['status']): Code['status'] =>
  status === 'confirmed' ? 'stored' : status;

function frameOf({ freezeFrames }: CaptureFacts, code: string): Code['freezeFrame'] {
  const frame = freezeFrames.find((each) => each.code === code);
  return frame?.items.map(({ name, value, unit }) => ({
    name: name.slice(0, 80),
    value: String(Number(value.toPrecision(FIGURES))),
    ...(unit === '1' ? {} : { unit: unit.slice(0, 20) }),
  }));
}

/** `known` with what is new; the same list when nothing is. What stands there is never changed. */
export function withCodes(known: Job['codes'], said: CaptureFacts): Job['codes'] {
  const next = [...known];
  for (const { code, status: said_ } of said.codes) {
    const status = statusOf(said_);
    const same = next.findIndex((each) => each.code === code && each.status === status);
    const freezeFrame = status === 'stored' ? frameOf(said, code) : undefined;
    if (same >= 0) {
      if (freezeFrame !== undefined && next[same]!.freezeFrame === undefined)
        next[same] = { ...next[same]!, freezeFrame };
    } else if (next.length < MOST_CODES)
      next.push({ code, status, ...(freezeFrame === undefined ? {} : { freezeFrame }) });
  }
  return JSON.stringify(next) === JSON.stringify(known) ? known : next;
}
