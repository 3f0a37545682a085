/**
 * out = base + scale * (weights[row] u0 + weights[row + 1] u1 + ...), over the first `count` vectors, 0 to 6.
 *
 * Written out for each count: it runs twice in every stage of every step, and short inner loops would cost more than
 * the sums themselves.
 *
 * @param out receives the sum
 * @param base vector to add to
 * @param scale factor on all weights
 * @param weights weights, several rows in one array
 * @param row where the row of weights begins
 * @param count how many vectors count, 0 to 6
 * @param u the vectors
 */
export function combine(
  out: Float64Array,
  base: Float64Array,
  scale: number,
  weights: Float64Array,
  row: number,
  count: number,
  u: readonly Float64Array[],
): void {
  const n = out.length;
  if (count === 0) {
    out.set(base);
    return;
  }
  const w0 = scale * weights[row]!;
  const u0 = u[0]!;
  if (count === 1) {
    for (let i = 0; i < n; i++) out[i] = base[i]! + w0 * u0[i]!;
    return;
  }
  const w1 = scale * weights[row + 1]!;
  const u1 = u[1]!;
  if (count === 2) {
    for (let i = 0; i < n; i++) out[i] = base[i]! + w0 * u0[i]! + w1 * u1[i]!;
    return;
  }
  const w2 = scale * weights[row + 2]!;
  const u2 = u[2]!;
  if (count === 3) {
    for (let i = 0; i < n; i++) out[i] = base[i]! + w0 * u0[i]! + w1 * u1[i]! + w2 * u2[i]!;
    return;
  }
  const w3 = scale * weights[row + 3]!;
  const u3 = u[3]!;
  if (count === 4) {
    for (let i = 0; i < n; i++) out[i] = base[i]! + w0 * u0[i]! + w1 * u1[i]! + w2 * u2[i]! + w3 * u3[i]!;
    return;
  }
  const w4 = scale * weights[row + 4]!;
  const u4 = u[4]!;
  if (count === 5) {
    for (let i = 0; i < n; i++) {
      out[i] = base[i]! + w0 * u0[i]! + w1 * u1[i]! + w2 * u2[i]! + w3 * u3[i]! + w4 * u4[i]!;
    }
    return;
  }
  const w5 = scale * weights[row + 5]!;
  const u5 = u[5]!;
  for (let i = 0; i < n; i++) {
    out[i] = base[i]! + w0 * u0[i]! + w1 * u1[i]! + w2 * u2[i]! + w3 * u3[i]! + w4 * u4[i]! + w5 * u5[i]!;
  }
}
