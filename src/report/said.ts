/** Sentences made elsewhere in English, said in another language by their shape. */

/** The shape of a sentence, and what to say for it; a group that did not take part is ''. */
export type SaidRow = readonly [shape: RegExp, say: (...groups: string[]) => string];

export function sayWith(rows: readonly SaidRow[], sentence: string): string {
  for (const [shape, say] of rows) {
    const match = shape.exec(sentence);
    if (match !== null) return say(...Array.from(match, (group) => group ?? ''));
  }
  return sentence;
}
