/**
 * Findings on cars that the project's own network makes: every layout, every fault that a procedure can show, little known of the car.
 * It says where the finding names the wrong cause, and above all where it is sure of it. The network has more in it than the model that
 * the finding fits, but both are ours: what this measures is the breadth of the finding, not its truth.
 *
 *   npm run bench:made -- [ROUNDS, 2] [FIRST ROUND, 0]
 */
import { fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { KINDS } from './draw-car.ts';
import { RIGHT } from './expected.ts';
import type { MadeReply } from './worker.ts';

const rounds = Number(process.argv[2] ?? 2);
const firstRound = Number(process.argv[3] ?? 0);
if (!Number.isInteger(rounds) || rounds < 1 || !Number.isInteger(firstRound) || firstRound < 0) {
  process.stderr.write('vaporwright: give a number of rounds of 1 or more, and a first round of 0 or more\n');
  process.exit(2);
}
/** A wrong cause with more than this is a certainty that misleads. */
const SURE = 0.8;

const from = firstRound * KINDS.length;
const total = rounds * KINDS.length;
let next = 0;
let done = 0;
const started = Date.now();

/** One child works until no case is left. */
const oneChild = (): Promise<MadeReply[]> =>
  new Promise((resolve, reject) => {
    const replies: MadeReply[] = [];
    const child = fork(fileURLToPath(new URL('./worker.ts', import.meta.url)));
    const ask = () => {
      if (next < total) child.send(from + next++);
      else {
        child.removeAllListeners('exit');
        child.kill();
        resolve(replies);
      }
    };
    child.on('message', (reply: MadeReply) => {
      replies.push(reply);
      if (++done % 25 === 0) process.stderr.write(`${done} of ${total} cars\n`);
      ask();
    });
    child.on('error', reject);
    child.on('exit', (code, signal) => reject(new Error(`a child process ended by ${signal ?? code}`)));
    ask();
  });

const replies = (await Promise.all(Array.from({ length: availableParallelism() }, oneChild)))
  .flat()
  .sort((a, b) => a.index - b.index);

interface Row {
  cars: number;
  right: number;
  sureAndWrong: number;
  failed: number;
}
const rows = new Map<string, Row>();
const wrong: string[] = [];
for (const reply of replies) {
  const { layout, procedure, fault } = KINDS[reply.index % KINDS.length]!;
  const key = `${layout}, ${procedure}`;
  const row = rows.get(key) ?? { cars: 0, right: 0, sureAndWrong: 0, failed: 0 };
  rows.set(key, row);
  row.cars++;
  const name = fault?.kind ?? 'sound';
  if ('failure' in reply) {
    row.failed++;
    wrong.push(`${key}, ${name}: ${reply.failure}`);
    continue;
  }
  const right = RIGHT[name]!;
  const [first] = reply.causes;
  if (first && right.includes(first.id)) row.right++;
  else if (first) {
    if (first.probability > SURE) row.sureAndWrong++;
    const own = reply.causes.filter((c) => right.includes(c.id)).reduce((sum, c) => sum + c.probability, 0);
    wrong.push(
      `${key}, ${name} (car ${reply.index}): ${first.id} ${first.probability.toFixed(2)}, right ones ${own.toFixed(2)}`,
    );
  }
}
const seconds = (Date.now() - started) / 1000;
console.log(
  `${'layout, procedure'.padEnd(34)}${['cars', 'right', 'sure and wrong', 'failed'].map((h) => h.padStart(16)).join('')}`,
);
const all: Row = { cars: 0, right: 0, sureAndWrong: 0, failed: 0 };
const print = (name: string, r: Row) => {
  console.log(
    `${name.padEnd(34)}${[r.cars, r.right, r.sureAndWrong, r.failed].map((x) => String(x).padStart(16)).join('')}`,
  );
};
for (const [name, r] of rows) {
  print(name, r);
  all.cars += r.cars;
  all.right += r.right;
  all.sureAndWrong += r.sureAndWrong;
  all.failed += r.failed;
}
print('all', all);
console.log(`\nwrong first causes (${wrong.length}):`);
for (const line of wrong) console.log(`  ${line}`);
console.log(JSON.stringify({ bench: 'made', rounds, firstRound, seconds, ...all, rows: Object.fromEntries(rows) }));
