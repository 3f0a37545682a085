import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findQuality } from './quality.ts';
import type { Recording } from './recording.ts';

/** Standard normal numbers from a fixed sequence (Box-Muller on a linear congruential generator). */
function normals(count: number, seed = 1): Float64Array {
  let state = seed;
  const next = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return Float64Array.from({ length: count }, () => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next()));
}

const withPressure = (pressure: Float64Array, dtS = 0.1): Recording => ({
  timeS: Float64Array.from(pressure, (_, i) => i * dtS),
  channels: { tankPressureGaugePa: pressure },
  label: 'made',
});
const pressureQuality = (pressure: Float64Array, sensor?: { minGaugePa: number; maxGaugePa: number }) =>
  findQuality(withPressure(pressure), sensor).channels[0]!;

describe('time', () => {
  it('gives rate, jitter, missing samples and gaps', () => {
    const timeS = Float64Array.from([0, 1, 2, 3, 5, 6, 7, 20, 21, 22]);
    const { time } = findQuality({ timeS, channels: {}, label: 'made' }, undefined);
    expect(time).toMatchObject({ durationS: 22, samples: 10, medianIntervalS: 1, rateHz: 1, missingSamples: 13 });
    expect(time.gaps).toEqual([{ fromS: 7, toS: 20 }]);
  });
});

describe('noise', () => {
  it('is found under a curve and in spite of spikes', () => {
    const noise = normals(4000);
    const pressure = noise.map((z, i) => 8 * z - 2000 * Math.exp(-i / 1500) + (i % 400 === 7 ? 900 : 0));
    const quality = pressureQuality(pressure);
    expect(quality.noise).toBeGreaterThan(7);
    expect(quality.noise).toBeLessThan(9);
    expect(quality.spikes).toBe(10);
  });
});

describe('resolution', () => {
  it('is the step of a quantised channel, rounded or not, whatever the step', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.integer({ min: 1, max: 1e6 }),
        fc.boolean(),
        (step, seed, rounded) => {
          const pressure = normals(600, seed).map((z, i) => {
            const value = step * Math.round((1.3 * step * z - 2000 + 3 * i) / step);
            // As a logger that writes quarters of a pascal would.
            return rounded && step > 5 ? Math.round(value * 4) / 4 : value;
          });
          const found = pressureQuality(pressure).resolution!;
          expect(found / step).toBeGreaterThan(0.98);
          expect(found / step).toBeLessThan(1.02);
        },
      ),
    );
  });
  it('is absent where the numbers are finer than the noise', () => {
    expect(pressureQuality(normals(2000).map((z) => 10 * z)).resolution).toBeUndefined();
  });
});

describe('a sensor at its end', () => {
  const curve = Float64Array.from(normals(600), (z, i) => Math.max(-2500, 5 * z - 10 * i));
  it('is clipped low, with and without its range', () => {
    const share = curve.filter((value) => value === -2500).length / 600;
    expect(pressureQuality(curve).clippedLow).toBeCloseTo(share, 1);
    expect(pressureQuality(curve, { minGaugePa: -2500, maxGaugePa: 2500 }).clippedLow).toBeCloseTo(share, 1);
    expect(pressureQuality(curve).clippedHigh).toBe(0);
  });
  it('is not clipped far from the ends of its known range', () => {
    expect(pressureQuality(curve, { minGaugePa: -3700, maxGaugePa: 3700 }).clippedLow).toBe(0);
  });
});

describe('a channel that never moves', () => {
  it('is stuck for a tank pressure, merely constant for a barometer', () => {
    const timeS = Float64Array.from({ length: 50 }, (_, i) => i);
    const channels = {
      tankPressureGaugePa: new Float64Array(50).fill(12),
      barometricPa: new Float64Array(50).fill(98_000),
    };
    const [tank, barometer] = findQuality({ timeS, channels, label: 'made' }, undefined).channels;
    expect(tank).toMatchObject({ constant: true, stuck: true });
    expect(barometer).toMatchObject({ constant: true, stuck: false });
  });
  it('with every sample missing is neither', () => {
    const quality = pressureQuality(new Float64Array(50).fill(Number.NaN));
    expect(quality).toMatchObject({ missing: 50, constant: false, stuck: false });
    expect(quality.min).toBeUndefined();
  });
});
