import { fc, it as prop } from '@fast-check/vitest';
import { describe, expect, it } from 'vitest';
import type { Recording } from '../../recording/recording.ts';
import { ambientTrend } from './ambient-trend.ts';

const SECONDS = 120;
const drive = (channels: Recording['channels']): Recording => ({
  label: 'drive',
  timeS: Float64Array.from({ length: SECONDS }, (_, i) => i),
  channels,
});
const series = (f: (timeS: number) => number) => Float64Array.from({ length: SECONDS }, (_, i) => f(i));
const speed = (kmh: number) => series(() => kmh / 3.6);
const rounded = (stepPa: number, f: (timeS: number) => number) => series((t) => Math.round(f(t) / stepPa) * stepPa);

describe('the trend of ambient pressure', () => {
  it('is none where the car stands, whatever the barometer flickers', () => {
    expect(ambientTrend(drive({ vehicleSpeedMPerS: speed(0) }))).toBeUndefined();
    expect(ambientTrend(drive({ barometricPa: series((t) => (t % 2 ? 97_000 : 98_000)) }))).toBeUndefined();
    expect(ambientTrend(drive({}))).toBeUndefined();
  });

  it('knows only what roads are like where a moving car has no barometer', () => {
    const slow = ambientTrend(drive({ vehicleSpeedMPerS: speed(30) }));
    const fast = ambientTrend(drive({ vehicleSpeedMPerS: speed(90) }));
    expect(slow?.ratePaPerS).toBe(0);
    expect(fast!.sdPaPerS / slow!.sdPaPerS).toBeCloseTo(3, 9);
    // air of 1.225 kg/m3 (US Standard Atmosphere 1976): 25 m/s on a slope of 1.5 % is 4.5 Pa/s
    expect(fast!.sdPaPerS).toBeCloseTo(1.225 * 9.80665 * 25 * 0.015, 0);
  });

  prop.prop([fc.double({ min: -6, max: 6, noNaN: true }), fc.constantFrom(10, 100, 1000)])(
    'finds a straight change within what rounded readings leave open',
    (rate, stepPa) => {
      const trend = ambientTrend(
        drive({ vehicleSpeedMPerS: speed(80), barometricPa: rounded(stepPa, (t) => 95_300 + rate * t) }),
      )!;
      expect(Math.abs(trend.ratePaPerS - rate)).toBeLessThan(3 * trend.sdPaPerS);
      if (stepPa <= 100) expect(trend.sdPaPerS).toBeLessThan(1.2);
    },
  );

  it('takes a barometer that moves by itself for a moving car', () => {
    const trend = ambientTrend(drive({ barometricPa: rounded(100, (t) => 95_000 + 4 * t) }));
    expect(trend!.ratePaPerS).toBeGreaterThan(2.5);
  });
});
