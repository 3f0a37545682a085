/** The picture itself: uPlot gives canvas, time axis and scale; the lanes are painted into its plot. */
import uPlot from 'uplot';
import type { Phase } from '../../../recording/recording.ts';
import type { ChartState } from './chart-state.ts';
import { type Colours, readColours } from './colours.ts';
import { InSight } from './in-sight.ts';
import { type Lane, type Placing, placeLanes } from './lanes.ts';
import { paintGround, paintTitles, yOf } from './paint-frame.ts';
import { paintLayers } from './paint-layers.ts';
import { Reduced, type Source } from './source.ts';
import { decimalsOf, timeText, timeTicks } from './ticks.ts';

export interface PlotContent {
  readonly source: Source;
  readonly lanes: readonly Lane[];
  readonly phases: readonly Phase[];
  /** "s", or "min:s" for a long view. */
  readonly timeUnit: (wideS: number) => string;
  /** Decimal mark of the language. */
  readonly mark: string;
}

export interface PlotArea {
  readonly left: number;
  readonly width: number;
}

const AXIS = 40;
const RIGHT = 14;
/** A time label needs about so many CSS pixels. */
const LABEL_PX = 76;

export class Plot {
  private readonly host: HTMLElement;
  private readonly state: ChartState;
  private content: PlotContent;
  private readonly reduced = new Reduced();
  private readonly cursor = document.createElement('div');
  private readonly brush = document.createElement('div');
  private colours: Colours;
  private placing: Placing;
  private readonly inSight: InSight;
  private readonly u: uPlot;
  private readonly stop: () => void;

  constructor(host: HTMLElement, state: ChartState, content: PlotContent) {
    this.host = host;
    this.state = state;
    this.content = content;
    this.colours = readColours(host);
    const width = Math.max(240, host.clientWidth);
    this.placing = placeLanes(content.lanes, width);
    const { all } = state;
    const { view } = state.read();
    this.inSight = new InSight(host, () => this.u.redraw(false, false));
    this.u = new uPlot(
      {
        width,
        height: this.placing.height + AXIS,
        padding: [0, RIGHT, 0, 0],
        legend: { show: false },
        cursor: { show: false },
        scales: { x: { time: false, auto: false, min: view.fromS, max: view.toS }, y: { auto: false, range: [0, 1] } },
        series: [{}],
        axes: [
          this.timeAxis(),
          {
            scale: 'y',
            show: true,
            size: () => this.placing.gutter,
            splits: () => [],
            grid: { show: false },
            ticks: { show: false },
          },
        ],
        hooks: { drawClear: [() => this.paintUnder()], draw: [() => this.paintOver()] },
      },
      [Float64Array.of(all.fromS, all.toS)] as unknown as uPlot.AlignedData,
      host,
    );
    this.cursor.className = 'chart-cursor';
    this.brush.className = 'chart-brush';
    this.u.over.append(this.cursor, this.brush);
    this.stop = state.subscribe(() => this.follow());
    this.follow();
  }

  destroy(): void {
    this.stop();
    this.inSight.stop();
    this.u.destroy();
  }

  /** Of the plot within its host, CSS pixels. */
  get area(): PlotArea {
    return { left: this.placing.gutter, width: this.u.width - this.placing.gutter - RIGHT };
  }

  /** What receives pointers: the plot without its margins. */
  get surface(): HTMLElement {
    return this.u.over;
  }

  replace(content: PlotContent): void {
    this.content = content;
    this.resize();
  }

  resize(): void {
    const width = Math.max(240, this.host.clientWidth);
    this.placing = placeLanes(this.content.lanes, width);
    this.u.setSize({ width, height: this.placing.height + AXIS });
  }

  /** While a boundary is dragged only the ground changes. */
  showPhases(phases: readonly Phase[]): void {
    this.content = { ...this.content, phases };
    this.u.redraw(false, false);
  }

  recolour(): void {
    this.colours = readColours(this.host);
    this.u.redraw(false, true);
  }

  /** Marks the span that a brush would choose, as shares of the width; null takes it away. */
  showBrush(span: readonly [number, number] | null): void {
    this.brush.style.display = span === null ? 'none' : 'block';
    if (span === null) return;
    this.brush.style.left = `${100 * Math.min(...span)}%`;
    this.brush.style.width = `${100 * Math.abs(span[1] - span[0])}%`;
  }

  private follow(): void {
    const { view, cursorS } = this.state.read();
    const { min, max } = this.u.scales.x ?? {};
    if (min !== view.fromS || max !== view.toS) {
      this.inSight.move();
      this.u.setScale('x', { min: view.fromS, max: view.toS });
    }
    const share = cursorS === null ? -1 : (cursorS - view.fromS) / (view.toS - view.fromS);
    this.cursor.style.display = share < 0 || share > 1 ? 'none' : 'block';
    this.cursor.style.left = `${100 * share}%`;
  }

  private timeAxis(): uPlot.Axis {
    return {
      scale: 'x',
      size: AXIS,
      font: '14px "Atkinson Hyperlegible", system-ui, sans-serif',
      stroke: () => this.colours.quiet,
      grid: { show: false },
      ticks: { stroke: () => this.colours.quiet, width: 1, size: 5 },
      splits: (_, __, min, max) => [...timeTicks(min, max, Math.max(2, this.area.width / LABEL_PX))],
      values: (u, ticks) => {
        const { min = 0, max = 1 } = u.scales.x ?? {};
        const wide = (max ?? 1) - (min ?? 0);
        const decimals = decimalsOf(ticks);
        return ticks.map((tick, k) =>
          k === ticks.length - 1
            ? `${timeText(tick, wide, decimals, this.content.mark)} ${this.content.timeUnit(wide)}`
            : timeText(tick, wide, decimals, this.content.mark),
        );
      },
    };
  }

  private get ground() {
    const { ctx, bbox } = this.u;
    const { view } = this.state.read();
    const ratio = uPlot.pxRatio;
    const perSecond = bbox.width / (view.toS - view.fromS);
    return {
      ctx,
      ratio,
      colours: this.colours,
      placing: this.placing,
      phases: this.content.phases,
      pauses: this.content.source.pauses,
      xAt: (timeS: number) => bbox.left + (timeS - view.fromS) * perSecond,
      left: bbox.left,
      right: bbox.left + bbox.width,
      mark: this.content.mark,
      top: bbox.top,
      font: (weight: number, px: number) => `${weight} ${px * ratio}px "Atkinson Hyperlegible", system-ui, sans-serif`,
    };
  }

  private paintUnder(): void {
    paintGround(this.ground);
  }

  private paintOver(): void {
    const { ground, u } = this;
    const { ctx, bbox } = u;
    const { view } = this.state.read();
    // While it moves every second pixel has an extreme of its own: the eye sees no more of it.
    this.reduced.read(this.content.source, view, this.inSight.isMoving ? bbox.width / 2 : bbox.width);
    ctx.save();
    ctx.beginPath();
    ctx.rect(bbox.left, 0, bbox.width, u.height * ground.ratio);
    ctx.clip();
    for (const place of this.placing.lanes) {
      if (!this.inSight.has(place.top, place.height)) continue;
      paintLayers(place.lane.layers, {
        ctx,
        colours: this.colours,
        reduced: this.reduced,
        pauses: ground.pauses,
        xAt: ground.xAt,
        yAt: yOf(place, ground.top, ground.ratio),
        top: ground.top + place.top * ground.ratio,
        bottom: ground.top + (place.top + place.height) * ground.ratio,
        ratio: ground.ratio,
      });
    }
    ctx.restore();
    ctx.save();
    paintTitles(ground);
    ctx.restore();
  }
}
