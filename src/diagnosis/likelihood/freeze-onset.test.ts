import { describe, expect, it } from 'vitest';
import { randomStream } from '../../simulation/random.ts';
import { freezeOnset } from './freeze-onset.ts';

const timeS = Float64Array.from({ length: 300 }, (_, i) => 0.1 * i);
const moving = (seed: number) => {
  const random = randomStream(seed);
  return timeS.map((t) => -30 * t + 5 * random.normal());
};

describe('a sensor that freezes half-way', () => {
  it('is noticed where it stands still for the rest', () => {
    const p = moving(1).map((x, i, all) => (i < 150 ? x : all[150]!));
    expect(freezeOnset(timeS, p, 0)).toBeCloseTo(15, 6);
  });

  it('may flicker by one step', () => {
    const p = moving(2).map((x, i) => (i < 150 ? 10 * Math.round(x / 10) : i % 3 === 0 ? -440 : -450));
    const onset = freezeOnset(timeS, p, 10);
    // readings that pass through the frozen value count as frozen
    expect(onset).toBeGreaterThan(14);
    expect(onset).toBeLessThanOrEqual(15);
  });

  it('is not seen in readings that move, that only rest at the end, or that never moved', () => {
    expect(freezeOnset(timeS, moving(3), 0)).toBeUndefined();
    expect(
      freezeOnset(
        timeS,
        moving(4).map((x, i, all) => (i < 270 ? x : all[270]!)),
        0,
      ),
    ).toBeUndefined();
    expect(freezeOnset(timeS, new Float64Array(300).fill(12), 0)).toBeUndefined();
  });
});
