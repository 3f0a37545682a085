import { fc, test } from '@fast-check/vitest';
import { describe, expect, it } from 'vitest';
import { decimalsOf, roundTicks, timeText, timeTicks } from './ticks.ts';

describe('round ticks', () => {
  it('are the ones a person would choose', () => {
    expect(roundTicks(-2.6, 0.1, 3)).toEqual([-2, -1, 0]);
    expect(roundTicks(0, 100, 5)).toEqual([0, 20, 40, 60, 80, 100]);
    expect(timeTicks(0, 600, 6)).toEqual([0, 120, 240, 360, 480, 600]);
  });

  test.prop([
    fc.double({ min: -1e6, max: 1e6, noNaN: true }),
    fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
    fc.integer({ min: 2, max: 12 }),
  ])('lie inside, are few, and print as different texts', (low, span, most) => {
    const ticks = roundTicks(low, low + span, most);
    expect(ticks.length).toBeLessThanOrEqual(most + 1);
    for (const tick of ticks) expect(tick).toBeGreaterThanOrEqual(low - 1e-6 * span);
    const texts = ticks.map((tick) => tick.toFixed(decimalsOf(ticks)));
    expect(new Set(texts).size).toBe(ticks.length);
  });

  it('speaks of time as a clock does', () => {
    expect(timeText(64.2, 100, 1)).toBe('64.2');
    expect(timeText(754, 900, 0)).toBe('12:34');
    expect(timeText(3725, 90_000, 0)).toBe('1:02:05');
  });
});
