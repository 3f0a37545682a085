import { channelInWords } from '../recording/own-columns.ts';
import type { Recording } from '../recording/recording.ts';
import type { Attempt } from './attempts.ts';
import type { Condition } from './conditions.ts';
import { isWithin, limitWords, notRecorded, type Outcome, START_WINDOW_S, stepOf, walk } from './samples.ts';
import { figure } from './words.ts';

type Of<Kind extends Condition['kind']> = Extract<Condition, { kind: Kind }>;

export function checkWhileParked(recording: Recording, attempt: Attempt, condition: Of<'while-parked'>): Outcome {
  const { channel } = condition;
  if (recording.channels[channel] === undefined) return notRecorded(channel);
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
      words: `${channelInWords(channel)} ${figure(channel, blocked.value)} while parked, ${limitWords(channel, blocked.value, condition)}`,
    };
  return seen === 0
    ? { outcome: 'unknown', words: `${channelInWords(channel)} was not recorded while parked` }
    : { outcome: 'met', words: `${channelInWords(channel)} within its limits while parked` };
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
    return {
      outcome: 'blocked',
      atS: blocked.atS,
      words: `fuel level rises by ${Math.round(100 * blocked.rise)} % while parked: fuel was added`,
    };
  return seen === 0
    ? { outcome: 'unknown', words: 'fuel level was not recorded while parked' }
    : { outcome: 'met', words: 'no fuel was added while parked' };
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
  if (metS !== undefined)
    return { outcome: 'met', atS: metS, words: `ambient temperature swings by ${Math.round(leastK)} K` };
  if (high < low) return { outcome: 'unknown', words: 'ambient temperature was not recorded while parked' };
  const found = `ambient temperature swings by ${Math.round(high - low)} K while parked, ${Math.round(leastK)} K wanted`;
  return attempt.endedByStart
    ? { outcome: 'blocked', atS: attempt.endS, words: found }
    : { outcome: 'unknown', words: `${found}, and the recording ends before` };
}
