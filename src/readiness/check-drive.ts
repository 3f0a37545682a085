import type { Recording } from '../recording/recording.ts';
import type { Attempt } from './attempts.ts';
import type { Condition } from './conditions.ts';
import { isWithin, limitsOf, notRecorded, type Outcome, stepOf, walk } from './samples.ts';

type Of<Kind extends Condition['kind']> = Extract<Condition, { kind: Kind }>;

export function checkThroughout(recording: Recording, attempt: Attempt, condition: Of<'throughout'>): Outcome {
  const { channel, toleratedS } = condition;
  if (recording.channels[channel] === undefined) return notRecorded(channel);
  const limits = limitsOf(condition);
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
  if (blocked === undefined) return { outcome: 'met', fact: { kind: 'throughout', channel, limits } };
  return {
    outcome: 'blocked',
    atS: blocked.atS,
    fact: { kind: 'throughout', channel, value: blocked.value, limits },
  };
}

export function checkTimeInRange(recording: Recording, attempt: Attempt, condition: Of<'time-in-range'>): Outcome {
  const { channel, leastS, unbroken } = condition;
  if (recording.channels[channel] === undefined) return notRecorded(channel);
  let sumS = 0;
  let reachedS = 0;
  let metS: number | undefined;
  walk(recording, channel, attempt.from, attempt.stop, (value, fromS, toS) => {
    if (isWithin(value, condition, stepOf(channel))) {
      if (sumS + toS - fromS >= leastS) metS = fromS + leastS - sumS;
      sumS += toS - fromS;
    } else if (unbroken) sumS = 0;
    reachedS = Math.max(reachedS, sumS);
    return metS !== undefined;
  });
  const fact = { kind: 'time-in-range', channel, limits: limitsOf(condition), reachedS, leastS, unbroken } as const;
  return metS !== undefined ? { outcome: 'met', atS: metS, fact } : { outcome: 'blocked', atS: attempt.stopS, fact };
}

export function checkBoost(recording: Recording, attempt: Attempt, condition: Of<'boost'>): Outcome {
  const { manifoldAbsPa, barometricPa } = recording.channels;
  const { abovePa, leastS } = condition;
  if (manifoldAbsPa === undefined) return notRecorded('manifoldAbsPa');
  const barometer = barometricPa?.subarray(attempt.from, attempt.end).find((value) => !Number.isNaN(value));
  if (barometer === undefined) return notRecorded('barometricPa');
  let sumS = 0;
  let reachedS = 0;
  let metS: number | undefined;
  walk(recording, 'manifoldAbsPa', attempt.from, attempt.stop, (value, fromS, toS) => {
    sumS = value >= barometer + abovePa ? sumS + toS - fromS : 0;
    if (sumS >= leastS) metS ??= toS;
    reachedS = Math.max(reachedS, sumS);
    return metS !== undefined;
  });
  const fact = { kind: 'boost', reachedS, leastS } as const;
  return metS !== undefined ? { outcome: 'met', atS: metS, fact } : { outcome: 'blocked', atS: attempt.stopS, fact };
}
