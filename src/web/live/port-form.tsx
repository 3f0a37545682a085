/** Which line leads to the car: an adapter that was found, an address that is typed, or a simulated car. */
import { type ReactNode, useState } from 'react';
import type { LivePort } from '../../server/contract/live.ts';
import { LAYOUTS, type LayoutId } from '../../system/car.ts';
import { faultKindsOf } from '../../system/faults/catalogue.ts';
import type { Fault } from '../../system/faults/fault.ts';
import { readPorts } from '../api/live.ts';
import { FaultForm } from '../drawing/player/fault-form.tsx';
import '../drawing/player/player.css';
import { Button } from '../kit/button.tsx';
import { Choice } from '../kit/choice.tsx';
import { SelectField, TextField } from '../kit/fields.tsx';
import { ErrorMessage } from '../kit/message.tsx';
import { useLoaded } from '../kit/use-loaded.ts';
import { useText } from '../text/language.ts';

const OTHER = 'other address';
const SIMULATED = 'simulated car';
const BIT_RATES = [500_000, 250_000, 125_000, 1_000_000] as const;
const USUAL_BIT_RATE = 500_000;
type BitRate = (typeof BIT_RATES)[number];

export interface PortDraft {
  /** An address that was found, or one of the two words above. */
  readonly which: string;
  readonly address: string;
  readonly bitRate: BitRate;
  readonly layout: LayoutId;
  readonly fault: Fault | undefined;
}

const LEAK: Fault = { kind: 'leak', place: 'cap', size: 1e-3 };

export const emptyPort = (layout: LayoutId | undefined): PortDraft => ({
  which: '',
  address: '',
  bitRate: USUAL_BIT_RATE,
  layout: layout ?? 'engine-vacuum',
  fault: LEAK,
});

/** The request, once something is chosen. */
export function portOf({ which, address, bitRate, layout, fault }: PortDraft): LivePort | null {
  if (which === SIMULATED) return { kind: 'simulated', layout, ...(fault === undefined ? {} : { fault }) };
  const where = which === OTHER ? address.trim() : which;
  if (where === '') return null;
  return { kind: 'adapter', address: where, ...(bitRate === USUAL_BIT_RATE ? {} : { bitRate }) };
}

interface Props {
  readonly draft: PortDraft;
  readonly onChange: (draft: PortDraft) => void;
}

export function PortForm({ draft, onChange }: Props): ReactNode {
  const { live: text, trade } = useText();
  const [found, again] = useLoaded('ports', readPorts);
  const [sketch, setSketch] = useState<Fault | undefined>(undefined);
  if (found.state === 'failed') return <ErrorMessage error={found.error} onRetry={again} />;
  const ports = found.state === 'there' ? found.value.ports : [];
  const set = (change: Partial<PortDraft>): void => onChange({ ...draft, ...change });
  const setLayout = (layout: LayoutId): void => {
    const isThere = faultKindsOf(layout).some(({ kind }) => kind === draft.fault?.kind);
    set({ layout, fault: isThere ? draft.fault : undefined });
  };
  return (
    <div className="stack">
      <Choice
        label={text.port.legend}
        isStacked
        value={draft.which}
        options={[
          ...ports.map(({ address, kind, words }) => ({
            value: address,
            name: address,
            words: [text.port[kind], words].filter(Boolean).join(', '),
          })),
          { value: OTHER, name: text.port.other, words: text.port.otherWords },
          { value: SIMULATED, name: text.port.simulated, words: text.port.simulatedWords },
        ]}
        onChange={(which) => set({ which })}
      />
      <div className="row-head">
        <p className="small quiet" role="status">
          {found.state === 'loading'
            ? text.port.searching
            : !found.value.hasSerialLibrary
              ? text.port.noSerial
              : ports.length === 0
                ? text.port.none
                : ''}
        </p>
        <Button kind="bare" onClick={again}>
          {text.port.again}
        </Button>
      </div>
      {draft.which === OTHER && (
        <TextField
          label={text.port.address}
          hint={text.port.addressHint}
          value={draft.address}
          maxLength={200}
          spellCheck={false}
          onChange={(address) => set({ address })}
        />
      )}
      {draft.which !== SIMULATED && draft.which !== '' && (
        <SelectField
          label={text.port.bitRate}
          value={String(draft.bitRate)}
          options={BIT_RATES.map((rate) => ({
            value: String(rate),
            name: `${text.port.bitRateOf(String(rate / 1000))}${rate === USUAL_BIT_RATE ? ` (${text.port.bitRateUsual})` : ''}`,
          }))}
          onChange={(rate) => set({ bitRate: Number(rate) as BitRate })}
        />
      )}
      {draft.which === SIMULATED && (
        <>
          <SelectField
            label={text.port.layout}
            value={draft.layout}
            options={LAYOUTS.map((layout) => ({ value: layout, name: trade.layouts[layout].name }))}
            onChange={setLayout}
          />
          <FaultForm
            layout={draft.layout}
            closure="capped"
            fault={sketch ?? draft.fault}
            onSketch={setSketch}
            onChange={(fault) => {
              setSketch(undefined);
              set({ fault });
            }}
          />
        </>
      )}
      <p className="small quiet">{text.port.protocol}</p>
    </div>
  );
}
