import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { machineFindingSchema } from '../../src/cli/machine-finding.ts';
import { reportResultSchema } from '../../src/cli/result-formats.ts';
import { storedSheetSchema } from '../../src/report/sheet.ts';
import { CAR, desk, RECORDING, type Run, run } from './run.ts';

const here = desk();
afterAll(here.clear);

/** The example was simulated with this hole at the filler neck (examples/small-leak.scenario.json). */
const TRUE_DIAMETER_MM = 0.62;

describe('the contract for machines', () => {
  let done: Run;
  beforeAll(() => {
    done = run(['diagnose', '--car', CAR, '--json', RECORDING]);
  });

  test('stdout is one JSON object on one line, stderr is quiet', () => {
    expect(done.code).toBe(0);
    expect(done.stdout.trimEnd().split('\n')).toHaveLength(1);
    expect(done.stdout.startsWith('{')).toBe(true);
    expect(done.stderr).not.toContain('vaporwright:');
  });

  test('it fits the published format', () => {
    expect(machineFindingSchema.safeParse(JSON.parse(done.stdout)).error).toBeUndefined();
  });

  test('each cause comes once, sorted, and the probabilities sum to 1', () => {
    const { causes } = machineFindingSchema.parse(JSON.parse(done.stdout));
    expect(new Set(causes.map(({ id }) => id)).size).toBe(causes.length);
    const probabilities = causes.map(({ probability }) => probability);
    expect(probabilities).toEqual([...probabilities].sort((a, b) => b - a));
    expect(probabilities.reduce((sum, value) => sum + value, 0)).toBeCloseTo(1, 6);
  });

  test('the example has the leak that it was made with', () => {
    const finding = machineFindingSchema.parse(JSON.parse(done.stdout));
    expect(finding.verdict).toBe('fault');
    expect(['leak', 'vent_leak']).toContain(finding.causes[0]?.id);
    expect(Math.abs(Math.log(finding.diameterMm!.median / TRUE_DIAMETER_MM))).toBeLessThan(0.15);
    expect(finding.exceeds.mm0_5).toBeGreaterThan(0.9);
    expect(finding.exceeds.mm1_0).toBeLessThan(0.1);
  });

  test('the same inputs give the same words', () => {
    expect(run(['diagnose', '--car', CAR, '--json', RECORDING]).stdout).toBe(done.stdout);
  });
});

test('in words: sentence, causes, what is not proven, caution', () => {
  const { code, stdout } = run(['diagnose', '--car', CAR, '--codes', 'p0442', '--complaint', 'smell', RECORDING]);
  expect(code).toBe(0);
  for (const part of [
    'Invented car',
    'For the owner:',
    'Causes',
    'Not proven',
    'discharge coefficient 0.61',
    'service information',
  ]) {
    expect(stdout).toContain(part);
  }
});

test('a saved finding makes the same report as the recording did, and only the files asked for', () => {
  const saved = join(here.folder, 'finding.json');
  expect(run(['diagnose', '--car', CAR, '--out', saved, RECORDING]).code).toBe(0);
  const sheet = storedSheetSchema.parse(JSON.parse(readFileSync(saved, 'utf8')));
  expect(sheet.recordings[0]?.sha256).toMatch(/^[0-9a-f]{64}$/);

  const folder = join(here.folder, 'report');
  const { code, stdout } = run(['report', '--finding', saved, '--out', folder, '--json']);
  expect(code).toBe(0);
  const result = reportResultSchema.parse(JSON.parse(stdout));
  expect(result.files.every((path) => existsSync(path))).toBe(true);
  expect(readdirSync(folder).sort()).toEqual(['report.html', 'report.pdf']);
  expect(readdirSync(here.folder).sort()).toEqual(['finding.json', 'report']);
  const page = readFileSync(join(folder, 'report.html'), 'utf8');
  expect(page).toContain('Invented car and recording');
  expect(page).toContain(sheet.recordings[0]!.sha256);
});

test('own limits replace the reference sizes', () => {
  const limits = here.put(
    'limits.json',
    JSON.stringify({
      schema: 'vaporwright-limits-1',
      limits: [{ diameterMm: 0.8, label: 'shop limit', source: 'our rule of 2026' }],
    }),
  );
  const folder = join(here.folder, 'own-limits');
  expect(run(['report', '--car', CAR, '--limits', limits, '--out', folder, RECORDING]).code).toBe(0);
  const page = readFileSync(join(folder, 'report.html'), 'utf8');
  expect(page).toContain('our rule of 2026');
  expect(page).not.toContain('0.040 in');
});

test('a pump run is weighed, saved and reported like any other recording', () => {
  const scenario = here.put(
    'pump.scenario.json',
    JSON.stringify({
      schema: 'vaporwright-scenario-1',
      label: 'A pumped leak',
      car: { schema: 'vaporwright-car-1', label: 'Invented hatchback', layout: 'pump-reference', demo: true },
      fuelLevel: 0.4,
      faults: [{ kind: 'leak', place: 'neck', size: 0.0008 }],
      procedure: { kind: 'pump-run' },
      conditions: { ambientAbsPa: 98_000, ambientTemperatureK: 291, fuelTemperatureK: 294 },
      sampling: { rateHz: 5, jitter: 0.1, pressureStepPa: 2, noisePa: 5, seed: 4 },
    }),
  );
  const made = join(here.folder, 'pump-run');
  const { code: simulated, stderr: why } = run(['simulate', scenario, '--out', made]);
  expect(why).not.toContain('expected');
  expect(simulated).toBe(0);
  const csv = `${made}.csv`;
  const car = here.put(
    'pump.car.json',
    JSON.stringify({ schema: 'vaporwright-car-1', label: 'Invented hatchback', layout: 'pump-reference', demo: true }),
  );
  const saved = join(here.folder, 'pump-finding.json');
  const { code, stdout } = run(['diagnose', '--car', car, '--out', saved, '--json', csv]);
  expect(code).toBe(0);
  const finding = machineFindingSchema.parse(JSON.parse(stdout));
  expect(finding.causes[0]?.id).toBe('leak');
  // the hole that was put in
  expect(finding.diameterMm!.lo90).toBeLessThan(0.8);
  expect(finding.diameterMm!.hi90).toBeGreaterThan(0.8);
  const folder = join(here.folder, 'pump-report');
  expect(run(['report', '--finding', saved, '--out', folder]).code).toBe(0);
  expect(readFileSync(join(folder, 'report.html'), 'utf8')).toContain('Invented hatchback');
});
