import { expect, test } from 'vitest';
import { duration, fixed, intervalInWords, millimetres, percent } from './numbers.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ').replaceAll('\u2212', '-');

test.each([
  [0.5, '50 %'],
  [0.9961, '99.6 %'],
  [0.99996, 'over 99.9 %'],
  [0.0004, 'under 0.1 %'],
  [0.004, '0.4 %'],
  [0, 'under 0.1 %'],
  [1, 'over 99.9 %'],
])('probability %f is printed as %s', (probability, text) => {
  expect(plain(percent(probability))).toBe(text);
});

test('certainty is never printed as 0 or 100 percent of a probability that is neither', () => {
  for (const probability of [1e-9, 1 - 1e-9]) expect(percent(probability)).toMatch(/under|over/);
});

test('sizes always stand with their interval and unit', () => {
  expect(plain(intervalInWords({ median: 0.619, lo90: 0.5601, hi90: 0.691 }))).toBe('0.62 mm (0.56 to 0.69)');
  expect(millimetres(3.14)).toBe('3.1');
});

test('a true minus, and no minus before zero', () => {
  expect(fixed(-1.26, 1)).toBe('\u22121.3');
  expect(fixed(-0.001, 1)).toBe('0.0');
});

test.each([
  [112, '112 s'],
  [240, '4.0 min'],
  [2700, '45 min'],
])('%i s is said as %s', (seconds, text) => {
  expect(plain(duration(seconds))).toBe(text);
});
