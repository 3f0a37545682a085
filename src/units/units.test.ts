import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { uniform } from '../../test/published/uniform.ts';
import { convert, fromSi, toSi } from './convert.ts';
import { parseQuantity } from './parse-quantity.ts';
import { parseUnit, unitBySymbol } from './parse-unit.ts';
import { decimalsForFigures, printInterval, printQuantity } from './print-quantity.ts';
import { UNITS } from './unit-table.ts';

const anyUnit = fc.constantFrom(...UNITS);
const number = uniform(-1e6, 1e6);

describe('unit table', () => {
  it('goes to SI and back, for every unit', () => {
    fc.assert(
      fc.property(anyUnit, number, (unit, value) => {
        const scale = Math.abs(value) + Math.abs(unit.offset / unit.factor) + 1e-300;
        expect(Math.abs(fromSi(toSi(value, unit), unit) - value) / scale).toBeLessThan(1e-12);
      }),
    );
  });

  it('understands its own symbols, and no two units share one', () => {
    expect(new Set(UNITS.map((unit) => unit.symbol)).size).toBe(UNITS.length);
    for (const unit of UNITS) expect(parseUnit(unit.symbol, unit.quantity)).toEqual({ ok: true, unit });
  });

  it('has an SI unit first for each quantity, and gives a spelling to one unit only', () => {
    for (const quantity of new Set(UNITS.map((unit) => unit.quantity))) {
      expect(UNITS.find((unit) => unit.quantity === quantity)).toMatchObject({ factor: 1, offset: 0 });
    }
    for (const unit of UNITS) {
      for (const spelling of unit.spellings)
        expect([spelling, parseUnit(spelling)]).toEqual([spelling, { ok: true, unit }]);
    }
  });

  it('refuses to turn a pressure into a length', () => {
    expect(() => convert(1, unitBySymbol('kPa'), unitBySymbol('mm'))).toThrow('kPa measures pressure');
    expect(() => unitBySymbol('furlong')).toThrow('furlong');
  });
});

describe('spellings', () => {
  for (const [text, symbol, reference] of [
    ['inH2O', 'inH2O', undefined],
    ['in. H2O', 'inH2O', undefined],
    ['in H₂O', 'inH2O', undefined],
    ['IN_H2O', 'inH2O', undefined],
    ['inches of water', 'inH2O', undefined],
    ['inH2O (4 °C)', 'inH2O (4 °C)', undefined],
    ['inH2O@60F', 'inH2O (60 °F)', undefined],
    ['"H2O', 'inH2O', undefined],
    ['″Hg', 'inHg', undefined],
    ['in Hg', 'inHg', undefined],
    ['°F', '°F', undefined],
    ['º F', '°F', undefined],
    ['deg. F', '°F', undefined],
    ['DegC', '°C', undefined],
    ['℃', '°C', undefined],
    ['kPa', 'kPa', undefined],
    ['KPA', 'kPa', undefined],
    ['kPa abs', 'kPa', 'absolute'],
    ['kPa(a)', 'kPa', 'absolute'],
    ['kPa (g)', 'kPa', 'gauge'],
    ['psig', 'psi', 'gauge'],
    ['PSIA', 'psi', 'absolute'],
    ['inH2O gauge', 'inH2O', 'gauge'],
    ['mm Hg', 'mmHg', undefined],
    ['mmHg', 'mmHg', undefined],
    ['l/min', 'L/min', undefined],
    ['cc/min', 'cm3/min', undefined],
    ['cm³/min', 'cm3/min', undefined],
    ['CFM', 'ft3/min', undefined],
    ['μm', 'µm', undefined],
    ['MPa', 'MPa', undefined],
  ] as const) {
    it(`${text} is ${symbol}${reference ? `, ${reference}` : ''}`, () => {
      const unit = unitBySymbol(symbol);
      expect(parseUnit(text)).toEqual(reference ? { ok: true, unit, reference } : { ok: true, unit });
    });
  }

  it('says what was found and what was expected', () => {
    const unknown = parseUnit('furlong', 'length');
    expect(unknown).toMatchObject({ ok: false });
    if (!unknown.ok) expect(unknown.problem).toContain('mm, cm');
    const wrong = parseUnit('psi', 'length');
    if (!wrong.ok)
      expect(wrong.problem).toBe(
        '"psi" is a unit of pressure; expected a unit of length: m, mm, cm, µm, km, in, ft, mi',
      );
    expect(wrong.ok).toBe(false);
    // Milli or mega: only the case can tell.
    expect(parseUnit('mpa').ok).toBe(false);
    expect(parseUnit('g').ok && parseUnit('g')).toMatchObject({ unit: { quantity: 'mass' } });
  });
});

describe('quantities in text', () => {
  it('reads a number with its unit', () => {
    expect(parseQuantity('-8 inH2O', 'pressure')).toMatchObject({ ok: true });
    for (const [text, quantity, si] of [
      ['-8 inH2O', 'pressure', -8 * 249.08891],
      ['−2.0 kPa', 'pressure', -2000],
      ['0,5 mm', 'length', 0.5e-3],
      ['.5mm', 'length', 0.5e-3],
      ['72 °F', 'temperature', (72 + 459.67) / 1.8],
      ['1e3 cc/min', 'volume flow', 1e-3 / 60],
    ] as const) {
      const parsed = parseQuantity(text, quantity);
      expect(parsed.ok).toBe(true);
      if (parsed.ok) expect(parsed.valueSi).toBeCloseTo(si, 9);
    }
  });

  it('refuses what is not one', () => {
    for (const text of ['kPa', '', '5', '5 mm', 'five kPa']) {
      const parsed = parseQuantity(text, 'pressure');
      expect(parsed.ok).toBe(false);
      if (!parsed.ok) expect(parsed.problem).toContain('pressure');
    }
  });

  it('prints a value and an interval', () => {
    const mm = unitBySymbol('mm');
    expect(printQuantity(0.62e-3, mm)).toBe('0.62 mm');
    expect(printInterval({ estimateSi: 0.62e-3, lowSi: 0.56e-3, highSi: 0.69e-3 }, mm)).toBe('0.62 mm (0.56 to 0.69)');
    expect(printQuantity(-1, unitBySymbol('kPa'))).toBe('0.00 kPa');
    expect(printQuantity(0.5, unitBySymbol('1'), 2)).toBe('0.50');
    expect(printQuantity(295.372222, unitBySymbol('°F'))).toBe('72.0 °F');
  });

  it('prints back what it read', () => {
    fc.assert(
      fc.property(anyUnit, fc.integer({ min: -9999, max: 9999 }), (unit, count) => {
        fc.pre(unit.symbol !== '1');
        const value = count / 100;
        const parsed = parseQuantity(printQuantity(toSi(value, unit), unit, 2), unit.quantity);
        expect(parsed.ok && Math.abs(fromSi(parsed.valueSi, unit) - value)).toBeLessThan(0.0051);
      }),
    );
  });

  it('chooses decimals by significant figures', () => {
    expect(decimalsForFigures(0.4934, 3)).toBe(3);
    expect(decimalsForFigures(12.34, 3)).toBe(1);
    expect(decimalsForFigures(0.9996, 3)).toBe(2);
    expect(decimalsForFigures(12345, 3)).toBe(0);
    expect(decimalsForFigures(0, 3)).toBe(0);
  });
});
