import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterAll, describe, expect, test } from 'vitest';
import { errorSchema, readResultSchema, simulateResultSchema } from '../../src/cli/result-formats.ts';
import { mappingSchema } from '../../src/recording/mapping.ts';
import { desk, RECORDING, ROOT, run, runAndStop } from './run.ts';

const here = desk();
afterAll(here.clear);

describe('read', () => {
  test('JSON fits the published format and accounts for every line', () => {
    const { code, stdout, stderr } = run(['read', RECORDING, '--json']);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    const { report, channels } = readResultSchema.parse(JSON.parse(stdout));
    const skipped = report.skipped.reduce((sum, { count }) => sum + count, 0);
    expect(report.linesRead).toBe(report.samples + skipped);
    expect(channels).toContain('tankPressureGaugePa');
  });

  test('a foreign file, packed, becomes our own columns; the printed mapping reads it the same way', () => {
    const rows = Array.from(
      { length: 60 },
      (_, i) => `${i},0;${(-i / 50).toFixed(2).replace('.', ',')};${i > 10 ? 'on' : 'off'}`,
    );
    const foreign = here.put(
      'foreign.csv.gz',
      gzipSync(`Time (s);Tank pressure (kPa);Vent closed\n${rows.join('\n')}\n`),
    );
    const out = join(here.folder, 'own.csv');
    expect(run(['read', foreign, '--out', out]).code).toBe(0);
    const text = readFileSync(out, 'utf8').split('\r\n');
    expect(text[0]).toBe('time_s,tank_pressure_pa,vent_closed');
    expect(text[51]).toBe('50,-1000,1');

    const mapping = run(['read', foreign, '--print-mapping']).stdout;
    expect(mappingSchema.safeParse(JSON.parse(mapping)).success).toBe(true);
    const again = join(here.folder, 'again.csv');
    expect(run(['read', foreign, '--mapping', here.put('mapping.json', mapping), '--out', again]).code).toBe(0);
    expect(readFileSync(again, 'utf8')).toBe(readFileSync(out, 'utf8'));
  });

  test('Ctrl-C leaves nothing behind', async () => {
    const pipe = join(here.folder, 'endless.csv');
    // A pipe that nobody writes to: the reading waits until it is stopped.
    expect(spawnSync('mkfifo', [pipe]).status).toBe(0);
    const before = readdirSync(here.folder).sort();
    const { code, signal, stdout } = await runAndStop(
      ['read', pipe, '--out', join(here.folder, 'never.csv')],
      here.folder,
      700,
    );
    expect(code === 130 || signal === 'SIGINT').toBe(true);
    expect(stdout).toBe('');
    expect(readdirSync(here.folder).sort()).toEqual(before);
  });
});

describe('simulate', () => {
  const scenario = (name: string): string => join(ROOT, 'examples', `${name}.scenario.json`);

  test.each(['small-leak', 'sound-car', 'plugged-vent-refuelling'])('%s: recording and figure', (name) => {
    const out = join(here.folder, name);
    const { code, stdout } = run(['simulate', scenario(name), '--out', out, '--json']);
    expect(code).toBe(0);
    const result = simulateResultSchema.parse(JSON.parse(stdout));
    for (const file of result.files) expect(existsSync(file)).toBe(true);
    expect(Math.abs(result.airErrorKg)).toBeLessThan(1e-9);
    const figure = readFileSync(`${out}.svg`, 'utf8');
    expect(figure).toContain('<title');
    expect(figure).not.toContain('NaN');
    expect(readFileSync(`${out}.csv`, 'utf8').split('\r\n')).toHaveLength(result.samples + 2);
  });

  test('a leak bleeds up and a sound car holds', () => {
    const last = (name: string): number => {
      const out = join(here.folder, `hold-${name}`);
      expect(run(['simulate', scenario(name), '--out', out]).code).toBe(0);
      const rows = readFileSync(`${out}.csv`, 'utf8').trim().split('\r\n').slice(1);
      const atS = rows.map((row) => row.split(',').map(Number)).filter(([t]) => t! > 95 && t! < 100);
      return atS.reduce((sum, row) => sum + row[1]!, 0) / atS.length;
    };
    expect(last('small-leak')).toBeGreaterThan(-600);
    expect(last('sound-car')).toBeLessThan(-1400);
  });

  test('a fault that the layout cannot have: 3, with what there is', () => {
    const file = JSON.parse(readFileSync(scenario('sound-car'), 'utf8')) as { faults: unknown[] };
    file.faults = [{ kind: 'isolation-leaks' }];
    const { code, stderr } = run(['simulate', here.put('odd.json', JSON.stringify(file)), '--json'], here.folder);
    expect(code).toBe(3);
    expect(errorSchema.parse(JSON.parse(stderr)).error.found).toContain('sealed-tank');
  });
});
