import { fc, test } from '@fast-check/vitest';
import { expect, it } from 'vitest';
import { scaleRange, shareOn, ticksOn } from './log-scale.ts';

it('shows both limits and a common hole', () => {
  const range = scaleRange([0.5, 1, 0.56, 0.69]);
  expect(range).toEqual([0.2, 3]);
  expect(ticksOn(range)).toEqual([0.2, 0.5, 1, 2]);
  expect(shareOn(range, 0.2)).toBe(0);
  expect(shareOn(range, Math.sqrt(0.6))).toBeCloseTo(0.5, 9);
});

test.prop([fc.array(fc.double({ min: 0.03, max: 40, noNaN: true }), { minLength: 1, maxLength: 6 })])(
  'holds all that must be seen, with numbers that do not touch',
  (values) => {
    const range = scaleRange(values);
    for (const value of values) {
      expect(shareOn(range, value)).toBeGreaterThan(0);
      expect(shareOn(range, value)).toBeLessThan(1);
    }
    const shares = ticksOn(range).map((tick) => shareOn(range, tick));
    expect(shares.length).toBeGreaterThanOrEqual(2);
    for (let k = 1; k < shares.length; k++) expect(shares[k]! - shares[k - 1]!).toBeGreaterThanOrEqual(0.0999);
  },
);
