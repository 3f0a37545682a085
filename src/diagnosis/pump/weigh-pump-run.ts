/** Weighs the causes of a pump run with reference orifice: the entry of this folder. */
import type { Phase, Recording } from '../../recording/recording.ts';
import type { Car } from '../../system/car.ts';
import { findConditions } from '../priors/conditions.ts';
import { type WeighedSimple, weighSingleRun } from '../single-run/weigh.ts';
import { PUMP_CAUSE_CATALOGUE, type PumpCauseId } from './causes.ts';
import { layOutPumpRun } from './drive.ts';
import { runPump } from './model.ts';
import { pumpBase, pumpPriors } from './priors.ts';

/**
 * @param car what is known of the car
 * @param recording a pump run: module or tank pressure, `pumpOn`, `changeoverToTank`, `purgeDuty`
 * @param phases its phases; they label the evidence, the commands drive the model
 * @returns causes with their evidence, in the order of the catalogue; empty without a pressure channel
 */
export function weighPumpRun(car: Car, recording: Recording, phases: readonly Phase[]): WeighedSimple<PumpCauseId>[] {
  const conditions = findConditions(car, recording);
  const run = layOutPumpRun(recording, phases, conditions);
  if (!run) return [];
  const { channels, drive } = run;
  return weighSingleRun({
    sound: pumpPriors(car, conditions),
    base: pumpBase(),
    model: (q, out) => runPump(q, drive, out),
    channels,
    causes: PUMP_CAUSE_CATALOGUE,
  });
}
