/** The fit of one cause to one run with several pressure channels. */
import type { LeastSquares } from '../fit/levenberg-marquardt.ts';
import type { Whitening } from '../likelihood/whitening.ts';
import type { ObservedChannel } from './observed-channel.ts';
import { type Prior, setQuantities } from './prior.ts';

/** A reduced model: from quantities to the readings of each channel at its observations [Pa gauge]. */
export type ReducedModel = (quantities: Float64Array, readings: readonly Float64Array[]) => void;

/** Step of the forward differences [prior standard deviations]: wide against what the models leave unsolved, some 0.1 mPa. */
const DIFFERENCE = 0.02;

export class SingleRunProblem implements LeastSquares {
  readonly size: number;
  readonly rows: number;
  readonly parameters: readonly Prior[];
  runs = 0;
  private readonly base: Float64Array;
  private readonly model: ReducedModel;
  private readonly channels: readonly ObservedChannel[];
  readonly whitening: readonly Whitening[];
  private readonly q: Float64Array;
  private readonly modelled: Float64Array[];
  private readonly shifted: Float64Array[];
  private readonly work: Float64Array;

  constructor(
    priors: readonly Prior[],
    base: Float64Array,
    model: ReducedModel,
    channels: readonly ObservedChannel[],
    whitening: readonly Whitening[],
  ) {
    this.parameters = priors;
    this.base = base;
    this.model = model;
    this.channels = channels;
    this.whitening = whitening;
    this.size = priors.length;
    const lengths = channels.map((c) => c.observations.timeS.length);
    this.rows = lengths.reduce((a, b) => a + b, 0);
    this.q = Float64Array.from(base);
    this.modelled = lengths.map((n) => new Float64Array(n));
    this.shifted = lengths.map((n) => new Float64Array(n));
    this.work = new Float64Array(Math.max(0, ...lengths));
  }

  /** Modelled readings by channel [Pa gauge]. */
  readings(z: ArrayLike<number>, out: readonly Float64Array[]): void {
    setQuantities(this.parameters, z, this.base, this.q);
    this.model(this.q, out);
    this.runs++;
  }

  residuals(z: ArrayLike<number>, out: Float64Array): void {
    this.readings(z, this.modelled);
    let at = 0;
    this.channels.forEach((c, i) => {
      const m = this.modelled[i]!;
      for (let k = 0; k < m.length; k++) this.work[k] = c.observations.gaugePa[k]! - m[k]!;
      this.whitening[i]!.apply(this.work, out, at);
      at += m.length;
    });
  }

  jacobian(z: ArrayLike<number>, out: Float64Array, skip?: Uint8Array): void {
    const shiftedZ = Float64Array.from(z);
    for (let j = 0; j < this.size; j++) {
      if (skip?.[j] === 1) continue;
      const step = z[j]! > 0 ? -DIFFERENCE : DIFFERENCE;
      shiftedZ[j] = z[j]! + step;
      this.readings(shiftedZ, this.shifted);
      let at = j * this.rows;
      this.channels.forEach((_, i) => {
        const m = this.modelled[i]!;
        const s = this.shifted[i]!;
        for (let k = 0; k < m.length; k++) this.work[k] = (s[k]! - m[k]!) / step;
        this.whitening[i]!.apply(this.work, out, at);
        at += m.length;
      });
      shiftedZ[j] = z[j]!;
    }
  }
}
