/**
 * Simulation-based calibration: are the stated intervals honest where the model is right?
 *
 * `npx tsx bench/calibration/calibration.ts [--cases 1000] [--seed 1] [--workers N] [--details FILE]`: draws cars, days and all free
 * parameters from their priors, simulates a vacuum draw with a leak by the finding's own model and noise, sizes the leak
 * as the finding does and asks how often the truth lies inside. Prints a table and one JSON line; progress on stderr.
 * Source: Talts et al., Validating Bayesian Inference Algorithms with Simulation-Based Calibration, 2018 (arXiv 1804.06788).
 */
import { writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { parseArgs } from 'node:util';
import { scoresOf, table } from './report.ts';
import { runCases } from './run-cases.ts';

const USAGE = 'usage: npm run bench:calibration -- [--cases 1000] [--seed 1] [--workers N] [--details FILE]';

function whole(name: string, text: string, least: number): number {
  const value = Number(text);
  if (!Number.isInteger(value) || value < least) {
    process.stderr.write(`--${name} is "${text}"; expected a whole number from ${least}\n${USAGE}\n`);
    process.exit(2);
  }
  return value;
}

function readArguments() {
  try {
    return parseArgs({
      options: {
        cases: { type: 'string', default: '1000' },
        seed: { type: 'string', default: '1' },
        workers: { type: 'string', default: String(availableParallelism()) },
        details: { type: 'string' },
      },
    }).values;
  } catch (error) {
    process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n${USAGE}\n`);
    process.exit(2);
  }
}

const given = readArguments();
const cases = whole('cases', given.cases, 1);
const seed = whole('seed', given.seed, 0);
const start = performance.now();
const every = Math.max(1, Math.ceil(cases / 20));
const replies = await runCases(seed, cases, whole('workers', given.workers, 1), (done) => {
  if (done % every === 0 || done === cases) process.stderr.write(`${done} of ${cases} cases\n`);
});
const judged = replies.flatMap((r) => ('judged' in r ? [r.judged] : []));
for (const r of replies) if ('failure' in r) process.stderr.write(`case ${r.index}: ${r.failure}\n`);
if (given.details !== undefined) {
  writeFileSync(given.details, judged.map((j) => `${JSON.stringify(j)}\n`).join(''));
}
const scores = scoresOf(judged, replies.length - judged.length);
process.stdout.write(`${table(scores)}\n`);
const seconds = (performance.now() - start) / 1e3;
process.stdout.write(`${JSON.stringify({ bench: 'calibration', seed, ...scores, seconds })}\n`);
