/**
 * Whitening under white noise plus a slow Ornstein-Uhlenbeck error (slosh, what the model leaves out).
 *
 * The error at observation k is e_k + s_k with e_k ~ N(0, v_k) and s a stationary process of standard
 * deviation `slowPa` and correlation time `slowS`; where `slowPa` varies, s is that size times a process of unit size. The Kalman filter of s gives innovations that are
 * independent; the gains do not depend on the data, so they are made once and serve residuals and the
 * columns of the Jacobian alike.
 * Source: Rasmussen and Williams, Gaussian Processes for Machine Learning, 2006, appendix B.2 (OU process);
 * Kalman 1960.
 */
export class Whitening {
  private readonly phi: Float64Array;
  private readonly gain: Float64Array;
  private readonly inverseSd: Float64Array;
  /** Sum of ln of the innovation variances: twice the normaliser of the likelihood, constant left out. */
  readonly logDeterminant: number;

  /**
   * @param timeS observation times [s], increasing
   * @param variance white variance of each observation [Pa2]
   * @param slowPa standard deviation of the slow error at each observation [Pa]
   * @param slowS its correlation time at each observation [s]
   * @param fresh 1 where the slow error starts anew (a new phase has its own)
   */
  constructor(
    timeS: ArrayLike<number>,
    variance: ArrayLike<number>,
    slowPa: ArrayLike<number>,
    slowS: ArrayLike<number>,
    fresh: ArrayLike<number>,
  ) {
    const n = timeS.length;
    this.phi = new Float64Array(n);
    this.gain = new Float64Array(n);
    this.inverseSd = new Float64Array(n);
    let p = 0;
    let logDet = 0;
    for (let k = 0; k < n; k++) {
      const size = slowPa[k]!;
      const before = k === 0 ? 0 : slowPa[k - 1]!;
      const kept = before === 0 || fresh[k] === 1 ? 0 : Math.exp(-(timeS[k]! - timeS[k - 1]!) / slowS[k]!);
      // the error keeps its share of its own size where that changes
      const f = kept === 0 ? 0 : kept * (size / before);
      p = f * f * p + (1 - kept * kept) * size * size;
      const s = p + variance[k]!;
      this.phi[k] = f;
      this.gain[k] = p / s;
      this.inverseSd[k] = 1 / Math.sqrt(s);
      logDet += Math.log(s);
      p *= 1 - p / s;
    }
    this.logDeterminant = logDet;
  }

  /** Whitens `x` into `out` from index `at` on. */
  apply(x: ArrayLike<number>, out: Float64Array, at: number): void {
    let m = 0;
    const { phi, gain, inverseSd } = this;
    for (let k = 0; k < phi.length; k++) {
      m *= phi[k]!;
      const e = x[k]! - m;
      out[at + k] = e * inverseSd[k]!;
      m += gain[k]! * e;
    }
  }
}
