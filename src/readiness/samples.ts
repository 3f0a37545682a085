import { CHANNELS, type ChannelName, type Recording } from '../recording/recording.ts';
import type { Attempt } from './attempts.ts';
import type { ConditionResult, Limits } from './condition-result.ts';

export type Outcome = Omit<ConditionResult, 'condition'>;

/** Half of what the items resolve: a value that rounds to the limit is within it. */
const STEP: Partial<Record<ChannelName, number>> = { fuelLevel: 0, vehicleSpeedMPerS: 0.5 / 3.6 };
/** Temperatures come in whole degrees, so a limit of 4.4 degC is met by 4. */
export const TEMPERATURE_STEP_K = 0.5;

export const stepOf = (channel: ChannelName): number =>
  CHANNELS[channel] === 'K' ? TEMPERATURE_STEP_K : (STEP[channel] ?? 0);

/** Samples may come in single precision, a limit never does: 0.85 is not above 0.85. */
const SINGLE_PRECISION = 1e-6;
const nearly = (limit: number): number => SINGLE_PRECISION * Math.max(1, Math.abs(limit));

export const isWithin = (value: number, { low, high }: Limits, slack: number): boolean =>
  (low === undefined || value >= low - slack - nearly(low)) &&
  (high === undefined || value <= high + slack + nearly(high));

/** The limits alone, of a condition that has some. */
export const limitsOf = ({ low, high }: Limits): Limits => ({
  ...(low === undefined ? {} : { low }),
  ...(high === undefined ? {} : { high }),
});

export const notRecorded = (channel: ChannelName, whileParked?: true): Outcome => ({
  outcome: 'unknown',
  fact: { kind: 'not-recorded', channel, ...(whileParked === undefined ? {} : { whileParked }) },
});

/** First sample of a channel at or after `from`, within `withinS`; a car answers for its slow items every few seconds. */
export const START_WINDOW_S = 30;
export function valueAtStart(recording: Recording, attempt: Attempt, channel: ChannelName): number | undefined {
  const values = recording.channels[channel];
  if (values === undefined) return undefined;
  const { timeS } = recording;
  // A sample shortly before the start shows the car as it stood.
  for (let i = attempt.from; i < attempt.end && timeS[i]! - attempt.startS <= START_WINDOW_S; i++)
    if (!Number.isNaN(values[i]!)) return values[i]!;
  for (let i = attempt.from - 1; i >= 0 && attempt.startS - timeS[i]! <= START_WINDOW_S; i--)
    if (!Number.isNaN(values[i]!)) return values[i]!;
  return undefined;
}

/** Walks the samples that a channel has between two rows; a value holds until the next. `see` ends the walk with true. */
export function walk(
  recording: Recording,
  channel: ChannelName,
  from: number,
  to: number,
  see: (value: number, fromS: number, toS: number) => boolean,
): void {
  const values = recording.channels[channel]!;
  const { timeS } = recording;
  let last = -1;
  for (let i = from; i < to; i++) {
    if (Number.isNaN(values[i]!)) continue;
    if (last >= 0 && see(values[last]!, timeS[last]!, timeS[i]!)) return;
    last = i;
  }
  if (last >= 0) see(values[last]!, timeS[last]!, timeS[Math.min(to, timeS.length - 1)]!);
}
