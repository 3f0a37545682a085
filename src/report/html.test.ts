import { describe, expect, test } from 'vitest';
import { sampleSheet } from '../../test/e2e/sample-sheet.ts';
import { reportHtml } from './html.ts';

const font = new Uint8Array([1, 2, 3]);
const fonts = { serif: font, serifStrong: font, sans: font, sansStrong: font };
const page = reportHtml(sampleSheet, fonts);
const text = page.replace(/<style>[\s\S]*?<\/style>/, '').replace(/<[^>]+>/g, ' ');

describe('the page', () => {
  test('needs nothing from outside and runs no script', () => {
    expect(page).not.toMatch(/<script|<link|<img|@import|javascript:/i);
    const addresses = [...page.matchAll(/(?:src|href)\s*=\s*"([^"]*)"|url\(([^)]*)\)/g)].map(
      (match) => match[1] ?? match[2],
    );
    for (const address of addresses) expect(address).toMatch(/^data:/);
  });

  test('text from outside stays text', () => {
    expect(page).toContain('Blue estate &lt;invented&gt; no. 7');
    expect(page).not.toContain('<invented>');
  });

  test('says that demonstration data are invented, what made it, and from what', () => {
    expect(text).toContain('Invented car and recording');
    expect(text).toContain('vaporwright 0.0.0-test');
    expect(text).toContain('5a'.repeat(32));
    expect(text).toContain('c0'.repeat(32));
  });

  test('states the discharge coefficient beside the diameter, and the mark of each reference size', () => {
    expect(text).toContain('discharge coefficient 0.61');
    expect(text.match(/from memory/g)?.length).toBeGreaterThanOrEqual(2);
  });

  test('carries the caution, what is not proven and the next recording', () => {
    expect(text).toContain('The service information of this vehicle');
    expect(text).toContain('Never put shop air');
    expect(text).toContain('these look alike in this recording');
    expect(text).toContain('with the purge line clamped');
  });

  test('is the same for the same sheet', () => {
    expect(reportHtml(sampleSheet, fonts)).toBe(page);
  });
});

test('a sealed tank adds its own caution', () => {
  const sealed = reportHtml({ ...sampleSheet, car: { ...sampleSheet.car, layout: 'sealed-tank' } }, fonts);
  expect(sealed).toContain('refuelling request');
  expect(page).not.toContain('refuelling request');
});

test('a finding without size or trace has neither section, and still stands', () => {
  const finding = {
    ...sampleSheet.finding,
    diameterMm: null,
    overlays: [],
    causes: [{ ...sampleSheet.finding.causes[2]!, probability: 1 }],
  };
  const bare = reportHtml({ ...sampleSheet, finding }, fonts);
  expect(bare).not.toContain('id="s-size"');
  expect(bare).not.toContain('id="s-trace"');
  expect(bare).toContain('scale is off');
});

test('phases that say nothing are summed up in one sentence', () => {
  const [first, ...rest] = sampleSheet.finding.causes;
  const byPhase = first!.byPhase.map((item) => ({ ...item, logEvidence: 0.1 }));
  const finding = { ...sampleSheet.finding, causes: [{ ...first!, byPhase }, ...rest] };
  const quiet = reportHtml({ ...sampleSheet, finding }, fonts);
  expect(quiet).toContain('No phase by itself tells');
  expect(quiet).not.toContain('ln ratio');
  expect(page).toContain('ln ratio');
});
