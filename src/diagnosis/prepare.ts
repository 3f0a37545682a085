/** Readies one recording for the fits: what it is, its bins, its commands and its conditions. */
import type { Phase, ProcedureKind, Recording } from '../recording/recording.ts';
import { findResolution } from '../recording/resolution.ts';
import type { Car } from '../system/car.ts';
import { extremes, foundRails, noiseOffRails } from './likelihood/found-rails.ts';
import { freezeOnset } from './likelihood/freeze-onset.ts';
import {
  characterise,
  characteriseQuietest,
  type Observations,
  observe,
  type SensorCharacter,
} from './likelihood/observations.ts';
import { buildDrive } from './model/build-drive.ts';
import { type CommandChange, commandChanges } from './model/command-changes.ts';
import type { Drive } from './model/drive.ts';
import { type FillingPlan, FULL_LEVEL, fillingPlan } from './model/filling-plan.ts';
import { SHIFT_SLOTS } from './model/quantities.ts';
import { type Conditions, findConditions } from './priors/conditions.ts';
import { baseQuantities, type RecordingShape } from './priors/nuisances.ts';

export interface Prepared {
  readonly recording: Recording;
  readonly procedure: ProcedureKind | 'unknown';
  readonly phases: readonly Phase[];
  readonly character: SensorCharacter;
  readonly observations: Observations;
  readonly drive: Drive;
  readonly conditions: Conditions;
  readonly shape: RecordingShape;
  readonly base: Float64Array;
  readonly clip: { readonly low: number; readonly high: number };
  readonly filling?: FillingPlan;
  /** From when on the readings stand still [s]; absent if they don't. */
  readonly freezeOnsetS?: number;
}

/**
 * A ratiometric sensor works from 10 to 90 % of its supply; its output goes on to the rails, 12.5 % of the span
 * further on either side (0.5 to 4.5 V at 5 V, industry convention, from memory).
 */
const RAIL_SHARE = 0.125;

export function sensorRails(car: Car): { low: number; high: number } | undefined {
  const s = car.pressureSensor;
  if (!s) return undefined;
  const beyond = RAIL_SHARE * (s.maxGaugePa - s.minGaugePa);
  return { low: s.minGaugePa - beyond, high: s.maxGaugePa + beyond };
}

export interface Grid {
  readonly width: (sinceS: number) => number;
  readonly step: (sinceS: number) => number;
}

/** Bin widths and model steps by procedure [s]: fine after a change, as coarse as the event allows later. */
const GRIDS: Readonly<Record<string, Grid>> = {
  'vacuum-draw': {
    width: (s) => (s < 1.5 ? 0.3 : s < 4 ? 0.5 : 1),
    step: (s) => (s < 0.6 ? 0.1 : s < 2 ? 0.2 : s < 15 ? 0.5 : 1),
  },
  'engine-off': {
    width: (s) => (s < 3 ? 0.5 : Math.min(10, 0.5 + 0.1 * s)),
    step: (s) => (s < 3 ? 0.1 : Math.min(5, 0.1 + 0.05 * s)),
  },
  'purge-drive': { width: () => 1, step: () => 1 },
  refuelling: { width: (s) => (s < 6 ? 0.3 : 1), step: (s) => (s < 1 ? 0.1 : s < 6 ? 0.2 : 0.5) },
};
const OTHER_GRID: Grid = { width: () => 1, step: () => 0.5 };
export const gridOf = (procedure: ProcedureKind | 'unknown'): Grid => GRIDS[procedure] ?? OTHER_GRID;

/** What is known of a recording before the model's steps are laid out. */
export interface Gathered {
  readonly character: SensorCharacter;
  readonly clip: { readonly low: number; readonly high: number };
  readonly changes: readonly CommandChange[];
  readonly observations: Observations;
  readonly conditions: Conditions;
  readonly filling?: FillingPlan;
  readonly freezeOnsetS?: number;
}

export function prepare(
  car: Car,
  recording: Recording,
  procedure: ProcedureKind | 'unknown',
  phases: readonly Phase[],
): Prepared {
  const p = recording.channels.tankPressureGaugePa;
  if (!p) throw new Error(`${recording.label}: no tank pressure channel; map one before asking for a finding`);
  const stepPa = findResolution(p)?.step ?? 0;
  const rails = sensorRails(car);
  const clip = rails ? measuredClip(p, rails, stepPa) : foundRails(p, stepPa, noiseOffRails(p));
  const freezeOnsetS = freezeOnset(recording.timeS, p, stepPa);
  const character =
    procedure === 'refuelling'
      ? characteriseQuietest(recording.timeS, p, clip, phases)
      : characterise(recording.timeS, p, clip);
  const fillings = procedure === 'refuelling' ? phases.filter((f) => f.kind === 'filling') : [];
  const filling = fillings.length > 0 ? fillingPlan(recording, fillings, fuelAt(car, recording)) : undefined;
  const changes = [...commandChanges(recording), ...(filling?.changes ?? [])].sort((a, b) => a.timeS - b.timeS);
  const events = changes.map((c) => c.timeS);
  const observations = observe(recording, phases, events, character, gridOf(procedure).width);
  const conditions = findConditions(car, recording);
  return layOut(recording, procedure, phases, gridOf(procedure).step, {
    character,
    clip,
    changes,
    observations,
    conditions,
    ...(filling && { filling }),
    ...(freezeOnsetS !== undefined && { freezeOnsetS }),
  });
}

/** Lays the model's steps over what was gathered of a recording, none longer than `longestStepS` of the time since a change. */
export function layOut(
  recording: Recording,
  procedure: ProcedureKind | 'unknown',
  phases: readonly Phase[],
  longestStepS: (sinceS: number) => number,
  gathered: Gathered,
): Prepared {
  const { clip, changes, observations, conditions, filling } = gathered;
  const movable = procedure === 'purge-drive' ? [] : movableChanges(changes);
  const draw = phases.find((f) => f.kind === 'draw');
  const warmKnots = procedure === 'engine-off' ? 4 : procedure === 'purge-drive' ? 3 : 1;
  const shape: RecordingShape = {
    procedure,
    conditions,
    changeGapsS: movable.map((c) => c.gapS),
    warmKnots,
    hasDraw: procedure === 'vacuum-draw' && draw !== undefined,
    ...(filling?.endLevel !== undefined && {
      filledVolumeM3: conditions.gasVolumeM3 + (filling.endLevel - FULL_LEVEL) * conditions.tankVolumeM3,
    }),
  };
  const drive = buildDrive(recording, manifoldWithoutChannel(procedure, conditions.ambientAbsPa), {
    observationTimesS: observations.timeS,
    changes,
    movable,
    longestStepS,
    warmKnots,
    ...(shape.hasDraw && draw && { draw: { fromS: draw.fromS, toS: draw.toS } }),
    ambientAbsPa: conditions.ambientAbsPa,
    ambientTemperatureK: conditions.ambientTemperatureK,
    tankTemperatureK: 0.5 * (conditions.ambientTemperatureK + conditions.fuelTemperatureK),
    vapourSensitivityPerK: conditions.vapourSensitivityPerK,
    clipLowGaugePa: clip.low,
    clipHighGaugePa: clip.high,
    ...(filling && { fillM3PerS: filling.flowAt, full: filling.fullAt }),
  });
  return {
    recording,
    procedure,
    phases,
    character: gathered.character,
    observations,
    drive,
    conditions,
    shape,
    base: baseQuantities(shape),
    clip,
    ...(filling && { filling }),
    ...(gathered.freezeOnsetS !== undefined && { freezeOnsetS: gathered.freezeOnsetS }),
  };
}

/** Manifold pressure of a warm engine at idle [Pa], common practice, no source; below about 50 kPa the purge valve is choked. */
const IDLE_MANIFOLD_PA = 35e3;
/** Procedures in which the engine stands. */
const ENGINE_STANDS: readonly (ProcedureKind | 'unknown')[] = ['engine-off', 'refuelling'];

/** Where no channel tells, an engine that purges idles: at ambient pressure a purge valve would pass nothing. */
const manifoldWithoutChannel = (procedure: ProcedureKind | 'unknown', ambientAbsPa: number): number =>
  ENGINE_STANDS.includes(procedure) ? ambientAbsPa : IDLE_MANIFOLD_PA;

/** Tank volume and starting level, as far as the filling plan needs them. */
function fuelAt(car: Car, recording: Recording): { tankVolumeM3: number; level: number } {
  const c = findConditions(car, recording);
  return { tankVolumeM3: c.tankVolumeM3, level: c.fuelLevel };
}

/** Changes whose exact moment matters, one per sample gap, at most as many as the model has slots. */
function movableChanges(changes: readonly CommandChange[]): CommandChange[] {
  const list: CommandChange[] = [];
  for (const c of changes) {
    if (list.length >= SHIFT_SLOTS) break;
    if (c.kind === 'fill-off' || c.kind === 'purge-step') continue;
    if (list.some((o) => Math.abs(o.timeS - c.timeS) < 1e-9)) continue;
    list.push(c);
  }
  return list;
}

/** Where the readings themselves stop beyond the nominal range, that is the rail. */
export function measuredClip(p: Float64Array, rails: { low: number; high: number }, stepPa: number) {
  const { low, high } = extremes(p);
  const near = Math.max(stepPa, 0.03 * Math.abs(rails.high - rails.low));
  return {
    low: low < rails.low + near ? Math.max(low, rails.low - near) : rails.low,
    high: high > rails.high - near ? Math.min(high, rails.high + near) : rails.high,
  };
}
