/** Standard normal distribution function. Source: Abramowitz and Stegun 26.2.17, error below 7.5e-8. */
function normalBelow(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const tail =
    (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z < 0 ? tail : 1 - tail;
}

/** Probability that a quantity with this mean and spread lies within limits, which may be infinite. */
export function withinProbability(mean: number, sigma: number, low: number, high: number): number {
  const above = low === Number.NEGATIVE_INFINITY ? 0 : normalBelow((low - mean) / sigma);
  const below = high === Number.POSITIVE_INFINITY ? 1 : normalBelow((high - mean) / sigma);
  return Math.max(0, below - above);
}
