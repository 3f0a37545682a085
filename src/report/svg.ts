/** A drawing as SVG text. Colours come from the page's style sheet through the class of each mark. */
import type { Drawing, Mark, Point } from './drawing.ts';
import { escapeMarkup } from './markup.ts';
import { STANDALONE_FIGURE_STYLE } from './style.ts';

/** A tenth of a figure unit is finer than any screen or printer shows; it keeps files small and goldens calm. */
const round = (value: number): string => {
  const text = value.toFixed(1);
  return text.endsWith('.0') ? text.slice(0, -2).replace(/^-0$/, '0') : text;
};

const path = (points: readonly Point[]): string => {
  let d = '';
  let isPenDown = false;
  for (const [x, y] of points) {
    if (!Number.isFinite(x) || !Number.isFinite(y)) {
      isPenDown = false;
      continue;
    }
    d += `${isPenDown ? 'L' : 'M'}${round(x)} ${round(y)}`;
    isPenDown = true;
  }
  return d;
};

function mark(item: Mark): string {
  switch (item.kind) {
    case 'line':
      return `<path class="pen ${item.pen}" d="${path(item.points)}"/>`;
    case 'area':
      return `<path class="fill ${item.pen}" d="${path(item.points)}Z"/>`;
    case 'dots': {
      // Dots as zero-length strokes with round ends: one element however many samples there are.
      const d = item.points
        .filter(([x, y]) => Number.isFinite(x) && Number.isFinite(y))
        .map(([x, y]) => `M${round(x)} ${round(y)}h0`)
        .join('');
      return `<path class="dot ${item.pen}" stroke-width="${round(item.radius * 2)}" d="${d}"/>`;
    }
    case 'text':
      return (
        `<text class="${item.lettering}" x="${round(item.at[0])}" y="${round(item.at[1])}"` +
        `${item.anchor === 'start' ? '' : ` text-anchor="${item.anchor}"`}>${escapeMarkup(item.text)}</text>`
      );
  }
}

/** A margin around a figure that stands alone. */
const MARGIN = 16;

/** The drawing as a file of its own, with its colours inside. */
export function drawingToSvgFile(drawing: Drawing): string {
  const { width, height } = drawing;
  const box = `${-MARGIN} ${-MARGIN} ${round(width + 2 * MARGIN)} ${round(height + 2 * MARGIN)}`;
  const size = `width="${round(width + 2 * MARGIN)}" height="${round(height + 2 * MARGIN)}"`;
  return `${drawingToSvg(drawing, 'figure')
    .replace(/viewBox="[^"]*"/, `viewBox="${box}" ${size}`)
    .replace('<title', `<style>${STANDALONE_FIGURE_STYLE}</style><title`)}\n`;
}

/** The drawing as one SVG element with title and description for assistive technology. */
export function drawingToSvg(drawing: Drawing, id: string): string {
  const { width, height } = drawing;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${round(width)} ${round(height)}" role="img" aria-labelledby="${id}-t ${id}-d">` +
    `<title id="${id}-t">${escapeMarkup(drawing.title)}</title><desc id="${id}-d">${escapeMarkup(drawing.description)}</desc>` +
    `${drawing.marks.map(mark).join('\n')}</svg>`
  );
}
