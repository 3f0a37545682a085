import { describe, expect, test } from 'vitest';
import { type PlacedTrace, tracesTogether, valueAt } from './traces-together.ts';

const trace = (holdAt: number, gaugePa: readonly number[]): PlacedTrace => ({
  timeS: gaugePa.map((_, i) => i * 10),
  gaugePa,
  phases: [
    { kind: 'draw', fromS: 10, toS: holdAt },
    { kind: 'hold', fromS: holdAt, toS: 60 },
  ],
});

describe('two recordings of one test', () => {
  const laid = tracesTogether(trace(30, [0, -500, -900, -1000, -700]), trace(40, [0, -400, -800, -900, -1000, -990]));

  test('the hold begins together, and the later recording is the one that moves', () => {
    expect(laid.at).toBe('hold');
    expect(laid.movedS).toBe(-10);
    expect(laid.after.timeS[4]).toBe(30);
    expect(laid.after.phases.at(-1)).toEqual({ kind: 'hold', fromS: 30, toS: 50 });
    expect(laid.before.timeS[3]).toBe(30);
  });

  test('nothing in common, nothing moves', () => {
    const other = { ...trace(30, [0, 1]), phases: [{ kind: 'rest' as const, fromS: 0, toS: 10 }] };
    expect(tracesTogether(trace(30, [0, 1]), other)).toMatchObject({ at: null, movedS: 0 });
  });
});

test('between samples a value lies on the line; outside and beside a gap there is none', () => {
  const one = trace(30, [0, -100, Number.NaN, -300]);
  expect(valueAt(one, 5)).toBeCloseTo(-50);
  expect(valueAt(one, 10)).toBe(-100);
  expect(valueAt(one, 30)).toBe(-300);
  expect(valueAt(one, 15)).toBeNaN();
  expect(valueAt(one, -1)).toBeNaN();
  expect(valueAt(one, 31)).toBeNaN();
});
