import type { Recording } from '../recording/recording.ts';
import type { Attempt } from './attempts.ts';
import { checkBoost, checkThroughout, checkTimeInRange } from './check-drive.ts';
import { checkRefuelling, checkSwing, checkWhileParked } from './check-parked.ts';
import type { ConditionResult } from './condition-result.ts';
import type { Condition } from './conditions.ts';
import { isWithin, limitsOf, notRecorded, type Outcome, stepOf, TEMPERATURE_STEP_K, valueAtStart } from './samples.ts';

/** Holds one attempt against one condition. */
export function checkCondition(
  recording: Recording,
  attempt: Attempt,
  condition: Condition,
  codes: readonly string[] | undefined,
): ConditionResult {
  return { condition, ...check(recording, attempt, condition, codes) };
}

const START_UNSEEN: Outcome = { outcome: 'unknown', fact: { kind: 'start-unseen' } };

function check(
  recording: Recording,
  attempt: Attempt,
  condition: Condition,
  codes: readonly string[] | undefined,
): Outcome {
  const { startS, stopS, endS } = attempt;
  switch (condition.kind) {
    case 'at-start': {
      const { channel } = condition;
      if (attempt.startUnseen && recording.channels[channel] !== undefined) return START_UNSEEN;
      const value = valueAtStart(recording, attempt, channel);
      if (value === undefined) return notRecorded(channel);
      return {
        outcome: isWithin(value, condition, stepOf(channel)) ? 'met' : 'blocked',
        atS: startS,
        fact: { kind: 'at-start', channel, value, limits: limitsOf(condition) },
      };
    }
    case 'cold-start': {
      const { air, mostK } = condition;
      if (attempt.startUnseen) return START_UNSEEN;
      const coolantK = valueAtStart(recording, attempt, 'coolantTemperatureK');
      const airK = valueAtStart(recording, attempt, air);
      if (coolantK === undefined) return notRecorded('coolantTemperatureK');
      if (airK === undefined) return notRecorded(air);
      const aboveK = coolantK - airK;
      return {
        outcome: aboveK <= mostK + TEMPERATURE_STEP_K ? 'met' : 'blocked',
        atS: startS,
        fact: { kind: 'cold-start', air, aboveK, mostK },
      };
    }
    case 'parked-before': {
      const { parkedBefore } = attempt;
      const { leastS } = condition;
      if (parkedBefore === undefined) return { outcome: 'unknown', fact: { kind: 'parked-before', leastS } };
      const { seconds, atLeast } = parkedBefore;
      const fact = { kind: 'parked-before', leastS, seconds, atLeast } as const;
      if (seconds >= leastS) return { outcome: 'met', atS: startS, fact };
      return atLeast ? { outcome: 'unknown', fact } : { outcome: 'blocked', atS: startS, fact };
    }
    case 'throughout':
      return checkThroughout(recording, attempt, condition);
    case 'time-in-range':
      return checkTimeInRange(recording, attempt, condition);
    case 'engine-runs': {
      const { leastS } = condition;
      const ranS = stopS - startS;
      const fact = { kind: 'engine-runs', ranS, leastS } as const;
      return ranS >= leastS ? { outcome: 'met', atS: startS + leastS, fact } : { outcome: 'blocked', atS: stopS, fact };
    }
    case 'boost':
      return checkBoost(recording, attempt, condition);
    case 'parked-after': {
      const { leastS } = condition;
      const offS = attempt.stop >= recording.timeS.length ? 0 : endS - stopS;
      const fact = { kind: 'parked-after', offS, leastS } as const;
      if (offS >= leastS) return { outcome: 'met', atS: stopS + leastS, fact };
      return attempt.endedByStart ? { outcome: 'blocked', atS: endS, fact } : { outcome: 'unknown', fact };
    }
    case 'while-parked':
      return checkWhileParked(recording, attempt, condition);
    case 'no-refuelling':
      return checkRefuelling(recording, attempt, condition.mostRise);
    case 'swing':
      return checkSwing(recording, attempt, condition.leastK);
    case 'no-codes': {
      if (codes === undefined) return { outcome: 'unknown', fact: { kind: 'codes-not-read' } };
      const found = codes.filter((code) => condition.codes.includes(code));
      return { outcome: found.length === 0 ? 'met' : 'blocked', atS: startS, fact: { kind: 'no-codes', found } };
    }
  }
}
