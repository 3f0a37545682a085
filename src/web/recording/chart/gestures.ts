/** Mouse, finger, wheel and keys on a chart. Returns how to stop listening. */
import type { ChartState } from './chart-state.ts';
import type { Plot } from './plot.ts';
import { isWhole, pan, pinch, reveal, type View, zoom } from './view.ts';

export interface GestureOptions {
  /** A drag chooses a span instead of moving the view. */
  readonly isBrushing: () => boolean;
  readonly onBrushed: () => void;
}

/** A notch of the wheel moves by this share of the view, or zooms by this factor. */
const WHEEL_SHARE = 0.1;
const WHEEL_FACTOR = 1.25;
const KEY_SHARE = 0.1;
const PAGE_SHARE = 0.8;
const KEY_FACTOR = 1.6;
/** Views: further than any recording is long. */
const FAR = 1e9;
/** A span narrower than this share of the view is a slip of the hand, not a choice. */
const SLIP = 0.01;
/** The cursor moves by this share of the view for one press of a key. */
const CURSOR_SHARE = 0.01;

export function listen(plot: Plot, state: ChartState, options: GestureOptions): () => void {
  const { surface } = plot;
  const fingers = new Map<number, number>();
  /** What every finger holds, s, and the view at that moment. */
  let held: { readonly view: View; readonly times: readonly number[]; readonly ids: readonly number[] } | null = null;
  let brushFrom: number | null = null;

  const shareOf = (clientX: number): number => {
    const { left, width } = surface.getBoundingClientRect();
    return (clientX - left) / width;
  };
  const timeAt = (share: number, { fromS, toS }: View = state.read().view): number => fromS + share * (toS - fromS);
  const hold = (): void => {
    const { view } = state.read();
    const ids = [...fingers.keys()].slice(0, 2);
    held = ids.length === 0 ? null : { view, ids, times: ids.map((id) => timeAt(fingers.get(id)!, view)) };
  };

  const onDown = (event: PointerEvent): void => {
    if (event.button !== 0) return;
    surface.setPointerCapture(event.pointerId);
    const share = shareOf(event.clientX);
    if (options.isBrushing() || event.shiftKey) brushFrom = share;
    fingers.set(event.pointerId, share);
    hold();
    state.point(timeAt(share));
  };
  const onMove = (event: PointerEvent): void => {
    const share = shareOf(event.clientX);
    if (!fingers.has(event.pointerId)) {
      if (event.pointerType !== 'touch') state.point(timeAt(share));
      return;
    }
    fingers.set(event.pointerId, share);
    if (brushFrom !== null) {
      plot.showBrush([brushFrom, share].map((each) => Math.min(1, Math.max(0, each))) as [number, number]);
      return;
    }
    if (held === null) return;
    const [a, b] = held.ids.map((id) => fingers.get(id)!);
    if (b !== undefined && a !== undefined && Math.abs(b - a) > 0.02)
      state.show(pinch(held.times[0]!, held.times[1]!, a, b));
    else if (a !== undefined) {
      const { fromS, toS } = held.view;
      const from = held.times[0]! - a * (toS - fromS);
      state.show({ fromS: from, toS: from + toS - fromS });
    }
  };
  const onUp = (event: PointerEvent): void => {
    if (!fingers.delete(event.pointerId)) return;
    if (brushFrom !== null) {
      const span = [brushFrom, shareOf(event.clientX)].sort((x, y) => x - y) as [number, number];
      brushFrom = null;
      plot.showBrush(null);
      if (event.type === 'pointerup' && span[1] - span[0] > SLIP) {
        state.show({ fromS: timeAt(span[0]), toS: timeAt(span[1]) });
        options.onBrushed();
      }
    }
    hold();
  };
  const onLeave = (event: PointerEvent): void => {
    if (event.pointerType === 'mouse' && fingers.size === 0 && document.activeElement !== plot.surface)
      state.point(null);
  };
  const onWheel = (event: WheelEvent): void => {
    const { view } = state.read();
    const notches = (event.deltaY || event.deltaX) / (event.deltaMode === 0 ? 100 : 3);
    if (event.ctrlKey || event.metaKey) {
      event.preventDefault();
      state.show(zoom(view, WHEEL_FACTOR ** notches, timeAt(shareOf(event.clientX))));
      return;
    }
    // A plain wheel belongs to the page until the chart is being worked with: then it moves along the time.
    const isSideways = event.shiftKey || Math.abs(event.deltaX) > Math.abs(event.deltaY);
    if (isWhole(view, state.all) || !(isSideways || surface.contains(document.activeElement))) return;
    const before = view.fromS;
    state.show(pan(view, notches * WHEEL_SHARE));
    // At an end the page scrolls on.
    if (state.read().view.fromS !== before) event.preventDefault();
  };
  const onKey = (event: KeyboardEvent): void => {
    const { view, cursorS } = state.read();
    const middle = cursorS !== null && cursorS >= view.fromS && cursorS <= view.toS ? cursorS : timeAt(0.5);
    const step = (view.toS - view.fromS) * CURSOR_SHARE;
    const point = (timeS: number): void => {
      state.point(timeS);
      state.show(reveal(view, state.read().cursorS!));
    };
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    switch (event.key) {
      case 'ArrowLeft':
        if (event.shiftKey) point(middle - step);
        else state.show(pan(view, -KEY_SHARE));
        break;
      case 'ArrowRight':
        if (event.shiftKey) point(middle + step);
        else state.show(pan(view, KEY_SHARE));
        break;
      case 'PageUp':
        state.show(pan(view, -PAGE_SHARE));
        break;
      case 'PageDown':
        state.show(pan(view, PAGE_SHARE));
        break;
      case 'Home':
        state.show(pan(view, -FAR));
        break;
      case 'End':
        state.show(pan(view, FAR));
        break;
      case '+':
      case '=':
        state.show(zoom(view, 1 / KEY_FACTOR, middle));
        break;
      case '-':
        state.show(zoom(view, KEY_FACTOR, middle));
        break;
      case '0':
        state.show(state.all);
        break;
      case 'Escape':
        state.point(null);
        break;
      default:
        return;
    }
    event.preventDefault();
  };

  surface.addEventListener('pointerdown', onDown);
  surface.addEventListener('pointermove', onMove);
  surface.addEventListener('pointerup', onUp);
  surface.addEventListener('pointercancel', onUp);
  surface.addEventListener('pointerleave', onLeave);
  surface.addEventListener('wheel', onWheel, { passive: false });
  surface.addEventListener('keydown', onKey);
  return () => {
    surface.removeEventListener('pointerdown', onDown);
    surface.removeEventListener('pointermove', onMove);
    surface.removeEventListener('pointerup', onUp);
    surface.removeEventListener('pointercancel', onUp);
    surface.removeEventListener('pointerleave', onLeave);
    surface.removeEventListener('wheel', onWheel);
    surface.removeEventListener('keydown', onKey);
  };
}
