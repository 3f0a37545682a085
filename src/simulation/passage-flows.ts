import { bedMassFlow, bedMassFlowDerivative } from '../physics/bed.ts';
import { checkValveArea, checkValveAreaDerivative } from '../physics/check-valve.ts';
import { HEAT_CAPACITY_CP_AIR, HEAT_CAPACITY_CP_FUEL_VAPOUR, SPECIFIC_GAS_CONSTANT_AIR } from '../physics/constants.ts';
import { gasDensity, mixtureGamma } from '../physics/gas.ts';
import { smoothOrificeMassFlow, smoothOrificeMassFlowDerivatives } from '../physics/orifice.ts';
import { pulseValveMeanArea, pulseValveOpenFraction } from '../physics/pulse-valve.ts';
import { reliefValveArea, reliefValveAreaDerivative } from '../physics/relief-valve.ts';
import { pumpVolumeFlow, pumpVolumeFlowDerivative } from '../physics/vacuum-pump.ts';
import type { Network, Passage } from '../system/network.ts';
import { COMMAND_INDEX } from './commands.ts';
import { coupleFlow } from './couple-flow.ts';
import { COLUMNS, type NodeGas } from './node-gas.ts';
import type { StateLayout } from './state-layout.ts';

const ORIFICE = 0;
const BED = 1;
const CHECK = 2;
const RELIEF = 3;
const PUMP = 4;
const KINDS = { orifice: ORIFICE, bed: BED, check: CHECK, relief: RELIEF, pump: PUMP } as const;

/** Step in vapour mass fraction for the slope of a flow by composition [-]; central, so the error is of its square. */
const COMPOSITION_STEP = 1e-6;

/**
 * Pressure difference below which a passage keeps its direction during a step [Pa]. Source: judgement.
 *
 * The gas that flows is the gas of the upstream side, so the equations have a corner where a flow reverses. Slow
 * breathing runs along that corner for hours with differences of micropascals; seen anew in every stage of a step it
 * would cut the steps to milliseconds. The flow itself stays exact in sign and size; only whose gas it is waits.
 */
const HELD_DIRECTION_PA = 0.01;

/** Whether a passage can ever let gas through. */
function everOpen(p: Passage): boolean {
  if (p.kind === 'bed') return true;
  if (p.kind === 'pump') return p.freeFlowM3PerS > 0;
  return p.openAreaM2 > 0 || p.shutAreaM2 > 0;
}

/**
 * Flows of gas through all passages: every flow leaves one node and enters another, so what one loses the other
 * gains to the last bit. Parameters lie in flat arrays; passages that are shut just now are left out of the loops.
 */
export class PassageFlows {
  readonly count: number;
  /** Mass flow from `from` to `to` at the state last evaluated, kg/s. */
  readonly flow: Float64Array;
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly ids: readonly string[];

  private readonly kind: Uint8Array;
  /** Four parameters for each kind: see `fill`. */
  private readonly a: Float64Array;
  private readonly b: Float64Array;
  private readonly c: Float64Array;
  private readonly area: Float64Array;
  private readonly shutArea: Float64Array;
  private readonly active: Int32Array;
  private activeCount = 0;
  private readonly passages: readonly Passage[];
  private readonly rowBase: Int32Array;
  private readonly energyRow: Int32Array;
  private readonly slopes = new Float64Array(2);
  /** Upstream node of each passage at the start of the step, -1 = not held. */
  private readonly held: Int32Array;

  constructor(network: Network, layout: StateLayout) {
    const passages = network.passages.filter(everOpen);
    const n = passages.length;
    this.passages = passages;
    this.count = n;
    this.ids = passages.map((p) => p.id);
    this.flow = new Float64Array(n);
    this.from = Int32Array.from(passages, (p) => nodeOf(layout, p, p.from));
    this.to = Int32Array.from(passages, (p) => nodeOf(layout, p, p.to));
    this.kind = Uint8Array.from(passages, (p) => KINDS[p.kind]);
    this.a = new Float64Array(n);
    this.b = new Float64Array(n);
    this.c = new Float64Array(n);
    this.area = new Float64Array(n);
    this.shutArea = new Float64Array(n);
    this.active = new Int32Array(n);
    this.held = new Int32Array(n).fill(-1);
    this.rowBase = layout.base;
    this.energyRow = layout.energyRow;
    passages.forEach((p, k) => {
      if (p.kind === 'bed') {
        this.a[k] = p.linearPaSPerKg;
        this.b[k] = p.quadraticPaS2PerKg2;
      } else if (p.kind === 'check') {
        this.a[k] = p.crackingPa;
        this.b[k] = p.fullyOpenPa;
      } else if (p.kind === 'relief') {
        this.a[k] = p.pressureSettingPa;
        this.b[k] = p.vacuumSettingPa;
        this.c[k] = p.openingSpanPa;
      } else if (p.kind === 'pump') {
        this.a[k] = p.freeFlowM3PerS;
        this.b[k] = p.stallPa;
      }
      if (p.kind === 'check' || p.kind === 'relief') {
        this.area[k] = p.openAreaM2;
        this.shutArea[k] = p.shutAreaM2;
      }
    });
  }

  /** Sets areas and the pump by the commands; passages without area are skipped until the next change. */
  setCommands(commands: Float64Array): void {
    this.activeCount = 0;
    this.flow.fill(0);
    for (let k = 0; k < this.count; k++) {
      const p = this.passages[k]!;
      if (p.kind === 'orifice') {
        if (p.actuation === undefined) this.area[k] = p.openAreaM2;
        else {
          const command = commands[COMMAND_INDEX[p.actuation.command]]!;
          const open = p.actuation.opens ? command : 1 - command;
          const fraction =
            p.pulse === undefined
              ? open
              : pulseValveOpenFraction(open, p.pulse.frequencyHz, p.pulse.openDelayS, p.pulse.closeDelayS);
          this.area[k] = pulseValveMeanArea(fraction, p.openAreaM2, p.shutAreaM2);
        }
        if (this.area[k]! <= 0) continue;
      } else if (p.kind === 'pump' && commands[COMMAND_INDEX[p.command]]! <= 0) continue;
      this.active[this.activeCount++] = k;
    }
  }

  /** Marks the Jacobian entries that flows can touch. */
  markPattern(pattern: Uint8Array, size: number, gas: NodeGas): void {
    for (let k = 0; k < this.count; k++) {
      const ends = [this.from[k]!, this.to[k]!];
      for (const row of ends) {
        const rows = [this.rowBase[row]!, this.rowBase[row]! + 1];
        if (this.energyRow[row]! >= 0) rows.push(this.energyRow[row]!);
        for (const node of ends) {
          for (let c = 0; c < gas.columnCount[node]!; c++) {
            for (const r of rows) pattern[r * size + gas.column[node * COLUMNS + c]!] = 1;
          }
        }
      }
    }
  }

  /** Decides for a step which side is upstream where hardly anything flows. */
  holdDirections(gas: NodeGas): void {
    for (let n = 0; n < this.activeCount; n++) {
      const k = this.active[n]!;
      const i = this.from[k]!;
      const j = this.to[k]!;
      this.held[k] = gas.pressure[i]! >= gas.pressure[j]! ? i : j;
    }
  }

  /** The side whose gas flows. */
  private upstream(k: number, pI: number, pJ: number): number {
    const held = this.held[k]!;
    if (held >= 0 && Math.abs(pI - pJ) < HELD_DIRECTION_PA) return held;
    return pI >= pJ ? this.from[k]! : this.to[k]!;
  }

  /** Adds all flows to dx. */
  add(gas: NodeGas, dx: Float64Array): void {
    const { active, from, to, flow, rowBase, energyRow } = this;
    const { pressure, temperature, massFraction } = gas;
    for (let n = 0; n < this.activeCount; n++) {
      const k = active[n]!;
      const i = from[k]!;
      const j = to[k]!;
      const m = this.massFlow(k, pressure[i]!, pressure[j]!, gas);
      flow[k] = m;
      const up = this.kind[k] === PUMP ? (m >= 0 ? i : j) : this.upstream(k, pressure[i]!, pressure[j]!);
      const vapour = m * massFraction[up]!;
      const air = m - vapour;
      const rowI = rowBase[i]!;
      const rowJ = rowBase[j]!;
      dx[rowI] = dx[rowI]! - air;
      dx[rowI + 1] = dx[rowI + 1]! - vapour;
      dx[rowJ] = dx[rowJ]! + air;
      dx[rowJ + 1] = dx[rowJ + 1]! + vapour;
      const heatI = energyRow[i]!;
      const heatJ = energyRow[j]!;
      if (heatI >= 0 || heatJ >= 0) {
        const enthalpy = (air * HEAT_CAPACITY_CP_AIR + vapour * HEAT_CAPACITY_CP_FUEL_VAPOUR) * temperature[up]!;
        if (heatI >= 0) dx[heatI] = dx[heatI]! - enthalpy;
        if (heatJ >= 0) dx[heatJ] = dx[heatJ]! + enthalpy;
      }
    }
  }

  private massFlow(k: number, pI: number, pJ: number, gas: NodeGas): number {
    const kind = this.kind[k]!;
    if (kind === BED) return bedMassFlow(this.a[k]!, this.b[k]!, pI - pJ);
    const up = this.upstream(k, pI, pJ);
    const t = gas.temperature[up]!;
    const r = gas.gasConstant[up]!;
    if (kind === ORIFICE) return smoothOrificeMassFlow(this.area[k]!, pI, pJ, t, r, gas.gamma[up]!);
    if (kind === PUMP) {
      const volumeFlow = pumpVolumeFlow(pJ - pI, this.a[k]!, this.b[k]!);
      const inlet = volumeFlow >= 0 ? this.from[k]! : this.to[k]!;
      return volumeFlow * gasDensity(gas.pressure[inlet]!, gas.temperature[inlet]!, gas.gasConstant[inlet]!);
    }
    const area =
      kind === CHECK
        ? checkValveArea(pI - pJ, this.a[k]!, this.b[k]!, this.area[k]!, this.shutArea[k]!)
        : reliefValveArea(pI - pJ, this.a[k]!, this.b[k]!, this.c[k]!, this.area[k]!, this.shutArea[k]!);
    return area === 0 ? 0 : smoothOrificeMassFlow(area, pI, pJ, t, r, gas.gamma[up]!);
  }

  /** Adds the derivatives of all flows to the Jacobian (row-major, `size` wide). */
  addJacobian(gas: NodeGas, jacobian: Float64Array, size: number): void {
    const { active, from, to, slopes } = this;
    const { pressure, temperature, gasConstant, gamma } = gas;
    for (let n = 0; n < this.activeCount; n++) {
      const k = active[n]!;
      const i = from[k]!;
      const j = to[k]!;
      const pI = pressure[i]!;
      const pJ = pressure[j]!;
      const kind = this.kind[k]!;
      if (kind === BED) {
        const slope = bedMassFlowDerivative(this.a[k]!, this.b[k]!, pI - pJ);
        const m = bedMassFlow(this.a[k]!, this.b[k]!, pI - pJ);
        coupleFlow(
          this.rowBase,
          this.energyRow,
          gas,
          jacobian,
          size,
          i,
          j,
          this.upstream(k, pI, pJ),
          m,
          slope,
          -slope,
          0,
          0,
        );
        continue;
      }
      if (kind === PUMP) {
        const volumeFlow = pumpVolumeFlow(pJ - pI, this.a[k]!, this.b[k]!);
        const slope = pumpVolumeFlowDerivative(this.a[k]!, this.b[k]!);
        const up = volumeFlow >= 0 ? i : j;
        const t = temperature[up]!;
        const r = gasConstant[up]!;
        const density = gasDensity(pressure[up]!, t, r);
        const m = volumeFlow * density;
        const byOwn = volumeFlow / (r * t);
        const byI = -slope * density + (up === i ? byOwn : 0);
        const byJ = slope * density + (up === j ? byOwn : 0);
        const byW = (-m / r) * (gas.vapourGasConstant - SPECIFIC_GAS_CONSTANT_AIR);
        coupleFlow(this.rowBase, this.energyRow, gas, jacobian, size, i, j, up, m, byI, byJ, -m / t, byW);
        continue;
      }
      const up = this.upstream(k, pI, pJ);
      const t = temperature[up]!;
      const r = gasConstant[up]!;
      let area = this.area[k]!;
      let areaSlope = 0;
      if (kind === CHECK) {
        areaSlope = checkValveAreaDerivative(pI - pJ, this.a[k]!, this.b[k]!, area, this.shutArea[k]!);
        area = checkValveArea(pI - pJ, this.a[k]!, this.b[k]!, area, this.shutArea[k]!);
      } else if (kind === RELIEF) {
        const shut = this.shutArea[k]!;
        areaSlope = reliefValveAreaDerivative(pI - pJ, this.a[k]!, this.b[k]!, this.c[k]!, area, shut);
        area = reliefValveArea(pI - pJ, this.a[k]!, this.b[k]!, this.c[k]!, area, shut);
      }
      if (area === 0) continue;
      const m = smoothOrificeMassFlowDerivatives(area, pI, pJ, t, r, gamma[up]!, slopes);
      const byArea = (m / area) * areaSlope;
      let byW = 0;
      if (gas.columnCount[up]! > 0) {
        const rStep = COMPOSITION_STEP * (gas.vapourGasConstant - SPECIFIC_GAS_CONSTANT_AIR);
        const w = gas.massFraction[up]!;
        const more = mixtureGamma(w + COMPOSITION_STEP, gas.vapourMolarMass);
        const less = mixtureGamma(w - COMPOSITION_STEP, gas.vapourMolarMass);
        byW =
          (smoothOrificeMassFlow(area, pI, pJ, t, r + rStep, more) -
            smoothOrificeMassFlow(area, pI, pJ, t, r - rStep, less)) /
          (2 * COMPOSITION_STEP);
      }
      const byI = slopes[0]! + byArea;
      const byJ = slopes[1]! - byArea;
      coupleFlow(this.rowBase, this.energyRow, gas, jacobian, size, i, j, up, m, byI, byJ, (-0.5 * m) / t, byW);
    }
  }
}

function nodeOf(layout: StateLayout, passage: Passage, id: string): number {
  const node = layout.nodeIndex.get(id);
  if (node === undefined) throw new Error(`passage '${passage.id}' ends at '${id}', which is no space or boundary`);
  return node;
}
