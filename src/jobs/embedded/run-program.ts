/** Runs one of the database's programs to its end. */
import { spawn } from 'node:child_process';

/** Whom the database runs as when this program is root. */
export interface SystemUser {
  readonly uid: number;
  readonly gid: number;
}

export interface Outcome {
  readonly code: number | null;
  readonly words: string;
}

export function runProgram(
  path: string,
  args: readonly string[],
  options: { readonly as?: SystemUser | undefined; readonly cwd?: string } = {},
): Promise<Outcome> {
  return new Promise((resolve) => {
    const child = spawn(path, args, {
      // Its words are matched and shown: one language, whatever the machine speaks.
      env: { ...process.env, LC_ALL: 'C', LC_MESSAGES: 'C', PGDATA: undefined, PGPORT: undefined },
      stdio: ['ignore', 'pipe', 'pipe'],
      windowsHide: true,
      ...(options.as === undefined ? {} : { uid: options.as.uid, gid: options.as.gid }),
      ...(options.cwd === undefined ? {} : { cwd: options.cwd }),
    });
    let words = '';
    const collect = (piece: Buffer) => {
      words += piece.toString('utf8');
    };
    child.stdout.on('data', collect);
    child.stderr.on('data', collect);
    child.on('error', (error) => resolve({ code: null, words: error.message }));
    child.on('exit', (code) => setImmediate(() => resolve({ code, words: words.trim() })));
  });
}
