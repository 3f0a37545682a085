/** Every check by its number. A new one is an entry in its group's file and its words in `text/`. */
import type { Check } from '../check.ts';
import { FILLING } from './filling.ts';
import { LEAK_CHECKS } from './leaks.ts';
import { LOOK } from './look.ts';
import { RECORDINGS } from './recordings.ts';
import { SELF_TESTS } from './self-tests.ts';
import { SENSORS_AND_WIRING } from './sensors-and-wiring.ts';
import { VALVES } from './valves.ts';

export const CHECKS: readonly Check[] = [
  ...LOOK,
  ...SENSORS_AND_WIRING,
  ...VALVES,
  ...LEAK_CHECKS,
  ...FILLING,
  ...SELF_TESTS,
].sort((a, b) => (a.id < b.id ? -1 : 1));

/** Throws on a number that no check has, naming those there are. */
export function checkById(id: string): Check {
  const found = CHECKS.find((check) => check.id === id) ?? RECORDINGS.find((check) => check.id === id);
  if (found === undefined) {
    throw new RangeError(`no check is called "${id}"; expected one of ${CHECKS.map((check) => check.id).join(', ')}`);
  }
  return found;
}
