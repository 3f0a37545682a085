import { expect, test } from 'vitest';
import { CAUSES } from '../../diagnosis/finding.ts';
import { type HoldQuestion, judgeHold } from '../../diagnosis/growing/holding-longer.ts';
import { liveSaidInGerman } from './live-said.de.ts';

const question = (change: Partial<HoldQuestion>): HoldQuestion => ({
  phase: 'hold',
  heldS: 30,
  settled: true,
  sdLnDiameter: { now: 0.2, after30S: 0.19, after60S: 0.1 },
  partingLnOdds: 0,
  first: { id: 'leak', probability: 0.6 },
  rival: 'vent_leak',
  exceeds: { mm0_5: 0.5, mm1_0: 0.2 },
  ...change,
});
const still = { now: 0.05, after30S: 0.05, after60S: 0.05 };
const decided = { mm0_5: 1, mm1_0: 0 };

/** One of every kind of sentence, and every cause in the sentences that name causes. */
const questions: readonly HoldQuestion[] = [
  question({ heldS: 3 }),
  question({ settled: false }),
  question({}),
  question({ exceeds: decided }),
  ...CAUSES.flatMap((id) => [
    question({ exceeds: decided, sdLnDiameter: still, partingLnOdds: 2, first: { id, probability: 0.6 } }),
    question({ exceeds: decided, sdLnDiameter: still, first: { id, probability: 0.6 } }),
    question({ sdLnDiameter: still, first: { id, probability: 0.95 }, rival: undefined }),
    question({ sdLnDiameter: still, first: { id, probability: 0.6 } }),
  ]),
];

test('everything that is said of holding longer is said in German', () => {
  const kinds = new Set<string>();
  for (const each of questions) {
    const { reason } = judgeHold(each);
    const german = liveSaidInGerman(reason);
    kinds.add(reason.replace(/[\d.]+/g, '').slice(0, 24));
    expect(german).not.toBe(reason);
    expect(german).not.toMatch(/\b(the|another|would|hole|stands|and|leak|valve|stuck|decided)\b/i);
    expect(german).toMatch(/\.$/);
  }
  expect(kinds.size).toBeGreaterThanOrEqual(6);
});

test('what the line says is said in German, also with what it is wrapped in; a foreign sentence stays', () => {
  expect(liveSaidInGerman('no control unit answers; is the key on?; trying again')).toBe(
    'kein Steuergerät antwortet; ist die Zündung an?; es wird weiter versucht',
  );
  expect(liveSaidInGerman('EIO: i/o error')).toBe('EIO: i/o error');
});
