import { fc, test } from '@fast-check/vitest';
import { expect } from 'vitest';
import type { Phase } from '../../../recording/recording.ts';
import { placeNames } from './phase-names.ts';

const rows = fc
  .uniqueArray(fc.double({ min: 0.1, max: 99, noNaN: true }), { maxLength: 12 })
  .map((cuts) => [0, ...cuts.sort((a, b) => a - b), 100])
  .map((ends) =>
    ends.slice(1).map((toS, k): Phase => ({ kind: k % 2 === 0 ? 'hold' : 'tank-pump', fromS: ends[k]!, toS })),
  );

test.prop([rows, fc.integer({ min: 200, max: 2000 }), fc.double({ min: 0, max: 60, noNaN: true })])(
  'no name lies over another or outside',
  (phases, width, fromS) => {
    const wideOf = (text: string) => text.length * 8;
    const names = placeNames(phases, { fromS, toS: fromS + 40 }, width, ({ kind }) => kind, wideOf);
    for (const a of names) {
      expect(a.left).toBeGreaterThanOrEqual(0);
      expect(a.left + wideOf(a.text)).toBeLessThanOrEqual(width + 1e-9);
      for (const b of names)
        if (a !== b && a.row === b.row)
          expect(a.left + wideOf(a.text) <= b.left || b.left + wideOf(b.text) <= a.left).toBe(true);
    }
  },
);
