/** Service $09. From memory (SAE J1979). */
export const VIN_TYPE = 0x02;
export const SPARK_COUNTERS_TYPE = 0x08;

/** In-use counters of a spark-ignition car, in the order of the message. */
export const COUNTER_NAMES = [
  'OBDCOND',
  'IGNCNTR',
  'CATCOMP1',
  'CATCOND1',
  'CATCOMP2',
  'CATCOND2',
  'O2SCOMP1',
  'O2SCOND1',
  'O2SCOMP2',
  'O2SCOND2',
  'EGRCOMP',
  'EGRCOND',
  'AIRCOMP',
  'AIRCOND',
  'EVAPCOMP',
  'EVAPCOND',
  'SO2SCOMP1',
  'SO2SCOND1',
  'SO2SCOMP2',
  'SO2SCOND2',
] as const;
export type CounterName = (typeof COUNTER_NAMES)[number];
export type InUseCounters = Readonly<Partial<Record<CounterName, number>>>;

/** Counters of a reply `49 08 count pairs`; absent when count and length disagree. */
export function readCounters(message: Uint8Array): InUseCounters | undefined {
  const count = message[2];
  if (count === undefined || message.length !== 3 + 2 * count) return undefined;
  const counters: Partial<Record<CounterName, number>> = {};
  for (let i = 0; i < Math.min(count, COUNTER_NAMES.length); i++)
    counters[COUNTER_NAMES[i]!] = (message[3 + 2 * i]! << 8) | message[4 + 2 * i]!;
  return counters;
}

/** Vehicle identification number of a reply `49 02 01 17 letters`; absent when it is not one. */
export function readVin(message: Uint8Array): string | undefined {
  // Padded in front with zeros by units that count in fours.
  let at = 3;
  while (at < message.length && message[at] === 0) at++;
  if (message[2] !== 1 || message.length - at !== 17) return undefined;
  let vin = '';
  for (; at < message.length; at++) vin += String.fromCharCode(message[at]!);
  return /^[A-HJ-NPR-Z0-9]{17}$/.test(vin) ? vin : undefined;
}

/** The check digit that North American numbers carry in the ninth place agrees. 49 CFR 565.15(c), from memory. */
export function vinCheckDigitAgrees(vin: string): boolean {
  const VALUES: Readonly<Record<string, number>> = Object.fromEntries(
    [...'ABCDEFGH']
      .map((c, i) => [c, i + 1])
      .concat(
        [...'JKLMN'].map((c, i) => [c, i + 1]),
        [
          ['P', 7],
          ['R', 9],
        ],
        [...'STUVWXYZ'].map((c, i) => [c, i + 2]),
      ),
  );
  const WEIGHTS = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];
  let sum = 0;
  for (let i = 0; i < 17; i++) sum += (VALUES[vin[i]!] ?? Number(vin[i])) * WEIGHTS[i]!;
  const digit = sum % 11;
  return vin[8] === (digit === 10 ? 'X' : String(digit));
}
