import { expect, test } from 'vitest';
import type { CauseProbability, Finding } from '../diagnosis/finding.ts';
import { sizeNote } from './size-note.ts';

const TOTAL = { median: 0.53, lo90: 0.29, hi90: 0.86 };
const of = (id: string, own?: CauseProbability['diameterMm'], verdict: Finding['verdict'] = 'fault') =>
  sizeNote({
    verdict,
    diameterMm: TOTAL,
    causes: [{ id, probability: 0.6, ...(own === undefined ? {} : { diameterMm: own }) } as CauseProbability],
  });

test('a leak whose own size is not the total says both', () => {
  const own = { median: 0.58, lo90: 0.35, hi90: 0.9 };
  expect(of('leak', own)).toEqual({ kind: 'weighed', cause: 'leak', own });
});

test('a valve that seeps to the engine is no hole to the outside: the size is of what lies beside it', () => {
  expect(of('purge_leak')).toEqual({ kind: 'beside', cause: 'purge_leak' });
});

test('nothing is said where the two are one, and where no fault was seen', () => {
  expect(of('leak', { median: 0.531, lo90: 0.291, hi90: 0.862 })).toBeNull();
  expect(of('none', TOTAL, 'no-fault-seen')).toBeNull();
});
