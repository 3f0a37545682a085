/** Means and quantiles; undefined where there is nothing to take them of. */

export function mean(values: readonly number[]): number | undefined {
  return values.length === 0 ? undefined : values.reduce((sum, x) => sum + x, 0) / values.length;
}

/** Share of those that hold. */
export const share = (holds: readonly boolean[]): number | undefined => mean(holds.map(Number));

export function rootMeanSquare(values: readonly number[]): number | undefined {
  const square = mean(values.map((x) => x * x));
  return square === undefined ? undefined : Math.sqrt(square);
}

/** Quantile with straight lines between the sorted values, the first being 0 and the last 1. */
export function quantile(values: readonly number[], fraction: number): number | undefined {
  if (values.length === 0) return undefined;
  const sorted = [...values].sort((a, b) => a - b);
  const at = fraction * (sorted.length - 1);
  const low = Math.floor(at);
  const high = Math.min(low + 1, sorted.length - 1);
  return sorted[low]! + (sorted[high]! - sorted[low]!) * (at - low);
}
