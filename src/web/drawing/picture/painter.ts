import type { Point } from '../placement/geometry.ts';
import type { Scheme } from '../placement/scheme.ts';
import { pressureColour } from '../state/pressure-scale.ts';
import type { RunView } from '../state/run-view.ts';
import { openShare, valveState } from '../state/valve-state.ts';
import { dotsPath, grainsOf } from './grains.ts';

/** Texts that the painter writes, in the language and units of the page. */
export interface PaintWords {
  readonly pressure: (pa: number) => string;
  readonly level: (share: number) => string;
  readonly pressureNumber: (pa: number) => string;
  readonly share: (share: number) => string;
  readonly vapour: (m3: number) => string;
  /** State line of a label by its id. */
  readonly state: (view: RunView, labelId: string) => string;
}

/** Texts are read, not watched: so often at most are they written anew, ms. */
const TEXT_EVERY_MS = 90;

/** Sets an attribute that has changed: setting it to what it is would have it drawn anew. */
function put(el: Element, name: string, value: string): void {
  if (el.getAttribute(name) !== value) el.setAttribute(name, value);
}

const TEXT_CLEAR = 8;
const POUR_PX_PER_S = 30;

/** Where a text in the tank stands: in the middle of its gas or fuel, or beyond the surface where that has no room. */
export function tankTextY(isGas: boolean, textHeight: number, top: number, height: number, fill: number): number {
  const surface = top + height * (1 - fill);
  const gas = surface - top;
  const fuel = top + height - surface;
  if (isGas) {
    if (gas >= textHeight + 2 * TEXT_CLEAR) return top + (gas - textHeight) / 2;
    return surface + TEXT_CLEAR;
  }
  if (fuel >= textHeight + 2 * TEXT_CLEAR) {
    // Low in the fuel, so that a pressure that found no room in the gas can stand above it.
    return top + height - textHeight - Math.min(TEXT_CLEAR + 8, (fuel - textHeight) / 2);
  }
  return surface - textHeight - TEXT_CLEAR;
}

/** Brings the picture to a moment by changing what is there, without building anything anew. */
export class Painter {
  private readonly spaces: readonly [string, SVGElement, 'fill' | 'stroke'][];
  private readonly levels: readonly {
    el: SVGRectElement;
    surface: SVGPathElement | null;
    space: string;
    top: number;
    height: number;
  }[];
  private readonly cells: readonly { el: SVGPathElement; space: string; grains: readonly Point[]; shown: number }[];
  private readonly valves: readonly SVGElement[];
  private readonly texts: { readonly el: SVGElement; readonly write: (view: RunView, words: PaintWords) => string }[] =
    [];
  private readonly floats: readonly { el: SVGElement; space: string; top: number; height: number }[];
  private readonly tankTexts: readonly { el: SVGElement; space: string; isGas: boolean; height: number }[];
  private readonly moving: readonly { el: SVGElement; kind: 'ball' | 'lid' | 'flap'; passage: string }[];
  private readonly pour: SVGElement | null;
  private readonly colours = new Map<SVGElement, string>();
  private lastTextMs = Number.NEGATIVE_INFINITY;

  constructor(root: SVGSVGElement, scheme: Scheme) {
    const all = <T extends SVGElement>(name: string): T[] => [...root.querySelectorAll<T>(`[data-${name}]`)];
    this.spaces = all('space').map((el) => [el.dataset.space!, el, el.classList.contains('bore') ? 'stroke' : 'fill']);
    const lobe = (space: string) => scheme.lobes.find((l) => l.space === space)!;
    this.levels = all<SVGRectElement>('level').map((el) => {
      const space = el.dataset.level!;
      const { box } = lobe(space);
      return {
        el,
        space,
        top: box.y,
        height: box.h,
        surface: root.querySelector<SVGPathElement>(`[data-surface="${space}"]`),
      };
    });
    this.tankTexts = (['gas-text', 'fuel-text'] as const).flatMap((name) =>
      all(name).map((el) => ({
        el,
        isGas: name === 'gas-text',
        space: el.getAttribute(`data-${name}`)!,
        height: Number(el.dataset.height),
      })),
    );
    this.floats = all('float').map((el) => {
      const space = el.dataset.float!;
      const { box } = lobe(space);
      return { el, space, top: box.y, height: box.h };
    });
    this.cells = all<SVGPathElement>('loading').map((el) => {
      const space = el.dataset.loading!;
      return { el, space, grains: grainsOf(scheme.cells.find((c) => c.space === space)!), shown: -1 };
    });
    this.pour = root.querySelector('[data-pour]');
    this.valves = all('valve');
    this.moving = (['ball', 'lid', 'flap'] as const).flatMap((kind) =>
      all(kind).map((el) => ({ el, kind, passage: el.dataset[kind]! })),
    );
    for (const el of all('pressure')) {
      const space = el.dataset.pressure!;
      this.texts.push({ el, write: (view, words) => words.pressure(view.gaugePa(space) ?? 0) });
    }
    for (const el of all('pressure-number')) {
      const space = el.getAttribute('data-pressure-number')!;
      this.texts.push({ el, write: (view, words) => words.pressureNumber(view.gaugePa(space) ?? 0) });
    }
    for (const el of all('full')) {
      const space = el.dataset.full!;
      this.texts.push({ el, write: (view, words) => words.level(view.value(`${space}.fillFraction`) ?? 0) });
    }
    for (const el of all('share')) {
      const space = el.dataset.share!;
      this.texts.push({ el, write: (view, words) => words.share(view.value(`${space}.fillFraction`) ?? 0) });
    }
    for (const el of all('vapour')) {
      const space = el.dataset.vapour!;
      this.texts.push({ el, write: (view, words) => words.vapour(view.value(`${space}.gasVolumeM3`) ?? 0) });
    }
    for (const el of all('state')) {
      const id = el.dataset.state!;
      this.texts.push({ el, write: (view, words) => words.state(view, id) });
    }
  }

  paint(view: RunView, limitPa: number, words: PaintWords, nowMs: number, isResting: boolean): void {
    for (const [space, el, property] of this.spaces) {
      const colour = pressureColour(view.gaugePa(space) ?? 0, limitPa);
      if (this.colours.get(el) === colour) continue;
      this.colours.set(el, colour);
      el.style[property] = colour;
    }
    for (const { el, surface, space, top, height } of this.levels) {
      const y = top + height * (1 - (view.value(`${space}.fillFraction`) ?? 0));
      put(el, 'y', y.toFixed(2));
      put(el, 'height', Math.max(0, top + height - y).toFixed(2));
      if (surface !== null) put(surface, 'transform', `translate(0 ${y.toFixed(2)})`);
    }
    for (const text of this.tankTexts) {
      const lobe = this.levels.find((l) => l.space === text.space)!;
      const fill = view.value(`${text.space}.fillFraction`) ?? 0;
      const y = tankTextY(text.isGas, text.height, lobe.top, lobe.height, fill);
      put(text.el, 'transform', `translate(0 ${y.toFixed(1)})`);
    }
    for (const float of this.floats) {
      const level = float.height * (1 - (view.value(`${float.space}.fillFraction`) ?? 0));
      const shut = view.command('fillLimitShut') > 0 && view.network.fillLimit.stuck !== 'open';
      const stuckUp = view.network.fillLimit.stuck === 'shut';
      const y = shut || stuckUp ? 4 : Math.min(20, Math.max(7, level - 4));
      put(float.el, 'transform', `translate(0 ${y.toFixed(1)})`);
    }
    for (const cell of this.cells) {
      const count = Math.round(cell.grains.length * Math.min(1, view.value(`${cell.space}.loading`) ?? 0));
      if (count === cell.shown) continue;
      (cell as { shown: number }).shown = count;
      put(cell.el, 'd', dotsPath(cell.grains.slice(0, count)));
    }
    for (const el of this.valves) {
      const state = valveState(view, el.dataset.valve!);
      if (state === undefined) continue;
      const share = openShare(state);
      const shown = share === 0 ? 'shut' : share > 0.85 ? 'open' : 'part';
      if (el.dataset.shown !== shown) el.dataset.shown = shown;
    }
    this.paintPour(view);
    for (const { el, kind, passage } of this.moving) this.move(view, el, kind, passage);
    if (!isResting && nowMs - this.lastTextMs < TEXT_EVERY_MS) return;
    this.lastTextMs = nowMs;
    for (const { el, write } of this.texts) {
      const text = write(view, words);
      if (el.textContent !== text) el.textContent = text;
    }
  }

  private paintPour(view: RunView): void {
    if (this.pour === null) return;
    const isOn = view.command('nozzleOn') > 0;
    put(this.pour, 'display', isOn ? 'inline' : 'none');
    const stream = this.pour.firstElementChild as SVGElement | null;
    // Falls at a steady pace, whatever the tempo: it says that fuel runs, not how much.
    if (isOn && stream !== null) put(stream, 'stroke-dashoffset', ((view.timeS * POUR_PX_PER_S) % 14).toFixed(1));
  }

  private move(view: RunView, el: SVGElement, kind: 'ball' | 'lid' | 'flap', passage: string): void {
    let transform = '';
    if (kind === 'ball') {
      const state = valveState(view, passage);
      transform = `translate(${state !== undefined && openShare(state) > 0 ? 6 : 0} 0)`;
    } else if (view.command('fillerOpen') > 0 || view.command('nozzleOn') > 0) {
      transform = kind === 'lid' ? 'translate(-28 2) rotate(-68)' : 'rotate(62 -15 0)';
    }
    if (el.getAttribute('transform') !== transform) put(el, 'transform', transform);
  }
}
