/**
 * Recordings for tests and benchmarks: a car and a fault drawn from the finding's own priors, run through the two-space
 * model under a timed procedure, read with white noise.
 */
import type { ProcedureKind, Recording } from '../../recording/recording.ts';
import type { RandomStream } from '../../simulation/random.ts';
import type { Car } from '../../system/car.ts';
import { applyCause, CATALOGUE, formOf } from '../causes/catalogue.ts';
import { fillQuantities } from '../fit/parameter.ts';
import { buildDrive } from '../model/build-drive.ts';
import { commandChanges } from '../model/command-changes.ts';
import { Q, QUANTITY_COUNT } from '../model/quantities.ts';
import { runTwoSpace } from '../model/two-space.ts';
import { findConditions } from '../priors/conditions.ts';
import { baseQuantities, carParameters, holePrior, recordingParameters } from '../priors/nuisances.ts';

/** Commands from a time on. */
export interface TimedCommand {
  readonly fromS: number;
  readonly ventClosed: boolean;
  readonly purgeDuty: number;
}

export interface SimulatedRecording {
  readonly procedure: ProcedureKind;
  readonly commands: readonly TimedCommand[];
  readonly lengthS: number;
  readonly rateHz: number;
  /** Form of the cause in the catalogue. */
  readonly form: string;
  /** Size of the hole in the tank's side; absent, it is drawn as the cause's prior says [mm]. */
  readonly leakDiameterMm?: number;
  readonly noisePa: number;
  /** How far the car and the day depart from the priors' centres, in standard deviations. */
  readonly spread: number;
  readonly engineRuns: boolean;
}

export const TEST_CAR: Car = {
  schema: 'vaporwright-car-1',
  label: 'drawn car',
  layout: 'engine-vacuum',
  tankVolumeM3: 0.06,
};

export function simulateRecording(s: SimulatedRecording, random: RandomStream, car: Car = TEST_CAR): Recording {
  const n = Math.round(s.lengthS * s.rateHz) + 1;
  const timeS = Float64Array.from({ length: n }, (_, i) => i / s.rateHz);
  const all = (value: number) => new Float64Array(n).fill(value);
  const at = (t: number) => s.commands.filter((c) => c.fromS <= t + 1e-9).at(-1)!;
  const silent: Recording = {
    label: s.form,
    timeS,
    notes: { procedure: s.procedure },
    channels: {
      ventClosed: timeS.map((t) => (at(t).ventClosed ? 1 : 0)),
      purgeDuty: timeS.map((t) => at(t).purgeDuty),
      manifoldAbsPa: all(s.engineRuns ? 38e3 : 101e3),
      engineSpeedRpm: all(s.engineRuns ? 800 : 0),
      fuelLevel: all(0.5),
      barometricPa: all(101e3),
      ambientTemperatureK: all(293),
      fuelTemperatureK: all(298),
    },
  };
  const conditions = findConditions(car, silent);
  const changes = commandChanges(silent);
  const warmKnots = s.procedure === 'engine-off' ? 4 : 1;
  const shape = { procedure: s.procedure, conditions, changeGapsS: [], warmKnots, hasDraw: false };
  const cause = CATALOGUE.find((c) => formOf(c) === s.form)!;
  const parameters = applyCause(
    [...carParameters(car, conditions), ...recordingParameters(shape, 0)],
    [cause],
    [s.procedure],
  );
  const z = parameters.map((p) => (p.name in cause.changes ? Math.min(1, s.spread) : s.spread) * random.normal());
  const q = new Float64Array(QUANTITY_COUNT);
  fillQuantities(parameters, z, 0, baseQuantities(shape), q);
  if (s.leakDiameterMm !== undefined) q[Q.leakArea] = holePrior(s.leakDiameterMm, 1).centre;
  const drive = buildDrive(silent, conditions.ambientAbsPa, {
    observationTimesS: timeS,
    changes,
    movable: [],
    longestStepS: () => 0.1,
    warmKnots,
    ambientAbsPa: conditions.ambientAbsPa,
    ambientTemperatureK: conditions.ambientTemperatureK,
    tankTemperatureK: 0.5 * (conditions.ambientTemperatureK + conditions.fuelTemperatureK),
    vapourSensitivityPerK: conditions.vapourSensitivityPerK,
    clipLowGaugePa: Number.NEGATIVE_INFINITY,
    clipHighGaugePa: Number.POSITIVE_INFINITY,
  });
  const pressure = new Float64Array(n);
  runTwoSpace(q, drive, pressure);
  return {
    ...silent,
    channels: { ...silent.channels, tankPressureGaugePa: pressure.map((p) => p + s.noisePa * random.normal()) },
  };
}

/** Baseline, draw until about 1.8 kPa with an ordinary valve, hold, release: a timed self-test. */
export function drawAndHold(holdS: number, releaseS: number): TimedCommand[] {
  const release = { fromS: 20 + holdS, ventClosed: false, purgeDuty: 0 };
  return [
    { fromS: 0, ventClosed: false, purgeDuty: 0 },
    { fromS: 8, ventClosed: true, purgeDuty: 0 },
    { fromS: 9, ventClosed: true, purgeDuty: 0.1 },
    { fromS: 20, ventClosed: true, purgeDuty: 0 },
    ...(releaseS > 0 ? [release] : []),
  ];
}

/** Samples from one index to another (not included). */
export function sliceRecording(r: Recording, from: number, to: number): Recording {
  const channels = Object.fromEntries(Object.entries(r.channels).map(([name, x]) => [name, x.slice(from, to)]));
  return { ...r, timeS: r.timeS.slice(from, to), channels };
}
