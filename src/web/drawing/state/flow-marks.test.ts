import fc from 'fast-check';
import { expect, it } from 'vitest';
import { MARK_KG, planMarks } from './flow-marks.ts';

it('lets as many marks pass a point as the mass that went through says', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e-6, max: 2e-3, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (flow, from) => {
        // Over one mark's mass, the first mark of the way moves by exactly one spacing and another comes in.
        const a = planMarks(flow, from * 1e-3, 1);
        if (a === undefined) return;
        const b = planMarks(flow, from * 1e-3 + 0.25 * MARK_KG[a.mark]!, 1)!;
        const moved = ((((b.firstPx - a.firstPx) / a.spacingPx) % 1) + 1) % 1;
        expect(moved).toBeCloseTo(0.25, 4);
      },
    ),
  );
});

it('runs backwards when the flow does', () => {
  const a = planMarks(-1e-5, -1.5e-6, 1)!;
  const b = planMarks(-1e-5, -1.6e-6, 1)!;
  expect(b.firstPx).toBeLessThan(a.firstPx);
});

it('takes larger marks for larger flows, never more than nine a second', () => {
  let last = 0;
  for (const flow of [1e-6, 1e-5, 1e-4, 1e-3]) {
    const { mark } = planMarks(flow, 0, 1)!;
    expect(mark).toBeGreaterThanOrEqual(last);
    expect(flow / MARK_KG[mark]!).toBeLessThanOrEqual(9);
    last = mark;
  }
  expect(planMarks(1e-5, 0, 16)!.mark).toBeGreaterThan(planMarks(1e-5, 0, 1)!.mark);
});

it('shows nothing where next to nothing flows', () => {
  expect(planMarks(1e-9, 0, 1)).toBeUndefined();
});
