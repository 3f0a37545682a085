import { expect, test } from 'vitest';
import { LiveData } from './live-data.ts';

const rows = (from: number, count: number) => ({
  from,
  timeS: Array.from({ length: count }, (_, i) => (from + i) / 10),
  channels: { tankPressureGaugePa: Array.from({ length: count }, (_, i) => 100 - from - i) },
});

test('rows join on without a gap, come twice without harm, and a hole is told', () => {
  const data = new LiveData();
  expect(data.add(rows(0, 5))).toBe(true);
  expect(data.add(rows(3, 5))).toBe(true);
  expect(data.rows).toBe(8);
  expect(data.add(rows(9, 5))).toBe(false);
  expect(data.rows).toBe(8);
  const { order, source } = data.drawn([], []);
  expect(order).toEqual(['tankPressureGaugePa']);
  expect([...source.columns[0]!.values]).toEqual([100, 99, 98, 97, 96, 95, 94, 93]);
});

test('a channel that began later is absent before; one asked for in turn is drawn on, but not for ever', () => {
  const data = new LiveData();
  data.add({ from: 0, timeS: [0, 0.5, 1], channels: { purgeDuty: [0, 0.1, 0.2] } });
  data.add({
    from: 3,
    timeS: [1.5, 2, 4],
    channels: { purgeDuty: [null, 0.3, null], engineSpeedRpm: [800, null, null] },
  });
  const { order, source } = data.drawn([{ fromS: 1 }], [{ fromS: 4 }]);
  expect(order).toEqual(expect.arrayContaining(['purgeDuty', 'engineSpeedRpm', 'ventClosed']));
  const values = (name: string) => [...source.columns[order.indexOf(name as never)]!.values];
  expect(values('purgeDuty')).toEqual([0, 0.1, 0.2, 0.2, 0.3, 0.3]);
  expect(values('engineSpeedRpm')).toEqual([Number.NaN, Number.NaN, Number.NaN, 800, 800, Number.NaN]);
  expect(values('ventClosed')).toEqual([0, 0, 1, 1, 1, 1]);
  expect(data.latest('purgeDuty')).toBe(0.3);
  expect(source.pauses[0]!.fromS).toBe(4);
});
