/** `plan` and `result` as a person runs them. */
import { afterAll, describe, expect, test } from 'vitest';
import { planResultSchema } from '../../src/cli/plan-formats.ts';
import { CAR, desk, run } from './run.ts';

const place = desk();
afterAll(place.clear);

const QUICK = ['--seconds', '0.2'];
const state = `${place.folder}/job.json`;

describe('from codes to the next step and on', () => {
  test('plan says what to do next, why, and saves where the job stands', () => {
    const { code, stdout } = run(['plan', '--car', CAR, '--codes', 'P0442', '--out', state, ...QUICK], place.folder);
    expect(code).toBe(0);
    for (const words of [
      'Next: ',
      'Believed now: cap',
      'What each answer would change',
      'Why not the usual reflex',
      'The plan',
    ]) {
      expect(stdout).toContain(words);
    }
    expect(stdout).toContain('service information of this vehicle');
  });

  test('steps of a check with cautions show only once they are acknowledged', () => {
    const args = ['plan', '--state', state, '--without', 'T01,T02,T03,T04,T07,T09,T10,T11', '--json', ...QUICK];
    const before = JSON.parse(run(args, place.folder).stdout);
    expect(planResultSchema.parse(before).cautions.length).toBeGreaterThan(0);
    expect(before.steps).toBeNull();
    const after = JSON.parse(run([...args, '--acknowledge'], place.folder).stdout);
    expect(after.steps?.length).toBeGreaterThanOrEqual(3);
  });

  test('a result changes what is believed at once', () => {
    const next = `${place.folder}/job-2.json`;
    const { code, stdout } = run(
      ['result', 'T12', 'falls', '--state', state, '--out', next, '--json', ...QUICK],
      place.folder,
    );
    expect(code).toBe(0);
    const { causes, state: saved } = planResultSchema.parse(JSON.parse(stdout));
    expect(causes[0]?.id).toBe('F03');
    expect(saved.steps).toEqual([{ kind: 'check', id: 'T12', entry: { outcome: 'falls' } }]);
    const failed = run(['result', 'purge valve', 'not', 'held', '--state', next, '--json', ...QUICK], place.folder);
    expect(JSON.parse(failed.stdout).causes.map(({ id }: { id: string }) => id)).not.toContain('F03');
  });
});

describe('numbers are told for what they come to', () => {
  const answer = ['T20', 'flow=0.55 L/min', 'pressure=10 inH2O'];
  test('in words and for machines', () => {
    const { stdout } = run(['result', ...answer, '--state', state, ...QUICK], place.folder);
    expect(stdout).toMatch(
      /^The numbers come to\n {2}- whole system, equivalent diameter: 0\.5\d mm \(0\.\d\d to 0\.\d\d\)\n/,
    );
    const { entered } = planResultSchema.parse(
      JSON.parse(run(['result', ...answer, '--state', state, '--json', ...QUICK], place.folder).stdout),
    );
    expect(entered).toMatchObject([{ kind: 'diameter', id: 'whole system' }]);
  });
});

describe('refused, with what was found and expected', () => {
  test.each([
    [['T20', 'flow=0.46 L/min', 'pressure=-10 inH2O'], 3, 'is the sign right?'],
    [['T20', 'flow=0.46', 'pressure=10 inH2O'], 3, 'has no unit'],
    [['T12', 'leaks'], 3, 'expected one of holds, falls'],
    [['T99', 'falls'], 2, 'there is no check "T99"'],
    [['cap', 'held'], 2, 'a repair that held ends the troubleshooting'],
    [['R04', 'trace 1'], 2, 'what it shows comes through the finding'],
  ])('result %j', (words, exit, message) => {
    const { code, stderr, stdout } = run(['result', ...words, '--state', state, ...QUICK], place.folder);
    expect({ code, stdout }).toEqual({ code: exit, stdout: '' });
    expect(stderr).toContain(message);
  });

  test('a figure that does not exist', () => {
    const { code, stderr } = run(['plan', '--state', state, '--set', 'shop.rat=75', ...QUICK], place.folder);
    expect(code).toBe(3);
    expect(stderr).toContain('no figure is called "shop.rat"');
  });

  test('nothing to plan for', () => {
    expect(run(['plan', ...QUICK], place.folder).code).toBe(2);
  });
});
