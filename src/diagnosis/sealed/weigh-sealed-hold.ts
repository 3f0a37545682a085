/** Weighs the causes of a sealed tank's hold and release: the entry of this folder. */
import type { Phase, Recording } from '../../recording/recording.ts';
import type { Car } from '../../system/car.ts';
import { type Conditions, findConditions } from '../priors/conditions.ts';
import { noiseLogDensity, noisyLogDensity } from '../single-run/sensor-noise.ts';
import { type SingleRun, type WeighedSimple, weighSingleRun } from '../single-run/weigh.ts';
import { SEALED_CAUSE_CATALOGUE, type SealedCauseId } from './causes.ts';
import { layOutSealedRun, type SealedDrive, type SealedRun } from './drive.ts';
import { runSealed } from './model.ts';
import { sealedBase, sealedPriors } from './priors.ts';
import { S } from './quantities.ts';
import { standingLogDensity } from './standing-pressure.ts';

/**
 * @param car what is known of the car
 * @param recording a sealed hold: tank pressure, `isolationOpen`, and the canister's pressure, vent and purge commands if any
 * @param phases its phases; they label the evidence, the commands drive the model
 * @returns causes with their evidence, in the order of the catalogue; empty without a tank pressure channel
 */
export function weighSealedHold(
  car: Car,
  recording: Recording,
  phases: readonly Phase[],
): WeighedSimple<SealedCauseId>[] {
  const conditions = findConditions(car, recording);
  const run = layOutSealedRun(recording, phases, conditions);
  return run ? weighSingleRun(sealedQuestion(car, conditions, run)) : [];
}

function sensorLogDensity(id: SealedCauseId, q: Float64Array, channels: SealedRun['channels'], drive: SealedDrive) {
  if (id === 'sensor_noisy') return noisyLogDensity(channels);
  const frozen = (c: number) => q[drive.seesTank[c]! ? S.frozen : S.canisterFrozen]! > 0.5;
  return noiseLogDensity(
    channels,
    channels.map((_, c) => (frozen(c) ? 'frozen' : 'sound')),
  );
}

/** What is asked of a sealed hold that is laid out. */
export function sealedQuestion(car: Car, conditions: Conditions, run: SealedRun): SingleRun<SealedCauseId> {
  const { channels, drive } = run;
  return {
    sound: sealedPriors(car, conditions, drive, channels[0]!.startPa),
    base: sealedBase(),
    model: (q, out) => runSealed(q, drive, out),
    channels,
    causes: SEALED_CAUSE_CATALOGUE,
    beside: (id, q) =>
      sensorLogDensity(id, q, channels, drive) + (drive.isolationOpen[0] === 1 ? 0 : standingLogDensity(id, q)),
  };
}
