/**
 * Everything that is about speed, one part after the other, each in a process of its own so that none warms or slows
 * the next: simulation, the whole finding, a growing recording, reading of CSV. Each part prints a table and one JSON line.
 *
 *   npm run bench:speed [-- PART ...]
 */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const PARTS = {
  simulation: { title: 'Simulation, and other integrators on the same equations', file: './simulation.ts' },
  finding: { title: 'A whole finding on a recording of two minutes', file: './finding.ts' },
  growing: { title: 'An added second of a growing recording', file: './growing.ts' },
  csv: { title: 'Reading of CSV', file: '../csv/csv.ts' },
} as const;

const isPart = (name: string): name is keyof typeof PARTS => Object.hasOwn(PARTS, name);

const asked = process.argv.slice(2);
const unknown = asked.find((name) => !isPart(name));
if (unknown !== undefined) {
  process.stderr.write(
    `vaporwright: no part "${unknown}" of the speed benchmark; there are: ${Object.keys(PARTS).join(', ')}\n`,
  );
  process.exit(2);
}
for (const name of asked.length > 0 ? asked.filter(isPart) : (Object.keys(PARTS) as (keyof typeof PARTS)[])) {
  const { title, file } = PARTS[name];
  console.log(`\n== ${title}`);
  const path = fileURLToPath(new URL(file, import.meta.url));
  const { status, signal } = spawnSync(process.execPath, [...process.execArgv, path], { stdio: 'inherit' });
  if (signal === 'SIGINT') process.exit(130);
  if (status !== 0) {
    process.stderr.write(`vaporwright: the part "${name}" failed\n`);
    process.exitCode = 1;
  }
}
