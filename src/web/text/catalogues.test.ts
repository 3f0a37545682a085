import { describe, expect, test } from 'vitest';
import { DE } from './de.ts';
import { EN } from './en.ts';
import { numbersOf } from './numbers.ts';

type Leaf = string | ((...args: never[]) => unknown);

/** Every text with its path. */
function leaves(value: unknown, path = ''): [string, Leaf][] {
  if (typeof value === 'string' || typeof value === 'function') return [[path, value as Leaf]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, part]) => leaves(part, `${path}.${key}`));
}

const en = new Map(leaves(EN));
const de = new Map(leaves(DE));

describe('catalogues', () => {
  test('have the same texts, lists within them included', () => {
    expect([...de.keys()].sort()).toEqual([...en.keys()].sort());
    expect(en.size).toBeGreaterThan(300);
  });

  test('have no empty text', () => {
    for (const [path, text] of [...en, ...de]) if (typeof text === 'string') expect(text.trim(), path).not.toBe('');
  });

  test('take the same number of values into each sentence', () => {
    for (const [path, text] of en) {
      if (typeof text === 'function') expect((de.get(path) as { length: number }).length, path).toBe(text.length);
    }
  });

  test('German is German: long texts differ from the English ones', () => {
    const same = [...en].filter(
      ([path, text]) => typeof text === 'string' && text.length > 14 && de.get(path) === text,
    );
    expect(same).toEqual([]);
  });
});

describe('numbers as the language writes them', () => {
  const english = numbersOf('en-GB', 'under', 'over');
  const german = numbersOf('de-DE', 'unter', 'über');

  test('decimal mark, true minus, no negative zero', () => {
    expect(english.fixed(-1.625, 2)).toBe('\u22121.63');
    expect(german.fixed(-1.625, 2)).toBe('\u22121,63');
    expect(english.fixed(-0.001, 1)).toBe('0.0');
    expect(german.fixed(84210, 0)).toBe('84.210');
  });

  test('probabilities are said as bounds at the ends', () => {
    const said = [0, 0.0004, 0.004, 0.01, 0.714, 0.99, 0.995, 0.9999, 1].map(english.percent);
    expect(said).toEqual(
      ['under 0.1', 'under 0.1', '0.4', '1', '71', '99', '99.5', 'over 99.9', 'over 99.9'].map((n) => `${n}\u00a0%`),
    );
    expect(german.percent(0.004)).toBe('0,4\u00a0%');
  });
});
