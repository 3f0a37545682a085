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

test('every cause makes a sentence for both readers', () => {
  const first = finding.causes[0]!;
  for (const id of CAUSES) {
    const one: Finding = { ...finding, causes: [{ ...first, id }] };
    expect(technicalSentence(one)).toMatch(/^[A-Z].*\.$/);
    expect(ownerSentence(one)).toContain(CAUSE_WORDS[id].plain);
  }
});
