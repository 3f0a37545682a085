/**
 * Where a sensor's output stops, found in the readings themselves: for a car whose sensor range nobody noted. A pressure that
 * stands still scatters to both sides of where it stands; at the rail the readings pile up on the last value, and what scatter
 * there is points inwards only.
 */

/** Where a sensor's output stops [Pa gauge]; infinite where it is not known to. */
export interface Rails {
  readonly low: number;
  readonly high: number;
}

/** Lowest and highest of the readings; the wrong way round, and infinite, where there are none. */
export function extremes(p: Float64Array): Rails {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const x of p) {
    if (x < low) low = x;
    if (x > high) high = x;
  }
  return { low, high };
}

/** The pile must be at least so many readings, so large a part of all, and of those that lie near it. Judgement. */
const FEWEST = 15;
const SHARE = 0.015;
const SHARE_NEARBY = 0.4;
/** "Near" ends at so many standard deviations of the noise or so many steps. */
const NEAR = { noise: 3, steps: 2 };
/** Noise of at least this much of a step shows on both sides of a standing pressure, wherever it stands between two steps. */
const SHOWS = 0.5;
/** An extreme this near to ambient is no rail [Pa]: sensors of vapour systems reach further. Judgement. */
const LEAST_RAIL_PA = 1000;

/**
 * @param p readings [Pa gauge], NaN where missing
 * @param stepPa smallest step between readings [Pa]
 * @param noisePa white noise of one reading away from the rails [Pa]
 * @returns the rails found, infinite where none shows
 */
export function foundRails(p: Float64Array, stepPa: number, noisePa: number): Rails {
  const none = { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };
  if (!(noisePa >= SHOWS * stepPa)) return none;
  const near = Math.max(NEAR.noise * noisePa, NEAR.steps * stepPa);
  const { low, high } = extremes(p);
  let count = 0;
  for (const x of p) if (Number.isFinite(x)) count++;
  const isPile = (extreme: number): boolean => {
    if (Math.abs(extreme) < LEAST_RAIL_PA) return false;
    let on = 0;
    let around = 0;
    for (const x of p) {
      if (x === extreme) on++;
      if (Math.abs(x - extreme) <= near) around++;
    }
    return on >= Math.max(FEWEST, SHARE * count) && on >= SHARE_NEARBY * around;
  };
  return { low: isPile(low) ? low : none.low, high: isPile(high) ? high : none.high };
}

/** White noise [Pa] of readings whose rails are not known yet, from second differences that touch neither extreme. */
export function noiseOffRails(p: Float64Array): number {
  const { low, high } = extremes(p);
  const inside = (x: number) => x > low && x < high;
  const squares: number[] = [];
  for (let i = 1; i + 1 < p.length; i++) {
    const [a, b, c] = [p[i - 1]!, p[i]!, p[i + 1]!];
    if (inside(a) && inside(b) && inside(c)) squares.push((a - 2 * b + c) ** 2);
  }
  if (squares.length === 0) return 0;
  squares.sort((x, y) => x - y);
  // the median of a squared normal is 0.4549 of its variance, and a second difference has 6 times the variance of a reading
  return Math.sqrt(squares[squares.length >> 1]! / 0.4549 / 6);
}
