/** Names of the phases above the plot, and grips that move their boundaries. */
import { type KeyboardEvent, type PointerEvent, type ReactNode, useRef, useSyncExternalStore } from 'react';
import type { PhaseKind } from '../../../recording/recording.ts';
import { boundaryRange, moveBoundary, type PhaseRow } from './boundaries.ts';
import type { ChartState } from './chart-state.ts';
import { placeNames } from './phase-names.ts';
import type { PlotArea } from './plot.ts';
import type { View } from './view.ts';

export interface PhaseStripProps {
  readonly state: ChartState;
  readonly area: PlotArea;
  readonly phases: PhaseRow;
  readonly wordOf: (kind: PhaseKind) => string;
  /** "Boundary between draw and hold". */
  readonly nameOf: (before: PhaseKind, after: PhaseKind) => string;
  readonly timeOf: (timeS: number) => string;
  /** Nearest time that a sample has. */
  readonly snap: (timeS: number) => number;
  readonly leastS: number;
  /** Absent: the phases are only shown. */
  readonly onMove?: (phases: PhaseRow) => void;
  readonly onMoved?: () => void;
}

let measuring: CanvasRenderingContext2D | null = null;
function wideOf(text: string): number {
  measuring ??= document.createElement('canvas').getContext('2d');
  if (measuring === null) return text.length * 8;
  measuring.font = '14px "Atkinson Hyperlegible", system-ui, sans-serif';
  return Math.ceil(measuring.measureText(text).width) + 2;
}

/** Arrow keys move a boundary by this share of what is seen; with shift by ten times as much. */
const KEY_SHARE = 0.002;

/** Grips closer than this, CSS pixels, stand in two rows, so that each can be held. */
const GRIP_APART = 34;

function gripRows(phases: PhaseRow, view: View, perSecond: number): readonly (0 | 1)[] {
  const last = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  return phases.slice(0, -1).map(({ toS }) => {
    const x = (toS - view.fromS) * perSecond;
    const row = x - last[0]! >= GRIP_APART || x - last[0]! > x - last[1]! ? 0 : 1;
    last[row] = x;
    return row;
  });
}

export function PhaseStrip(props: PhaseStripProps): ReactNode {
  const { state, area, phases, wordOf, nameOf, timeOf, snap, leastS, onMove, onMoved } = props;
  const { view } = useSyncExternalStore(state.subscribe, state.read);
  const strip = useRef<HTMLDivElement>(null);
  const perSecond = area.width / (view.toS - view.fromS);
  const move = (boundary: number, toS: number): void => onMove?.(moveBoundary(phases, boundary, snap(toS), leastS));

  const onDrag = (boundary: number) => (event: PointerEvent<HTMLElement>) => {
    if (!event.currentTarget.hasPointerCapture(event.pointerId) || strip.current === null) return;
    const left = strip.current.getBoundingClientRect().left + area.left;
    move(boundary, view.fromS + (event.clientX - left) / perSecond);
  };
  const onKey = (boundary: number, atS: number) => (event: KeyboardEvent) => {
    const step = Math.max(leastS, (view.toS - view.fromS) * KEY_SHARE) * (event.shiftKey ? 10 : 1);
    const [low, high] = boundaryRange(phases, boundary, leastS);
    const to =
      event.key === 'ArrowLeft' || event.key === 'ArrowDown'
        ? atS - step
        : event.key === 'ArrowRight' || event.key === 'ArrowUp'
          ? atS + step
          : event.key === 'Home'
            ? low
            : event.key === 'End'
              ? high
              : null;
    if (to === null) return;
    event.preventDefault();
    move(boundary, to);
  };

  return (
    <div className={onMove === undefined ? 'phase-strip' : 'phase-strip with-grips'} ref={strip}>
      {placeNames(phases, view, area.width, ({ kind }) => wordOf(kind), wideOf).map(({ index, left, row, text }) => (
        <span key={index} className="name" style={{ left: area.left + left, top: `${row * 1.3}rem` }}>
          {text}
        </span>
      ))}
      {onMove !== undefined &&
        gripRows(phases, view, perSecond).map((row, k) => {
          const phase = phases[k]!;
          const x = (phase.toS - view.fromS) * perSecond;
          if (x < -1 || x > area.width + 1) return null;
          const [low, high] = boundaryRange(phases, k, leastS);
          return (
            <div
              // biome-ignore lint/suspicious/noArrayIndexKey: a boundary is its place in the row
              key={k}
              className={row === 1 ? 'grip upper' : 'grip'}
              role="slider"
              tabIndex={0}
              aria-label={nameOf(phase.kind, phases[k + 1]!.kind)}
              aria-valuemin={low}
              aria-valuemax={high}
              aria-valuenow={phase.toS}
              aria-valuetext={timeOf(phase.toS)}
              title={`${nameOf(phase.kind, phases[k + 1]!.kind)}: ${timeOf(phase.toS)}`}
              style={{ left: area.left + x }}
              onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
              onPointerMove={onDrag(k)}
              onPointerUp={() => onMoved?.()}
              onPointerCancel={() => onMoved?.()}
              onKeyDown={onKey(k, phase.toS)}
              onKeyUp={(event) => {
                if (event.key.startsWith('Arrow') || event.key === 'Home' || event.key === 'End') onMoved?.();
              }}
            />
          );
        })}
    </div>
  );
}
