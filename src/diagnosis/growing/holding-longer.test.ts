import { describe, expect, it } from 'vitest';
import { type HoldQuestion, judgeHold } from './holding-longer.ts';

const question: HoldQuestion = {
  phase: 'hold',
  heldS: 60,
  settled: true,
  sdLnDiameter: { now: 0.2, after30S: 0.15, after60S: 0.12 },
  partingLnOdds: 0.1,
  first: { id: 'leak', probability: 0.95 },
  rival: 'none',
  exceeds: { mm0_5: 0.6, mm1_0: 0.01 },
};

describe('whether holding longer pays', () => {
  it('does while a limit is open and the size still narrows', () => {
    const h = judgeHold(question);
    expect(h.verdict).toBe('worth it');
    expect(h.reason).toContain('0.5 mm');
    expect(h.reason).not.toContain('1.0 mm');
    // 1.645 x 0.2 and 1.645 x 0.12
    expect(h.reason).toContain('±33 %');
    expect(h.reason).toContain('±20 %');
  });

  it('does not once the limits are decided and the size is known well enough', () => {
    const h = judgeHold({
      ...question,
      sdLnDiameter: { now: 0.05, after30S: 0.045, after60S: 0.04 },
      exceeds: { mm0_5: 0.999, mm1_0: 0.001 },
    });
    expect(h.verdict).toBe('adds nothing');
    expect(h.reason).toContain('decided');
  });

  it('does not where the limit stays open but nothing narrows, and says so', () => {
    const h = judgeHold({ ...question, sdLnDiameter: { now: 0.2, after30S: 0.198, after60S: 0.195 } });
    expect(h.verdict).toBe('adds nothing');
    expect(h.reason).toContain('stays open');
  });

  it('does where two causes will part', () => {
    const decided = { mm0_5: 0.001, mm1_0: 0.001 };
    const h = judgeHold({
      ...question,
      exceeds: decided,
      first: { id: 'leak', probability: 0.6 },
      partingLnOdds: Math.log(20),
    });
    expect(h.verdict).toBe('worth it');
    expect(h.reason).toContain('factor of 20');
    expect(judgeHold({ ...question, exceeds: decided, first: { id: 'leak', probability: 0.6 } }).verdict).toBe(
      'adds nothing',
    );
  });

  it('gives no verdict against it in the first seconds, nor before the causes have been tried', () => {
    const done = { ...question, exceeds: { mm0_5: 0, mm1_0: 0 } };
    expect(judgeHold(done).verdict).toBe('adds nothing');
    expect(judgeHold({ ...done, heldS: 4 }).verdict).toBe('worth it');
    expect(judgeHold({ ...done, settled: false }).verdict).toBe('worth it');
  });
});
