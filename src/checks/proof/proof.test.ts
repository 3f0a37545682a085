/** Proofs: verdicts, probabilities against closed forms, what is missing, words. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DE } from '../text/de.ts';
import { EN } from '../text/en.ts';
import { judgeProof, type Measured, type Missing, type Proof, type ProofInput } from './proof.ts';
import { normalCdf } from './size-belief.ts';
import { type ProofSay, proofInWords } from './words.ts';

const sized = (median: number, lo90: number, hi90: number, change: Partial<Measured['conditions']> = {}): Measured => ({
  diameterMm: { median, lo90, hi90 },
  conditions: {
    method: 'T20',
    fuelTemperatureK: 293,
    ambientTemperatureK: 293,
    fuelLevel: 0.5,
    reidVapourPressurePa: { low: 50_000, high: 60_000 },
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
  repairsHole: true,
  causesBefore: [
    { id: 'F01', probability: 0.8 },
    { id: 'F05', probability: 0.2 },
  ],
  selfTest: 'passed',
};

const codes = ({ missing }: Proof): readonly Missing['code'][] => missing.map(({ code }) => code);
const against = (proof: Proof): readonly string[] => proof.against.map(({ code }) => code);

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
    const proof = judgeProof({ ...CASE, after: sized(0.9, 0.8, 1.0) });
    expect(proof.verdict).toBe('not-held');
    expect(against(proof)).toContain('limit exceeded');
  });

  test('smaller but above the limit: not held, and another leak is likely', () => {
    const proof = judgeProof({ ...CASE, after: sized(0.7, 0.65, 0.75) });
    expect(proof.verdict).toBe('not-held');
    expect(proof.madeDifference).toBeGreaterThan(0.9);
    expect(proof.anotherLeak).toBeGreaterThan(0.9);
  });

  test('the car’s own test failed: not held', () => {
    const proof = judgeProof({ ...CASE, selfTest: 'failed' });
    expect(proof.verdict).toBe('not-held');
    expect(against(proof)).toEqual(['self-test failed']);
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
    expect(codes(proof)).toContain(why);
  });

  test('causes that a leak test does not see are named', () => {
    const proof = judgeProof({
      ...CASE,
      selfTest: 'not run',
      causesBefore: [...CASE.causesBefore, { id: 'F04', probability: 0.2 }],
    });
    expect(proof.notCovered.map(({ id }) => id)).toEqual(['F04']);
    expect(proof.missing).toContainEqual({ code: 'causes not covered', causes: [{ id: 'F04', probability: 0.2 }] });
    expect(proof.verdict).toBe('not-proven');
  });

  test('a self-test still to come does not undo a measured proof, and is said', () => {
    const proof = judgeProof({ ...CASE, selfTest: 'not run' });
    expect(proof.verdict).toBe('held');
    expect(codes(proof)).toEqual(['self-test not run']);
  });
});

describe('a repaired fault that no size shows', () => {
  const conditions = { method: 'purge-drive' };
  const other = (before: number | undefined, after: number | undefined): ProofInput => ({
    ...CASE,
    before: { conditions },
    after: { conditions },
    repaired: ['F04'],
    repairsHole: false,
    otherFault: { ...(before === undefined ? {} : { before }), ...(after === undefined ? {} : { after }) },
    causesBefore: [{ id: 'F04', probability: 0.97 }],
    selfTest: 'not run',
  });

  test('gone in the finding after: held, without a word of sizes', () => {
    const proof = judgeProof(other(0.97, 0.01));
    expect(proof.verdict).toBe('held');
    expect(codes(proof)).toEqual(['conditions not known', 'self-test not run']);
    expect(proof.notCovered).toEqual([]);
  });

  test.each([
    [0.97, 0.3, 'fault not certainly gone'],
    [0.3, 0.01, 'fault not certain before'],
    [undefined, 0.01, 'no measurement before'],
    [0.97, undefined, 'no measurement after'],
  ] as const)('%s before, %s after: not proven (%s)', (before, after, why) => {
    const proof = judgeProof(other(before, after));
    expect(proof.verdict).toBe('not-proven');
    expect(codes(proof)).toContain(why);
  });

  test('still there: not held', () => {
    expect(against(judgeProof(other(0.97, 0.96)))).toEqual(['fault still there']);
  });

  test('a leak repaired and measured does not cover a fault of flow that was believed as well', () => {
    const proof = judgeProof({
      ...CASE,
      repaired: ['F01', 'F04'],
      causesBefore: [{ id: 'F04', probability: 0.2 }],
      selfTest: 'not run',
    });
    expect(proof.notCovered.map(({ id }) => id)).toEqual(['F04']);
  });
});

describe('conditions', () => {
  test('what differs is named, with what was compared', () => {
    const proof = judgeProof({ ...CASE, after: sized(0.08, 0.04, 0.14, { fuelTemperatureK: 300, fuelLevel: 0.2 }) });
    const differing = proof.missing.find((item) => item.code === 'conditions differ');
    expect(differing?.which).toEqual([
      { what: 'fuel temperature', before: 293, after: 300, alike: 'no' },
      { what: 'fuel level', before: 0.5, after: 0.2, alike: 'no' },
    ]);
  });

  test('what nobody wrote down is said and does not undo the proof', () => {
    const { fuelTemperatureK: _, ...conditions } = TIGHT.conditions;
    const proof = judgeProof({ ...CASE, after: { ...TIGHT, conditions } });
    expect(proof.missing).toEqual([
      { code: 'conditions not known', which: [{ what: 'fuel temperature', before: 293, alike: 'unknown' }] },
    ]);
    expect(proof.verdict).toBe('held');
  });

  const volatility = (before: Measured['conditions'], after: Measured['conditions']) =>
    judgeProof({
      ...CASE,
      before: { ...BEFORE, conditions: before },
      after: { ...TIGHT, conditions: after },
    }).conditions.find(({ what }) => what === 'volatility');
  const stated = (low: number, high: number) => ({ reidVapourPressurePa: { low, high } });

  test('fuel of one fill is as volatile as itself, whatever is known of it', () => {
    const { reidVapourPressurePa: _, ...silent } = BEFORE.conditions;
    expect(volatility(silent, { ...silent, fuelLevel: 0.45 })).toMatchObject({ alike: 'yes', isSameFill: true });
  });

  test('after filling up, what is stated of the two fuels is compared', () => {
    const filled = { ...BEFORE.conditions, fuelLevel: 0.6 };
    expect(volatility(BEFORE.conditions, filled)).toMatchObject({ alike: 'yes', isSameFill: false });
    expect(volatility(BEFORE.conditions, { ...filled, ...stated(80_000, 90_000) })).toMatchObject({ alike: 'no' });
    const { reidVapourPressurePa: _, ...silent } = filled;
    expect(volatility(BEFORE.conditions, silent)).toMatchObject({ alike: 'unknown' });
  });
});

describe('probabilities against closed forms of log-normals', () => {
  /** Normal distribution function by Simpson's rule over its density: no constant in common with the program's series. */
  function phi(z: number): number {
    const n = 4000;
    const from = -12;
    const h = (z - from) / n;
    const density = (x: number): number => Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
    let sum = density(from) + density(z);
    for (let i = 1; i < n; i++) sum += (i % 2 === 1 ? 4 : 2) * density(from + i * h);
    return (sum * h) / 3;
  }
  const Z95 = 1.6448536;
  const spread = (median: number, ratio: number): Measured => sized(median, median / ratio, median * ratio);
  const size = fc.integer({ min: 8, max: 200 }).map((n) => n / 100);
  const ratio = fc.integer({ min: 105, max: 300 }).map((n) => n / 100);

  test('the limit is met with Φ((ln L − ln m) / s)', () => {
    fc.assert(
      fc.property(size, ratio, (median, wide) => {
        const s = Math.log(wide) / Z95;
        const { limitMet } = judgeProof({ ...CASE, after: spread(median, wide) });
        expect(limitMet).toBeCloseTo(phi(Math.log(0.5 / median) / s), 5);
      }),
    );
  });

  test('a measurement that has its own probability for the limit keeps it', () => {
    expect(judgeProof({ ...CASE, after: { ...TIGHT, limitMet: 0.96 } }).limitMet).toBe(0.96);
  });

  test('the repair made a difference with Φ(ln(0.9 m₁ / m₂) / √(s₁² + s₂²))', () => {
    fc.assert(
      fc.property(size, ratio, size, ratio, (m1, w1, m2, w2) => {
        const s = Math.hypot(Math.log(w1), Math.log(w2)) / Z95;
        const { madeDifference } = judgeProof({ ...CASE, before: spread(m1, w1), after: spread(m2, w2) });
        expect(madeDifference).toBeCloseTo(phi(Math.log((0.9 * m1) / m2) / s), 5);
      }),
    );
  });

  test('another leak of an exact size, by Bayes’ rule from the two densities', () => {
    // prior 1 in 10; a leak log-normal around 0.75 mm (sd of ln 0.9), a seep half-normal with 0.13 mm: the stated judgement
    for (const mm of [0.05, 0.1, 0.2, 0.3, 0.5, 1]) {
      const leak = Math.exp(-0.5 * (Math.log(mm / 0.75) / 0.9) ** 2) / (0.9 * Math.sqrt(2 * Math.PI));
      const seep = mm * Math.sqrt(2 / Math.PI) * (1 / 0.13) * Math.exp(-0.5 * (mm / 0.13) ** 2);
      const { anotherLeak } = judgeProof({ ...CASE, after: spread(mm, 1.0005) });
      expect(anotherLeak).toBeCloseTo((0.1 * leak) / (0.1 * leak + 0.9 * seep), 3);
    }
  });

  test('another leak is the likelier, the more remains beyond a seep', () => {
    fc.assert(
      fc.property(fc.integer({ min: 15, max: 150 }), fc.integer({ min: 105, max: 200 }), (mm, grows) => {
        const remains = (d: number) => judgeProof({ ...CASE, after: spread(d, 1.2) }).anotherLeak!;
        expect(remains((mm / 100) * (grows / 100))).toBeGreaterThanOrEqual(remains(mm / 100) - 1e-12);
      }),
    );
  });
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
  const say = (language: 'en' | 'de'): ProofSay => ({
    percent: (p) => `${Math.round(100 * p)} %`,
    diameter: (mm) => `${mm.toFixed(2)} mm`,
    cause: (id) => (language === 'en' ? EN : DE).causes[id],
    list: (names) => names.join(', '),
    condition: (condition, side) => (condition[side] === undefined ? undefined : String(condition[side])),
  });

  test.each([
    ['en', EN, 'The repair held.', 'The car’s own test has not run since the repair.', 'smaller than 0.50 mm'],
    ['de', DE, 'Die Reparatur hat gehalten.', 'Der Selbsttest des Fahrzeugs ist seit', 'kleiner als 0.50 mm'],
  ] as const)('%s: verdict, figures and what is missing', (language, { proof: text }, verdict, missing, figure) => {
    const said = proofInWords(judgeProof({ ...CASE, selfTest: 'not run' }), text, say(language));
    expect(said.verdict).toBe(verdict);
    expect(said.missing.join(' ')).toContain(missing);
    expect(said.figures.join(' ')).toContain(figure);
    expect(said.against).toEqual([]);
  });

  test('every kind of what is missing and what speaks against has its sentence with its figures', () => {
    const worst: ProofInput = {
      ...CASE,
      before: sized(0.5, 0.3, 0.8),
      after: sized(0.48, 0.3, 0.7, { fuelLevel: 0.9, ambientTemperatureK: undefined as never }),
      causesBefore: [{ id: 'F04', probability: 0.25 }],
      selfTest: 'not run',
    };
    const proof = judgeProof({ ...worst });
    const text = proofInWords(proof, EN.proof, say('en')).missing.join('\n');
    expect(text).toContain('limit of 0.50 mm');
    expect(text).toContain('fuel level (0.5 before, 0.9 after) differed');
    expect(text).toContain('purge valve stays shut (25 %)');
    expect(text).toContain('no other leak remains');
    expect(text).not.toContain('undefined');
    const failed = judgeProof({ ...CASE, after: sized(1.1, 1.05, 1.15), selfTest: 'failed' });
    expect(proofInWords(failed, EN.proof, say('en')).against).toHaveLength(3);
  });
});
