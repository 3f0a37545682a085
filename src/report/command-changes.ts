/** The commands of a recording, kept at the samples where they change: enough to draw them as steps. */
import type { Recording } from '../recording/recording.ts';
import type { Commands } from './command-lanes.ts';

/** A duty that flutters by less than this is drawn as steady. */
const DUTY_STEP = 0.02;

export function changesOfCommands({ timeS, channels }: Recording): Commands {
  const { purgeDuty, ventClosed } = channels;
  const keep: number[] = [];
  timeS.forEach((_, i) => {
    const last = keep.at(-1);
    const isEnd = last === undefined || i === timeS.length - 1;
    const hasMoved =
      last !== undefined &&
      (Math.abs((purgeDuty?.[i] ?? 0) - (purgeDuty?.[last] ?? 0)) > DUTY_STEP ||
        ventClosed?.[i] !== ventClosed?.[last]);
    if (isEnd || hasMoved) keep.push(i);
  });
  const at = (values: Float64Array): number[] => keep.map((i) => (Number.isFinite(values[i]) ? (values[i] ?? 0) : 0));
  return {
    timeS: keep.map((i) => timeS[i] ?? 0),
    ...(purgeDuty === undefined ? {} : { purgeDuty: at(purgeDuty) }),
    ...(ventClosed === undefined ? {} : { ventClosed: at(ventClosed) }),
  };
}
