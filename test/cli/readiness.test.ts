/** `readiness` as a person runs it, on captures of a made-up car. */
import { afterAll, describe, expect, test } from 'vitest';
import { captureResultSchema, readinessResultSchema } from '../../src/cli/car-formats.ts';
import { captureText, HOT_DAY, madeCar } from '../readiness/drive-capture.ts';
import { CAR, desk, run } from './run.ts';

const place = desk();
afterAll(place.clear);
const log = place.put('hot-day.log', captureText(madeCar(HOT_DAY)));
const hours = Array.from({ length: 72 }, (_, k) => `${String(k % 24).padStart(2, '0')}:00 ${12 + (k % 24) / 4}`);
const forecast = place.put('hours.txt', hours.join('\n'));

/** In two days, as the command is given it. */
const deadline = new Date(Date.now() + 2 * 86_400_000).toISOString().slice(0, 10);

describe('readiness', () => {
  test('names the first blocker of each attempt, and the slip', () => {
    const { code, stdout } = run(['readiness', '--car', CAR, '--model-year', '2012', log], place.folder);
    expect(code).toBe(0);
    // P0456 and P0442 are leak codes and do not block; the air does, then the warm engine.
    expect(stdout).toContain(
      'blocked first by intake air at start at 10 s: intake temperature 41 °C at start, limit 35 °C',
    );
    expect(stdout).toContain(
      'blocked first by coolant at start at 24 min: coolant temperature 70 °C at start, limit 35 °C',
    );
    expect(stdout).toContain('would fail by this rule');
    expect(stdout).toContain('Permanent codes: P0456');
    expect(stdout).toContain('16 of 50 drives that count: 0.320');
    expect(stdout).toContain('win where they differ');
  });

  test('prints what its published format says', () => {
    const args = [
      '--car',
      CAR,
      '--model-year',
      '2012',
      '--forecast',
      forecast,
      '--level',
      '55',
      '--deadline',
      deadline,
    ];
    const { code, stdout } = run(['readiness', ...args, '--json', log], place.folder);
    expect(code).toBe(0);
    const printed = readinessResultSchema.parse(JSON.parse(stdout));
    expect(printed.attempts.map(({ verdict }) => verdict)).toEqual(['blocked', 'blocked']);
    expect(printed.attempts[0]?.blocker).toMatchObject({ atS: 10, condition: { id: 'intake air at start' } });
    expect(printed.inspection).toMatchObject({ rule: 'us-federal', verdict: 'fail' });
    expect(printed.inspection?.incomplete).toEqual(['catalyst', 'evaporative system']);
    expect(printed.plan?.attempts.length).toBeGreaterThan(0);
    expect(printed.plan?.pattern.join()).toMatch(/idle.*steadily/);
  });

  test('says which line of a forecast cannot be read', () => {
    const bad = place.put('bad.txt', '06:00 4\n07:00 rain\n');
    const { code, stderr } = run(['readiness', '--car', CAR, '--forecast', bad], place.folder);
    expect(code).toBe(3);
    expect(stderr).toMatch(/2[\s\S]*07:00 rain[\s\S]*an hour and a temperature/);
  });
});

describe('capture', () => {
  test('prints what its published format says', () => {
    const out = `${place.folder}/live.log`;
    const { code, stdout } = run(['capture', '--demo', 'engine-vacuum', '--out', out, '--seconds', '2', '--json']);
    expect(code).toBe(0);
    const printed = captureResultSchema.parse(JSON.parse(stdout));
    expect(printed.codesRead).toEqual(['confirmed', 'pending', 'permanent']);
    expect(printed.status.sinceClear?.monitors.find(({ name }) => name === 'evaporative system')?.complete).toBe(false);
  });
});
