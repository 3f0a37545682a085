/** The look as decided: pages and paper have the same colours, and text can be read on its ground. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { LIGHT } from '../../src/report/style.ts';

const css = readFileSync(new URL('../../src/web/look/tokens.css', import.meta.url), 'utf8');
const block = (from: string): Record<string, string> => {
  const start = css.indexOf(from);
  const text = css.slice(start, css.indexOf('}', start));
  return Object.fromEntries(
    [...text.matchAll(/--([\w-]+):\s*(#[0-9a-f]{3,6});/g)].map(([, name, value]) => [name, value]),
  );
};
const light = block(':root {');
const dark = block(':root[data-theme="dark"] {');

/** Relative luminance and contrast, WCAG 2.2. */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
const contrast = (a: string, b: string): number => {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
};

test('the paper and the pages agree', () => {
  for (const [name, value] of Object.entries(LIGHT)) {
    expect(light[name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)], name).toBe(value);
  }
});

describe.each([
  ['light', light],
  ['dark', dark],
])('%s', (_name, tokens) => {
  const at = (name: string): string => {
    const value = tokens[name];
    if (value === undefined) throw new Error(`no --${name}`);
    return value;
  };
  test.each(['ink', 'quiet', 'accent', 'warn'])('text in %s is 4.5 to 1 on paper, ground and shade', (name) => {
    for (const ground of ['paper', 'ground', 'shade'])
      expect(contrast(at(name), at(ground)), ground).toBeGreaterThan(4.5);
  });
  test('text on the accent, edges of fields', () => {
    expect(contrast(at('on-accent'), at('accent'))).toBeGreaterThan(4.5);
    expect(contrast(at('edge'), at('paper'))).toBeGreaterThan(3);
    expect(contrast(at('edge'), at('shade'))).toBeGreaterThan(3);
  });
  test('the pressure scale is even on both sides: each step darker (or lighter) than the one before', () => {
    const sides = ['low', 'high'].map((side) => [
      at('pressure-0'),
      ...[1, 2, 3].map((n) => at(`pressure-${side}-${n}`)),
    ]);
    for (const side of sides) {
      const steps = side.map(luminance);
      const sorted = [...steps].sort((a, b) => (steps[0]! > steps[3]! ? b - a : a - b));
      expect(steps).toEqual(sorted);
    }
  });
});
