/**
 * Fuzzing of the capture reader and the slcan decoder.
 *
 * `npx tsx bench/bus/fuzz.ts [seconds] [seed]`: 60 s by default, 600 on demand. An input that breaks a rule is written to
 * test/bus/corpus, where the tests run it for ever after. Prints a table and a JSON line.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { randomStream } from '../../src/simulation/random.ts';
import { fuzzInput, problemOf } from '../../test/bus/fuzz-inputs.ts';

const seconds = Number(process.argv[2] ?? 60);
const seed = Number(process.argv[3] ?? Date.now() % 1e9);
const corpus = fileURLToPath(new URL('../../test/bus/corpus', import.meta.url));
const random = randomStream(seed);
const until = performance.now() + 1000 * seconds;
let inputs = 0;
let broken = 0;
let slowestMs = 0;
while (performance.now() < until)
  for (let k = 0; k < 500; k++) {
    const text = fuzzInput(random);
    const started = performance.now();
    const problem = problemOf(text, inputs);
    slowestMs = Math.max(slowestMs, performance.now() - started);
    inputs++;
    if (problem === undefined) continue;
    broken++;
    const path = join(corpus, `${seed}-${inputs}.txt`);
    writeFileSync(path, text);
    process.stdout.write(`${problem}\n  kept in ${path}\n`);
  }
process.stdout.write(`inputs ${inputs}, broken ${broken}, slowest ${slowestMs.toFixed(1)} ms, seed ${seed}\n`);
process.stdout.write(
  `${JSON.stringify({ bench: 'fuzz', seconds, seed, inputs, broken, slowestMs, met: broken === 0 })}\n`,
);
process.exitCode = broken === 0 ? 0 : 1;
