/**
 * How wide a text is in the pages' sans face, without a browser: placement is computed before anything is drawn and is
 * tested without one. Advances in thousandths of the size. Source: measured from the font's own file.
 */
const ADVANCE: Readonly<Record<string, number>> = {
  '0': 648,
  '1': 402,
  '2': 549,
  '3': 574,
  '4': 614,
  '5': 583,
  '6': 598,
  '7': 510,
  '8': 615,
  '9': 598,
  ' ': 280,
  '!': 281,
  '%': 927,
  '&': 705,
  "'": 160,
  '(': 300,
  ')': 300,
  '+': 602,
  ',': 205,
  '-': 368,
  '.': 205,
  '/': 377,
  ':': 205,
  ';': 205,
  '?': 520,
  A: 626,
  B: 619,
  C: 656,
  D: 673,
  E: 567,
  F: 548,
  G: 710,
  H: 690,
  I: 414,
  J: 510,
  K: 627,
  L: 539,
  M: 820,
  N: 689,
  O: 727,
  P: 601,
  Q: 753,
  R: 618,
  S: 596,
  T: 558,
  U: 690,
  V: 589,
  W: 840,
  X: 623,
  Y: 595,
  Z: 607,
  a: 526,
  b: 566,
  c: 500,
  d: 564,
  e: 539,
  f: 311,
  g: 560,
  h: 546,
  i: 278,
  j: 254,
  k: 490,
  l: 239,
  m: 841,
  n: 546,
  o: 552,
  p: 566,
  q: 576,
  r: 340,
  s: 471,
  t: 324,
  u: 536,
  v: 441,
  w: 654,
  x: 461,
  y: 429,
  z: 460,
  ä: 526,
  ö: 552,
  ü: 536,
  Ä: 626,
  Ö: 727,
  Ü: 690,
  ß: 597,
  '−': 602,
  '–': 480,
  '…': 696,
  '°': 352,
  '·': 235,
  '×': 528,
  '’': 235,
  µ: 555,
  '²': 382,
  '³': 383,
  '\u00a0': 280,
};
/** A letter that is not in the table. */
const WIDE = 700;
/** Tabular figures are as wide as the widest of them. */
const FIGURE = 648;
/** Bold letters against regular ones, the mean of the table; a little more, to be safe. */
const BOLD = 1.08;

/**
 * Width of a text.
 * @param text one line
 * @param sizePx font size
 * @param bold whether it is set bold
 * @returns width in px
 */
export function textWidth(text: string, sizePx: number, bold = false): number {
  let sum = 0;
  for (const letter of text) sum += /\d/.test(letter) ? FIGURE : (ADVANCE[letter] ?? WIDE);
  return (sum / 1000) * sizePx * (bold ? BOLD : 1);
}

const SOFT = '\u00ad';

/** A line as it is shown: a soft hyphen shows at the line's end only. */
const shown = (line: string): string => {
  const text = line.trimEnd();
  return text.replaceAll(SOFT, '') + (text.endsWith(SOFT) ? '-' : '');
};

/** Breaks a name into at most `lines` lines at its spaces, hyphens and soft hyphens, as evenly as it can. */
export function wrap(text: string, lines: number): readonly string[] {
  const pieces = text.split(/(?<=[\s\u00ad-])/u);
  if (lines <= 1 || pieces.length < 2) return [shown(text)];
  let best: readonly string[] = [shown(text)];
  let bestWidth = Number.POSITIVE_INFINITY;
  for (let cut = 1; cut < pieces.length; cut++) {
    const rest = wrap(pieces.slice(cut).join(''), lines - 1);
    const option = [shown(pieces.slice(0, cut).join('')), ...rest];
    const width = Math.max(...option.map((line) => textWidth(line, 10)));
    if (width < bestWidth) {
      best = option;
      bestWidth = width;
    }
  }
  return best;
}
