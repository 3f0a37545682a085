import { describe, expect, it } from 'vitest';
import { undoSummerTime } from './summer-time.ts';

const HOUR = 3600;
/** Ten minutes around a moment of the day, a sample every `step` seconds, the clock set by `shift` hours there. */
const around = (hour: number, shift: number, step = 0.5): Float64Array =>
  Float64Array.from({ length: 600 / step }, (_, i) => {
    const t = hour * HOUR - 300 + i * step;
    return t >= hour * HOUR ? t + shift * HOUR : t;
  });

describe('a clock set while recording', () => {
  it.each([
    ['forward', 2, 1],
    ['back', 3, -1],
    ['back', 1, -1],
  ] as const)('%s at %d o’clock: the times go on', (direction, hour, shift) => {
    const times = around(hour, shift);
    expect(undoSummerTime(times)).toEqual({ index: 600, direction });
    expect(times.every((t, i) => i === 0 || Math.abs(t - times[i - 1]! - 0.5) < 1e-9)).toBe(true);
  });

  it('on a day of its own too', () => {
    const times = around(20_000 * 24 + 2, 1);
    expect(undoSummerTime(times)?.direction).toBe('forward');
  });

  it('a pause of an hour by day, or one that begins between the hours, stays a pause', () => {
    const noon = around(12, 1);
    expect(undoSummerTime(noon)).toBeUndefined();
    const between = around(2, 1).map((t) => t + 700);
    expect(undoSummerTime(between)).toBeUndefined();
    expect(between[600]! - between[599]!).toBeGreaterThan(HOUR);
  });

  it('a recording that starts over is none', () => {
    const times = Float64Array.from({ length: 400 }, (_, i) => (i % 200) * 0.5);
    expect(undoSummerTime(times)).toBeUndefined();
  });

  it('hourly readings cannot tell', () => {
    expect(undoSummerTime(Float64Array.of(0, HOUR, 2 * HOUR, 4 * HOUR))).toBeUndefined();
  });
});
