import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { randomStream } from '../../src/simulation/random.ts';
import { fuzzInput, plainFrames, problemOf } from './fuzz-inputs.ts';

const INPUTS = 60_000;
const corpus = fileURLToPath(new URL('./corpus', import.meta.url));

describe('fuzzing the capture reader and the slcan decoder', () => {
  it('the corpus', () => {
    const names = readdirSync(corpus);
    expect(names.length).toBeGreaterThan(0);
    for (const name of names) expect(problemOf(readFileSync(`${corpus}/${name}`, 'latin1'), 1), name).toBeUndefined();
  });

  it(`${INPUTS} mutated captures: nothing crashes, every line is accounted for, plain frames are read as they stand`, () => {
    const random = randomStream(20_251_125);
    let plain = 0;
    for (let k = 0; k < INPUTS; k++) {
      const text = fuzzInput(random);
      const problem = problemOf(text, k);
      if (problem !== undefined) expect(problem, JSON.stringify(text)).toBeUndefined();
      plain += plainFrames(text).length;
    }
    // The rule about plain frames was put to work.
    expect(plain).toBeGreaterThan(INPUTS / 10);
  });
});
