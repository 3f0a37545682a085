import { expect, test } from 'vitest';
import { typicalConditions } from '../../readiness/conditions.ts';
import { LAYOUTS } from '../../system/car.ts';
import { numbersOf } from '../text/numbers.ts';
import { METRIC, type UnitChoice, unitsOf } from '../units/units.ts';
import { figuresOf, problemOf } from './condition-figures.ts';

const { fixed } = numbersOf('en-GB', 'under', 'over');
const units = (choice: UnitChoice = METRIC) => unitsOf(choice, () => undefined, fixed, 'to');
const shown = (id: string, choice?: UnitChoice) => {
  const condition = LAYOUTS.flatMap((layout) => typicalConditions(layout).conditions).find((each) => each.id === id)!;
  return figuresOf(condition, units(choice)).map(({ key, unit, toShown }) => {
    const value = (condition as unknown as Record<string, number | undefined>)[key];
    return `${key} ${value === undefined ? '' : Number(toShown(value).toFixed(1))} ${unit}`;
  });
};

// 4.4 °C and 35 °C = 39.9 °F and 95 °F; 7 K = 12.6 °F; 64 km/h = 39.8 mph
test.each([
  ['intake air at start', METRIC, ['low 4.4 °C', 'high 35 °C']],
  ['intake air at start', { ...METRIC, temperature: '°F' as const }, ['low 39.9 °F', 'high 95 °F']],
  ['cold start', { ...METRIC, temperature: '°F' as const }, ['mostK 12.6 °F']],
  ['parked before', METRIC, ['leastS 8 h']],
  ['cruise', { ...METRIC, length: 'in' as const }, ['low 39.8 mph', 'high 75.2 mph', 'leastS 10 min']],
  ['fuel level', METRIC, ['low 15 %', 'high 85 %', 'toleratedS 5 s']],
  ['altitude', METRIC, ['low 72 kPa', 'high  kPa', 'toleratedS 5 s']],
  ['boost', METRIC, ['abovePa 5 kPa', 'leastS 5 s']],
])('%s', (id, choice, wanted) => {
  expect(shown(id, choice)).toEqual(wanted);
});

test('what is typed comes back', () => {
  for (const layout of LAYOUTS)
    for (const condition of typicalConditions(layout).conditions)
      for (const { toShown, toSi } of figuresOf(condition, units({ ...METRIC, temperature: '°F', length: 'in' })))
        expect(toShown(toSi(12.5))).toBeCloseTo(12.5, 9);
});

test('limits that leave no room and times of nothing are told', () => {
  const level = { id: 'a', kind: 'throughout', channel: 'fuelLevel', toleratedS: 0, mark: 'x' } as const;
  expect(problemOf({ ...level, low: 0.9, high: 0.2 })).toBe('order');
  expect(problemOf({ ...level, low: 0.1 })).toBeUndefined();
  expect(problemOf({ id: 'b', kind: 'engine-runs', leastS: 0, mark: 'x' })).toBe('positive');
});
