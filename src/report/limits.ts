/** Reference sizes drawn beside a finding. They are marks to compare with, editable, never a ruling. */
import { z } from 'zod';
import type { Finding, Interval } from '../diagnosis/finding.ts';

const limitSchema = z.strictObject({
  diameterMm: z.number().positive().describe('Diameter of the reference hole, mm'),
  label: z.string().min(1).describe('As the sheet prints it, e.g. "0.020 in"'),
  source: z.string().min(1).describe('Where the value comes from; say "from memory" when it does'),
});
export type Limit = z.infer<typeof limitSchema>;

export const limitsSchema = z
  .strictObject({
    schema: z.literal('vaporwright-limits-1').describe('Name and version of this format'),
    limits: z.array(limitSchema).min(1).max(6),
  })
  .describe('Reference sizes that the report compares a hole with');

/** Words that a source carries when a value was not looked up, in the languages that a shop may write. */
export const isFromMemory = ({ source }: { readonly source: string }): boolean =>
  /from memory|aus dem gedächtnis/i.test(source);

/**
 * The trade's round metric sizes for the two leak monitors; 13 CCR 1968.2(e)(4.2.2) names both in inches.
 * The corresponding federal thresholds (40 CFR 86.1806) are from memory.
 */
export const REFERENCE_LIMITS: readonly Limit[] = [
  {
    diameterMm: 0.5,
    label: '0.020 in',
    source: 'size of a leak monitor (0.508 mm exactly), 13 CCR 1968.2(e)(4.2.2); federal threshold from memory',
  },
  {
    diameterMm: 1.0,
    label: '0.040 in',
    source: 'size of a leak monitor (1.016 mm exactly), 13 CCR 1968.2(e)(4.2.2); federal threshold from memory',
  },
];

/** z of the 95th percentile of the standard normal: the half-width of a 90 % interval in sigmas. */
const Z95 = 1.6449;

/** Logistic form of the normal distribution function, |error| < 0.01 (Bowling et al. 2009). */
const normalBelow = (z: number): number => 1 / (1 + Math.exp(-0.07056 * z ** 3 - 1.5976 * z));

/** Probability that the hole exceeds a diameter, read from the interval as a log-normal with two halves. */
export function exceedsFromInterval(size: Interval, diameterMm: number): number {
  const side = diameterMm < size.median ? size.lo90 : size.hi90;
  const sigma = Math.abs(Math.log(side / size.median)) / Z95;
  if (sigma === 0 || !Number.isFinite(sigma)) return size.median > diameterMm ? 1 : 0;
  return 1 - normalBelow(Math.log(diameterMm / size.median) / sigma);
}

/** Nominal sizes for which the finding itself gives a probability, and how near a limit must be to be that one. */
const SAME_SIZE_TOLERANCE = 0.001;
const isNear = (a: number, b: number): boolean => Math.abs(a / b - 1) <= SAME_SIZE_TOLERANCE;

/** The finding's own probability where it has one for this size; else from the interval; else unknown. */
export function exceedsLimit(finding: Pick<Finding, 'diameterMm' | 'exceeds'>, diameterMm: number): number | null {
  if (isNear(diameterMm, 0.5)) return finding.exceeds.mm0_5;
  if (isNear(diameterMm, 1.0)) return finding.exceeds.mm1_0;
  return finding.diameterMm === null ? null : exceedsFromInterval(finding.diameterMm, diameterMm);
}

export const exceeds = (finding: Pick<Finding, 'diameterMm' | 'exceeds'>, limit: Limit): number | null =>
  exceedsLimit(finding, limit.diameterMm);
