import {
  AUTOMOTIVE_CARBON,
  adsorptionHeatFlow,
  langmuirAffinity,
  langmuirUptake,
  langmuirUptakeDerivative,
  uptakeRate,
} from '../physics/carbon.ts';
import { MOLAR_GAS_CONSTANT } from '../physics/constants.ts';
import { partialPressure } from '../physics/gas.ts';
import type { BedSpace, Network } from '../system/network.ts';
import { INPUT_INDEX, type Inputs } from './inputs.ts';
import type { NodeGas } from './node-gas.ts';
import type { StateLayout } from './state-layout.ts';

const CARBON = AUTOMOTIVE_CARBON;

/** Uptake of vapour by the carbon of every bed cell, and the heat of it. Vapour leaves the gas as it enters the carbon. */
export class BedExchange {
  private readonly count: number;
  private readonly node: Int32Array;
  private readonly base: Int32Array;
  private readonly carbonKg: Float64Array;
  private readonly rateHz: Float64Array;
  private readonly heatCapacity: Float64Array;
  private readonly toAmbient: Float64Array;

  constructor(network: Network, layout: StateLayout) {
    const cells: [BedSpace, number][] = [];
    network.spaces.forEach((s, i) => {
      if (s.kind === 'bed') cells.push([s, i]);
    });
    this.count = cells.length;
    this.node = Int32Array.from(cells, ([, i]) => i);
    this.base = Int32Array.from(cells, ([, i]) => layout.base[i]!);
    this.carbonKg = Float64Array.from(cells, ([s]) => s.carbonKg);
    this.rateHz = Float64Array.from(cells, ([s]) => s.rateHz);
    this.heatCapacity = Float64Array.from(cells, ([s]) => s.heatCapacityJPerK);
    this.toAmbient = Float64Array.from(cells, ([s]) => s.toAmbientWPerK);
  }

  /** Marks the Jacobian entries that uptake can touch. */
  markPattern(pattern: Uint8Array, size: number): void {
    for (let c = 0; c < this.count; c++) {
      const b = this.base[c]!;
      for (const row of [b + 1, b + 2, b + 3]) for (const col of [b + 1, b + 2, b + 3]) pattern[row * size + col] = 1;
    }
  }

  /** Adds uptake and its heat to dx. */
  add(gas: NodeGas, x: Float64Array, inputs: Inputs, dx: Float64Array): void {
    const ambientK = inputs.value[INPUT_INDEX.ambientTemperatureK]!;
    for (let c = 0; c < this.count; c++) {
      const b = this.base[c]!;
      const t = x[b + 3]!;
      const carbon = this.carbonKg[c]!;
      let taken = 0;
      if (carbon > 0) {
        const vapourPa = partialPressure(x[b + 1]!, t, gas.volume[this.node[c]!]!, gas.vapourGasConstant);
        const equilibrium = langmuirUptake(CARBON.saturationKgPerKg, langmuirAffinity(CARBON, t), vapourPa);
        taken = carbon * uptakeRate(this.rateHz[c]!, equilibrium, x[b + 2]! / carbon);
      }
      dx[b + 1] = dx[b + 1]! - taken;
      dx[b + 2] = dx[b + 2]! + taken;
      const heat = adsorptionHeatFlow(taken, CARBON.heatJPerMol, gas.vapourMolarMass);
      dx[b + 3] = dx[b + 3]! + (heat + this.toAmbient[c]! * (ambientK - t)) / this.heatCapacity[c]!;
    }
  }

  /** Adds the derivatives of uptake and heat to the Jacobian. */
  addJacobian(gas: NodeGas, x: Float64Array, jacobian: Float64Array, size: number): void {
    for (let c = 0; c < this.count; c++) {
      const b = this.base[c]!;
      const t = x[b + 3]!;
      const capacity = this.heatCapacity[c]!;
      const carbon = this.carbonKg[c]!;
      const rowVapour = (b + 1) * size;
      const rowTaken = (b + 2) * size;
      const rowHeat = (b + 3) * size;
      jacobian[rowHeat + b + 3] = jacobian[rowHeat + b + 3]! - this.toAmbient[c]! / capacity;
      if (carbon <= 0) continue;
      const perKg = partialPressure(1, t, gas.volume[this.node[c]!]!, gas.vapourGasConstant);
      const vapourPa = perKg * x[b + 1]!;
      const affinity = langmuirAffinity(CARBON, t);
      const slope = langmuirUptakeDerivative(CARBON.saturationKgPerKg, affinity, vapourPa);
      const rate = this.rateHz[c]!;
      const byVapour = rate * carbon * slope * perKg;
      const byTaken = -rate;
      // Uptake depends on affinity times pressure; affinity falls with temperature, pressure rises.
      const affinityFall = CARBON.heatJPerMol / (MOLAR_GAS_CONSTANT * t * t);
      const byTemperature = rate * carbon * slope * vapourPa * (1 / t - affinityFall);
      const heatPerKg = adsorptionHeatFlow(1, CARBON.heatJPerMol, gas.vapourMolarMass) / capacity;
      for (let n = 0; n < 3; n++) {
        const col = b + 1 + n;
        const slopeN = n === 0 ? byVapour : n === 1 ? byTaken : byTemperature;
        jacobian[rowVapour + col] = jacobian[rowVapour + col]! - slopeN;
        jacobian[rowTaken + col] = jacobian[rowTaken + col]! + slopeN;
        jacobian[rowHeat + col] = jacobian[rowHeat + col]! + slopeN * heatPerKg;
      }
    }
  }
}
