/** Recordings as the fits see them under a noise. */
import type { FitRecording } from '../fit/problem.ts';
import { type Noise, whiteningFor } from '../likelihood/noise.ts';
import type { Prepared } from '../prepare.ts';

export function withNoise(prepared: readonly Prepared[], noise: readonly Noise[]): FitRecording[] {
  return prepared.map((p, i) => ({
    drive: p.drive,
    gaugePa: p.observations.gaugePa,
    base: p.base,
    whitening: whiteningFor(p.observations, noise[i]!, p.procedure),
  }));
}

/** ln of what a Gaussian noise divides by, its powers of 2 pi left out: part of every evidence under this noise. */
export const logNormaliser = (recordings: readonly FitRecording[]): number =>
  -0.5 * recordings.reduce((s, r) => s + r.whitening.logDeterminant, 0);
