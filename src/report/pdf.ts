/** The sheet as a PDF: the same story and figures as the page, set for paper. */
import type { Drawing } from './drawing.ts';
import { sizePlate, tracePlates } from './figures.ts';
import type { FontBytes } from './fonts.ts';
import { fixed } from './numbers.ts';
import { drawFigure } from './pdf-figure.ts';
import { PAGE, Paper, SET, TEXT_LEFT, TEXT_WIDTH } from './pdf-page.ts';
import { DIAMETER_CONVENTION } from './sentences.ts';
import type { Sheet } from './sheet.ts';
import { type Row, type Story, story } from './story.ts';
import { LIGHT } from './style.ts';

/** Width in figure units that a figure is laid out for; scaled to the column, letters come out at 8 pt. */
const FIGURE_WIDTH = 610;

/** Height of one line of facts, to keep a table on one page. */
const FACT_HEIGHT = 14;

function figure(paper: Paper, drawing: Drawing): void {
  const height = (drawing.height * TEXT_WIDTH) / FIGURE_WIDTH;
  paper.figure(drawing.description, height, (y) => drawFigure(paper.pdf, drawing, TEXT_LEFT, y, TEXT_WIDTH));
}

function traces(paper: Paper, sheet: Sheet): void {
  const plates = tracePlates(sheet, FIGURE_WIDTH);
  if (plates.length === 0) return;
  plates.forEach((plate, i) => {
    const height = (plate.drawing.height * TEXT_WIDTH) / FIGURE_WIDTH;
    if (i === 0) paper.section('Recording', height + 90);
    else {
      paper.space(12);
      // The line above a figure goes with it to the next page.
      paper.need(height + 70);
    }
    paper.paragraph(`${plate.label}: ${plate.pressure} against ambient`, SET.quiet);
    paper.space(4);
    figure(paper, plate.drawing);
    const rival = plate.rival === null ? '' : ` Dashed line: modelled, ${plate.rival}.`;
    paper.paragraph(`Dots: recorded. Line: modelled, ${plate.chosen}, with its 90 % band.${rival}`, SET.body);
    paper.paragraph(plate.drawing.description, SET.quiet);
  });
}

function size(paper: Paper, sheet: Sheet, told: Story): void {
  const drawing = sizePlate(sheet, FIGURE_WIDTH);
  if (drawing === null) return;
  paper.section('Size', 130);
  figure(paper, drawing);
  paper.paragraph(DIAMETER_CONVENTION, SET.quiet);
  paper.space(4);
  paper.list(told.limits);
  paper.paragraph(
    `Reference sizes are marks to compare with, not a ruling; the rule that applies to this car and its date decide. ${told.limitMarks.join(' ')}`,
    SET.quiet,
  );
}

function causes(paper: Paper, told: Story): void {
  paper.section('Causes', 90);
  const nameWidth = TEXT_WIDTH * 0.48;
  const barLeft = TEXT_LEFT + TEXT_WIDTH * 0.52;
  const barWidth = TEXT_WIDTH * 0.18;
  told.causes.forEach((row, i) => {
    const nameHeight = paper.heightOf(row.name, SET.body, nameWidth);
    const detailHeight = row.detail === '' ? 0 : paper.heightOf(row.detail, SET.quiet, nameWidth);
    paper.need(nameHeight + detailHeight + 8);
    const y = paper.y;
    paper.at(row.name, SET.body, TEXT_LEFT, y, nameWidth);
    if (row.detail !== '') paper.at(row.detail, SET.quiet, TEXT_LEFT, y + nameHeight, nameWidth);
    paper.mark(() => {
      paper.pdf.rect(barLeft, y + 3, barWidth, 6).fill('#efede3');
      paper.pdf
        .rect(barLeft, y + 3, Math.max(1, barWidth * row.probability), 6)
        .fill(i === 0 ? LIGHT.accent : LIGHT.rival);
    });
    const rest = barLeft + barWidth + 8;
    paper.at(row.certainty, SET.quiet, rest, y + 1, TEXT_LEFT + TEXT_WIDTH - rest - 48);
    paper.at(row.percent, SET.strong, TEXT_LEFT + TEXT_WIDTH - 70, y, 70, 'right');
    paper.space(nameHeight + detailHeight + 4);
    paper.rule(TEXT_LEFT, TEXT_WIDTH);
    paper.space(4);
  });
  titled(paper, 'Two at once', told.pairs);
}

function titled(paper: Paper, title: string, items: readonly string[]): void {
  if (items.length === 0) return;
  paper.space(3);
  paper.need(30);
  paper.paragraph(title, SET.minor);
  paper.list(items);
}

function evidence(paper: Paper, told: Story): void {
  const count = told.evidence.length + told.reasonsFor.length + told.reasonsAgainst.length;
  if (count === 0 && told.evidenceNote === null) return;
  paper.section('Evidence');
  titled(paper, 'Speaks for it', told.reasonsFor);
  titled(paper, 'Speaks against it', told.reasonsAgainst);
  if (told.evidenceNote !== null) paper.paragraph(told.evidenceNote, SET.quiet);
  if (told.evidence.length === 0) return;
  paper.space(4);
  paper.need(40);
  paper.paragraph(
    'What each phase says of the first cause against the best rival (natural log of the ratio)',
    SET.quiet,
  );
  for (const row of told.evidence) {
    paper.need(15);
    const name = row.recording === '' ? row.phase : `${row.phase} (${row.recording})`;
    const y = paper.y;
    paper.at(name, SET.body, TEXT_LEFT, y, TEXT_WIDTH * 0.45);
    paper.at(row.words, SET.body, TEXT_LEFT + TEXT_WIDTH * 0.47, y, TEXT_WIDTH * 0.36);
    paper.at(fixed(row.logEvidence, 1), SET.strong, TEXT_LEFT + TEXT_WIDTH - 60, y, 60, 'right');
    paper.space(14);
  }
}

function facts(paper: Paper, rows: readonly Row[]): void {
  for (const [label, value] of rows) {
    const height = Math.max(paper.heightOf(value, SET.body, TEXT_WIDTH - 130), paper.heightOf(label, SET.quiet, 122));
    paper.need(height);
    const y = paper.y;
    paper.at(label, SET.quiet, TEXT_LEFT, y + 0.8, 122);
    paper.at(value, SET.body, TEXT_LEFT + 130, y, TEXT_WIDTH - 130);
    paper.space(height);
  }
}

function listed(paper: Paper, name: string, items: readonly string[]): void {
  if (items.length === 0) return;
  paper.section(name);
  paper.list(items);
}

function cautions(paper: Paper, told: Story): void {
  // Kept on one page: a caution that breaks off is half a caution.
  const heights = [
    paper.heightOf(told.caution, SET.body, TEXT_WIDTH),
    ...told.cautions.map((text) => paper.heightOf(text, SET.item, TEXT_WIDTH - 11) + 2),
  ];
  paper.section(
    'Before any work',
    heights.reduce((sum, height) => sum + height, 24),
  );
  const top = paper.y;
  paper.paragraph(told.caution, SET.body);
  paper.space(4);
  paper.list(told.cautions);
  const bottom = paper.y;
  if (bottom > top) {
    paper.mark(() => paper.pdf.rect(TEXT_LEFT - 9, top + 1, 2.5, bottom - top - 3).fill(LIGHT.warn));
  }
}

/** Resolves to the bytes of the file. The same sheet gives the same bytes. */
export async function reportPdf(sheet: Sheet, fonts: FontBytes): Promise<Uint8Array> {
  const told = story(sheet);
  const paper = new Paper(fonts, `${told.title}: finding`, sheet.program, new Date(sheet.madeAt));
  const full = PAGE.width - PAGE.left - PAGE.right;
  paper.paragraph(told.title, SET.title, PAGE.left, full);
  paper.paragraph(`Fuel-vapour system, finding of ${told.madeAt} UTC.`, SET.body, PAGE.left, full);
  if (told.isDemo) paper.paragraph('Invented car and recording, for demonstration only.', SET.warn, PAGE.left, full);
  paper.section('Finding');
  paper.paragraph(told.technical, SET.finding);
  paper.space(5);
  paper.paragraph(`For the owner: ${told.owner}`, SET.plain);
  traces(paper, sheet);
  size(paper, sheet, told);
  causes(paper, told);
  evidence(paper, told);
  listed(paper, 'Not proven', told.notProven);
  listed(paper, 'Next recording', told.nextRecordings);
  listed(paper, 'Warnings', told.warnings);
  cautions(paper, told);
  paper.section('Car', 40 + FACT_HEIGHT * told.car.length);
  facts(paper, told.car);
  paper.section('Conditions', 60 + FACT_HEIGHT * (told.recordings[0]?.rows.length ?? 0));
  for (const { label, rows, remarks } of told.recordings) {
    paper.paragraph(label, SET.strong);
    facts(paper, rows);
    paper.list(remarks);
    paper.space(4);
  }
  paper.section('Made from');
  facts(paper, told.provenance);
  return paper.finish(`${told.title}${told.isDemo ? ', invented' : ''} · ${sheet.program} · ${told.madeAt} UTC`);
}
