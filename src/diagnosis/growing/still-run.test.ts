import { describe, expect, it } from 'vitest';
import { randomStream } from '../../simulation/random.ts';
import { freezeOnset } from '../likelihood/freeze-onset.ts';
import { characterise } from '../likelihood/observations.ts';
import { SensorSample } from './sensor-sample.ts';
import { StillRun } from './still-run.ts';

function series(n: number, value: (i: number) => number) {
  const timeS = Float64Array.from({ length: n }, (_, i) => i / 10);
  return { timeS, p: timeS.map((_, i) => value(i)) };
}
const onsetOf = (timeS: Float64Array, p: Float64Array) => {
  const run = new StillRun();
  timeS.forEach((t, i) => {
    run.add(t, p[i]!, 0);
  });
  return run.onsetS();
};

describe('readings that stand still, sample by sample', () => {
  it('are found where the whole recording shows them', () => {
    const random = randomStream(3);
    const frozen = series(600, (i) => (i < 250 ? -5 * i + 8 * random.normal() : -1300));
    expect(onsetOf(frozen.timeS, frozen.p)).toBeCloseTo(freezeOnset(frozen.timeS, frozen.p, 0)!, 6);
    const moving = series(600, () => 8 * random.normal());
    expect(freezeOnset(moving.timeS, moving.p, 0)).toBeUndefined();
    expect(onsetOf(moving.timeS, moving.p)).toBeUndefined();
  });

  it('are not a freeze when they never moved', () => {
    const still = series(300, () => 0);
    expect(onsetOf(still.timeS, still.p)).toBeUndefined();
  });
});

describe('the selection of raw readings', () => {
  it('tells noise and step as the whole recording does, however long', () => {
    const random = randomStream(4);
    for (const n of [200, 5000, 60_000]) {
      const sample = new SensorSample();
      for (let i = 0; i < n; i++) sample.add(i / 10, 25 * Math.round((20 * random.normal() - i / 50) / 25));
      const { timeS, gaugePa } = sample.readings();
      const c = characterise(timeS, gaugePa, { low: -1e9, high: 1e9 });
      expect(timeS.length).toBeLessThanOrEqual(24 * 41);
      expect(c.stepPa).toBeCloseTo(25, 6);
      expect(c.noisePa).toBeGreaterThan(15);
      expect(c.noisePa).toBeLessThan(27);
      expect(c.sampleGapS).toBeCloseTo(0.1, 6);
    }
  });
});
