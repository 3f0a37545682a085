/** `npm run bench:NAME -- ARGS`: sets up what is missing, then runs one benchmark from its source. */
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { ensurePackages, prepare, ROOT } from './setup.mjs';

const BENCHES = ['accuracy', 'calibration', 'made', 'speed', 'csv', 'bus', 'readiness', 'planner', 'pages', 'server'];

function runOne(name, args) {
  return new Promise((done) => {
    const file = join(ROOT, 'bench', name, `${name}.ts`);
    if (!existsSync(file)) {
      process.stderr.write(`vaporwright: benchmark file not found: bench/${name}/${name}.ts\n`);
      done(1);
      return;
    }
    const cwd = process.env.INIT_CWD ? resolve(process.env.INIT_CWD) : process.cwd();
    const child = spawn(
      process.execPath,
      ['--import', join(ROOT, 'node_modules/tsx/dist/esm/index.mjs'), file, ...args],
      {
        cwd,
        stdio: 'inherit',
      },
    );
    child.on('exit', (code, signal) => done(signal === 'SIGINT' ? 130 : (code ?? 1)));
  });
}

await prepare(ensurePackages);
const [which, ...args] = process.argv.slice(2);
const names = which === undefined || which === 'all' ? BENCHES.filter((name) => name !== 'accuracy') : [which];
for (const name of names) {
  if (!BENCHES.includes(name)) {
    process.stderr.write(`vaporwright: no benchmark "${name}". There are: ${BENCHES.join(', ')}\n`);
    process.exit(2);
  }
}
// A child handles Ctrl-C itself; the parent waits for it so that the exit code is the child's.
process.on('SIGINT', () => {});
let worst = 0;
for (const name of names) worst = Math.max(worst, await runOne(name, args));
process.exitCode = worst;
