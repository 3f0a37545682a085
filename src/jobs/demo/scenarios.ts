/** What is simulated for the demo shop: car, known fault, procedure and how a logger would have kept it. */
import type { Procedure } from '../../simulation/procedure.ts';
import { engineOff } from '../../simulation/procedures/engine-off.ts';
import { pumpRun } from '../../simulation/procedures/pump-run.ts';
import { refuelling } from '../../simulation/procedures/refuelling.ts';
import { sealedHold } from '../../simulation/procedures/sealed-hold.ts';
import { vacuumDraw } from '../../simulation/procedures/vacuum-draw.ts';
import type { Conditions, EngineConditions, Sampling, Scenario } from '../../simulation/scenario.ts';
import { assembleCar } from '../../system/assemble.ts';
import type { Fault } from '../../system/faults/fault.ts';
import { DEMO_CARS, type DemoCarName } from './cars.ts';

/** A recording of the demo shop. Its truth is known, since it is simulated; the finding never sees it. */
export interface DemoRecording {
  readonly car: DemoCarName;
  readonly faults: readonly Fault[];
  readonly fuelLevel: number;
  readonly procedure: Procedure;
  readonly conditions: Conditions;
  readonly sampling: Sampling;
}

/** A fuel-injected engine of middle size at idle (common practice, no source). */
const ENGINE: EngineConditions = {
  displacementM3: 0.0016,
  speedRpm: 760,
  trimLagS: 3,
  trimLimit: 0.25,
  trimNoise: 0.008,
};

/** Noise, steps and slosh of a usual logger at rest (judgement). */
const logger = (seed: number, rateHz = 10, pressureStepPa = 12): Sampling => ({
  rateHz,
  jitter: 0.05,
  pressureStepPa,
  noisePa: 8,
  slosh: { pressurePa: 4, correlationS: 0.8 },
  seed,
});

const idling = (celsius: number, fuelCelsius: number, ambientAbsPa: number): Conditions => ({
  ambientAbsPa,
  ambientTemperatureK: 273.15 + celsius,
  manifoldAbsPa: 36_000,
  vehicleSpeedMPerS: 0,
  engine: ENGINE,
  start: { fuelTemperatureK: 273.15 + fuelCelsius, vapourDeficitPa: -400 },
});

const parked = (celsius: number, fuelCelsius: number, ambientAbsPa: number): Conditions => ({
  ambientAbsPa,
  ambientTemperatureK: 273.15 + celsius,
  start: { fuelTemperatureK: 273.15 + fuelCelsius },
});

/** Two minutes of hold: what evaporation does and what a hole does part in the second. */
const DRAW = vacuumDraw({ baselineS: 12, holdS: 120, drawDuty: 0.12 });

export const DEMO_RECORDINGS = {
  'hatchback-before': {
    car: 'hatchback',
    faults: [{ kind: 'leak', place: 'cap', size: 0.6e-3 }],
    fuelLevel: 0.43,
    procedure: DRAW,
    conditions: idling(18, 22, 100_900),
    sampling: logger(11),
  },
  'hatchback-after': {
    car: 'hatchback',
    faults: [],
    fuelLevel: 0.42,
    procedure: DRAW,
    conditions: idling(19, 23, 100_900),
    sampling: logger(12),
  },
  'estate-seeping-purge': {
    car: 'estate',
    faults: [{ kind: 'purge-seeping', size: 0.4e-3 }],
    fuelLevel: 0.55,
    procedure: DRAW,
    conditions: idling(21, 25, 101_300),
    sampling: logger(21),
  },
  'off-roader-vent': {
    car: 'offRoader',
    faults: [{ kind: 'vent-not-sealing', size: 2.5e-3 }],
    fuelLevel: 0.6,
    procedure: vacuumDraw({ baselineS: 12, holdS: 60, drawDuty: 0.2 }),
    conditions: idling(8, 12, 99_200),
    sampling: logger(31),
  },
  'pickup-filling': {
    car: 'pickup',
    faults: [{ kind: 'vent-choked', size: 1.5e-3 }],
    fuelLevel: 0.2,
    procedure: refuelling({ volumeM3: 0.03 }),
    conditions: { ...parked(20, 21, 101_000), fillFlowM3PerS: 632e-6 },
    sampling: logger(41),
  },
  'coupe-hot-fuel': {
    car: 'coupe',
    faults: [],
    fuelLevel: 0.35,
    procedure: DRAW,
    conditions: idling(33, 41, 100_600),
    sampling: logger(51),
  },
  'van-pump-run': {
    car: 'van',
    faults: [{ kind: 'leak', place: 'senderSeal', size: 0.7e-3 }],
    fuelLevel: 0.5,
    procedure: pumpRun(),
    conditions: parked(12, 14, 101_600),
    sampling: logger(61, 5),
  },
  'hybrid-hold': {
    car: 'hybrid',
    faults: [{ kind: 'leak', place: 'senderSeal', size: 0.5e-3 }],
    fuelLevel: 0.45,
    procedure: sealedHold({ holdS: 180 }),
    conditions: {
      ...idling(24, 26, 101_100),
      start: { fuelTemperatureK: 299.15, tankGaugePa: 9000 },
    },
    sampling: { ...logger(71, 5, 25), noisePa: 15 },
  },
  'saloon-engine-off': {
    car: 'saloon',
    faults: [{ kind: 'leak', place: 'fillerHose', size: 0.8e-3 }],
    fuelLevel: 0.5,
    procedure: engineOff(),
    conditions: {
      ...parked(18, 29, 101_000),
      fuelHeatW: { timeS: [0, 600, 900], value: [250, 250, 0] },
    },
    sampling: logger(81, 1, 6),
  },
} as const satisfies Readonly<Record<string, DemoRecording>>;
export type DemoRecordingName = keyof typeof DEMO_RECORDINGS;
export const DEMO_RECORDING_NAMES = Object.keys(DEMO_RECORDINGS) as readonly DemoRecordingName[];

export function demoScenario(name: DemoRecordingName): Scenario {
  const { car, faults, fuelLevel, procedure, conditions, sampling }: DemoRecording = DEMO_RECORDINGS[name];
  return {
    label: name,
    network: assembleCar(DEMO_CARS[car], faults, (parameters) => {
      parameters.tank.fillFraction = fuelLevel;
    }),
    procedure,
    conditions,
    sampling,
  };
}
