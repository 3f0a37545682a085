import { describe, expect, it } from 'vitest';
import { randomStream } from '../../simulation/random.ts';
import { allowanceFor, estimateNoise, FIRST_NOISE, type Noise, sizingNoise } from './noise.ts';
import type { Observations } from './observations.ts';

const STEP_S = 1;
const WHITE_PA = 4;

function hold(n: number): Observations {
  return {
    timeS: Float64Array.from({ length: n }, (_, i) => i * STEP_S),
    gaugePa: Float64Array.from({ length: n }, (_, i) => -2000 * Math.exp(-i / 100)),
    whiteVariance: new Float64Array(n).fill(WHITE_PA ** 2),
    phase: new Array(n).fill('hold'),
    sinceEventS: Float64Array.from({ length: n }, (_, i) => 10 + i),
  };
}

function residuals(n: number, noise: Omit<Noise, 'roughness'>, seed: number): Float64Array {
  const random = randomStream(seed);
  const f = Math.exp(-STEP_S / noise.slowS);
  let slow = noise.slowPa * random.normal();
  return Float64Array.from({ length: n }, () => {
    slow = f * slow + Math.sqrt(1 - f * f) * noise.slowPa * random.normal();
    return slow + Math.sqrt(noise.whiteScale) * WHITE_PA * random.normal();
  });
}

describe('noise from the residuals of a fit', () => {
  it('recovers a planted slow error and its time within a factor of two or so', () => {
    for (const [slowPa, slowS] of [
      [16, 10],
      [40, 3],
      [64, 30],
    ] as const) {
      const found = [1, 2, 3].map((seed) =>
        estimateNoise(hold(300), residuals(300, { whiteScale: 1, slowPa, slowS }, seed), 'vacuum-draw'),
      );
      for (const f of found) {
        expect(Math.abs(Math.log(f.slowPa / slowPa))).toBeLessThan(Math.log(2.1));
        expect(Math.abs(Math.log(f.slowS / slowS))).toBeLessThan(Math.log(3.5));
      }
    }
  });

  it('finds hardly any slow error where there is none, and the white noise that there is', () => {
    for (const whiteScale of [0.5, 1, 2]) {
      const found = estimateNoise(hold(400), residuals(400, { whiteScale, slowPa: 0, slowS: 1 }, 5), 'vacuum-draw');
      expect(found.slowPa).toBeLessThan(WHITE_PA);
      expect(Math.abs(Math.log(found.whiteScale / whiteScale))).toBeLessThan(0.4);
    }
  });

  it('is not carried away by an outlier', () => {
    const clean = residuals(200, { whiteScale: 1, slowPa: 1, slowS: 3 }, 9);
    const before = estimateNoise(hold(200), clean, 'vacuum-draw');
    const after = estimateNoise(hold(200), clean.with(100, 90), 'vacuum-draw');
    expect(after.slowPa).toBeLessThanOrEqual(4 * before.slowPa);
    expect(after.whiteScale).toBeLessThanOrEqual(1.5 * before.whiteScale);
  });
});

describe('roughness of draw and release', () => {
  const n = 120;
  const drawn: Observations = {
    ...hold(n),
    gaugePa: Float64Array.from({ length: n }, (_, i) => (i < 40 ? -50 * i : -2000)),
    phase: Array.from({ length: n }, (_, i) => (i < 40 ? 'draw' : 'hold')),
  };

  it('is small where the model follows the draw, whole where it does not', () => {
    const close = residuals(n, { whiteScale: 1, slowPa: 1, slowS: 3 }, 4);
    const slow = residuals(n, { whiteScale: 0, slowPa: 300, slowS: 15 }, 6);
    const far = close.map((x, i) => x + (i < 40 ? slow[i]! : 0));
    expect(estimateNoise(drawn, close, 'vacuum-draw').roughness).toBeLessThan(0.3);
    expect(estimateNoise(drawn, far, 'vacuum-draw').roughness).toBeGreaterThan(0.5);
    expect(estimateNoise(hold(n), close, 'vacuum-draw').roughness).toBe(1);
  });

  it('leaves the hold as it is, and a size is read with the whole allowance', () => {
    const noise = { ...FIRST_NOISE, roughness: 0.25 };
    const part = allowanceFor(drawn, noise, 'vacuum-draw');
    const whole = allowanceFor(drawn, sizingNoise(noise), 'vacuum-draw');
    expect(part.slowPa[20]! / whole.slowPa[20]!).toBeCloseTo(0.25, 2);
    expect(part.slowPa[80]).toBe(whole.slowPa[80]);
    expect(sizingNoise(noise)).toEqual(FIRST_NOISE);
  });
});

describe('allowances', () => {
  it('grow with the excursion in draw and release, and leave the hold to the noise', () => {
    const o = {
      ...hold(90),
      phase: Array.from({ length: 90 }, (_, i) => (['draw', 'hold', 'release'] as const)[Math.floor(i / 30)]!),
    };
    const sinceEventS = Float64Array.from({ length: 90 }, (_, i) => 2 + (i % 30));
    const a = allowanceFor({ ...o, sinceEventS }, FIRST_NOISE, 'vacuum-draw');
    const shallow = allowanceFor(
      { ...o, sinceEventS, gaugePa: o.gaugePa.map((x) => x / 10) },
      FIRST_NOISE,
      'vacuum-draw',
    );
    expect(a.slowPa[40]).toBe(FIRST_NOISE.slowPa);
    expect(a.variance[40]).toBe(WHITE_PA ** 2);
    expect(a.slowPa[10]! / shallow.slowPa[10]!).toBeGreaterThan(5);
    expect(a.slowPa[61]).toBeGreaterThan(a.slowPa[68]!);
    expect(a.slowPa[88]).toBe(FIRST_NOISE.slowPa);
    expect([a.fresh[30], a.fresh[31], a.fresh[60]]).toEqual([1, 0, 1]);
  });
});
