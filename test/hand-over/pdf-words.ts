/** The words of a PDF with their places on the page, by poppler's pdftotext: an eye of its own on what was drawn. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface Word {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface PageWords {
  readonly width: number;
  readonly height: number;
  readonly words: readonly Word[];
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };
const plain = (text: string): string => text.replace(/&(\w+);/g, (whole, name: string) => ENTITIES[name] ?? whole);

export function wordsOf(pdf: Uint8Array): readonly PageWords[] {
  const folder = mkdtempSync(join(tmpdir(), 'hand-over-'));
  try {
    const [file, out] = [join(folder, 'sheet.pdf'), join(folder, 'sheet.html')];
    writeFileSync(file, pdf);
    try {
      execFileSync('pdftotext', ['-bbox', file, out]);
    } catch (error) {
      throw new Error('pdftotext could not read the PDF; it is in the Debian package poppler-utils.', { cause: error });
    }
    const pages = readFileSync(out, 'utf8').split('<page ').slice(1);
    return pages.map((page) => {
      const [, width, height] = /width="([\d.]+)" height="([\d.]+)"/.exec(page) ?? [];
      const words = [...page.matchAll(/<word xMin="(.*?)" yMin="(.*?)" xMax="(.*?)" yMax="(.*?)">(.*?)<\/word>/g)];
      return {
        width: Number(width),
        height: Number(height),
        words: words.map(([, left, top, right, bottom, text]) => ({
          text: plain(text ?? ''),
          left: Number(left),
          top: Number(top),
          right: Number(right),
          bottom: Number(bottom),
        })),
      };
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Pixels of each picture in a PDF, page by page as drawn, by poppler's pdfimages. */
export function imagesOf(pdf: Uint8Array): readonly { readonly page: number; readonly width: number }[] {
  const folder = mkdtempSync(join(tmpdir(), 'hand-over-'));
  try {
    const file = join(folder, 'sheet.pdf');
    writeFileSync(file, pdf);
    const lines = execFileSync('pdfimages', ['-list', file], { encoding: 'utf8' }).trim().split('\n').slice(2);
    return lines.map((line) => {
      const [page, , , width] = line.trim().split(/\s+/);
      return { page: Number(page), width: Number(width) };
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
