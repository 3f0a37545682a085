/**
 * Fuzzing of the capture reader and the slcan decoder by turns, in this one process; `npm run fuzz` runs one for each core.
 *
 * `node --import tsx bench/bus/fuzz.ts [seconds] [seed] [corpus folder]`. An input that breaks a rule is written to the
 * corpus (test/bus/corpus), where the tests run it for ever after. Prints a JSON line.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { randomStream } from '../../src/simulation/random.ts';
import { PARSERS, type ParserName, problemOf } from '../../test/bus/fuzz-parsers.ts';

const seconds = Number(process.argv[2] ?? 60);
const seed = Number(process.argv[3] ?? Date.now() % 1e9);
const corpus = process.argv[4] ?? join(process.cwd(), 'test/bus/corpus');
const NAMES = Object.keys(PARSERS) as ParserName[];
/** The clock is read once in so many inputs. */
const TURN = 500;

const random = randomStream(seed);
const until = performance.now() + 1000 * seconds;
const inputs: Record<ParserName, number> = { capture: 0, slcan: 0 };
let broken = 0;
let slowestMs = 0;
for (let turn = 0; performance.now() < until; turn++) {
  const parser = NAMES[turn % NAMES.length]!;
  for (let k = 0; k < TURN; k++) {
    const text = PARSERS[parser].input(random);
    const started = performance.now();
    const problem = problemOf(parser, text, inputs[parser]);
    slowestMs = Math.max(slowestMs, performance.now() - started);
    inputs[parser]++;
    if (problem === undefined) continue;
    broken++;
    const path = join(corpus, `${parser}-${seed}-${inputs[parser]}.txt`);
    // As the tests read it: one byte for a character.
    writeFileSync(path, text, 'latin1');
    process.stdout.write(`${problem}\n  kept in ${path}\n`);
  }
}
process.stdout.write(
  `${JSON.stringify({ bench: 'fuzz', seconds, seed, inputs, broken, slowestMs, met: broken === 0 })}\n`,
);
process.exitCode = broken === 0 ? 0 : 1;
