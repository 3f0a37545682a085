/** What every column holds, in which unit, against which zero, and why that was guessed. */
import type { ReactNode } from 'react';
import type { ColumnMapping, Mapping } from '../../recording/mapping.ts';
import { CHANNEL_ORDER } from '../../recording/own-columns.ts';
import type { ChannelName } from '../../recording/recording.ts';
import { Check } from '../kit/choice.tsx';
import { SelectField } from '../kit/fields.tsx';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { shownSymbol } from '../units/units.ts';
import { isPressure, isSwitch, setChannel, setColumn, unitsFor } from './mapping-draft.ts';

interface Props {
  readonly mapping: Mapping;
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly isReadOnly: boolean;
  readonly onChange: (mapping: Mapping) => void;
}

const EXAMPLES = 3;

export function MappingColumns({ mapping, header, rows, isReadOnly, onChange }: Props): ReactNode {
  const { recording } = useText();
  const channels = [
    { value: '', name: recording.mapping.leftOut },
    ...CHANNEL_ORDER.map((value) => ({ value: value as string, name: recording.channels[value] })),
  ];
  return (
    <ul className="mapping-columns">
      {mapping.columns.map((each) => {
        const at = header.indexOf(each.column);
        const examples = rows.slice(0, EXAMPLES).map((row) => row[at] ?? '');
        return (
          <li key={each.column}>
            <p className="column-name">
              <b>{each.column}</b> <span className="quiet small">{examples.filter(Boolean).join(' · ')}</span>
            </p>
            <SelectField
              label={recording.mapping.channelOf(each.column)}
              value={each.channel ?? ''}
              options={channels}
              disabled={isReadOnly}
              onChange={(value) =>
                onChange(setChannel(mapping, each.column, value === '' ? null : (value as ChannelName)))
              }
            />
            <UnitAndZero
              column={each}
              isReadOnly={isReadOnly}
              onChange={(change) => onChange(setColumn(mapping, each.column, change))}
            />
            <Reasons column={each} />
          </li>
        );
      })}
    </ul>
  );
}

interface UnitProps {
  readonly column: ColumnMapping;
  readonly isReadOnly: boolean;
  readonly onChange: (change: Partial<ColumnMapping>) => void;
}

function UnitAndZero({ column, isReadOnly, onChange }: UnitProps): ReactNode {
  const { recording } = useText();
  const text = recording.mapping;
  const { channel, unit } = column;
  if (channel === null) return null;
  if (isSwitch(channel))
    return (
      <Check
        label={text.invertedOf(column.column)}
        checked={column.inverted ?? false}
        disabled={isReadOnly}
        onChange={(inverted) => onChange({ inverted })}
      />
    );
  const known = unitsFor(channel);
  const symbols = unit === undefined || known.includes(unit) ? known : [unit, ...known];
  return (
    <>
      <SelectField
        label={text.unitOf(column.column)}
        value={unit ?? ''}
        disabled={isReadOnly}
        options={[
          ...(unit === undefined ? [{ value: '', name: text.guessUnit }] : []),
          ...symbols.map((value) => ({ value, name: shownSymbol(value) })),
        ]}
        onChange={(value) => onChange({ unit: value })}
      />
      {isPressure(channel) && channel !== 'barometricPa' && channel !== 'manifoldAbsPa' && (
        <SelectField
          label={text.referenceOf(column.column)}
          value={column.reference ?? 'gauge'}
          disabled={isReadOnly}
          options={(['gauge', 'absolute'] as const).map((value) => ({ value, name: text.references[value] }))}
          onChange={(reference) => onChange({ reference })}
        />
      )}
    </>
  );
}

function Reasons({ column }: { readonly column: ColumnMapping }): ReactNode {
  const { recording } = useText();
  const { percent } = useNumbers();
  const reasons = (column.reasons ?? []).map(recording.said);
  if (reasons.length === 0) return null;
  const sure =
    column.confidence === undefined || column.channel === null
      ? ''
      : ` (${recording.mapping.sure(percent(column.confidence))})`;
  return (
    <p className="small quiet reasons">
      {recording.mapping.why}: {reasons.join('; ')}
      {sure}
    </p>
  );
}
