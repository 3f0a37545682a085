/** A table on paper: rows are kept whole where a page can hold them, and the head is said again on each new page. */

import { PAGE, type Paper, SET, TEXT_LEFT, TEXT_WIDTH } from '../pdf-page.ts';
import { LIGHT } from '../style.ts';
import type { Block } from './document.ts';
import { pieces, settable } from './pdf-text.ts';

type Table = Extract<Block, { kind: 'table' }>;

const GAP = 10;
const PAGE_ROOM = PAGE.height - PAGE.top - PAGE.bottom;

export function drawTable(paper: Paper, { columns, rows }: Table): void {
  let x = TEXT_LEFT;
  const places = columns.map(({ share, align }) => {
    const place = { x, width: share * TEXT_WIDTH - GAP, align: align ?? ('left' as const) };
    x += share * TEXT_WIDTH;
    // The last column has no neighbour to keep away from.
    return place;
  });
  const last = places.at(-1);
  if (last !== undefined) last.width += GAP;
  const line = (cells: readonly string[], set: typeof SET.body | typeof SET.quiet): void => {
    const { y } = paper;
    let height = 0;
    cells.forEach((cell, i) => {
      const place = places[i];
      if (place === undefined || cell === '') return;
      paper.at(cell, set, place.x, y, place.width, place.align);
      height = Math.max(height, paper.heightOf(cell, set, place.width));
    });
    paper.space(height + 2);
  };
  const heightOf = (cells: readonly string[], set: typeof SET.body | typeof SET.quiet): number =>
    Math.max(0, ...cells.map((cell, i) => paper.heightOf(cell, set, places[i]?.width ?? TEXT_WIDTH))) + 2;
  const titles = columns.map(({ title }) => settable(title));
  const headHeight = heightOf(titles, SET.quiet) + 4;
  const head = (): void => {
    line(titles, SET.quiet);
    paper.mark(() =>
      paper.pdf
        .moveTo(TEXT_LEFT, paper.y)
        .lineTo(TEXT_LEFT + TEXT_WIDTH, paper.y)
        .lineWidth(0.9)
        .stroke(LIGHT.quiet),
    );
    paper.space(3);
  };
  paper.space(2);
  paper.need(headHeight + 30);
  head();
  for (const row of rows) {
    const cells = row.map(settable);
    // A cell taller than a page is cut; its row goes on under the head of the next page.
    const cut = cells.map((cell, i) =>
      heightOf(cells, SET.body) > PAGE_ROOM - headHeight
        ? pieces(paper, cell, SET.body, places[i]?.width ?? TEXT_WIDTH, PAGE_ROOM - headHeight - 12)
        : [cell],
    );
    const parts = Math.max(...cut.map(({ length }) => length));
    for (let part = 0; part < parts; part++) {
      const now = cut.map((pieced) => pieced[part] ?? '');
      const page = paper.pages;
      paper.need(heightOf(now, SET.body) + 4);
      if (paper.pages > page) head();
      line(now, SET.body);
    }
    paper.rule(TEXT_LEFT, TEXT_WIDTH);
    paper.space(3);
  }
}
