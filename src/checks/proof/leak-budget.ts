/**
 * The leak budget: measured total minus repaired. Holes side by side add by area, so areas are subtracted and diameters
 * are not: d_rest = sqrt(d_total² - d_part²). Each size is a log-normal, independent of the others.
 */
import type { Interval } from '../../diagnosis/finding.ts';
import { quantilesOf, type SizeBelief, sizeBelief } from './size-belief.ts';

/** One row of the budget, equivalent diameters in mm. */
export interface BudgetRow {
  readonly beforeMm?: Interval;
  readonly afterMm?: Interval;
  /** What was there before and is there no longer, by area. */
  readonly removedMm?: Interval;
}

export interface SectionRow extends BudgetRow {
  /** Name of the section, as the check's field has it. */
  readonly name: string;
}

export interface LeakBudget {
  readonly whole: BudgetRow;
  /** The same sections before and after, as isolation gave them. */
  readonly sections: readonly SectionRow[];
  /** Sum of the sections by area, where all of a side were measured. */
  readonly sum?: BudgetRow;
  /** Size of what was repaired, by itself, where isolation gave it. */
  readonly repairedMm?: Interval;
  /** What should remain when the repaired leak is taken from the total before. */
  readonly expectedRestMm?: Interval;
  /** How what was measured after stands to that; absent where one of them is not known. */
  readonly rest?: 'as expected' | 'more than expected' | 'less than expected';
}

export interface BudgetSide {
  readonly wholeMm?: Interval;
  readonly sectionsMm?: Readonly<Record<string, Interval>>;
}

export interface BudgetInput {
  readonly before?: BudgetSide;
  readonly after?: BudgetSide;
  readonly repairedMm?: Interval;
}

/** Steps through each log-normal: 100 keep the ends of an interval to about half a hundredth in probability. */
const STEPS = 100;

function intervalOf(values: Float64Array): Interval {
  values.sort();
  const at = (q: number): number => {
    const place = q * values.length - 0.5;
    const low = Math.max(0, Math.floor(place));
    const high = Math.min(values.length - 1, low + 1);
    return values[low]! + (values[high]! - values[low]!) * (place - low);
  };
  return { median: at(0.5), lo90: at(0.05), hi90: at(0.95) };
}

function combined(one: SizeBelief, other: SizeBelief, sign: 1 | -1): Interval {
  const others = quantilesOf(other, STEPS).map((mm) => sign * mm * mm);
  const values = new Float64Array(STEPS * STEPS);
  quantilesOf(one, STEPS).forEach((mm, i) => {
    others.forEach((area, k) => {
      values[i * STEPS + k] = Math.sqrt(Math.max(0, mm * mm + area));
    });
  });
  return intervalOf(values);
}

/** Total minus part, by area, never below nothing; mm. */
export const minusByArea = (total: Interval, part: Interval): Interval =>
  combined(sizeBelief(total), sizeBelief(part), -1);

/** Holes side by side as one, mm. */
export const sumByArea = (sizes: readonly Interval[]): Interval | undefined =>
  sizes.length === 0 ? undefined : sizes.reduce((sum, size) => combined(sizeBelief(sum), sizeBelief(size), 1));

function rowOf(beforeMm: Interval | undefined, afterMm: Interval | undefined): BudgetRow {
  return {
    ...(beforeMm === undefined ? {} : { beforeMm }),
    ...(afterMm === undefined ? {} : { afterMm }),
    ...(beforeMm === undefined || afterMm === undefined ? {} : { removedMm: minusByArea(beforeMm, afterMm) }),
  };
}

/** Null where nothing was measured on either side. */
export function leakBudget({ before, after, repairedMm }: BudgetInput): LeakBudget | null {
  if (before === undefined && after === undefined) return null;
  const names = [
    ...new Set([...Object.keys(before?.sectionsMm ?? {}), ...Object.keys(after?.sectionsMm ?? {})]),
  ] as readonly string[];
  const sections = names.map(
    (name): SectionRow => ({ name, ...rowOf(before?.sectionsMm?.[name], after?.sectionsMm?.[name]) }),
  );
  const sumOf = (side: BudgetSide | undefined): Interval | undefined =>
    side?.sectionsMm === undefined ? undefined : sumByArea(Object.values(side.sectionsMm));
  const expectedRestMm =
    before?.wholeMm === undefined || repairedMm === undefined ? undefined : minusByArea(before.wholeMm, repairedMm);
  const rest = restOf(expectedRestMm, after?.wholeMm);
  return {
    whole: rowOf(before?.wholeMm, after?.wholeMm),
    sections,
    ...(sections.length === 0 ? {} : { sum: rowOf(sumOf(before), sumOf(after)) }),
    ...(repairedMm === undefined ? {} : { repairedMm }),
    ...(expectedRestMm === undefined ? {} : { expectedRestMm }),
    ...(rest === undefined ? {} : { rest }),
  };
}

/** Apart only where the two 90 % intervals do not touch. */
function restOf(expected: Interval | undefined, measured: Interval | undefined): LeakBudget['rest'] {
  if (expected === undefined || measured === undefined) return undefined;
  if (measured.lo90 > expected.hi90) return 'more than expected';
  return measured.hi90 < expected.lo90 ? 'less than expected' : 'as expected';
}
