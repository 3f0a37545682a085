import type { RunView } from './run-view.ts';

/**
 * The newest run that there is, for what follows it at every frame. While a slider moves runs come as fast as frames do;
 * the rest of the page hears of them less often, through React.
 */
export class LiveView {
  private shown: RunView | undefined;
  private readonly listeners = new Set<() => void>();

  readonly get = (): RunView | undefined => this.shown;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  show(view: RunView | undefined): void {
    if (view === this.shown) return;
    this.shown = view;
    for (const listener of this.listeners) listener();
  }
}
