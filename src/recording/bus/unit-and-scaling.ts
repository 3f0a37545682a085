/**
 * Unit-and-scaling identifiers of service $06 (SAE J1979 / ISO 15031-5, from memory): value per bit in the unit named.
 * $81..$FE are two's complement, $01..$7F unsigned.
 */
export interface Scaling {
  readonly perBit: number;
  readonly unit: string;
}

const SCALINGS: Readonly<Record<number, Scaling>> = {
  3: { perBit: 0.01, unit: '1' },
  4: { perBit: 0.001, unit: '1' },
  10: { perBit: 0.122e-3, unit: 'V' },
  11: { perBit: 0.001, unit: 'V' },
  16: { perBit: 0.001, unit: 's' },
  18: { perBit: 1, unit: 's' },
  23: { perBit: 10, unit: 'Pa' },
  24: { perBit: 11.7, unit: 'Pa' },
  25: { perBit: 79, unit: 'Pa' },
  26: { perBit: 1000, unit: 'Pa' },
  36: { perBit: 1, unit: 'counts' },
  39: { perBit: 1e-5, unit: 'kg/s' },
  40: { perBit: 1e-3, unit: 'kg/s' },
  41: { perBit: 0.25, unit: 'Pa/s' },
  47: { perBit: 1e-4, unit: '1' },
  129: { perBit: 1, unit: 'raw' },
  132: { perBit: 0.001, unit: '1' },
  139: { perBit: 0.001, unit: 'V' },
  168: { perBit: 1e-3, unit: 'kg/s' },
  169: { perBit: 0.25, unit: 'Pa/s' },
  253: { perBit: 1, unit: 'Pa' },
  254: { perBit: 0.25, unit: 'Pa' },
};

export const isSignedScaling = (id: number): boolean => id >= 0x80;

/** Scaling of an identifier; absent where it is not in the table, and then only the raw number is known. */
export const scalingOf = (id: number): Scaling | undefined => SCALINGS[id];

/** Raw number of a 16-bit field under an identifier: with its sign where the identifier is a signed one. */
export const rawNumber = (id: number, word: number): number => (isSignedScaling(id) ? (word << 16) >> 16 : word);
