import { expect, test } from 'vitest';
import { notesFor, notesSchema, phasesFor } from './notes.ts';

const notes = notesSchema.parse({
  schema: 'vaporwright-notes-1',
  drawTimeOutS: 40,
  recordings: { 'hold.csv': { phases: [{ kind: 'hold', fromS: 20, toS: 80 }], drawTimeOutS: 55 } },
});

test('a note for one file wins over the one for all', () => {
  expect(notesFor(notes, 'folder/hold.csv')).toEqual({ drawTimeOutS: 55 });
  expect(notesFor(notes, 'other.csv')).toEqual({ drawTimeOutS: 40 });
  expect(notesFor(undefined, 'other.csv')).toBeUndefined();
});

test('phases corrected by hand belong to their file alone and are no fact of the recording', () => {
  expect(phasesFor(notes, 'folder/hold.csv')).toEqual([{ kind: 'hold', fromS: 20, toS: 80 }]);
  expect(phasesFor(notes, 'other.csv')).toEqual([]);
});
