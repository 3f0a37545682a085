/** One cause's fit to all recordings: residuals and Jacobian in whitened, prior-scaled coordinates. */

import type { Whitening } from '../likelihood/whitening.ts';
import type { Drive } from '../model/drive.ts';
import { QUANTITY_COUNT } from '../model/quantities.ts';
import { tangents } from '../model/tangents.ts';
import { runTwoSpace, TRACE_STRIDE } from '../model/two-space.ts';
import { fillQuantities, type Parameter, parameterSlope } from './parameter.ts';

export interface FitRecording {
  readonly drive: Drive;
  readonly gaugePa: Float64Array;
  /** Quantities that stay as they are unless a parameter sets them. */
  readonly base: Float64Array;
  readonly whitening: Whitening;
}

export class FitProblem {
  readonly size: number;
  readonly rows: number;
  runs = 0;
  private readonly q = new Float64Array(QUANTITY_COUNT);
  private readonly modelled: Float64Array[];
  private readonly traces: Float64Array[];
  private readonly column: Float64Array;
  private readonly columns: Float64Array;

  readonly parameters: readonly Parameter[];
  readonly recordings: readonly FitRecording[];

  constructor(parameters: readonly Parameter[], recordings: readonly FitRecording[]) {
    this.parameters = parameters;
    this.recordings = recordings;
    this.size = parameters.length;
    this.rows = recordings.reduce((n, r) => n + r.gaugePa.length, 0);
    this.modelled = recordings.map((r) => new Float64Array(r.gaugePa.length));
    const longest = Math.max(0, ...recordings.map((r) => r.gaugePa.length));
    this.traces = recordings.map((r) => new Float64Array(r.drive.stepCount * TRACE_STRIDE));
    this.column = new Float64Array(longest);
    this.columns = new Float64Array(this.size * longest);
  }

  /** Modelled readings of one recording [Pa gauge]. */
  model(z: ArrayLike<number>, recording: number, out: Float64Array): void {
    const r = this.recordings[recording]!;
    fillQuantities(this.parameters, z, recording, r.base, this.q);
    runTwoSpace(this.q, r.drive, out);
    this.runs++;
  }

  /** Whitened residuals, all recordings in a row; what the runs left stays inside for `jacobian`. */
  residuals(z: ArrayLike<number>, out: Float64Array): void {
    let at = 0;
    this.recordings.forEach((r, i) => {
      const m = this.modelled[i]!;
      fillQuantities(this.parameters, z, i, r.base, this.q);
      runTwoSpace(this.q, r.drive, m, undefined, this.traces[i]!);
      this.runs++;
      for (let k = 0; k < m.length; k++) this.column[k] = r.gaugePa[k]! - m[k]!;
      r.whitening.apply(this.column.subarray(0, m.length), out, at);
      at += m.length;
    });
  }

  /**
   * Whitened derivatives of the model, column by column (`out[j * rows + k]`), at the point of the last `residuals`, which `z` is.
   */
  jacobian(z: ArrayLike<number>, out: Float64Array, skip?: Uint8Array): void {
    let row = 0;
    this.recordings.forEach((r, i) => {
      const n = r.gaugePa.length;
      const wanted: number[] = [];
      this.parameters.forEach((p, j) => {
        if (skip?.[j] === 1) return;
        if (p.recording === -1 || p.recording === i) wanted.push(j);
        else out.fill(0, j * this.rows + row, j * this.rows + row + n);
      });
      fillQuantities(this.parameters, z, i, r.base, this.q);
      tangents(
        this.q,
        r.drive,
        this.traces[i]!,
        wanted.map((j) => this.parameters[j]!.slot),
        this.columns,
        wanted.map((_, k) => k * n),
      );
      this.runs++;
      wanted.forEach((j, k) => {
        const column = this.columns.subarray(k * n, (k + 1) * n);
        const unit = parameterSlope(this.parameters[j]!, z[j]!);
        for (let o = 0; o < n; o++) column[o]! *= unit;
        r.whitening.apply(column, out, j * this.rows + row);
      });
      row += n;
    });
  }
}
