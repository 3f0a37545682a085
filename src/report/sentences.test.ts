import { describe, expect, test } from 'vitest';
import { sampleSheet } from '../../test/e2e/sample-sheet.ts';
import { CAUSES, type Finding } from '../diagnosis/finding.ts';
import { ownerSentence, technicalSentence } from './sentences.ts';
import { CAUSE_WORDS } from './words.ts';

const { finding } = sampleSheet;
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('a fault', () => {
  test('technician: cause, size with interval, place group, probability', () => {
    expect(plain(technicalSentence(finding))).toBe(
      'Leak to the open air, 0.62 mm (0.56 to 0.69), most likely at cap and neck, tank top or vapour line. Probability 91 %, very likely.',
    );
  });

  test('owner: no jargon, no figures', () => {
    expect(ownerSentence(finding)).toBe('Very likely there is a small hole or a poor seal in the fuel-vapour system.');
  });
});

test('no fault seen states the largest hole that could hide', () => {
  const none = finding.causes.find((cause) => cause.id === 'none')!;
  const sound: Finding = { ...finding, verdict: 'no-fault-seen', causes: [{ ...none, probability: 0.96 }] };
  expect(plain(technicalSentence(sound))).toBe(
    'No fault seen (96 %). Any hole is smaller than 0.11 mm with 95 % probability.',
  );
  expect(ownerSentence(sound)).toContain('behaved as a sound one does');
});

test('cannot tell says why, and nobody is told to replace parts', () => {
  const open: Finding = {
    ...finding,
    verdict: 'cannot-tell',
    reasons: [{ kind: 'limits', text: 'The hold lasted only 6 s' }],
  };
  expect(technicalSentence(open)).toBe('Cannot tell from this recording, because the hold lasted only 6 s.');
  expect(ownerSentence(open)).toContain('another one is needed');
});

test('no fault seen with reserve says that a small one may hide', () => {
  const none = finding.causes.find((cause) => cause.id === 'none')!;
  const open: Finding = { ...finding, verdict: 'no-fault-seen', causes: [{ ...none, probability: 0.4 }] };
  expect(plain(technicalSentence(open))).toContain('a small or hidden one is not ruled out (40 %)');
  expect(ownerSentence(open)).toContain('cannot rule out a small one');
});

test('a rival that is nearly as good is named in the same breath; a place that adds nothing is not', () => {
  const [leak, vent] = finding.causes;
  const close: Finding = {
    ...finding,
    causes: [
      { ...vent!, id: 'vent_stuck_closed', probability: 0.52 },
      { ...leak!, id: 'path_blocked', probability: 0.48 },
    ],
  };
  const sentence = plain(technicalSentence(close));
  expect(sentence).toContain('Nearly as good: vapour path from tank blocked (48 %).');
  expect(sentence).not.toContain('at vent valve');
});

test('every cause makes a sentence for both readers', () => {
  const first = finding.causes[0]!;
  for (const id of CAUSES) {
    const one: Finding = { ...finding, causes: [{ ...first, id }] };
    expect(technicalSentence(one)).toMatch(/^[A-Z].*\.$/);
    expect(ownerSentence(one)).toContain(CAUSE_WORDS[id].plain);
  }
});

test('a size is that of the fault named: a valve that is no way to the open air gets none', () => {
  const [first] = finding.causes;
  const named = (id: (typeof CAUSES)[number]) => technicalSentence({ ...finding, causes: [{ ...first!, id }] });
  expect(named('leak')).toMatch(/\d\smm \(/);
  expect(named('isolation_leak')).not.toMatch(/\smm/);
});
