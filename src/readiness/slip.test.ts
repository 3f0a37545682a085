import { describe, expect, it } from 'vitest';
import { inspect } from './inspection.ts';
import { FEDERAL_RULE } from './inspection-rules.ts';
import { type CarsWord, inspectionSlip } from './slip.ts';
import { READINESS_EN } from './text/en.ts';
import { PLAIN_METRIC, readinessFigures } from './text/figures.ts';

describe('inspection slip', () => {
  const inspection = inspect(FEDERAL_RULE, 2012, {}, [], false);
  const value = (said: Partial<CarsWord>, what: string) =>
    inspectionSlip(
      FEDERAL_RULE,
      inspection,
      { status: {}, codes: [], codesRead: [], ...said },
      READINESS_EN,
      readinessFigures(PLAIN_METRIC),
    ).find((line) => line.what === what)?.value;

  it('tells codes that were not read from codes that are none', () => {
    const said = { codesRead: ['confirmed'] } as const;
    expect(value(said, 'Confirmed codes')).toBe('none');
    expect(value(said, 'Permanent codes')).toBe('not read');
  });
  it('names rule, date, mark and source, and always the caution that local rules win', () => {
    expect(value({}, 'Rule')).toMatch(/2001-04-05.*secondary source.*85\.2222/);
    expect(value({}, 'By that rule')).toMatch(/cannot tell.*missing/);
    expect(READINESS_EN.caution).toMatch(/win/);
  });
  it('says when a count has reached its end', () => {
    expect(value({ status: { warmUpsSinceClear: 255 } }, 'Warm-ups since clear')).toBe('255 or more');
  });
  it('a code that two units name stands once', () => {
    const codes = [
      { code: 'P0456', status: 'confirmed' },
      { code: 'P0456', status: 'confirmed' },
    ] as const;
    expect(value({ codes, codesRead: ['confirmed'] }, 'Confirmed codes')).toBe('P0456');
  });
});
