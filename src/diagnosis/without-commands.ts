/**
 * Recordings in which a command is missing. The model must know when vent and purge worked: where no channel tells, the
 * phases do, found or given by hand; a recording whose phases do not tell either takes no part.
 */
import { GAMMA_AIR, SPECIFIC_GAS_CONSTANT_AIR } from '../physics/constants.ts';
import { chokedFlowFactor } from '../physics/orifice.ts';
import type { Phase, PhaseKind, ProcedureKind, Recording } from '../recording/recording.ts';
import type { Car } from '../system/car.ts';
import { findConditions } from './priors/conditions.ts';
import { SOUND } from './priors/nuisances.ts';

/** The recording as the model needs it, or why it takes no part. */
export type Completed =
  | { readonly recording: Recording; readonly warnings: readonly string[] }
  | { readonly leftOut: string };

const VENT_SHUT: ReadonlySet<PhaseKind> = new Set(['draw', 'settle', 'hold', 'sealed']);
/** Smallest and largest duty that a draw is given [-]: a purge valve works between these, judgement. */
const LEAST_DUTY = 0.02;
const MOST_DUTY = 1;
/** The pressure at the edges of a draw is the median over so many samples. */
const EDGE_SAMPLES = 5;

const indicesIn = ({ timeS }: Recording, { fromS, toS }: Phase): number[] =>
  Array.from(timeS.keys()).filter((i) => timeS[i]! >= fromS && timeS[i]! < toS);

function along(recording: Recording, phases: readonly Phase[], valueIn: (phase: Phase) => number): Float64Array {
  const values = new Float64Array(recording.timeS.length);
  for (const phase of phases) for (const i of indicesIn(recording, phase)) values[i] = valueIn(phase);
  // A phase ends before its last moment, but for the last of all.
  const last = phases.at(-1);
  if (last && last.toS >= recording.timeS.at(-1)!) values[values.length - 1] = valueIn(last);
  return values;
}

function medianOf(values: readonly number[]): number {
  const sorted = values.filter(Number.isFinite).sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? Number.NaN;
}

/**
 * Duty of a usual purge valve that draws the car's tank down as fast as was recorded. How far the valve differs from a usual one
 * is free in every cause, so that only the order of size matters.
 */
function dutyOf(car: Car, recording: Recording, draw: Phase): number {
  const { ambientAbsPa, ambientTemperatureK, gasVolumeM3, canisterVolumeM3 } = findConditions(car, recording);
  const pressure = recording.channels.tankPressureGaugePa!;
  const readings = indicesIn(recording, draw).map((i) => pressure[i]!);
  const fallPa = medianOf(readings.slice(0, EDGE_SAMPLES)) - medianOf(readings.slice(-EDGE_SAMPLES));
  const flowM3PerS = ((fallPa / (draw.toS - draw.fromS)) * (gasVolumeM3 + canisterVolumeM3)) / ambientAbsPa;
  // An engine's vacuum chokes the valve: the volume flow is area, flow factor and the root of specific constant and temperature.
  const fullyOpen =
    SOUND.purge.centre * chokedFlowFactor(GAMMA_AIR) * Math.sqrt(SPECIFIC_GAS_CONSTANT_AIR * ambientTemperatureK);
  const duty = flowM3PerS / fullyOpen;
  return Number.isFinite(duty) ? Math.min(MOST_DUTY, Math.max(LEAST_DUTY, duty)) : LEAST_DUTY;
}

export function withCommands(
  car: Car,
  recording: Recording,
  procedure: ProcedureKind | 'unknown',
  phases: readonly Phase[],
): Completed {
  const { channels, label } = recording;
  const warnings: string[] = [];
  const added: { ventClosed?: Float64Array; purgeDuty?: Float64Array } = {};
  const isTest = procedure === 'vacuum-draw' || procedure === 'engine-off';
  if (isTest && !channels.ventClosed) {
    if (!phases.some(({ kind }) => VENT_SHUT.has(kind)))
      return {
        leftOut: `${label}: no channel tells when the vent valve was shut, so it takes no part; give its times in the notes.`,
      };
    added.ventClosed = along(recording, phases, ({ kind }) => (VENT_SHUT.has(kind) ? 1 : 0));
    warnings.push(`${label}: the vent valve's command is not recorded; it was taken from the phases`);
  }
  if ((procedure === 'vacuum-draw' || procedure === 'purge-drive') && !channels.purgeDuty) {
    const kind: PhaseKind = procedure === 'vacuum-draw' ? 'draw' : 'purge';
    if (!phases.some((phase) => phase.kind === kind))
      return {
        leftOut: `${label}: no channel tells when the purge valve worked, so it takes no part; correct its phases by hand.`,
      };
    const duties = new Map(
      phases.filter((phase) => phase.kind === kind).map((phase) => [phase, dutyOf(car, recording, phase)] as const),
    );
    added.purgeDuty = along(recording, phases, (phase) => duties.get(phase) ?? 0);
    warnings.push(`${label}: the purge valve's command is not recorded; it was taken from the phases`);
  }
  if ((procedure === 'vacuum-draw' || procedure === 'purge-drive') && !channels.manifoldAbsPa)
    warnings.push(`${label}: manifold pressure is not known; that of an idling engine is assumed`);
  const recorded = added.ventClosed || added.purgeDuty;
  return { recording: recorded ? { ...recording, channels: { ...channels, ...added } } : recording, warnings };
}
