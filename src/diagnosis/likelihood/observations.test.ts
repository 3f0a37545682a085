import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Recording } from '../../recording/recording.ts';
import { randomStream } from '../../simulation/random.ts';
import { characterise, characteriseQuietest, median, observe } from './observations.ts';

const NO_RAILS = { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };
const record = (timeS: Float64Array, p: Float64Array): Recording => ({
  label: 'made up',
  timeS,
  channels: { tankPressureGaugePa: p },
});
const SMOOTH = { stepPa: 0, noisePa: 5, sampleGapS: 0.1 };

describe('bins', () => {
  const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

  it('never cross a command change or a phase, keep to their width, and lose no reading', () => {
    fc.assert(
      fc.property(
        fc.array(between(0.05, 1.2), { minLength: 20, maxLength: 120 }),
        fc.array(between(0.5, 40), { minLength: 1, maxLength: 4 }),
        between(0.2, 3),
        fc.array(fc.boolean(), { minLength: 120, maxLength: 120 }),
        (gaps, times, width, missing) => {
          let t = 0;
          const timeS = Float64Array.from(gaps, (g) => {
            t += g;
            return t;
          });
          const events = [...times].sort((a, b) => a - b);
          const p = timeS.map((x, i) => (missing[i] ? Number.NaN : -100 + 3 * x));
          const phases = [
            { kind: 'draw' as const, fromS: 0, toS: events[0]! },
            { kind: 'hold' as const, fromS: events[0]!, toS: 1e3 },
          ];
          const o = observe(record(timeS, p), phases, events, SMOOTH, () => width);
          const counts = Array.from(o.whiteVariance, (v) => SMOOTH.noisePa ** 2 / v);
          const finite = p.filter(Number.isFinite);
          expect(o.spikes).toBe(0);
          expect(counts.reduce((s, n) => s + n, 0)).toBeCloseTo(finite.length, 6);
          const mean = counts.reduce((s, n, i) => s + n * o.gaugePa[i]!, 0);
          expect(mean).toBeCloseTo(
            finite.reduce((s, x) => s + x, 0),
            5,
          );
          // the reading is linear in time, so a bin that is not a mean of its own samples would show
          o.timeS.forEach((at, i) => {
            expect(o.gaugePa[i]).toBeCloseTo(-100 + 3 * at, 8);
          });
          // walk the samples again: the ones of a bin lie together, inside its width, and on one side of every event
          let i = 0;
          counts.forEach((n, k) => {
            const own: number[] = [];
            while (own.length < Math.round(n)) {
              if (!missing[i]) own.push(timeS[i]!);
              i++;
            }
            expect(own.at(-1)! - own[0]!).toBeLessThanOrEqual(width);
            for (const e of events) expect(own[0]! < e && own.at(-1)! >= e).toBe(false);
            expect(o.phase[k]).toBe(own[0]! < events[0]! ? 'draw' : 'hold');
          });
        },
      ),
      { numRuns: 60 },
    );
  });

  it('count the time since the last change, and none before the first', () => {
    const timeS = Float64Array.from({ length: 10 }, (_, i) => i);
    const o = observe(record(timeS, timeS), [], [4.5], SMOOTH, () => 0.5);
    expect(o.sinceEventS[2]).toBe(Number.POSITIVE_INFINITY);
    expect(o.sinceEventS[6]).toBeCloseTo(1.5, 12);
  });

  it('leave out a spike and say so', () => {
    const timeS = Float64Array.from({ length: 40 }, (_, i) => 0.1 * i);
    const p = timeS.map((t, i) => (i === 20 ? 900 : -5 * t));
    const o = observe(record(timeS, p), [], [], SMOOTH, () => 1);
    expect(o.spikes).toBe(1);
    expect(Math.max(...o.gaugePa)).toBeLessThanOrEqual(0);
  });

  it('ask for a pressure channel by name', () => {
    const bare: Recording = { label: 'no pressure', timeS: Float64Array.of(0, 1), channels: {} };
    expect(() => observe(bare, [], [], SMOOTH, () => 1)).toThrow(/no pressure: no tank pressure channel/);
  });
});

describe('character of a sensor', () => {
  const noisy = (sd: number, step: number) => {
    const random = randomStream(7);
    const timeS = Float64Array.from({ length: 1200 }, (_, i) => 0.1 * i);
    const p = timeS.map((t) => {
      const x = -2000 * Math.exp(-t / 60) + sd * random.normal();
      return step > 0 ? step * Math.round(x / step) : x;
    });
    return characterise(timeS, p, NO_RAILS);
  };

  it('finds planted white noise on a moving pressure within a tenth', () => {
    for (const sd of [3, 12, 60]) expect(noisy(sd, 0).noisePa / sd).toBeGreaterThan(0.9);
    for (const sd of [3, 12, 60]) expect(noisy(sd, 0).noisePa / sd).toBeLessThan(1.1);
  });

  it('finds the converter step, and never claims less noise than it hides', () => {
    const c = noisy(3, 29);
    expect(c.stepPa).toBeCloseTo(29, 6);
    expect(c.noisePa).toBeGreaterThanOrEqual(29 / Math.sqrt(12));
    expect(noisy(12, 0).sampleGapS).toBeCloseTo(0.1, 9);
  });

  it('says nothing of noise where all readings sit at the rail', () => {
    const timeS = Float64Array.from({ length: 100 }, (_, i) => 0.1 * i);
    const c = characterise(timeS, new Float64Array(100).fill(-4000), { low: -4000, high: 4000 });
    expect(c.rawNoisePa).toBeUndefined();
  });

  it('takes the middle of a list', () => {
    expect(median([3, 1, 2])).toBe(2);
    expect(median([4, 1, 2, 3])).toBe(2.5);
    expect(median([])).toBeNaN();
  });
});

describe('noise where most of the recording moves', () => {
  it('is judged by the quietest phase, whose bends a slow sampling does not take for noise', () => {
    const random = randomStream(5);
    const timeS = Float64Array.from({ length: 60 }, (_, i) => i);
    // stands for a quarter of a minute, then swings by kilopascals within seconds
    const p = timeS.map((t) => (t < 15 ? 0 : 1200 * Math.sin(t)) + 15 * random.normal());
    const rails = { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };
    const phases = [
      { kind: 'baseline' as const, fromS: 0, toS: 15 },
      { kind: 'filling' as const, fromS: 15, toS: 60 },
    ];
    const whole = characterise(timeS, p, rails);
    const quiet = characteriseQuietest(timeS, p, rails, phases);
    expect(whole.rawNoisePa!).toBeGreaterThan(150);
    expect(quiet.rawNoisePa!).toBeLessThan(40);
    expect(quiet.rawNoisePa!).toBeGreaterThan(5);
    // for the fit the swings stay noise
    expect(quiet.noisePa).toBe(whole.noisePa);
  });
});
