/** The causes weighed as for a whole recording, from fits that follow a growing one. */
import { CATALOGUE, type Cause, formOf } from '../causes/catalogue.ts';
import { constantLogEvidence, sensorState } from '../likelihood/sensor-state.ts';
import type { Prepared } from '../prepare.ts';
import type { Weighed } from '../weighing/weighed.ts';
import type { Fits } from './fits.ts';
import type { Track } from './track.ts';
import type { TrimRounds } from './trim-round.ts';

export interface Standing {
  readonly cause: Cause;
  readonly track: Track;
}

/** Every cause of the catalogue with the track that stands for it: its own, or the one of a cause that looks alike. */
export function standings(fits: Fits): Map<string, Standing> {
  const found = new Map<string, Standing>();
  for (const cause of CATALOGUE) {
    const owner = fits.causes.get(cause.pressureLike ?? (cause.id === 'sensor_stuck' ? 'none' : formOf(cause)));
    if (owner) found.set(formOf(cause), { cause, track: owner.best });
  }
  return found;
}

export function weighNow(prepared: Prepared, fits: Fits, trims: TrimRounds): Weighed[] {
  const state = sensorState(prepared);
  const normaliser = -0.5 * fits.recording.whitening.logDeterminant;
  return [...standings(fits)].map(([key, { cause, track }]): Weighed => {
    const stuck = cause.id === 'sensor_stuck';
    const owner = fits.causes.get(cause.pressureLike ?? key);
    const pressure = stuck
      ? constantLogEvidence(prepared, fits.noise)
      : (owner?.logEvidence ?? track.logEvidence) + normaliser;
    const sensor = stuck ? state.frozen : cause.id === 'sensor_noisy' ? state.noisy : state.sound;
    const trim = trims.logEvidence(key);
    const size = cause.size === 'ventShut' ? 'ventShut' : 'leak';
    return {
      id: cause.id,
      causes: [cause],
      problem: track.problem,
      fit: track.asFit(),
      logEvidence: pressure + sensor + trim,
      sizeIndex: track.problem.parameters.findIndex((p) => p.name === size),
      parts: { pressure, trims: trim, sensor },
    };
  });
}
