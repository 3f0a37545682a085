/** One cause's fit to all recordings: residuals and Jacobian in whitened, prior-scaled coordinates. */

import type { Whitening } from '../likelihood/whitening.ts';
import type { Drive } from '../model/drive.ts';
import { QUANTITY_COUNT } from '../model/quantities.ts';
import { runTwoSpace } from '../model/two-space.ts';
import { fillQuantities, type Parameter } from './parameter.ts';

export interface FitRecording {
  readonly drive: Drive;
  readonly gaugePa: Float64Array;
  /** Quantities that stay as they are unless a parameter sets them. */
  readonly base: Float64Array;
  readonly whitening: Whitening;
}

/** Step of the forward differences in units of the prior's standard deviation. */
const DIFFERENCE = 2e-3;

export class FitProblem {
  readonly size: number;
  readonly rows: number;
  runs = 0;
  private readonly q = new Float64Array(QUANTITY_COUNT);
  private readonly modelled: Float64Array[];
  private readonly shifted: Float64Array;
  private readonly column: Float64Array;
  private readonly zWork: Float64Array;

  readonly parameters: readonly Parameter[];
  readonly recordings: readonly FitRecording[];

  constructor(parameters: readonly Parameter[], recordings: readonly FitRecording[]) {
    this.parameters = parameters;
    this.recordings = recordings;
    this.size = parameters.length;
    this.rows = recordings.reduce((n, r) => n + r.gaugePa.length, 0);
    this.modelled = recordings.map((r) => new Float64Array(r.gaugePa.length));
    const longest = Math.max(0, ...recordings.map((r) => r.gaugePa.length));
    this.shifted = new Float64Array(longest);
    this.column = new Float64Array(longest);
    this.zWork = new Float64Array(this.size);
  }

  /** Modelled readings of one recording [Pa gauge]. */
  model(z: ArrayLike<number>, recording: number, out: Float64Array): void {
    const r = this.recordings[recording]!;
    fillQuantities(this.parameters, z, recording, r.base, this.q);
    runTwoSpace(this.q, r.drive, out);
    this.runs++;
  }

  /** Whitened residuals, all recordings in a row; the modelled readings stay inside for `jacobian`. */
  residuals(z: ArrayLike<number>, out: Float64Array): void {
    let at = 0;
    this.recordings.forEach((r, i) => {
      const m = this.modelled[i]!;
      this.model(z, i, m);
      for (let k = 0; k < m.length; k++) this.column[k] = r.gaugePa[k]! - m[k]!;
      r.whitening.apply(this.column.subarray(0, m.length), out, at);
      at += m.length;
    });
  }

  /**
   * Whitened derivatives of the model, column by column (`out[j * rows + k]`), at the point of the last `residuals`.
   */
  jacobian(z: ArrayLike<number>, out: Float64Array, skip?: Uint8Array): void {
    this.zWork.set(z as Float64Array);
    for (let j = 0; j < this.size; j++) {
      if (skip?.[j] === 1) continue;
      const own = this.parameters[j]!.recording;
      const step = z[j]! > 0 ? -DIFFERENCE : DIFFERENCE;
      this.zWork[j] = z[j]! + step;
      let at = j * this.rows;
      this.recordings.forEach((r, i) => {
        const m = this.modelled[i]!;
        if (own !== -1 && own !== i) out.fill(0, at, at + m.length);
        else {
          this.model(this.zWork, i, this.shifted);
          for (let k = 0; k < m.length; k++) this.column[k] = (this.shifted[k]! - m[k]!) / step;
          r.whitening.apply(this.column.subarray(0, m.length), out, at);
        }
        at += m.length;
      });
      this.zWork[j] = z[j]!;
    }
  }
}
