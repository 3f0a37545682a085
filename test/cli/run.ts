/** Runs the command line as a person does: as a program, with files. */
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const PROGRAM = join(ROOT, 'bin', 'vaporwright.mjs');

export interface Run {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

export function run(args: readonly string[], cwd: string = ROOT): Run {
  const done = spawnSync(process.execPath, [PROGRAM, ...args], { cwd, encoding: 'utf8', maxBuffer: 1 << 28 });
  return { code: done.status, stdout: done.stdout, stderr: done.stderr };
}

/** Starts the program and sends Ctrl-C after a delay in ms, or once the words appear on stderr. */
export function runAndStop(
  args: readonly string[],
  cwd: string,
  when: number | string,
): Promise<Run & { readonly signal: string | null }> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [PROGRAM, ...args], { cwd });
    let stdout = '';
    let stderr = '';
    child.stdout.on('data', (text: Buffer) => {
      stdout += text.toString();
    });
    child.stderr.on('data', (text: Buffer) => {
      stderr += text.toString();
      if (typeof when === 'string' && stderr.includes(when)) child.kill('SIGINT');
    });
    if (typeof when === 'number') setTimeout(() => child.kill('SIGINT'), when);
    child.on('exit', (code, signal) => resolve({ code, signal, stdout, stderr }));
  });
}

export interface Desk {
  readonly folder: string;
  readonly put: (name: string, content: string | Uint8Array) => string;
  readonly clear: () => void;
}

/** A folder of one's own to work in. */
export function desk(): Desk {
  const folder = mkdtempSync(join(tmpdir(), 'vaporwright-desk-'));
  return {
    folder,
    put: (name, content) => {
      const path = join(folder, name);
      writeFileSync(path, content);
      return path;
    },
    clear: () => rmSync(folder, { recursive: true, force: true }),
  };
}

export const CAR = join(ROOT, 'examples', 'invented-estate.car.json');
export const RECORDING = join(ROOT, 'examples', 'leak-self-test.csv');
