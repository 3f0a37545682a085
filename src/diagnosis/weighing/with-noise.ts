/** Recordings as the fits see them under a noise. */
import type { FitRecording } from '../fit/problem.ts';
import { type Noise, noiseLogPrior, noisesNear, sizingNoise, whiteningFor } from '../likelihood/noise.ts';
import type { Prepared } from '../prepare.ts';
import type { UnderNoise } from './weighed.ts';

/** One recording, what there is of it or is to come, laid out for the fits. */
export const recordingUnder = (p: Prepared, noise: Noise): FitRecording => ({
  drive: p.drive,
  gaugePa: p.observations.gaugePa,
  base: p.base,
  whitening: whiteningFor(p.observations, noise, p.procedure),
});

/** The same for all recordings of a car, each under its own noise. */
export const withNoise = (prepared: readonly Prepared[], noise: readonly Noise[]): FitRecording[] =>
  prepared.map((p, i) => recordingUnder(p, noise[i]!));

/** The recordings as a size is read from them: under the settled noise, and under ones near it. */
export function forSizing(prepared: readonly Prepared[], noise: readonly Noise[]): UnderNoise[] {
  const near = noise.map((n) => noisesNear(sizingNoise(n)));
  const most = Math.max(0, ...near.map((list) => list.length));
  return Array.from({ length: most }, (_, k) => {
    const own = near.map((list) => list[Math.min(k, list.length - 1)]!);
    return { recordings: withNoise(prepared, own), logPrior: own.reduce((s, n) => s + noiseLogPrior(n), 0) };
  });
}

/** ln of what a Gaussian noise divides by, its powers of 2 pi left out: part of every evidence under this noise. */
export const logNormaliser = (recordings: readonly FitRecording[]): number =>
  -0.5 * recordings.reduce((s, r) => s + r.whitening.logDeterminant, 0);
