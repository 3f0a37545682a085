/** Which part of a tall picture is in the window: what is not in sight need not be painted while it moves. */

/** Painted beyond the window's edges, CSS pixels: a scroll shows this before the next painting. Judgement. */
const MARGIN_PX = 240;

export class InSight {
  private readonly host: HTMLElement;
  private readonly changed: () => void;
  private top = Number.NEGATIVE_INFINITY;
  private bottom = Number.POSITIVE_INFINITY;
  private request: number | undefined;
  private readonly watcher = new ResizeObserver(() => this.look());

  /** `changed` is called when other parts come into sight; paper has all in sight. */
  constructor(host: HTMLElement, changed: () => void) {
    this.host = host;
    this.changed = changed;
    window.addEventListener('scroll', this.look, { capture: true, passive: true });
    window.addEventListener('resize', this.look);
    // What stands above may grow and push the picture down.
    this.watcher.observe(document.body);
    window.addEventListener('beforeprint', this.showAll);
    window.addEventListener('afterprint', this.look);
    this.look();
  }

  /** Whether any of a stretch of the picture, CSS pixels from its top, is in sight. */
  has(topPx: number, heightPx: number): boolean {
    return topPx + heightPx >= this.top && topPx <= this.bottom;
  }

  stop(): void {
    this.watcher.disconnect();
    window.removeEventListener('scroll', this.look, { capture: true });
    window.removeEventListener('resize', this.look);
    window.removeEventListener('beforeprint', this.showAll);
    window.removeEventListener('afterprint', this.look);
    if (this.request !== undefined) cancelAnimationFrame(this.request);
  }

  private readonly look = (): void => {
    this.request ??= requestAnimationFrame(() => {
      this.request = undefined;
      const { top } = this.host.getBoundingClientRect();
      const [from, to] = [-top, window.innerHeight - top];
      // Moved by less than the margin: what is in sight is painted.
      if (from >= this.top && to <= this.bottom && this.top > Number.NEGATIVE_INFINITY) return;
      this.top = from - MARGIN_PX;
      this.bottom = to + MARGIN_PX;
      this.changed();
    });
  };

  private readonly showAll = (): void => {
    this.top = Number.NEGATIVE_INFINITY;
    this.bottom = Number.POSITIVE_INFINITY;
    this.changed();
  };
}
