import { describe, expect, it } from 'vitest';
import type { Recording } from '../recording/recording.ts';
import type { ConditionResult } from './condition-result.ts';
import { typicalConditions } from './conditions.ts';
import { evaluateReadiness } from './evaluate.ts';
import { READINESS_EN } from './text/en.ts';
import { PLAIN_METRIC, readinessFigures } from './text/figures.ts';

interface Row {
  readonly rpm: number;
  readonly kmh?: number;
  readonly airC?: number;
  readonly coolantC?: number;
  readonly level?: number;
}

/** A recording of one row a second from stretches of alike rows. */
function record(...stretches: readonly (readonly [seconds: number, row: Row])[]): Recording {
  const rows = stretches.flatMap(([seconds, row]) => Array.from({ length: seconds }, () => row));
  const column = (value: (row: Row) => number | undefined) =>
    Float64Array.from(rows, (row) => value(row) ?? Number.NaN);
  return {
    label: 'made',
    timeS: Float64Array.from(rows, (_, i) => i),
    channels: {
      engineSpeedRpm: column(({ rpm }) => rpm),
      vehicleSpeedMPerS: column(({ kmh }) => (kmh ?? 0) / 3.6),
      intakeTemperatureK: column(({ airC }) => (airC ?? 20) + 273.15),
      coolantTemperatureK: column(({ coolantC }) => (coolantC ?? 20) + 273.15),
      fuelLevel: column(({ level }) => level ?? 0.5),
      barometricPa: column(() => 100_000),
    },
  };
}
const whole = (over: Partial<Row> = {}) =>
  record(
    [10, { rpm: 0, ...over }],
    [150, { rpm: 800, ...over }],
    [700, { rpm: 2200, kmh: 80, ...over }],
    [20, { rpm: 0, ...over }],
  );
const words = (result: ConditionResult | undefined) =>
  result === undefined ? undefined : READINESS_EN.found(result, readinessFigures(PLAIN_METRIC));
const DRAW = typicalConditions('engine-vacuum');
const night = { parkedBeforeS: 9 * 3600, codes: [] };

describe('first blocking condition', () => {
  it('names time and figure of intake air at 41 degC', () => {
    const [attempt] = evaluateReadiness(whole({ airC: 41, coolantC: 30 }), DRAW, night);
    expect(attempt?.verdict).toBe('blocked');
    expect(attempt?.blocker).toMatchObject({ atS: 10, condition: { id: 'intake air at start' } });
    expect(words(attempt?.blocker)).toBe('intake temperature 41 °C at start, limit 35 °C');
  });

  it('says that all is met, and what could not be known', () => {
    expect(evaluateReadiness(whole(), DRAW, night)[0]?.verdict).toBe('conditions-met');
    const unknown = evaluateReadiness(whole(), DRAW, {});
    expect(unknown[0]?.verdict).toBe('unknown');
    expect(
      unknown[0]?.results.filter(({ outcome }) => outcome === 'unknown').map(({ condition }) => condition.id),
    ).toEqual(['related codes', 'parked before']);
  });

  it('finds several attempts in one recording, with the time parked between them', () => {
    const both = record(
      [10, { rpm: 0 }],
      [150, { rpm: 800 }],
      [700, { rpm: 2200, kmh: 80 }],
      [600, { rpm: 0 }],
      [150, { rpm: 800, coolantC: 60 }],
      [700, { rpm: 2200, kmh: 80, coolantC: 90 }],
    );
    const found = evaluateReadiness(both, DRAW, night);
    expect(found.map(({ verdict }) => verdict)).toEqual(['conditions-met', 'blocked']);
    expect(found[1]?.blocker?.condition.id).toBe('coolant at start');
    expect(words(found[1]?.results.find(({ condition }) => condition.id === 'parked before'))).toBe(
      'parked only 10 min before, 8 h wanted',
    );
  });

  it('does not blame what is broken after the monitor was done, nor slosh', () => {
    const later = record(
      [10, { rpm: 0 }],
      [150, { rpm: 800 }],
      [700, { rpm: 2200, kmh: 80 }],
      [60, { rpm: 900, level: 0.95 }],
    );
    expect(evaluateReadiness(later, DRAW, night)[0]?.verdict).toBe('conditions-met');
    const slosh = record(
      [10, { rpm: 0 }],
      [150, { rpm: 800 }],
      [4, { rpm: 2200, kmh: 80, level: 0.95 }],
      [700, { rpm: 2200, kmh: 80 }],
    );
    expect(evaluateReadiness(slosh, DRAW, night)[0]?.verdict).toBe('conditions-met');
  });

  it('a stored related code comes before everything', () => {
    const [attempt] = evaluateReadiness(whole({ airC: 41 }), DRAW, { ...night, codes: ['P0452'] });
    expect(attempt?.blocker?.condition.id).toBe('related codes');
  });

  it('a recording that begins with the engine running does not tell of the start', () => {
    const running = record([150, { rpm: 800 }], [700, { rpm: 2200, kmh: 80 }]);
    expect(evaluateReadiness(running, DRAW, night)[0]?.verdict).toBe('unknown');
  });

  it('a value at the limit is within it, in single precision too', () => {
    const full = whole({ level: 0.85 });
    const single = { ...full.channels, fuelLevel: Float64Array.from(Float32Array.from(full.channels.fuelLevel!)) };
    expect(single.fuelLevel[0]).toBeGreaterThan(0.85);
    expect(evaluateReadiness({ ...full, channels: single }, DRAW, night)[0]?.verdict).toBe('conditions-met');
  });
});
