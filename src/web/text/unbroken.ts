/** A number and its unit stay on one line, wherever a sentence breaks. */

export const NBSP = '\u00a0';

const UNITS = [
  '%',
  '°C',
  '°F',
  'K',
  'Pa',
  'hPa',
  'kPa',
  'mbar',
  'mmHg',
  'inH2O',
  'inH₂O',
  'psi',
  'mm',
  'cm',
  'm',
  'km',
  'mL',
  'L',
  'gal',
  'mg',
  'g',
  'kg',
  'ms',
  's',
  'min',
  'h',
  'V',
  'W',
  'Hz',
  'B',
  'kB',
  'MB',
];
/** "in" is a word of every second sentence; a unit is it where nothing follows that it could belong to. */
const GAP = new RegExp(`(?<=\\d) (?=(?:${UNITS.join('|')})(?![\\p{L}\\d])|in(?:$|[).,;:]))`, 'gu');

export const unbroken = (words: string): string => words.replace(GAP, NBSP);

/** A catalogue that says everything unbroken: its texts, and what its functions make. */
export function allUnbroken<T>(catalogue: T): T {
  if (typeof catalogue === 'string') return unbroken(catalogue) as T;
  if (typeof catalogue === 'function') {
    const say = catalogue as unknown as (...values: unknown[]) => unknown;
    const made = (...values: unknown[]): unknown => {
      const said = say(...values);
      return typeof said === 'string' ? unbroken(said) : said;
    };
    return made as T;
  }
  if (typeof catalogue !== 'object' || catalogue === null) return catalogue;
  if (Array.isArray(catalogue)) return catalogue.map(allUnbroken) as T;
  return Object.fromEntries(Object.entries(catalogue).map(([key, part]) => [key, allUnbroken(part)])) as T;
}
