/** Chance and damage for fuzzing: the same for the same random stream. */
import type { RandomStream } from '../../src/simulation/random.ts';

export const whole = (random: RandomStream, below: number): number => Math.floor(random.uniform() * below);
export const pick = <T>(random: RandomStream, items: readonly T[]): T => items[whole(random, items.length)]!;

/** A line with up to three changes: a character replaced, some taken out or put in, cut off, turned about. */
export function mutated(random: RandomStream, seed: string, characters: readonly string[]): string {
  let line = seed;
  const changes = whole(random, 4);
  for (let k = 0; k < changes; k++) {
    const at = whole(random, line.length + 1);
    const kind = whole(random, 5);
    if (kind === 0) line = line.slice(0, at) + pick(random, characters) + line.slice(at + 1);
    else if (kind === 1) line = line.slice(0, at) + line.slice(at + 1 + whole(random, 4));
    else if (kind === 2)
      line = line.slice(0, at) + pick(random, characters).repeat(1 + whole(random, 12)) + line.slice(at);
    else if (kind === 3) line = line.slice(0, at);
    else line = line.slice(at) + line.slice(0, at);
  }
  return line;
}
