import { describe, expect, it } from 'vitest';
import { decodeSamples, encodeSamples, type SamplesFacts } from './samples.ts';

const FACTS: SamplesFacts = {
  label: 'hold – prüf.csv',
  procedure: 'vacuum-draw',
  phases: [{ kind: 'hold', fromS: 0, toS: 2 }],
  foundPhases: [],
  quality: ['1 sample per second'],
  warnings: [],
};

describe('samples as bytes', () => {
  it.each([0, 1, 2, 3, 1001])('gives back %i samples', (count) => {
    const timeS = Float64Array.from({ length: count }, (_, i) => i * 0.1);
    const tankPressureGaugePa = Float64Array.from({ length: count }, (_, i) => (i % 5 === 2 ? Number.NaN : -i * 1.5));
    const ventClosed = Float64Array.from({ length: count }, (_, i) => i % 2);
    const bytes = encodeSamples({ timeS, channels: { tankPressureGaugePa, ventClosed } }, FACTS);
    const back = decodeSamples(bytes.buffer as ArrayBuffer);
    expect(back.head).toMatchObject({ ...FACTS, samples: count });
    expect([...back.timeS]).toEqual([...timeS]);
    expect([...(back.channels.tankPressureGaugePa ?? [])]).toEqual([...Float32Array.from(tankPressureGaugePa)]);
    expect([...(back.channels.ventClosed ?? [])]).toEqual([...ventClosed]);
    expect(back.channels.purgeDuty).toBeUndefined();
  });

  it('refuses other bytes with words', () => {
    expect(() => decodeSamples(new TextEncoder().encode('{"error":1}').buffer as ArrayBuffer)).toThrow(/no samples/);
  });
});
