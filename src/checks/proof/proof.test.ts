/** Proofs: verdicts, budget by area, what is missing. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judgeProof, leakBudget, type Measured, type ProofInput } from './proof.ts';
import { normalCdf } from './size-belief.ts';
import { percentWords, proofInWords } from './words.ts';

const sized = (median: number, lo90: number, hi90: number, change: Partial<Measured['conditions']> = {}): Measured => ({
  diameterMm: { median, lo90, hi90 },
  conditions: {
    method: 'T20',
    fuelTemperatureK: 293,
    ambientTemperatureK: 293,
    fuelLevel: 0.5,
    reidVapourPressurePa: 60_000,
    ...change,
  },
});
const BEFORE = sized(0.9, 0.8, 1.0);
const TIGHT = sized(0.08, 0.04, 0.14);
const CASE: ProofInput = {
  before: BEFORE,
  after: TIGHT,
  limitMm: 0.5,
  repaired: ['F01'],
  causesBefore: [
    { id: 'F01', probability: 0.8 },
    { id: 'F05', probability: 0.2 },
  ],
  selfTest: 'passed',
};

describe('verdicts', () => {
  test('tight after a leak before, alike: held', () => {
    const proof = judgeProof(CASE);
    expect(proof.verdict).toBe('held');
    expect(proof.missing).toEqual([]);
    expect(proof.limitMet).toBeGreaterThan(0.99);
    expect(proof.madeDifference).toBeGreaterThan(0.99);
    expect(proof.anotherLeak).toBeLessThan(0.1);
  });

  test('as large as before: not held', () => {
    expect(judgeProof({ ...CASE, after: sized(0.9, 0.8, 1.0) }).verdict).toBe('not-held');
  });

  test('smaller but above the limit: not held, and another leak is likely', () => {
    const proof = judgeProof({ ...CASE, after: sized(0.7, 0.65, 0.75) });
    expect(proof.verdict).toBe('not-held');
    expect(proof.madeDifference).toBeGreaterThan(0.9);
    expect(proof.anotherLeak).toBeGreaterThan(0.9);
  });

  test('the car’s own test failed: not held', () => {
    expect(judgeProof({ ...CASE, selfTest: 'failed' }).verdict).toBe('not-held');
  });

  test.each([
    ['no measurement before', { before: undefined }],
    ['no measurement after', { after: undefined }],
    ['limit not certain', { after: sized(0.48, 0.35, 0.62) }],
    ['conditions differ', { after: sized(0.08, 0.04, 0.14, { fuelTemperatureK: 300 }) }],
    ['conditions differ', { after: sized(0.08, 0.04, 0.14, { method: 'vacuum-draw' }) }],
    ['another leak not excluded', { after: sized(0.35, 0.3, 0.4) }],
  ] as const)('not proven, and says why: %s', (why, change) => {
    const { before, after, ...rest } = { ...CASE, ...change };
    const proof = judgeProof({ ...rest, ...(before ? { before } : {}), ...(after ? { after } : {}) });
    expect(proof.verdict).toBe('not-proven');
    expect(proof.missing).toContain(why);
  });

  test('causes that a leak test does not see are named', () => {
    const proof = judgeProof({
      ...CASE,
      selfTest: 'not run',
      causesBefore: [...CASE.causesBefore, { id: 'F04', probability: 0.2 }],
    });
    expect(proof.notCovered.map(({ id }) => id)).toEqual(['F04']);
    expect(proof.verdict).toBe('not-proven');
  });

  test('a self-test still to come does not undo a measured proof, and is said', () => {
    const proof = judgeProof({ ...CASE, selfTest: 'not run' });
    expect(proof.verdict).toBe('held');
    expect(proof.missing).toEqual(['self-test not run']);
  });
});

test('leak budget: areas subtract', () => {
  const exact = (mm: number) => ({ median: mm, lo90: 0.999 * mm, hi90: 1.001 * mm });
  const budget = leakBudget(exact(1.0), exact(0.8), exact(0.6));
  expect(budget.expectedRestMm.median).toBeCloseTo(0.6, 2);
  expect(leakBudget(exact(0.8), exact(0.8), exact(0.1)).expectedRestMm.median).toBeLessThan(0.08);
});

test('a smaller rest never makes the limit less likely met', () => {
  fc.assert(
    fc.property(fc.integer({ min: 5, max: 300 }), fc.integer({ min: 101, max: 300 }), (size, ratio) => {
      const met = (mm: number) => judgeProof({ ...CASE, after: sized(mm, mm / 1.2, mm * 1.2) }).limitMet!;
      expect(met(size / 100)).toBeGreaterThanOrEqual(met((size / 100) * (ratio / 100)) - 1e-12);
    }),
  );
});

test('the normal distribution function at printed points (Abramowitz and Stegun, table 26.1)', () => {
  expect(normalCdf(0)).toBeCloseTo(0.5, 7);
  expect(normalCdf(1)).toBeCloseTo(0.8413447, 6);
  expect(normalCdf(-1.96)).toBeCloseTo(0.0249979, 6);
});

describe('words', () => {
  test('never claim certainty', () => {
    expect(percentWords(1)).toBe('over 99 %');
    expect(percentWords(0)).toBe('under 1 %');
    expect(percentWords(0.424)).toBe('42 %');
  });

  test('say the verdict first and what is missing, in both languages', () => {
    const proof = judgeProof({ ...CASE, selfTest: 'not run', limitMm: 0.5 });
    expect(proofInWords(proof, 0.5)[0]).toBe('The repair held.');
    expect(proofInWords(proof, 0.5).at(-1)).toBe('Still missing: the car’s own test has not run since the repair.');
    expect(proofInWords(proof, 0.5, 'de')[1]).toContain('0,50 mm');
  });
});
