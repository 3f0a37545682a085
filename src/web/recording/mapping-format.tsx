/** How the text of the file is cut into cells, and where its time stands. */
import type { ReactNode } from 'react';
import { DATE_ORDERS, DELIMITERS, type Mapping, TIME_FORMATS } from '../../recording/mapping.ts';
import { NumberField, SelectField } from '../kit/fields.tsx';
import { QuantityField } from '../kit/quantity-field.tsx';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { setTime } from './mapping-draft.ts';
import { without } from './use-entry.ts';

interface Props {
  readonly mapping: Mapping;
  readonly header: readonly string[];
  readonly isReadOnly: boolean;
  readonly onChange: (mapping: Mapping) => void;
}

const DECIMALS = ['.', ','] as const;

export function MappingFormat({ mapping, header, isReadOnly, onChange }: Props): ReactNode {
  const { recording } = useText();
  const { percent } = useNumbers();
  const text = recording.mapping;
  const { time } = mapping;
  const headers = header.map((name) => ({ value: name, name }));
  const isDated = time?.format === 'date-time';
  const needsAmbient = mapping.columns.some(
    ({ channel, reference }) => reference === 'absolute' && channel !== 'barometricPa' && channel !== 'manifoldAbsPa',
  );
  return (
    <>
      <div className="fields">
        <SelectField
          label={text.timeColumn}
          value={time?.columns[0] ?? ''}
          disabled={isReadOnly}
          options={time === undefined ? [{ value: '', name: text.noColumn }, ...headers] : headers}
          onChange={(name) => onChange(setTime(mapping, header, { columns: [name] }))}
        />
        <SelectField
          label={text.timeFormat}
          value={time?.format ?? 'seconds'}
          disabled={isReadOnly || time === undefined}
          options={TIME_FORMATS.map((value) => ({ value, name: text.timeFormats[value] }))}
          onChange={(format) => onChange(setTime(mapping, header, { format }))}
        />
        {isDated && (
          <>
            <SelectField
              label={text.dateOrder}
              value={time?.dateOrder ?? 'year-first'}
              disabled={isReadOnly}
              options={DATE_ORDERS.map((value) => ({ value, name: text.dateOrders[value] }))}
              onChange={(dateOrder) => onChange(setTime(mapping, header, { dateOrder }))}
            />
            <SelectField
              label={text.clockColumn}
              value={time?.columns[1] ?? ''}
              disabled={isReadOnly}
              options={[{ value: '', name: text.noColumn }, ...headers]}
              onChange={(name) =>
                onChange(
                  setTime(mapping, header, { columns: [time?.columns[0] ?? '', ...(name === '' ? [] : [name])] }),
                )
              }
            />
          </>
        )}
        <SelectField
          label={text.delimiter}
          value={mapping.delimiter ?? ','}
          disabled={isReadOnly}
          options={DELIMITERS.map((value) => ({ value, name: text.delimiters[value] }))}
          onChange={(delimiter) => onChange({ ...mapping, delimiter })}
        />
        <SelectField
          label={text.decimal}
          value={mapping.decimal ?? '.'}
          disabled={isReadOnly}
          options={DECIMALS.map((value) => ({ value, name: text.decimals[value] }))}
          onChange={(decimal) => onChange({ ...mapping, decimal })}
        />
        <NumberField
          label={text.headerLine}
          hint={text.headerHint}
          value={mapping.headerLine}
          decimals={0}
          readOnly={isReadOnly}
          notNumber={recording.facts.badNumber}
          check={(value) => (Number.isInteger(value) && value >= 0 ? undefined : recording.facts.badNumber)}
          onChange={(headerLine) =>
            onChange(headerLine === undefined ? without(mapping, 'headerLine') : { ...mapping, headerLine })
          }
        />
        {needsAmbient && (
          <QuantityField
            label={text.barometric}
            quantity="pressure"
            valueSi={mapping.barometricAbsPa}
            readOnly={isReadOnly}
            check={(value) => (value > 0 ? undefined : recording.facts.mustBePositive)}
            onChange={(barometricAbsPa) =>
              onChange(
                barometricAbsPa === undefined ? without(mapping, 'barometricAbsPa') : { ...mapping, barometricAbsPa },
              )
            }
          />
        )}
      </div>
      {time?.reasons !== undefined && time.reasons.length > 0 && (
        <p className="small quiet">
          {text.timeColumn}:{' '}
          {time.reasons
            .filter((reason) => reason !== '')
            .map(recording.said)
            .join('; ')}
          {time.confidence === undefined ? '' : ` (${text.sure(percent(time.confidence))})`}
        </p>
      )}
    </>
  );
}
