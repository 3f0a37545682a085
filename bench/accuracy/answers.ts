/** One answer a case: probabilities of the causes and, where the procedure can size a hole, its diameter. */
import { z } from 'zod';
import type { CauseId, Finding, Interval } from '../../src/diagnosis/finding.ts';
import { CLASSES } from './classes.ts';
import { readJsonLines } from './truth.ts';

export interface Answer {
  readonly case: string;
  /** Letter of the procedure; absent where the case could not be read. */
  readonly procedure?: string;
  readonly fault_probabilities: Readonly<Partial<Record<CauseId, number>>>;
  readonly diameter_mm?: Interval;
}

/** Procedures in which diameters are marked. */
const SIZED_LETTERS = ['A', 'B'];

export function answerFrom(name: string, letter: string, finding: Finding): Answer {
  if (finding.causes.length === 0) {
    throw new Error(`no cause was weighed: ${finding.warnings.join('; ') || 'the finding gives no reason'}`);
  }
  const total = finding.causes.reduce((sum, cause) => sum + cause.probability, 0);
  if (!Number.isFinite(total) || total <= 0) throw new Error(`the probabilities add up to ${total}`);
  const given = new Map(finding.causes.map((cause) => [cause.id, cause.probability]));
  const d = SIZED_LETTERS.includes(letter) ? finding.diameterMm : null;
  return {
    case: name,
    procedure: letter,
    fault_probabilities: Object.fromEntries(CLASSES.map((id) => [id, (given.get(id) ?? 0) / total])),
    ...(d && isInterval(d) && { diameter_mm: { median: d.median, lo90: d.lo90, hi90: d.hi90 } }),
  };
}

const isInterval = (d: Interval) => [d.median, d.lo90, d.hi90].every(Number.isFinite);

/** The answer of one who knows nothing, for a case that could not be read or diagnosed. */
export function uniformAnswer(name: string, letter: string | undefined): Answer {
  return {
    case: name,
    ...(letter !== undefined && { procedure: letter }),
    fault_probabilities: Object.fromEntries(CLASSES.map((id) => [id, 1 / CLASSES.length])),
  };
}

export const answersText = (answers: readonly Answer[]): string =>
  answers.map((answer) => `${JSON.stringify(answer)}\n`).join('');

const answerSchema = z.object({
  case: z.string(),
  procedure: z.string().optional(),
  fault_probabilities: z.partialRecord(z.enum(CLASSES as readonly [CauseId, ...CauseId[]]), z.number()),
  diameter_mm: z.object({ median: z.number(), lo90: z.number(), hi90: z.number() }).optional(),
});

/** Answers that an earlier run wrote. */
export const readAnswers = (file: string): Answer[] => readJsonLines(file, answerSchema) as Answer[];
