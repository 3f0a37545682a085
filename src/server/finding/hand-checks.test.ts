import { expect, test } from 'vitest';
import { handChecksFrom } from './hand-checks.ts';

const check = (
  strength: 'weak' | 'clear' | 'strong',
  speaksFor: Parameters<typeof handChecksFrom>[0][number]['speaksFor'],
  speaksAgainst: typeof speaksFor = [],
) => ({ strength, speaksFor, speaksAgainst });

test('no check, no weight', () => {
  expect(handChecksFrom([])).toEqual([]);
});

test('checks on one cause multiply: twice two against five', () => {
  const [leak, ...rest] = handChecksFrom([
    check('weak', ['leak']),
    check('weak', ['leak']),
    check('clear', [], ['leak']),
  ]);
  expect(leak?.cause).toBe('leak');
  expect(Math.exp(leak?.logLikelihood ?? 0)).toBeCloseTo((2 * 2) / 5, 12);
  expect(rest).toEqual([]);
});

test('a strong check is worth twenty to one, for each cause that it names', () => {
  const weights = handChecksFrom([check('strong', ['leak', 'gross_leak', 'leak'], ['none'])]);
  expect(weights.map(({ cause, logLikelihood }) => [cause, Math.round(Math.exp(logLikelihood) * 1e9) / 1e9])).toEqual([
    ['none', 0.05],
    ['leak', 20],
    ['gross_leak', 20],
  ]);
});

test('what speaks for and against alike weighs nothing', () => {
  expect(handChecksFrom([check('clear', ['leak'], ['leak'])])).toEqual([]);
});
