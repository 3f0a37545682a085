/** On/off commands and duties of a recording as functions of time, with the moments at which they change. */
import type { ChannelName, Recording } from '../../recording/recording.ts';

/** Duty step that counts as a change of its own [-], judgement. */
const STEP = 0.05;

export interface Switch {
  /** Command at a time: the last sample's until the middle of the gap to the next. */
  at(timeS: number): number;
  /** Middles of the sample gaps in which it changed [s]. */
  readonly changesS: readonly number[];
}

/** @param otherwise the value where the recording has no such channel */
export function readSwitch(recording: Recording, channel: ChannelName, otherwise: number): Switch {
  const x = recording.channels[channel];
  const fromS: number[] = [Number.NEGATIVE_INFINITY];
  const value: number[] = [otherwise];
  if (x) {
    let last = -1;
    for (let i = 0; i < x.length; i++) {
      const v = x[i]!;
      if (!Number.isFinite(v)) continue;
      if (last < 0) value[0] = v;
      else if (Math.abs(v - value[value.length - 1]!) >= STEP) {
        fromS.push(0.5 * (recording.timeS[last]! + recording.timeS[i]!));
        value.push(v);
      }
      last = i;
    }
  }
  return {
    at(timeS) {
      let k = value.length - 1;
      while (k > 0 && fromS[k]! > timeS) k--;
      return value[k]!;
    },
    changesS: fromS.slice(1),
  };
}

/** A measured channel as a function of time: straight lines between the samples that exist, constant beyond. */
export function readSeries(recording: Recording, channel: ChannelName): ((timeS: number) => number) | undefined {
  const x = recording.channels[channel];
  if (!x) return undefined;
  const ts: number[] = [];
  const xs: number[] = [];
  for (let i = 0; i < x.length; i++) {
    if (!Number.isFinite(x[i]!)) continue;
    ts.push(recording.timeS[i]!);
    xs.push(x[i]!);
  }
  if (ts.length === 0) return undefined;
  let k = 0;
  return (t) => {
    if (ts[k]! > t) k = 0;
    while (k + 1 < ts.length && ts[k + 1]! <= t) k++;
    if (k + 1 >= ts.length || t <= ts[k]!) return xs[k]!;
    return xs[k]! + ((t - ts[k]!) / (ts[k + 1]! - ts[k]!)) * (xs[k + 1]! - xs[k]!);
  };
}
