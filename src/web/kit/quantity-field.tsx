import type { ReactNode } from 'react';
import { useText } from '../text/language.ts';
import { type ChosenQuantity, useUnits } from '../units/units.ts';
import { NumberField } from './fields.tsx';

interface Props {
  readonly label: string;
  readonly hint?: string;
  readonly error?: string | undefined;
  readonly quantity: ChosenQuantity;
  readonly valueSi: number | undefined;
  readonly onChange: (valueSi: number | undefined) => void;
  readonly readOnly?: boolean;
  readonly check?: (valueSi: number) => string | undefined;
}

/** More figures than are read: a number typed in one unit must come back the same after a look in another. */
const FIELD_DECIMALS = 4;

/** Typed in the unit chosen, handed on in SI. */
export function QuantityField({ quantity, valueSi, onChange, check, ...rest }: Props): ReactNode {
  const units = useUnits();
  const text = useText();
  return (
    <NumberField
      // Another unit is another text in the field.
      key={units.choice[quantity]}
      {...rest}
      unit={units.symbol(quantity)}
      decimals={FIELD_DECIMALS}
      value={valueSi === undefined ? undefined : units.from(quantity, valueSi)}
      notNumber={text.job.car.notNumber}
      {...(check === undefined ? {} : { check: (value: number) => check(units.to(quantity, value)) })}
      onChange={(value) => onChange(value === undefined ? undefined : units.to(quantity, value))}
    />
  );
}
