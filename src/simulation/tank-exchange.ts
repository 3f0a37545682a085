import { HEAT_CAPACITY_CP_FUEL_VAPOUR, HEAT_OF_VAPORISATION_FUEL } from '../physics/constants.ts';
import { evaporationMassFlow } from '../physics/evaporation.ts';
import { antoineCoefficients, antoineVapourPressure, antoineVapourPressureDerivative } from '../physics/fuel-vapour.ts';
import { partialPressure } from '../physics/gas.ts';
import type { Network, TankSpace } from '../system/network.ts';
import { COMMAND_INDEX } from './commands.ts';
import { INPUT_INDEX, type Inputs } from './inputs.ts';
import { COLUMNS, type NodeGas } from './node-gas.ts';
import type { StateLayout } from './state-layout.ts';

/** Evaporation and condensation, and heat between gas, wall, fuel and ambient, in every tank. */
export class TankExchange {
  private readonly tanks: readonly TankSpace[];
  private readonly node: Int32Array;
  private readonly base: Int32Array;
  private readonly antoineA: Float64Array;
  private readonly antoineB: Float64Array;
  private readonly factor: Float64Array;
  private readonly area: Float64Array;
  private readonly transfer: Float64Array;

  constructor(network: Network, layout: StateLayout) {
    const nodes: number[] = [];
    this.tanks = network.spaces.filter((s, i): s is TankSpace => {
      if (s.kind === 'tank') nodes.push(i);
      return s.kind === 'tank';
    });
    this.node = Int32Array.from(nodes);
    this.base = Int32Array.from(nodes, (i) => layout.base[i]!);
    const antoine = this.tanks.map((t) => antoineCoefficients(t.fuel.reidVapourPressurePa));
    this.antoineA = Float64Array.from(antoine, (a) => a.a);
    this.antoineB = Float64Array.from(antoine, (a) => a.bRankine);
    this.factor = Float64Array.from(this.tanks, (t) => t.fuel.vapourPressureFactor);
    this.area = Float64Array.from(this.tanks, (t) => t.surfaceAreaM2);
    this.transfer = Float64Array.from(this.tanks, (t) => t.massTransferMPerS);
  }

  /** Fuel that falls in stirs the surface. */
  setCommands(commands: Float64Array): void {
    const filling = commands[COMMAND_INDEX.nozzleOn]! > 0;
    this.tanks.forEach((t, k) => {
      this.transfer[k] = filling ? t.massTransferFillingMPerS : t.massTransferMPerS;
    });
  }

  /** Marks the Jacobian entries that evaporation and heat can touch. */
  markPattern(pattern: Uint8Array, size: number): void {
    for (const b of this.base) {
      for (let row = b + 1; row < b + 5; row++) for (let col = b; col < b + 5; col++) pattern[row * size + col] = 1;
    }
  }

  /** Adds evaporation and heat to dx. */
  add(gas: NodeGas, x: Float64Array, inputs: Inputs, dx: Float64Array): void {
    const ambientK = inputs.value[INPUT_INDEX.ambientTemperatureK]!;
    const heat = inputs.value[INPUT_INDEX.fuelHeatW]! / this.tanks.length;
    for (let k = 0; k < this.tanks.length; k++) {
      const tank = this.tanks[k]!;
      const node = this.node[k]!;
      const b = this.base[k]!;
      const gasK = gas.temperature[node]!;
      const fuelK = x[b + 4]!;
      const vapourPa = partialPressure(x[b + 1]!, gasK, gas.volume[node]!, gas.vapourGasConstant);
      const evaporated = evaporationMassFlow(
        this.transfer[k]!,
        this.area[k]!,
        this.factor[k]! * antoineVapourPressure(this.antoineA[k]!, this.antoineB[k]!, fuelK),
        vapourPa,
        fuelK,
        gas.vapourMolarMass,
      );
      const toGasFromFuel = tank.gasToFuelWPerK * (fuelK - gasK);
      dx[b + 1] = dx[b + 1]! + evaporated;
      dx[b + 3] = dx[b + 3]! - evaporated;
      dx[b + 2] =
        dx[b + 2]! +
        evaporated * HEAT_CAPACITY_CP_FUEL_VAPOUR * fuelK +
        tank.gasToWallWPerK * (ambientK - gasK) +
        toGasFromFuel;
      const capacity = x[b + 3]! * tank.fuel.heatCapacityJPerKgK + tank.shellHeatCapacityJPerK;
      dx[b + 4] =
        dx[b + 4]! +
        (heat + tank.fuelToAmbientWPerK * (ambientK - fuelK) - toGasFromFuel - evaporated * HEAT_OF_VAPORISATION_FUEL) /
          capacity;
    }
  }

  /** Adds the derivatives of evaporation and heat to the Jacobian. */
  addJacobian(gas: NodeGas, x: Float64Array, inputs: Inputs, jacobian: Float64Array, size: number): void {
    const ambientK = inputs.value[INPUT_INDEX.ambientTemperatureK]!;
    const heat = inputs.value[INPUT_INDEX.fuelHeatW]! / this.tanks.length;
    for (let k = 0; k < this.tanks.length; k++) {
      const tank = this.tanks[k]!;
      const node = this.node[k]!;
      const b = this.base[k]!;
      const gasK = gas.temperature[node]!;
      const fuelK = x[b + 4]!;
      const volume = gas.volume[node]!;
      const vapourPa = partialPressure(x[b + 1]!, gasK, volume, gas.vapourGasConstant);
      const a = this.antoineA[k]!;
      const bb = this.antoineB[k]!;
      const saturation = this.factor[k]! * antoineVapourPressure(a, bb, fuelK);
      const transfer = this.transfer[k]!;
      const area = this.area[k]!;
      const perPa = evaporationMassFlow(transfer, area, 1, 0, fuelK, gas.vapourMolarMass);
      const evaporated = perPa * (saturation - vapourPa);
      const saturationSlope = this.factor[k]! * antoineVapourPressureDerivative(a, bb, fuelK);
      const capacity = x[b + 3]! * tank.fuel.heatCapacityJPerKgK + tank.shellHeatCapacityJPerK;
      const fuelW =
        heat +
        tank.fuelToAmbientWPerK * (ambientK - fuelK) -
        tank.gasToFuelWPerK * (fuelK - gasK) -
        evaporated * HEAT_OF_VAPORISATION_FUEL;
      for (let c = 0; c < 5; c++) {
        const col = b + c;
        const at = node * COLUMNS + c;
        let byGasK = 0;
        let evaporatedBy = 0;
        let fuelK_ = 0;
        if (c === 4) {
          fuelK_ = 1;
          evaporatedBy = perPa * saturationSlope - evaporated / fuelK;
        } else {
          byGasK = gas.temperatureBy[at]!;
          let vapourBy = (vapourPa / gasK) * byGasK;
          if (c === 1) vapourBy += partialPressure(1, gasK, volume, gas.vapourGasConstant);
          if (c === 3) vapourBy += vapourPa / volume / tank.fuel.densityKgPerM3;
          evaporatedBy = -perPa * vapourBy;
        }
        const vapourRow = (b + 1) * size + col;
        const energyRow = (b + 2) * size + col;
        const fuelRow = (b + 3) * size + col;
        const heatRow = (b + 4) * size + col;
        jacobian[vapourRow] = jacobian[vapourRow]! + evaporatedBy;
        jacobian[fuelRow] = jacobian[fuelRow]! - evaporatedBy;
        jacobian[energyRow] =
          jacobian[energyRow]! +
          HEAT_CAPACITY_CP_FUEL_VAPOUR * (evaporatedBy * fuelK + evaporated * fuelK_) -
          tank.gasToWallWPerK * byGasK +
          tank.gasToFuelWPerK * (fuelK_ - byGasK);
        let rate =
          (-tank.fuelToAmbientWPerK * fuelK_ -
            tank.gasToFuelWPerK * (fuelK_ - byGasK) -
            evaporatedBy * HEAT_OF_VAPORISATION_FUEL) /
          capacity;
        if (c === 3) rate -= (fuelW * tank.fuel.heatCapacityJPerKgK) / (capacity * capacity);
        jacobian[heatRow] = jacobian[heatRow]! + rate;
      }
    }
  }
}
