/** The parsers of what comes from a bus, each with its inputs and its rules. */
import { type RandomStream, randomStream } from '../../src/simulation/random.ts';
import { captureInput, checkCapture } from './fuzz-inputs.ts';
import { checkSlcan, slcanInput } from './fuzz-slcan.ts';

interface FuzzedParser {
  readonly input: (random: RandomStream) => string;
  readonly check: (text: string, random: RandomStream) => void;
}

export const PARSERS = {
  capture: { input: captureInput, check: checkCapture },
  slcan: { input: slcanInput, check: checkSlcan },
} as const satisfies Record<string, FuzzedParser>;
export type ParserName = keyof typeof PARSERS;

/** Message of an input that broke a rule, or nothing. */
export function problemOf(parser: ParserName, text: string, seed: number): string | undefined {
  try {
    PARSERS[parser].check(text, randomStream(seed, 1));
    return undefined;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

/** The parser that a file of the corpus is for: its name begins with it. */
export const parserOf = (fileName: string): ParserName => (fileName.startsWith('slcan-') ? 'slcan' : 'capture');
