import { describe, expect, it } from 'vitest';
import type { Finding, Overlay } from '../../diagnosis/finding.ts';
import { joined, misfitPa, openPoints, partings, rankedCauses } from './finding-parts.ts';

const overlay = (apart: readonly number[]): Overlay => ({
  recording: 0,
  cause: 'leak',
  timeS: apart.map((_, k) => k),
  recordedGaugePa: apart.map((each) => each - 1000),
  modelledGaugePa: apart.map(() => -1000),
  bandPa: apart.map(() => 10),
});

const finding: Finding = {
  verdict: 'fault',
  procedures: ['vacuum-draw'],
  causes: [
    {
      id: 'leak',
      probability: 0.7,
      places: [
        { group: ['cap and neck', 'tank top'], probability: 0.6 },
        { group: ['canister'], probability: 0.1 },
      ],
      diameterMm: { median: 0.6, lo90: 0.5, hi90: 0.7 },
      relativeLogEvidence: 0,
      byPhase: [],
    },
    { id: 'vent_leak', probability: 0.295, places: [], relativeLogEvidence: -1, byPhase: [] },
    { id: 'none', probability: 0.003, places: [], relativeLogEvidence: -9, byPhase: [] },
    { id: 'pump_weak', probability: 0.002, places: [], relativeLogEvidence: -9, byPhase: [] },
  ],
  pairs: [],
  diameterMm: null,
  exceeds: { mm0_5: null, mm1_0: null },
  reasons: [],
  warnings: [],
  overlays: [],
};

describe('where record and model part', () => {
  it('is where several readings in a row leave the band on one side', () => {
    const found = partings(overlay([0, 30, 0, 0, 12, 15, 20, 14, 0, -11, -12, -40, -11, -13, 0]));
    expect(found).toEqual([
      { fromS: 9, toS: 13, byPa: -40 },
      { fromS: 4, toS: 7, byPa: 20 },
    ]);
  });

  it('does not bridge absent readings, and does not count them', () => {
    expect(partings(overlay([20, 20, Number.NaN, 20, 20]))).toEqual([]);
    expect(misfitPa(overlay([3, 4, Number.NaN]))).toBeCloseTo(Math.sqrt(12.5), 9);
  });
});

describe('parts of a finding', () => {
  it('sums what is too small for a row, and loses no share', () => {
    const { shown, rest } = rankedCauses(finding);
    expect(shown.map(({ id }) => id)).toEqual(['leak', 'vent_leak']);
    expect(rest?.count).toBe(2);
    expect(shown.reduce((sum, { probability }) => sum + probability, rest?.share ?? 0)).toBeCloseTo(1, 12);
  });

  it('says what is open', () => {
    const open = openPoints(finding);
    expect(open.alike).toEqual([['cap and neck', 'tank top']]);
    expect(open.rival?.id).toBe('vent_leak');
    expect(open.hasHole).toBe(true);
    const said = openPoints({ ...finding, reasons: [{ kind: 'limits', text: 'Not excluded by these: x.' }] });
    expect(said.rival).toBeNull();
    expect(joined(['a', 'b', 'c'], 'or')).toBe('a, b or c');
  });
});
