/** The hand-over as a PDF: the customer's page first, on one page, then the evidence; job and page number on each. */
import type { FontBytes } from '../fonts.ts';
import { drawFigure } from '../pdf-figure.ts';
import { PAGE, Paper, SET, type Setting, TEXT_LEFT, TEXT_WIDTH } from '../pdf-page.ts';
import { LIGHT } from '../style.ts';
import { ROOMS } from './customer.ts';
import type { Block, HandOverDocument, Part, Section, Tone } from './document.ts';
import type { HandOver } from './hand-over.ts';
import { handOverDocument } from './hand-over-document.ts';
import { drawPictures, firstRowHeight } from './pdf-pictures.ts';
import { drawTable } from './pdf-table.ts';
import { pieces, settable } from './pdf-text.ts';

/** Width in figure units that a figure is laid out for; scaled to the column, letters come out at 8 pt. */
const FIGURE_WIDTH = 610;
const FULL = PAGE.width - PAGE.left - PAGE.right;

const TONES: Readonly<Record<Tone, Setting>> = {
  body: SET.body,
  lead: { ...SET.finding, size: 13 },
  plain: { ...SET.plain, size: 11 },
  quote: { ...SET.plain, size: 11 },
  quiet: SET.quiet,
  strong: SET.strong,
  warn: SET.warn,
};

function flow(paper: Paper, words: string, set: Setting, x = TEXT_LEFT, width = TEXT_WIDTH): void {
  const said = settable(words);
  if (said.trim() === '') return;
  for (const piece of pieces(paper, said, set, width, paper.left)) paper.paragraph(piece, set, x, width);
}

function bullets(paper: Paper, items: readonly string[], x = TEXT_LEFT): void {
  const width = TEXT_LEFT + TEXT_WIDTH - x - 11;
  for (const item of items) {
    const said = settable(item);
    pieces(paper, said, SET.item, width, paper.left).forEach((piece, i) => {
      const height = paper.heightOf(piece, SET.item, width);
      paper.need(height + 2);
      if (i === 0) paper.mark(() => paper.pdf.circle(x + 2.5, paper.y + 6.4, 1.3).fill(LIGHT.quiet));
      paper.at(piece, SET.item, x + 11, paper.y, width);
      paper.space(height + 2);
    });
  }
}

const LABEL_WIDTH = 122;

function facts(paper: Paper, rows: readonly (readonly [string, string])[]): void {
  const width = TEXT_WIDTH - LABEL_WIDTH - 8;
  for (const [label, value] of rows) {
    const name = settable(label);
    pieces(paper, settable(value), SET.body, width, paper.left).forEach((piece, i) => {
      const labelHeight = i === 0 ? paper.heightOf(name, SET.quiet, LABEL_WIDTH) + 0.8 : 0;
      const height = Math.max(paper.heightOf(piece, SET.body, width), labelHeight);
      paper.need(height);
      if (i === 0) paper.at(name, SET.quiet, TEXT_LEFT, paper.y + 0.8, LABEL_WIDTH);
      paper.at(piece, SET.body, TEXT_LEFT + LABEL_WIDTH + 8, paper.y, width);
      paper.space(height + 1.5);
    });
  }
}

type Bars = Extract<Block, { kind: 'bars' }>;

function bars(paper: Paper, { rows }: Bars): void {
  const nameWidth = TEXT_WIDTH * 0.42;
  const barLeft = TEXT_LEFT + TEXT_WIDTH * 0.44;
  const barWidth = TEXT_WIDTH * 0.15;
  const sureLeft = barLeft + barWidth + 8;
  const sureWidth = TEXT_LEFT + TEXT_WIDTH - sureLeft - 72;
  for (const [i, row] of rows.entries()) {
    const nameHeight = paper.heightOf(row.name, SET.body, nameWidth);
    const detailHeight = row.detail === '' ? 0 : paper.heightOf(row.detail, SET.quiet, nameWidth);
    const height = Math.max(nameHeight + detailHeight, paper.heightOf(row.certainty, SET.quiet, sureWidth) + 1);
    paper.need(height + 8);
    const { y } = paper;
    paper.at(row.name, SET.body, TEXT_LEFT, y, nameWidth);
    if (row.detail !== '') paper.at(row.detail, SET.quiet, TEXT_LEFT, y + nameHeight, nameWidth);
    paper.mark(() => {
      // Outlined: the length is seen without colour.
      paper.pdf
        .rect(barLeft, y + 3, barWidth, 6)
        .lineWidth(0.5)
        .stroke(LIGHT.rival);
      paper.pdf
        .rect(barLeft, y + 3, Math.max(1, barWidth * row.probability), 6)
        .fill(i === 0 ? LIGHT.accent : LIGHT.rival);
    });
    paper.at(row.certainty, SET.quiet, sureLeft, y + 1, sureWidth);
    paper.at(row.percent, SET.strong, TEXT_LEFT + TEXT_WIDTH - 70, y, 70, 'right');
    paper.space(height + 4);
    paper.rule(TEXT_LEFT, TEXT_WIDTH);
    paper.space(4);
  }
}

type Caution = Extract<Block, { kind: 'caution' }>;

const cautionHeight = (paper: Paper, { lead, items }: Caution): number =>
  paper.heightOf(lead, SET.body, TEXT_WIDTH) +
  items.reduce((sum, item) => sum + paper.heightOf(item, SET.item, TEXT_WIDTH - 11) + 2, 6);

function caution(paper: Paper, block: Caution): void {
  // A caution is never torn: it goes to the next page as a whole where it fits one.
  paper.need(cautionHeight(paper, block));
  const { lead, items } = block;
  const top = paper.y;
  flow(paper, lead, SET.body);
  paper.space(items.length > 0 ? 4 : 0);
  bullets(paper, items);
  const bottom = paper.y;
  paper.mark(() => paper.pdf.rect(TEXT_LEFT - 9, top + 1, 2.5, bottom - top - 2).fill(LIGHT.warn));
}

function figure(paper: Paper, { draw, key }: Extract<Block, { kind: 'figure' }>): void {
  const drawing = draw(FIGURE_WIDTH);
  const height = (drawing.height * TEXT_WIDTH) / FIGURE_WIDTH;
  paper.need(height + 20);
  const settled = {
    ...drawing,
    marks: drawing.marks.map((mark) => (mark.kind === 'text' ? { ...mark, text: settable(mark.text) } : mark)),
  };
  paper.figure(settable(drawing.description), height, (y) => drawFigure(paper.pdf, settled, TEXT_LEFT, y, TEXT_WIDTH));
  flow(paper, key, SET.quiet);
  paper.space(3);
}

const SIGNATURES_HEIGHT = 72;

function signatures(paper: Paper, lines: readonly string[]): void {
  const gap = 20;
  const width = (TEXT_WIDTH - gap * (lines.length - 1)) / lines.length;
  paper.need(SIGNATURES_HEIGHT);
  paper.space(48);
  lines.forEach((line, i) => {
    const x = TEXT_LEFT + i * (width + gap);
    paper.rule(x, width);
    paper.at(settable(line), SET.quiet, x, paper.y + 4, width);
  });
  paper.space(24);
}

function draw(paper: Paper, block: Block): void {
  switch (block.kind) {
    case 'text':
      flow(paper, block.text, TONES[block.tone]);
      paper.space(block.tone === 'lead' || block.tone === 'quote' ? 3 : 2);
      return;
    case 'heading':
      paper.space(3);
      flow(paper, block.text, SET.minor);
      return;
    case 'list':
      bullets(paper, block.items);
      return;
    case 'facts':
      facts(paper, block.rows);
      return;
    case 'table':
      drawTable(paper, block);
      return;
    case 'bars':
      bars(paper, block);
      return;
    case 'figure':
      figure(paper, block);
      return;
    case 'pictures':
      drawPictures(paper, block);
      return;
    case 'caution':
      caution(paper, block);
      return;
    case 'signatures':
      signatures(paper, block.lines);
  }
}

const LEAST_ROOM = 58;

/** Height that a block asks to have together with what stands above it: a figure and a heading go with what they name. */
function keepOf(paper: Paper, blocks: readonly Block[], at: number): number {
  const block = blocks[at];
  if (block?.kind === 'figure') return (block.draw(FIGURE_WIDTH).height * TEXT_WIDTH) / FIGURE_WIDTH + 24;
  if (block?.kind === 'caution') return cautionHeight(paper, block);
  if (block?.kind === 'signatures') return SIGNATURES_HEIGHT;
  if (block?.kind === 'pictures') return firstRowHeight(block.items) + 24;
  if (block?.kind === 'heading') return 22 + keepOf(paper, blocks, at + 1);
  // A line under a heading stands above the figure.
  if (block?.kind === 'text' && blocks[at - 1]?.kind === 'heading') return 16 + keepOf(paper, blocks, at + 1);
  return LEAST_ROOM - 22;
}

function section(paper: Paper, { title, blocks }: Section, gap: number): void {
  paper.section(settable(title), Math.max(LEAST_ROOM, keepOf(paper, blocks, 0) + 20), gap);
  // The name stands in the margin; a long one may be taller than a one-line column.
  const nameBottom = paper.y + paper.heightOf(settable(title), SET.section, PAGE.indent - 10);
  const page = paper.pages;
  blocks.forEach((block, i) => {
    if (i > 0) paper.need(block.kind === 'heading' ? keepOf(paper, blocks, i) : 0);
    draw(paper, block);
  });
  if (paper.pages === page && paper.y < nameBottom) paper.space(nameBottom - paper.y);
}

function drawPart(paper: Paper, part: Part, document: HandOverDocument, isFirst: boolean): void {
  paper.breakPage();
  if (isFirst) {
    for (const [i, line] of document.head.entries())
      flow(paper, line, i === 0 ? SET.strong : SET.quiet, PAGE.left, FULL);
    if (document.head.length > 0) paper.space(4);
  }
  flow(paper, part.title, SET.title, PAGE.left, FULL);
  flow(paper, `${document.foot.split(' · ')[0]}. ${part.subtitle}`, SET.body, PAGE.left, FULL);
  if (isFirst && document.demo !== null) flow(paper, document.demo, SET.warn, PAGE.left, FULL);
  for (const each of part.sections) section(paper, each, part.gap);
}

const newPaper = (document: HandOverDocument, fonts: FontBytes): Paper =>
  new Paper(fonts, document.title, document.program, new Date(document.madeAt), document.language);

/** The paper with the roomiest customer page that is one page; where none is, the tightest goes on to a second. */
function begun(given: HandOver, fonts: FontBytes): { document: HandOverDocument; paper: Paper } {
  for (const [i, room] of ROOMS.entries()) {
    const document = handOverDocument(given, room);
    const paper = newPaper(document, fonts);
    const [first] = document.parts;
    if (first !== undefined) drawPart(paper, first, document, true);
    if (first?.id !== 'customer' || paper.pages === 1 || i === ROOMS.length - 1) return { document, paper };
  }
  throw new Error('No room for the customer page is defined.');
}

/** Resolves to the bytes of the file. The same hand-over gives the same bytes. */
export async function handOverPdf(given: HandOver, fonts: FontBytes): Promise<Uint8Array> {
  const { document, paper } = begun(given, fonts);
  for (const part of document.parts.slice(1)) drawPart(paper, part, document, false);
  return paper.finish(settable(`${document.foot} · ${document.program}`), document.pageOf);
}
