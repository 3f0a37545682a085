/**
 * What comes from a car live, as rows of a recording: one row for each answer, with what that answer held. Nothing is filled
 * in; a row without a sample of a channel has NaN there.
 */
import { dataItem, PRESSURE_ITEMS } from '../recording/bus/data-items.ts';
import { decideWideGauge, type WideGaugeReading, widePressurePa } from '../recording/bus/wide-gauge.ts';
import type { ChannelName, Recording } from '../recording/recording.ts';
import type { LiveSample } from './live-session.ts';

type Values = Map<ChannelName, number>;

export class LiveRows {
  /** Of the first row, seconds since 1970. */
  firstS: number | undefined;
  private readonly done: { readonly timeS: number; readonly values: Values }[] = [];
  private open: { readonly timeS: number; readonly values: Values } | undefined;
  private barometricPa: number | undefined;
  private wideReading: WideGaugeReading | undefined;
  private pressureItem: number | undefined;

  /** Samples of one answer have one time; a later time ends its row. */
  add({ item, timeS, value }: LiveSample): void {
    const found = this.channelOf(item, value);
    if (found === undefined) return;
    if (this.open === undefined || timeS > this.open.timeS) {
      if (this.open !== undefined) this.done.push(this.open);
      this.firstS ??= timeS;
      this.open = { timeS, values: new Map() };
    }
    this.open.values.set(found.channel, found.value);
  }

  /** The rows that have ended since the last call, on a clock that begins with the first row; nothing when there is none. */
  take(isOver = false): Recording | undefined {
    if (isOver && this.open !== undefined) {
      this.done.push(this.open);
      this.open = undefined;
    }
    const rows = this.done.splice(0);
    if (rows.length === 0) return undefined;
    const names = new Set(rows.flatMap(({ values }) => [...values.keys()]));
    const channels: Partial<Record<ChannelName, Float64Array>> = {};
    for (const name of names) channels[name] = Float64Array.from(rows, ({ values }) => values.get(name) ?? Number.NaN);
    return { label: 'live', timeS: Float64Array.from(rows, ({ timeS }) => timeS - this.firstS!), channels };
  }

  /** Of several pressure items the first that comes is shown: a car is asked for one of them. */
  private channelOf(item: number, value: number): { channel: ChannelName; value: number } | undefined {
    const { narrow, wide, absolute } = PRESSURE_ITEMS;
    if (item !== narrow && item !== wide && item !== absolute) {
      const channel = dataItem(item)?.channel;
      if (channel === 'barometricPa') this.barometricPa ??= value;
      return channel === undefined ? undefined : { channel, value };
    }
    const gaugePa = this.gaugeOf(item, value);
    if (gaugePa === undefined) return undefined;
    this.pressureItem ??= item;
    return item === this.pressureItem ? { channel: 'tankPressureGaugePa', value: gaugePa } : undefined;
  }

  private gaugeOf(item: number, value: number): number | undefined {
    if (item === PRESSURE_ITEMS.narrow) return value;
    if (item === PRESSURE_ITEMS.absolute)
      return this.barometricPa === undefined ? undefined : value - this.barometricPa;
    this.wideReading ??= decideWideGauge(value, undefined, undefined).reading;
    return widePressurePa(value, this.wideReading);
  }
}
