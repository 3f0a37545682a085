/** A simulated car of any layout with any faults: the simulator's traces behind the data items of its engine unit. */
import { simulate } from '../../simulation/simulate.ts';
import { typicalScenario } from '../../simulation/typical-scenarios.ts';
import type { LayoutId } from '../../system/car.ts';
import type { Fault } from '../../system/faults/fault.ts';
import { type CarState, newCarState } from './car-state.ts';

export interface MadeCar {
  readonly layout: LayoutId;
  readonly faults: readonly Fault[];
  readonly codes?: readonly string[];
  readonly incomplete?: boolean;
}

/** Values that a scenario does not have and a car always answers. Judgement. */
const COOLANT_K = 363.15;

export function makeCar({ layout, faults, codes = [], incomplete = false }: MadeCar): CarState {
  const scenario = typicalScenario(layout, faults);
  const { recording, failure } = simulate({
    ...scenario,
    conditions: {
      ...scenario.conditions,
      engine: { displacementM3: 2e-3, speedRpm: 750, trimLagS: 2, trimLimit: 0.25, trimNoise: 0.005 },
      vehicleSpeedMPerS: 0,
    },
  });
  if (failure !== undefined) throw new Error(`the simulated car cannot be played: ${JSON.stringify(failure)}`);
  const { timeS, channels } = recording;
  const constant = (value: number) => new Float64Array(timeS.length).fill(value);
  return newCarState(
    {
      ...recording,
      channels: {
        coolantTemperatureK: constant(COOLANT_K),
        intakeTemperatureK: constant(298.15),
        ambientTemperatureK: constant(293.15),
        barometricPa: constant(101_000),
        fuelLevel: constant(0.5),
        longTrim: constant(0),
        ...channels,
      },
    },
    {
      codes: { confirmed: [...codes], pending: [], permanent: [...codes] },
      lampOn: codes.length > 0,
      incompleteMonitors: incomplete ? ['evaporative system'] : [],
    },
  );
}
