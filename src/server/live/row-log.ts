/** All rows of a live recording, so that a page that comes later gets them too. */
import { GrowingNumbers } from '../../recording/raw-column.ts';
import type { ChannelName, Recording } from '../../recording/recording.ts';
import type { LiveRowsEvent } from '../contract/live.ts';

/** Rows in one event at most: a page that comes late gets several. */
const MOST_ROWS = 5_000;
/** More figures than any item of the bus has. */
const FIGURES = 6;

export class RowLog {
  readonly #timeS = new GrowingNumbers();
  readonly #columns = new Map<ChannelName, GrowingNumbers>();
  readonly #counts = new Map<ChannelName, number>();
  lastS = 0;

  get length(): number {
    return this.#timeS.length;
  }

  add({ timeS, channels }: Recording): void {
    const before = this.length;
    for (const t of timeS) this.#timeS.push(t);
    this.lastS = timeS.at(-1) ?? this.lastS;
    for (const name of Object.keys(channels) as ChannelName[])
      if (!this.#columns.has(name)) {
        const column = new GrowingNumbers();
        for (let i = 0; i < before; i++) column.push(Number.NaN);
        this.#columns.set(name, column);
      }
    for (const [name, column] of this.#columns) {
      const values = channels[name];
      for (let i = 0; i < timeS.length; i++) column.push(values?.[i] ?? Number.NaN);
      const present = values?.reduce((sum, value) => sum + (Number.isNaN(value) ? 0 : 1), 0) ?? 0;
      this.#counts.set(name, (this.#counts.get(name) ?? 0) + present);
    }
  }

  counts(): { readonly name: ChannelName; readonly samples: number }[] {
    return [...this.#counts].map(([name, samples]) => ({ name, samples }));
  }

  after(from: number): LiveRowsEvent | undefined {
    const to = Math.min(this.length, from + MOST_ROWS);
    if (from >= to) return undefined;
    const part = (column: GrowingNumbers) => [...column.slice(from, to)];
    return {
      from,
      timeS: part(this.#timeS).map((t) => Number(t.toFixed(4))),
      channels: Object.fromEntries(
        [...this.#columns].flatMap(([name, column]) => {
          const values = part(column);
          return values.every(Number.isNaN)
            ? []
            : [[name, values.map((value) => (Number.isNaN(value) ? null : Number(value.toPrecision(FIGURES))))]];
        }),
      ),
    };
  }
}
