import { describe, expect, it } from 'vitest';
import { FEDERAL_RULE, inspect } from './inspection.ts';
import { inspectionSlip } from './slip.ts';

describe('inspection slip', () => {
  const inspection = inspect(FEDERAL_RULE, 2012, {}, [], false);
  const value = (lines: readonly { readonly what: string; readonly value: string }[], what: string) =>
    lines.find((line) => line.what === what)?.value;

  it('tells codes that were not read from codes that are none', () => {
    const { lines } = inspectionSlip(FEDERAL_RULE, inspection, {}, [], ['confirmed']);
    expect(value(lines, 'Confirmed codes')).toBe('none');
    expect(value(lines, 'Permanent codes')).toBe('not read');
  });
  it('names rule, date, mark and source, and always the caution that local rules win', () => {
    const { lines, caution } = inspectionSlip(FEDERAL_RULE, inspection, {}, [], []);
    expect(value(lines, 'Rule')).toMatch(/2001-04-05.*secondary source.*85\.2222/);
    expect(value(lines, 'By that rule')).toMatch(/cannot tell.*missing/);
    expect(caution).toMatch(/win/);
  });
  it('says when a count has reached its end', () => {
    const { lines } = inspectionSlip(FEDERAL_RULE, inspection, { warmUpsSinceClear: 255 }, [], []);
    expect(value(lines, 'Warm-ups since clear')).toBe('255 or more');
  });
});
