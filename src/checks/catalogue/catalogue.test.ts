/** The data of checks, causes, repairs and words fit together. */
import { describe, expect, test } from 'vitest';
import { CAUSES } from '../../diagnosis/finding.ts';
import { ROOT_CAUSE_PERCENT } from '../../diagnosis/priors/root-causes.ts';
import { parseUnit } from '../../units/parse-unit.ts';
import { CAUTION_IDS } from '../cautions.ts';
import { applyChanges } from '../figure.ts';
import { DEFAULT_FIGURES, figureValues } from '../figures.ts';
import { outcomeChances } from '../outcome-table.ts';
import { REPAIRS } from '../repairs.ts';
import { ROOT_CAUSE_IDS, ROOT_CAUSES } from '../root-causes.ts';
import { DE } from '../text/de.ts';
import { EN } from '../text/en.ts';
import { CHECKS } from './all.ts';

test('checks T01 to T38, each once', () => {
  expect(CHECKS.map(({ id }) => id)).toEqual(
    Array.from({ length: 38 }, (_, i) => `T${String(i + 1).padStart(2, '0')}`),
  );
});

describe.each(CHECKS)('$id', (check) => {
  test('has words, in both languages, with steps', () => {
    for (const text of [EN, DE]) {
      expect(text.checks[check.id]?.name.length).toBeGreaterThan(3);
      expect(text.checks[check.id]?.steps.length).toBeGreaterThanOrEqual(3);
    }
    expect(DE.checks[check.id]?.name).not.toBe(EN.checks[check.id]?.name);
  });

  test('a risk has cautions that exist', () => {
    if (check.risk > 0) expect(check.cautions.length).toBeGreaterThan(0);
    for (const id of check.cautions) expect(CAUTION_IDS).toContain(id);
    // fuel vapour and open fuel are always spoken of
    if (check.risk >= 2) expect(check.cautions.some((id) => ['vapour', 'open fuel'].includes(id))).toBe(true);
  });

  test('refers only to checks, causes and outcomes that exist', () => {
    const ids = CHECKS.map(({ id }) => id);
    for (const id of check.after) expect(ids).toContain(id);
    expect(check.outcomes[0]?.causes).toEqual([]);
    const named = check.outcomes.flatMap(({ causes }) => causes);
    expect(new Set(named).size).toBe(named.length);
    for (const outcome of Object.values(check.setupFaults)) {
      expect(check.outcomes.map(({ id }) => id)).toContain(outcome);
    }
  });

  test('fields have units of their quantity', () => {
    for (const field of check.numbers?.fields ?? []) {
      expect(parseUnit(field.unit, field.quantity).ok).toBe(true);
      expect(field.least).toBeLessThan(field.most);
    }
  });

  test('chances of outcomes sum to 1 under every cause and set-up', () => {
    const figure = figureValues();
    for (const cause of ROOT_CAUSE_IDS) {
      for (const fault of [undefined, 'adaptor leaks', 'clamp leaks', 'valve not energised'] as const) {
        const chances = outcomeChances(check, cause, fault, figure);
        expect(chances.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
        for (const p of chances) expect(p).toBeGreaterThanOrEqual(0);
      }
    }
  });
});

describe('root causes', () => {
  test('cover every row of the priors table, shares of a family sum to 1', () => {
    for (const family of Object.keys(ROOT_CAUSE_PERCENT)) {
      const shares = ROOT_CAUSES.filter((cause) => cause.family === family).map(({ share }) => share);
      expect(shares.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
    }
  });

  test('cover every cause of the finding', () => {
    const covered = new Set(ROOT_CAUSES.flatMap(({ looks }) => Object.keys(looks)));
    expect(CAUSES.filter((cause) => !covered.has(cause))).toEqual([]);
  });

  test('each has exactly one repair', () => {
    for (const id of ROOT_CAUSE_IDS) expect(REPAIRS.filter(({ fixes }) => fixes.includes(id)).length).toBe(1);
  });
});

describe('figures', () => {
  test('have unique keys and lie in their own range', () => {
    expect(new Set(DEFAULT_FIGURES.map(({ key }) => key)).size).toBe(DEFAULT_FIGURES.length);
    for (const { key, value, least, most } of DEFAULT_FIGURES) {
      expect(value, key).toBeGreaterThanOrEqual(least);
      expect(value, key).toBeLessThanOrEqual(most);
    }
  });

  test('a change is marked as the shop’s own; without it the default is back', () => {
    const changed = applyChanges(DEFAULT_FIGURES, { 'shop.rate': 75 });
    expect(changed.find(({ key }) => key === 'shop.rate')).toMatchObject({ value: 75, mark: 'own' });
    expect(applyChanges(DEFAULT_FIGURES, {}).find(({ key }) => key === 'shop.rate')).toMatchObject({
      mark: 'judgement',
    });
  });

  test.each([
    ['shop.rat', 75, 'no figure is called "shop.rat"'],
    ['shop.rate', -1, 'expected 1 to 10000'],
    ['check.T12.sensitivity', 93, 'expected 0.01 to 0.999'],
    ['shop.rate', Number.NaN, 'expected a number'],
  ])('%s = %d is refused', (key, value, words) => {
    expect(() => applyChanges(DEFAULT_FIGURES, { [key]: value })).toThrow(words);
  });
});
