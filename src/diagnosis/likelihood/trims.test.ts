import { describe, expect, it } from 'vitest';
import type { Recording } from '../../recording/recording.ts';
import { randomStream } from '../../simulation/random.ts';
import type { Observations } from './observations.ts';
import { trimData, trimLogEvidence, VAPOUR_SHARE } from './trims.ts';

const N = 120;
const timeS = Float64Array.from({ length: N }, (_, i) => i);
const purging = (t: number) => t % 40 >= 20;
/** mol/s: about what an idling engine breathes, and a twentieth of it through the purge valve. */
const PURGE = 0.01;
const OBSERVATIONS = { timeS } as unknown as Observations;

function recording(trim: (t: number) => number, rpm = 800): Recording {
  const random = randomStream(3);
  // the loop takes some seconds to follow
  let followed = trim(0);
  return {
    label: 'made up',
    timeS,
    channels: {
      shortTrim: timeS.map((t) => {
        followed += (trim(t) - followed) * (1 - Math.exp(-1 / 3));
        return followed + 0.004 * random.normal();
      }),
      longTrim: new Float64Array(N).fill(0.01),
      engineSpeedRpm: new Float64Array(N).fill(rpm),
      manifoldAbsPa: new Float64Array(N).fill(38e3),
    },
  };
}
const flows = (purge: number) => ({
  purge: timeS.map((t) => (purging(t) ? purge : 0)),
  vapourFromTank: new Float64Array(N),
});
const evidence = (r: Recording, purge: number, share: { centre: number; sd: number } = VAPOUR_SHARE.healthy) =>
  trimLogEvidence(trimData(r, OBSERVATIONS, 293)!, timeS, flows(purge), share);

describe('fuel trims as witnesses of the purge', () => {
  it('engine air follows from displacement, speed and manifold pressure', () => {
    const d = trimData(
      recording(() => 0),
      OBSERVATIONS,
      293,
    )!;
    // 800/120 fillings/s of 1.8 L at 38 kPa and 293 K, volumetric efficiency 0.85: 0.159 mol/s
    expect(d.airMolPerS[50]).toBeCloseTo(0.159, 3);
    expect(d.trim[50]).toBeGreaterThan(-0.02);
    expect(d.trim[50]).toBeLessThan(0.04);
  });

  it('need an engine that runs, and trims', () => {
    expect(
      trimData(
        recording(() => 0, 0),
        OBSERVATIONS,
        293,
      ),
    ).toBeUndefined();
    const r = recording(() => 0);
    const { shortTrim: _, ...without } = r.channels;
    expect(trimData({ ...r, channels: without }, OBSERVATIONS, 293)).toBeUndefined();
  });

  it('trims that answer the valve speak for flow, trims that sleep against it', () => {
    const lean = recording((t) => (purging(t) ? 0.04 : 0));
    const asleep = recording(() => 0);
    expect(evidence(lean, PURGE) - evidence(lean, 0)).toBeGreaterThan(0.5);
    // pure air through the valve would ask for fuel; a share of vapour near balance hides it, so sleep says less
    expect(evidence(asleep, 0)).toBeGreaterThan(evidence(asleep, PURGE));
  });

  it('the more fuel is taken away while purging, the more it speaks for a canister full of fuel', () => {
    const odds = [-0.03, -0.1, -0.25].map((level) => {
      const r = recording((t) => (purging(t) ? level : 0));
      return evidence(r, PURGE, VAPOUR_SHARE.saturated) - evidence(r, PURGE, VAPOUR_SHARE.healthy);
    });
    expect(odds[0]).toBeLessThan(-2);
    expect(odds[1]! - odds[0]!).toBeGreaterThan(1);
    expect(odds[2]! - odds[1]!).toBeGreaterThan(1);
  });

  it('a constant trim error is no evidence', () => {
    const here = recording(() => 0);
    const there = recording(() => 0.03);
    expect(
      Math.abs(evidence(here, 0) - evidence(here, PURGE) - evidence(there, 0) + evidence(there, PURGE)),
    ).toBeLessThan(0.5);
  });
});
