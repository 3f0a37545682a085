/** The figures of a condition as a form has them: in the unit that a technician reads, and back. */
import type { Condition } from '../../readiness/conditions.ts';
import { CHANNELS, type ChannelName } from '../../recording/recording.ts';
import type { MONITOR_EN } from '../text/monitor.en.ts';
import type { Units } from '../units/units.ts';

type Label = Exclude<keyof typeof MONITOR_EN.conditions, 'typical' | 'own' | 'removeOne' | 'badFile'>;

export interface Figure {
  readonly key: string;
  readonly label: Label;
  readonly unit: string;
  readonly decimals: number;
  readonly toShown: (si: number) => number;
  readonly toSi: (shown: number) => number;
  /** A limit may be left out; other figures may not. */
  readonly isLimit?: true;
}

const scaled = (factor: number) => ({
  toShown: (si: number): number => si / factor,
  toSi: (shown: number): number => shown * factor,
});
const MINUTE_S = 60;
const HOUR_S = 3600;
const PER_CENT = 0.01;
const KILOPASCAL = 1000;

const minutes = (key: string, label: Label): Figure => ({ key, label, unit: 'min', decimals: 1, ...scaled(MINUTE_S) });
const hours = (key: string, label: Label): Figure => ({ key, label, unit: 'h', decimals: 2, ...scaled(HOUR_S) });
const seconds = (key: string, label: Label): Figure => ({ key, label, unit: 's', decimals: 1, ...scaled(1) });

function ofChannel(channel: ChannelName, units: Units): Pick<Figure, 'unit' | 'decimals' | 'toShown' | 'toSi'> {
  const unit = CHANNELS[channel];
  if (unit === 'K')
    return {
      unit: units.symbol('temperature'),
      decimals: 1,
      toShown: (si) => units.from('temperature', si),
      toSi: (shown) => units.to('temperature', shown),
    };
  if (channel === 'vehicleSpeedMPerS')
    return units.choice.length === 'in'
      ? { unit: 'mph', decimals: 0, ...scaled(0.44704) }
      : { unit: 'km/h', decimals: 1, ...scaled(1 / 3.6) };
  if (unit.startsWith('fraction')) return { unit: '%', decimals: 1, ...scaled(PER_CENT) };
  if (unit.startsWith('Pa')) return { unit: 'kPa', decimals: 2, ...scaled(KILOPASCAL) };
  return { unit, decimals: 1, ...scaled(1) };
}

function limits(channel: ChannelName, units: Units): readonly Figure[] {
  const shown = ofChannel(channel, units);
  return [
    { key: 'low', label: 'low', isLimit: true, ...shown },
    { key: 'high', label: 'high', isLimit: true, ...shown },
  ];
}

function difference(key: string, label: Label, units: Units): Figure {
  const factor = units.unit('temperature').factor;
  return { key, label, unit: factor === 1 ? 'K' : '°F', decimals: 1, ...scaled(factor) };
}

export function figuresOf(condition: Condition, units: Units): readonly Figure[] {
  switch (condition.kind) {
    case 'at-start':
    case 'while-parked':
      return limits(condition.channel, units);
    case 'throughout':
      return [...limits(condition.channel, units), seconds('toleratedS', 'tolerated')];
    case 'time-in-range':
      return [...limits(condition.channel, units), minutes('leastS', 'least')];
    case 'cold-start':
      return [difference('mostK', 'mostAbove', units)];
    case 'parked-before':
    case 'parked-after':
      return [condition.leastS < 2 * HOUR_S ? minutes('leastS', 'least') : hours('leastS', 'least')];
    case 'engine-runs':
      return [minutes('leastS', 'least')];
    case 'boost':
      return [
        { key: 'abovePa', label: 'above', unit: 'kPa', decimals: 2, ...scaled(KILOPASCAL) },
        seconds('leastS', 'least'),
      ];
    case 'no-refuelling':
      return [{ key: 'mostRise', label: 'mostRise', unit: '%', decimals: 1, ...scaled(PER_CENT) }];
    case 'swing':
      return [difference('leastK', 'leastChange', units)];
    case 'no-codes':
      return [];
  }
}

/** Whether the limits leave room, and every other figure is above zero. */
export function problemOf(condition: Condition): 'order' | 'positive' | undefined {
  if ('low' in condition || 'high' in condition) {
    const { low = Number.NEGATIVE_INFINITY, high = Number.POSITIVE_INFINITY } = condition;
    if (low >= high) return 'order';
  }
  for (const key of ['leastS', 'mostK', 'leastK', 'mostRise'] as const) {
    const value = (condition as Readonly<Record<string, unknown>>)[key];
    if (typeof value === 'number' && value <= 0) return 'positive';
  }
  return undefined;
}
