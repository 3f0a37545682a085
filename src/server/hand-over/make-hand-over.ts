/** Makes the document in a worker thread: reads what no finding tells of, then sets page or PDF. */
import { handOverOf } from '../../jobs/hand-over/hand-over-of.ts';
import type { RecordingData } from '../../jobs/hand-over/recording-facts.ts';
import { PAGE_FONT_FILES, PDF_FONT_FILES } from '../../report/fonts.ts';
import { handOverHtml } from '../../report/hand-over/html.ts';
import { handOverPdf } from '../../report/hand-over/pdf.ts';
import { MAX_UNPACKED_BYTES } from '../contract/paths.ts';
import { readReading } from '../recordings/parsed.ts';
import { UnreadableFile } from '../recordings/read-file.ts';
import type { HandOverInputs } from './hand-over-task.ts';
import { loadFonts } from './load-fonts.ts';
import { picturesOf } from './pictures.ts';

async function dataOf({ readings }: HandOverInputs): Promise<readonly RecordingData[]> {
  const data: RecordingData[] = [];
  for (const { id, reading } of readings) {
    try {
      const { recording, quality } = await readReading(reading, { maxUnpackedBytes: MAX_UNPACKED_BYTES });
      data.push({ id, recording, quality });
    } catch (error) {
      // A recording with a mapping that does not fit it any more is listed without what it would say.
      if (!(error instanceof UnreadableFile)) throw error;
    }
  }
  return data;
}

export async function makeHandOver(
  inputs: HandOverInputs,
  form: 'pdf' | 'html',
  report: (fraction: number, words: string) => void,
): Promise<Uint8Array> {
  report(0, 'reading recordings');
  const data = await dataOf(inputs);
  report(0.2, 'reading pictures');
  const handOver = handOverOf(inputs.job, data, inputs.settings, await picturesOf(inputs.pictures));
  report(0.3, 'setting the document');
  if (form === 'html') return new TextEncoder().encode(handOverHtml(handOver, loadFonts(PAGE_FONT_FILES)));
  return handOverPdf(handOver, loadFonts(PDF_FONT_FILES));
}
