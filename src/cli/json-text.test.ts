import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { JsonTextError, parseJsonText, placeOf } from './json-text.ts';

property.prop([fc.json()])('reads what JSON.parse reads, or refuses only doubled keys', (text) => {
  const expected: unknown = JSON.parse(text);
  // fc.json builds from objects, so that no key comes twice.
  expect(JSON.stringify(parseJsonText(text).value)).toBe(JSON.stringify(expected));
});

property.prop([fc.jsonValue(), fc.integer({ min: 0, max: 8 })])('reads indented text too', (value, indent) => {
  const text = JSON.stringify(value, null, indent);
  expect(JSON.stringify(parseJsonText(text).value)).toBe(JSON.stringify(value));
});

property.prop([fc.string()])('never accepts what JSON.parse refuses', (text) => {
  let isAccepted = true;
  try {
    JSON.parse(text);
  } catch {
    isAccepted = false;
  }
  if (isAccepted) expect(() => parseJsonText(text)).not.toThrow();
  else expect(() => parseJsonText(text)).toThrow(JsonTextError);
});

describe('places', () => {
  const text = '{\n  "car": {\n    "tanks": [60, "x"]\n  }\n}';

  test.each([
    [['car', 'tanks', 1], { line: 3, column: 19 }],
    [['car', 'tanks'], { line: 3, column: 14 }],
    [['car', 'missing'], { line: 2, column: 10 }],
    [[], { line: 1, column: 1 }],
  ])('value at %j', (path, place) => {
    expect(placeOf(text, parseJsonText(text).offsetOf(path))).toEqual(place);
  });

  test.each([
    ['{"a":1,}', 7, 'a key in double quotes'],
    ['[1 2]', 3, '"," or "]"'],
    ['{"a" 1}', 5, '":"'],
    ['{"a":1,"a":2}', 7, 'every key once'],
    ['', 0, 'a value'],
    ['[1] x', 4, 'the end of the file'],
    ['{"a":"open', 5, 'a closed string without line breaks'],
  ])('%s fails at %i', (broken, offset, expected) => {
    try {
      parseJsonText(broken);
    } catch (error) {
      expect(error).toBeInstanceOf(JsonTextError);
      expect((error as JsonTextError).offset).toBe(offset);
      expect((error as JsonTextError).expected).toBe(expected);
      return;
    }
    throw new Error('was accepted');
  });
});
