/** A stream of random numbers from a seed: the same on every machine, none of it hidden. */
export interface RandomStream {
  /** Uniform in [0, 1). */
  uniform(): number;
  /** Normal with mean 0 and standard deviation 1. */
  normal(): number;
}

/** 2^32, for turning 32 random bits into a fraction. */
const TWO_32 = 4294967296;

/**
 * Random stream by the generator sfc32, with the seed and a stream number hashed into its state, so that streams of
 * one seed do not run alike. Source: Doty-Humphrey's Small Fast Counting generator (PractRand).
 *
 * @param seed whole number; the same seed gives the same numbers
 * @param stream number of the stream within the seed
 * @returns the stream
 */
export function randomStream(seed: number, stream = 0): RandomStream {
  let a = mix(seed ^ 0x9e3779b9);
  let b = mix(seed + 0x7f4a7c15);
  let c = mix(stream ^ 0x85ebca6b);
  let counter = 1;
  const next = () => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + sum;
    c |= 0;
    return sum >>> 0;
  };
  for (let i = 0; i < 12; i++) next();
  let spare: number | undefined;
  const uniform = () => next() / TWO_32;
  return {
    uniform,
    normal() {
      if (spare !== undefined) {
        const value = spare;
        spare = undefined;
        return value;
      }
      // Polar method of Marsaglia: needs no sine or cosine.
      for (;;) {
        const u = 2 * uniform() - 1;
        const v = 2 * uniform() - 1;
        const s = u * u + v * v;
        if (s > 0 && s < 1) {
          const scale = Math.sqrt((-2 * Math.log(s)) / s);
          spare = v * scale;
          return u * scale;
        }
      }
    },
  };
}

/** Spreads the bits of a number (finaliser of MurmurHash3). */
function mix(value: number): number {
  let h = value | 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) | 0;
}
