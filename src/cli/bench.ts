/** `bench`: hands over to the benchmark runner of the clone this program lives in. */
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { EXIT } from './exit-codes.ts';
import { Failure } from './failure.ts';
import { printJson, remark } from './output.ts';
import { packagePath } from './package-path.ts';
import { ownSignals } from './stop-signals.ts';

export interface BenchOptions {
  readonly json?: boolean;
}

/** The object that a benchmark prints after its table; undefined for a line of the table. */
export function resultOf(line: string): Record<string, unknown> | undefined {
  if (!line.startsWith('{')) return undefined;
  try {
    return JSON.parse(line) as Record<string, unknown>;
  } catch {
    return undefined;
  }
}

export async function benchCommand(
  name: string | undefined,
  rest: readonly string[],
  { json }: BenchOptions,
): Promise<void> {
  const runner = packagePath('scripts/bench.mjs');
  if (!existsSync(runner)) {
    throw new Failure(EXIT.input, 'the benchmarks are not here', {
      file: runner,
      advice: 'Run the command inside a clone of the project.',
    });
  }
  // The benchmark and this program get Ctrl-C together; this one waits for the other's end.
  ownSignals();
  process.on('SIGINT', () => {});
  const child = spawn(process.execPath, [runner, ...(name === undefined ? [] : [name, ...rest])], {
    stdio: ['inherit', json === true ? 'pipe' : 'inherit', 'inherit'],
  });
  const benchmarks: Record<string, unknown>[] = [];
  const ended = new Promise<number>((resolve) => {
    child.on('close', (code, signal) => resolve(signal === 'SIGINT' ? EXIT.cancelled : (code ?? EXIT.internal)));
  });
  if (child.stdout) {
    for await (const line of createInterface({ input: child.stdout })) {
      const result = resultOf(line);
      if (result) benchmarks.push(result);
      else remark(line);
    }
  }
  process.exitCode = await ended;
  if (json === true && process.exitCode === 0) printJson({ schema: 'vaporwright-bench-result-1', benchmarks });
}
