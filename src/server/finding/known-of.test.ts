import { expect, test } from 'vitest';
import { knownOf } from './known-of.ts';

const check = (at: string) => ({
  id: '00000000-0000-4000-8000-000000000001',
  at,
  by: 'R.',
  what: 'cap',
  result: 'cracked',
  speaksFor: ['leak' as const],
  speaksAgainst: [],
  strength: 'strong' as const,
});
const JOB = {
  complaint: { words: 'smells', types: ['smell' as const] },
  codes: [{ code: 'P0442', status: 'stored' as const }],
  checks: [check('2026-03-01T09:00:00Z'), check('2026-03-01T12:00:00Z')],
  repairs: [{ id: check('').id, at: '2026-03-01T10:00:00Z', by: 'R.', what: 'new cap', parts: [], addresses: [] }],
};

test('before the repair everything known counts', () => {
  const known = knownOf(JOB, [{ taken: 'before-repair' }]);
  expect(known.complaints).toEqual(['smell']);
  expect(known.codes).toEqual(['P0442']);
  expect(known.checks).toHaveLength(2);
});

test('of a repaired car only what was checked after the repair counts', () => {
  const known = knownOf(JOB, [{ taken: 'after-repair' }]);
  expect(known.complaints).toEqual([]);
  expect(known.codes).toEqual([]);
  expect(known.checks.map(({ at }) => at)).toEqual(['2026-03-01T12:00:00Z']);
});

test('a recording called after a repair that nobody wrote down changes nothing', () => {
  expect(knownOf({ ...JOB, repairs: [] }, [{ taken: 'after-repair' }]).checks).toHaveLength(2);
});
