/** All scores of one set of answers: what the JSON line says, and what the table is printed from. */
import type { Answer } from './answers.ts';
import type { Parity } from './practice.ts';
import { accusedConfounders, bothInTop2, type FaultScores, scoreFaults } from './score-faults.ts';
import { type Size, type SizeScores, scoreSizes } from './score-sizes.ts';
import type { Bounds, Truth } from './truth.ts';

export interface Scores {
  readonly set: string;
  readonly only: Parity | 'all';
  readonly cases: number;
  readonly answered: number;
  readonly two_faults_both_in_top2: number | undefined;
  readonly confounders: { readonly n: number; readonly accused: number };
  readonly causes: Readonly<Record<string, FaultScores>>;
  /** By procedure and of both; `spreadsheet A` is the other method on the same recordings. */
  readonly sizes: Readonly<Record<string, SizeScores>>;
}

export interface ScoreInput {
  readonly set: string;
  readonly only: Parity | undefined;
  readonly truths: readonly Truth[];
  readonly bounds: Bounds;
  readonly answers: readonly Answer[];
  /** Sizes by the spreadsheet method for the cases of procedure A. */
  readonly spreadsheet: ReadonlyMap<string, Size>;
}

export function score(input: ScoreInput): Scores {
  const { truths, bounds } = input;
  const answers = new Map(input.answers.map((a) => [a.case, a]));
  const sizes = new Map(input.answers.flatMap((a) => (a.diameter_mm ? [[a.case, a.diameter_mm] as const] : [])));
  const of = (letter: string) => truths.filter((t) => t.procedure === letter);
  const letters = ['A', 'B', 'C', 'D'].filter((letter) => of(letter).length > 0);
  const sizedLetters = letters.filter((letter) => letter === 'A' || letter === 'B');
  return {
    set: input.set,
    only: input.only ?? 'all',
    cases: truths.length,
    answered: truths.filter((t) => answers.has(t.case)).length,
    two_faults_both_in_top2: bothInTop2(truths, answers),
    confounders: accusedConfounders(truths, answers),
    causes: {
      ...Object.fromEntries(letters.map((letter) => [letter, scoreFaults(of(letter), answers)])),
      all: scoreFaults(truths, answers),
    },
    sizes: {
      ...Object.fromEntries(sizedLetters.map((letter) => [letter, scoreSizes(of(letter), sizes, bounds)])),
      ...(sizedLetters.length > 0 && { all: scoreSizes(truths, sizes, bounds) }),
      ...(of('A').length > 0 && { 'spreadsheet A': scoreSizes(of('A'), input.spreadsheet, bounds) }),
    },
  };
}

/** The scores as one JSON line; numbers to five decimals, what there is none of is null. */
export function scoresLine(scores: object): string {
  return JSON.stringify(scores, (_, value: unknown) => {
    if (value === undefined) return null;
    return typeof value === 'number' ? Number(value.toFixed(5)) : value;
  });
}
