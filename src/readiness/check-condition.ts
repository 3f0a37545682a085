import { channelInWords } from '../recording/own-columns.ts';
import type { Recording } from '../recording/recording.ts';
import type { Attempt } from './attempts.ts';
import { checkBoost, checkThroughout, checkTimeInRange } from './check-drive.ts';
import { checkRefuelling, checkSwing, checkWhileParked } from './check-parked.ts';
import type { ConditionResult } from './condition-result.ts';
import type { Condition } from './conditions.ts';
import {
  isWithin,
  limitWords,
  notRecorded,
  type Outcome,
  stepOf,
  TEMPERATURE_STEP_K,
  valueAtStart,
} from './samples.ts';
import { figure, minutes } from './words.ts';

/** Holds one attempt against one condition. */
export function checkCondition(
  recording: Recording,
  attempt: Attempt,
  condition: Condition,
  codes: readonly string[] | undefined,
): ConditionResult {
  return { condition, ...check(recording, attempt, condition, codes) };
}

function check(
  recording: Recording,
  attempt: Attempt,
  condition: Condition,
  codes: readonly string[] | undefined,
): Outcome {
  const { startS, stopS, endS } = attempt;
  switch (condition.kind) {
    case 'at-start': {
      if (attempt.startUnseen && recording.channels[condition.channel] !== undefined)
        return { outcome: 'unknown', words: 'the recording began with the engine running: the start was not seen' };
      const value = valueAtStart(recording, attempt, condition.channel);
      if (value === undefined) return notRecorded(condition.channel);
      const { channel } = condition;
      return {
        outcome: isWithin(value, condition, stepOf(channel)) ? 'met' : 'blocked',
        atS: startS,
        words: `${channelInWords(channel)} ${figure(channel, value)} at start, ${limitWords(channel, value, condition)}`,
      };
    }
    case 'cold-start': {
      if (attempt.startUnseen) return { outcome: 'unknown', words: 'the recording began with the engine running' };
      const coolant = valueAtStart(recording, attempt, 'coolantTemperatureK');
      const air = valueAtStart(recording, attempt, condition.air);
      if (coolant === undefined) return notRecorded('coolantTemperatureK');
      if (air === undefined) return notRecorded(condition.air);
      return {
        outcome: coolant - air <= condition.mostK + TEMPERATURE_STEP_K ? 'met' : 'blocked',
        atS: startS,
        words: `coolant ${Math.round(coolant - air)} K above ${channelInWords(condition.air)} at start, limit ${Math.round(condition.mostK)} K`,
      };
    }
    case 'parked-before': {
      const { parkedBefore } = attempt;
      const wanted = `${minutes(condition.leastS)} wanted`;
      if (parkedBefore === undefined)
        return { outcome: 'unknown', words: `how long it was parked before is not known, ${wanted}` };
      if (parkedBefore.seconds >= condition.leastS)
        return { outcome: 'met', atS: startS, words: `parked ${minutes(parkedBefore.seconds)} before, ${wanted}` };
      if (parkedBefore.atLeast)
        return { outcome: 'unknown', words: `parked at least ${minutes(parkedBefore.seconds)} before, ${wanted}` };
      return {
        outcome: 'blocked',
        atS: startS,
        words: `parked only ${minutes(parkedBefore.seconds)} before, ${wanted}`,
      };
    }
    case 'throughout':
      return checkThroughout(recording, attempt, condition);
    case 'time-in-range':
      return checkTimeInRange(recording, attempt, condition);
    case 'engine-runs': {
      const ran = stopS - startS;
      return ran >= condition.leastS
        ? {
            outcome: 'met',
            atS: startS + condition.leastS,
            words: `engine ran ${minutes(ran)}, ${minutes(condition.leastS)} wanted`,
          }
        : {
            outcome: 'blocked',
            atS: stopS,
            words: `engine ran only ${minutes(ran)}, ${minutes(condition.leastS)} wanted`,
          };
    }
    case 'boost':
      return checkBoost(recording, attempt, condition);
    case 'parked-after': {
      const off = attempt.stop >= recording.timeS.length ? 0 : endS - stopS;
      const wanted = `${minutes(condition.leastS)} wanted`;
      if (off >= condition.leastS)
        return { outcome: 'met', atS: stopS + condition.leastS, words: `key off for ${minutes(off)}, ${wanted}` };
      return attempt.endedByStart
        ? { outcome: 'blocked', atS: endS, words: `key on again after ${minutes(off)}, ${wanted}` }
        : { outcome: 'unknown', words: `the recording ends ${minutes(off)} after key-off, ${wanted}` };
    }
    case 'while-parked':
      return checkWhileParked(recording, attempt, condition);
    case 'no-refuelling':
      return checkRefuelling(recording, attempt, condition.mostRise);
    case 'swing':
      return checkSwing(recording, attempt, condition.leastK);
    case 'no-codes': {
      if (codes === undefined) return { outcome: 'unknown', words: 'the codes were not read' };
      const found = codes.filter((code) => condition.codes.includes(code));
      return found.length === 0
        ? { outcome: 'met', atS: startS, words: 'no related code is stored or pending' }
        : {
            outcome: 'blocked',
            atS: startS,
            words: `${found.join(', ')} stored or pending: the monitor waits for the repair`,
          };
    }
  }
}
