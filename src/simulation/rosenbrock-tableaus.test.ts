import { describe, expect, it } from 'vitest';
import { RODAS3, RODASP, type RosenbrockTableau } from './rosenbrock-tableaus.ts';

/** Classical alpha, Gamma and b from the stored form, by a small matrix inverse. */
function classical(t: RosenbrockTableau) {
  const s = t.stages;
  const inverseGamma = Array.from({ length: s }, (_, i) =>
    Array.from({ length: s }, (_, j) => (i === j ? 1 / t.gamma : 0) - (j < i ? t.c[i * s + j]! : 0)),
  );
  // Lower triangular: invert column by column.
  const gamma = Array.from({ length: s }, () => new Array<number>(s).fill(0));
  for (let col = 0; col < s; col++) {
    for (let i = col; i < s; i++) {
      let sum = i === col ? 1 : 0;
      for (let j = col; j < i; j++) sum -= inverseGamma[i]![j]! * gamma[j]![col]!;
      gamma[i]![col] = sum / inverseGamma[i]![i]!;
    }
  }
  const times = (rows: (i: number, j: number) => number) =>
    Array.from({ length: s }, (_, i) =>
      Array.from({ length: s }, (_, j) => {
        let sum = 0;
        for (let k = 0; k < s; k++) sum += rows(i, k) * gamma[k]![j]!;
        return sum;
      }),
    );
  const alpha = times((i, j) => t.a[i * s + j]!);
  const b = times((_, j) => t.m[j]!)[0]!;
  const bHat = times((_, j) => t.m[j]! - t.e[j]!)[0]!;
  return { alpha, gamma, b, bHat };
}

const sum = (n: number, f: (i: number) => number) => {
  let total = 0;
  for (let i = 0; i < n; i++) total += f(i);
  return total;
};

describe.each([RODASP, RODAS3])('$name', (t) => {
  const { alpha, gamma, b, bHat } = classical(t);
  const s = t.stages;
  const beta = alpha.map((row, i) => row.map((v, j) => v + gamma[i]![j]!));
  const rowSum = (m: number[][]) => m.map((row) => row.reduce((x, y) => x + y, 0));
  const alphaI = rowSum(alpha);
  const betaI = rowSum(beta);
  const close = (value: number, expected: number) => expect(Math.abs(value - expected)).toBeLessThan(2e-12);

  it('repeats its own row sums', () => {
    alphaI.forEach((v, i) => {
      close(v, t.alpha[i]!);
    });
    rowSum(gamma).forEach((v, i) => {
      close(v, t.d[i]!);
    });
  });

  it('meets the order conditions up to its order', () => {
    close(
      sum(s, (i) => b[i]!),
      1,
    );
    close(
      sum(s, (i) => b[i]! * betaI[i]!),
      1 / 2,
    );
    close(
      sum(s, (i) => b[i]! * alphaI[i]! ** 2),
      1 / 3,
    );
    close(
      sum(s, (i) => b[i]! * sum(s, (j) => beta[i]![j]! * betaI[j]!)),
      1 / 6,
    );
    if (t.order < 4) return;
    close(
      sum(s, (i) => b[i]! * alphaI[i]! ** 3),
      1 / 4,
    );
    close(
      sum(s, (i) => b[i]! * alphaI[i]! * sum(s, (j) => alpha[i]![j]! * betaI[j]!)),
      1 / 8,
    );
    close(
      sum(s, (i) => b[i]! * sum(s, (j) => beta[i]![j]! * alphaI[j]! ** 2)),
      1 / 12,
    );
    close(
      sum(s, (i) => b[i]! * sum(s, (j) => beta[i]![j]! * sum(s, (k) => beta[j]![k]! * betaI[k]!))),
      1 / 24,
    );
  });

  it('has an embedded method one order lower', () => {
    close(
      sum(s, (i) => bHat[i]!),
      1,
    );
    close(
      sum(s, (i) => bHat[i]! * betaI[i]!),
      1 / 2,
    );
    const third = sum(s, (i) => bHat[i]! * alphaI[i]! ** 2);
    if (t.order === 4) close(third, 1 / 3);
    else expect(Math.abs(third - 1 / 3)).toBeGreaterThan(1e-3);
  });

  it('is stiffly accurate: the last stage ends on the solution', () => {
    b.forEach((v, j) => {
      close(v, beta[s - 1]![j]!);
    });
  });

  it('damps at infinity: R(inf) = 0', () => {
    // For a stiffly accurate method R(inf) = 1 - b beta^-1 1 vanishes, since b is the last row of beta.
    const solved = new Array<number>(s).fill(0);
    for (let i = 0; i < s; i++) {
      let rest = 1;
      for (let j = 0; j < i; j++) rest -= beta[i]![j]! * solved[j]!;
      solved[i] = rest / beta[i]![i]!;
    }
    close(1 - sum(s, (i) => b[i]! * solved[i]!), 0);
  });

  it('ends the dense output on both ends with the right slope order', () => {
    if (t.dense === undefined) return;
    // x(s) = x0(1-s) + s x1 + s(1-s)(k2 + s k3); for x' = 1 all higher parts must vanish.
    const weight = (row: Float64Array) => {
      // U-vectors of f = 1 (J = 0): U = Gamma-transformed ones: U_i = h * sum_j gamma_ij.
      return sum(s, (i) => row[i]! * sum(s, (j) => gamma[i]![j]!));
    };
    close(weight(t.dense[0]), 0);
    close(weight(t.dense[1]), 0);
  });
});
