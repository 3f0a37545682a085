import { useMemo } from 'react';
import { type ReadinessFigures, readinessFigures } from '../../readiness/text/figures.ts';
import type { ReadinessWords } from '../../readiness/text/readiness-words.ts';
import { useSpoken } from '../text/language.ts';
import { NBSP } from '../text/unbroken.ts';
import { useUnits } from '../units/units.ts';

/** Words and figures of the readiness room in the language and units chosen. Who reads inches drives miles. */
export function useReadiness(): { readonly words: ReadinessWords; readonly figures: ReadinessFigures } {
  const { text, locale } = useSpoken();
  const { choice } = useUnits();
  const { temperature, length } = choice;
  const figures = useMemo(
    () =>
      readinessFigures({
        temperature,
        distance: length === 'in' ? 'mi' : 'km',
        decimalSign: new Intl.NumberFormat(locale).format(0.5).includes(',') ? ',' : '.',
        space: NBSP,
      }),
    [temperature, length, locale],
  );
  return { words: text.monitor.readiness, figures };
}

/** A time on a recording's clock: "0:10", "1:24:05". */
export function onClock(seconds: number): string {
  const whole = Math.max(0, Math.floor(seconds));
  const two = (value: number): string => String(value).padStart(2, '0');
  const hours = Math.floor(whole / 3600);
  const minutes = Math.floor((whole % 3600) / 60);
  return hours > 0 ? `${hours}:${two(minutes)}:${two(whole % 60)}` : `${minutes}:${two(whole % 60)}`;
}
