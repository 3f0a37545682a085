import { expect, test } from 'vitest';
import { isSame } from './same.ts';

test('the order of keys and absent keys say nothing', () => {
  expect(isSame({ a: 1, b: [{ c: 2, d: 3 }] }, { b: [{ d: 3, c: 2 }], a: 1 })).toBe(true);
  expect(isSame({ a: 1, b: undefined }, { a: 1 })).toBe(true);
});

test.each([
  [{ a: 1 }, { a: 2 }],
  [{ a: 1 }, { a: 1, b: null }],
  [
    [1, 2],
    [2, 1],
  ],
  [[], {}],
  [null, {}],
  ['1', 1],
])('%j differs from %j', (a, b) => {
  expect(isSame(a, b)).toBe(false);
  expect(isSame(b, a)).toBe(false);
});
