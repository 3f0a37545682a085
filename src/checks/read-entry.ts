/** A result as entered, checked and turned into weights; refused with the field, what was found and what was expected. */
import { fromSi } from '../units/convert.ts';
import { parseQuantity } from '../units/parse-quantity.ts';
import { UNITS } from '../units/unit-table.ts';
import { choiceWeights, type ResultWeights } from './belief.ts';
import { checkById } from './catalogue/all.ts';
import type { Check, NumberField } from './check.ts';
import { contradictions } from './likelihood/contradictions.ts';
import { type Meaning, NUMERIC, type Readings } from './likelihood/numeric.ts';

/** An outcome by name, or numbers with their units as typed, by field ("0.46 L/min"). */
export type CheckEntry = { readonly outcome: string } | { readonly numbers: Readonly<Record<string, string>> };

export interface EntryProblem {
  readonly field?: string;
  readonly text: string;
}

export type ReadEntry =
  | { readonly ok: true; readonly weights: ResultWeights; readonly readings?: Readings; readonly meaning?: Meaning }
  | { readonly ok: false; readonly problems: readonly EntryProblem[] };

const unitOf = (field: NumberField) =>
  UNITS.find((unit) => unit.quantity === field.quantity && [unit.symbol, ...unit.spellings].includes(field.unit));

const shown = (field: NumberField, valueSi: number): string => {
  const unit = unitOf(field);
  return unit ? `${Number(fromSi(valueSi, unit).toPrecision(3))} ${unit.symbol}` : String(valueSi);
};

/** "OL", "O.L", "0L" or the sign for it. */
const OVERLOAD = /^\s*(?:[o0]\.?l\.?|∞)\s*$/i;

function readNumber(field: NumberField, text: string | undefined): number | EntryProblem | undefined {
  if (text === undefined || text.trim() === '') {
    return field.optional
      ? undefined
      : { field: field.id, text: `${field.id}: nothing entered, expected a number with its unit (${field.unit})` };
  }
  // what a meter shows across an open coil is a reading, though no number
  if (field.quantity === 'resistance' && OVERLOAD.test(text)) return field.most;
  const parsed = parseQuantity(text, field.quantity);
  if (!parsed.ok) return { field: field.id, text: `${field.id}: ${parsed.problem}` };
  const { valueSi } = parsed;
  if (!Number.isFinite(valueSi) || valueSi < field.least || valueSi > field.most) {
    const signIsWrong = -valueSi >= field.least && -valueSi <= field.most;
    return {
      field: field.id,
      text: `${field.id}: found "${text.trim()}", expected ${shown(field, field.least)} to ${shown(field, field.most)}; ${
        signIsWrong ? 'is the sign right? Vacuum is negative, pressure positive' : 'is the unit right?'
      }`,
    };
  }
  return valueSi;
}

function readNumbers(check: Check, typed: Readonly<Record<string, string>>): ReadEntry {
  const { numbers } = check;
  if (!numbers) {
    return {
      ok: false,
      problems: [{ text: `${check.id} takes one of: ${check.outcomes.map((o) => o.id).join(', ')}; found numbers` }],
    };
  }
  const unknown = Object.keys(typed).filter((id) => !numbers.fields.some((field) => field.id === id));
  const problems: EntryProblem[] = unknown.map((id) => ({
    field: id,
    text: `"${id}" is not asked for; expected ${numbers.fields.map((field) => field.id).join(', ')}`,
  }));
  const readings: Record<string, number> = {};
  for (const field of numbers.fields) {
    const read = readNumber(field, typed[field.id]);
    if (typeof read === 'number') readings[field.id] = read;
    else if (read !== undefined) problems.push(read);
  }
  if (problems.length === 0) problems.push(...contradictions(numbers.likelihood, readings));
  if (problems.length > 0) return { ok: false, problems };
  const meaning = NUMERIC[numbers.likelihood](readings);
  return { ok: true, weights: meaning, readings, meaning };
}

/** Throws only on a check that does not exist. */
export function readEntry(checkId: string, entry: CheckEntry): ReadEntry {
  const check = checkById(checkId);
  if ('numbers' in entry) return readNumbers(check, entry.numbers);
  try {
    return { ok: true, weights: choiceWeights(checkId, entry.outcome) };
  } catch (error) {
    return { ok: false, problems: [{ text: error instanceof Error ? error.message : String(error) }] };
  }
}
