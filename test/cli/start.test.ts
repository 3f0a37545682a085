/** `npm start` with a command, from any folder; without one it opens the workbench, see serve.test.ts. */
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { afterAll, expect, test } from 'vitest';
import { machineFindingSchema } from '../../src/cli/machine-finding.ts';
import { CAR, desk, RECORDING, ROOT } from './run.ts';

const here = desk();
afterAll(here.clear);

const npm = (...args: readonly string[]) =>
  spawnSync('npm', ['--prefix', ROOT, '--silent', 'start', ...args], { cwd: here.folder, encoding: 'utf8' });

test('demo: the finding in words, a report where it says, nothing else written, what to do next', () => {
  const { status, stdout } = npm('--', 'demo');
  expect(status).toBe(0);
  expect(stdout).toContain('Invented car and recording');
  expect(stdout).toContain('For the owner:');
  expect(stdout).toContain('npm start -- diagnose --car car.json recording.csv');
  expect(stdout).toContain('vaporwright-report/report.html');
  expect(readdirSync(here.folder)).toEqual(['vaporwright-report']);
  expect(readdirSync(`${here.folder}/vaporwright-report`).sort()).toEqual(['report.html', 'report.pdf']);
});

test('a command is passed on, and its stdout is the result alone', () => {
  const { status, stdout } = npm('--', 'diagnose', '--car', CAR, '--json', RECORDING);
  expect(status).toBe(0);
  expect(machineFindingSchema.safeParse(JSON.parse(stdout)).success).toBe(true);
});

test('the exit code is that of the command', () => {
  const { status, stderr } = npm('--', 'read', 'nowhere.csv');
  expect(status).toBe(3);
  expect(stderr).toContain('nowhere.csv');
});
