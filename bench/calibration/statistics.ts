/** Rank histogram, its chi-square test, and coverage with its standard error. */

/** Shares of the unit interval that the values fall in. */
export function histogram(values: readonly number[], bins: number): number[] {
  const counts = new Array<number>(bins).fill(0);
  for (const x of values) counts[Math.min(bins - 1, Math.max(0, Math.floor(x * bins)))]!++;
  return counts;
}

/** Pearson's statistic of counts against equal expectations. */
export function chiSquare(counts: readonly number[]): number {
  const expected = counts.reduce((s, n) => s + n, 0) / counts.length;
  return counts.reduce((s, n) => s + (n - expected) ** 2 / expected, 0);
}

/**
 * Probability of a larger chi-square by chance: the regularised upper incomplete gamma function Q(dof / 2, x / 2).
 * Series and continued fraction: Abramowitz and Stegun 6.5.29 and 6.5.31.
 */
export function chiSquareTail(x: number, degreesOfFreedom: number): number {
  const a = degreesOfFreedom / 2;
  const h = x / 2;
  if (h <= 0) return 1;
  const scale = Math.exp(a * Math.log(h) - h - logGamma(a));
  if (h < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = 1; n < 1000 && term > sum * 1e-15; n++) {
      term *= h / (a + n);
      sum += term;
    }
    return 1 - scale * sum;
  }
  // modified Lentz
  let b = h + 1 - a;
  let c = 1e300;
  let d = 1 / b;
  let f = d;
  for (let n = 1; n < 1000; n++) {
    const an = -n * (n - a);
    b += 2;
    d = 1 / (an * d + b);
    c = b + an / c;
    const step = c * d;
    f *= step;
    if (Math.abs(step - 1) < 1e-15) break;
  }
  return scale * f;
}

/** ln Gamma for half-integers and integers by recurrence: all that a chi-square needs. */
function logGamma(a: number): number {
  let log = 0;
  let x = a;
  while (x > 1) {
    x -= 1;
    log += Math.log(x);
  }
  return x < 0.75 ? log + 0.5 * Math.log(Math.PI) : log;
}

export interface Coverage {
  readonly share: number;
  /** Binomial standard error of the share. */
  readonly error: number;
}

/** Share of the values inside the central interval of the given probability. */
export function coverage(below: readonly number[], probability: number): Coverage {
  const edge = (1 - probability) / 2;
  const share = below.filter((x) => x >= edge && x <= 1 - edge).length / below.length;
  return { share, error: Math.sqrt((share * (1 - share)) / below.length) };
}
