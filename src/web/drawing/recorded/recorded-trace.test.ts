import { expect, it } from 'vitest';
import { recordedTrace } from './recorded-trace.ts';

const timeS = Float64Array.from({ length: 50_000 }, (_, i) => i / 10);
const values = Float32Array.from(timeS, (t) => 100 * Math.sin(t / 50));

it('keeps the extremes of what it thins, on a clock of its own', () => {
  const spiked = values.slice();
  spiked[20_001] = -900;
  spiked[7] = Number.NaN;
  const trace = recordedTrace(timeS, spiked, 1000, 4000)!;
  expect(trace.timeS.length).toBeLessThan(2500);
  expect(trace.timeS[0]).toBeCloseTo(0, 5);
  expect(trace.timeS.at(-1)!).toBeLessThanOrEqual(3000);
  expect(Math.min(...trace.gaugePa)).toBe(-900);
  const at = trace.gaugePa.indexOf(-900);
  expect(trace.timeS[at]).toBeCloseTo(1000.1, 3);
  expect([...trace.timeS]).toEqual([...trace.timeS].sort((a, b) => a - b));
});

it('is absent where nothing was read', () => {
  expect(recordedTrace(timeS, new Float32Array(50_000).fill(Number.NaN), 0, 100)).toBeUndefined();
});
