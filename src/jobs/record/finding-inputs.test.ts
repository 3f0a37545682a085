import fc from 'fast-check';
import { expect, test } from 'vitest';
import { EMPTY_SECTIONS } from './empty-job.ts';
import { canonicalJson, findingInputs } from './finding-inputs.ts';
import type { RecordingEntry } from './job.ts';

const entry: RecordingEntry = {
  id: '3f0e6a52-2f7c-4a1f-8d8e-0f9f53a0b111',
  label: 'idle',
  fileName: 'idle.csv',
  sha256: 'a'.repeat(64),
  bytes: 1,
  receivedAt: '2026-03-01T08:30:00Z',
  useInFinding: true,
  taken: 'before-repair',
};
const check = {
  id: '3f0e6a52-2f7c-4a1f-8d8e-0f9f53a0b222',
  at: '2026-03-01T08:30:00Z',
  by: 'Anna',
  what: 'looked',
  result: 'nothing',
  speaksFor: ['leak' as const],
  speaksAgainst: [],
  strength: 'weak' as const,
};
const job = {
  ...EMPTY_SECTIONS,
  complaint: { words: 'smells', types: ['smell' as const, 'slow fill' as const] },
  codes: [
    { code: 'P0442', status: 'stored' as const },
    { code: 'P0455', status: 'pending' as const },
  ],
  recordings: [entry],
  checks: [check],
};
const inputsOf = (changed: typeof job) => canonicalJson(findingInputs(changed));

test.each<[string, typeof job]>([
  ['a code', { ...job, codes: job.codes.slice(0, 1) }],
  ['the status of a code', { ...job, codes: job.codes.map((code) => ({ ...code, status: 'permanent' as never })) }],
  ['a complaint type', { ...job, complaint: { words: 'smells', types: ['smell'] } }],
  ['the content of a recording', { ...job, recordings: [{ ...entry, sha256: 'b'.repeat(64) }] }],
  ['phases by hand', { ...job, recordings: [{ ...entry, phases: [{ kind: 'hold', fromS: 0, toS: 1 }] }] }],
  ['a recording left out', { ...job, recordings: [{ ...entry, useInFinding: false }] }],
  ['what a check speaks for', { ...job, checks: [{ ...check, speaksFor: ['vent_leak' as never] }] }],
  ['the strength of a check', { ...job, checks: [{ ...check, strength: 'strong' as never }] }],
])('%s changes the inputs', (_what, changed) => {
  expect(inputsOf(changed)).not.toBe(inputsOf(job));
});

test.each<[string, typeof job]>([
  ["the customer's words", { ...job, complaint: { ...job.complaint, words: 'reeks' } }],
  [
    'the order of codes and complaints',
    { ...job, codes: [...job.codes].reverse(), complaint: { words: '', types: ['slow fill', 'smell'] } },
  ],
  ['a label', { ...job, recordings: [{ ...entry, label: 'other' }] }],
  ['the words of a check', { ...job, checks: [{ ...check, result: 'other', by: 'Bert' }] }],
  [
    'a recording that is not used',
    { ...job, recordings: [entry, { ...entry, sha256: 'c'.repeat(64), useInFinding: false }] },
  ],
])('%s does not', (_what, changed) => {
  expect(inputsOf(changed)).toBe(inputsOf(job));
});

test('canonical text does not depend on the order of names, and is JSON', () => {
  fc.assert(
    fc.property(fc.dictionary(fc.string(), fc.jsonValue()), (value) => {
      const turned = Object.fromEntries(Object.entries(value).reverse());
      expect(canonicalJson(turned)).toBe(canonicalJson(value));
      expect(JSON.parse(canonicalJson(value))).toEqual(JSON.parse(JSON.stringify(value)));
    }),
  );
});

test('absent and undefined are one, null is another', () => {
  expect(canonicalJson({ a: undefined, b: 1 })).toBe(canonicalJson({ b: 1 }));
  expect(canonicalJson({ a: null, b: 1 })).not.toBe(canonicalJson({ b: 1 }));
});
