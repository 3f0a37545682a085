import { fc, test } from '@fast-check/vitest';
import { describe, expect, it } from 'vitest';
import { clampView, pan, pinch, reveal, zoom } from './view.ts';

const all = { fromS: 0, toS: 100 };

describe('view of the time axis', () => {
  test.prop([fc.double({ min: -500, max: 500, noNaN: true }), fc.double({ min: 0.001, max: 900, noNaN: true })])(
    'stays inside the recording',
    (fromS, wide) => {
      const view = clampView({ fromS, toS: fromS + wide }, all, 1);
      expect(view.fromS).toBeGreaterThanOrEqual(0);
      expect(view.toS).toBeLessThanOrEqual(100 + 1e-9);
      expect(view.toS - view.fromS).toBeGreaterThanOrEqual(1 - 1e-9);
    },
  );

  it('keeps the time under the pointer when it zooms', () => {
    const view = zoom({ fromS: 20, toS: 60 }, 0.5, 30);
    expect(view).toEqual({ fromS: 25, toS: 45 });
    expect((30 - view.fromS) / 20).toBe((30 - 20) / 40);
  });

  it('keeps the times under two fingers', () => {
    const view = pinch(30, 40, 0.25, 0.75);
    expect(view).toEqual({ fromS: 25, toS: 45 });
  });

  it('moves by a share of what is seen', () => {
    expect(pan({ fromS: 20, toS: 40 }, 0.1)).toEqual({ fromS: 22, toS: 42 });
    expect(reveal({ fromS: 20, toS: 40 }, 70)).toEqual({ fromS: 60, toS: 80 });
    expect(reveal({ fromS: 20, toS: 40 }, 25)).toEqual({ fromS: 20, toS: 40 });
  });
});
