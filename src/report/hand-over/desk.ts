/** A hand-over with its words and numbers at hand: what every part of the sheet is written with. */
import type { ProofSay } from '../../checks/proof/words.ts';
import { DE } from '../../checks/text/de.ts';
import { EN } from '../../checks/text/en.ts';
import type { ChecksText } from '../../checks/text/text.ts';
import type { Place } from '../../diagnosis/finding.ts';
import { textInUnits } from '../../units/text-in-units.ts';
import type { HandOver, HandOverLanguage } from './hand-over.ts';
import { type Quantities, quantities } from './quantities.ts';
import { HAND_OVER_WORDS } from './words/languages.ts';
import type { HandOverWords } from './words/words.ts';

export interface Desk {
  readonly given: HandOver;
  readonly words: HandOverWords;
  /** Names of checks and root causes, sentences of the proof. */
  readonly checks: ChecksText;
  readonly q: Quantities;
}

const CHECKS: Readonly<Record<HandOverLanguage, ChecksText>> = { en: EN, de: DE };

export function deskOf(given: HandOver): Desk {
  const words = HAND_OVER_WORDS[given.language];
  return { given, words, checks: CHECKS[given.language], q: quantities(given.units, words.numbers) };
}

/** Typical values within a sentence, in the units of the document. */
export const inUnits = ({ given, q }: Desk, text: string): string =>
  textInUnits(text, {
    pressure: given.units.pressure,
    length: given.units.length,
    temperature: given.units.temperature === 'degC' ? '°C' : '°F',
    number: q.number,
    symbol: (unit) => unit,
  });

/** ISO 8601 to the minute; times are UTC throughout and say so where they stand. */
export const dayAndMinute = (moment: string): string => moment.slice(0, 16).replace('T', ' ');
export const day = (moment: string): string => moment.slice(0, 10);

const joined = (names: readonly string[], last: string): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} ${last} ${names.at(-1)}`;

export const placesOf = ({ words }: Desk, group: readonly Place[]): string =>
  joined(
    group.map((place) => words.places[place]),
    words.or,
  );

/** How this document writes figures and names into the sentences of the proof. */
export const proofSay = ({ words, checks, q }: Desk): ProofSay => ({
  condition(compared, side) {
    if (compared.what === 'method') {
      const procedures: Readonly<Record<string, string>> = words.procedures;
      return procedures[compared[side]] ?? checks.checks[compared[side]]?.name ?? compared[side];
    }
    if (compared.what === 'volatility') {
      const range = compared[side];
      return range && q.airPressureRange(range);
    }
    const value = compared[side];
    if (value === undefined) return undefined;
    return compared.what === 'fuel level' ? q.percent(value) : q.temperature(value);
  },
  percent: q.percent,
  diameter: q.diameter,
  cause: (id) => checks.causes[id],
  list: (names) => joined(names, words.and),
});

/** "0.020 in (0.50 mm)": a limit under its own label, with its diameter in the reader's unit where the label has another. */
export const limitName = (
  { given, q }: Desk,
  limit: { readonly label: string; readonly diameterMm: number },
): string =>
  given.units.length === 'in' && /\bin$/.test(limit.label)
    ? limit.label
    : `${limit.label} (${q.diameter(limit.diameterMm)})`;

/** The car as people call it, with its registration. */
export const carName = ({ given }: Desk): string =>
  [given.vehicle.name || given.car?.label || '', given.vehicle.registration ?? '']
    .filter((part) => part !== '')
    .join(', ');
