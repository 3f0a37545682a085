/** Codes that a car gave, taken into a job. */
import type { ReadCode, ReadFreezeFrame } from '../../recording/bus/capture-reading.ts';
import type { Job, RecordingEntry } from './job.ts';

type Code = Job['codes'][number];
type Frame = NonNullable<Code['freezeFrame']>;

/** What a capture or a live recording says of codes. */
export interface SaidCodes {
  readonly codes: readonly ReadCode[];
  readonly codesRead: readonly ReadCode['status'][];
  readonly freezeFrames: readonly ReadFreezeFrame[];
}

export interface TakenCodes {
  /** The same list when nothing changes. */
  readonly next: Job['codes'];
  readonly added: readonly Code[];
  readonly removed: readonly Code[];
}

const CODE = /^[PCBU][0-3][0-9A-F]{3}$/;
const MOST_CODES = 64;
const MOST_LINES = 32;
const SHOWN_FIGURES = 6;

/** As a technician reads it: degrees, per cent, kPa, km/h. */
const SHOWN: Readonly<Record<string, readonly [unit: string, shown: (si: number) => number]>> = {
  K: ['°C', (si) => si - 273.15],
  '1': ['%', (si) => si * 100],
  'm/s': ['km/h', (si) => si * 3.6],
};

function frameOf(frame: ReadFreezeFrame): Frame {
  return frame.items.slice(0, MOST_LINES).map(({ name, value, unit }) => {
    const [symbol, shown] =
      SHOWN[unit] ??
      (unit === 'Pa' && Math.abs(value) >= 10_000
        ? (['kPa', (pa: number) => pa / 1000] as const)
        : [unit, (si: number) => si]);
    const rounded = Number(Number(shown(value).toFixed(2)).toPrecision(SHOWN_FIGURES));
    return {
      name: name.slice(0, 80),
      value: String(rounded),
      ...(symbol === 'raw' ? {} : { unit: symbol.slice(0, 20) }),
    };
  });
}

const statusOf = (status: ReadCode['status']): Code['status'] => (status === 'confirmed' ? 'stored' : status);
const keyOf = ({ code, status }: Code): string => `${code} ${status}`;

/** Each code once, whichever unit gave it, with the freeze frame that it set. */
function codesOf({ codes, freezeFrames }: SaidCodes): ReadonlyMap<string, Code> {
  const read = new Map<string, Code>();
  for (const { code, status } of codes) {
    const frame = status === 'confirmed' ? freezeFrames.find((each) => each.code === code) : undefined;
    const taken: Code = {
      code,
      status: statusOf(status),
      ...(frame === undefined || frame.items.length === 0 ? {} : { freezeFrame: frameOf(frame) }),
    };
    if (CODE.test(code) && !read.has(keyOf(taken))) read.set(keyOf(taken), taken);
  }
  return read;
}

/**
 * The job's codes with those that the car gave. What was written before the repair stays, and gets a freeze frame where it has
 * none; after the repair the lists that were read take the place of what stood there, so that the hand-over can tell before
 * from after.
 */
export function takenCodes(known: Job['codes'], said: SaidCodes, taken: RecordingEntry['taken']): TakenCodes {
  const read = codesOf(said);
  const lists = said.codesRead.map(statusOf);
  const isGone = (code: Code): boolean =>
    taken === 'after-repair' && lists.includes(code.status) && !read.has(keyOf(code));
  const removed = known.filter(isGone);
  const added = [...read.values()].filter((code) => known.every((each) => keyOf(each) !== keyOf(code)));
  const kept = known
    .filter((code) => !isGone(code))
    .map((code) => {
      const { freezeFrame } = read.get(keyOf(code)) ?? {};
      return code.freezeFrame !== undefined || freezeFrame === undefined ? code : { ...code, freezeFrame };
    });
  const isSame = removed.length === 0 && added.length === 0 && kept.every((code, at) => code === known[at]);
  return { next: isSame ? known : [...kept, ...added].slice(0, MOST_CODES), added, removed };
}
