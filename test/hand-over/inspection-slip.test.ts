/** The slip for an inspection, on page and paper, in both languages. */
import { expect, test } from 'vitest';
import { handOverMonitor } from '../../src/jobs/hand-over/hand-over-monitor.ts';
import type { Job } from '../../src/jobs/record/job.ts';
import type { MonitorReading } from '../../src/jobs/record/monitor.ts';
import { PAGE_FONT_FILES, PDF_FONT_FILES } from '../../src/report/fonts.ts';
import type { HandOver, HandOverLanguage } from '../../src/report/hand-over/hand-over.ts';
import { handOverDocument } from '../../src/report/hand-over/hand-over-document.ts';
import { handOverHtml } from '../../src/report/hand-over/html.ts';
import { handOverPdf } from '../../src/report/hand-over/pdf.ts';
import { loadFonts } from '../../src/server/hand-over/load-fonts.ts';
import { sampleJob } from '../e2e/pages-sample-job.ts';
import { sampleMonitor } from '../store/samples.ts';
import { wordsOf } from './pdf-words.ts';
import { sampleHandOver } from './sample-hand-over.ts';

const MADE_AT = '2026-03-04T16:00:00.000Z';
const [before] = sampleMonitor('3f0e6a52-2f7c-4a1f-8d8e-0f9f53a0b999').readings as [MonitorReading];
const after: MonitorReading = {
  ...before,
  at: '2026-03-04T15:00:00.000Z',
  taken: 'after-repair',
  source: 'by-hand',
  status: {
    ...before.status,
    sinceClear: { ...before.status.sinceClear!, lampOn: false, codeCount: 0 },
    warmUpsSinceClear: 2,
    distanceSinceClearM: 41_000,
  },
  codes: [],
};
const { fileName: _, ...byHand } = after;

/** Warm days, one hour a line. */
const forecast = Array.from({ length: 60 }, (_, k) => `${k % 24}:00 ${10 + (k % 24) / 4}`).join('\n');
const job = (readings: readonly MonitorReading[], modelYear = 2012): Job => ({
  ...sampleJob,
  vehicle: { name: 'Grey saloon', modelYear },
  monitor: {
    readings: [...readings],
    conditions: null,
    parkedBeforeS: {},
    plan: {
      forecast: { text: forecast, unit: 'C', typedAt: MADE_AT, zone: 'Europe/Berlin' },
      fuelLevel: 0.5,
      routine: [],
      inspectionAt: '2026-03-13T09:00:00.000Z',
    },
  },
});
const given = (of: Job, language: HandOverLanguage): HandOver => ({
  ...sampleHandOver,
  language,
  units: { pressure: 'kPa', length: 'mm', temperature: 'degC' },
  parts: ['inspection'],
  madeAt: MADE_AT,
  monitor: handOverMonitor(of, {}, MADE_AT),
});
const onPage = (made: HandOver): string =>
  handOverHtml(made, loadFonts(PAGE_FONT_FILES))
    .replace(/<style>[\s\S]*?<\/style>/, '')
    .replace(/<[^>]+>/g, ' ')
    .replace(/[\s\u00a0]+/g, ' ');
const onPaper = async (made: HandOver): Promise<string> =>
  wordsOf(await handOverPdf(made, loadFonts(PDF_FONT_FILES)))
    .flatMap(({ words }) => words.map(({ text }) => text))
    .join(' ')
    .replaceAll('\u00a0', ' ');

const ENGLISH = [
  'Inspection slip',
  'P0456',
  'commanded on',
  'evaporative system',
  '255 or more',
  '1609 km',
  '16 of 50',
  'as of 2001-04-05',
  '85.2222',
  'would fail by this rule',
  'win where they differ',
  // Nine days on, as the forecast ends before.
  'Inspection in 9 days (2026-03-13)',
  'The forecast ends on',
];

test('codes, lamp, monitors, counts, rule with its date, verdict, caution and plan', async () => {
  const made = given(job([before]), 'en');
  const page = onPage(made);
  for (const words of ENGLISH) expect(page).toContain(words);
  const paper = await onPaper(made);
  for (const words of ENGLISH) expect(paper).toContain(words);
});

test('in German', () => {
  const page = onPage(given(job([before]), 'de'));
  for (const words of [
    'Blatt zur Abgasprüfung',
    'Tankentlüftung',
    'würde nach dieser Regel durchfallen',
    'Stand 05.04.2001',
    'gehen vor, wo sie abweichen',
    'Prüftermin in 9 Tagen (13.03.2026)',
  ])
    expect(page).toContain(words);
  expect(page).not.toMatch(/\b(not read|commanded|would|missing)\b/);
});

test('before and after the repair side by side; the verdict is that of the newer', () => {
  const page = onPage(given(job([before, byHand]), 'en'));
  expect(page).toMatch(/Lamp commanded on not commanded/);
  expect(page).toMatch(/Warm-ups since clear 255 or more 2/);
  expect(page).toContain('entered by hand');
  expect(page).toContain('would pass by this rule');
});

test('without a model year no verdict is made up', () => {
  const of = job([before]);
  const page = onPage(given({ ...of, vehicle: { name: 'Grey saloon' } }, 'en'));
  expect(page).toContain('The model year is not known');
  expect(page).not.toContain('by this rule');
});

test('a slip that would say nothing is left out of the whole, and says so where it is asked for', () => {
  const nothing = given(job([]), 'en');
  expect(nothing.monitor).toBeUndefined();
  const whole = handOverDocument({ ...nothing, parts: ['customer', 'evidence', 'inspection'] });
  expect(whole.parts.map(({ id }) => id)).toEqual(['customer', 'evidence']);
  expect(onPage(nothing)).toContain('was not asked for its monitors');
});
