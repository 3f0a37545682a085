import { channelInWords } from '../../recording/own-columns.ts';
import type { ChannelName } from '../../recording/recording.ts';
import type { Limits } from '../condition-result.ts';
import type { ReadinessFigures } from './figures.ts';
import type { ConditionWords } from './readiness-words.ts';

function range(channel: ChannelName, { low, high }: Limits, f: ReadinessFigures): string {
  if (low !== undefined && high !== undefined) return `within ${f.of(channel, low)} to ${f.of(channel, high)}`;
  if (low !== undefined) return `at least ${f.of(channel, low)}`;
  return high === undefined ? 'at any value' : `at most ${f.of(channel, high)}`;
}

/** The limit that a value breaks, or the limits that it keeps. */
function limit(channel: ChannelName, value: number, limits: Limits, f: ReadinessFigures): string {
  if (limits.low !== undefined && value < limits.low) return `at least ${f.of(channel, limits.low)} is wanted`;
  if (limits.high !== undefined && value > limits.high) return `limit ${f.of(channel, limits.high)}`;
  return range(channel, limits, f);
}

export const CONDITIONS_EN: ConditionWords = {
  channel: channelInWords,
  condition: (id) => id,
  mark: (mark) => mark,
  wanted: (condition, f) => {
    switch (condition.kind) {
      case 'at-start':
        return `${channelInWords(condition.channel)} ${range(condition.channel, condition, f)} when the engine starts`;
      case 'cold-start':
        return `coolant no more than ${f.kelvins(condition.mostK)} above ${channelInWords(condition.air)} when the engine starts`;
      case 'parked-before':
        return `engine off for ${f.duration(condition.leastS)} or more before the start`;
      case 'throughout':
        return `${channelInWords(condition.channel)} ${range(condition.channel, condition, f)} until the monitor is done; outside for ${f.duration(condition.toleratedS)} at most`;
      case 'time-in-range':
        return `${channelInWords(condition.channel)} ${range(condition.channel, condition, f)} for ${f.duration(condition.leastS)}${condition.unbroken ? ' in one piece' : ' in all'}`;
      case 'engine-runs':
        return `engine runs for ${f.duration(condition.leastS)} in one piece`;
      case 'boost':
        return `manifold ${f.pascals(condition.abovePa)} or more above the barometer for ${f.duration(condition.leastS)} in one piece`;
      case 'parked-after':
        return `key off for ${f.duration(condition.leastS)} after the drive`;
      case 'while-parked':
        return `${channelInWords(condition.channel)} ${range(condition.channel, condition, f)} while parked after the drive`;
      case 'no-refuelling':
        return `no fuel added while parked: level rises by ${f.percent(condition.mostRise)} at most`;
      case 'swing':
        return `ambient temperature changes by ${f.kelvins(condition.leastK)} or more while parked`;
      case 'no-codes':
        return `none of these stored or pending: ${condition.codes.join(', ')}`;
    }
  },
  found: ({ fact, outcome }, f) => {
    switch (fact.kind) {
      case 'start-unseen':
        return 'the recording began with the engine running: the start was not seen';
      case 'not-recorded':
        return `${channelInWords(fact.channel)} was not recorded${fact.whileParked === true ? ' while parked' : ''}`;
      case 'at-start':
        return `${channelInWords(fact.channel)} ${f.of(fact.channel, fact.value)} at start, ${limit(fact.channel, fact.value, fact.limits, f)}`;
      case 'cold-start':
        return `coolant ${f.kelvins(Math.abs(fact.aboveK))} ${fact.aboveK < 0 ? 'below' : 'above'} ${channelInWords(fact.air)} at start, limit ${f.kelvins(fact.mostK)} above`;
      case 'parked-before': {
        const wanted = `${f.duration(fact.leastS)} wanted`;
        if (fact.seconds === undefined) return `how long it was parked before is not known, ${wanted}`;
        const how = outcome === 'blocked' ? 'only ' : outcome === 'unknown' ? 'at least ' : '';
        return `parked ${how}${f.duration(fact.seconds)} before, ${wanted}`;
      }
      case 'throughout':
        return fact.value === undefined
          ? `${channelInWords(fact.channel)} stays within its limits`
          : `${channelInWords(fact.channel)} ${f.of(fact.channel, fact.value)}, ${limit(fact.channel, fact.value, fact.limits, f)}${fact.afterDone === true ? ', but only after all else was done' : ''}`;
      case 'time-in-range': {
        const name = `${channelInWords(fact.channel)} ${range(fact.channel, fact.limits, f)}`;
        return outcome === 'met'
          ? `${name} for ${f.duration(fact.leastS)}`
          : `${name} for only ${f.duration(fact.reachedS)}, ${f.duration(fact.leastS)}${fact.unbroken ? ' in one piece' : ''} wanted`;
      }
      case 'engine-runs':
        return `engine ran ${outcome === 'met' ? '' : 'only '}${f.duration(fact.ranS)}, ${f.duration(fact.leastS)} wanted`;
      case 'boost':
        return outcome === 'met'
          ? `boost for ${f.duration(fact.leastS)}`
          : `boost for only ${f.duration(fact.reachedS)}, ${f.duration(fact.leastS)} in one piece wanted`;
      case 'parked-after': {
        const wanted = `${f.duration(fact.leastS)} wanted`;
        if (outcome === 'met') return `key off for ${f.duration(fact.offS)}, ${wanted}`;
        return outcome === 'blocked'
          ? `key on again after ${f.duration(fact.offS)}, ${wanted}`
          : `the recording ends ${f.duration(fact.offS)} after key-off, ${wanted}`;
      }
      case 'while-parked':
        return fact.value === undefined
          ? `${channelInWords(fact.channel)} within its limits while parked`
          : `${channelInWords(fact.channel)} ${f.of(fact.channel, fact.value)} while parked, ${limit(fact.channel, fact.value, fact.limits, f)}`;
      case 'no-refuelling':
        return fact.rise === undefined
          ? 'no fuel was added while parked'
          : `fuel level rises by ${f.percent(fact.rise)} while parked: fuel was added`;
      case 'swing':
        if (outcome === 'met') return `ambient temperature swings by ${f.kelvins(fact.leastK)}`;
        return `ambient temperature swings by ${f.kelvins(fact.swingK)} while parked, ${f.kelvins(fact.leastK)} wanted${outcome === 'unknown' ? ', and the recording ends before' : ''}`;
      case 'codes-not-read':
        return 'the codes were not read';
      case 'no-codes':
        return fact.found.length === 0
          ? 'no related code is stored or pending'
          : `${fact.found.join(', ')} stored or pending: the monitor waits for the repair`;
    }
  },
};
