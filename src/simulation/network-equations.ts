import { sensorLagRate } from '../physics/sensor.ts';
import { COMMANDS, type Network } from '../system/network.ts';
import { BedExchange } from './bed-exchange.ts';
import { FuelFlows } from './fuel-flows.ts';
import { INPUT_INDEX, Inputs } from './inputs.ts';
import { COLUMNS, NodeGas } from './node-gas.ts';
import type { OdeSystem } from './ode-system.ts';
import { PassageFlows } from './passage-flows.ts';
import { layOutState, type StateLayout } from './state-layout.ts';
import { TankExchange } from './tank-exchange.ts';

/** Forward step for the partial derivative by time, s; inputs are straight lines in time, so it hardly matters. */
const TIME_STEP_S = 1e-3;

/** Smallest sensor lag that is integrated, s; below it the sensor is as good as instant. */
const SENSOR_LAG_LEAST_S = 1e-3;

/**
 * The equations of a network: dx/dt = S F(x, t). F holds the flows through passages, evaporation and uptake, each
 * depending on the states at its two ends only; S says with +1 and -1 which store loses and which gains. Boundaries
 * are stores like the others (the ledger), so air and fuel are conserved by construction, not by accuracy.
 */
export class NetworkEquations implements OdeSystem {
  readonly network: Network;
  readonly layout: StateLayout;
  readonly size: number;
  readonly dynamicSize: number;
  readonly pattern: Uint8Array;
  readonly inputs = new Inputs();
  readonly commands = new Float64Array(COMMANDS.length);
  readonly gas: NodeGas;
  readonly flows: PassageFlows;
  readonly fuel: FuelFlows;
  /** Evaluations of the right-hand side since the start. */
  evaluations = 0;

  private readonly tanks: TankExchange;
  private readonly beds: BedExchange;
  private readonly sensorNode: Int32Array;
  private readonly sensorLag: Float64Array;
  private readonly shifted: Float64Array;

  constructor(network: Network) {
    this.network = network;
    this.layout = layOutState(network);
    this.size = this.layout.size;
    this.dynamicSize = this.layout.dynamicSize;
    this.gas = new NodeGas(network, this.layout);
    this.flows = new PassageFlows(network, this.layout);
    this.fuel = new FuelFlows(network, this.layout, this.commands);
    this.tanks = new TankExchange(network, this.layout);
    this.beds = new BedExchange(network, this.layout);
    this.sensorNode = Int32Array.from(network.sensors, (s) => this.layout.nodeIndex.get(s.space)!);
    this.sensorLag = Float64Array.from(network.sensors, (s) => Math.max(s.lagS, SENSOR_LAG_LEAST_S));
    this.shifted = new Float64Array(this.size);
    this.pattern = new Uint8Array(this.size * this.size);
    this.flows.markPattern(this.pattern, this.size, this.gas);
    this.tanks.markPattern(this.pattern, this.size);
    this.beds.markPattern(this.pattern, this.size);
    this.fuel.markPattern(this.pattern, this.size);
    this.sensorNode.forEach((node, k) => {
      const row = this.layout.sensorRow[k]! * this.size;
      this.pattern[row + this.layout.sensorRow[k]!] = 1;
      for (let c = 0; c < this.gas.columnCount[node]!; c++) {
        this.pattern[row + this.gas.column[node * COLUMNS + c]!] = 1;
      }
    });
    for (let i = 0; i < this.dynamicSize; i++) this.pattern[i * this.size + i] = 1;
    this.commandsChanged();
  }

  /** Takes over what was written into `commands`. */
  commandsChanged(): void {
    this.flows.setCommands(this.commands);
    this.tanks.setCommands(this.commands);
  }

  /** Reads gas and flows of a state, for traces and events. */
  observe(timeS: number, x: Float64Array): void {
    this.inputs.moveTo(timeS);
    this.gas.read(x, this.inputs);
    this.flows.add(this.gas, this.shifted);
  }

  /** Decides which side is upstream where hardly anything flows. */
  beginStep(timeS: number, x: Float64Array): void {
    this.inputs.moveTo(timeS);
    this.gas.read(x, this.inputs);
    this.flows.holdDirections(this.gas);
  }

  /** dx/dt = S F(x, t). */
  derivative(timeS: number, x: Float64Array, dx: Float64Array): void {
    this.evaluations++;
    this.inputs.moveTo(timeS);
    this.gas.read(x, this.inputs);
    dx.fill(0);
    this.flows.add(this.gas, dx);
    this.tanks.add(this.gas, x, this.inputs, dx);
    this.beds.add(this.gas, x, this.inputs, dx);
    this.fuel.add(this.gas, x, this.inputs, dx);
    const ambient = this.inputs.value[INPUT_INDEX.ambientAbsPa]!;
    const sensors = this.layout.sensorRow;
    for (let k = 0; k < sensors.length; k++) {
      const row = sensors[k]!;
      dx[row] = sensorLagRate(this.gas.pressure[this.sensorNode[k]!]! - ambient, x[row]!, this.sensorLag[k]!);
    }
  }

  /** S dF/dx from the local derivatives. */
  jacobian(timeS: number, x: Float64Array, jacobian: Float64Array): void {
    this.inputs.moveTo(timeS);
    this.gas.read(x, this.inputs);
    this.gas.readGradients(x);
    this.flows.addJacobian(this.gas, jacobian, this.size);
    this.tanks.addJacobian(this.gas, x, this.inputs, jacobian, this.size);
    this.beds.addJacobian(this.gas, x, jacobian, this.size);
    this.fuel.addJacobian(this.gas, x, this.inputs, jacobian, this.size);
    const sensors = this.layout.sensorRow;
    for (let k = 0; k < sensors.length; k++) {
      const node = this.sensorNode[k]!;
      const own = sensors[k]!;
      const row = own * this.size;
      const rate = 1 / this.sensorLag[k]!;
      jacobian[row + own] = jacobian[row + own]! - rate;
      for (let c = 0; c < this.gas.columnCount[node]!; c++) {
        const at = node * COLUMNS + c;
        const col = this.gas.column[at]!;
        jacobian[row + col] = jacobian[row + col]! + rate * this.gas.pressureBy[at]!;
      }
    }
  }

  /** Partial derivative by time, through the inputs that move. */
  timeDerivative(timeS: number, x: Float64Array, dfdt: Float64Array): boolean {
    if (!this.inputs.moving) return false;
    this.derivative(timeS + TIME_STEP_S, x, dfdt);
    this.derivative(timeS, x, this.shifted);
    for (let i = 0; i < this.size; i++) dfdt[i] = (dfdt[i]! - this.shifted[i]!) / TIME_STEP_S;
    return true;
  }
}
