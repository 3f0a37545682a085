import { subtractAmbient } from '../gauge-pressure.ts';
import { quantile, sortedSample } from '../value-range.ts';
import { PRESSURE_ITEMS } from './data-items.ts';
import { decideWideGauge, type WideGaugeDecision, type WideGaugeReading, widePressurePa } from './wide-gauge.ts';

export interface Series {
  readonly timeS: Float64Array;
  readonly values: Float64Array;
}

export interface PickedPressure {
  readonly item: number;
  readonly series: Series;
}

export interface PressureOptions {
  readonly wideGauge?: WideGaugeReading;
  /** Ambient pressure for absolute tank pressures where the car gives none, Pa. */
  readonly barometricAbsPa?: number;
}

/** Ends of item $32, Pa: a value there may be clipped. */
const NARROW_ENDS_PA = [-8192, 8191.75] as const;
/** Of the samples at an end, from which on the item cannot show the pressure (judgement). */
const CLIPPED_SHARE = 0.01;

/**
 * Tank gauge pressure from whichever items a car gives: $32 (0.25 Pa) unless it is clipped, else $54 (1 Pa), else $53
 * (5 Pa, absolute; the car's barometer, or a given one, is subtracted, never a standard atmosphere).
 */
export function pickPressure(
  narrow: Series | undefined,
  absolute: Series | undefined,
  wide: Series | undefined,
  barometer: Series | undefined,
  options: PressureOptions,
  remarks: string[],
): { readonly picked?: PickedPressure; readonly wideGauge?: WideGaugeDecision } {
  const absoluteGauge = absolute === undefined ? undefined : gaugeOf(absolute, barometer, options, remarks);
  const firstOther = narrow?.values[0] ?? absoluteGauge?.values[0];
  const wideGauge = wide === undefined ? undefined : decideWideGauge(wide.values[0]!, firstOther, options.wideGauge);
  if (wideGauge !== undefined) remarks.push(wideGauge.words);
  const clipped = narrow === undefined ? 0 : clippedShare(narrow.values);
  const result = (item: number, series: Series) => ({
    picked: { item, series },
    ...(wideGauge === undefined ? {} : { wideGauge }),
  });
  if (narrow !== undefined && (clipped < CLIPPED_SHARE || (wide === undefined && absoluteGauge === undefined)))
    return result(PRESSURE_ITEMS.narrow, narrow);
  if (narrow !== undefined)
    remarks.push(
      `item $32 stands at the end of its range in ${Math.round(100 * clipped)} % of its samples; another item was taken`,
    );
  if (wide !== undefined && wideGauge !== undefined)
    return result(PRESSURE_ITEMS.wide, {
      timeS: wide.timeS,
      values: wide.values.map((raw) => widePressurePa(raw, wideGauge.reading)),
    });
  return absoluteGauge === undefined
    ? wideGauge === undefined
      ? {}
      : { wideGauge }
    : result(PRESSURE_ITEMS.absolute, absoluteGauge);
}

function clippedShare(values: Float64Array): number {
  let clipped = 0;
  for (const value of values) if (value <= NARROW_ENDS_PA[0] || value >= NARROW_ENDS_PA[1]) clipped++;
  return clipped / values.length;
}

function gaugeOf(
  absolute: Series,
  barometer: Series | undefined,
  options: PressureOptions,
  remarks: string[],
): Series | undefined {
  const ambient =
    options.barometricAbsPa ?? (barometer === undefined ? undefined : quantile(sortedSample(barometer.values), 0.5));
  if (ambient === undefined) {
    remarks.push(
      'item $53 is absolute and no barometric pressure ($33) was recorded or given: record $33 too, or give the barometric pressure',
    );
    return undefined;
  }
  const values = absolute.values.slice();
  remarks.push(subtractAmbient(values, ambient, 'item $53'));
  if (options.barometricAbsPa === undefined)
    remarks.push('the barometer resolves 1 kPa, so the zero of the tank pressure is known to 0.5 kPa only');
  return { timeS: absolute.timeS, values };
}
