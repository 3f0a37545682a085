/** Recordings as the fits see them under a noise. */
import type { FitRecording } from '../fit/problem.ts';
import { type Noise, whiteningFor } from '../likelihood/noise.ts';
import type { Prepared } from '../prepare.ts';

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

/** ln of what a Gaussian noise divides by, its powers of 2 pi left out: part of every evidence under this noise. */
export const logNormaliser = (recordings: readonly FitRecording[]): number =>
  -0.5 * recordings.reduce((s, r) => s + r.whitening.logDeterminant, 0);
