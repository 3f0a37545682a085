/** Units as people spell them. */
import { type Quantity, UNITS, type Unit } from './unit-table.ts';

/** Whether a pressure is against ambient or against vacuum, when the spelling says so. */
export type PressureReference = 'gauge' | 'absolute';

/** A unit understood, or what was wrong with the text. */
export type ParsedUnit =
  | { readonly ok: true; readonly unit: Unit; readonly reference?: PressureReference }
  | { readonly ok: false; readonly problem: string };

/** One form for all spellings of a unit: compatibility characters folded, no spaces, dots or underscores. */
function plain(text: string): string {
  return text
    .replace(/[“”″]/g, '"')
    .normalize('NFKC')
    .replace(/[\s_·]/g, '')
    .replace(/(?<!\d)\.|\.(?!\d)/g, '')
    .replace(/[°º˚]/g, 'deg')
    .replace(/μ/g, 'µ');
}

const BY_CASE = new Map<string, Unit>();
const BY_LOWER = new Map<string, Unit>();
/** Spellings that only their case tells apart, as mPa and MPa: never matched without case. */
const CASE_MATTERS = new Set(['mpa']);

for (const unit of UNITS) {
  for (const spelling of [unit.symbol, ...unit.spellings]) {
    const key = plain(spelling);
    if (!BY_CASE.has(key)) BY_CASE.set(key, unit);
    const lower = key.toLowerCase();
    if (!CASE_MATTERS.has(lower) && !BY_LOWER.has(lower)) BY_LOWER.set(lower, unit);
  }
}

const REFERENCES: readonly (readonly [RegExp, PressureReference])[] = [
  [/\(?(?:gauge|gage|rel|relative)\)?$/i, 'gauge'],
  [/\((?:g)\)$|(?<=pa|psi|bar|h2o|hg)g$/i, 'gauge'],
  [/\(?(?:absolute|abs)\)?$/i, 'absolute'],
  [/\((?:a)\)$|(?<=pa|psi|bar|h2o|hg)a$/i, 'absolute'],
];

const find = (key: string): Unit | undefined => BY_CASE.get(key) ?? BY_LOWER.get(key.toLowerCase());

/**
 * Unit meant by a spelling, such as "in. H2O", "degF", "psig" or "kPa (abs)".
 *
 * Valid: one unit, without its number; a bare inch of water is the conventional one.
 * Source: the unit table.
 * @param text spelling as found [-]
 * @param quantity what must be measured, when that is known [-]
 * @returns the unit and the reference of a pressure, or what was wrong [-]
 */
export function parseUnit(text: string, quantity?: Quantity): ParsedUnit {
  const key = plain(text);
  const match = withReference(key);
  if (match === undefined) {
    return { ok: false, problem: `"${text.trim()}" is no unit known here; expected ${expected(quantity)}` };
  }
  if (quantity !== undefined && match.unit.quantity !== quantity) {
    const found = `"${text.trim()}" is a unit of ${match.unit.quantity}`;
    return { ok: false, problem: `${found}; expected a unit of ${quantity}: ${expected(quantity)}` };
  }
  return { ok: true, ...match };
}

function withReference(key: string): { unit: Unit; reference?: PressureReference } | undefined {
  const whole = find(key);
  if (whole !== undefined) return { unit: whole };
  for (const [pattern, reference] of REFERENCES) {
    if (!pattern.test(key)) continue;
    const unit = find(key.replace(pattern, ''));
    if (unit?.quantity === 'pressure') return { unit, reference };
  }
  return undefined;
}

function expected(quantity: Quantity | undefined): string {
  if (quantity === undefined) return 'a unit such as kPa, inH2O, °C, mm, L/min or %';
  return UNITS.filter((unit) => unit.quantity === quantity)
    .map((unit) => unit.symbol)
    .join(', ');
}

/**
 * Row of the unit table by its printed symbol, for use in code; throws when there is none.
 *
 * Valid: symbols of the table, with their case.
 * Source: the unit table.
 * @param symbol printed symbol [-]
 * @returns the unit [-]
 */
export function unitBySymbol(symbol: string): Unit {
  const unit = UNITS.find((candidate) => candidate.symbol === symbol);
  if (unit === undefined) throw new RangeError(`no unit with the symbol ${symbol} in the unit table`);
  return unit;
}
