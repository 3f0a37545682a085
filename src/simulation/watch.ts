import { clip, sensorReading } from '../physics/sensor.ts';
import type { PressureSensor } from '../system/network.ts';
import { INPUT_INDEX } from './inputs.ts';
import type { NetworkEquations } from './network-equations.ts';
import type { Watched } from './procedure.ts';

/**
 * Readings as the module gets them, without noise: lag is in the state, gain and offset are added, the sensor's
 * limits clip, and a stuck sensor keeps what it showed when it stuck.
 */
export class Readings {
  private readonly stuckAt: (number | undefined)[];
  private readonly equations: NetworkEquations;

  constructor(equations: NetworkEquations) {
    this.equations = equations;
    this.stuckAt = equations.network.sensors.map(() => undefined);
  }

  /** Index of a sensor; -1 when the car has none of that name. */
  indexOf(id: PressureSensor['id']): number {
    return this.equations.network.sensors.findIndex((s) => s.id === id);
  }

  /** Lets the sensors that stick at this time keep what they show now. */
  freeze(timeS: number, x: Float64Array): void {
    this.equations.network.sensors.forEach((sensor, k) => {
      if (sensor.stuckFromS !== undefined && timeS >= sensor.stuckFromS) this.stuckAt[k] ??= this.at(k, x);
    });
  }

  /** Reading of sensor `k` at a state, gauge Pa. */
  at(k: number, x: Float64Array): number {
    const stuck = this.stuckAt[k];
    if (stuck !== undefined) return stuck;
    const sensor = this.equations.network.sensors[k]!;
    const raw = sensorReading(x[this.equations.layout.sensorRow[k]!]!, sensor.gain, sensor.offsetPa);
    return clip(raw, clipLow(sensor), clipHigh(sensor));
  }
}

/** A sensor of 0.5 to 4.5 V can show some more than its range before 0 and 5 V end it: an eighth on each side. */
const BEYOND_RANGE = 1 / 8;

/**
 * Lowest gauge pressure a sensor can show [Pa].
 *
 * @param sensor the sensor
 * @returns lowest reading [Pa]
 */
export function clipLow(sensor: PressureSensor): number {
  return sensor.minGaugePa - BEYOND_RANGE * (sensor.maxGaugePa - sensor.minGaugePa);
}

/**
 * Highest gauge pressure a sensor can show [Pa].
 *
 * @param sensor the sensor
 * @returns highest reading [Pa]
 */
export function clipHigh(sensor: PressureSensor): number {
  return sensor.maxGaugePa + BEYOND_RANGE * (sensor.maxGaugePa - sensor.minGaugePa);
}

/**
 * Value of what a condition looks at. Reads the gas again, so that it is right for the given state.
 *
 * @param equations equations of the car
 * @param readings what the sensors show
 * @param what what the condition looks at
 * @param timeS time [s]
 * @param x state
 * @returns the value, in SI units
 */
export function watchedValue(
  equations: NetworkEquations,
  readings: Readings,
  what: Watched,
  timeS: number,
  x: Float64Array,
): number {
  switch (what.kind) {
    case 'reading': {
      const k = readings.indexOf(what.sensor);
      if (k < 0) throw new Error(`the procedure watches sensor '${what.sensor}', which this layout does not have`);
      return readings.at(k, x);
    }
    case 'gaugePa': {
      equations.inputs.moveTo(timeS);
      equations.gas.read(x, equations.inputs);
      const node = nodeOf(equations, what.space);
      return equations.gas.pressure[node]! - equations.inputs.value[INPUT_INDEX.ambientAbsPa]!;
    }
    case 'fillFraction':
      return equations.fuel.fillFraction(nodeOf(equations, what.space), x);
    case 'dispensedM3': {
      const tank = equations.network.spaces.find((s) => s.kind === 'tank');
      return tank?.kind === 'tank' ? -x[equations.layout.fuelDispensedRow]! / tank.fuel.densityKgPerM3 : 0;
    }
  }
}

function nodeOf(equations: NetworkEquations, space: string): number {
  const node = equations.layout.nodeIndex.get(space);
  if (node === undefined) throw new Error(`the procedure watches '${space}', which is no space of this layout`);
  return node;
}
