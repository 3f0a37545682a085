/** The workbench as a person starts it, and the commands that share its data. */
import { type ChildProcess, spawn } from 'node:child_process';
import { chmodSync, existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import {
  backupResultSchema,
  exportResultSchema,
  importResultSchema,
  restoreResultSchema,
} from '../../src/cli/store-formats.ts';
import type { JobSummary } from '../../src/jobs/record/job.ts';
import { desk, ROOT, run } from './run.ts';

const here = desk();
const data = join(here.folder, 'data');
const running = new Set<ChildProcess>();
beforeAll(() => chmodSync(here.folder, 0o711));
afterEach(async () => {
  for (const child of running) {
    child.kill('SIGKILL');
    running.delete(child);
  }
});
afterAll(here.clear);

interface Started {
  readonly child: ChildProcess;
  readonly address: string;
  readonly said: () => string;
  readonly ended: Promise<number | null>;
}

/** Resolves when the one clear line has been printed. */
function start(command: string, args: readonly string[], env: NodeJS.ProcessEnv = {}): Promise<Started> {
  const child = spawn(command, args, { cwd: here.folder, env: { ...process.env, ...env } });
  running.add(child);
  let stdout = '';
  let stderr = '';
  const ended = new Promise<number | null>((resolve) => {
    child.on('exit', (code) => {
      running.delete(child);
      resolve(code);
    });
  });
  return new Promise((resolve, reject) => {
    child.stderr.on('data', (piece: Buffer) => {
      stderr += piece;
    });
    child.stdout.on('data', (piece: Buffer) => {
      stdout += piece;
      const address = /^Vaporwright is open at (http:\S+)$/m.exec(stdout)?.[1];
      if (address !== undefined) resolve({ child, address, said: () => stdout + stderr, ended });
    });
    ended.then((code) => reject(new Error(`ended with ${code}: ${stdout}${stderr}`)));
  });
}

const serve = (...args: readonly string[]) =>
  start(process.execPath, [join(ROOT, 'bin/vaporwright.mjs'), 'serve', '--data', data, '--port', '0', ...args]);

const jobsAt = async (address: string): Promise<readonly JobSummary[]> =>
  ((await (await fetch(`${address}/api/v1/jobs?limit=200`)).json()) as { jobs: JobSummary[] }).jobs;

test('npm start without arguments: data folder, demo shop, one line with the address; Ctrl-C ends it cleanly', async () => {
  const place = join(here.folder, 'made-by-start');
  const { child, address, said, ended } = await start('npm', ['--prefix', ROOT, '--silent', 'start'], {
    VAPORWRIGHT_DATA: place,
  });
  expect(address).toMatch(/^http:\/\/localhost:\d+$/);
  const page = await fetch(address);
  expect([page.status, page.headers.get('content-type')]).toEqual([200, 'text/html; charset=utf-8']);
  expect((await fetch(`${address}/sw.js`)).status).toBe(200);
  const jobs = await jobsAt(address);
  expect(jobs.length).toBeGreaterThan(5);
  expect(jobs.every(({ demo }) => demo)).toBe(true);
  expect(statSync(join(place, 'server.json')).mode & 0o077).toBe(0);
  const { pid } = JSON.parse(readFileSync(join(place, 'server.json'), 'utf8')) as { pid: number };
  expect(said()).toContain(place);
  process.kill(pid, 'SIGINT');
  expect(await ended).toBe(0);
  expect(existsSync(join(place, 'server.json'))).toBe(false);
  expect(existsSync(join(place, 'postgres', 'postmaster.pid'))).toBe(false);
  expect(child.killed).toBe(false);
});

describe('one data folder', () => {
  test('a second start says where the first one is; backup and job files work beside it and without it', async () => {
    const first = await serve();
    const second = await serve();
    expect(second.address.replace('127.0.0.1', 'localhost')).toBe(first.address);
    expect(await second.ended).toBe(0);
    expect(second.said()).toContain(`process ${first.child.pid}`);

    const jobs = await jobsAt(first.address);
    const backup = join(here.folder, 'monday.backup');
    const saved = run(['backup', backup, '--data', data, '--json']);
    expect([saved.code, saved.stderr]).toEqual([0, '']);
    expect(backupResultSchema.parse(JSON.parse(saved.stdout)).bytes).toBe(statSync(backup).size);
    expect(statSync(backup).mode & 0o077).toBe(0);
    const number = jobs[0]!.number;
    const exported = run(['export-job', String(number), join(here.folder, 'job.json'), '--data', data, '--json']);
    expect(exportResultSchema.parse(JSON.parse(exported.stdout)).number).toBe(number);
    // The server still has its database.
    expect(await jobsAt(first.address)).toEqual(jobs);
    first.child.kill('SIGTERM');
    expect(await first.ended).toBe(0);

    const other = join(here.folder, 'other');
    const restored = run(['restore', backup, '--data', other, '--json']);
    expect([restored.code, restored.stderr]).toEqual([0, '']);
    expect(restoreResultSchema.parse(JSON.parse(restored.stdout)).jobs).toBe(jobs.length);
    const taken = run(['import-job', join(here.folder, 'job.json'), '--data', other]);
    expect(taken.stdout).toMatch(/^Taken in as job \d+\.$/m);
    const used = run(['import-job', join(here.folder, 'job.json'), '--data', other, '--json']);
    expect(used.code).toBe(0);
    expect(importResultSchema.parse(JSON.parse(used.stdout)).number).toBeGreaterThan(0);
  });

  test('two that start at once are one server, told by both', async () => {
    const place = join(here.folder, 'at-once');
    const args = [join(ROOT, 'bin/vaporwright.mjs'), 'serve', '--data', place, '--port', '0', '--no-demo'];
    const both = await Promise.all([start(process.execPath, args), start(process.execPath, args)]);
    expect(new Set(both.map(({ address }) => new URL(address).port)).size).toBe(1);
    const { pid } = JSON.parse(readFileSync(join(place, 'server.json'), 'utf8')) as { pid: number };
    for (const { child, ended } of both) {
      if (child.pid === pid) child.kill('SIGTERM');
      expect(await ended).toBe(0);
    }
  });

  test('what cannot be done is said: no such job, no backup, no JSON, a port that is taken', async () => {
    const noJob = run(['export-job', '999999', join(here.folder, 'x.json'), '--data', data]);
    expect([noJob.code, existsSync(join(here.folder, 'x.json'))]).toEqual([3, false]);
    expect(run(['restore', join(here.folder, 'none.backup'), '--data', data]).code).toBe(3);
    const blocker = here.put('blocker', 'a file where a folder is wanted');
    expect(run(['backup', join(blocker, 'b.backup'), '--data', data]).code).toBe(4);
    expect(run(['backup', join(here.folder, 'b.backup'), '--data', join(blocker, 'data')]).code).toBe(4);
    const bad = run(['restore', here.put('bad.backup', 'no backup'), '--data', join(here.folder, 'fresh'), '--json']);
    expect(bad.code).toBe(3);
    expect(JSON.parse(bad.stderr).error.message).toContain('Nothing was changed');
    expect(run(['import-job', here.put('bad.json', '{'), '--data', data]).code).toBe(3);
    const server = await serve();
    const taken = run(['serve', '--data', join(here.folder, 'fresh'), '--port', new URL(server.address).port]);
    expect(taken.code).toBe(3);
    expect(taken.stderr).toContain('another program listens there');
    server.child.kill('SIGINT');
    await server.ended;
  });

  test('killed, it starts again on the same data', async () => {
    const first = await serve();
    const jobs = await jobsAt(first.address);
    first.child.kill('SIGKILL');
    await first.ended;
    const again = await serve();
    expect(await jobsAt(again.address)).toEqual(jobs);
    again.child.kill('SIGINT');
    expect(await again.ended).toBe(0);
  });

  test('beyond this machine it prints the link for the first account and lets nobody in before', async () => {
    const place = join(here.folder, 'beyond');
    const open = ['serve', '--data', place, '--port', '0', '--host', '0.0.0.0', '--no-demo'];
    const { child, address, said, ended } = await start(process.execPath, [join(ROOT, 'bin/vaporwright.mjs'), ...open]);
    const local = `http://127.0.0.1:${new URL(address).port}`;
    expect((await fetch(`${local}/api/v1/jobs`)).status).toBe(401);
    expect(said()).toMatch(/\/sign-in#first=[\w-]{43}/);
    child.kill('SIGINT');
    expect(await ended).toBe(0);
  });
});
