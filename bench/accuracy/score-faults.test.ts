import { describe, expect, it } from 'vitest';
import type { Answer } from './answers.ts';
import { accusedConfounders, bothInTop2, scoreFault, scoreFaults } from './score-faults.ts';
import type { Truth } from './truth.ts';

const truth = (name: string, faults: string[], more: Partial<Truth> = {}): Truth => ({
  case: name,
  procedure: 'A',
  fault: faults[0]!,
  faults,
  also_accept: [],
  confounder: 'none',
  leak_d_equiv_mm: 0,
  ...more,
});
const answer = (name: string, fault_probabilities: Answer['fault_probabilities']): Answer => ({
  case: name,
  fault_probabilities,
});

describe('scores of causes', () => {
  it('scores one fault by hand: probabilities normalised, log of the true one, squares of all', () => {
    const s = scoreFault(
      truth('case-1', ['leak'], { also_accept: ['vent_leak'] }),
      answer('case-1', { vent_leak: 6, leak: 3, none: 1 }),
    );
    expect(s.top1).toBe(false);
    expect(s.top1Wide).toBe(true);
    expect(s.top3).toBe(true);
    expect(s.bothInTop2).toBeUndefined();
    // (0.6 - 0)^2 + (0.3 - 1)^2 + (0.1 - 0)^2 = 0.36 + 0.49 + 0.01
    expect(s.brier).toBeCloseTo(0.86, 12);
    // -ln 0.3
    expect(s.log).toBeCloseTo(1.2039728, 7);
  });

  it('splits two faults evenly and charges an impossible one as 1e-4', () => {
    const s = scoreFault(truth('case-1', ['leak', 'sensor_bias']), answer('case-1', { leak: 1 }));
    // (1 - 0.5)^2 + (0 - 0.5)^2
    expect(s.brier).toBeCloseTo(0.5, 12);
    // -(0.5 ln 1 + 0.5 ln 1e-4) = 0.5 * 9.2103404
    expect(s.log).toBeCloseTo(4.6051702, 7);
    // All others tie at 0 and go in the order of the list: none comes second.
    expect(s.bothInTop2).toBe(false);
    expect(s.top1).toBe(true);
  });

  it('takes a missing answer as one that knows nothing and names nothing', () => {
    const s = scoreFault(truth('case-1', ['none']), undefined);
    expect(s.top1).toBe(false);
    expect(s.top3Wide).toBe(false);
    // ln 16
    expect(s.log).toBeCloseTo(2.7725887, 7);
    // 15 * (1/16)^2 + (15/16)^2 = 240/256
    expect(s.brier).toBeCloseTo(0.9375, 12);
  });

  it('breaks ties by the order of the classes', () => {
    const even = answer('case-1', { sensor_gain: 0.25, sensor_noisy: 0.25, sensor_stuck: 0.25, sensor_bias: 0.25 });
    expect(scoreFault(truth('case-1', ['sensor_bias']), even).top1).toBe(true);
    expect(scoreFault(truth('case-1', ['sensor_noisy']), even).top3).toBe(true);
    expect(scoreFault(truth('case-1', ['sensor_gain']), even).top3).toBe(false);
  });

  it('means over cases, absent answers among them', () => {
    const truths = [truth('case-1', ['leak']), truth('case-2', ['none'])];
    const s = scoreFaults(truths, new Map([['case-1', answer('case-1', { leak: 1 })]]));
    expect(s.n).toBe(2);
    expect(s.top1).toBe(0.5);
    expect(s.brier).toBeCloseTo(0.46875, 12);
    expect(s.log).toBeCloseTo(1.3862944, 7);
  });

  it('counts double faults that are both named', () => {
    const truths = [truth('case-1', ['leak', 'sensor_bias']), truth('case-2', ['leak', 'purge_leak'])];
    const answers = new Map([
      ['case-1', answer('case-1', { sensor_bias: 0.6, leak: 0.4 })],
      ['case-2', answer('case-2', { leak: 0.6, none: 0.4 })],
    ]);
    expect(bothInTop2(truths, answers)).toBe(0.5);
    expect(bothInTop2([truth('case-3', ['leak'])], answers)).toBeUndefined();
  });

  it('counts sound cars with a confounder that were given a fault with more than a half', () => {
    const truths = [
      truth('case-1', ['none'], { confounder: 'hot_fuel' }),
      truth('case-2', ['none'], { confounder: 'slosh' }),
      truth('case-3', ['none']),
      truth('case-4', ['leak'], { confounder: 'slosh' }),
    ];
    const accuse = { leak: 0.51, none: 0.49 };
    const answers = new Map([
      ['case-1', answer('case-1', accuse)],
      ['case-2', answer('case-2', { leak: 0.3, purge_leak: 0.3, none: 0.4 })],
      ['case-3', answer('case-3', accuse)],
      ['case-4', answer('case-4', accuse)],
    ]);
    expect(accusedConfounders(truths, answers)).toEqual({ n: 2, accused: 1 });
  });
});
