import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { FORMATS, jsonSchemaOf } from '../../src/cli/formats.ts';
import { ROOT, run } from './run.ts';

const COMMANDS = [
  'serve',
  'backup',
  'restore',
  'export-job',
  'import-job',
  'diagnose',
  'report',
  'read',
  'capture',
  'readiness',
  'plan',
  'result',
  'proof',
  'simulate',
  'schema',
  'bench',
  'demo',
];

test('help lists every command and the exit codes, on stdout', () => {
  const { code, stdout, stderr } = run(['--help']);
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  for (const command of COMMANDS) expect(stdout).toContain(`\n  ${command} `);
  expect(stdout).toContain('130 cancelled');
});

test.each(COMMANDS)('%s: help has examples', (command) => {
  const { code, stdout } = run([command, '--help']);
  expect(code).toBe(0);
  expect(stdout).toContain(`Examples:\n  vaporwright ${command}`);
});

test.each(COMMANDS)('%s: has --json, and its result a published format', (command) => {
  expect(run([command, '--help']).stdout).toContain('--json');
  // what "result" prints is the plan after it, what "demo" prints is a finding with the files written
  const format = { result: 'plan', demo: 'diagnose' }[command] ?? command;
  expect(Object.keys(FORMATS)).toContain(format);
});

test('the version is that of the package', () => {
  const { version } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as { version: string };
  expect(run(['--version'])).toEqual({ code: 0, stdout: `${version}\n`, stderr: '' });
});

describe('formats', () => {
  const names = Object.keys(FORMATS);

  test('are listed', () => {
    expect(run(['schema']).stdout.trim().split('\n')).toEqual(names);
  });

  test.each(names)('%s: the published file is current (npm run schemas renews it)', (name) => {
    const file = readFileSync(join(ROOT, 'docs', 'schemas', `${name}.schema.json`), 'utf8');
    expect(JSON.parse(file)).toEqual(jsonSchemaOf(name));
  });

  test('are listed for machines as their own format says', () => {
    const listed = JSON.parse(run(['schema', '--json']).stdout);
    expect(FORMATS.schema!.parse(listed)).toEqual({ schema: 'vaporwright-schema-result-1', formats: names });
    expect(JSON.parse(run(['schema', 'car', '--json']).stdout)).toEqual(jsonSchemaOf('car'));
  });

  test('a name that is none: 2', () => {
    const { code, stderr } = run(['schema', 'poem']);
    expect(code).toBe(2);
    expect(stderr).toContain('there is no format "poem"');
  });
});
