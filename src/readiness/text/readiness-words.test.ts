import { describe, expect, test } from 'vitest';
import { MONITORS } from '../../recording/bus/monitor-status.ts';
import { LAYOUTS } from '../../system/car.ts';
import { typicalConditions } from '../conditions.ts';
import { INSPECTION_RULES } from '../inspection-rules.ts';
import { READINESS_DE } from './de.ts';
import { READINESS_EN } from './en.ts';
import { PLAIN_METRIC, readinessFigures } from './figures.ts';

const METRIC = readinessFigures(PLAIN_METRIC);
const GERMAN = readinessFigures({ ...PLAIN_METRIC, decimalSign: ',' });
const SHIPPED = LAYOUTS.flatMap((layout) => typicalConditions(layout).conditions);
/** English words that no German sentence has. */
const ENGLISH = /\b(the|and|with|from|of|wins|memory|practice|parked|fuel|engine|within|least)\b/i;

describe('German', () => {
  test('names, marks and wishes of every condition that ships', () => {
    expect(SHIPPED.length).toBeGreaterThan(30);
    for (const condition of SHIPPED) {
      expect(READINESS_DE.condition(condition.id), condition.id).not.toBe(condition.id);
      expect(READINESS_DE.mark(condition.mark)).not.toMatch(ENGLISH);
      expect(READINESS_DE.wanted(condition, GERMAN)).not.toMatch(ENGLISH);
    }
  });
  test('names of every rule and monitor that ships', () => {
    for (const rule of INSPECTION_RULES) expect(READINESS_DE.rule(rule).name).not.toBe(rule.name);
    for (const name of MONITORS) expect(READINESS_DE.monitors[name]).not.toBe(name);
  });
  test('a rule of the shop keeps its own words', () => {
    const own = { ...INSPECTION_RULES[0]!, name: 'As we do it here', mark: 'given by the user' as const };
    expect(READINESS_DE.rule(own).name).toBe('As we do it here');
  });
});

describe('figures', () => {
  const american = readinessFigures({ temperature: '°F', distance: 'mi', decimalSign: '.', space: ' ' });
  // 35 °C = 95 °F, 6.67 K = 12 °F, 200 mi = 321 869 m, 40 mph = 17.8816 m/s (exact definitions of °F and mile)
  test.each([
    [american.temperature(308.15), '95 °F'],
    [american.kelvins(6.667), '12 °F'],
    [american.distance(321_869), '200 mi'],
    [american.of('vehicleSpeedMPerS', 17.8816), '40 mph'],
    [METRIC.of('vehicleSpeedMPerS', 17.8816), '64 km/h'],
    [GERMAN.percent(0.853, 1), '85,3 %'],
    [METRIC.duration(8 * 3600), '8 h'],
    [GERMAN.duration(9.5 * 3600), '9,5 h'],
    [METRIC.pascals(-249.6), '−250 Pa'],
    [METRIC.number(-0.2, 0), '0'],
  ])('%s', (printed, wanted) => {
    expect(printed).toBe(wanted);
  });
});

test('the same fact in both languages', () => {
  const [condition] = typicalConditions('engine-vacuum').conditions.filter(({ kind }) => kind === 'at-start');
  const result = {
    condition: condition!,
    outcome: 'blocked',
    atS: 10,
    fact: { kind: 'at-start', channel: 'intakeTemperatureK', value: 314.15, limits: { low: 277.55, high: 308.15 } },
  } as const;
  expect(READINESS_EN.found(result, METRIC)).toBe('intake temperature 41 °C at start, limit 35 °C');
  expect(READINESS_DE.found(result, GERMAN)).toBe('Ansauglufttemperatur beim Start 41 °C, Grenze 35 °C');
});
