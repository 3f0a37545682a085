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
    expect(fillingPlan(recording({ filledM3: 45 * LITRE }), [filling(20, 110)], FUEL).flowAt(50)).toBeCloseTo(
      45 * (LITRE / 90),
      12,
    );
    expect(fillingPlan(recording({ fillFlowM3PerS: 5e-4 }), [filling(20, 110)], FUEL).flowAt(50)).toBe(5e-4);
    const plain = fillingPlan(recording({}), [filling(20, 110)], FUEL);
    expect(plain.flowAt(50)).toBeCloseTo(CAP_M3_PER_S, 7);
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
