import { expect, it } from 'vitest';
import { CAUSES, type Finding } from '../../src/diagnosis/finding.ts';
import { answerFrom, answersText, uniformAnswer } from './answers.ts';
import { CLASSES } from './classes.ts';
import { hasParity } from './practice.ts';

const finding = (causes: Finding['causes'], diameterMm: Finding['diameterMm']): Finding => ({
  verdict: 'cannot-tell',
  procedures: ['vacuum-draw'],
  causes,
  pairs: [],
  diameterMm,
  exceeds: { mm0_5: null, mm1_0: null },
  reasons: [],
  warnings: ['no pressure'],
  overlays: [],
});
const cause = (id: (typeof CAUSES)[number], probability: number) => ({
  id,
  probability,
  places: [],
  relativeLogEvidence: 0,
  byPhase: [],
});
const SIZE = { median: 0.5, lo90: 0.4, hi90: 0.6 };

it('names the classes of the finding but for the parts that the practice cars have not', () => {
  const others = CAUSES.filter((c) => !CLASSES.includes(c));
  expect([...CLASSES, ...others].sort()).toEqual([...CAUSES].sort());
  expect(others).toEqual([
    'pump_weak',
    'pump_dead',
    'orifice_dirty',
    'changeover_leak',
    'changeover_stuck',
    'isolation_leak',
    'isolation_stuck_shut',
  ]);
});

it('answers with all classes, and with a diameter where the procedure has one', () => {
  const f = finding([cause('leak', 0.75), cause('none', 0.25)], SIZE);
  const answer = answerFrom('case-1', 'A', f);
  expect(Object.keys(answer.fault_probabilities)).toHaveLength(16);
  expect(answer.fault_probabilities).toMatchObject({ leak: 0.75, none: 0.25, sensor_gain: 0 });
  expect(answer.diameter_mm).toEqual(SIZE);
  expect(answerFrom('case-1', 'D', f)).not.toHaveProperty('diameter_mm');
  expect(answerFrom('case-1', 'B', finding(f.causes, null))).not.toHaveProperty('diameter_mm');
});

it('refuses a finding that weighed nothing, and says why', () => {
  expect(() => answerFrom('case-1', 'A', finding([], null))).toThrow(/no cause was weighed: no pressure/);
  expect(() => answerFrom('case-1', 'A', finding([cause('leak', Number.NaN)], null))).toThrow(/add up to NaN/);
});

it('writes one line a case', () => {
  const lines = answersText([uniformAnswer('case-1', 'A'), uniformAnswer('case-2', undefined)]).split('\n');
  expect(lines).toHaveLength(3);
  expect(JSON.parse(lines[0]!)).toMatchObject({ case: 'case-1', procedure: 'A' });
  expect(JSON.parse(lines[1]!).fault_probabilities.leak).toBe(0.0625);
  expect(lines[2]).toBe('');
});

it('parts cases by the last number of their name', () => {
  expect(hasParity('case-0012', 'even')).toBe(true);
  expect(hasParity('case-0012', 'odd')).toBe(false);
  expect(hasParity('case-0013', 'odd')).toBe(true);
  expect(hasParity('case-0013', undefined)).toBe(true);
});
