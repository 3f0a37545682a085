import { memo, type ReactNode } from 'react';
import type { LayoutId } from '../../../system/car.ts';
import { faultKind, faultKindsOf } from '../../../system/faults/catalogue.ts';
import type { Fault } from '../../../system/faults/fault.ts';
import type { LeakPlace } from '../../../system/parameters.ts';
import { SelectField } from '../../kit/fields.tsx';
import { useText } from '../../text/language.ts';
import { SizeSlider } from './size-slider.tsx';

interface Props {
  readonly layout: LayoutId;
  readonly closure: 'capped' | 'capless';
  readonly fault: Fault | undefined;
  readonly onChange: (fault: Fault | undefined) => void;
  /** Another size, while the slider still moves. */
  readonly onSketch: (fault: Fault) => void;
}

/** Which fault, where, how large. */
export const FaultForm = memo(function FaultForm({ layout, closure, fault, onChange, onSketch }: Props): ReactNode {
  const text = useText();
  const words = text.drawing.choose;
  const kinds = faultKindsOf(layout).filter((k) => k.kind !== 'cap-missing' || closure === 'capped');
  const kind = fault === undefined ? undefined : faultKind(fault.kind);
  const size = kind?.size;
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
          onChange(chosen === undefined ? undefined : { kind: chosen.kind, ...(place === undefined ? {} : { place }) });
        }}
      />
      {kind?.places !== undefined && fault !== undefined && (
        <SelectField
          label={words.place}
          value={fault.place ?? kind.places[0]!}
          options={kind.places.map((place) => ({ value: place, name: placeName(place) }))}
          onChange={(place) => onChange({ ...fault, place })}
        />
      )}
      {size !== undefined && fault !== undefined && kind !== undefined && (
        <SizeSlider
          key={`${fault.kind} ${fault.place}`}
          kind={kind}
          size={size}
          value={fault.size ?? size.typical}
          onMove={(value) => onSketch({ ...fault, size: value })}
          onRest={(value) => onChange({ ...fault, size: value })}
        />
      )}
    </div>
  );
});
