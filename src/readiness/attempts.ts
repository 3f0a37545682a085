import type { Recording } from '../recording/recording.ts';

/** One try of the car to run its monitor: an engine start, the drive, and the time parked behind it. */
export interface Attempt {
  /** Samples `from` to `stop - 1` with the engine running, `stop` to `end - 1` parked. */
  readonly from: number;
  readonly stop: number;
  readonly end: number;
  readonly startS: number;
  readonly stopS: number;
  readonly endS: number;
  /** How long it was parked before; `atLeast` when the recording began while it was. Absent: not on the record. */
  readonly parkedBefore?: { readonly seconds: number; readonly atLeast: boolean };
  /** The recording began with the engine running: the start itself was not seen. */
  readonly startUnseen: boolean;
  /** The engine was started again at `endS`; else the recording ends there. */
  readonly endedByStart: boolean;
}

/** Slower than this an engine does not run (common practice: idle is 500 1/min or more). */
const RUNNING_RPM = 200;
/** A stop shorter than this is a stall or a stop at a light, and no new start (judgement). */
const SHORTEST_STOP_S = 60;

/** Engine state at every sample, held where the sample has none; absent when the recording tells nothing of it. */
function engineRuns(recording: Recording): Uint8Array | undefined {
  const { channels, timeS } = recording;
  const [values, limit] =
    channels.engineSpeedRpm !== undefined ? [channels.engineSpeedRpm, RUNNING_RPM] : [channels.vehicleSpeedMPerS, 0.5];
  if (values === undefined) return undefined;
  const runs = new Uint8Array(timeS.length);
  const first = values.find((value) => !Number.isNaN(value));
  let state = first !== undefined && first > limit ? 1 : 0;
  for (let i = 0; i < runs.length; i++) {
    if (!Number.isNaN(values[i]!)) state = values[i]! > limit ? 1 : 0;
    runs[i] = state;
  }
  return bridgeShortStops(runs, timeS);
}

function bridgeShortStops(runs: Uint8Array, timeS: Float64Array): Uint8Array {
  let i = 0;
  while (i < runs.length) {
    if (runs[i] === 1) {
      i++;
      continue;
    }
    let end = i;
    while (end < runs.length && runs[end] === 0) end++;
    if (i > 0 && end < runs.length && timeS[end]! - timeS[i]! < SHORTEST_STOP_S) runs.fill(1, i, end);
    i = end;
  }
  return runs;
}

/**
 * Parts a recording into attempts. `parkedBeforeS` is what the reader knows of the time before the recording.
 */
export function findAttempts(recording: Recording, parkedBeforeS?: number): Attempt[] {
  const { timeS } = recording;
  const runs = engineRuns(recording);
  if (runs === undefined || timeS.length === 0) return [];
  const attempts: Attempt[] = [];
  let i = 0;
  while (i < runs.length) {
    while (i < runs.length && runs[i] === 0) i++;
    if (i >= runs.length) break;
    const from = i;
    while (i < runs.length && runs[i] === 1) i++;
    const stop = i;
    while (i < runs.length && runs[i] === 0) i++;
    const end = i;
    const last = timeS.length - 1;
    const previous = attempts.at(-1);
    const offS = timeS[from]! - (previous?.stopS ?? timeS[0]!);
    const parkedBefore =
      previous !== undefined
        ? { seconds: offS, atLeast: false }
        : parkedBeforeS !== undefined
          ? { seconds: parkedBeforeS + offS, atLeast: false }
          : from > 0
            ? { seconds: offS, atLeast: true }
            : undefined;
    attempts.push({
      from,
      stop,
      end,
      startS: timeS[from]!,
      stopS: timeS[Math.min(stop, last)]!,
      endS: timeS[Math.min(end, last)]!,
      ...(parkedBefore === undefined ? {} : { parkedBefore }),
      startUnseen: from === 0,
      endedByStart: end < runs.length,
    });
  }
  return attempts;
}
