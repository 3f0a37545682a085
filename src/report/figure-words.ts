/** Language and unit of the letters in a figure; without them a figure speaks English and kilopascal. */
import type { PhaseKind } from '../recording/recording.ts';
import { fixed, wholePercent } from './numbers.ts';
import { PHASE_WORDS } from './words.ts';

export interface FigureWords {
  readonly phase: (kind: PhaseKind) => string;
  readonly purge: string;
  readonly vent: string;
  readonly purgeUpTo: (duty: number) => string;
  readonly pressureUnit: string;
  readonly pascalPerUnit: number;
  /** A number as the language writes it. */
  readonly number: (value: number, decimals: number) => string;
}

export const ENGLISH_FIGURES: FigureWords = {
  phase: (kind) => PHASE_WORDS[kind],
  purge: 'purge',
  vent: 'vent',
  purgeUpTo: (duty) => `purge up to ${wholePercent(duty)}`,
  pressureUnit: 'kPa',
  pascalPerUnit: 1000,
  number: fixed,
};
