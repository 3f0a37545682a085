import fc from 'fast-check';

/**
 * A number spread evenly over a range. fast-check's own doubles are spread over their bit patterns, so that
 * in a range with zero nearly all are tiny and the range that a property is about is hardly tried.
 */
export const uniform = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 2 ** 30 }).map((k) => min + ((max - min) * k) / 2 ** 30);
