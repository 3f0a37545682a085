import { describe, expect, test } from 'vitest';
import type { StoredSheet } from '../../report/sheet.ts';
import { beforeAfterChart, comparedTraces } from './before-after-chart.ts';

type Sheet = Pick<StoredSheet, 'recordings' | 'finding'>;

const sheet = (procedure: string, holdAtS: number, gaugePa: readonly (number | null)[]): Sheet =>
  ({
    recordings: [{ procedure, phases: [{ kind: 'hold', fromS: holdAtS, toS: 60 }] }],
    finding: { overlays: [{ recording: 0, timeS: gaugePa.map((_, i) => i * 20), recordedGaugePa: gaugePa }] },
  }) as unknown as Sheet;

const SHOWN = { unit: 'kPa', factor: 1000, offset: 0, decimals: 2 };
const WORDS = { pressure: 'tank pressure', before: 'before', after: 'after' };

describe('before and after', () => {
  const compared = comparedTraces(
    sheet('vacuum-draw', 20, [0, -2000, -1000, -500]),
    sheet('vacuum-draw', 40, [0, 0, -2000, -1900, -1800]),
  )!;
  const { source, lanes } = beforeAfterChart(compared.together, WORDS, SHOWN);
  const at = (column: number, t: number): number => {
    const k = source.timeS.findIndex((time) => time >= t);
    return source.columns[column]!.values[k]!;
  };

  test('share one lane and one scale that holds both', () => {
    expect(lanes).toHaveLength(1);
    expect(lanes[0]!.range[0]).toBeLessThan(-2000);
    expect(lanes[0]!.layers.map((layer) => layer.kind === 'line' && layer.column)).toEqual([0, 1]);
  });

  test('the hold begins at the same time in both', () => {
    expect(compared.together.movedS).toBe(-20);
    expect(at(0, 20)).toBeCloseTo(-2000, -2);
    expect(at(1, 20)).toBeCloseTo(-2000, -2);
    expect(at(0, 59)).toBeGreaterThan(-560);
    expect(at(1, 59)).toBeCloseTo(-1800, -2);
  });

  test('where one was not recorded it has no value', () => {
    expect(at(0, -20)).toBeNaN();
    expect(at(1, -19)).toBeCloseTo(0, 5);
  });
});

test('other procedures are not laid over each other', () => {
  expect(comparedTraces(sheet('vacuum-draw', 20, [0, 1]), sheet('engine-off', 20, [0, 1]))).toBeNull();
});
