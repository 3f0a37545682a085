import { type ReactNode, useMemo, useState } from 'react';
import { keep, readKept, useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import {
  LENGTH_UNITS,
  METRIC,
  PRESSURE_UNITS,
  TEMPERATURE_UNITS,
  type UnitChoice,
  UnitsContext,
  unitsOf,
  VOLUME_UNITS,
} from './units.ts';

const KEY = 'vaporwright.units';

const oneOf = <T extends string>(names: readonly T[], value: unknown, otherwise: T): T =>
  names.find((name) => name === value) ?? otherwise;

function remembered(): UnitChoice {
  let kept: Partial<Record<keyof UnitChoice, unknown>> = {};
  try {
    kept = JSON.parse(readKept(KEY) ?? '{}') ?? {};
  } catch {
    // Written by something else: start from the metric units.
  }
  return {
    pressure: oneOf(PRESSURE_UNITS, kept.pressure, METRIC.pressure),
    length: oneOf(LENGTH_UNITS, kept.length, METRIC.length),
    temperature: oneOf(TEMPERATURE_UNITS, kept.temperature, METRIC.temperature),
    volume: oneOf(VOLUME_UNITS, kept.volume, METRIC.volume),
  };
}

export function UnitsProvider({ children }: { readonly children: ReactNode }): ReactNode {
  const [choice, setChoice] = useState(remembered);
  const { fixed } = useNumbers();
  const { to } = useText().common;
  const units = useMemo(
    () =>
      unitsOf(
        choice,
        (change) =>
          setChoice((before) => {
            const after = { ...before, ...change };
            keep(KEY, JSON.stringify(after));
            return after;
          }),
        fixed,
        to,
      ),
    [choice, fixed, to],
  );
  return <UnitsContext value={units}>{children}</UnitsContext>;
}
