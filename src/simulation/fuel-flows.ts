import { HEAT_CAPACITY_CP_AIR, SPECIFIC_GAS_CONSTANT_AIR } from '../physics/constants.ts';
import { gasDensity } from '../physics/gas.ts';
import { aboveCrest, aboveCrestDerivative, suctionShare, suctionShareDerivative } from '../physics/liquid-transfer.ts';
import type { Network, TankSpace } from '../system/network.ts';
import { COMMAND_INDEX } from './commands.ts';
import { INPUT_INDEX, type Inputs } from './inputs.ts';
import { COLUMNS, type NodeGas } from './node-gas.ts';
import type { StateLayout } from './state-layout.ts';

interface Move {
  readonly from: number;
  readonly to: number;
  readonly flowM3PerS: number;
  readonly edge: number;
  readonly command: number;
}

/** Liquid fuel: dispensed into the tank, burnt by the engine, over the weir and lifted between lobes. */
export class FuelFlows {
  private readonly tank: (TankSpace | undefined)[];
  private readonly base: Int32Array;
  private readonly energyRow: Int32Array;
  private readonly fillNode: number;
  private readonly drawNode: number;
  private readonly ambientRow: number;
  private readonly dispensedRow: number;
  private readonly drawnRow: number;
  private readonly entrainment: number;
  private readonly weirs: readonly Move[];
  private readonly pumps: readonly Move[];
  private readonly commands: Float64Array;

  constructor(network: Network, layout: StateLayout, commands: Float64Array) {
    const node = (id: string) => {
      const index = layout.nodeIndex.get(id);
      if (index === undefined || network.spaces[index]?.kind !== 'tank') {
        throw new Error(`fuel flows at '${id}', which is no tank of this network`);
      }
      return index;
    };
    this.tank = network.spaces.map((s) => (s.kind === 'tank' ? s : undefined));
    this.base = layout.base;
    this.energyRow = layout.energyRow;
    this.fillNode = node(network.fillSpace);
    this.drawNode = node(network.drawSpace);
    this.ambientRow = layout.base[layout.spaceCount]!;
    this.dispensedRow = layout.fuelDispensedRow;
    this.drawnRow = layout.fuelDrawnRow;
    this.entrainment = network.airEntrainment;
    this.commands = commands;
    this.weirs = network.weirs.map((w) => ({
      from: node(w.between[0]),
      to: node(w.between[1]),
      flowM3PerS: w.flowM3PerS,
      edge: w.heightFraction,
      command: -1,
    }));
    this.pumps = network.transferPumps.map((p) => ({
      from: node(p.from),
      to: node(p.to),
      flowM3PerS: p.flowM3PerS,
      edge: p.unusableFraction,
      command: COMMAND_INDEX[p.command],
    }));
  }

  /** Share of a tank's shell that fuel fills. */
  fillFraction(node: number, x: Float64Array): number {
    const tank = this.tank[node];
    if (tank === undefined) throw new Error(`node ${node} is no tank`);
    return x[this.base[node]! + 3]! / (tank.fuel.densityKgPerM3 * tank.shellVolumeM3);
  }

  /** Marks the Jacobian entries that flows between lobes can touch. */
  markPattern(pattern: Uint8Array, size: number): void {
    for (const { from, to } of [...this.weirs, ...this.pumps]) {
      for (const rowNode of [from, to]) {
        for (const colNode of [from, to]) {
          for (let r = 2; r < 5; r++) {
            for (let c = 0; c < 5; c++) pattern[(this.base[rowNode]! + r) * size + this.base[colNode]! + c] = 1;
          }
        }
      }
    }
  }

  /** Adds all flows of fuel to dx, with the work they do on the gas. */
  add(gas: NodeGas, x: Float64Array, inputs: Inputs, dx: Float64Array): void {
    const fill = this.commands[COMMAND_INDEX.nozzleOn]! * inputs.value[INPUT_INDEX.fillFlowM3PerS]!;
    if (fill !== 0) {
      const b = this.base[this.fillNode]!;
      const fuel = this.tank[this.fillNode]!.fuel;
      const mass = fuel.densityKgPerM3 * fill;
      const ambientK = inputs.value[INPUT_INDEX.ambientTemperatureK]!;
      const ambientPa = inputs.value[INPUT_INDEX.ambientAbsPa]!;
      const air = this.entrainment * fill * gasDensity(ambientPa, ambientK, SPECIFIC_GAS_CONSTANT_AIR);
      const fillK = inputs.value[INPUT_INDEX.fillTemperatureK]!;
      dx[b + 3] = dx[b + 3]! + mass;
      dx[this.dispensedRow] = dx[this.dispensedRow]! - mass;
      dx[b] = dx[b]! + air;
      dx[this.ambientRow] = dx[this.ambientRow]! - air;
      // The rising fuel presses the gas together.
      dx[b + 2] = dx[b + 2]! + air * HEAT_CAPACITY_CP_AIR * ambientK + gas.pressure[this.fillNode]! * fill;
      dx[b + 4] =
        dx[b + 4]! + (mass * fuel.heatCapacityJPerKgK * (fillK - x[b + 4]!)) / this.capacity(this.fillNode, x);
    }
    const draw = inputs.value[INPUT_INDEX.fuelDrawM3PerS]!;
    if (draw !== 0) {
      const b = this.base[this.drawNode]!;
      const mass = this.tank[this.drawNode]!.fuel.densityKgPerM3 * draw;
      dx[b + 3] = dx[b + 3]! - mass;
      dx[this.drawnRow] = dx[this.drawnRow]! + mass;
      dx[b + 2] = dx[b + 2]! - gas.pressure[this.drawNode]! * draw;
    }
    for (const w of this.weirs) {
      const q =
        w.flowM3PerS *
        (aboveCrest(this.fillFraction(w.from, x), w.edge) - aboveCrest(this.fillFraction(w.to, x), w.edge));
      if (q !== 0) this.move(gas, x, dx, w, q);
    }
    for (const p of this.pumps) {
      const q = this.commands[p.command]! * p.flowM3PerS * suctionShare(this.fillFraction(p.from, x), p.edge);
      if (q !== 0) this.move(gas, x, dx, p, q);
    }
  }

  /** Adds the derivatives of all flows of fuel to the Jacobian. */
  addJacobian(gas: NodeGas, x: Float64Array, inputs: Inputs, jacobian: Float64Array, size: number): void {
    const fill = this.commands[COMMAND_INDEX.nozzleOn]! * inputs.value[INPUT_INDEX.fillFlowM3PerS]!;
    if (fill !== 0) {
      this.addPressureWork(gas, jacobian, size, this.fillNode, fill);
      const b = this.base[this.fillNode]!;
      const fuel = this.tank[this.fillNode]!.fuel;
      const capacity = this.capacity(this.fillNode, x);
      const perK = (fuel.densityKgPerM3 * fill * fuel.heatCapacityJPerKgK) / capacity;
      const row = (b + 4) * size;
      const lack = inputs.value[INPUT_INDEX.fillTemperatureK]! - x[b + 4]!;
      jacobian[row + b + 4] = jacobian[row + b + 4]! - perK;
      jacobian[row + b + 3] = jacobian[row + b + 3]! - (perK * lack * fuel.heatCapacityJPerKgK) / capacity;
    }
    const draw = inputs.value[INPUT_INDEX.fuelDrawM3PerS]!;
    if (draw !== 0) this.addPressureWork(gas, jacobian, size, this.drawNode, -draw);
    for (const w of this.weirs) {
      const from = this.fillFraction(w.from, x);
      const to = this.fillFraction(w.to, x);
      const q = w.flowM3PerS * (aboveCrest(from, w.edge) - aboveCrest(to, w.edge));
      const byFrom = w.flowM3PerS * aboveCrestDerivative(from, w.edge) * this.fractionPerKg(w.from);
      const byTo = -w.flowM3PerS * aboveCrestDerivative(to, w.edge) * this.fractionPerKg(w.to);
      this.moveJacobian(gas, x, jacobian, size, w, q, byFrom, byTo);
    }
    for (const p of this.pumps) {
      const flow = this.commands[p.command]! * p.flowM3PerS;
      const from = this.fillFraction(p.from, x);
      const byFrom = flow * suctionShareDerivative(from, p.edge) * this.fractionPerKg(p.from);
      this.moveJacobian(gas, x, jacobian, size, p, flow * suctionShare(from, p.edge), byFrom, 0);
    }
  }

  private fractionPerKg(node: number): number {
    const tank = this.tank[node]!;
    return 1 / (tank.fuel.densityKgPerM3 * tank.shellVolumeM3);
  }

  private capacity(node: number, x: Float64Array): number {
    const tank = this.tank[node]!;
    return x[this.base[node]! + 3]! * tank.fuel.heatCapacityJPerKgK + tank.shellHeatCapacityJPerK;
  }

  /** Fuel volume flow q from one lobe to the other, with the work on both gases and the heat it carries. */
  private move(gas: NodeGas, x: Float64Array, dx: Float64Array, { from, to }: Move, q: number): void {
    const i = this.base[from]!;
    const j = this.base[to]!;
    const fuel = this.tank[from]!.fuel;
    const mass = fuel.densityKgPerM3 * q;
    dx[i + 3] = dx[i + 3]! - mass;
    dx[j + 3] = dx[j + 3]! + mass;
    dx[i + 2] = dx[i + 2]! - gas.pressure[from]! * q;
    dx[j + 2] = dx[j + 2]! + gas.pressure[to]! * q;
    const gains = q > 0 ? j : i;
    const warmer = (q > 0 ? 1 : -1) * (x[i + 4]! - x[j + 4]!);
    const capacity = this.capacity(q > 0 ? to : from, x);
    dx[gains + 4] = dx[gains + 4]! + (Math.abs(mass) * fuel.heatCapacityJPerKgK * warmer) / capacity;
  }

  private moveJacobian(
    gas: NodeGas,
    x: Float64Array,
    jacobian: Float64Array,
    size: number,
    { from, to }: Move,
    q: number,
    byFrom: number,
    byTo: number,
  ): void {
    const i = this.base[from]!;
    const j = this.base[to]!;
    const fuel = this.tank[from]!.fuel;
    const density = fuel.densityKgPerM3;
    for (let side = 0; side < 2; side++) {
      const by = side === 0 ? byFrom : byTo;
      const col = (side === 0 ? i : j) + 3;
      const add = (row: number, value: number) => {
        jacobian[row * size + col] = jacobian[row * size + col]! + value;
      };
      add(i + 3, -density * by);
      add(j + 3, density * by);
      add(i + 2, -gas.pressure[from]! * by);
      add(j + 2, gas.pressure[to]! * by);
      const gains = q > 0 ? j : i;
      const warmer = (q > 0 ? 1 : -1) * (x[i + 4]! - x[j + 4]!);
      const capacity = this.capacity(q > 0 ? to : from, x);
      add(gains + 4, ((q > 0 ? 1 : -1) * density * by * fuel.heatCapacityJPerKgK * warmer) / capacity);
    }
    this.addPressureWork(gas, jacobian, size, from, -q);
    this.addPressureWork(gas, jacobian, size, to, q);
    const gains = q > 0 ? j : i;
    const loses = q > 0 ? i : j;
    const capacity = this.capacity(q > 0 ? to : from, x);
    const heat = density * Math.abs(q) * fuel.heatCapacityJPerKgK;
    const row = (gains + 4) * size;
    jacobian[row + gains + 4] = jacobian[row + gains + 4]! - heat / capacity;
    jacobian[row + loses + 4] = jacobian[row + loses + 4]! + heat / capacity;
    const warmer = x[loses + 4]! - x[gains + 4]!;
    jacobian[row + gains + 3] =
      jacobian[row + gains + 3]! - (heat * warmer * fuel.heatCapacityJPerKgK) / (capacity * capacity);
  }

  private addPressureWork(gas: NodeGas, jacobian: Float64Array, size: number, node: number, q: number): void {
    const row = this.energyRow[node]! * size;
    for (let c = 0; c < gas.columnCount[node]!; c++) {
      const at = node * COLUMNS + c;
      const col = gas.column[at]!;
      jacobian[row + col] = jacobian[row + col]! + q * gas.pressureBy[at]!;
    }
  }
}
