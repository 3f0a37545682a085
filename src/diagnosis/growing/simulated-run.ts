/** Pump runs, sealed holds and refuellings for tests and benchmarks: an invented car under the full simulation, read cleanly. */
import type { Recording } from '../../recording/recording.ts';
import type { Procedure } from '../../simulation/procedure.ts';
import { CLEAN_SAMPLING } from '../../simulation/scenario.ts';
import { simulate } from '../../simulation/simulate.ts';
import { assembleCar } from '../../system/assemble.ts';
import type { Car, LayoutId } from '../../system/car.ts';
import type { Fault } from '../../system/faults/fault.ts';

export interface SimulatedRun {
  readonly name: string;
  readonly layout: LayoutId;
  readonly procedure: Procedure;
  readonly faults: readonly Fault[];
  /** Pressure that the tank starts with [Pa gauge]; absent: as the layout has it. */
  readonly tankGaugePa?: number;
}

export const carOf = (layout: LayoutId): Car => ({
  schema: 'vaporwright-car-1',
  label: 'invented car',
  layout,
  tankVolumeM3: 0.05,
  fillerNeckVolumeM3: 0.0015,
  canisterFreeVolumeM3: 0.002,
  // one that still reads when the nozzle shuts off
  ...(layout === 'engine-vacuum' && { pressureSensor: { minGaugePa: -3750, maxGaugePa: 6250 } }),
});

/**
 * @param rateHz samples a second
 * @param fillFraction how full the tank is, 0..1
 * @throws where the simulation fails
 */
export function recordRun(
  { name, layout, procedure, faults, tankGaugePa }: SimulatedRun,
  rateHz: number,
  fillFraction: number,
): Recording {
  const simulation = simulate({
    label: name,
    network: assembleCar(carOf(layout), faults, (p) => {
      p.tank.fillFraction = fillFraction;
    }),
    procedure,
    conditions: {
      ambientAbsPa: 101325,
      ambientTemperatureK: 295,
      manifoldAbsPa: 40000,
      fillFlowM3PerS: 6e-4,
      start: { fuelTemperatureK: 298, ...(tankGaugePa !== undefined && { tankGaugePa }) },
    },
    sampling: { ...CLEAN_SAMPLING, rateHz, seed: 1 },
  });
  if (simulation.failure) throw new Error(`${name}: ${simulation.failure.reason}`);
  return simulation.recording;
}
