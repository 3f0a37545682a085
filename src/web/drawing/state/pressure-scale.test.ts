import { expect, it } from 'vitest';
import { pressureColour, scaleLimitPa } from './pressure-scale.ts';

it('takes the least round scale that holds the run', () => {
  expect(scaleLimitPa(2149)).toBe(3_000);
  expect(scaleLimitPa(8_000)).toBe(10_000);
  expect(scaleLimitPa(0)).toBe(250);
  expect(scaleLimitPa(1e6)).toBe(40_000);
});

it('is paper at ambient, teal below, ochre above, and keeps its end colour beyond the scale', () => {
  expect(pressureColour(0, 3000)).toContain('0%, var(--pressure-0)');
  expect(pressureColour(-3000, 3000)).toContain('var(--pressure-low-3) 100%');
  expect(pressureColour(-66_000, 3000)).toBe(pressureColour(-3000, 3000));
  expect(pressureColour(1500, 3000)).toContain('--pressure-high');
});
