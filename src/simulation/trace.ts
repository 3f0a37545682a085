import { AUTOMOTIVE_CARBON } from '../physics/carbon.ts';
import { vapourMoleFraction } from '../physics/gas.ts';
import { INPUT_INDEX } from './inputs.ts';
import type { NetworkEquations } from './network-equations.ts';

/** Quantities that can be traced; a trace is named `<space or passage>.<quantity>`, as `tank.gaugePa` or `purge.flowKgPerS`. */
export const TRACE_QUANTITIES = {
  gaugePa: 'gauge pressure of a space, Pa',
  absPa: 'absolute pressure of a space, Pa',
  temperatureK: 'gas temperature of a space, K',
  vapourMoleFraction: 'fuel vapour in the gas of a space, by volume',
  gasVolumeM3: 'gas volume of a space, m3',
  loading: 'vapour held by the carbon of a bed cell as a share of saturation',
  fillFraction: 'share of a tank that fuel fills',
  fuelTemperatureK: 'fuel temperature of a tank, K',
  flowKgPerS: 'mass flow through a passage in its own direction, kg/s',
} as const;
export type TraceQuantity = keyof typeof TRACE_QUANTITIES;

export interface Trace {
  readonly name: string;
  readonly meaning: string;
  readonly value: Float64Array;
}

/** Reads one traced quantity; the equations must have observed the state before. */
export type TraceReader = (x: Float64Array) => number;

/**
 * Makes the reader of a trace by its name; an unknown name is answered with what there is.
 *
 * @param equations equations of the car
 * @param name `<space or passage>.<quantity>`
 * @returns the reader
 */
export function traceReader(equations: NetworkEquations, name: string): TraceReader {
  const { layout, network, gas, flows } = equations;
  const dot = name.lastIndexOf('.');
  const id = name.slice(0, dot);
  const quantity = name.slice(dot + 1);
  if (!(quantity in TRACE_QUANTITIES)) {
    throw new Error(
      `trace '${name}': '${quantity}' is no quantity; expected one of ${Object.keys(TRACE_QUANTITIES).join(', ')}`,
    );
  }
  if (quantity === 'flowKgPerS') {
    const k = flows.ids.indexOf(id);
    if (k >= 0) return () => flows.flow[k]!;
    if (network.passages.some((p) => p.id === id)) return () => 0; // shut for good in this car
    throw new Error(
      `trace '${name}': no passage '${id}'; expected one of ${network.passages.map((p) => p.id).join(', ')}`,
    );
  }
  const node = layout.nodeIndex.get(id);
  if (node === undefined) {
    throw new Error(`trace '${name}': no space '${id}'; expected one of ${layout.nodeIds.join(', ')}`);
  }
  const space = network.spaces[node];
  const base = layout.base[node]!;
  switch (quantity as TraceQuantity) {
    case 'gaugePa':
      return () => gas.pressure[node]! - equations.inputs.value[INPUT_INDEX.ambientAbsPa]!;
    case 'absPa':
      return () => gas.pressure[node]!;
    case 'temperatureK':
      return () => gas.temperature[node]!;
    case 'vapourMoleFraction':
      return () => vapourMoleFraction(gas.massFraction[node]!, gas.vapourMolarMass);
    case 'gasVolumeM3':
      return () => gas.volume[node]!;
    case 'loading':
      if (space?.kind === 'bed' && space.carbonKg > 0) {
        const most = space.carbonKg * AUTOMOTIVE_CARBON.saturationKgPerKg;
        return (x) => x[base + 2]! / most;
      }
      break;
    case 'fillFraction':
      if (space?.kind === 'tank') return (x) => equations.fuel.fillFraction(node, x);
      break;
    case 'fuelTemperatureK':
      if (space?.kind === 'tank') return (x) => x[base + 4]!;
      break;
    case 'flowKgPerS':
      break;
  }
  throw new Error(`trace '${name}': '${id}' has no ${quantity} (${TRACE_QUANTITIES[quantity as TraceQuantity]})`);
}
