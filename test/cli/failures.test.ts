import { spawnSync } from 'node:child_process';
import { closeSync, openSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterAll, describe, expect, test } from 'vitest';
import { errorSchema } from '../../src/cli/result-formats.ts';
import { CAR, desk, RECORDING, ROOT, run, runAndStop } from './run.ts';

const here = desk();
afterAll(here.clear);

const failure = (stderr: string) => errorSchema.parse(JSON.parse(stderr)).error;

describe('exit codes and words', () => {
  test('no such command: 2', () => {
    const { code, stdout, stderr } = run(['divine']);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain("unknown command 'divine'");
  });

  test('a missing option: 2, as JSON when asked', () => {
    const { code, stdout, stderr } = run(['diagnose', RECORDING, '--json']);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(failure(stderr)).toMatchObject({ kind: 'usage', message: expect.stringContaining('--car') });
  });

  test('a code that is none: 2', () => {
    const { code, stderr } = run(['diagnose', '--car', CAR, '--codes', 'P0442,LEAK', RECORDING]);
    expect(code).toBe(2);
    expect(stderr).toContain('"LEAK" is not a trouble code');
  });

  test('a file that is not there: 3, with its name', () => {
    const { code, stdout, stderr } = run(['read', 'nowhere.csv', '--json']);
    expect({ code, stdout }).toEqual({ code: 3, stdout: '' });
    expect(failure(stderr)).toMatchObject({ kind: 'input', file: 'nowhere.csv' });
  });

  test('a folder instead of a file: 3', () => {
    const { code, stderr } = run(['read', here.folder]);
    expect(code).toBe(3);
    expect(stderr).toContain('a folder');
  });

  test('a car file with a wrong value: 3, with line, column, found and expected', () => {
    const car = here.put('car.json', '{\n  "schema": "vaporwright-car-1",\n  "label": "x",\n  "layout": "steam"\n}\n');
    const { code, stderr } = run(['diagnose', '--car', car, '--json', RECORDING]);
    expect(code).toBe(3);
    expect(failure(stderr)).toMatchObject({
      file: car,
      line: 4,
      column: 13,
      found: 'layout: "steam"',
      expected: expect.stringContaining('engine-vacuum'),
    });
  });

  test('a car file with a name the format does not know: 3, at that name', () => {
    const car = here.put(
      'typo.json',
      '{"schema":"vaporwright-car-1","label":"x","layout":"engine-vacuum",\n "tankVolumeL": 60}',
    );
    const { code, stderr } = run(['diagnose', '--car', car, '--json', RECORDING]);
    expect(code).toBe(3);
    expect(failure(stderr)).toMatchObject({ line: 2, found: 'tankVolumeL: 60' });
  });

  test('a car file of a later version is said to be that', () => {
    const car = here.put('later.json', '{"schema":"vaporwright-car-7","label":"x"}');
    const { stderr } = run(['diagnose', '--car', car, '--json', RECORDING]);
    expect(failure(stderr).message).toContain('has format "vaporwright-car-7"');
  });

  test('a recording that is none: 3, with line', () => {
    const file = here.put('picture.csv', 'time_s,tank_pressure_pa\n0,1\nhello,again\nno,number\nat,all\nhere,x\nx,y\n');
    const { code, stderr } = run(['read', file, '--json']);
    expect(code).toBe(3);
    expect(failure(stderr)).toMatchObject({
      file,
      line: expect.any(Number),
      found: expect.any(String),
      expected: expect.any(String),
    });
  });

  test('a recording without tank pressure: 3, with what was found instead', () => {
    const file = here.put(
      'speed.csv',
      `time_s,vehicle_speed_kmh\n${Array.from({ length: 40 }, (_, i) => `${i},${20 + i}`).join('\n')}\n`,
    );
    const { code, stderr } = run(['diagnose', '--car', CAR, '--json', file]);
    expect(code).toBe(3);
    expect(failure(stderr)).toMatchObject({
      message: expect.stringContaining('no pressure of the vapour system'),
      found: expect.stringContaining('vehicle_speed_kmh'),
    });
  });

  test('a gzip file cut short: 3, in words', () => {
    const whole = gzipSync(
      `time_s,tank_pressure_pa\n${Array.from({ length: 5000 }, (_, i) => `${i / 10},${-(i % 977)}`).join('\n')}\n`,
    );
    const file = here.put('cut.csv.gz', whole.subarray(0, whole.length - 400));
    const { code, stderr } = run(['read', file, '--json']);
    expect(code).toBe(3);
    expect(failure(stderr).message).toContain('damaged or incomplete gzip');
  });

  test('a place that cannot be written: 4, and nothing is left there', () => {
    const blocker = here.put('blocker', 'a file where a folder is wanted');
    const { code, stderr } = run(['read', RECORDING, '--out', join(blocker, 'out.csv'), '--json']);
    expect(code).toBe(4);
    expect(failure(stderr)).toMatchObject({ kind: 'output' });
    expect(readdirSync(here.folder).filter((name) => name.includes('.part'))).toEqual([]);
  });

  test('an output that would overwrite the input: 2', () => {
    const file = here.put('own.csv', 'time_s,tank_pressure_pa\n0,1\n1,2\n2,3\n');
    const { code, stderr } = run(['read', file, '--out', file]);
    expect(code).toBe(2);
    expect(stderr).toContain('is also an input');
  });
});

describe('Ctrl-C in the middle of a sum', () => {
  /** Long enough to be told of on the way: the example and a second of its kind. */
  const second = (): string =>
    here.put('second.csv', readFileSync(RECORDING, 'utf8').replace(/^([\d.]+),0,/m, '$1,12,'));

  test('diagnose ends with words and 130, and leaves no file', async () => {
    const out = join(here.folder, 'never.json');
    const args = ['diagnose', '--car', CAR, '--out', out, RECORDING, second()];
    const { code, stdout, stderr } = await runAndStop(args, here.folder, ' %  ');
    expect({ code, stdout }).toEqual({ code: 130, stdout: '' });
    expect(stderr).toContain('cancelled; nothing was left half-written');
    expect(readdirSync(here.folder).filter((name) => name.includes('never'))).toEqual([]);
  });

  test('as JSON when asked', async () => {
    const args = ['diagnose', '--car', CAR, '--json', RECORDING, second()];
    const { code, stderr } = await runAndStop(args, here.folder, ' %  ');
    expect(code).toBe(130);
    expect(failure(stderr.trim().split('\n').at(-1)!)).toMatchObject({ kind: 'cancelled' });
  });
});

test('a reader that closes the pipe of the help is no failure', () => {
  const done = spawnSync('sh', ['-c', `"${process.execPath}" "${join(ROOT, 'bin/vaporwright.mjs')}" --help | head -1`]);
  expect(done.stderr.toString()).toBe('');
  expect(done.stdout.toString()).toMatch(/^Usage:/);
});

test('an output that is full: 4, not a fault of the program', () => {
  const full = openSync('/dev/full', 'w');
  const done = spawnSync(process.execPath, [join(ROOT, 'bin/vaporwright.mjs'), 'schema', 'car'], {
    stdio: ['ignore', full, 'pipe'],
  });
  closeSync(full);
  expect(done.status).toBe(4);
  expect(done.stderr.toString()).toContain('the disk is full');
});

test('the same recording twice is refused: it would count twice', () => {
  const { code, stderr } = run([
    'diagnose',
    '--car',
    CAR,
    '--json',
    RECORDING,
    here.put('copy.csv', readFileSync(RECORDING)),
  ]);
  expect(code).toBe(2);
  expect(failure(stderr)).toMatchObject({ message: 'the same recording was given twice' });
});

describe('values of options that are none: 2', () => {
  test.each([
    [['readiness', '--car', CAR, '--model-year', 'abc'], 'is not a year'],
    [['readiness', '--car', CAR, '--level', '900'], 'is not a share in percent from 0 to 100'],
    [['readiness', '--car', CAR, '--leaves', '99:99'], 'is not a time of day'],
    [['readiness', '--car', CAR, '--zone', 'Mars/Base'], 'is no time zone'],
    [['readiness', '--car', CAR, '--garage', 'hot'], 'is not a temperature'],
    [['readiness', '--car', CAR], 'there is nothing to go by'],
    [['capture', '--out', 'x.log', '--demo', 'engine-vacuum', '--seconds', '-3'], 'is not a number above 0'],
    [['capture', '--out', 'x.log', '--port', 'tcp://127.0.0.1:1', '--bit-rate', '1234'], 'is not a bit rate'],
  ])('%j', (args, words) => {
    const { code, stderr } = run(args, here.folder);
    expect(code).toBe(2);
    expect(stderr).toContain(words);
  });
});

test('a capture from an adapter that is not there: 3, the trouble said once, no file left', () => {
  const args = ['capture', '--port', 'tcp://127.0.0.1:1', '--seconds', '1', '--out', 'none.log'];
  const { code, stderr } = run(args, here.folder);
  expect(code).toBe(3);
  expect(stderr).toContain('nothing was recorded');
  expect(stderr.split('trying again')).toHaveLength(2);
  expect(readdirSync(here.folder)).not.toContain('none.log');
});
