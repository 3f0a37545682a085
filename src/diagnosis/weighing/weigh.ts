/** Weighs one fitted cause, or two together: what pressure, trims, sensor and nozzle say of it. */
import type { Cause } from '../causes/catalogue.ts';
import type { CauseId } from '../finding.ts';
import { fillQuantities } from '../fit/parameter.ts';
import type { FitRecording } from '../fit/problem.ts';
import type { Noise } from '../likelihood/noise.ts';
import { constantLogEvidence, type SensorState } from '../likelihood/sensor-state.ts';
import { fillingLogDensity } from '../likelihood/shut-offs.ts';
import { type TrimData, trimLogEvidence, VAPOUR_SHARE } from '../likelihood/trims.ts';
import { QUANTITY_COUNT } from '../model/quantities.ts';
import { runTwoSpace } from '../model/two-space.ts';
import type { Prepared } from '../prepare.ts';
import type { Held, Weighed } from './weighed.ts';
import { logNormaliser } from './with-noise.ts';

/** What the weighing of a fit needs beside the fit. */
export interface Context {
  readonly prepared: readonly Prepared[];
  readonly recordings: readonly FitRecording[];
  readonly noise: readonly Noise[];
  readonly states: readonly SensorState[];
  readonly trims: readonly (TrimData | undefined)[];
}

/** Adds to the fit's own evidence what trims, sensor and nozzle say of the causes together. */
export function weigh(causes: readonly Cause[], held: Held, fitLogEvidence: number, c: Context): Weighed {
  const is = (id: CauseId) => causes.some((x) => x.id === id);
  let pressure = fitLogEvidence + logNormaliser(c.recordings);
  let sensor = c.states.reduce((s, x) => s + (is('sensor_noisy') ? x.noisy : x.sound), 0);
  if (is('sensor_stuck')) {
    pressure = c.prepared.reduce((s, p, r) => s + constantLogEvidence(p, c.noise[r]!), 0);
    sensor = c.states.reduce((s, x) => s + x.frozen, 0);
  }
  const share = is('canister_saturated') ? VAPOUR_SHARE.saturated : VAPOUR_SHARE.healthy;
  const trims = c.prepared.reduce((s, p, r) => s + trimsOf(held, p, r, c.trims[r], share), 0);
  const filling = c.prepared.reduce((s, p) => s + Math.max(...causes.map((x) => fillingLogDensity(p, x.id))), 0);
  const size = causes.some((x) => x.size === 'ventShut') ? 'ventShut' : 'leak';
  return {
    id: causes[0]!.id,
    causes,
    problem: held.problem,
    fit: held.fit,
    logEvidence: pressure + sensor + trims + filling,
    sizeIndex: held.problem.parameters.findIndex((x) => x.name === size),
    parts: { pressure, trims, sensor },
  };
}

function trimsOf(
  held: Held,
  p: Prepared,
  recording: number,
  data: TrimData | undefined,
  share: { readonly centre: number; readonly sd: number },
): number {
  if (!data) return 0;
  const q = new Float64Array(QUANTITY_COUNT);
  fillQuantities(held.problem.parameters, held.fit.z, recording, p.base, q);
  const n = p.observations.timeS.length;
  const flows = { purge: new Float64Array(n), vapourFromTank: new Float64Array(n) };
  runTwoSpace(q, p.drive, new Float64Array(n), flows);
  return trimLogEvidence(data, p.observations.timeS, flows, share);
}
