import { type ReactNode, useEffect, useId, useRef, useState } from 'react';
import type { FaultKind, FaultSize } from '../../../system/faults/fault.ts';
import { useText } from '../../text/language.ts';
import { useFormats } from './use-formats.ts';

const STEPS = 200;
/** So long must the slider rest before its size is the page's, ms: everything is drawn anew then. */
const REST_MS = 160;

/** Holes span decades, so their slider is a logarithm; all else is straight. */
const isLogarithmic = (size: FaultSize): boolean => size.unit === 'm';

const toSlider = (size: FaultSize, value: number): number =>
  isLogarithmic(size)
    ? (STEPS * Math.log(value / size.low)) / Math.log(size.high / size.low)
    : (STEPS * (value - size.low)) / (size.high - size.low);

const fromSlider = (size: FaultSize, at: number): number =>
  isLogarithmic(size)
    ? size.low * (size.high / size.low) ** (at / STEPS)
    : size.low + ((size.high - size.low) * at) / STEPS;

interface Props {
  readonly kind: FaultKind;
  readonly size: FaultSize;
  readonly value: number;
  /** At every movement. */
  readonly onMove: (value: number) => void;
  /** Once it rests. */
  readonly onRest: (value: number) => void;
}

/** The size of a fault. While it moves only itself is drawn anew; the picture follows by way of `onMove`. */
export function SizeSlider({ kind, size, value, onMove, onRest }: Props): ReactNode {
  const text = useText();
  const formats = useFormats();
  const id = useId();
  const [shown, setShown] = useState(value);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  useEffect(() => {
    // A value from elsewhere counts, unless a hand is at the slider.
    if (timer.current === undefined) setShown(value);
  }, [value]);
  useEffect(() => () => clearTimeout(timer.current), []);
  const rest = (at: number): void => {
    clearTimeout(timer.current);
    timer.current = undefined;
    onRest(at);
  };
  const move = (at: number): void => {
    setShown(at);
    onMove(at);
    clearTimeout(timer.current);
    timer.current = setTimeout(() => rest(at), REST_MS);
  };
  return (
    <div className="field">
      <label className="name" htmlFor={id}>
        {text.drawing.choose.size}: {text.drawing.sizes[kind.kind] ?? text.drawing.hole}{' '}
        <strong>{formats.size(kind, shown)}</strong>
      </label>
      <input
        id={id}
        type="range"
        min={0}
        max={STEPS}
        value={toSlider(size, shown)}
        aria-valuetext={formats.size(kind, shown)}
        onChange={(event) => move(fromSlider(size, Number(event.target.value)))}
        onPointerUp={() => timer.current !== undefined && rest(shown)}
      />
      {size.unit === 'm' && <span className="hint">{text.drawing.holeMeans}</span>}
    </div>
  );
}
