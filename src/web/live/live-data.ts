/** The rows that have come, as columns that grow; what a chart draws is cut from them. Pure. */
import { CHANNEL_ORDER } from '../../recording/own-columns.ts';
import type { ChannelName, ShutTime } from '../../recording/recording.ts';
import { ventAt } from '../../recording/vent-by-hand.ts';
import type { LiveRowsEvent } from '../../server/contract/live.ts';
import { column, type Source } from '../recording/chart/source.ts';

/** A channel that is asked for in turn is drawn on for so long after a sample, s (judgement). */
const DRAWN_ON_S = 2;
/** Channels with fewer samples than this share of the rows stand in the table alone: they change over minutes. */
const DRAWN_SHARE = 0.1;

export class LiveData {
  readonly #timeS: number[] = [];
  readonly #columns = new Map<ChannelName, number[]>();
  readonly #counts = new Map<ChannelName, number>();
  readonly #latest = new Map<ChannelName, number>();

  get rows(): number {
    return this.#timeS.length;
  }

  get lastS(): number {
    return this.#timeS.at(-1) ?? 0;
  }

  latest(name: ChannelName): number | undefined {
    return this.#latest.get(name);
  }

  /** False when rows are missing before these: they have to be asked for again. */
  add({ from, timeS, channels }: LiveRowsEvent): boolean {
    if (from > this.rows) return false;
    // What came twice after a broken line is here already.
    const known = this.rows - from;
    for (let i = known; i < timeS.length; i++) {
      this.#timeS.push(timeS[i]!);
      for (const name of Object.keys(channels) as ChannelName[]) this.#put(name, channels[name]![i] ?? null);
    }
    for (const values of this.#columns.values()) while (values.length < this.rows) values.push(Number.NaN);
    return true;
  }

  #put(name: ChannelName, value: number | null): void {
    let values = this.#columns.get(name);
    if (values === undefined) {
      values = [];
      this.#columns.set(name, values);
    }
    while (values.length < this.rows - 1) values.push(Number.NaN);
    values.push(value ?? Number.NaN);
    if (value === null) return;
    this.#counts.set(name, (this.#counts.get(name) ?? 0) + 1);
    this.#latest.set(name, value);
  }

  /** Channels that are drawn, and the source to draw them from; the vent's command as it is marked or shows itself. */
  drawn(
    ventShut: readonly ShutTime[],
    pauses: readonly ShutTime[],
  ): { readonly order: readonly ChannelName[]; readonly source: Source } {
    const timeS = Float64Array.from(this.#timeS);
    const order = CHANNEL_ORDER.filter(
      (name) =>
        (name === 'ventClosed' && ventShut.length > 0) || (this.#counts.get(name) ?? 0) > DRAWN_SHARE * this.rows,
    );
    return {
      order,
      source: {
        timeS,
        columns: order.map((name) =>
          column(name === 'ventClosed' ? ventAt(timeS, ventShut) : this.#drawnOn(timeS, this.#columns.get(name)!)),
        ),
        pauses: pauses.map(({ fromS, toS }) => ({ fromS, toS: toS ?? Number.MAX_VALUE })),
      },
    };
  }

  #drawnOn(timeS: Float64Array, values: readonly number[]): Float64Array {
    let last = Number.NaN;
    let lastS = Number.NEGATIVE_INFINITY;
    return Float64Array.from(values, (value, i) => {
      if (!Number.isNaN(value)) {
        last = value;
        lastS = timeS[i]!;
      }
      return timeS[i]! - lastS <= DRAWN_ON_S ? last : Number.NaN;
    });
  }
}
