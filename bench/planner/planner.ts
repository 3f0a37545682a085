/**
 * Simulated jobs to a proven repair: the planner against a fixed flow chart, against parts by probability over cost, and
 * against one who knows the fault; then the same with priors and error rates that are wrong by a factor of two.
 *
 *   node scripts/bench.mjs planner [JOBS] [MONEY WEIGHT]
 */
import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { figureValues } from '../../src/checks/figures.ts';
import { COMPLAINTS } from '../../src/diagnosis/priors/root-causes.ts';
import { type Piece, WAYS, type Way } from './work.ts';
import type { Bill } from './world.ts';

/** How often each complaint brings a car; judgement, as in the finding's priors. */
const SHARE = [0.2, 0.22, 0.22, 0.08, 0.05, 0.07, 0.06, 0.03, 0.03, 0.02, 0.02];
const PROCESSES = 2;

const jobs = Number(process.argv[2] ?? 10_000);
const moneyWeight = Number(process.argv[3] ?? 1);
if (!Number.isInteger(jobs) || jobs < 1 || !(moneyWeight >= 0 && moneyWeight <= 1)) {
  process.stderr.write('vaporwright: give a number of jobs of 1 or more, and a money weight from 0 to 1\n');
  process.exit(2);
}

// the longest pieces first, so that both processes end at about the same time
const isPlanner = (way: Way): number => (way.startsWith('planner') ? 1 : 0);
const pieces = WAYS.flatMap((way) =>
  COMPLAINTS.map(
    (_, complaint): Piece => ({ way, complaint, jobs: Math.round(jobs * SHARE[complaint]!), moneyWeight }),
  ),
).sort((a, b) => isPlanner(b.way) - isPlanner(a.way) || b.jobs - a.jobs);

const found = new Map<Piece, readonly Bill[]>();
const started = Date.now();
async function workThrough(waiting: Piece[], child: ChildProcess): Promise<void> {
  for (let piece = waiting.shift(); piece !== undefined; piece = waiting.shift()) {
    child.send(piece);
    const [bills] = (await once(child, 'message')) as [readonly Bill[]];
    found.set(piece, bills);
    if (isPlanner(piece.way) === 1)
      process.stderr.write(
        `${piece.way}, ${COMPLAINTS[piece.complaint]}: ${piece.jobs} jobs (${Math.round((Date.now() - started) / 1000)} s)\n`,
      );
  }
  child.disconnect();
}
const waiting = [...pieces];
const file = fileURLToPath(new URL('./work.ts', import.meta.url));
await Promise.all(Array.from({ length: PROCESSES }, () => workThrough(waiting, fork(file))));

const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
const p90 = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(0.9 * values.length)]!;
const rate = figureValues()('shop.rate');
const listOf = (way: Way, complaint?: number): Bill[] =>
  pieces.filter((p) => p.way === way && (complaint ?? p.complaint) === p.complaint).flatMap((p) => [...found.get(p)!]);

const rows = WAYS.map((way) => {
  const list = listOf(way);
  const minutes = list.map((b) => b.minutes);
  const money = list.map((b) => (b.minutes * rate) / 60 + b.goods);
  return {
    way,
    minutesMean: mean(minutes),
    minutesP90: p90(minutes),
    moneyMean: mean(money),
    moneyP90: p90(money),
    waitMean: mean(list.map((b) => b.waitMinutes)),
    needlessParts: mean(list.map((b) => b.needlessParts)),
    needlessTanks: mean(list.map((b) => b.needlessTanks)),
  };
});
const seconds = (Date.now() - started) / 1000;
const all = listOf('planner').length;
console.log(
  `${all} jobs, money weight ${moneyWeight}, shop rate ${rate}/h, ${seconds.toFixed(0)} s in ${PROCESSES} processes`,
);
const heads = ['min mean', 'min p90', 'money mean', 'money p90', 'wait min', 'parts', 'tanks'];
console.log(`${'way of working'.padEnd(24)}${heads.map((h) => h.padStart(12)).join('')}`);
for (const r of rows) {
  const numbers = [r.minutesMean, r.minutesP90, r.moneyMean, r.moneyP90, r.waitMean].map((v) =>
    v.toFixed(0).padStart(12),
  );
  const counts = [r.needlessParts, r.needlessTanks].map((v) => v.toFixed(3).padStart(12));
  console.log(`${r.way.padEnd(24)}${[...numbers, ...counts].join('')}`);
}
const byComplaint = COMPLAINTS.map((complaint, c) => ({
  complaint,
  ...Object.fromEntries(WAYS.map((way) => [way, mean(listOf(way, c).map((b) => b.minutes))])),
}));
console.log('\nminutes, mean, by complaint');
for (const [c, complaint] of COMPLAINTS.entries()) {
  const cells = WAYS.map((way) =>
    mean(listOf(way, c).map((b) => b.minutes))
      .toFixed(0)
      .padStart(12),
  );
  console.log(`${complaint.padEnd(24)}${cells.join('')}`);
}
console.log(JSON.stringify({ bench: 'planner', jobs: all, moneyWeight, seconds, rows, byComplaint }));
