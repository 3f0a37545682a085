import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawnTogether } from './sampled-evidence.ts';

describe('shifts of contenders that a few particles tell', () => {
  it('stand where two runs agree, and become one where they differ as much as the contenders do', () => {
    const sure = drawnTogether([
      { shift: 1, error: 0 },
      { shift: 3, error: 0 },
    ]);
    expect(sure).toEqual([1, 3]);
    const chance = drawnTogether([
      { shift: 1, error: 2 },
      { shift: 3, error: 2 },
    ]);
    expect(chance).toEqual([2, 2]);
  });

  it('keep half of their scatter where chance makes up half', () => {
    // variance of 1 and 3 is 2, of which chance is 1
    const half = drawnTogether([
      { shift: 1, error: 1 },
      { shift: 3, error: 1 },
    ]);
    expect(half[0]).toBeCloseTo(1.5, 12);
    expect(half[1]).toBeCloseTo(2.5, 12);
  });

  it('keep their mean and their order', () => {
    const some = fc.array(
      fc.record({
        shift: fc.double({ min: -5, max: 5, noNaN: true }),
        error: fc.double({ min: -2, max: 2, noNaN: true }),
      }),
      { minLength: 1, maxLength: 5 },
    );
    fc.assert(
      fc.property(some, (own) => {
        const out = drawnTogether(own);
        const mean = (x: readonly number[]) => x.reduce((s, v) => s + v, 0) / x.length;
        expect(mean(out)).toBeCloseTo(mean(own.map((o) => o.shift)), 9);
        own.forEach((a, i) => {
          own.forEach((b, j) => {
            if (a.shift < b.shift) expect(out[i]!).toBeLessThanOrEqual(out[j]! + 1e-9);
          });
        });
      }),
    );
  });
});
