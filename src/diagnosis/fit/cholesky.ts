/** Cholesky factor of a small symmetric positive definite matrix, row-major. */

/**
 * Factors in place: on return the lower triangle holds L with A = L L'.
 *
 * @returns false if the matrix is not positive definite
 */
export function choleskyFactor(a: Float64Array, n: number): boolean {
  for (let j = 0; j < n; j++) {
    let d = a[j * n + j]!;
    for (let k = 0; k < j; k++) d -= a[j * n + k]! ** 2;
    if (!(d > 0)) return false;
    d = Math.sqrt(d);
    a[j * n + j] = d;
    for (let i = j + 1; i < n; i++) {
      let s = a[i * n + j]!;
      for (let k = 0; k < j; k++) s -= a[i * n + k]! * a[j * n + k]!;
      a[i * n + j] = s / d;
    }
  }
  return true;
}

/** Solves L L' x = b in place of b. */
export function choleskySolve(l: Float64Array, n: number, b: Float64Array): void {
  for (let i = 0; i < n; i++) {
    let s = b[i]!;
    for (let k = 0; k < i; k++) s -= l[i * n + k]! * b[k]!;
    b[i] = s / l[i * n + i]!;
  }
  choleskySolveTransposed(l, n, b);
}

/** Solves L' x = b in place of b: turns standard normals into draws with covariance inverse(L L'). */
export function choleskySolveTransposed(l: Float64Array, n: number, b: Float64Array): void {
  for (let i = n - 1; i >= 0; i--) {
    let s = b[i]!;
    for (let k = i + 1; k < n; k++) s -= l[k * n + i]! * b[k]!;
    b[i] = s / l[i * n + i]!;
  }
}

/** ln det A from its factor. */
export function logDeterminant(l: Float64Array, n: number): number {
  let s = 0;
  for (let i = 0; i < n; i++) s += Math.log(l[i * n + i]!);
  return 2 * s;
}
