import { useMemo } from 'react';
import type { FieldsText } from '../../text/fields.en.ts';
import { useText } from '../../text/language.ts';
import { useNumbers } from '../../text/numbers.ts';
import { useLate } from '../../text/use-late.ts';
import { useUnits } from '../../units/units.ts';
import { useSheet } from '../sheet-context.ts';
import { lineWordsOf } from './line-words.ts';
import type { LineWords } from './section-lines.ts';

const LOAD = {
  en: async (): Promise<FieldsText> => (await import('../../text/fields.en.ts')).FIELDS_EN,
  de: async (): Promise<FieldsText> => (await import('../../text/fields.de.ts')).FIELDS_DE,
};

/** Undefined until the names of the fields have come. */
export function useLineWords(): LineWords | undefined {
  const fields = useLate(LOAD);
  const { job } = useSheet();
  const text = useText();
  const numbers = useNumbers();
  const units = useUnits();
  return useMemo(() => {
    if (fields === undefined) return undefined;
    const recordings = new Map(job.recordings.map(({ id, label }) => [id, label]));
    return lineWordsOf({ fields, text, numbers, units, recordings });
  }, [fields, text, numbers, units, job.recordings]);
}
