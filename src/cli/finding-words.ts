/** The finding in words for a terminal: sentence first, then what it rests on. */
import { findingFromStored } from '../report/finding-format.ts';
import { REFERENCE_LIMITS } from '../report/limits.ts';
import { DIAMETER_CONVENTION } from '../report/sentences.ts';
import type { StoredSheet } from '../report/sheet.ts';
import { type Story, story } from '../report/story.ts';

const WIDTH = 92;

/** Breaks at spaces; later lines are set in. */
export function wrapped(text: string, indent = '', hang = indent): string {
  const lines: string[] = [];
  let line = indent;
  let isEmpty = true;
  for (const word of text.split(' ')) {
    if (!isEmpty && line.length + 1 + word.length > WIDTH) {
      lines.push(line);
      line = hang;
      isEmpty = true;
    }
    line += isEmpty ? word : ` ${word}`;
    isEmpty = false;
  }
  return [...lines, line].join('\n');
}

const block = (title: string, items: readonly string[]): string[] =>
  items.length === 0 ? [] : ['', title, ...items.map((item) => wrapped(item, '  - ', '    '))];

const BAR_WIDTH = 20;

function causeLines(told: Story): string[] {
  const width = Math.max(...told.causes.map((row) => row.name.length));
  return told.causes.flatMap((row) => {
    const bar = '#'.repeat(Math.round(row.probability * BAR_WIDTH)).padEnd(BAR_WIDTH, '.');
    const line = `  ${row.name.padEnd(width)}  ${bar}  ${row.percent.padStart(12)}  ${row.certainty}`;
    return row.detail === '' ? [line] : [line, wrapped(row.detail, '      ')];
  });
}

export function findingInWords(sheet: StoredSheet): string {
  const told = story({ ...sheet, finding: findingFromStored(sheet.finding), limits: REFERENCE_LIMITS });
  return [
    ...(told.isDemo ? ['Invented car and recording, for demonstration only.', ''] : []),
    `${told.title}`,
    '',
    wrapped(told.technical),
    wrapped(`For the owner: ${told.owner}`),
    '',
    'Causes',
    ...causeLines(told),
    ...block('Two at once', told.pairs),
    ...block(
      'Size',
      sheet.finding.diameterMm === null
        ? []
        : [
            ...told.limits,
            DIAMETER_CONVENTION,
            'Reference sizes are marks to compare with; federal thresholds are from memory.',
          ],
    ),
    ...block('Speaks for it', told.reasonsFor),
    ...block('Speaks against it', told.reasonsAgainst),
    ...block('Not proven', told.notProven),
    ...block('A recording that would settle more', told.nextRecordings),
    ...block('Warnings', [...told.warnings, ...sheet.recordings.flatMap((recording) => recording.warnings)]),
    '',
    wrapped(told.caution),
  ]
    .join('\n')
    .replaceAll('\u00a0', ' ');
}
