/** Readies the kept history for the fits, as `../prepare.ts` does a whole recording. */
import { findPhases } from '../../recording/phases.ts';
import { findProcedure } from '../../recording/procedure.ts';
import type { Phase, PhaseKind, ProcedureKind, Recording } from '../../recording/recording.ts';
import type { Car } from '../../system/car.ts';
import type { Observations, SensorCharacter } from '../likelihood/observations.ts';
import type { CommandChange } from '../model/command-changes.ts';
import { type FillingPlan, fillingPlan } from '../model/filling-plan.ts';
import { type Gathered, gridOf, layOut, type Prepared } from '../prepare.ts';
import { type Conditions, findConditions } from '../priors/conditions.ts';
import { type Bin, binTimeS, coarsen, regrouped } from './bin.ts';
import { compressedRecording, meanRecording } from './compressed-recording.ts';
import { type History, MOST_BINS } from './history.ts';

/** Steps of the model kept at most, whatever the length of the recording. */
export const MOST_STEPS = 320;
/** Steps of more than this share of the time since a change would show in the modelled trace, judgement. */
const STEP_SHARE = 0.015;
const COARSER = 1.25;
const MOST_TRIES = 24;
/** Length of the bins of a hold that is only thought of [s]. */
const AHEAD_BIN_S = 2;

export interface Outline {
  readonly recording: Recording;
  readonly procedure: ProcedureKind | 'unknown';
  readonly phases: readonly Phase[];
}

/** Procedure and phases so far; the phases are written to the bins. */
export function outline(h: History, label: string): Outline {
  const recording = compressedRecording(h, label);
  const procedure = h.notes?.procedure ?? findProcedure(recording).kind;
  const phases = findPhases(recording, undefined, { kind: procedure, reasons: [] });
  let at = 0;
  for (const bin of h.bins) {
    const t = binTimeS(bin);
    while (at + 1 < phases.length && phases[at]!.toS <= t) at++;
    bin.phase = phases[at]?.kind ?? 'rest';
  }
  return { recording, procedure, phases };
}

/** Factor on the model's steps that keeps their number within bounds; it only grows. */
export class Coarseness {
  factor = 1;
}

export function snapshot(car: Car, h: History, o: Outline, coarseness: Coarseness): Prepared {
  const clip = h.characterise();
  const freezeOnsetS = h.freezeOnsetS();
  const conditions = findConditions(car, meanRecording(h, o.recording.label));
  const filling = o.procedure === 'refuelling' ? fillingOf(h, o, conditions) : undefined;
  const changes = [...h.valveChanges, ...(filling?.changes ?? [])].sort((a, b) => a.timeS - b.timeS);
  const bins = o.procedure === 'refuelling' ? filledBins(h, changes) : h.bins;
  const gathered: Gathered = {
    character: h.character,
    clip,
    changes,
    observations: observationsOf(h, bins, changes),
    conditions,
    ...(filling && { filling }),
    ...(freezeOnsetS !== undefined && { freezeOnsetS }),
  };
  for (let tries = 0; ; tries++) {
    const p = layOut(o.recording, o.procedure, o.phases, stepOf(o.procedure, coarseness.factor), gathered);
    if (p.drive.stepCount <= MOST_STEPS || tries >= MOST_TRIES) return p;
    coarseness.factor *= COARSER;
  }
}

/** When liquid flowed so far; a filling that still goes on ends with the last sample. */
function fillingOf(h: History, o: Outline, c: Conditions): FillingPlan | undefined {
  const fillings = o.phases.filter((f) => f.kind === 'filling');
  const sampleGapS = (h.lastS - h.firstS) / Math.max(1, h.samples - 1);
  const fuel = { tankVolumeM3: c.tankVolumeM3, level: c.fuelLevel };
  return fillings.length > 0 ? fillingPlan(o.recording, fillings, fuel, sampleGapS) : undefined;
}

/** The fine bins on the grid that begins and ends with the fillings. */
function filledBins(h: History, changes: readonly CommandChange[]): Bin[] {
  const times = changes.map((c) => c.timeS);
  const bins = regrouped(h.bins, times, gridOf('refuelling').width);
  coarsen(bins, times, MOST_BINS);
  return bins;
}

/** The same with the present phase gone on for so long [s], its readings to be filled in. */
export function extended(h: History, now: Prepared, coarseness: Coarseness, aheadS: number): Prepared {
  const recording = compressedRecording(h, now.recording.label, h.lastS + aheadS);
  const o = now.observations;
  const last = o.phase[o.phase.length - 1] ?? 'rest';
  const n = Math.round(aheadS / AHEAD_BIN_S);
  const timeS = Array.from({ length: n }, (_, k) => h.lastS + (k + 0.5) * AHEAD_BIN_S);
  const variance = varianceOf(h.character, Math.max(1, AHEAD_BIN_S / now.character.sampleGapS));
  const observations: Observations = {
    timeS: Float64Array.of(...o.timeS, ...timeS),
    gaugePa: Float64Array.of(...o.gaugePa, ...timeS.map(() => h.lastReadingPa)),
    whiteVariance: Float64Array.of(...o.whiteVariance, ...timeS.map(() => variance)),
    phase: [...o.phase, ...timeS.map(() => last)],
    sinceEventS: Float64Array.of(...o.sinceEventS, ...timeS.map((t) => t - h.lastChangeS)),
  };
  const gathered: Gathered = { ...now, changes: h.valveChanges, observations };
  return layOut(recording, now.procedure, now.phases, stepOf(now.procedure, coarseness.factor), gathered);
}

function stepOf(procedure: ProcedureKind | 'unknown', factor: number): (sinceS: number) => number {
  const { step } = gridOf(procedure);
  return (s) => (Number.isFinite(s) ? Math.max(step(s), STEP_SHARE * s) : step(s)) * (s > 2 ? factor : 1);
}

/** Variance of a mean of so many readings [Pa2]: noise, and what the converter's step hides. */
export function varianceOf({ stepPa, noisePa }: SensorCharacter, readings: number): number {
  const hidden = (stepPa * stepPa * Math.max(0, 1 - (noisePa / (0.5 * stepPa || 1)) ** 2)) / 12;
  return (noisePa * noisePa) / readings + hidden;
}

function observationsOf(h: History, all: readonly Bin[], changes: readonly CommandChange[]): Observations {
  const bins = all.filter((b) => b.pressures[0]!.count > 0);
  const tank = bins.map((b) => b.pressures[0]!);
  let change = 0;
  let since = Number.NEGATIVE_INFINITY;
  const timeS = Float64Array.from(tank, (r) => r.sumTimeS / r.count);
  const phase: PhaseKind[] = bins.map((b) => b.phase);
  return {
    timeS,
    gaugePa: Float64Array.from(tank, (r) => r.sumGaugePa / r.count),
    whiteVariance: Float64Array.from(tank, (r) => varianceOf(h.character, r.count)),
    phase,
    sinceEventS: Float64Array.from(bins, (b, k) => {
      while (change < changes.length && changes[change]!.timeS <= b.fromS) since = changes[change++]!.timeS;
      return timeS[k]! - since;
    }),
  };
}
