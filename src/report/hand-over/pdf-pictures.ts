/** Photos on paper: two beside each other, each with its caption, and neither torn from it. */
import { type Paper, SET, TEXT_LEFT, TEXT_WIDTH } from '../pdf-page.ts';
import { LIGHT } from '../style.ts';
import type { Block, Picture } from './document.ts';
import { settable } from './pdf-text.ts';

const GAP = 14;
const WIDTH = (TEXT_WIDTH - GAP) / 2;
/** Points; a tall photo is narrower than its column. */
const MOST_HEIGHT = 220;
/** A small picture is not blown up beyond this: points for each of its pixels. */
const MOST_POINTS_PER_PIXEL = 0.75;

function sizeOf({ shown: { widthPx, heightPx } }: Picture): { width: number; height: number } {
  const scale = Math.min(WIDTH / widthPx, MOST_HEIGHT / heightPx, MOST_POINTS_PER_PIXEL);
  return { width: widthPx * scale, height: heightPx * scale };
}

/** Height of the first row without its captions: what a heading above asks to keep with it. */
export const firstRowHeight = (items: readonly Picture[]): number =>
  Math.max(0, ...items.slice(0, 2).map((picture) => sizeOf(picture).height));

export function drawPictures(paper: Paper, { items }: Extract<Block, { kind: 'pictures' }>): void {
  for (let i = 0; i < items.length; i += 2) {
    const row = items.slice(i, i + 2).map((picture) => ({
      picture,
      ...sizeOf(picture),
      caption: settable(picture.caption),
    }));
    const tallest = Math.max(...row.map(({ height }) => height));
    const captions = Math.max(...row.map(({ caption }) => paper.heightOf(caption, SET.quiet, WIDTH)));
    paper.need(tallest + captions + 8);
    const { y } = paper;
    row.forEach(({ picture, width, height, caption }, k) => {
      const x = TEXT_LEFT + k * (WIDTH + GAP);
      paper.picture(settable(picture.alt), picture.shown.bytes, { x, y, width, height });
      paper.mark(() => paper.pdf.rect(x, y, width, height).lineWidth(0.5).stroke(LIGHT.rule));
      // Under its own picture, however much taller the neighbour is.
      paper.at(caption, SET.quiet, x, y + height + 3, WIDTH);
    });
    paper.space(tallest + captions + 10);
  }
}
