/** Finds single samples that stand out of their neighbours once the two samples after them have come. */
import type { SensorCharacter } from '../likelihood/observations.ts';
import type { Readings } from './bin.ts';

interface Seen {
  readonly timeS: number;
  readonly gaugePa: number;
  readonly into: Readings;
}

export class SpikeWatch {
  private readonly last: Seen[] = [];

  /** Takes a reading that its bin's `into` already counts; takes the one two samples back out again if it is a spike. */
  add(timeS: number, gaugePa: number, into: Readings, character: SensorCharacter): void {
    this.last.push({ timeS, gaugePa, into });
    if (this.last.length < 5) return;
    const [a, b, x, d, e] = this.last.splice(0, 1).concat(this.last) as [Seen, Seen, Seen, Seen, Seen];
    const near = [a.gaugePa, b.gaugePa, d.gaugePa, e.gaugePa].sort((p, q) => p - q);
    const low = near[0]!;
    const high = near[3]!;
    const outside = x.gaugePa < low ? low - x.gaugePa : x.gaugePa > high ? x.gaugePa - high : 0;
    // the same limit as for a whole recording
    const limit = Math.max(6 * character.noisePa, 4 * character.stepPa, 40);
    if (!(outside > limit + 1.5 * (high - low))) return;
    x.into.count--;
    x.into.sumTimeS -= x.timeS;
    x.into.sumGaugePa -= x.gaugePa;
  }
}
