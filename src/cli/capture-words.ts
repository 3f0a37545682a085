/** What a capture holds, in lines for a person. */

import { evapInUseRatio } from '../readiness/in-use-ratio.ts';
import { READINESS_EN } from '../readiness/text/en.ts';
import { PLAIN_METRIC, readinessFigures } from '../readiness/text/figures.ts';
import type { ReadCode } from '../recording/bus/capture-reading.ts';
import type { CaptureReading } from '../recording/bus/read-capture.ts';

const codesInWords = (codes: readonly ReadCode[]): string =>
  codes.length === 0
    ? 'none read'
    : codes.map(({ code, status, unit }) => `${code} ${status} (unit ${unit})`).join(', ');

const perUnit = (value: number, unit: string): string =>
  unit === '1' || unit === 'raw' || unit === 'counts'
    ? `${Number(value.toPrecision(6))}`
    : `${Number(value.toPrecision(6))} ${unit}`;

export function captureInWords({ report, units, codes, status, results, recording }: CaptureReading): string[] {
  const { sinceClear } = status;
  const supported = sinceClear?.monitors.filter((monitor) => monitor.supported) ?? [];
  const ratio = evapInUseRatio(status.inUse);
  const lines = [
    `${report.fileName}: ${report.diagnosticFrames} diagnostic frames of ${report.frames}, from ${report.lines} lines`,
    '',
    'Control units',
    ...units.map(
      ({ unit, transport: { messages, incomplete, anomalies }, replyTimes }) =>
        `  ${unit}: ${messages} messages, ${incomplete} not whole${
          Object.values(anomalies).some((count) => count > 0)
            ? ` (${Object.entries(anomalies)
                .filter(([, count]) => count > 0)
                .map(([name, count]) => `${name} ${count}`)
                .join(', ')})`
            : ''
        }${replyTimes === undefined ? '' : `, answers after ${(1000 * replyTimes.meanS).toFixed(1)} ms, at most ${(1000 * replyTimes.longestS).toFixed(1)} ms`}`,
    ),
    '',
    'Codes',
    `  ${codesInWords(codes)}`,
    '',
    'Readiness',
    sinceClear === undefined
      ? '  not read (service $01 item $01)'
      : `  lamp ${sinceClear.lampOn === true ? 'commanded on' : 'not commanded'}; not run: ${
          supported
            .filter(({ complete }) => !complete)
            .map(({ name }) => name)
            .join(', ') || 'none'
        }; run: ${supported
          .filter(({ complete }) => complete)
          .map(({ name }) => name)
          .join(', ')}`,
  ];
  if (status.warmUpsSinceClear !== undefined) lines.push(`  warm-ups since clear: ${status.warmUpsSinceClear}`);
  if (status.distanceSinceClearM !== undefined)
    lines.push(`  distance since clear: ${status.distanceSinceClearM / 1000} km`);
  if (ratio !== undefined)
    lines.push(`  evaporative monitor in use: ${READINESS_EN.ratio(ratio, readinessFigures(PLAIN_METRIC))}`);
  if (results.length > 0)
    lines.push(
      '',
      'Test results (service $06)',
      ...results.map(
        ({ monitorId, monitor, testId, value, lowest, highest, unit, passed }) =>
          `  $${monitorId.toString(16).toUpperCase()} ${monitor ?? 'other monitor'}, test $${testId.toString(16).toUpperCase()}: ${perUnit(value, unit)} in ${perUnit(lowest, unit)} to ${perUnit(highest, unit)}: ${passed ? 'passed' : 'failed'}`,
      ),
    );
  lines.push(
    '',
    'Items',
    ...report.items.map(
      ({ id, name, samples, channel }) =>
        `  $${id.toString(16).toUpperCase().padStart(2, '0')} ${name}: ${samples} samples${channel === undefined ? '' : `, as ${channel}`}`,
    ),
  );
  if (recording === undefined) lines.push('  no recording can be made of these');
  if (report.warnings.length > 0) lines.push('', 'Warnings', ...report.warnings.map((text) => `  ${text}`));
  return lines;
}

/** A capture as plain data for machines: all but the samples, which `--out` writes. */
export const withoutSamples = ({ recording: _, quality: __, ...rest }: CaptureReading) => rest;
