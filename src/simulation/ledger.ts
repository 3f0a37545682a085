import { BOUNDARIES, type BoundaryId } from '../system/network.ts';
import type { NetworkEquations } from './network-equations.ts';

/** Where air and fuel came from and went to, kg. What the car gains, a boundary has given. */
export interface Ledger {
  readonly airFrom: Readonly<Record<BoundaryId, number>>;
  readonly vapourFrom: Readonly<Record<BoundaryId, number>>;
  readonly fuelDispensedKg: number;
  readonly fuelBurntKg: number;
  readonly airStoredKg: { readonly start: number; readonly end: number };
  readonly fuel: {
    readonly liquidKg: { readonly start: number; readonly end: number };
    readonly vapourKg: { readonly start: number; readonly end: number };
    readonly adsorbedKg: { readonly start: number; readonly end: number };
  };
  /** Mass that went over a boundary, evaporated, condensed, was taken up or given off, each way counted. */
  readonly airThroughputKg: number;
  readonly fuelThroughputKg: number;
  /** What is missing: stored at the end, less stored at the start, less what came in. */
  readonly airErrorKg: number;
  readonly fuelErrorKg: number;
}

/** Sums of the state by kind of store, and the mass moved from step to step. */
export class LedgerKeeper {
  private readonly air: number[] = [];
  private readonly vapour: number[] = [];
  private readonly liquid: number[] = [];
  private readonly adsorbed: number[] = [];
  private readonly boundaryAir: number[] = [];
  private readonly boundaryVapour: number[] = [];
  private readonly equations: NetworkEquations;
  private readonly start: Float64Array;
  private readonly previous: Float64Array;
  private airThroughput = 0;
  private fuelThroughput = 0;

  constructor(equations: NetworkEquations, x0: Float64Array) {
    this.equations = equations;
    this.start = x0.slice();
    this.previous = x0.slice();
    const { layout, network } = equations;
    network.spaces.forEach((space, i) => {
      const b = layout.base[i]!;
      this.air.push(b);
      this.vapour.push(b + 1);
      if (space.kind === 'tank') this.liquid.push(b + 3);
      if (space.kind === 'bed') this.adsorbed.push(b + 2);
    });
    BOUNDARIES.forEach((_, k) => {
      const b = layout.base[layout.spaceCount + k]!;
      this.boundaryAir.push(b);
      this.boundaryVapour.push(b + 1);
    });
  }

  /** Counts what moved since the last call. */
  afterStep(x: Float64Array): void {
    const { previous } = this;
    const { layout } = this.equations;
    for (const i of this.boundaryAir) this.airThroughput += Math.abs(x[i]! - previous[i]!);
    for (const i of this.air) this.airThroughput += Math.abs(x[i]! - previous[i]!);
    for (const i of this.boundaryVapour) this.fuelThroughput += Math.abs(x[i]! - previous[i]!);
    for (const i of this.vapour) this.fuelThroughput += Math.abs(x[i]! - previous[i]!);
    for (const i of this.liquid) this.fuelThroughput += Math.abs(x[i]! - previous[i]!);
    for (const i of this.adsorbed) this.fuelThroughput += Math.abs(x[i]! - previous[i]!);
    const dispensed = layout.fuelDispensedRow;
    const drawn = layout.fuelDrawnRow;
    this.fuelThroughput += Math.abs(x[dispensed]! - previous[dispensed]!) + Math.abs(x[drawn]! - previous[drawn]!);
    previous.set(x);
  }

  /** The ledger from the start to this state. */
  close(x: Float64Array): Ledger {
    const { start } = this;
    const { layout } = this.equations;
    const total = (rows: readonly number[], state: Float64Array) => rows.reduce((sum, i) => sum + state[i]!, 0);
    const both = (rows: readonly number[]) => ({ start: total(rows, start), end: total(rows, x) });
    // Differences row by row first: sums of large stores would swallow small errors.
    const gained = (rows: readonly number[]) => rows.reduce((sum, i) => sum + (x[i]! - start[i]!), 0);
    const byBoundary = (rows: readonly number[]) =>
      Object.fromEntries(BOUNDARIES.map((id, k) => [id, -x[rows[k]!]!])) as Record<BoundaryId, number>;
    return {
      airFrom: byBoundary(this.boundaryAir),
      vapourFrom: byBoundary(this.boundaryVapour),
      fuelDispensedKg: -x[layout.fuelDispensedRow]!,
      fuelBurntKg: x[layout.fuelDrawnRow]!,
      airStoredKg: both(this.air),
      fuel: { liquidKg: both(this.liquid), vapourKg: both(this.vapour), adsorbedKg: both(this.adsorbed) },
      airThroughputKg: this.airThroughput,
      fuelThroughputKg: this.fuelThroughput,
      airErrorKg: gained(this.air) + gained(this.boundaryAir),
      fuelErrorKg:
        gained(this.vapour) +
        gained(this.liquid) +
        gained(this.adsorbed) +
        gained(this.boundaryVapour) +
        gained([layout.fuelDispensedRow, layout.fuelDrawnRow]),
    };
  }
}
