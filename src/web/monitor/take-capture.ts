/** What of a capture goes into the job: a reading of the monitor, and codes with their freeze frames. */
import type { Job, RecordingEntry } from '../../jobs/record/job.ts';
import type { MonitorReading } from '../../jobs/record/monitor.ts';
import type { CaptureFacts } from '../../server/contract/recordings.ts';

type Code = Job['codes'][number];
type Frame = NonNullable<Code['freezeFrame']>;

const MOST_CODES = 64;
const MOST_RESULTS = 64;
/** Monitors of service $06 that are of the evaporative system. */
const isEvaporative = ({ monitor }: CaptureFacts['results'][number]): boolean => monitor !== undefined;

export function readingFrom(
  { at, status, codes, codesRead, results }: CaptureFacts,
  entry: RecordingEntry,
  made: Pick<MonitorReading, 'id' | 'by'>,
): MonitorReading {
  return {
    ...made,
    at: at ?? entry.receivedAt,
    source: 'capture',
    fileName: entry.fileName,
    recordingId: entry.id,
    taken: entry.taken,
    status,
    codes: codes.slice(0, 2 * MOST_CODES).map(({ code, status: which }) => ({ code, status: which })),
    codesRead: [...codesRead],
    results: results.filter(isEvaporative).slice(0, MOST_RESULTS),
  };
}

const CODE = /^[PCBU][0-3][0-9A-F]{3}$/;
const SHOWN_FIGURES = 6;

/** As a technician reads it: degrees, kPa, km/h. */
function frameOf(frame: CaptureFacts['freezeFrames'][number]): Frame {
  return frame.items.slice(0, 32).map(({ name, value, unit }) => {
    const [shown, symbol] =
      unit === 'K'
        ? [value - 273.15, '°C']
        : unit === '1'
          ? [value * 100, '%']
          : unit === 'm/s'
            ? [value * 3.6, 'km/h']
            : unit === 'Pa' && Math.abs(value) >= 10_000
              ? [value / 1000, 'kPa']
              : [value, unit];
    const rounded = String(Number(Number(shown.toFixed(2)).toPrecision(SHOWN_FIGURES)));
    return { name: name.slice(0, 80), value: rounded, ...(symbol === 'raw' ? {} : { unit: symbol }) };
  });
}

export interface TakenCodes {
  readonly next: readonly Code[];
  readonly added: readonly Code[];
  readonly removed: readonly Code[];
}

/**
 * The job's codes with those of a capture. What was written before the repair stays; after it the lists that were read take the
 * place of what stood there, so that the hand-over can tell before from after.
 */
export function takenCodes(known: readonly Code[], capture: CaptureFacts, taken: RecordingEntry['taken']): TakenCodes {
  const statusOf = (which: CaptureFacts['codesRead'][number]): Code['status'] =>
    which === 'confirmed' ? 'stored' : which;
  const read = new Map<string, Code>();
  for (const { code, status } of capture.codes) {
    if (!CODE.test(code)) continue;
    const frame = status === 'confirmed' ? capture.freezeFrames.find((each) => each.code === code) : undefined;
    const key = `${code} ${statusOf(status)}`;
    if (!read.has(key))
      read.set(key, {
        code,
        status: statusOf(status),
        ...(frame === undefined || frame.items.length === 0 ? {} : { freezeFrame: frameOf(frame) }),
      });
  }
  const lists = capture.codesRead.map(statusOf);
  const keyOf = ({ code, status }: Code): string => `${code} ${status}`;
  const isGone = (code: Code): boolean =>
    taken === 'after-repair' && lists.includes(code.status) && !read.has(keyOf(code));
  const removed = known.filter(isGone);
  const kept = known.filter((code) => !isGone(code));
  const added = [...read.values()].filter((code) => known.every((each) => keyOf(each) !== keyOf(code)));
  return { next: [...kept, ...added].slice(0, MOST_CODES), added, removed };
}
