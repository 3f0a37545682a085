/** What the technician knows of a recording and no channel carries. */
import { type ReactNode, useState } from 'react';
import type { RecordingEntry } from '../../jobs/record/job.ts';
import { PROCEDURES } from '../../recording/recording.ts';
import { Button } from '../kit/button.tsx';
import { NumberField, parseTyped, SelectField, TextField } from '../kit/fields.tsx';
import { QuantityField } from '../kit/quantity-field.tsx';
import { useText } from '../text/language.ts';
import { useUnits } from '../units/units.ts';
import { useEntry, without } from './use-entry.ts';

type Facts = NonNullable<RecordingEntry['facts']>;

const SECONDS_PER_MINUTE = 60;

export function FactsEditor({ entry }: { readonly entry: RecordingEntry }): ReactNode {
  const { recording, trade, live } = useText();
  const units = useUnits();
  const text = recording.facts;
  const { isReadOnly, change } = useEntry(entry.id);
  const facts: Facts = entry.facts ?? {};
  /** Absent stays absent, and a record with no fact has no facts. */
  function set<Key extends keyof Facts>(key: Key, value: Facts[Key] | undefined): void {
    change((before) => {
      const rest = without(before.facts ?? {}, key);
      const next = (value === undefined ? rest : { ...rest, [key]: value }) as Facts;
      return Object.keys(next).length === 0 ? without(before, 'facts') : { ...before, facts: next };
    });
  }
  const positive = (value: number): string | undefined => (value > 0 ? undefined : text.mustBePositive);
  const isFilling = facts.procedure === undefined || facts.procedure === 'refuelling';
  const isDraw = facts.procedure === undefined || facts.procedure === 'vacuum-draw';
  return (
    <div className="stack">
      <p className="quiet">{text.words}</p>
      <div className="fields">
        <SelectField
          label={text.procedure}
          value={facts.procedure ?? ''}
          disabled={isReadOnly}
          options={[
            { value: '', name: text.found('').replace(/: $/, '') },
            ...PROCEDURES.map((value) => ({ value: value as string, name: trade.procedures[value] })),
          ]}
          onChange={(value) => set('procedure', value === '' ? undefined : (value as Facts['procedure']))}
        />
        {isDraw && (
          <>
            <QuantityField
              label={text.drawTarget}
              hint={text.drawTargetHint}
              quantity="pressure"
              valueSi={facts.drawTargetGaugePa}
              readOnly={isReadOnly}
              check={(value) => (value < 0 ? undefined : text.mustBeNegative)}
              onChange={(value) => set('drawTargetGaugePa', value)}
            />
            <NumberField
              label={text.drawTimeOut}
              unit="s"
              value={facts.drawTimeOutS}
              readOnly={isReadOnly}
              notNumber={text.badNumber}
              check={positive}
              onChange={(value) => set('drawTimeOutS', value)}
            />
          </>
        )}
        {isFilling && (
          <>
            <QuantityField
              // Per minute in the unit of volume chosen; SI is per second.
              label={`${text.fillFlow} (${text.perMinute})`}
              quantity="volume"
              valueSi={facts.fillFlowM3PerS === undefined ? undefined : facts.fillFlowM3PerS * SECONDS_PER_MINUTE}
              readOnly={isReadOnly}
              check={positive}
              onChange={(value) => set('fillFlowM3PerS', value === undefined ? undefined : value / SECONDS_PER_MINUTE)}
            />
            <QuantityField
              label={text.filled}
              quantity="volume"
              valueSi={facts.filledM3}
              readOnly={isReadOnly}
              check={positive}
              onChange={(value) => set('filledM3', value)}
            />
            <ShutOffs
              key={`${entry.id}${units.choice.volume}`}
              value={facts.shutOffTimesS}
              readOnly={isReadOnly}
              onChange={(value) => set('shutOffTimesS', value)}
            />
          </>
        )}
      </div>
      {facts.ventShutS !== undefined && (
        <div className="row-head">
          <p>{live.vent.counted(facts.ventShutS.length)}</p>
          {!isReadOnly && (
            <Button kind="bare" onClick={() => set('ventShutS', undefined)}>
              {live.vent.forget}
            </Button>
          )}
        </div>
      )}
    </div>
  );
}

interface ShutOffsProps {
  readonly value: readonly number[] | undefined;
  readonly readOnly: boolean;
  readonly onChange: (value: number[] | undefined) => void;
}

function ShutOffs({ value, readOnly, onChange }: ShutOffsProps): ReactNode {
  const { recording } = useText();
  const [typed, setTyped] = useState(() => (value ?? []).join(' '));
  const [error, setError] = useState<string | undefined>(undefined);
  return (
    <TextField
      label={recording.facts.shutOffs}
      hint={recording.facts.shutOffsHint}
      error={error}
      value={typed}
      readOnly={readOnly}
      onChange={(next) => {
        setTyped(next);
        const numbers = next
          .split(/[\s;]+/)
          .filter((part) => part !== '')
          .map(parseTyped);
        const isRead = numbers.every((each): each is number => typeof each === 'number');
        setError(isRead ? undefined : recording.facts.badNumber);
        if (isRead) onChange(numbers.length === 0 ? undefined : numbers);
      }}
    />
  );
}
