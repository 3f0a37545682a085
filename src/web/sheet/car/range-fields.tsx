import { type ReactNode, useEffect, useRef, useState } from 'react';
import { QuantityField } from '../../kit/quantity-field.tsx';
import type { ChosenQuantity } from '../../units/units.ts';

interface Range {
  readonly low: number;
  readonly high: number;
}

interface Props {
  readonly quantity: ChosenQuantity;
  readonly lowLabel: string;
  readonly highLabel: string;
  readonly hint?: string;
  readonly value: Range | undefined;
  readonly onChange: (range: Range | undefined) => void;
  readonly needsBoth: string;
  /** Words when the two ends do not fit. */
  readonly check: (range: Range) => string | undefined;
}

/** Two ends that only mean something together: handed on when both are there and fit. */
export function RangeFields({
  quantity,
  lowLabel,
  highLabel,
  hint,
  value,
  onChange,
  needsBoth,
  check,
}: Props): ReactNode {
  const [low, setLow] = useState(value?.low);
  const [high, setHigh] = useState(value?.high);
  const last = useRef(value);
  useEffect(() => {
    if (value?.low === last.current?.low && value?.high === last.current?.high) return;
    last.current = value;
    setLow(value?.low);
    setHigh(value?.high);
  }, [value]);
  const take = (nextLow: number | undefined, nextHigh: number | undefined): void => {
    setLow(nextLow);
    setHigh(nextHigh);
    if ((nextLow === undefined) !== (nextHigh === undefined)) return;
    const range = nextLow === undefined || nextHigh === undefined ? undefined : { low: nextLow, high: nextHigh };
    if (range !== undefined && check(range) !== undefined) return;
    last.current = range;
    onChange(range);
  };
  const error =
    low === undefined && high === undefined
      ? undefined
      : low === undefined || high === undefined
        ? needsBoth
        : check({ low, high });
  return (
    <>
      <QuantityField
        label={lowLabel}
        {...(hint === undefined ? {} : { hint })}
        quantity={quantity}
        valueSi={low}
        onChange={(next) => take(next, high)}
      />
      <QuantityField
        label={highLabel}
        error={error}
        quantity={quantity}
        valueSi={high}
        onChange={(next) => take(low, next)}
      />
    </>
  );
}
