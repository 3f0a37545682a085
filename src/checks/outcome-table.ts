/** Chance of each outcome of a check under a root cause and a state of the set-up. */
import type { Check } from './check.ts';
import { checkKey } from './figures.ts';
import type { RootCauseId } from './root-causes.ts';
import type { SetupFaultId } from './setups.ts';

/** With a failed set-up its outcome shows nearly always, whatever the car has. Judgement. */
const SHOWS = 0.95;

/**
 * @param fault what is wrong with the set-up; absent: nothing
 * @returns by outcome, summing to 1
 */
export function outcomeChances(
  check: Check,
  cause: RootCauseId,
  fault: SetupFaultId | undefined,
  figure: (key: string) => number,
): number[] {
  const { outcomes } = check;
  const others = outcomes.length - 1;
  const misled = fault === undefined ? undefined : check.setupFaults[fault];
  if (misled !== undefined) return outcomes.map((o) => (o.id === misled ? SHOWS : (1 - SHOWS) / others));
  const right = outcomes.findIndex((o) => o.causes.includes(cause));
  if (right < 0) {
    const specificity = figure(checkKey(check.id, 'specificity'));
    return outcomes.map((_, i) => (i === 0 ? specificity : (1 - specificity) / others));
  }
  const sensitivity = figure(checkKey(check.id, 'sensitivity'));
  // a miss is mostly a clean result; a wrong place is as likely as a false alarm
  const wrongPlace = others > 1 ? (1 - sensitivity) * Math.min(0.5, 1 - figure(checkKey(check.id, 'specificity'))) : 0;
  return outcomes.map((_, i) => {
    if (i === right) return sensitivity;
    if (i === 0) return 1 - sensitivity - wrongPlace;
    return wrongPlace / (others - 1);
  });
}
