/**
 * How often the first blocking condition is named right, on drives and soaks of which it is known.
 *
 * `npx tsx bench/readiness/readiness.ts [drives]`: 600 by default. Prints a table by condition and a JSON line.
 */
import { typicalConditions } from '../../src/readiness/conditions.ts';
import { evaluateReadiness } from '../../src/readiness/evaluate.ts';
import { READINESS_EN } from '../../src/readiness/text/en.ts';
import { PLAIN_METRIC, readinessFigures } from '../../src/readiness/text/figures.ts';
import { makeDrive } from './made-drives.ts';

const LEAST_SHARE = 0.99;
const FIGURES = readinessFigures(PLAIN_METRIC);
const drives = Number(process.argv[2] ?? 600);
const byCondition = new Map<string, { right: number; all: number }>();
const wrong: string[] = [];
let attempts = 0;
for (let seed = 1; seed <= drives; seed++) {
  const made = makeDrive(seed);
  const found = evaluateReadiness(made.recording, typicalConditions(made.layout), {
    parkedBeforeS: made.parkedBeforeS,
    codes: [],
  });
  made.blockers.forEach((blocker, k) => {
    attempts++;
    const named = found[k]?.blocker?.condition.id ?? 'none';
    const tally = byCondition.get(blocker) ?? { right: 0, all: 0 };
    byCondition.set(blocker, tally);
    tally.all++;
    if (named === blocker && found.length >= made.blockers.length) tally.right++;
    else
      wrong.push(
        `drive ${seed} (${made.layout}), attempt ${k + 1}: ${blocker}, named ${named}: ${found[k]?.blocker === undefined ? '' : READINESS_EN.found(found[k].blocker, FIGURES)}`,
      );
  });
}
const right = [...byCondition.values()].reduce((sum, each) => sum + each.right, 0);
for (const [condition, tally] of [...byCondition].sort())
  process.stdout.write(
    `${condition.padEnd(24)} ${String(tally.right).padStart(4)} of ${String(tally.all).padStart(4)}\n`,
  );
process.stdout.write(`${'all'.padEnd(24)} ${String(right).padStart(4)} of ${String(attempts).padStart(4)}\n`);
for (const line of wrong.slice(0, 20)) process.stdout.write(`  ${line}\n`);
process.stdout.write(
  `${JSON.stringify({ bench: 'readiness', drives, attempts, right, share: right / attempts, met: right / attempts >= LEAST_SHARE && drives >= 500 })}\n`,
);
