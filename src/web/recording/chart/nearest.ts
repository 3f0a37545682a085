/** Search in rising times. */

/** Index of the first sample at or after a time; the length when all are before. */
export function firstAtOrAfter(timeS: ArrayLike<number>, t: number): number {
  let low = 0;
  let high = timeS.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (timeS[middle]! < t) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Index of the sample nearest to a time. */
export function nearest(timeS: ArrayLike<number>, t: number): number {
  const after = Math.min(timeS.length - 1, firstAtOrAfter(timeS, t));
  const before = Math.max(0, after - 1);
  return t - timeS[before]! <= timeS[after]! - t ? before : after;
}
