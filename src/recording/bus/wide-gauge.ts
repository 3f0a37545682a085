/**
 * Data item $54 stands in public tables with two readings: two's complement, and raw - 32767. They differ by 32767 or
 * 32769 Pa, so a car whose tank was near ambient when the key came on tells which one it means.
 */
export const WIDE_GAUGE_READINGS = ['twos-complement', 'offset'] as const;
export type WideGaugeReading = (typeof WIDE_GAUGE_READINGS)[number];

export interface WideGaugeDecision {
  readonly reading: WideGaugeReading;
  /** `given`: by hand; `assumed`: the first value spoke for neither. */
  readonly how: 'given' | 'key-on' | 'other-item' | 'assumed';
  /** For a reader: what the value was under both readings and why this one was taken. */
  readonly words: string;
}

/** A parked tank is within this of ambient, but for a sealed one (judgement; half of what sets the readings apart is 16 kPa). */
const NEAR_AMBIENT_PA = 10_000;
/** Another pressure item of the same car agrees within this (judgement). */
const AGREES_PA = 4_000;

export function widePressurePa(raw: number, reading: WideGaugeReading): number {
  return reading === 'twos-complement' ? (raw << 16) >> 16 : raw - 32_767;
}

/**
 * Decides for one car. `firstRaw` is the value at key-on, the first one recorded; `otherGaugePa` what another item ($32
 * or $53 against the barometer) said at about that time.
 */
export function decideWideGauge(
  firstRaw: number,
  otherGaugePa: number | undefined,
  given: WideGaugeReading | undefined,
): WideGaugeDecision {
  const both = WIDE_GAUGE_READINGS.map((reading) => ({ reading, pa: widePressurePa(firstRaw, reading) }));
  const [plain, offset] = [both[0]!, both[1]!];
  const facts = `the first value of item $54 is ${plain.pa} Pa as two's complement and ${offset.pa} Pa as an offset of 32767`;
  if (given !== undefined) return { reading: given, how: 'given', words: `${facts}; read as ${given}, as given` };
  if (otherGaugePa !== undefined) {
    const best = Math.abs(plain.pa - otherGaugePa) <= Math.abs(offset.pa - otherGaugePa) ? plain : offset;
    if (Math.abs(best.pa - otherGaugePa) <= AGREES_PA)
      return {
        reading: best.reading,
        how: 'other-item',
        words: `${facts}; read as ${best.reading}, which agrees with the car's other tank pressure of ${Math.round(otherGaugePa)} Pa`,
      };
  }
  const near = Math.abs(plain.pa) <= Math.abs(offset.pa) ? plain : offset;
  if (Math.abs(near.pa) <= NEAR_AMBIENT_PA)
    return {
      reading: near.reading,
      how: 'key-on',
      words: `${facts}; read as ${near.reading}, as a tank stands near ambient when the key comes on`,
    };
  return {
    reading: 'twos-complement',
    how: 'assumed',
    words: `${facts}; neither is near ambient, so the reading of this car is not known: two's complement is assumed, check it with the cap off`,
  };
}
