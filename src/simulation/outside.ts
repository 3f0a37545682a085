import { ejectorSuctionAbsPa } from '../physics/ejector.ts';
import { INPUTS } from '../system/network.ts';
import { INPUT_INDEX, type Series, seriesAt, seriesKnots } from './inputs.ts';
import type { Conditions } from './scenario.ts';

/** Sets every input of the network at a time from the conditions. */
export class Outside {
  private readonly conditions: Conditions;
  private readonly suctionPerBoost: number;
  readonly knots: readonly number[];

  constructor(conditions: Conditions, suctionPerBoost: number) {
    this.conditions = conditions;
    this.suctionPerBoost = suctionPerBoost;
    const series: (Series | undefined)[] = [
      conditions.ambientAbsPa,
      conditions.ambientTemperatureK,
      conditions.manifoldAbsPa,
      conditions.fillFlowM3PerS,
      conditions.fillTemperatureK,
      conditions.fuelDrawM3PerS,
      conditions.fuelHeatW,
    ];
    const knots = series.flatMap((s) => (s === undefined ? [] : seriesKnots(s)));
    this.knots = [...new Set([...knots, ...this.boostCrossings()])].sort((a, b) => a - b);
  }

  /** Writes all inputs of a time into `out`. */
  valuesAt(timeS: number, engineRunning: boolean, out: Float64Array): void {
    const c = this.conditions;
    const ambient = seriesAt(c.ambientAbsPa, timeS);
    const ambientK = seriesAt(c.ambientTemperatureK, timeS);
    const manifold = engineRunning && c.manifoldAbsPa !== undefined ? seriesAt(c.manifoldAbsPa, timeS) : ambient;
    out[INPUT_INDEX.ambientAbsPa] = ambient;
    out[INPUT_INDEX.ambientTemperatureK] = ambientK;
    out[INPUT_INDEX.manifoldAbsPa] = manifold;
    out[INPUT_INDEX.ejectorAbsPa] = ejectorSuctionAbsPa(ambient, manifold - ambient, this.suctionPerBoost);
    out[INPUT_INDEX.fillFlowM3PerS] = c.fillFlowM3PerS === undefined ? 0 : seriesAt(c.fillFlowM3PerS, timeS);
    out[INPUT_INDEX.fillTemperatureK] =
      c.fillTemperatureK === undefined ? ambientK : seriesAt(c.fillTemperatureK, timeS);
    out[INPUT_INDEX.fuelDrawM3PerS] =
      engineRunning && c.fuelDrawM3PerS !== undefined ? seriesAt(c.fuelDrawM3PerS, timeS) : 0;
    out[INPUT_INDEX.fuelHeatW] = c.fuelHeatW === undefined ? 0 : seriesAt(c.fuelHeatW, timeS);
  }

  /** Times at which the manifold passes ambient: the ejector's suction has a corner there. */
  private boostCrossings(): number[] {
    const { manifoldAbsPa, ambientAbsPa } = this.conditions;
    if (manifoldAbsPa === undefined || typeof manifoldAbsPa === 'number') return [];
    const crossings: number[] = [];
    const t = manifoldAbsPa.timeS;
    for (let k = 1; k < t.length; k++) {
      const before = manifoldAbsPa.value[k - 1]! - seriesAt(ambientAbsPa, t[k - 1]!);
      const after = manifoldAbsPa.value[k]! - seriesAt(ambientAbsPa, t[k]!);
      if (before * after < 0) crossings.push(t[k - 1]! + ((t[k]! - t[k - 1]!) * before) / (before - after));
    }
    return crossings;
  }
}

/** A vector with room for all inputs. */
export function inputVector(): Float64Array {
  return new Float64Array(INPUTS.length);
}
