import { useCallback, useMemo } from 'react';
import { textInUnits } from '../../units/text-in-units.ts';
import { useNumbers } from '../text/numbers.ts';
import { shownSymbol, useUnits } from './units.ts';

/** Says typical values in prose in the units chosen. */
export function useInUnits(): (text: string) => string {
  const { choice } = useUnits();
  const { fixed } = useNumbers();
  return useCallback(
    (text) =>
      textInUnits(text, {
        pressure: choice.pressure,
        length: choice.length,
        temperature: choice.temperature,
        number: fixed,
        symbol: shownSymbol,
      }),
    [choice, fixed],
  );
}

/** The same for every text of a catalogue. */
export function useAllInUnits<T>(catalogue: T): T {
  const say = useInUnits();
  return useMemo(() => allSaid(catalogue, say), [catalogue, say]);
}

export function allSaid<T>(catalogue: T, say: (text: string) => string): T {
  if (typeof catalogue === 'string') return say(catalogue) as T;
  if (typeof catalogue !== 'object' || catalogue === null) return catalogue;
  if (Array.isArray(catalogue)) return catalogue.map((part) => allSaid(part, say)) as T;
  return Object.fromEntries(Object.entries(catalogue).map(([key, part]) => [key, allSaid(part, say)])) as T;
}
