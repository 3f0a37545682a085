/** Weighs the causes of a pump run with reference orifice: the entry of this folder. */
import type { Phase, Recording } from '../../recording/recording.ts';
import type { Car } from '../../system/car.ts';
import { type Conditions, findConditions } from '../priors/conditions.ts';
import type { Prior, SingleRunCause } from '../single-run/prior.ts';
import { noiseLogDensity, noisyLogDensity } from '../single-run/sensor-noise.ts';
import { type SingleRun, type WeighedSimple, weighSingleRun } from '../single-run/weigh.ts';
import { PUMP_CAUSE_CATALOGUE, type PumpCauseId } from './causes.ts';
import { layOutPumpRun, type PumpRun } from './drive.ts';
import { guessPump } from './first-guess.ts';
import { runPump } from './model.ts';
import { pumpBase, pumpPriors } from './priors.ts';
import { P } from './quantities.ts';

/** No fit starts further from its prior than this [z]. */
const MOST_START = 2.5;

/** Sensors that show too little or too much, both alike, as one supply makes them: where those fits start [z]. */
const GAIN_STARTS = [-1.4, 1];
const GAINS: ReadonlySet<string> = new Set(['gain', 'tankGain']);
/** What is left of a way that is blocked: two starts [z]. */
const PATH_STARTS = [-1, 1];

/**
 * @param car what is known of the car
 * @param recording a pump run: module or tank pressure, `pumpOn`, `changeoverToTank`, `purgeDuty`
 * @param phases its phases; they label the evidence, the commands drive the model
 * @returns causes with their evidence, in the order of the catalogue; empty without a pressure channel
 */
export function weighPumpRun(car: Car, recording: Recording, phases: readonly Phase[]): WeighedSimple<PumpCauseId>[] {
  const conditions = findConditions(car, recording);
  const run = layOutPumpRun(recording, phases, conditions);
  return run ? weighSingleRun(pumpQuestion(car, conditions, run)) : [];
}

/** What is asked of a pump run that is laid out. */
export function pumpQuestion(car: Car, conditions: Conditions, run: PumpRun): SingleRun<PumpCauseId> {
  const { channels, drive } = run;
  return {
    sound: pumpPriors(car, conditions),
    base: pumpBase(),
    model: (q, out) => runPump(q, drive, out),
    channels,
    causes: PUMP_CAUSE_CATALOGUE,
    startsFor: (cause, priors) => startsOf(cause, priors, run),
    beside: (id, q) => sensorLogDensity(id, q, run),
  };
}

function sensorLogDensity(id: PumpCauseId, q: Float64Array, { channels, drive }: PumpRun): number {
  if (id === 'sensor_noisy') return noisyLogDensity(channels);
  const frozen = (c: number) => q[drive.seesModule[c]! ? P.frozen : P.tankFrozen]! > 0.5;
  return noiseLogDensity(
    channels,
    channels.map((_, c) => (frozen(c) ? 'frozen' : 'sound')),
  );
}

/** A fault of the pump, its orifice or its sensor upsets the guess of the flow, so those start from their own sizes. */
function startsOf(cause: SingleRunCause<PumpCauseId>, priors: readonly Prior[], run: PumpRun) {
  if (cause.id === 'sensor_gain')
    return GAIN_STARTS.map((gain) => priors.map((p) => (GAINS.has(p.name) ? gain : 0))).map((z) =>
      Float64Array.from(z),
    );
  const own = new Set(['strength', 'orifice', 'level']);
  const stall = priors.find((p) => p.name === 'stall');
  const guess = stall && guessPump(run, stall.centre);
  if (!guess || own.has(cause.key)) return undefined;
  const z = new Float64Array(priors.length);
  priors.forEach((p, i) => {
    const value = p.name === 'freeFlow' ? guess.freeFlowM3PerS : p.name === cause.hole ? guess.holeAreaM2 : p.centre;
    z[i] = Math.max(-MOST_START, Math.min(MOST_START, p.kind === 'log' ? Math.log(value / p.centre) / p.sd : 0));
  });
  if (cause.key !== 'path') return [z];
  const path = priors.findIndex((p) => p.name === 'path');
  return PATH_STARTS.map((start) => Float64Array.from(z, (x, i) => (i === path ? start : x)));
}
