import { INPUTS, type InputId } from '../system/network.ts';

export const INPUT_INDEX: Readonly<Record<InputId, number>> = Object.fromEntries(
  INPUTS.map((id, i) => [id, i]),
) as Record<InputId, number>;

/** A quantity from outside over time: a constant, or straight lines between points. */
export type Series = number | { readonly timeS: readonly number[]; readonly value: readonly number[] };

/**
 * Value of a series at a time; before the first and after the last point it stays.
 *
 * @param series constant or points
 * @param timeS time on the scenario's clock [s]
 * @returns the value, in the unit of the series
 */
export function seriesAt(series: Series, timeS: number): number {
  if (typeof series === 'number') return series;
  const { timeS: t, value } = series;
  const last = t.length - 1;
  if (timeS <= t[0]!) return value[0]!;
  if (timeS >= t[last]!) return value[last]!;
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (t[middle]! <= timeS) low = middle;
    else high = middle;
  }
  const share = (timeS - t[low]!) / (t[high]! - t[low]!);
  return value[low]! + share * (value[high]! - value[low]!);
}

/**
 * Times at which the slope of a series changes: the integrator stops there.
 *
 * @param series constant or points
 * @returns times [s], none for a constant
 */
export function seriesKnots(series: Series): readonly number[] {
  return typeof series === 'number' ? [] : series.timeS;
}

/**
 * The inputs inside one stretch between two stops: each a straight line in time, so that their slopes are known
 * exactly.
 */
export class Inputs {
  readonly value = new Float64Array(INPUTS.length);
  private readonly from = new Float64Array(INPUTS.length);
  private readonly slope = new Float64Array(INPUTS.length);
  private startS = 0;
  moving = false;

  /** Sets the straight lines between `startS` and `endS` from values at both ends (`last` just before the end). */
  setStretch(startS: number, endS: number, first: ArrayLike<number>, last: ArrayLike<number>): void {
    this.startS = startS;
    this.moving = false;
    const length = endS - startS;
    for (let i = 0; i < INPUTS.length; i++) {
      this.from[i] = first[i]!;
      this.slope[i] = length > 0 ? (last[i]! - first[i]!) / length : 0;
      if (this.slope[i] !== 0) this.moving = true;
      this.value[i] = first[i]!;
    }
  }

  /** Brings `value` to a time. */
  moveTo(timeS: number): void {
    if (!this.moving) return;
    const elapsed = timeS - this.startS;
    for (let i = 0; i < INPUTS.length; i++) this.value[i] = this.from[i]! + elapsed * this.slope[i]!;
  }
}
