/** `proof` as a person runs it, on a job that was measured by hand before and after its repair. */
import { writeFileSync } from 'node:fs';
import { afterAll, describe, expect, test } from 'vitest';
import { proofResultSchema } from '../../src/cli/proof-formats.ts';
import type { CheckResult, Job } from '../../src/jobs/record/job.ts';
import { sampleJob } from '../e2e/pages-sample-job.ts';
import { desk, run } from './run.ts';

const place = desk();
afterAll(place.clear);

const BEFORE = '2026-03-02T10:00:00.000Z';
const REPAIRED = '2026-03-02T11:00:00.000Z';
const AFTER = '2026-03-02T12:00:00.000Z';
const flow = (id: string, checkId: string, at: string, litres: string): CheckResult => ({
  id,
  at,
  by: 'a',
  what: checkId,
  result: litres,
  speaksFor: [],
  speaksAgainst: [],
  strength: 'clear',
  checkId,
  answer: { numbers: { flow: `${litres} L/min`, pressure: '12 inH2O' } },
});
const repair: Job['repairs'][number] = {
  id: '6d0f2a51-8a57-4c5e-9a80-6f0d5c1a2b01',
  at: REPAIRED,
  by: 'a',
  what: 'cap',
  parts: [],
  addresses: ['leak'],
};

function jobFile(name: string, change: Partial<Job>): string {
  const path = `${place.folder}/${name}.json`;
  const job: Job = {
    ...sampleJob,
    findings: [],
    recordings: [],
    repairs: [repair],
    proof: null,
    checks: [],
    ...change,
  };
  const file = { schema: 'vaporwright-job-file-1', program: null, exportedAt: AFTER, job, history: [], files: [] };
  writeFileSync(path, JSON.stringify(file));
  return path;
}
const first = flow('6d0f2a51-8a57-4c5e-9a80-6f0d5c1a2b02', 'T20', BEFORE, '1.4');
const last = (litres: string) => flow('6d0f2a51-8a57-4c5e-9a80-6f0d5c1a2b03', 'T37', AFTER, litres);

describe('a leak measured before and after', () => {
  const tight = jobFile('tight', { checks: [first, last('0.01')] });

  test('held, with sizes, probabilities and what is still missing', () => {
    const { code, stdout } = run(['proof', tight]);
    expect(code).toBe(0);
    for (const words of [/^The repair held\./, /made a difference with a probability of over 99/, /Leak budget/]) {
      expect(stdout).toMatch(words);
    }
    expect(stdout).toContain('The car’s own test has not run since the repair.');
    expect(stdout).toContain('service information of this vehicle');
  });

  test('as one JSON object', () => {
    const proof = proofResultSchema.parse(JSON.parse(run(['proof', tight, '--json']).stdout));
    // 1.4 L/min at 12 inH2O: 0.83 mm by the orifice formula with 0.61
    expect(proof).toMatchObject({ verdict: 'held', limitMm: 0.5, selfTest: 'not run' });
    expect(proof.beforeMm?.median).toBeCloseTo(0.83, 1);
  });

  test('a larger rest does not hold to a small limit, and does to a large one', () => {
    const rest = jobFile('rest', { checks: [first, last('0.9')] });
    const verdict = (limit: string) => JSON.parse(run(['proof', rest, '--limit', limit, '--json']).stdout).verdict;
    expect(verdict('0.020 in')).toBe('not-held');
    expect(verdict('1.5 mm')).not.toBe('not-held');
  });

  test('without a measurement after it: not proven, and it says so', () => {
    const { stdout } = run(['proof', jobFile('open', { checks: [first] })]);
    expect(stdout).toMatch(/^Not proven/);
    expect(stdout).toContain('has not been measured since the repair');
  });
});

test.each([
  ['no repair', [jobFile('none', { repairs: [] })], 3, 'has no repair to prove'],
  ['a limit of another quantity', [jobFile('limit', {}), '--limit', '5 kPa'], 2, 'expected a unit of length'],
  ['a limit out of reach', [jobFile('limit', {}), '--limit', '3 m'], 2, 'a diameter from 0.05 to 20 mm'],
] as const)('refused: %s', (_, args, exit, words) => {
  const { code, stderr, stdout } = run(['proof', ...args]);
  expect({ code, stdout }).toEqual({ code: exit, stdout: '' });
  expect(stderr).toContain(words);
});
