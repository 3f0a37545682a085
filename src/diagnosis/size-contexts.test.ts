import { describe, expect, it } from 'vitest';
import { findPhases } from '../recording/phases.ts';
import { randomStream } from '../simulation/random.ts';
import { CATALOGUE } from './causes/catalogue.ts';
import { drawAndHold, simulateRecording, TEST_CAR } from './growing/simulated-recording.ts';
import { noisesNear } from './likelihood/noise.ts';
import { prepare } from './prepare.ts';
import { SizeMixture } from './size.ts';
import { sizeContexts } from './size-contexts.ts';
import { fitOneCause } from './weighing/fit-one-cause.ts';

describe('noises near the settled one', () => {
  it('begin with it, grow the slow error, and are each another', () => {
    const settled = { whiteScale: 1, slowPa: 2, slowS: 3, roughness: 1 };
    const near = noisesNear(settled);
    expect(near[0]).toBe(settled);
    expect(near.slice(1).every((n) => n.slowPa > settled.slowPa && n.slowS >= settled.slowS)).toBe(true);
    expect(new Set(near.map((n) => `${n.slowPa} ${n.slowS}`)).size).toBe(near.length);
    // at a long correlation time two of them are one
    expect(noisesNear({ ...settled, slowS: 10 }).length).toBeLessThan(near.length);
  });
});

describe('the size under noises near the settled one', () => {
  const recording = simulateRecording(
    {
      procedure: 'vacuum-draw',
      commands: drawAndHold(60, 0),
      lengthS: 80,
      rateHz: 5,
      form: 'leak',
      leakDiameterMm: 0.5,
      noisePa: 8,
      spread: 0.5,
      engineRuns: true,
    },
    randomStream(2),
  );
  const kind = 'vacuum-draw';
  const prepared = [prepare(TEST_CAR, recording, kind, findPhases(recording, undefined, { kind, reasons: [] }))];
  const { weighing, posterior } = fitOneCause(TEST_CAR, prepared, CATALOGUE.find((c) => c.id === 'leak')!);
  const mixed = sizeContexts(weighing, posterior, [kind]);
  const alone = sizeContexts({ ...weighing, sizing: weighing.sizing.slice(0, 1) }, posterior, [kind]);

  it('has as many parts as noises that count, and weights that lose no more than the rare ones', () => {
    expect(alone.map((c) => c.weight)).toEqual([1]);
    expect(mixed.length).toBeGreaterThan(1);
    expect(mixed.length).toBeLessThanOrEqual(weighing.sizing.length);
    const kept = mixed.reduce((s, c) => s + c.weight, 0);
    expect(kept).toBeLessThanOrEqual(1 + 1e-12);
    expect(kept).toBeGreaterThan(1 - 0.1 * (weighing.sizing.length - 1));
  });

  it('is no surer than under the settled noise alone, and holds the true hole', () => {
    const width = (m: SizeMixture) => Math.log(m.interval().hi90 / m.interval().lo90);
    const both = new SizeMixture(mixed);
    expect(width(both)).toBeGreaterThan(width(new SizeMixture(alone)));
    expect(both.interval().lo90).toBeLessThan(0.5);
    expect(both.interval().hi90).toBeGreaterThan(0.5);
  });
});
