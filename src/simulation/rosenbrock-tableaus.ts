/**
 * Coefficients of Rosenbrock methods in the form that needs no product with the Jacobian:
 *
 *   (I/(gamma h) - J) U_i = f(t + alpha_i h, x + sum_j a_ij U_j) + sum_j (c_ij/h) U_j + d_i h f_t
 *   x_new = x + sum_j m_j U_j,   error estimate = sum_j e_j U_j
 *
 * Matrices are stored row by row without the diagonal. The tests rebuild the classical form and check
 * the order conditions, so a wrong digit cannot pass.
 */
export interface RosenbrockTableau {
  readonly name: string;
  readonly stages: number;
  readonly order: number;
  readonly gamma: number;
  /** Strictly lower triangle of a, stages x stages, row-major. */
  readonly a: Float64Array;
  /** Strictly lower triangle of c, stages x stages, row-major. */
  readonly c: Float64Array;
  readonly alpha: Float64Array;
  readonly d: Float64Array;
  readonly m: Float64Array;
  readonly e: Float64Array;
  /** Stage i uses a fresh evaluation of f; false = the value of the stage before (same argument). */
  readonly freshEvaluation: readonly boolean[];
  /** Dense output: rows for the two interpolation vectors, each of length stages; absent = cubic Hermite. */
  readonly dense?: readonly [Float64Array, Float64Array];
}

function lowerTriangle(rows: readonly (readonly number[])[], stages: number): Float64Array {
  const out = new Float64Array(stages * stages);
  rows.forEach((row, i) => {
    row.forEach((value, j) => {
      out[i * stages + j] = value;
    });
  });
  return out;
}

/**
 * RODASP: 6 stages, order 4(3), L-stable, stiffly accurate, keeps order 4 on stiffly forced problems.
 * Source: Steinebach (1995), coefficients as in Hairer's public code RODAS (from memory; checked here by order conditions).
 */
export const RODASP: RosenbrockTableau = {
  name: 'RODASP',
  stages: 6,
  order: 4,
  gamma: 0.25,
  a: lowerTriangle(
    [
      [],
      [3.0],
      [1.831036793486759, 0.4955183967433795],
      [2.304376582692669, -0.05249275245743001, -1.176798761832782],
      [-7.170454962423024, -4.741636671481785, -16.31002631330971, -1.062004044111401],
      [-7.170454962423024, -4.741636671481785, -16.31002631330971, -1.062004044111401, 1],
    ],
    6,
  ),
  c: lowerTriangle(
    [
      [],
      [-12.0],
      [-8.791795173947035, -2.207865586973518],
      [10.81793056857153, 6.780270611428266, 19.5348594464241],
      [34.19095006749676, 15.49671153725963, 54.7476087596413, 14.16005392148534],
      [34.62605830930532, 15.30084976114473, 56.99955578662667, 18.40807009793095, -5.714285714285717],
    ],
    6,
  ),
  alpha: Float64Array.of(0, 0.75, 0.21, 0.63, 1, 1),
  d: Float64Array.of(0.25, -0.5, -0.023504, -0.0362, 0, 0),
  m: Float64Array.of(-7.170454962423024, -4.741636671481785, -16.31002631330971, -1.062004044111401, 1, 1),
  e: Float64Array.of(0, 0, 0, 0, 0, 1),
  freshEvaluation: [true, true, true, true, true, true],
  dense: [
    Float64Array.of(25.09876703708589, 11.62013104361867, 28.49148307714626, -5.664021568594133, 0, 0),
    Float64Array.of(1.638054557396973, -0.7373619806678748, 8.47791821923899, 15.9925314877952, -1.882352941176471, 0),
  ],
};

/**
 * RODAS3: 4 stages (3 evaluations), order 3(2), L-stable, stiffly accurate; cheaper at loose tolerance.
 * Source: Sandu et al., Atmospheric Environment 31 (1997) 3459 (from memory; checked here by order conditions).
 */
export const RODAS3: RosenbrockTableau = {
  name: 'RODAS3',
  stages: 4,
  order: 3,
  gamma: 0.5,
  a: lowerTriangle([[], [0], [2, 0], [2, 0, 1]], 4),
  c: lowerTriangle([[], [4], [1, -1], [1, -1, -8 / 3]], 4),
  alpha: Float64Array.of(0, 0, 1, 1),
  d: Float64Array.of(0.5, 1.5, 0, 0),
  m: Float64Array.of(2, 0, 1, 1),
  e: Float64Array.of(0, 0, 0, 1),
  freshEvaluation: [true, false, true, true],
};
