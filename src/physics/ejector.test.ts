import { expect, it } from 'vitest';
import { ejectorSuctionAbsPa } from './ejector.ts';

it('sucks under boost and not without it', () => {
  expect(ejectorSuctionAbsPa(101325, 60000, 0.1)).toBe(95325);
  expect(ejectorSuctionAbsPa(101325, -50000, 0.1)).toBe(101325);
  expect(ejectorSuctionAbsPa(101325, 60000, 0)).toBe(101325);
});
