/** Recorded and modelled traces, for the pictures of a finding. */
import type { Overlay } from '../finding.ts';
import type { Noise } from '../likelihood/noise.ts';
import type { Prepared } from '../prepare.ts';
import type { Weighed } from '../weighing/weighed.ts';

/** Causes drawn: the first few and the sound car. */
const DRAWN = 3;
/** Half-width of a 90 % band in standard deviations. */
const BAND = 1.645;

export function overlaysFor(
  ranked: readonly Weighed[],
  prepared: readonly Prepared[],
  indices: readonly number[],
  noise: readonly Noise[],
): Overlay[] {
  const drawn = ranked.filter((w, i) => w.id !== 'sensor_stuck' && (i < DRAWN || w.id === 'none'));
  return prepared.flatMap((p, r) =>
    drawn.map((w): Overlay => {
      const o = p.observations;
      const modelled = new Float64Array(o.timeS.length);
      w.problem.model(w.fit.z, r, modelled);
      return {
        recording: indices[r]!,
        cause: w.id,
        timeS: [...o.timeS],
        recordedGaugePa: [...o.gaugePa],
        modelledGaugePa: [...modelled],
        bandPa: [...o.whiteVariance].map((v) => BAND * Math.sqrt(v * noise[r]!.whiteScale + noise[r]!.slowPa ** 2)),
      };
    }),
  );
}
