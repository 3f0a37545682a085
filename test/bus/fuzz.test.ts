import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { randomStream } from '../../src/simulation/random.ts';
import { plainFrames } from './fuzz-inputs.ts';
import { PARSERS, parserOf, problemOf } from './fuzz-parsers.ts';
import { plainSlcanFrames } from './fuzz-slcan.ts';

const INPUTS = 30_000;
const corpus = fileURLToPath(new URL('./corpus', import.meta.url));

describe('fuzzing the parsers of what comes from a bus', () => {
  it('the corpus', () => {
    const names = readdirSync(corpus);
    expect(new Set(names.map(parserOf))).toEqual(new Set(['capture', 'slcan']));
    for (const name of names)
      expect(problemOf(parserOf(name), readFileSync(`${corpus}/${name}`, 'latin1'), 1), name).toBeUndefined();
  });

  const plainOf = { capture: plainFrames, slcan: plainSlcanFrames } as const;
  it.each(['capture', 'slcan'] as const)(
    `${INPUTS} mutated inputs of the %s parser: nothing crashes, every line is accounted for, plain frames are read as they stand`,
    (parser) => {
      const random = randomStream(20_251_125);
      let plain = 0;
      for (let k = 0; k < INPUTS; k++) {
        const text = PARSERS[parser].input(random);
        const problem = problemOf(parser, text, k);
        if (problem !== undefined) expect(problem, JSON.stringify(text)).toBeUndefined();
        plain += plainOf[parser](text).length;
      }
      // The rule about plain frames was put to work.
      expect(plain).toBeGreaterThan(INPUTS / 10);
    },
  );
});
