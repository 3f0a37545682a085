export type DecimalMark = '.' | ',';

/** Powers of ten that a double holds exactly; dividing an exact integer by one of them rounds correctly. */
const EXACT_POWERS = Float64Array.from({ length: 23 }, (_, i) => Number(`1e${i}`));
const LARGEST_EXACT_INTEGER = 2 ** 53;
const WHOLE_NUMBER_TEXT = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;

const isSpace = (code: number): boolean => code === 32 || code === 9 || code === 13 || code === 160;

function parseSlowly(text: string, decimal: DecimalMark): number {
  let plain = text.trim();
  if (decimal === ',') {
    if (plain.includes('.')) return Number.NaN;
    plain = plain.replace(',', '.');
  }
  return WHOLE_NUMBER_TEXT.test(plain) ? Number(plain) : Number.NaN;
}

/**
 * Reads a decimal number exactly as `Number` would, several times faster for the short numbers of a
 * recording. NaN when the text is not one number: there are no thousands separators, no units, no words.
 */
export function parseDecimal(text: string, decimal: DecimalMark): number {
  const mark = decimal === '.' ? 46 : 44;
  let end = text.length;
  let at = 0;
  while (at < end && isSpace(text.charCodeAt(at))) at++;
  while (end > at && isSpace(text.charCodeAt(end - 1))) end--;
  let negative = false;
  const first = at < end ? text.charCodeAt(at) : 0;
  if (first === 45 || first === 43) {
    negative = first === 45;
    at++;
  }
  let mantissa = 0;
  let digits = 0;
  let decimals = -1;
  for (; at < end; at++) {
    const code = text.charCodeAt(at);
    const digit = code - 48;
    if (digit >= 0 && digit <= 9) {
      mantissa = mantissa * 10 + digit;
      digits++;
      if (decimals >= 0) decimals++;
    } else if (code === mark && decimals < 0) decimals = 0;
    else if (digits > 0 && (code === 69 || code === 101)) return parseSlowly(text, decimal);
    else return Number.NaN;
  }
  if (digits === 0) return Number.NaN;
  if (mantissa >= LARGEST_EXACT_INTEGER || decimals >= EXACT_POWERS.length) return parseSlowly(text, decimal);
  const size = decimals > 0 ? mantissa / EXACT_POWERS[decimals]! : mantissa;
  return negative ? -size : size;
}

/** Cells that say "nothing was measured". */
const MISSING_WORDS = new Set([
  '',
  '-',
  '--',
  '---',
  'nan',
  'n/a',
  'na',
  'null',
  'none',
  'no data',
  'nodata',
  '?',
  '*',
]);

export function isMissing(text: string): boolean {
  return text.length < 12 && MISSING_WORDS.has(text.trim().toLowerCase());
}
