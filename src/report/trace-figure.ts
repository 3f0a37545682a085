/**
 * The recorded pressure with the modelled one laid over it: the picture that proves the sentence.
 * Phases are shaded and named above the plot, commands run below it on the same time axis.
 */
import { max, min } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import type { Overlay } from '../diagnosis/finding.ts';
import type { Phase } from '../recording/recording.ts';
import { commandLanes } from './command-lanes.ts';
import { type Drawing, LETTER_SIZE, type Mark, type Point, rectangle } from './drawing.ts';
import { fixed, NBSP } from './numbers.ts';
import { phaseNames } from './phase-names.ts';
import type { SheetRecording } from './sheet.ts';
import { CAUSE_WORDS, PHASE_WORDS } from './words.ts';

export interface TraceFigure {
  readonly recording: SheetRecording;
  /** The overlay of the first cause. */
  readonly chosen: Overlay;
  /** The overlay to compare with: no fault, or the runner-up when no fault comes first. */
  readonly rival?: Overlay;
  readonly width: number;
}

const MARGIN_LEFT = 46;
const MARGIN_RIGHT = 10;
const NAME_ROW = 17;
const NAME_ROWS = 2;
const LANE = 26;
/** One dot per so many figure units: dense enough to be the record, open enough to see the line through. */
const UNITS_PER_DOT = 3.5;

const finite = (values: readonly number[]): number[] => values.filter(Number.isFinite);

/** A phase that is nearly all of the recording needs no shade; every second of the others gets one. */
const shaded = (phases: readonly Phase[]): readonly Phase[] => phases.filter((_, i) => i % 2 === 1);

export function traceFigure(input: TraceFigure): Drawing {
  const { recording, chosen, rival, width } = input;
  const plotTop = NAME_ROW * NAME_ROWS + 6;
  const plotHeight = Math.round(Math.min(300, Math.max(190, width * 0.4)));
  const plotBottom = plotTop + plotHeight;
  const right = width - MARGIN_RIGHT;

  const allPa = [
    ...finite(chosen.recordedGaugePa),
    ...finite(chosen.modelledGaugePa),
    ...finite(rival?.modelledGaugePa ?? []),
    0,
  ];
  const low = (min(allPa) ?? 0) / 1000;
  const high = (max(allPa) ?? 0) / 1000;
  const room = Math.max(0.05, (high - low) * 0.06);
  const y = scaleLinear([low - room, high + room], [plotBottom, plotTop]);
  const inMinutes = recording.durationS > 600;
  const toAxis = inMinutes ? 1 / 60 : 1;
  const x = scaleLinear([0, Math.max(recording.durationS, 1) * toAxis], [MARGIN_LEFT, right]);
  const xAt = (timeS: number): number => x(timeS * toAxis);
  const yAt = (pa: number): number => y(pa / 1000);

  const line = (overlay: Overlay): Point[] =>
    overlay.timeS.map((t, i): Point => [xAt(t), yAt(overlay.modelledGaugePa[i] ?? Number.NaN)]);
  const band = (overlay: Overlay): Point[] => {
    const upper: Point[] = [];
    const lower: Point[] = [];
    overlay.timeS.forEach((t, i) => {
      const mid = overlay.modelledGaugePa[i] ?? Number.NaN;
      const half = overlay.bandPa[i] ?? Number.NaN;
      if (!Number.isFinite(mid + half)) return;
      const clip = (value: number): number => Math.min(plotBottom, Math.max(plotTop, value));
      upper.push([xAt(t), clip(yAt(mid + half))]);
      lower.push([xAt(t), clip(yAt(mid - half))]);
    });
    return [...upper, ...lower.reverse()];
  };
  const every = Math.max(1, Math.ceil(chosen.timeS.length / ((right - MARGIN_LEFT) / UNITS_PER_DOT)));
  const dots = chosen.timeS
    .map((t, i): Point => [xAt(t), yAt(chosen.recordedGaugePa[i] ?? Number.NaN)])
    .filter((point, i) => i % every === 0 && Number.isFinite(point[1]));

  const marks: Mark[] = [];
  for (const phase of shaded(recording.phases)) {
    const from = Math.max(MARGIN_LEFT, xAt(phase.fromS));
    const to = Math.min(right, xAt(phase.toS));
    if (to > from) marks.push({ kind: 'area', pen: 'shade', points: rectangle(from, plotTop, to - from, plotHeight) });
  }
  const yDecimals = high - low < 0.5 ? 2 : 1;
  for (const tick of y.ticks(5)) {
    marks.push({
      kind: 'line',
      pen: tick === 0 ? 'zero' : 'grid',
      points: [
        [MARGIN_LEFT, y(tick)],
        [right, y(tick)],
      ],
    });
    marks.push({
      kind: 'text',
      lettering: 'quiet',
      anchor: 'end',
      at: [MARGIN_LEFT - 6, y(tick) + 4],
      text: fixed(tick, yDecimals),
    });
  }
  marks.push({ kind: 'text', lettering: 'strong', anchor: 'start', at: [0, NAME_ROW * NAME_ROWS - 3], text: 'kPa' });
  marks.push(...phaseNames({ phases: recording.phases, xAt, right, rowHeight: NAME_ROW, rows: NAME_ROWS }));
  if (rival !== undefined) {
    marks.push(
      { kind: 'area', pen: 'rival-band', points: band(rival) },
      { kind: 'line', pen: 'rival', points: line(rival) },
    );
  }
  marks.push({ kind: 'area', pen: 'band', points: band(chosen) }, { kind: 'line', pen: 'model', points: line(chosen) });
  marks.push({ kind: 'dots', pen: 'recorded', radius: 1.3, points: dots });

  const lanes = commandLanes({ recording, xAt, right, top: plotBottom + 12, laneHeight: LANE, left: MARGIN_LEFT });
  marks.push(...lanes.marks);
  const axisY = plotBottom + 12 + lanes.height + LETTER_SIZE + 2;
  const ticks = x.ticks(width < 500 ? 4 : 7);
  ticks.forEach((tick, i) => {
    const unit = i === ticks.length - 1 ? `${NBSP}${inMinutes ? 'min' : 's'}` : '';
    const nearEnd = x(tick) > right - 16;
    marks.push({
      kind: 'text',
      lettering: 'quiet',
      anchor: nearEnd ? 'end' : 'middle',
      at: [nearEnd ? right : x(tick), axisY],
      text: `${tick}${unit}`,
    });
  });
  return {
    width,
    height: axisY + 6,
    title: `Tank pressure, recorded and modelled: ${recording.label}`,
    description: describe(input, every),
    marks,
  };
}

function describe({ recording, chosen, rival }: TraceFigure, every: number): string {
  const recorded = finite(chosen.recordedGaugePa);
  const errors = finite(chosen.recordedGaugePa.map((pa, i) => pa - (chosen.modelledGaugePa[i] ?? Number.NaN)));
  const typical = (values: readonly number[]): number =>
    Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / Math.max(1, values.length));
  const phases = recording.phases.map(
    (phase) => `${PHASE_WORDS[phase.kind]} ${Math.round(phase.fromS)} to ${Math.round(phase.toS)} s`,
  );
  const rivalErrors = finite(
    (rival?.recordedGaugePa ?? []).map((pa, i) => pa - (rival?.modelledGaugePa[i] ?? Number.NaN)),
  );
  return [
    `Recorded tank pressure (gauge) over ${Math.round(recording.durationS)} s, from ${fixed((min(recorded) ?? 0) / 1000, 2)} to ${fixed((max(recorded) ?? 0) / 1000, 2)} kPa.`,
    phases.length > 0 ? `Phases: ${phases.join(', ')}.` : '',
    `The model with "${CAUSE_WORDS[chosen.cause].name}" differs from the record by ${fixed(typical(errors), 0)} Pa (root mean square).`,
    rival === undefined
      ? ''
      : `With "${CAUSE_WORDS[rival.cause].name}" it differs by ${fixed(typical(rivalErrors), 0)} Pa.`,
    every > 1 ? `One of every ${every} samples is drawn.` : 'Every sample is drawn.',
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}
