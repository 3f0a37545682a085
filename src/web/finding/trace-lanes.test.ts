import { describe, expect, it } from 'vitest';
import type { Overlay } from '../../diagnosis/finding.ts';
import type { SheetRecording } from '../../report/sheet.ts';
import { traceChart } from './trace-lanes.ts';

const chosen: Overlay = {
  recording: 0,
  cause: 'leak',
  timeS: [0, 1, 2, 3],
  recordedGaugePa: [0, -500, Number.NaN, -900],
  modelledGaugePa: [10, -480, -700, -1000],
  bandPa: [30, 30, 30, 30],
};
const recording = {
  commands: { timeS: [0, 1.5, 3], purgeDuty: [0, 0.4, 0], ventClosed: [0, 1, 1] },
} as unknown as SheetRecording;
const words = {
  pressure: 'tank pressure',
  recorded: 'recorded',
  modelled: 'modelled',
  rival: 'rival',
  difference: 'difference',
  band: 'band',
  purge: 'purge',
  vent: 'vent',
  ventStates: ['open', 'shut'] as const,
};
const kPa = { unit: 'kPa', factor: 1000, offset: 0, decimals: 2 };

describe('lanes of a finding', () => {
  const { source, lanes, readouts } = traceChart(chosen, null, recording, words, kPa);
  const valuesOf = (id: string): number[] => [
    ...source.columns[readouts.find((readout) => readout.id === id)!.column]!.values,
  ];

  it('draws the recorded dots last, above the line', () => {
    expect(lanes[0]!.layers.map(({ kind }) => kind)).toEqual(['band', 'line', 'dots']);
  });

  it('keeps absent readings absent', () => {
    expect(valuesOf('difference')).toEqual([-10, -20, Number.NaN, 100]);
  });

  it('holds a command until it is set anew', () => {
    expect(valuesOf('vent')).toEqual([0, 0, 1, 1]);
    expect(valuesOf('purge').map((duty) => Number(duty.toFixed(3)))).toEqual([0, 0, 0.4, 0]);
  });

  it('leaves room for all that is drawn', () => {
    const [low, high] = lanes[0]!.range;
    expect(low).toBeLessThan(-1000);
    expect(high).toBeGreaterThan(10);
  });
});
