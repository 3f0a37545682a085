import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Bin, binTimeS, coarsen, emptyBin, regrouped } from './bin.ts';

function bins(count: number, widthS: number): Bin[] {
  return Array.from({ length: count }, (_, i) => {
    const b = emptyBin(i * widthS);
    b.toS = (i + 0.9) * widthS;
    b.samples = 10;
    b.sumTimeS = 10 * (i + 0.45) * widthS;
    Object.assign(b.pressures[0]!, { count: 9, sumTimeS: 9 * (i + 0.45) * widthS, sumGaugePa: 9 * i });
    b.sums[0] = i;
    b.counts[0] = 1;
    b.phase = 'hold';
    return b;
  });
}
const total = (list: Bin[], of: (b: Bin) => number) => list.reduce((s, b) => s + of(b), 0);

describe('bins that coarsen with age', () => {
  it('keep every sum and the order, whatever is merged', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: 20, max: 120 }),
        fc.array(fc.double({ min: 0, max: 400, noNaN: true }), { maxLength: 5 }),
        (count, most, times) => {
          const list = bins(count, 1);
          const before = total(list, (b) => b.pressures[0]!.sumGaugePa);
          coarsen(
            list,
            [...times].sort((a, b) => a - b),
            most,
          );
          expect(list.length).toBeLessThanOrEqual(Math.max(most, 0));
          expect(total(list, (b) => b.samples)).toBe(10 * count);
          expect(total(list, (b) => b.pressures[0]!.sumGaugePa)).toBeCloseTo(before, 6);
          expect(total(list, (b) => b.sums[0]!)).toBeCloseTo((count * (count - 1)) / 2, 6);
          list.slice(1).forEach((b, i) => {
            expect(b.fromS).toBeGreaterThan(list[i]!.toS);
          });
        },
      ),
      { numRuns: 60 },
    );
  });

  it('never join both sides of a command change, nor two phases', () => {
    const list = bins(300, 1);
    for (const b of list) b.phase = b.fromS < 120 ? 'hold' : 'release';
    coarsen(list, [40.95, 80.95], 60);
    for (const b of list) {
      for (const edge of [40.95, 80.95, 120]) expect(b.fromS >= edge || b.toS < edge, `bin from ${b.fromS}`).toBe(true);
    }
  });

  it('are finest right after a change and at the newest end', () => {
    const list = bins(600, 1);
    coarsen(list, [100.95], 120);
    const width = (t: number) => {
      const b = list.find((x) => x.toS >= t)!;
      return b.toS - b.fromS;
    };
    expect(width(102)).toBeLessThan(width(160));
    expect(width(160)).toBeLessThan(width(500));
    expect(width(599)).toBeLessThan(1);
    expect(binTimeS(list[list.length - 1]!)).toBeCloseTo(599.45, 6);
  });
});

describe('fine bins on a coarser grid', () => {
  it('keep every sum, leave the fine ones alone, and end at changes', () => {
    const fine = bins(100, 0.1);
    const coarse = regrouped(fine, [4.495], () => 1);
    expect(fine.length).toBe(100);
    expect(coarse.length).toBe(11);
    expect(total(coarse, (b) => b.samples)).toBe(1000);
    expect(total(coarse, (b) => b.pressures[0]!.count)).toBe(900);
    for (const b of coarse) expect(b.fromS >= 4.495 || b.toS < 4.495, `bin from ${b.fromS}`).toBe(true);
  });
});
