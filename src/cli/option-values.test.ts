import { InvalidArgumentError } from 'commander';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bitRate,
  checkList,
  codeList,
  figureChange,
  modelYear,
  numberWithin,
  portNumber,
  positiveNumber,
  share,
  timeOfDay,
  timeZone,
  wholeNumber,
} from './option-values.ts';

describe('values of options', () => {
  it('are taken in the forms that people write them in', () => {
    expect(codeList('p0442, P0456')).toEqual(['P0442', 'P0456']);
    expect(checkList('look smoke,pressure')).toEqual(['look', 'smoke', 'pressure']);
    expect(positiveNumber('0.5')).toBe(0.5);
    expect(numberWithin(-40, 60, 'a temperature')('-40')).toBe(-40);
    expect(modelYear('2012')).toBe(2012);
    expect(timeOfDay('7:05')).toBe('7:05');
    expect(timeZone('Europe/Berlin')).toBe('Europe/Berlin');
    expect(bitRate('250000')).toBe(250_000);
    expect(share('1')).toBe(1);
    expect(figureChange('shop.rate=75', { 'shop.day': 8 })).toEqual({ 'shop.day': 8, 'shop.rate': 75 });
    expect(portNumber('65535')).toBe(65_535);
  });

  it.each<[string, () => unknown]>([
    ['P04420', () => codeList('P04420')],
    ['X0442', () => codeList('P0442 X0442')],
    ['0', () => positiveNumber('0')],
    ['Infinity', () => positiveNumber('Infinity')],
    ['61', () => numberWithin(-40, 60, 'a temperature')('61')],
    [' ', () => numberWithin(-40, 60, 'a temperature')(' ')],
    ['12', () => modelYear('12')],
    ['24:00', () => timeOfDay('24:00')],
    ['Nowhere/Else', () => timeZone('Nowhere/Else')],
    ['125000', () => bitRate('125000')],
    ['1.1', () => share('1.1')],
    ['', () => share('')],
    ['shop.rate', () => figureChange('shop.rate', {})],
    ['shop.rate=', () => figureChange('shop.rate=', {})],
    ['-1', () => wholeNumber('-1')],
    ['65536', () => portNumber('65536')],
  ])('"%s" is refused with what was found', (found, read) => {
    expect(read).toThrow(InvalidArgumentError);
    expect(read).toThrow(`"${found}"`);
  });

  it('whole numbers come back as they were written', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 999_999_999 }), (n) => {
        expect(wholeNumber(String(n))).toBe(n);
      }),
    );
  });
});
