import { type ReactNode, useId } from 'react';
import type { LayoutId } from '../../../system/car.ts';
import { faultKind, faultKindsOf } from '../../../system/faults/catalogue.ts';
import type { Fault, FaultSize } from '../../../system/faults/fault.ts';
import type { LeakPlace } from '../../../system/parameters.ts';
import { SelectField } from '../../kit/fields.tsx';
import { useText } from '../../text/language.ts';
import { useFormats } from './use-formats.ts';

interface Props {
  readonly layout: LayoutId;
  readonly closure: 'capped' | 'capless';
  readonly fault: Fault | undefined;
  readonly onChange: (fault: Fault | undefined, isDragging: boolean) => void;
}

const STEPS = 200;

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

/** Which fault, where, how large. */
export function FaultForm({ layout, closure, fault, onChange }: Props): ReactNode {
  const text = useText();
  const formats = useFormats();
  const id = useId();
  const words = text.drawing.choose;
  const kinds = faultKindsOf(layout).filter((k) => k.kind !== 'cap-missing' || closure === 'capped');
  const kind = fault === undefined ? undefined : faultKind(fault.kind);
  const size = kind?.size;
  const value = fault?.size ?? size?.typical ?? 0;
  const isHole = size?.unit === 'm';
  const placeName = (place: LeakPlace): string =>
    place === 'cap' && closure === 'capless' ? text.drawing.parts.fillerFlap : text.drawing.places[place];
  return (
    <div className="fault-form">
      <SelectField
        label={words.fault}
        value={fault?.kind ?? ''}
        options={[
          { value: '', name: words.noFault },
          ...kinds.map((k) => ({ value: k.kind, name: text.drawing.faults[k.kind] ?? k.words })),
        ]}
        onChange={(next) => {
          const chosen = kinds.find((k) => k.kind === next);
          const place = chosen?.places?.[0];
          onChange(
            chosen === undefined ? undefined : { kind: chosen.kind, ...(place === undefined ? {} : { place }) },
            false,
          );
        }}
      />
      {kind?.places !== undefined && fault !== undefined && (
        <SelectField
          label={words.place}
          value={fault.place ?? kind.places[0]!}
          options={kind.places.map((place) => ({ value: place, name: placeName(place) }))}
          onChange={(place) => onChange({ ...fault, place }, false)}
        />
      )}
      {size !== undefined && fault !== undefined && kind !== undefined && (
        <div className="field">
          <label className="name" htmlFor={id}>
            {words.size}: {text.drawing.sizes[kind.kind] ?? text.drawing.hole}{' '}
            <strong>{formats.size(kind, value)}</strong>
          </label>
          <input
            id={id}
            type="range"
            min={0}
            max={STEPS}
            value={toSlider(size, value)}
            aria-valuetext={formats.size(kind, value)}
            onChange={(event) => onChange({ ...fault, size: fromSlider(size, Number(event.target.value)) }, true)}
            onPointerUp={() => onChange(fault, false)}
          />
          {isHole && <span className="hint">{text.drawing.holeMeans}</span>}
        </div>
      )}
    </div>
  );
}
