import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CATALOGUE } from './causes/catalogue.ts';
import type { CauseId } from './finding.ts';
import { posteriorOf } from './posterior.ts';
import type { Weighed } from './weighing/weighed.ts';

const cause = (id: CauseId, form?: string) => CATALOGUE.find((c) => c.id === id && (!form || c.form === form))!;
const weighed = (causes: Weighed['causes'], logEvidence: number, sensor = 0): Weighed =>
  ({
    id: causes[0]!.id,
    causes,
    logEvidence,
    parts: { pressure: logEvidence - sensor, trims: 0, sensor },
  }) as unknown as Weighed;
const weighing = (singles: readonly Weighed[], pairs: readonly Weighed[] = []) => ({ weighed: singles, pairs });
const even = () => 1;

describe('posterior of the causes', () => {
  const evidence = fc.double({ min: -1e5, max: 1e3, noNaN: true });

  it('sums to 1 by cause, whatever the evidences and priors, without overflow', () => {
    fc.assert(
      fc.property(
        fc.array(evidence, { minLength: CATALOGUE.length, maxLength: CATALOGUE.length }),
        evidence,
        evidence,
        fc.array(fc.double({ min: 1e-6, max: 1, noNaN: true }), { minLength: 20, maxLength: 20 }),
        (logs, a, b, priors) => {
          const singles = CATALOGUE.map((c, i) => weighed([c], logs[i]!));
          const pairs = [
            weighed([cause('leak'), cause('sensor_bias')], a),
            weighed([cause('purge_leak'), cause('leak')], b),
          ];
          const ids = [...new Set(CATALOGUE.map((c) => c.id))];
          const p = posteriorOf(weighing(singles, pairs), (id) => priors[ids.indexOf(id)]!);
          expect([...p.byCause.values()].reduce((s, x) => s + x, 0)).toBeCloseTo(1, 9);
          const all = [...p.singles, ...p.pairs].map((x) => x.probability);
          expect(all.reduce((s, x) => s + x, 0)).toBeCloseTo(1, 9);
          expect(all.every((x) => x >= 0 && x <= 1)).toBe(true);
          for (const list of [p.singles, p.pairs])
            for (let i = 1; i < list.length; i++)
              expect(list[i]!.probability).toBeLessThanOrEqual(list[i - 1]!.probability);
        },
      ),
    );
  });

  it('is Bayes: odds are prior odds times the evidence ratio, untempered', () => {
    const p = posteriorOf(
      weighing([weighed([cause('purge_leak')], -10), weighed([cause('gross_leak')], -12)]),
      (id) => (id === 'purge_leak' ? 1 : 3),
      1,
    );
    expect(p.byCause.get('purge_leak')! / p.byCause.get('gross_leak')!).toBeCloseTo(Math.exp(2) / 3, 9);
  });

  it('a temper leaves what the sensor noise says as it is', () => {
    const p = posteriorOf(
      weighing([weighed([cause('sensor_noisy')], -4, 3), weighed([cause('gross_leak')], -7)]),
      even,
      0.5,
    ).byCause;
    expect(p.get('sensor_noisy')! / p.get('gross_leak')!).toBeCloseTo(Math.exp(3), 6);
  });

  it('a temper softens the odds', () => {
    const two = weighing([weighed([cause('purge_leak')], 0), weighed([cause('gross_leak')], -8)]);
    const odds = (temper: number) => {
      const p = posteriorOf(two, even, temper).byCause;
      return p.get('purge_leak')! / p.get('gross_leak')!;
    };
    expect(odds(1)).toBeCloseTo(Math.exp(8), 3);
    expect(odds(0.5)).toBeCloseTo(Math.exp(4), 6);
  });

  it('forms of one cause add up, and share its prior', () => {
    const forms = CATALOGUE.filter((c) => c.id === 'leak');
    expect(forms.length).toBeGreaterThan(1);
    const p = posteriorOf(weighing([...forms.map((c) => weighed([c], 0)), weighed([cause('purge_leak')], 0)]), even, 1);
    expect(p.byCause.get('leak')).toBeCloseTo(0.5, 6);
  });

  it('every cause has its whole prior, whatever its forms', () => {
    for (const id of new Set(CATALOGUE.map((c) => c.id))) {
      const shares = CATALOGUE.filter((c) => c.id === id).map((c) => c.share ?? 1);
      expect([id, shares.reduce((a, b) => a + b, 0)]).toEqual([id, 1]);
    }
  });

  it('a pair counts half for each of its causes, and is rarer than a single fault', () => {
    const leak = cause('leak');
    const bias = cause('sensor_bias');
    const p = posteriorOf(weighing([weighed([leak], -1000), weighed([bias], -1000)], [weighed([leak, bias], 0)]), even);
    expect(p.byCause.get('leak')).toBeCloseTo(0.5, 6);
    expect(p.byCause.get('sensor_bias')).toBeCloseTo(0.5, 6);
    const alike = posteriorOf(weighing([weighed([leak], 0), weighed([bias], 0)], [weighed([leak, bias], 0)]), even);
    expect(alike.pairs[0]!.probability).toBeLessThan(alike.singles[1]!.probability);
  });
});
