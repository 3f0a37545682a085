/** Weighs the causes of a sealed tank's hold and release: the entry of this folder. */
import type { Phase, Recording } from '../../recording/recording.ts';
import type { Car } from '../../system/car.ts';
import { findConditions } from '../priors/conditions.ts';
import { type WeighedSimple, weighSingleRun } from '../single-run/weigh.ts';
import { SEALED_CAUSE_CATALOGUE, type SealedCauseId } from './causes.ts';
import { layOutSealedRun } from './drive.ts';
import { runSealed } from './model.ts';
import { sealedBase, sealedPriors } from './priors.ts';
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
  if (!run) return [];
  const { channels, drive } = run;
  return weighSingleRun({
    sound: sealedPriors(car, conditions, drive, channels[0]!.startPa),
    base: sealedBase(),
    model: (q, out) => runSealed(q, drive, out),
    channels,
    causes: SEALED_CAUSE_CATALOGUE,
    beside: (id, q) => (drive.isolationOpen[0] === 1 ? 0 : standingLogDensity(id, q)),
  });
}
