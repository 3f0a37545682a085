/** A pressure channel of the kept history as observations of a run's model. */
import type { PhaseKind } from '../../recording/recording.ts';
import type { Observations } from '../likelihood/observations.ts';
import { type ObserveChannel, withAllowances } from '../single-run/observed-channel.ts';
import { PRESSURES, type PressureName } from './bin.ts';
import type { History } from './history.ts';
import { varianceOf } from './snapshot.ts';

/** A stretch that is only thought of: the present phase gone on, its readings as the last. */
export interface Ahead {
  readonly lengthS: number;
  readonly binS: number;
}

/** @param ahead absent, the observations end with the last sample */
export function observeHistory(h: History, ahead?: Ahead): ObserveChannel {
  return (_, channel, __, changesS) => {
    const k = PRESSURES.indexOf(channel as PressureName);
    const watch = h.pressures[k];
    if (!watch || watch.readings === 0) return undefined;
    const rails = watch.rails();
    watch.characterise(rails);
    const bins = h.bins.filter((b) => b.pressures[k]!.count > 0);
    const more = ahead ? Array.from({ length: Math.round(ahead.lengthS / ahead.binS) }, (_, i) => i) : [];
    const aheadS = more.map((i) => h.lastS + (i + 0.5) * (ahead?.binS ?? 0));
    const inAhead = Math.max(1, (ahead?.binS ?? 0) / watch.character.sampleGapS);
    let change = 0;
    let sinceS = Number.NEGATIVE_INFINITY;
    const since = bins.map((b) => {
      while (change < changesS.length && changesS[change]! <= b.fromS) sinceS = changesS[change++]!;
      const r = b.pressures[k]!;
      return r.sumTimeS / r.count - sinceS;
    });
    const last: PhaseKind = bins[bins.length - 1]?.phase ?? 'rest';
    const of = (f: (r: (typeof bins)[number]['pressures'][number]) => number) => bins.map((b) => f(b.pressures[k]!));
    const observations: Observations = {
      timeS: Float64Array.of(...of((r) => r.sumTimeS / r.count), ...aheadS),
      gaugePa: Float64Array.of(...of((r) => r.sumGaugePa / r.count), ...aheadS.map(() => watch.lastPa)),
      whiteVariance: Float64Array.of(
        ...of((r) => varianceOf(watch.character, r.count)),
        ...aheadS.map(() => varianceOf(watch.character, inAhead)),
      ),
      phase: [...bins.map((b) => b.phase), ...aheadS.map(() => last)],
      sinceEventS: Float64Array.of(...since, ...aheadS.map((t) => t - sinceS)),
    };
    return withAllowances(channel, observations, watch.character, rails, h.firstS);
  };
}
