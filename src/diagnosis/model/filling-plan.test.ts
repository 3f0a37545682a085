import { describe, expect, it } from 'vitest';
import type { Phase, Recording, RecordingNotes } from '../../recording/recording.ts';
import { fillingPlan } from './filling-plan.ts';

const LITRE = 1e-3;
/** 10 US gal/min is 37.85 L/min. Source: 40 CFR 80.22(j); NIST gallon. */
const CAP_M3_PER_S = 37.854 * (LITRE / 60);
const recording = (notes: RecordingNotes): Recording => ({
  label: 'filling',
  timeS: Float64Array.from({ length: 200 }, (_, i) => i),
  channels: {},
  notes: { procedure: 'refuelling', ...notes },
});
const filling = (fromS: number, toS: number): Phase => ({ kind: 'filling', fromS, toS });
const FUEL = { tankVolumeM3: 60 * LITRE, level: 0.2 };

describe('the plan of a filling', () => {
  it('takes the flow from litres over seconds when long enough, else from the notes, else the dispensing cap', () => {
    // the flow takes 0.3 s to build up: that much of the 90 s is lost
    expect(fillingPlan(recording({ filledM3: 45 * LITRE }), [filling(20, 110)], FUEL).flowAt(50)).toBeCloseTo(
      45 * (LITRE / 89.7),
      9,
    );
    expect(fillingPlan(recording({ fillFlowM3PerS: 5e-4 }), [filling(20, 110)], FUEL).flowAt(50)).toBeCloseTo(
      0.95 * 5e-4,
      12,
    );
    const plain = fillingPlan(recording({}), [filling(20, 110)], FUEL);
    expect(plain.flowAt(50)).toBeCloseTo(0.95 * CAP_M3_PER_S, 7);
    // no pump may exceed the cap
    expect(plain.flowAt(50)).toBeLessThan(CAP_M3_PER_S);
    expect([plain.flowAt(10), plain.flowAt(150)]).toEqual([0, 0]);
  });

  it('lets the fill-limit valve shut shortly before the last click when the tank can be full', () => {
    const plan = fillingPlan(recording({ filledM3: 45 * LITRE }), [filling(20, 110)], FUEL);
    expect(plan.endLevel).toBeCloseTo(0.95, 9);
    expect(plan.earlyShutOffs).toBe(0);
    expect(plan.fullAt(100)).toBe(false);
    expect(plan.fullAt(109.9)).toBe(true);
    expect(plan.changes.map((c) => c.kind)).toEqual(['fill-on', 'float-shut', 'fill-off']);
  });

  it('begins a short try where the pressure last stood at its lowest', () => {
    // falls until 30 s, then rises until the click at 31.5 s
    const timeS = Float64Array.from({ length: 600 }, (_, i) => i / 10);
    const p = timeS.map((t) => (t < 30 ? 1000 - 10 * t : t < 31.5 ? 700 + 800 * (t - 30) : 1900));
    const tried: Recording = {
      label: 'filling',
      timeS,
      channels: { tankPressureGaugePa: p },
      notes: { procedure: 'refuelling', shutOffTimesS: [31.5] },
    };
    const plan = fillingPlan(tried, [filling(31, 31.6)], FUEL);
    expect(Math.abs(plan.changes[0]!.timeS - 30)).toBeLessThan(0.11);
    expect(plan.flowAt(30.5)).toBeGreaterThan(0);
    expect(plan.flowAt(29.5)).toBe(0);
  });

  it('begins a long filling where the pressure rose, not where it was found to be filling, and spreads the litres over it', () => {
    const timeS = Float64Array.from({ length: 1200 }, (_, i) => i / 10);
    const p = timeS.map((t) => (t < 20 ? 0 : t < 110 ? 800 * (1 - Math.exp(-(t - 20))) : 0));
    const long: Recording = {
      label: 'filling',
      timeS,
      channels: { tankPressureGaugePa: p },
      notes: { procedure: 'refuelling', shutOffTimesS: [110], filledM3: 45 * LITRE },
    };
    const plan = fillingPlan(long, [filling(20.8, 110)], FUEL);
    expect(Math.abs(plan.changes[0]!.timeS - 20)).toBeLessThan(0.11);
    expect(plan.flowAt(60) * (110 - 20)).toBeGreaterThan(45 * LITRE);
    expect(plan.flowAt(60) * (110 - 20 - 0.5)).toBeLessThan(45 * LITRE);
  });

  it('lets the litres tell the start where samples are too far apart to show it', () => {
    // 1 L at 0.95 of 0.6 L/s takes 1.75 s, and the flow builds up in 0.3 s: more than the 1 s since the last low sample
    const timeS = Float64Array.from({ length: 60 }, (_, i) => 2 * i);
    const p = timeS.map((t) => (t < 22 ? 0 : 2000));
    const tried: Recording = {
      label: 'filling',
      timeS,
      channels: { tankPressureGaugePa: p },
      notes: { procedure: 'refuelling', shutOffTimesS: [22], filledM3: LITRE, fillFlowM3PerS: 0.6 * LITRE },
    };
    const start = fillingPlan(tried, [filling(21, 22)], FUEL).changes[0]!.timeS;
    expect(22 - start).toBeGreaterThan(1.75);
    expect(22 - start).toBeLessThan(2.1);
  });

  it('counts the noted clicks that came with room in the tank', () => {
    const plan = fillingPlan(
      recording({ shutOffTimesS: [24, 44, 64], fillFlowM3PerS: 6e-4 }),
      [filling(20, 24), filling(40, 44), filling(60, 64)],
      FUEL,
    );
    expect(plan.earlyShutOffs).toBe(3);
    expect(plan.endLevel).toBeUndefined();
  });
});
