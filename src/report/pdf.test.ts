import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { sampleSheet } from '../../test/e2e/sample-sheet.ts';
import { type FontBytes, PDF_FONT_FILES } from './fonts.ts';
import { reportPdf } from './pdf.ts';

const require = createRequire(import.meta.url);
const read = (name: keyof FontBytes): Uint8Array => readFileSync(require.resolve(PDF_FONT_FILES[name]));
const fonts = {
  serif: read('serif'),
  serifStrong: read('serifStrong'),
  sans: read('sans'),
  sansStrong: read('sansStrong'),
};

describe('the PDF', () => {
  test('is a whole tagged file with its date and fonts inside', async () => {
    const text = Buffer.from(await reportPdf(sampleSheet, fonts)).toString('latin1');
    expect(text.startsWith('%PDF-1.7')).toBe(true);
    expect(text.trimEnd().endsWith('%%EOF')).toBe(true);
    expect(text).toContain('/StructTreeRoot');
    expect(text).toContain('D:20260304091200Z');
    expect(text.match(/\/FontFile2/g)?.length).toBe(4);
  });

  test('is byte for byte the same for the same sheet', async () => {
    const [a, b] = [await reportPdf(sampleSheet, fonts), await reportPdf(sampleSheet, fonts)];
    expect(Buffer.compare(a, b)).toBe(0);
  });

  test('breaks pages when there is much to say', async () => {
    const many = Array.from({ length: 60 }, (_, i) => ({
      kind: 'limits' as const,
      text: `Limit number ${i} of this long list.`,
    }));
    const long = { ...sampleSheet, finding: { ...sampleSheet.finding, reasons: many } };
    const pages = async (sheet: typeof sampleSheet): Promise<number> =>
      Buffer.from(await reportPdf(sheet, fonts))
        .toString('latin1')
        .match(/\/Type \/Page\b/g)?.length ?? 0;
    expect(await pages(long)).toBeGreaterThan(await pages(sampleSheet));
  });
});
