/** The lines of thought about one cause, or about two at once. */
import { type Cause, formOf } from '../causes/catalogue.ts';
import type { FitProblem } from '../fit/problem.ts';
import { Candidates } from './candidates.ts';

/** Name of a cause's form, or of two together in either order. */
export const nameOf = (causes: readonly Cause[]): string => causes.map(formOf).sort().join('+');

export class CauseFits extends Candidates<FitProblem> {
  readonly causes: readonly Cause[];
  readonly form: string;

  constructor(causes: readonly Cause[], problem: FitProblem, starts: readonly Float64Array[]) {
    super(causes[0]!.size ?? 'leak', problem, starts);
    this.causes = causes;
    this.form = nameOf(causes);
  }
}
