/** Paper for a pressure over time: phases named above, grid and scales, commands below, one time axis. */
import { max, min } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import type { Phase } from '../recording/recording.ts';
import { type Commands, commandLanes } from './command-lanes.ts';
import { LETTER_SIZE, type Mark, rectangle } from './drawing.ts';
import { ENGLISH_FIGURES, type FigureWords } from './figure-words.ts';
import { NBSP } from './numbers.ts';
import { phaseNames } from './phase-names.ts';

export interface PlotFrame {
  /** Marks that stand under and over whatever is plotted. */
  readonly under: readonly Mark[];
  readonly over: readonly Mark[];
  readonly xAt: (timeS: number) => number;
  readonly yAt: (gaugePa: number) => number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly height: number;
}

export interface PlotFrameInput {
  readonly width: number;
  readonly durationS: number;
  readonly phases: readonly Phase[];
  readonly commands: Commands;
  /** All pressures that must find room; not finite ones are passed over. */
  readonly pressuresPa: readonly number[];
  readonly words?: FigureWords;
}

const MARGIN_LEFT = 46;
const MARGIN_RIGHT = 10;
const NAME_ROW = 17;
const NAME_ROWS = 2;
const LANE = 26;
const LANE_GAP = 12;
/** Above and below a trace that hardly moves. */
const LEAST_ROOM_PA = 50;
/** Longer recordings are read in minutes. */
const MINUTES_FROM_S = 600;

/** Every second phase is shaded, so that neighbours part without lines. */
const shaded = (phases: readonly Phase[]): readonly Phase[] => phases.filter((_, i) => i % 2 === 1);

export function plotFrame(input: PlotFrameInput): PlotFrame {
  const { width, durationS, phases, words = ENGLISH_FIGURES } = input;
  const unitPa = words.pascalPerUnit;
  const top = NAME_ROW * NAME_ROWS + 6;
  const plotHeight = Math.round(Math.min(300, Math.max(190, width * 0.4)));
  const bottom = top + plotHeight;
  const right = width - MARGIN_RIGHT;
  const pressures = input.pressuresPa.filter(Number.isFinite);
  const low = Math.min(0, min(pressures) ?? 0) / unitPa;
  const high = Math.max(0, max(pressures) ?? 0) / unitPa;
  const room = Math.max(LEAST_ROOM_PA / unitPa, (high - low) * 0.06);
  const y = scaleLinear([low - room, high + room], [bottom, top]);
  const inMinutes = durationS > MINUTES_FROM_S;
  const toAxis = inMinutes ? 1 / 60 : 1;
  const x = scaleLinear([0, Math.max(durationS, 1) * toAxis], [MARGIN_LEFT, right]);
  const xAt = (timeS: number): number => x(timeS * toAxis);

  const under: Mark[] = [];
  for (const phase of shaded(phases)) {
    const from = Math.max(MARGIN_LEFT, xAt(phase.fromS));
    const to = Math.min(right, xAt(phase.toS));
    if (to > from) under.push({ kind: 'area', pen: 'shade', points: rectangle(from, top, to - from, plotHeight) });
  }
  // Ticks stand about a fifth of the span apart: as many decimals as tell them apart.
  const decimals = Math.max(unitPa === 1000 ? 1 : 0, Math.ceil(-Math.log10((high - low) / 5)));
  for (const tick of y.ticks(5)) {
    under.push({
      kind: 'line',
      pen: tick === 0 ? 'zero' : 'grid',
      points: [
        [MARGIN_LEFT, y(tick)],
        [right, y(tick)],
      ],
    });
    under.push({
      kind: 'text',
      lettering: 'quiet',
      anchor: 'end',
      at: [MARGIN_LEFT - 6, y(tick) + 4],
      text: words.number(tick, decimals),
    });
  }
  under.push({
    kind: 'text',
    lettering: 'strong',
    anchor: 'start',
    at: [0, NAME_ROW * NAME_ROWS - 3],
    text: words.pressureUnit,
  });
  under.push(...phaseNames({ phases, xAt, right, rowHeight: NAME_ROW, rows: NAME_ROWS, words }));

  const lanes = commandLanes({ commands: input.commands, xAt, right, top: bottom + LANE_GAP, laneHeight: LANE, words });
  const over: Mark[] = [...lanes.marks];
  const axisY = bottom + LANE_GAP + lanes.height + LETTER_SIZE + 2;
  const ticks = x.ticks(width < 500 ? 4 : 7);
  ticks.forEach((tick, i) => {
    const unit = i === ticks.length - 1 ? `${NBSP}${inMinutes ? 'min' : 's'}` : '';
    const isNearEnd = x(tick) > right - 16;
    over.push({
      kind: 'text',
      lettering: 'quiet',
      anchor: isNearEnd ? 'end' : 'middle',
      at: [isNearEnd ? right : x(tick), axisY],
      text: `${tick}${unit}`,
    });
  });
  return { under, over, xAt, yAt: (pa) => y(pa / unitPa), left: MARGIN_LEFT, right, top, bottom, height: axisY + 6 };
}
