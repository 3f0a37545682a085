/** A hand-over with its words and numbers at hand: what every part of the sheet is written with. */
import type { Place } from '../../diagnosis/finding.ts';
import type { HandOver } from './hand-over.ts';
import { type Quantities, quantities } from './quantities.ts';
import { HAND_OVER_WORDS } from './words/languages.ts';
import type { HandOverWords } from './words/words.ts';

export interface Desk {
  readonly given: HandOver;
  readonly words: HandOverWords;
  readonly q: Quantities;
}

export function deskOf(given: HandOver): Desk {
  const words = HAND_OVER_WORDS[given.language];
  return { given, words, q: quantities(given.units, words.numbers) };
}

/** ISO 8601 to the minute; times are UTC throughout and say so where they stand. */
export const dayAndMinute = (moment: string): string => moment.slice(0, 16).replace('T', ' ');
export const day = (moment: string): string => moment.slice(0, 10);

export const placesOf = ({ words }: Desk, group: readonly Place[]): string => {
  const names = group.map((place) => words.places[place]);
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} ${words.or} ${names.at(-1)}`;
};

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
