import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isMissing, parseDecimal } from './parse-number.ts';

describe('parseDecimal', () => {
  it('gives the very double that Number gives, for any double printed', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (x) => {
        expect(Object.is(parseDecimal(String(x), '.'), Number(String(x)))).toBe(true);
      }),
    );
  });

  it('gives the very double that Number gives, for any run of digits with a point', () => {
    const digits = fc.string({ unit: fc.constantFrom(...'0123456789'), maxLength: 25 });
    fc.assert(
      fc.property(fc.constantFrom('', '-', '+'), digits, digits, (sign, whole, part) => {
        fc.pre(whole + part !== '');
        const text = `${sign}${whole}.${part}`;
        expect(Object.is(parseDecimal(text, '.'), Number(text))).toBe(true);
        expect(Object.is(parseDecimal(text.replace('.', ','), ','), Number(text))).toBe(true);
      }),
    );
  });

  it('refuses whatever Number refuses, and never invents a number', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom(...'0123456789.,-+eE xV%'), minLength: 1, maxLength: 9 }),
        (text) => {
          const read = parseDecimal(text, '.');
          if (!Number.isNaN(read)) expect(read).toBe(Number(text));
        },
      ),
    );
  });

  it.each(['1,234', '1.2.3', '12 V', '1 2', '--1', '0x10', 'Infinity', '', ' ', '.', 'e5', '1e'])(
    'refuses %j',
    (text) => {
      expect(parseDecimal(text, '.')).toBeNaN();
    },
  );

  it('refuses a point where the decimal mark is a comma', () => {
    expect(parseDecimal('1.5', ',')).toBeNaN();
    expect(parseDecimal('1.5e3', ',')).toBeNaN();
  });
});

describe('isMissing', () => {
  it('knows empty cells and the usual words, but no number', () => {
    expect(['', ' ', 'NaN', 'N/A', '-', 'null'].every(isMissing)).toBe(true);
    expect(['0', '-1', 'off', 'error'].some(isMissing)).toBe(false);
  });
});
