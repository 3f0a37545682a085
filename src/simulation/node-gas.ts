import { HEAT_CAPACITY_CP_FUEL_VAPOUR, HEAT_CAPACITY_CV_AIR, SPECIFIC_GAS_CONSTANT_AIR } from '../physics/constants.ts';
import { mixtureGamma, mixturePressure, specificGasConstant } from '../physics/gas.ts';
import type { Network, TankSpace } from '../system/network.ts';
import { INPUT_INDEX, type Inputs } from './inputs.ts';
import type { StateLayout } from './state-layout.ts';

const KIND_GAS = 0;
const KIND_TANK = 1;
const KIND_BED = 2;
const KIND_BOUNDARY = 3;

/** Most state components that the gas of one node depends on. */
export const COLUMNS = 4;

/**
 * Pressure, temperature and composition of the gas in every node, with their gradients by the node's own state
 * components. Everything else in the equations reads the gas from here.
 */
export class NodeGas {
  readonly pressure: Float64Array;
  readonly temperature: Float64Array;
  /** Vapour mass over gas mass. */
  readonly massFraction: Float64Array;
  readonly gasConstant: Float64Array;
  readonly gamma: Float64Array;
  /** Gas volume; of boundaries 0. */
  readonly volume: Float64Array;
  readonly columnCount: Int32Array;
  readonly column: Int32Array;
  readonly pressureBy: Float64Array;
  readonly temperatureBy: Float64Array;
  readonly massFractionBy: Float64Array;
  readonly vapourMolarMass: number;
  readonly vapourGasConstant: number;
  readonly vapourCv: number;

  private readonly kind: Uint8Array;
  private readonly base: Int32Array;
  private readonly roomVolume: Float64Array;
  private readonly fuelSpecificVolume: Float64Array;
  private readonly spaceCount: number;
  private readonly nodeCount: number;

  constructor(network: Network, layout: StateLayout) {
    const n = layout.nodeCount;
    this.spaceCount = layout.spaceCount;
    this.nodeCount = n;
    this.base = layout.base;
    this.pressure = new Float64Array(n);
    this.temperature = new Float64Array(n);
    this.massFraction = new Float64Array(n);
    this.gasConstant = new Float64Array(n);
    this.gamma = new Float64Array(n);
    this.volume = new Float64Array(n);
    this.columnCount = new Int32Array(n);
    this.column = new Int32Array(n * COLUMNS);
    this.pressureBy = new Float64Array(n * COLUMNS);
    this.temperatureBy = new Float64Array(n * COLUMNS);
    this.massFractionBy = new Float64Array(n * COLUMNS);
    this.kind = new Uint8Array(n).fill(KIND_BOUNDARY);
    this.roomVolume = new Float64Array(n);
    this.fuelSpecificVolume = new Float64Array(n);
    const tank = network.spaces.find((s): s is TankSpace => s.kind === 'tank');
    if (tank === undefined) throw new Error('the network has no tank: its fuel gives the vapour its properties');
    this.vapourMolarMass = tank.fuel.vapourMolarMassKgPerMol;
    this.vapourGasConstant = specificGasConstant(this.vapourMolarMass);
    this.vapourCv = HEAT_CAPACITY_CP_FUEL_VAPOUR - this.vapourGasConstant;
    network.spaces.forEach((space, i) => {
      const b = layout.base[i]!;
      const columns = [b, b + 1];
      if (space.kind === 'tank') {
        this.kind[i] = KIND_TANK;
        this.roomVolume[i] = space.shellVolumeM3 + space.neckVolumeM3;
        this.fuelSpecificVolume[i] = 1 / space.fuel.densityKgPerM3;
        columns.push(b + 2, b + 3);
      } else {
        this.kind[i] = space.kind === 'bed' ? KIND_BED : KIND_GAS;
        this.roomVolume[i] = space.volumeM3;
        if (space.kind === 'bed') columns.push(b + 3);
      }
      this.columnCount[i] = columns.length;
      this.column.set(columns, i * COLUMNS);
    });
  }

  /** Reads the gas of every node from the state; boundaries from the inputs. */
  read(x: Float64Array, inputs: Inputs): void {
    const { pressure, temperature, massFraction, gasConstant, gamma, volume, kind, base, vapourGasConstant } = this;
    const ambientK = inputs.value[INPUT_INDEX.ambientTemperatureK]!;
    for (let i = 0; i < this.spaceCount; i++) {
      const b = base[i]!;
      const air = x[b]!;
      const vapour = x[b + 1]!;
      let v = this.roomVolume[i]!;
      let t = ambientK;
      if (kind[i] === KIND_TANK) {
        v -= x[b + 3]! * this.fuelSpecificVolume[i]!;
        // No room for gas is no state: it must not pass as a negative volume of negative mass.
        if (v <= 0) v = Number.NaN;
        t = x[b + 2]! / (air * HEAT_CAPACITY_CV_AIR + vapour * this.vapourCv);
      } else if (kind[i] === KIND_BED) t = x[b + 3]!;
      const w = vapour / (air + vapour);
      volume[i] = v;
      temperature[i] = t;
      massFraction[i] = w;
      gasConstant[i] = SPECIFIC_GAS_CONSTANT_AIR + w * (vapourGasConstant - SPECIFIC_GAS_CONSTANT_AIR);
      gamma[i] = mixtureGamma(w, this.vapourMolarMass);
      pressure[i] = mixturePressure(air, vapour, t, v, vapourGasConstant);
    }
    for (let i = this.spaceCount; i < this.nodeCount; i++) {
      pressure[i] = inputs.value[BOUNDARY_INPUT[i - this.spaceCount]!]!;
      temperature[i] = ambientK;
      massFraction[i] = 0;
      gasConstant[i] = SPECIFIC_GAS_CONSTANT_AIR;
      gamma[i] = GAMMA_OF_AIR;
    }
  }

  /** Gradients at the state last read. */
  readGradients(x: Float64Array): void {
    const { pressure, temperature, massFraction, volume, kind, base, vapourGasConstant } = this;
    const { pressureBy, temperatureBy, massFractionBy } = this;
    for (let i = 0; i < this.spaceCount; i++) {
      const b = base[i]!;
      const at = i * COLUMNS;
      const mass = x[b]! + x[b + 1]!;
      const t = temperature[i]!;
      const p = pressure[i]!;
      const v = volume[i]!;
      const w = massFraction[i]!;
      massFractionBy[at] = -w / mass;
      massFractionBy[at + 1] = (1 - w) / mass;
      pressureBy[at] = (SPECIFIC_GAS_CONSTANT_AIR * t) / v;
      pressureBy[at + 1] = (vapourGasConstant * t) / v;
      if (kind[i] === KIND_TANK) {
        const capacity = x[b]! * HEAT_CAPACITY_CV_AIR + x[b + 1]! * this.vapourCv;
        const byT = p / t;
        temperatureBy[at] = (-t * HEAT_CAPACITY_CV_AIR) / capacity;
        temperatureBy[at + 1] = (-t * this.vapourCv) / capacity;
        temperatureBy[at + 2] = 1 / capacity;
        pressureBy[at] = pressureBy[at]! + byT * temperatureBy[at]!;
        pressureBy[at + 1] = pressureBy[at + 1]! + byT * temperatureBy[at + 1]!;
        pressureBy[at + 2] = byT * temperatureBy[at + 2]!;
        pressureBy[at + 3] = (p / v) * this.fuelSpecificVolume[i]!;
      } else if (kind[i] === KIND_BED) {
        temperatureBy[at + 2] = 1;
        pressureBy[at + 2] = p / t;
      }
    }
  }
}

const BOUNDARY_INPUT = [INPUT_INDEX.ambientAbsPa, INPUT_INDEX.manifoldAbsPa, INPUT_INDEX.ejectorAbsPa] as const;
const GAMMA_OF_AIR = mixtureGamma(0, 1);
