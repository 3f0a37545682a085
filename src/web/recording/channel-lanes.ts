/** The channels of a recording as lanes: pressures first and tall, commands low, each in the unit chosen. */
import { CHANNEL_ORDER, OWN_COLUMNS } from '../../recording/own-columns.ts';
import type { ChannelName } from '../../recording/recording.ts';
import { unitBySymbol } from '../../units/parse-unit.ts';
import { shownSymbol, type Units } from '../units/units.ts';
import type { Readout } from './chart/cursor-values.tsx';
import { airyRange, type Lane, type Shown } from './chart/lanes.ts';
import { extent } from './chart/pyramid.ts';
import type { Column } from './chart/source.ts';

export interface ChannelWords {
  readonly channels: Readonly<Record<ChannelName, string>>;
  readonly states: Readonly<Record<string, readonly [string, string]>>;
}

/** How a channel is shown: unit, and decimals for a value beside a car. */
export function shownAs(channel: ChannelName, units: Units): Shown {
  const { quantity, unit } = OWN_COLUMNS[channel];
  if (quantity === 'pressure' || quantity === 'temperature') {
    const { factor, offset } = units.unit(quantity);
    return { unit: units.symbol(quantity), factor, offset, decimals: units.decimals(quantity) };
  }
  if (quantity === 'volume flow') {
    const symbol = units.choice.volume === 'gal' ? 'gal/min' : 'L/min';
    const { factor } = unitBySymbol(symbol);
    return { unit: symbol, factor, offset: 0, decimals: 1 };
  }
  if (quantity === 'switch' || unit === undefined) return { unit: '', factor: 1, offset: 0, decimals: 0 };
  // The channel counts in 1/min, as every source does.
  if (quantity === 'rotational speed') return { unit: '1/min', factor: 1, offset: 0, decimals: 0 };
  const { factor, offset } = unitBySymbol(unit);
  const decimals = quantity === 'voltage' ? 3 : channel === 'fuelLevel' || quantity === 'speed' ? 0 : 1;
  return { unit: shownSymbol(unit), factor, offset, decimals };
}

/** A lane is at least so high, SI: noise of a still channel must not fill it. Judgement. */
const SMALLEST: Readonly<Record<string, number>> = {
  pressure: 100,
  temperature: 4,
  fraction: 0.04,
  'rotational speed': 100,
  speed: 2,
  voltage: 0.1,
  'volume flow': 1e-5,
};

/** Judged first: the channel that the eye follows. */
const LEADING: readonly ChannelName[] = ['tankPressureGaugePa', 'pumpPressureGaugePa', 'canisterPressureGaugePa'];

export const channelOrder = (present: readonly ChannelName[]): readonly ChannelName[] =>
  CHANNEL_ORDER.filter((name) => present.includes(name));

export function channelLane(
  channel: ChannelName,
  index: number,
  column: Column,
  words: ChannelWords,
  units: Units,
  isTall: boolean,
): Lane {
  const { quantity } = OWN_COLUMNS[channel];
  const states = words.states[channel];
  const [low, high] = extent(column.pyramid) ?? [0, 1];
  const isSwitch = quantity === 'switch';
  return {
    id: channel,
    title: words.channels[channel],
    shown: shownAs(channel, units),
    range: isSwitch ? [-0.15, 1.15] : airyRange(low, high, SMALLEST[quantity] ?? 0.01),
    ...(states === undefined ? {} : { states }),
    layers: [{ kind: isSwitch || channel === 'purgeDuty' ? 'steps' : 'line', column: index, pen: 'recorded' }],
    size: isSwitch ? 'switch' : isTall ? 'tall' : 'low',
  };
}

export interface ChannelLanes {
  readonly lanes: readonly Lane[];
  readonly readouts: readonly Readout[];
}

export function channelLanes(
  order: readonly ChannelName[],
  columns: readonly Column[],
  words: ChannelWords,
  units: Units,
): ChannelLanes {
  const tall = LEADING.find((name) => order.includes(name)) ?? order[0];
  const lanes = order.map((name, k) => channelLane(name, k, columns[k]!, words, units, name === tall));
  return {
    lanes: [...lanes].sort((a, b) => Number(b.size === 'tall') - Number(a.size === 'tall')),
    readouts: lanes.map(({ id, title, shown, states }, k) => ({
      id,
      title,
      column: k,
      shown,
      ...(states === undefined ? {} : { states }),
    })),
  };
}
