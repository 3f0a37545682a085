/** A drawing on a PDF page: the same marks as on the page, as vector strokes. */
import { type Drawing, LETTER_SIZE, type Lettering, type Mark, type Pen, type Point } from './drawing.ts';
import { LIGHT } from './style.ts';

type Pdf = PDFKit.PDFDocument;

interface Stroke {
  readonly colour: string;
  readonly width: number;
  readonly dash?: readonly [number, number];
}

const STROKES: Readonly<Record<Pen, Stroke>> = {
  axis: { colour: LIGHT.ink, width: 0.8 },
  command: { colour: LIGHT.ink, width: 1 },
  grid: { colour: LIGHT.rule, width: 0.7 },
  zero: { colour: LIGHT.quiet, width: 0.8 },
  shade: { colour: '#f3f2ec', width: 0 },
  model: { colour: LIGHT.accent, width: 2 },
  band: { colour: LIGHT.band, width: 0 },
  rival: { colour: LIGHT.rival, width: 1.5, dash: [6, 4] },
  'rival-band': { colour: LIGHT.rivalBand, width: 0 },
  recorded: { colour: LIGHT.ink, width: 0 },
  limit: { colour: LIGHT.warn, width: 1.2 },
  interval: { colour: LIGHT.accent, width: 0 },
  median: { colour: '#ffffff', width: 0 },
};

const LETTER_COLOURS: Readonly<Record<Lettering, string>> = {
  label: LIGHT.ink,
  strong: LIGHT.ink,
  quiet: LIGHT.quiet,
  limit: LIGHT.warn,
};

function trace(pdf: Pdf, points: readonly Point[]): void {
  let isPenDown = false;
  for (const [x, y] of points) {
    if (!Number.isFinite(x) || !Number.isFinite(y)) {
      isPenDown = false;
      continue;
    }
    if (isPenDown) pdf.lineTo(x, y);
    else pdf.moveTo(x, y);
    isPenDown = true;
  }
}

function draw(pdf: Pdf, mark: Mark): void {
  if (mark.kind === 'text') {
    pdf.font(mark.lettering === 'strong' ? 'sans-strong' : 'sans').fontSize(LETTER_SIZE);
    const width = pdf.widthOfString(mark.text);
    const shift = mark.anchor === 'start' ? 0 : mark.anchor === 'middle' ? width / 2 : width;
    pdf.fillColor(LETTER_COLOURS[mark.lettering]);
    pdf.text(mark.text, mark.at[0] - shift, mark.at[1], { lineBreak: false, baseline: 'alphabetic' });
    return;
  }
  const stroke = STROKES[mark.pen];
  if (mark.kind === 'dots') {
    for (const [x, y] of mark.points) pdf.circle(x, y, mark.radius);
    pdf.fill(stroke.colour);
    return;
  }
  if (mark.points.length < 2) return;
  trace(pdf, mark.points);
  if (mark.kind === 'area') {
    pdf.closePath().fill(stroke.colour);
    return;
  }
  pdf.lineWidth(stroke.width).lineJoin('round');
  if (stroke.dash === undefined) pdf.undash();
  else pdf.dash(stroke.dash[0], { space: stroke.dash[1] });
  pdf.stroke(stroke.colour).undash();
}

/** Draws at (x, y), scaled to the width given; returns the height used. */
export function drawFigure(pdf: Pdf, drawing: Drawing, x: number, y: number, width: number): number {
  const scale = width / drawing.width;
  pdf.save().translate(x, y).scale(scale);
  for (const mark of drawing.marks) draw(pdf, mark);
  pdf.restore();
  return drawing.height * scale;
}
