/** A logarithmic scale for sizes. Pure. */
export type ScaleRange = readonly [low: number, high: number];

/** Air left and right of what must be seen; never narrower than 0.2 to 3 mm, so that findings can be compared by eye. */
export function scaleRange(values: readonly number[]): ScaleRange {
  const least = Math.min(...values.filter((value) => value > 0));
  const most = Math.max(...values);
  return [Math.max(0.02, Math.min(0.2, least * 0.8)), Math.max(3, most * 1.25)];
}

export const shareOn = ([low, high]: ScaleRange, value: number): number =>
  Math.min(1, Math.max(0, Math.log(value / low) / Math.log(high / low)));

const MANTISSAS = [1, 2, 5];
/** Closer than this share of the scale two numbers touch on a telephone. */
const CLOSEST = 0.1;

/** 1, 2 and 5 of each power of ten, thinned where they would touch. */
export function ticksOn(range: ScaleRange): readonly number[] {
  const ticks: number[] = [];
  for (let power = Math.floor(Math.log10(range[0])); power <= Math.log10(range[1]); power++)
    for (const mantissa of MANTISSAS) {
      const tick = Number((mantissa * 10 ** power).toPrecision(3));
      if (tick < range[0] || tick > range[1]) continue;
      const last = ticks.at(-1);
      if (last === undefined || shareOn(range, tick) - shareOn(range, last) >= CLOSEST) ticks.push(tick);
    }
  return ticks;
}
