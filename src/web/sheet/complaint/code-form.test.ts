import { expect, test } from 'vitest';
import { codesIn } from './code-form.ts';

test.each([
  ['P0456', ['P0456']],
  ['p0456, p0442;P0456', ['P0456', 'P0442']],
  ['  U0100\nP24B9 ', ['U0100', 'P24B9']],
  ['', []],
])('%j holds %j', (text, codes) => {
  expect(codesIn(text)).toEqual(codes);
});

test.each(['P456', 'P04567', 'X0456', 'P4456', 'P0456 and more'])('%j is refused', (text) => {
  expect(codesIn(text)).toBeNull();
});
