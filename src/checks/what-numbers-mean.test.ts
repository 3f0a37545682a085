/** What an instrument's numbers come to, named so that it can be shown. */
import { expect, test } from 'vitest';
import { readEntry } from './read-entry.ts';
import { whatNumbersMean } from './what-numbers-mean.ts';

const meant = (check: string, numbers: Readonly<Record<string, string>>) => {
  const read = readEntry(check, { numbers });
  if (!read.ok || read.meaning === undefined) throw new Error(JSON.stringify(read));
  return whatNumbersMean(read.meaning);
};

test('a flow against pressure is an equivalent diameter with its interval', () => {
  const [size, ...others] = meant('T20', { flow: '0.55 L/min', pressure: '10 inH2O' });
  expect(others).toEqual([]);
  // 0.020 in let 0.55 L/min through at 10 inH2O with 0.7; with 0.61 the hole is wider by the root of their ratio
  const expected = 0.508 * Math.sqrt(0.7 / 0.61);
  expect(size).toMatchObject({ kind: 'diameter', id: 'whole system' });
  if (size?.kind !== 'diameter') throw new Error('no diameter');
  expect(size.sizeMm.median / expected).toBeCloseTo(1, 1);
  expect(size.sizeMm.lo90).toBeLessThan(expected);
  expect(size.sizeMm.hi90).toBeGreaterThan(expected);
});

test('two readings are gain and offset, a weight a loading, three sections their sum by area', () => {
  const readings = {
    'first applied': '0 Pa',
    'first reading': '300 Pa',
    'second applied': '2 kPa',
    'second reading': '1.7 kPa',
  };
  expect(meant('T08', readings)).toEqual([
    { kind: 'pressure', id: 'offset', value: expect.closeTo(300, 6) },
    { kind: 'number', id: 'gain', value: expect.closeTo(0.7, 9) },
  ]);
  expect(meant('T29', { weight: '1.5 kg', 'dry weight': '1.4 kg', 'working capacity': '200 g' })).toEqual([
    { kind: 'fraction', id: 'loading', value: expect.closeTo(0.5, 9) },
  ]);
  const sections = meant('T21', { 'purge side': '0.3 mm', 'canister and vent': '0.4 mm', 'tank and neck': '0 mm' });
  expect(sections.find(({ id }) => id === 'sum by area')).toEqual({
    kind: 'length',
    id: 'sum by area',
    value: expect.closeTo(0.5e-3, 9),
  });
});
