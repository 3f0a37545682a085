/** Text as the faces of the PDF can set it, and in pieces that a page can hold. */
import { PAGE, type Paper, type Setting } from '../pdf-page.ts';

/** The Latin subset that the shipped faces hold. */
const IN_FACE =
  /[\n\u0020-\u007e\u00a0-\u00ac\u00ae-\u00ff\u0131\u0152\u0153\u02c6\u02da\u02dc\u2010-\u2015\u2018-\u201e\u2020-\u2022\u2026\u2032\u2033\u2039\u203a\u20ac\u2122\u2212]/;

/** What a letter without a shape in the faces is replaced by: its plain form, or a mark that something stood here. */
const MISSING = '¿';

function plain(letter: string): string {
  const without = letter.normalize('NFD').replace(/\p{M}/gu, '');
  return without !== letter && [...without].every((each) => IN_FACE.test(each)) ? without : (PLAIN[letter] ?? MISSING);
}

const PLAIN: Readonly<Record<string, string>> = {
  ł: 'l',
  Ł: 'L',
  đ: 'd',
  Đ: 'D',
  ı: 'i',
  '→': '->',
  '≤': '<=',
  '≥': '>=',
  '≈': '~',
  Ω: 'Ohm',
  '\t': ' ',
  '\u00ad': '',
  '\u202f': '\u00a0',
  '\u2009': '\u00a0',
};

export function settable(text: string): string {
  let out = '';
  for (const letter of text.normalize('NFC').replace(/\r\n?/g, '\n'))
    out += IN_FACE.test(letter) ? letter : plain(letter);
  return out;
}

/** Height that a page offers below its top. */
const PAGE_ROOM = PAGE.height - PAGE.top - PAGE.bottom;

/** Most words from the start of `words` that fit a height, at least one. */
function howMany(paper: Paper, words: readonly string[], set: Setting, width: number, height: number): number {
  let low = 1;
  let high = words.length;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (paper.heightOf(words.slice(0, middle).join(''), set, width) <= height) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** A text that is cut into page-high pieces only where it must be: a short one keeps together. */
export function pieces(paper: Paper, text: string, set: Setting, width: number, firstRoom: number): readonly string[] {
  if (paper.heightOf(text, set, width) <= PAGE_ROOM / 2) return [text];
  let words: readonly string[] = text.match(/\S*\s+|\S+/g) ?? [text];
  const out: string[] = [];
  let room = firstRoom;
  while (words.length > 0) {
    const count = howMany(paper, words, set, width, room);
    out.push(words.slice(0, count).join('').trimEnd());
    words = words.slice(count);
    room = PAGE_ROOM;
  }
  return out;
}
