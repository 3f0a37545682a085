import type { CsvReading } from '../assemble-recording.ts';
import { ownHeader } from '../own-columns.ts';
import type { ChannelName } from '../recording.ts';
import type { CaptureReading } from './capture-reading.ts';

/** SI units of the channels as a mapping writes them. */
const unitOf = (unit: string): string => (unit === 'raw' ? 'Pa' : unit);

/** A capture in the shape of any other recording that was read; absent when it holds no recording. */
export function asCsvReading({ recording, quality, report }: CaptureReading): CsvReading | undefined {
  if (recording === undefined || quality === undefined) return undefined;
  const columns = report.items.map(({ id, name, unit, channel }) => ({
    column: `item $${id.toString(16).toUpperCase().padStart(2, '0')}, ${name}`,
    channel: channel ?? null,
    ...(channel === undefined ? {} : { unit: unitOf(unit), ...referenceOf(channel) }),
  }));
  const samples = recording.timeS.length;
  const others = Math.max(0, report.lines - samples);
  return {
    recording,
    quality,
    mapping: { schema: 'vaporwright-mapping-1', columns },
    report: {
      fileName: report.fileName,
      linesRead: samples + others,
      samples,
      skipped: others === 0 ? [] : [{ reason: 'other-frame', count: others, firstLines: [] }],
      cells: columns.flatMap(({ column, channel }) => {
        const values = channel === null ? undefined : recording.channels[channel];
        return values === undefined
          ? []
          : [
              {
                column,
                missing: values.filter((value) => Number.isNaN(value)).length,
                unreadable: 0,
                firstUnreadableLines: [],
              },
            ];
      }),
      ignoredColumns: columns
        .filter(({ channel }) => channel === null)
        .map(({ column }) => ({ column, reasons: ['no channel of a recording holds it'] })),
      pauses: report.pauses.map(({ fromS, toS }) => ({
        fromS: fromS - (report.firstTimeS ?? 0),
        toS: toS - (report.firstTimeS ?? 0),
      })),
      firstTimeS: report.firstTimeS ?? 0,
      warnings: report.warnings,
    },
  };
}

const referenceOf = (channel: ChannelName): { readonly reference?: 'gauge' | 'absolute' } =>
  ownHeader(channel).endsWith('_pa') ? { reference: 'gauge' } : {};
