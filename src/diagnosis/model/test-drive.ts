/** Quantities and drives of plain cases, for the tests of the two-space model. */
import type { Recording } from '../../recording/recording.ts';
import { buildDrive } from './build-drive.ts';
import { commandChanges } from './command-changes.ts';
import type { Drive } from './drive.ts';
import { Q, QUANTITY_COUNT, type QuantityName } from './quantities.ts';

export const AMBIENT_PA = 101325;
export const AMBIENT_K = 293.15;

/** A car that holds tight and whose fuel does not evaporate, changed as asked. */
export function quantities(changes: Partial<Record<QuantityName, number>> = {}): Float64Array {
  const q = new Float64Array(QUANTITY_COUNT);
  const still: Partial<Record<QuantityName, number>> = {
    tankVolume: 0.03,
    canisterVolume: 5e-3,
    ventOpenArea: 2.5e-5,
    pipeArea: 1.7e-5,
    purgeArea: 4.5e-6,
    wallHeat: 3,
    reliefVacuum: 9e4,
    reliefPressure: 9e4,
    reliefSlope: 1e-6,
    ventLaminar: 2,
    slowTime: 30,
    gain: 1,
    lag: 0.02,
    displacement: 1,
    nozzleRise: 0.3,
    fullPipeArea: 1.7e-5,
  };
  for (const [name, value] of Object.entries({ ...still, ...changes })) q[Q[name as QuantityName]] = value;
  return q;
}

export interface Commands {
  readonly lengthS: number;
  readonly rateHz: number;
  readonly vent: (timeS: number) => 0 | 1;
  readonly duty: (timeS: number) => number;
  readonly manifoldAbsPa?: number;
  readonly longestStepS?: number;
}

export function recordingOf(c: Commands): Recording {
  const timeS = Float64Array.from({ length: Math.round(c.lengthS * c.rateHz) + 1 }, (_, i) => i / c.rateHz);
  return {
    label: 'made up',
    timeS,
    channels: {
      ventClosed: timeS.map(c.vent),
      purgeDuty: timeS.map(c.duty),
      manifoldAbsPa: new Float64Array(timeS.length).fill(c.manifoldAbsPa ?? 35e3),
    },
  };
}

export function driveOf(c: Commands): Drive {
  const recording = recordingOf(c);
  const changes = commandChanges(recording);
  return buildDrive(recording, AMBIENT_PA, {
    observationTimesS: recording.timeS,
    changes,
    movable: changes.slice(0, 4),
    longestStepS: () => c.longestStepS ?? 0.1,
    warmKnots: 1,
    ambientAbsPa: AMBIENT_PA,
    ambientTemperatureK: AMBIENT_K,
    tankTemperatureK: AMBIENT_K,
    vapourSensitivityPerK: 0.035,
    clipLowGaugePa: Number.NEGATIVE_INFINITY,
    clipHighGaugePa: Number.POSITIVE_INFINITY,
  });
}
