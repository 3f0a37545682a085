import { fc, test } from '@fast-check/vitest';
import { expect } from 'vitest';
import { firstAtOrAfter, nearest } from './nearest.ts';

const rising = fc
  .uniqueArray(fc.integer({ min: 0, max: 1000 }), { minLength: 1, maxLength: 60 })
  .map((list) => Float64Array.from(list.sort((a, b) => a - b)));

test.prop([rising, fc.integer({ min: -10, max: 1010 })])('finds the nearest sample', (timeS, t) => {
  const distance = Math.abs(timeS[nearest(timeS, t)]! - t);
  expect(distance).toBe(Math.min(...[...timeS].map((each) => Math.abs(each - t))));
  const after = firstAtOrAfter(timeS, t);
  expect([...timeS].findIndex((each) => each >= t)).toBe(after === timeS.length ? -1 : after);
});
