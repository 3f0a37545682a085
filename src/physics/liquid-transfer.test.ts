import { expect, it } from 'vitest';
import { aboveCrest, aboveCrestDerivative, suctionShare, suctionShareDerivative } from './liquid-transfer.ts';

it('passes nothing below the crest and all that stands above it', () => {
  expect(aboveCrest(0.3, 0.5)).toBe(0);
  expect(aboveCrest(0.7, 0.5)).toBeCloseTo(0.2, 15);
});

it('is smooth at the crest: slope equals the difference quotient', () => {
  for (const fill of [0.49, 0.4951, 0.498, 0.5, 0.503, 0.51]) {
    const quotient = (aboveCrest(fill + 1e-7, 0.5) - aboveCrest(fill - 1e-7, 0.5)) / 2e-7;
    expect(aboveCrestDerivative(fill, 0.5)).toBeCloseTo(quotient, 5);
  }
});

it('loses suction as the lobe runs dry', () => {
  expect(suctionShare(0.01, 0.02)).toBe(0);
  expect(suctionShare(0.2, 0.02)).toBe(1);
  const quotient = (suctionShare(0.025 + 1e-7, 0.02) - suctionShare(0.025 - 1e-7, 0.02)) / 2e-7;
  expect(suctionShareDerivative(0.025, 0.02)).toBeCloseTo(quotient, 3);
});
