import { rawNumber, type Scaling, scalingOf } from './unit-and-scaling.ts';

/** Monitor identifiers of the evaporative system, service $06 on CAN. From memory (SAE J1979 / ISO 15031-5). */
export const EVAP_MONITOR_IDS: Readonly<Record<number, string>> = {
  57: 'leak, cap off or 3.8 mm (0.150 in)',
  58: 'leak, 2.3 mm (0.090 in)',
  59: 'leak, 1.0 mm (0.040 in)',
  60: 'leak, 0.5 mm (0.020 in)',
  61: 'purge flow',
};

/** One result of an on-board test with its limits, all on one scale. */
export interface TestResult {
  readonly monitorId: number;
  readonly monitor?: string;
  /** $80 and above mean what the maker says. */
  readonly testId: number;
  readonly scalingId: number;
  readonly unit: string;
  readonly value: number;
  readonly lowest: number;
  readonly highest: number;
  readonly passed: boolean;
}

const RESULT_BYTES = 9;
const RAW: Scaling = { perBit: 1, unit: 'raw' };

/** Results of a reply `46 MID TID UAS value min max ...`; absent when it does not come out even. */
export function readTestResults(message: Uint8Array): TestResult[] | undefined {
  if (message.length < 1 + RESULT_BYTES || (message.length - 1) % RESULT_BYTES !== 0) return undefined;
  const results: TestResult[] = [];
  for (let at = 1; at < message.length; at += RESULT_BYTES) {
    const [monitorId, testId, scalingId] = [message[at]!, message[at + 1]!, message[at + 2]!];
    const { perBit, unit } = scalingOf(scalingId) ?? RAW;
    const scaled = (offset: number): number =>
      rawNumber(scalingId, (message[at + offset]! << 8) | message[at + offset + 1]!) * perBit;
    const [value, lowest, highest] = [scaled(3), scaled(5), scaled(7)];
    results.push({
      monitorId,
      ...(EVAP_MONITOR_IDS[monitorId] === undefined ? {} : { monitor: EVAP_MONITOR_IDS[monitorId] }),
      testId,
      scalingId,
      unit,
      value,
      lowest,
      highest,
      // After scaling with the sign: a comparison of the raw words fails tests that passed.
      passed: value >= lowest && value <= highest,
    });
  }
  return results;
}
