/** Paper for the PDF: margins, columns, page breaks, and the tagged structure that a screen reader follows. */
import PDFDocument from 'pdfkit';
import type { FontBytes } from './fonts.ts';
import { LIGHT } from './style.ts';

type Pdf = PDFKit.PDFDocument;
type Face = 'sans' | 'sans-strong' | 'serif' | 'serif-strong';

export interface Setting {
  readonly face: Face;
  readonly size: number;
  readonly colour: string;
  readonly tag: 'P' | 'H1' | 'H2' | 'H3' | 'LI';
}

export const SET = {
  title: { face: 'serif-strong', size: 19, colour: LIGHT.ink, tag: 'H1' },
  finding: { face: 'serif-strong', size: 15, colour: LIGHT.ink, tag: 'P' },
  plain: { face: 'serif', size: 12, colour: LIGHT.ink, tag: 'P' },
  section: { face: 'serif-strong', size: 11, colour: LIGHT.quiet, tag: 'H2' },
  minor: { face: 'serif-strong', size: 10.5, colour: LIGHT.ink, tag: 'H3' },
  body: { face: 'sans', size: 9.5, colour: LIGHT.ink, tag: 'P' },
  item: { face: 'sans', size: 9.5, colour: LIGHT.ink, tag: 'LI' },
  strong: { face: 'sans-strong', size: 9.5, colour: LIGHT.ink, tag: 'P' },
  quiet: { face: 'sans', size: 8.5, colour: LIGHT.quiet, tag: 'P' },
  warn: { face: 'sans-strong', size: 9.5, colour: LIGHT.warn, tag: 'P' },
} as const satisfies Readonly<Record<string, Setting>>;

/** A4 in points. */
export const PAGE = { width: 595.28, height: 841.89, left: 44, right: 44, top: 44, bottom: 52, indent: 96 } as const;
export const TEXT_LEFT = PAGE.left + PAGE.indent;
export const TEXT_WIDTH = PAGE.width - PAGE.right - TEXT_LEFT;
const FULL_WIDTH = PAGE.width - PAGE.left - PAGE.right;

export class Paper {
  readonly pdf: Pdf;
  readonly #root: PDFKit.PDFStructureElement;
  #y: number = PAGE.top;

  constructor(fonts: FontBytes, title: string, program: string, madeAt: Date, language = 'en') {
    this.pdf = new PDFDocument({
      size: 'A4',
      // Breaks are decided here, never by the library in the middle of a row.
      margins: { left: 0, right: 0, top: 0, bottom: 0 },
      tagged: true,
      displayTitle: true,
      lang: language,
      bufferPages: true,
      pdfVersion: '1.7',
      info: { Title: title, Creator: program, Producer: program, CreationDate: madeAt, ModDate: madeAt },
    });
    this.pdf.registerFont('sans', fonts.sans as Buffer);
    this.pdf.registerFont('sans-strong', fonts.sansStrong as Buffer);
    this.pdf.registerFont('serif', fonts.serif as Buffer);
    this.pdf.registerFont('serif-strong', fonts.serifStrong as Buffer);
    this.#root = this.pdf.struct('Document');
    this.pdf.addStructure(this.#root);
  }

  /** Starts a new page when less than this height is left. */
  need(height: number): void {
    if (this.#y + height <= PAGE.height - PAGE.bottom) return;
    this.pdf.addPage();
    this.#y = PAGE.top;
  }

  /** Starts a new page unless nothing stands on this one. */
  breakPage(): void {
    if (this.#y > PAGE.top) this.need(PAGE.height);
  }

  get pages(): number {
    return this.pdf.bufferedPageRange().count;
  }

  /** Height left on this page. */
  get left(): number {
    return PAGE.height - PAGE.bottom - this.#y;
  }

  get y(): number {
    return this.#y;
  }

  space(height: number): void {
    this.#y += height;
  }

  heightOf(text: string, set: Setting, width: number): number {
    return this.pdf
      .font(set.face)
      .fontSize(set.size)
      .heightOfString(text, { width, lineGap: set.size * 0.2 });
  }

  /** Text at a place without moving on. */
  at(text: string, set: Setting, x: number, y: number, width: number, align: 'left' | 'right' = 'left'): void {
    this.#root.add(
      this.pdf.struct(set.tag, {}, () => {
        this.pdf.font(set.face).fontSize(set.size).fillColor(set.colour);
        this.pdf.text(text, x, y, { width, align, lineGap: set.size * 0.2 });
      }),
    );
  }

  /** A paragraph in the text column. */
  paragraph(text: string, set: Setting, x: number = TEXT_LEFT, width: number = TEXT_WIDTH): void {
    const height = this.heightOf(text, set, width);
    this.need(height);
    this.at(text, set, x, this.#y, width);
    this.#y += height;
  }

  list(items: readonly string[]): void {
    for (const item of items) {
      const height = this.heightOf(item, SET.item, TEXT_WIDTH - 11);
      this.need(height + 2);
      this.mark(() => this.pdf.circle(TEXT_LEFT + 2.5, this.#y + 6.4, 1.3).fill(LIGHT.quiet));
      this.at(item, SET.item, TEXT_LEFT + 11, this.#y, TEXT_WIDTH - 11);
      this.#y += height + 2;
    }
  }

  /** Decoration that a screen reader skips. */
  mark(drawIt: () => void): void {
    this.pdf.markContent('Artifact', { type: 'Layout' });
    drawIt();
    this.pdf.endMarkedContent();
  }

  rule(x: number = PAGE.left, width: number = FULL_WIDTH): void {
    this.mark(() =>
      this.pdf
        .moveTo(x, this.#y)
        .lineTo(x + width, this.#y)
        .lineWidth(0.6)
        .stroke(LIGHT.rule),
    );
  }

  figure(description: string, height: number, drawIt: (y: number) => void): void {
    this.need(height);
    const y = this.#y;
    this.#root.add(this.pdf.struct('Figure', { alt: description }, () => drawIt(y)));
    this.#y += height;
  }

  /** A photo at a place without moving on. */
  picture(
    description: string,
    bytes: Uint8Array,
    {
      x,
      y,
      width,
      height,
    }: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
  ): void {
    this.#root.add(
      this.pdf.struct('Figure', { alt: description }, () =>
        this.pdf.image(Buffer.from(bytes), x, y, { width, height }),
      ),
    );
  }

  /** A section: rule, name in the margin, then the column. It keeps at least its first lines together. */
  section(name: string, keep = 60, gap = 10): void {
    this.space(gap);
    this.need(keep);
    this.rule();
    this.space(gap - 1);
    this.at(name, SET.section, PAGE.left, this.#y, PAGE.indent - 10);
  }

  async finish(
    footer: string,
    pageOf: (page: number, pages: number) => string = (page, pages) => `${page} of ${pages}`,
  ): Promise<Uint8Array> {
    const { pdf, pages } = this;
    for (let i = 0; i < pages; i++) {
      pdf.switchToPage(i);
      this.mark(() => {
        pdf.font('sans').fontSize(8).fillColor(LIGHT.quiet);
        const number = pageOf(i + 1, pages);
        const numberWidth = Math.max(60, pdf.widthOfString(number) + 1);
        const room = FULL_WIDTH - numberWidth - 8;
        let said = footer;
        while (pdf.widthOfString(said) > room && said.length > 1) said = `${said.slice(0, -2).trimEnd()}…`;
        pdf.text(said, PAGE.left, PAGE.height - 36, { width: room, lineBreak: false });
        pdf.text(number, PAGE.width - PAGE.right - numberWidth, PAGE.height - 36, {
          width: numberWidth,
          align: 'right',
        });
      });
    }
    const pieces: Uint8Array[] = [];
    return new Promise((resolve, reject) => {
      pdf.on('data', (piece: Uint8Array) => pieces.push(piece));
      pdf.on('error', reject);
      pdf.on('end', () => resolve(Buffer.concat(pieces)));
      this.#root.end();
      pdf.end();
    });
  }
}
