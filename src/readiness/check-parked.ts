import type { Recording } from '../recording/recording.ts';
import type { Attempt } from './attempts.ts';
import type { Condition } from './conditions.ts';
import { isWithin, limitsOf, notRecorded, type Outcome, START_WINDOW_S, stepOf, walk } from './samples.ts';

type Of<Kind extends Condition['kind']> = Extract<Condition, { kind: Kind }>;

export function checkWhileParked(recording: Recording, attempt: Attempt, condition: Of<'while-parked'>): Outcome {
  const { channel } = condition;
  if (recording.channels[channel] === undefined) return notRecorded(channel);
  const limits = limitsOf(condition);
  let blocked: { atS: number; value: number } | undefined;
  let seen = 0;
  walk(recording, channel, attempt.stop, attempt.end, (value, fromS) => {
    seen++;
    if (!isWithin(value, condition, stepOf(channel))) blocked = { atS: fromS, value };
    return blocked !== undefined;
  });
  if (blocked !== undefined)
    return {
      outcome: 'blocked',
      atS: blocked.atS,
      fact: { kind: 'while-parked', channel, value: blocked.value, limits },
    };
  return seen === 0 ? notRecorded(channel, true) : { outcome: 'met', fact: { kind: 'while-parked', channel, limits } };
}

export function checkRefuelling(recording: Recording, attempt: Attempt, mostRise: number): Outcome {
  if (recording.channels.fuelLevel === undefined) return notRecorded('fuelLevel');
  // Slosh is over shortly after the stop; the lowest settled level is what a rise is counted from.
  let lowest = Number.POSITIVE_INFINITY;
  let blocked: { atS: number; rise: number } | undefined;
  let seen = 0;
  walk(recording, 'fuelLevel', attempt.stop, attempt.end, (value, fromS) => {
    if (fromS - attempt.stopS < START_WINDOW_S) return false;
    seen++;
    lowest = Math.min(lowest, value);
    if (value - lowest > mostRise) blocked = { atS: fromS, rise: value - lowest };
    return blocked !== undefined;
  });
  if (blocked !== undefined)
    return { outcome: 'blocked', atS: blocked.atS, fact: { kind: 'no-refuelling', rise: blocked.rise } };
  return seen === 0 ? notRecorded('fuelLevel', true) : { outcome: 'met', fact: { kind: 'no-refuelling' } };
}

export function checkSwing(recording: Recording, attempt: Attempt, leastK: number): Outcome {
  if (recording.channels.ambientTemperatureK === undefined) return notRecorded('ambientTemperatureK');
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let metS: number | undefined;
  walk(recording, 'ambientTemperatureK', attempt.stop, attempt.end, (value, fromS) => {
    low = Math.min(low, value);
    high = Math.max(high, value);
    if (high - low >= leastK) metS ??= fromS;
    return metS !== undefined;
  });
  if (high < low) return notRecorded('ambientTemperatureK', true);
  const fact = { kind: 'swing', swingK: high - low, leastK } as const;
  if (metS !== undefined) return { outcome: 'met', atS: metS, fact };
  return attempt.endedByStart ? { outcome: 'blocked', atS: attempt.endS, fact } : { outcome: 'unknown', fact };
}
