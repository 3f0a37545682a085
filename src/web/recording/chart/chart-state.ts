/** The view and the cursor of one chart: what every part of it listens to. */
import { clampView, type View } from './view.ts';

export interface ChartSnapshot {
  readonly view: View;
  /** The time that the cursor stands at; null while there is none. */
  readonly cursorS: number | null;
}

export class ChartState {
  private whole: View;
  private readonly narrowestS: number;
  private snapshot: ChartSnapshot;
  private readonly listeners = new Set<() => void>();

  constructor(all: View, narrowestS: number) {
    this.whole = all;
    this.narrowestS = narrowestS;
    this.snapshot = { view: all, cursorS: null };
  }

  get all(): View {
    return this.whole;
  }

  /** More has come. */
  extend(all: View, view: View): void {
    this.whole = all;
    this.set({ ...this.snapshot, view });
  }

  readonly read = (): ChartSnapshot => this.snapshot;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  show(view: View): void {
    this.set({ ...this.snapshot, view: clampView(view, this.all, this.narrowestS) });
  }

  point(cursorS: number | null): void {
    const inside = cursorS === null ? null : Math.min(this.all.toS, Math.max(this.all.fromS, cursorS));
    if (inside !== this.snapshot.cursorS) this.set({ ...this.snapshot, cursorS: inside });
  }

  private set(snapshot: ChartSnapshot): void {
    this.snapshot = snapshot;
    for (const listener of this.listeners) listener();
  }
}
