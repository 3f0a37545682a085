/** The causes and pairs weighed as for a whole recording, from fits that follow a growing one. */
import { type Cause, formOf, takingPart } from '../causes/catalogue.ts';
import type { CauseId } from '../finding.ts';
import { constantLogEvidence, sensorState } from '../likelihood/sensor-state.ts';
import { fillingLogDensity } from '../likelihood/shut-offs.ts';
import type { Prepared } from '../prepare.ts';
import type { Weighed } from '../weighing/weighed.ts';
import { nameOf } from './cause-fits.ts';
import { type Fits, ownerOf } from './fits.ts';
import { secondsFor } from './pair-trials.ts';
import type { Track } from './track.ts';
import type { TrimRounds } from './trim-round.ts';

export interface Standing {
  readonly causes: readonly Cause[];
  readonly track: Track;
}

/**
 * Every cause of the catalogue with the track that stands for it, its own or the one of a cause that looks alike; and the
 * pairs that do not show in the pressure, with that of their first fault.
 */
export function standings(fits: Fits): Map<string, Standing> {
  const found = new Map<string, Standing>();
  for (const cause of takingPart([fits.procedure])) {
    if (fits.causes.has(ownerOf(cause, fits.procedure))) {
      found.set(formOf(cause), { causes: [cause], track: fits.trackOf(cause) });
    }
  }
  for (const causes of unseenPairs(fits)) found.set(nameOf(causes), { causes, track: fits.trackOf(causes[0]) });
  return found;
}

/** Pairs whose second fault leaves the pressure as it is. */
function unseenPairs(fits: Fits): (readonly [Cause, Cause])[] {
  return fits.firsts.flatMap((first) =>
    secondsFor(first, fits.procedure)
      .filter((second) => second.pressureLike)
      .map((second) => [first, second] as const),
  );
}

export function weighNow(
  prepared: Prepared,
  fits: Fits,
  trims: TrimRounds,
): { readonly weighed: Weighed[]; readonly pairs: Weighed[] } {
  const state = sensorState(prepared);
  const normaliser = -0.5 * fits.recording.whitening.logDeterminant;
  const of = (causes: readonly Cause[], track: Track, logPressure: number, trimsLikeName: string): Weighed => {
    const is = (id: CauseId) => causes.some((c) => c.id === id);
    const stuck = is('sensor_stuck');
    const pressure = stuck ? constantLogEvidence(prepared, fits.noise) : logPressure + normaliser;
    const sensor = stuck ? state.frozen : is('sensor_noisy') ? state.noisy : state.sound;
    const trim = trims.logEvidence(trimsLikeName);
    const filling = Math.max(...causes.map((c) => fillingLogDensity(prepared, c.id)));
    const size = causes.some((c) => c.size === 'ventShut') ? 'ventShut' : 'leak';
    return {
      id: causes[0]!.id,
      causes,
      problem: track.problem,
      fit: track.asFit(),
      logEvidence: pressure + sensor + trim + filling,
      sizeIndex: track.problem.parameters.findIndex((p) => p.name === size),
      parts: { pressure, trims: trim, sensor },
    };
  };
  const alone = (cause: Cause) => fits.causes.get(ownerOf(cause, fits.procedure))!;
  const weighed = takingPart([fits.procedure])
    .filter((c) => fits.causes.has(ownerOf(c, fits.procedure)))
    .map((cause) => of([cause], alone(cause).standing, alone(cause).logEvidence, formOf(cause)));
  const first = new Set(fits.firsts);
  const pairs = [
    ...[...fits.pairs.kept].map(([, f]) => of(f.causes, f.standing, f.standing.logEvidence, formOf(f.causes[0]!))),
    // of a pair that is not followed it is known what it explained beyond its first fault when it was tried
    ...[...fits.pairs.tried]
      .filter(([name, t]) => !fits.pairs.kept.has(name) && first.has(t.causes[0]))
      .map(([, { causes, gain }]) => {
        const { standing } = alone(causes[0]);
        return of(causes, standing, standing.logEvidence + gain, formOf(causes[0]));
      }),
    ...unseenPairs(fits).map((causes) => {
      const { standing, logEvidence } = alone(causes[0]);
      return of(causes, standing, logEvidence, nameOf(causes));
    }),
  ];
  return { weighed, pairs };
}
