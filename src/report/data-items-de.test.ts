import { expect, test } from 'vitest';
import { DATA_ITEMS } from '../recording/bus/data-items.ts';
import { dataItemInGerman } from './data-items-de.ts';

test.each(DATA_ITEMS.map(({ name }) => name))('"%s" has its German', (name) => {
  expect(dataItemInGerman(name)).not.toBe(name);
});

test('what was typed by hand stays as it is', () => {
  expect(dataItemInGerman('fuel tank of the neighbour')).toBe('fuel tank of the neighbour');
});
