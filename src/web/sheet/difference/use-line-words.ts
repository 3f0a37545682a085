import { useMemo } from 'react';
import { useText } from '../../text/language.ts';
import { useNumbers } from '../../text/numbers.ts';
import { useUnits } from '../../units/units.ts';
import { useSheet } from '../sheet-context.ts';
import { lineWordsOf } from './line-words.ts';
import type { LineWords } from './section-lines.ts';

export function useLineWords(): LineWords {
  const { job } = useSheet();
  const text = useText();
  const numbers = useNumbers();
  const units = useUnits();
  return useMemo(
    () =>
      lineWordsOf({ text, numbers, units, recordings: new Map(job.recordings.map(({ id, label }) => [id, label])) }),
    [text, numbers, units, job.recordings],
  );
}
