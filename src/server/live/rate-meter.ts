/** Samples a second over the last seconds, by channel. */
import type { ChannelName } from '../../recording/recording.ts';

const WINDOW_S = 5;

export class RateMeter {
  readonly #times = new Map<ChannelName, number[]>();

  /** @param timeS of a sample, rising by channel */
  add(name: ChannelName, timeS: number): void {
    const times = this.#times.get(name) ?? [];
    this.#times.set(name, times);
    times.push(timeS);
    let old = 0;
    while (times[old]! < timeS - WINDOW_S) old++;
    if (old > 0) times.splice(0, old);
  }

  of(name: ChannelName, nowS: number): number {
    const times = this.#times.get(name) ?? [];
    const recent = times.filter((t) => t >= nowS - WINDOW_S).length;
    return Number((recent / WINDOW_S).toFixed(1));
  }

  all(nowS: number): number {
    return Number([...this.#times.keys()].reduce((sum, name) => sum + this.of(name, nowS), 0).toFixed(1));
  }
}
