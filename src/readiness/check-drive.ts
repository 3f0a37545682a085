import { channelInWords } from '../recording/own-columns.ts';
import type { Recording } from '../recording/recording.ts';
import type { Attempt } from './attempts.ts';
import type { Condition } from './conditions.ts';
import { isWithin, limitWords, notRecorded, type Outcome, stepOf, walk } from './samples.ts';
import { figure, minutes } from './words.ts';

type Of<Kind extends Condition['kind']> = Extract<Condition, { kind: Kind }>;

export function checkThroughout(recording: Recording, attempt: Attempt, condition: Of<'throughout'>): Outcome {
  const { channel, toleratedS } = condition;
  if (recording.channels[channel] === undefined) return notRecorded(channel);
  let outsideS: number | undefined;
  let blocked: { atS: number; value: number } | undefined;
  let seen = 0;
  walk(recording, channel, attempt.from, attempt.end, (value, fromS, toS) => {
    seen++;
    if (isWithin(value, condition, stepOf(channel))) outsideS = undefined;
    else {
      outsideS ??= fromS;
      if (toS - outsideS > toleratedS) blocked = { atS: outsideS, value };
    }
    return blocked !== undefined;
  });
  if (seen === 0) return notRecorded(channel);
  if (blocked === undefined) return { outcome: 'met', words: `${channelInWords(channel)} stays within its limits` };
  return {
    outcome: 'blocked',
    atS: blocked.atS,
    words: `${channelInWords(channel)} ${figure(channel, blocked.value)}, ${limitWords(channel, blocked.value, condition)}`,
  };
}

export function checkTimeInRange(recording: Recording, attempt: Attempt, condition: Of<'time-in-range'>): Outcome {
  const { channel, leastS, unbroken } = condition;
  if (recording.channels[channel] === undefined) return notRecorded(channel);
  let sumS = 0;
  let bestS = 0;
  let metS: number | undefined;
  walk(recording, channel, attempt.from, attempt.stop, (value, fromS, toS) => {
    if (isWithin(value, condition, stepOf(channel))) {
      if (sumS + toS - fromS >= leastS) metS = fromS + leastS - sumS;
      sumS += toS - fromS;
    } else if (unbroken) sumS = 0;
    bestS = Math.max(bestS, sumS);
    return metS !== undefined;
  });
  const range = limitWords(channel, Number.NaN, condition);
  const wanted = `${minutes(leastS)}${unbroken ? ' in one piece' : ''} wanted`;
  return metS !== undefined
    ? { outcome: 'met', atS: metS, words: `${channelInWords(channel)} ${range} for ${minutes(leastS)}` }
    : {
        outcome: 'blocked',
        atS: attempt.stopS,
        words: `${channelInWords(channel)} ${range} for only ${minutes(bestS)}, ${wanted}`,
      };
}

export function checkBoost(recording: Recording, attempt: Attempt, condition: Of<'boost'>): Outcome {
  const { manifoldAbsPa, barometricPa } = recording.channels;
  if (manifoldAbsPa === undefined) return notRecorded('manifoldAbsPa');
  const barometer = barometricPa?.subarray(attempt.from, attempt.end).find((value) => !Number.isNaN(value));
  if (barometer === undefined) return notRecorded('barometricPa');
  let sumS = 0;
  let bestS = 0;
  let metS: number | undefined;
  walk(recording, 'manifoldAbsPa', attempt.from, attempt.stop, (value, fromS, toS) => {
    sumS = value >= barometer + condition.abovePa ? sumS + toS - fromS : 0;
    if (sumS >= condition.leastS) metS ??= toS;
    bestS = Math.max(bestS, sumS);
    return metS !== undefined;
  });
  const wanted = `${condition.leastS} s in one piece wanted`;
  return metS !== undefined
    ? { outcome: 'met', atS: metS, words: `boost for ${condition.leastS} s` }
    : { outcome: 'blocked', atS: attempt.stopS, words: `boost for only ${Math.round(bestS)} s, ${wanted}` };
}
