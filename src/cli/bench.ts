/** `bench`: hands over to the benchmark runner of the clone this program lives in. */
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { EXIT } from './exit-codes.ts';
import { Failure } from './failure.ts';
import { packagePath } from './package-path.ts';
import { ownSignals } from './stop-signals.ts';

export function benchCommand(name: string | undefined, rest: readonly string[]): Promise<void> {
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
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [runner, ...(name === undefined ? [] : [name, ...rest])], {
      stdio: 'inherit',
    });
    child.on('exit', (code, signal) => {
      process.exitCode = signal === 'SIGINT' ? EXIT.cancelled : (code ?? EXIT.internal);
      resolve();
    });
  });
}
