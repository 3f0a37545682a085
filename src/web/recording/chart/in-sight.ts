/**
 * What of a tall picture is painted while it moves: the part in the window. As soon as it rests all of it is, so that
 * scrolling, paper and pictures of the whole page find it whole.
 */

/** Painted beyond the window's edges, CSS pixels: a scroll during a movement shows this. Judgement. */
const MARGIN_PX = 120;
/** So long without a movement is rest, ms. Judgement. */
const REST_MS = 160;

export class InSight {
  private readonly host: HTMLElement;
  private readonly onRest: () => void;
  private top = Number.NEGATIVE_INFINITY;
  private bottom = Number.POSITIVE_INFINITY;
  private timer: ReturnType<typeof setTimeout> | undefined;

  /** `onRest` is called when everything is to be painted again. */
  constructor(host: HTMLElement, onRest: () => void) {
    this.host = host;
    this.onRest = onRest;
  }

  /** The picture is about to be painted anew by a movement. */
  move(): void {
    if (this.timer === undefined) {
      // Read once for each movement: a look at the layout in every frame would cost what this saves.
      const { top } = this.host.getBoundingClientRect();
      this.top = -top - MARGIN_PX;
      this.bottom = window.innerHeight - top + MARGIN_PX;
    }
    clearTimeout(this.timer);
    this.timer = setTimeout(() => {
      // At rest again, before the painting asks.
      this.stop();
      this.onRest();
    }, REST_MS);
  }

  get isMoving(): boolean {
    return this.timer !== undefined;
  }

  /** Whether any of a stretch of the picture, CSS pixels from its top, is to be painted. */
  has(topPx: number, heightPx: number): boolean {
    return topPx + heightPx >= this.top && topPx <= this.bottom;
  }

  stop(): void {
    clearTimeout(this.timer);
    this.timer = undefined;
    this.top = Number.NEGATIVE_INFINITY;
    this.bottom = Number.POSITIVE_INFINITY;
  }
}
