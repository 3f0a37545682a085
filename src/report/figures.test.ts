import { describe, expect, test } from 'vitest';
import { expectGolden } from '../../test/e2e/golden.ts';
import { sampleSheet } from '../../test/e2e/sample-sheet.ts';
import { type Mark, textWidth } from './drawing.ts';
import { sizePlate, tracePlates } from './figures.ts';
import { drawingToSvg } from './svg.ts';

const WIDTHS = [350, 700];
const golden = (name: string): URL => new URL(`./goldens/${name}.svg`, import.meta.url);

const texts = (marks: readonly Mark[]) =>
  marks.flatMap((mark) => {
    if (mark.kind !== 'text') return [];
    const width = textWidth(mark.text);
    const from = mark.at[0] - (mark.anchor === 'start' ? 0 : mark.anchor === 'middle' ? width / 2 : width);
    return [{ text: mark.text, from, to: from + width, y: mark.at[1] }];
  });

describe.each(WIDTHS)('at a width of %i', (width) => {
  test('the trace is the golden one', () => {
    const plate = tracePlates(sampleSheet, width)[0];
    expectGolden(golden(`trace-${width}`), drawingToSvg(plate!.drawing, 'figure'));
  });

  test('the size is the golden one', () => {
    expectGolden(golden(`size-${width}`), drawingToSvg(sizePlate(sampleSheet, width)!, 'figure'));
  });

  test('no label touches another or leaves the figure', () => {
    const drawings = [tracePlates(sampleSheet, width)[0]!.drawing, sizePlate(sampleSheet, width)!];
    for (const drawing of drawings) {
      const labels = texts(drawing.marks);
      expect(labels.length).toBeGreaterThan(5);
      for (const [i, a] of labels.entries()) {
        expect(a.from, a.text).toBeGreaterThanOrEqual(-1);
        expect(a.to, a.text).toBeLessThanOrEqual(width + 1);
        for (const b of labels.slice(i + 1)) {
          const isApart = Math.abs(a.y - b.y) >= 11 || a.to <= b.from || b.to <= a.from;
          expect(isApart, `"${a.text}" over "${b.text}"`).toBe(true);
        }
      }
    }
  });
});

test('dots stand over the modelled line, so that the record stays visible', () => {
  const { marks } = tracePlates(sampleSheet, 700)[0]!.drawing;
  const at = (wanted: string): number => marks.findIndex((mark) => mark.kind !== 'text' && mark.pen === wanted);
  expect(at('recorded')).toBeGreaterThan(at('model'));
  expect(at('model')).toBeGreaterThan(at('rival'));
});

test('the description says the range, the phases and how far each model is off', () => {
  const { description } = tracePlates(sampleSheet, 700)[0]!.drawing;
  expect(description).toContain('hold 30 to 96 s');
  expect(description).toMatch(/"leak to the open air" differs from the record by \d+ Pa/);
  expect(description).toMatch(/"no fault seen" it differs by \d{3} Pa/);
  expect(description).toContain('Each dot stands for about 4 samples.');
});

test('absent samples leave gaps and no mark', () => {
  const overlays = sampleSheet.finding.overlays.map((overlay) => ({
    ...overlay,
    recordedGaugePa: overlay.recordedGaugePa.map((pa, i) => (i > 100 && i < 300 ? Number.NaN : pa)),
    modelledGaugePa: overlay.modelledGaugePa.map((pa, i) => (i === 50 ? Number.NaN : pa)),
  }));
  const sheet = { ...sampleSheet, finding: { ...sampleSheet.finding, overlays } };
  expect(drawingToSvg(tracePlates(sheet, 700)[0]!.drawing, 'figure')).not.toContain('NaN');
});
