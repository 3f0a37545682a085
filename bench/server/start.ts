/** Starts the program as a person does, in a data folder of its own, and ends it again. */
import { spawn } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const PROGRAM = fileURLToPath(new URL('../../bin/vaporwright.mjs', import.meta.url));

export interface Started {
  readonly address: string;
  end(): Promise<void>;
}

export async function startProgram(): Promise<Started> {
  const folder = mkdtempSync(join(tmpdir(), 'vaporwright-bench-'));
  chmodSync(folder, 0o711);
  const child = spawn(process.execPath, [PROGRAM, 'serve', '--data', join(folder, 'data'), '--port', '0'], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = new Promise<void>((resolve) => child.on('exit', () => resolve()));
  const address = await new Promise<string>((resolve, reject) => {
    let text = '';
    child.stdout.on('data', (piece: Buffer) => {
      text += piece;
      const found = /open at (http:\S+)/.exec(text)?.[1];
      if (found !== undefined) resolve(found);
    });
    child.on('exit', (code) => reject(new Error(`the server ended with code ${code}`)));
  });
  return {
    address,
    end: async () => {
      child.kill('SIGINT');
      await ended;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
